/* Mouldings where two floors meet. */
#include <glib/gi18n-lib.h>

#include "passage.h"
#include "reason.h"
#include "take-off.h"

/* The openings that take one moulding. */
typedef struct
{
  GArray  *widths; /* of RcLength */
  RcLength length; /* their sum */
  GString *reason;
} Openings;

static void
openings_init (Openings *openings)
{
  *openings = (Openings){ g_array_new (FALSE, FALSE, sizeof (RcLength)), 0, g_string_new (NULL) };
}

static void
openings_clear (Openings *openings)
{
  g_array_unref (openings->widths);
  g_string_free (openings->reason, TRUE);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Openings, openings_clear)

/* The moulding named on either side of an opening; NULL for none. */
static const char *
get_transition (const RcPlacedOpening *placed)
{
  const RcOpening *other_side;

  if (!rc_opening_is_passage (placed->opening))
    return NULL;
  if (placed->opening->transition != NULL)
    return placed->opening->transition;
  other_side = rc_placed_opening_find_other_side (placed);
  return other_side != NULL ? other_side->transition : NULL;
}

static gboolean
openings_add (Openings *openings, const RcPlan *plan, const RcPlacedOpening *placed, GError **error)
{
  g_autofree char *width = rc_reason_format_length (plan, placed->opening->width);

  g_array_append_val (openings->widths, placed->opening->width);
  rc_reason_add_part (openings->reason,
                      placed->other != NULL
                          ? g_strdup_printf (_ ("%s to %s, %s: %s"), placed->room->name, placed->other->name,
                                             placed->opening->id, width)
                          : g_strdup_printf ("%s, %s: %s", placed->room->name, placed->opening->id, width));
  return rc_take_off_sum (&openings->length, placed->opening->width, _ ("Transitions"), error);
}

static int
compare_longest_first (gconstpointer a, gconstpointer b)
{
  RcLength left = *(const RcLength *)a, right = *(const RcLength *)b;

  return (left < right) - (left > right);
}

/* How many bars cut into the widths, each width in one piece off the first bar that still holds it, longest first. A
 * width longer than a bar takes whole bars and one piece for the rest. */
static gint64
count_bars (const GArray *widths, RcLength bar)
{
  g_autoptr (GArray) sorted = g_array_copy ((GArray *)widths);
  g_autoptr (GArray) rests = g_array_new (FALSE, FALSE, sizeof (RcLength));
  gint64 n_whole = 0;

  for (guint i = 0; i < sorted->len; i++)
    {
      RcLength *width = &g_array_index (sorted, RcLength, i);

      n_whole += *width / bar;
      *width %= bar;
    }
  g_array_sort (sorted, compare_longest_first);
  for (guint i = 0; i < sorted->len && g_array_index (sorted, RcLength, i) > 0; i++)
    {
      RcLength width = g_array_index (sorted, RcLength, i);
      guint    j = 0;

      while (j < rests->len && g_array_index (rests, RcLength, j) < width)
        j++;
      if (j == rests->len)
        g_array_append_val (rests, bar);
      g_array_index (rests, RcLength, j) -= width;
    }
  return n_whole + rests->len;
}

/* Length of one bar; 0 when the goods do not come in bars. */
static RcLength
get_bar_length (const RcGoods *goods)
{
  gint64 bar;

  if (goods->pack_covers_length > 0)
    return goods->pack_covers_length;
  if (goods->pack_micro > 0 && rc_unit_is_length (goods->unit)
      && rc_multiply_divide (goods->pack_micro, rc_unit_get_ticks (goods->unit), RC_MICRO, &bar))
    return bar;
  return 0;
}

static gboolean
pack_openings (const RcGoods *goods, const Openings *openings, RcPacking *packing, GError **error)
{
  RcLength bar = get_bar_length (goods);

  if (bar > 0)
    return rc_packing_from_packs (goods, count_bars (openings->widths, bar), openings->length, packing, error);
  if (goods->unit == RC_UNIT_EACH)
    {
      /* Counted each without a length: one for an opening. */
      *packing = (RcPacking){ openings->widths->len * RC_MICRO, openings->widths->len * RC_MICRO, 0, RC_UNIT_EACH };
      return TRUE;
    }
  return rc_packing_from_length (goods, openings->length, packing, error);
}

static gboolean
add_transition (RcTakeOff *take_off, const char *id, const char *needed_for, GError **error)
{
  const RcPlan  *plan = take_off->plan;
  const RcGoods *goods = rc_take_off_find_goods (take_off, id, needed_for, error);
  RcPacking      packing;
  g_auto (Openings) openings;

  openings_init (&openings);
  if (goods == NULL)
    return FALSE;
  for (guint i = 0; i < plan->house->openings->len; i++)
    {
      const RcPlacedOpening *placed = g_ptr_array_index (plan->house->openings, i);

      if (g_strcmp0 (get_transition (placed), id) == 0 && !openings_add (&openings, plan, placed, error))
        return FALSE;
    }
  if (!pack_openings (goods, &openings, &packing, error))
    return FALSE;
  rc_take_off_add_goods (take_off, goods, &packing, g_strdup (openings.reason->str));
  return TRUE;
}

gboolean
rc_take_off_add_transitions (RcTakeOff *take_off, GError **error)
{
  const GPtrArray *openings = take_off->plan->house->openings;
  g_autoptr (GHashTable) done = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < openings->len; i++)
    {
      const RcPlacedOpening *placed = g_ptr_array_index (openings, i);
      const char            *id = get_transition (placed);

      if (id != NULL && g_hash_table_add (done, (gpointer)id)
          && !add_transition (take_off, id, placed->room->name, error))
        return FALSE;
    }
  return TRUE;
}
