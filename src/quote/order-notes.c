#include "order-notes.h"

#include <glib/gi18n-lib.h>

#include "held.h"
#include "order.h"
#include "reason.h"

static int
compare_along (gconstpointer a, gconstpointer b)
{
  const RcNestPlacement *left = *(RcNestPlacement *const *)a, *right = *(RcNestPlacement *const *)b;

  if (left->along != right->along)
    return left->along < right->along ? -1 : 1;
  return (left->across > right->across) - (left->across < right->across);
}

/* The placements on a roll, from its start on; borrowed. */
static GPtrArray *
sort_placements (const RcCutting *cutting, guint roll)
{
  GPtrArray *sorted = g_ptr_array_new ();

  for (guint i = 0; i < cutting->answer->placements->len; i++)
    {
      RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, i);

      if (placement->roll == roll && placement->cut < cutting->piece_numbers->len)
        g_ptr_array_add (sorted, placement);
    }
  g_ptr_array_sort (sorted, compare_along);
  return sorted;
}

/* "1: 12' × 20' 3"; 2: 4' × 7'". */
static char *
format_cuts (const RcCutting *cutting, guint roll)
{
  g_autoptr (GPtrArray) sorted = sort_placements (cutting, roll);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < sorted->len; i++)
    {
      const RcNestPlacement *placement = g_ptr_array_index (sorted, i);
      g_autofree char       *width = rc_reason_format_sold_length (cutting->goods, placement->width);
      g_autofree char       *length = rc_reason_format_sold_length (cutting->goods, placement->length);

      g_string_append_printf (text, "%s%u: %s × %s", i > 0 ? "; " : "",
                              g_array_index (cutting->piece_numbers, guint, placement->cut), width, length);
    }
  return g_string_free (text, FALSE);
}

char *
rc_order_dup_length_name (const RcCutting *cutting, guint use)
{
  guint n_bought = 0, number = 0;

  for (guint i = 0; i < cutting->answer->rolls->len; i++)
    if (rc_cutting_get_roll_id (cutting, g_ptr_array_index (cutting->answer->rolls, i)) == NULL)
      {
        n_bought++;
        number = i == use ? n_bought : number;
      }
  return number > 0 && n_bought > 1 ? g_strdup_printf (_ ("length %u of %u"), number, n_bought) : NULL;
}

static void
add_length (GPtrArray *notes, const RcCutting *cutting, guint roll)
{
  const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, roll);
  g_autofree char *length = rc_reason_format_sold_length (cutting->goods, use->length);
  g_autofree char *width = rc_reason_format_sold_length (cutting->goods, cutting->goods->roll_width);
  g_autofree char *cuts = format_cuts (cutting, roll), *name = rc_order_dup_length_name (cutting, roll);

  g_ptr_array_add (notes, name == NULL ? g_strdup_printf (_ ("%s: one length of %s, %s wide, in one piece"),
                                                          cutting->goods->name, length, width)
                                       : g_strdup_printf (_ ("%s, %s: %s, %s wide, in one piece"), cutting->goods->name,
                                                          name, length, width));
  g_ptr_array_add (notes, g_strdup_printf (_ ("Cuts from this length, width × length, from its start: %s"), cuts));
}

static char *
dup_match_label (RcMatch match)
{
  if (match == RC_MATCH_SET)
    return g_strdup (_ ("set match"));
  if (match == RC_MATCH_HALF_DROP)
    return g_strdup (_ ("half-drop match"));
  if (match == RC_MATCH_QUARTER_DROP)
    return g_strdup (_ ("quarter-drop match"));
  return g_strdup_printf (_ ("match with a drop of %u/%u of the repeat"), rc_match_get_numerator (match),
                          rc_match_get_denominator (match));
}

static void
add_quality (GPtrArray *notes, const RcGoods *carpet, guint n_lengths)
{
  g_ptr_array_add (
      notes, g_strdup_printf (ngettext ("%s: from one dye lot; pile one way along the whole length",
                                        "%s: all %u lengths from one dye lot; pile one way along each", n_lengths),
                              carpet->name, n_lengths));
  if (carpet->repeat_length > 0)
    {
      g_autofree char *repeat = rc_reason_format_sold_length (carpet, carpet->repeat_length);
      g_autofree char *match = dup_match_label (carpet->match);

      g_ptr_array_add (notes, g_strdup_printf (_ ("%s: pattern repeat %s, %s; start at a whole repeat"), carpet->name,
                                               repeat, match));
    }
}

void
rc_order_notes_add (GPtrArray *notes, const RcCutting *cutting)
{
  const GPtrArray *rolls = cutting->answer->rolls;
  guint            n_bought = 0;

  for (guint i = 0; i < rolls->len; i++)
    if (rc_cutting_get_roll_id (cutting, g_ptr_array_index (rolls, i)) == NULL)
      {
        add_length (notes, cutting, i);
        n_bought++;
      }
  if (n_bought > 0)
    add_quality (notes, cutting->goods, n_bought);
}

/* "Fennel Twist, oat: 17' 2" of roll R-0988". */
static char *
format_stock (const RcCutting *cutting, const RcNestUse *use)
{
  const char      *ticket = rc_cutting_get_roll_id (cutting, use);
  g_autofree char *length = rc_reason_format_sold_length (cutting->goods, use->used);
  g_autofree char *words = rc_ticket_format (ticket);

  if (rc_ticket_is_cut (ticket))
    return g_strdup_printf (_ ("%s: %s, cut already (%s)"), cutting->goods->name, length, words);
  if (rc_ticket_is_on_order (ticket))
    return g_strdup_printf (_ ("%s: %s, on its way (%s)"), cutting->goods->name, length, words);
  return g_strdup_printf (_ ("%s: %s of roll %s"), cutting->goods->name, length, ticket);
}

GPtrArray *
rc_order_list_stock (const RcPlan *plan)
{
  GPtrArray *list = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);

      for (guint k = 0; k < cutting->answer->rolls->len; k++)
        if (rc_cutting_get_roll_id (cutting, g_ptr_array_index (cutting->answer->rolls, k)) != NULL)
          g_ptr_array_add (list, format_stock (cutting, g_ptr_array_index (cutting->answer->rolls, k)));
    }
  return list;
}
