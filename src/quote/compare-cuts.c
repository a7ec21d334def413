/* Cuts of one plan against those of another. */
#include <glib/gi18n-lib.h>

#include "change-list.h"
#include "reason.h"

static gboolean
is_same_cut (const RcPiece *a, const RcPiece *b)
{
  return a->cut_width == b->cut_width && a->cut_length == b->cut_length && g_strcmp0 (a->goods, b->goods) == 0;
}

static gboolean
is_same_place (const RcPiece *a, const RcPiece *b)
{
  return a->kind == b->kind && g_strcmp0 (a->room, b->room) == 0;
}

/* Takes the pairs for which `match` holds out of both lists; each is reported first when `report` is not NULL. */
static void
take_pairs (GPtrArray *before, GPtrArray *after, gboolean (*match) (const RcPiece *, const RcPiece *),
            void (*report) (RcChangeList *, const RcPiece *, const RcPiece *), RcChangeList *list)
{
  for (guint i = 0; i < before->len;)
    {
      guint j = 0;

      while (j < after->len && !match (g_ptr_array_index (before, i), g_ptr_array_index (after, j)))
        j++;
      if (j == after->len)
        {
          i++;
          continue;
        }
      if (report != NULL)
        report (list, g_ptr_array_index (before, i), g_ptr_array_index (after, j));
      g_ptr_array_remove_index (before, i);
      g_ptr_array_remove_index (after, j);
    }
}

static char *
format_name (const RcPlan *plan, const RcPiece *piece)
{
  return g_strdup_printf (_ ("piece %u, %s"), piece->number, rc_reason_get_place (plan, piece->room));
}

/* "12' × 20' 3""; the goods too where they differ. */
static char *
format_cut (const RcChangeList *list, const RcPiece *piece, gboolean with_goods)
{
  g_autofree char *width = rc_change_list_format_length (list, piece->cut_width);
  g_autofree char *length = rc_change_list_format_length (list, piece->cut_length);

  return with_goods ? g_strdup_printf ("%s × %s, %s", width, length, piece->goods)
                    : g_strdup_printf ("%s × %s", width, length);
}

static void
report_pair (RcChangeList *list, const RcPiece *before, const RcPiece *after)
{
  gboolean with_goods = g_strcmp0 (before->goods, after->goods) != 0;

  rc_change_list_add (list, "cut", format_name (list->after, after), format_cut (list, before, with_goods),
                      format_cut (list, after, with_goods));
}

static GPtrArray *
list_pieces (const RcPlan *plan)
{
  GPtrArray *pieces = g_ptr_array_new ();

  for (guint i = 0; i < plan->pieces->len; i++)
    g_ptr_array_add (pieces, g_ptr_array_index (plan->pieces, i));
  return pieces;
}

void
rc_change_list_add_cuts (RcChangeList *list)
{
  g_autoptr (GPtrArray) before = list_pieces (list->before), after = list_pieces (list->after);

  take_pairs (before, after, is_same_cut, NULL, list);
  take_pairs (before, after, is_same_place, report_pair, list);
  for (guint i = 0; i < before->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (before, i);

      rc_change_list_add (list, "cut", format_name (list->before, piece), format_cut (list, piece, FALSE), NULL);
    }
  for (guint i = 0; i < after->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (after, i);

      rc_change_list_add (list, "cut", format_name (list->after, piece), NULL, format_cut (list, piece, FALSE));
    }
}
