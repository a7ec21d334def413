/* Labour that neither floors nor seams ask for: stairs, fitting round things, the fixed charge. */
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

/* "Living room: hearth, column" */
static gint64
count_things (const RcRoom *room, GString *reason)
{
  g_autoptr (GString) things = g_string_new (NULL);
  gint64 n = 0;

  for (guint i = 0; i < room->cutouts->len; i++)
    {
      const RcCutout *cutout = g_ptr_array_index (room->cutouts, i);

      if (cutout->counted)
        g_string_append_printf (things, "%s%s", n++ > 0 ? ", " : "", rc_cutout_get_label (cutout));
    }
  if (n > 0)
    rc_reason_add_part (reason, g_strdup_printf ("%s: %s", rc_room_get_name (room), things->str));
  return n;
}

static void
add_fitting (RcTakeOff *take_off)
{
  const RcPlan *plan = take_off->plan;
  g_autoptr (GString) reason = g_string_new (NULL);
  gint64 n = 0;

  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcFloorArea *area = ((const RcAreaPlan *)g_ptr_array_index (plan->areas, i))->area;

      for (guint j = 0; j < area->rooms->len; j++)
        {
          const RcPlacedRoom *room = rc_house_find_room (plan->house, g_ptr_array_index (area->rooms, j));

          if (room != NULL)
            n += count_things (room->room, reason);
        }
    }
  if (n > 0)
    rc_take_off_add_work (take_off, RC_WORK_FITTING, n * RC_MICRO, g_strdup (reason->str));
}

gboolean
rc_take_off_add_other_labour (RcTakeOff *take_off, GError **error)
{
  add_stairs (take_off);
  add_fitting (take_off);
  if (take_off->lines->len > 0)
    rc_take_off_add_work (take_off, RC_WORK_FIXED, RC_MICRO, g_strdup (_ ("Once for the job")));
  return TRUE;
}
