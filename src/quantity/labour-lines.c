/* Labour that neither floors nor seams ask for: stairs and the fixed charge. */
#include <glib/gi18n-lib.h>

#include "reason.h"
#include "take-off.h"

static void
add_stairs (RcTakeOff *take_off)
{
  const GPtrArray *stairs = take_off->plan->measure->stairs;
  g_autoptr (GString) reason = g_string_new (NULL);
  gint64 n_steps = 0;

  for (guint i = 0; i < stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (stairs, i);
      guint          n = rc_stair_count_steps (stair);

      n_steps += n;
      rc_reason_add_part (reason, g_strdup_printf (ngettext ("%s: %u step", "%s: %u steps", n), stair->name, n));
    }
  if (n_steps > 0)
    rc_take_off_add_work (take_off, RC_WORK_STAIR, n_steps * RC_MICRO, g_strdup (reason->str));
}

gboolean
rc_take_off_add_other_labour (RcTakeOff *take_off, GError **error)
{
  add_stairs (take_off);
  if (take_off->lines->len > 0)
    rc_take_off_add_work (take_off, RC_WORK_FIXED, RC_MICRO, g_strdup (_ ("Once for the job")));
  return TRUE;
}
