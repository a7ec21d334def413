#include "reason.h"

#include <glib/gi18n-lib.h>

char *
rc_reason_format_length (const RcPlan *plan, RcLength length)
{
  return rc_length_format (length, rc_job_get_length_style (plan->job));
}

char *
rc_reason_format_area (const RcPlan *plan, RcArea area)
{
  return rc_area_format (area, plan->job->units == RC_UNITS_METRIC ? RC_AREA_UNIT_M2 : RC_AREA_UNIT_SQ_FT, 2, TRUE);
}

static gboolean
is_sold_in_metres (const RcGoods *goods)
{
  return goods->unit == RC_UNIT_M || goods->unit == RC_UNIT_M2;
}

char *
rc_reason_format_sold_length (const RcGoods *goods, RcLength length)
{
  return rc_length_format (length, is_sold_in_metres (goods) ? &RC_LENGTH_STYLE_METRIC : &RC_LENGTH_STYLE_IMPERIAL);
}

char *
rc_reason_format_roll_length (const RcPlan *plan, const RcGoods *goods, RcLength length)
{
  g_autofree char *printed = rc_reason_format_length (plan, length);
  g_autofree char *sold = NULL;

  if (is_sold_in_metres (goods) == (plan->job->units == RC_UNITS_METRIC))
    return g_steal_pointer (&printed);
  sold = rc_reason_format_sold_length (goods, length);
  return g_strdup_printf ("%s (%s)", printed, sold);
}

static int
compare_numbers (gconstpointer a, gconstpointer b)
{
  guint left = *(const guint *)a, right = *(const guint *)b;

  return (left > right) - (left < right);
}

/* "1, 3–5" of sorted numbers; *n_distinct gets how many there are. */
static char *
format_ranges (const GArray *sorted, guint *n_distinct)
{
  GString *text = g_string_new (NULL);
  guint    from = 0;

  *n_distinct = 0;
  while (from < sorted->len)
    {
      guint first = g_array_index (sorted, guint, from), last = first, to = from + 1;

      while (to < sorted->len && g_array_index (sorted, guint, to) <= last + 1)
        last = g_array_index (sorted, guint, to++);
      if (text->len > 0)
        g_string_append (text, ", ");
      g_string_append_printf (text, "%u", first);
      if (last > first)
        g_string_append_printf (text, last == first + 1 ? ", %u" : "–%u", last);
      *n_distinct += last - first + 1;
      from = to;
    }
  return g_string_free (text, FALSE);
}

char *
rc_reason_format_pieces (const GArray *numbers)
{
  g_autoptr (GArray) sorted = g_array_copy ((GArray *)numbers);
  g_autofree char *ranges = NULL;
  guint            n_distinct;

  if (numbers->len == 0)
    return g_strdup ("");
  g_array_sort (sorted, compare_numbers);
  ranges = format_ranges (sorted, &n_distinct);
  return g_strdup_printf (ngettext ("piece %s", "pieces %s", n_distinct), ranges);
}

const char *
rc_reason_get_place (const RcPlan *plan, const char *id)
{
  const RcRoom *room = id != NULL ? rc_measure_find_room (plan->measure, id) : NULL;

  if (id == NULL)
    return "";
  if (room != NULL)
    return room->name;
  const RcStair *stair = rc_measure_find_stair (plan->measure, id);

  return stair != NULL ? stair->name : id;
}

char *
rc_reason_format_rooms (const RcPlan *plan, const RcFloorArea *area)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < area->rooms->len; i++)
    rc_reason_add_name (names, rc_reason_get_place (plan, g_ptr_array_index (area->rooms, i)));
  return rc_reason_format_names (names);
}

void
rc_reason_add_name (GPtrArray *names, const char *name)
{
  if (!g_ptr_array_find_with_equal_func (names, name, g_str_equal, NULL))
    g_ptr_array_add (names, (gpointer)name);
}

char *
rc_reason_format_names (const GPtrArray *names)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < names->len; i++)
    g_string_append_printf (text, i > 0 ? ", %s" : "%s", (const char *)g_ptr_array_index (names, i));
  return g_string_free (text, FALSE);
}

void
rc_reason_add_part (GString *reason, char *part)
{
  if (reason->len > 0)
    g_string_append (reason, "; ");
  g_string_append (reason, part);
  g_free (part);
}
