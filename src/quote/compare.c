#include "compare.h"

#include <glib/gi18n-lib.h>

#include "change-list.h"
#include "quote.h"

void
rc_change_free (RcChange *change)
{
  if (change == NULL)
    return;
  g_free (change->what);
  g_free (change->name);
  g_free (change->before);
  g_free (change->after);
  g_free (change);
}

const char *
rc_change_kind_get_name (RcChangeKind kind)
{
  static const char *const names[] = { "added", "removed", "changed" };

  g_return_val_if_fail (kind < G_N_ELEMENTS (names), "");

  return names[kind];
}

void
rc_change_list_add (RcChangeList *list, const char *what, char *name, char *before, char *after)
{
  RcChange *change = g_new0 (RcChange, 1);

  change->kind = before == NULL ? RC_CHANGE_ADDED : after == NULL ? RC_CHANGE_REMOVED : RC_CHANGE_CHANGED;
  change->what = g_strdup (what);
  change->name = name;
  change->before = before;
  change->after = after;
  if (g_strcmp0 (before, after) == 0)
    rc_change_free (change);
  else
    g_ptr_array_add (list->changes, change);
}

char *
rc_change_list_format_length (const RcChangeList *list, RcLength length)
{
  return rc_length_format (length, &list->style);
}

char *
rc_change_list_format_area (const RcChangeList *list, RcArea area)
{
  gboolean metric = list->after->job->units == RC_UNITS_METRIC;

  return rc_area_format (area, metric ? RC_AREA_UNIT_M2 : RC_AREA_UNIT_SQ_FT, 2, TRUE);
}

static const RcQuoteLine *
find_line (const RcQuote *quote, const RcQuoteLine *like)
{
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (g_str_equal (line->item, like->item) && line->from_stock == like->from_stock
          && g_strcmp0 (line->name, like->name) == 0) /* by the roll and by the cut are two lines */
        return line;
    }
  return NULL;
}

/* "120 ft (2 roll), 18.00 USD"; NULL for no line. */
static char *
format_line (const RcQuoteLine *line, const RcCurrency *currency)
{
  g_autofree char *quantity = NULL, *amount = NULL, *packs = NULL;

  if (line == NULL)
    return NULL;
  quantity = rc_quantity_format (line->quantity_micro, 3);
  amount = rc_money_format (line->amount, currency);
  packs = line->packs > 0 && line->pack_unit != line->unit
              ? g_strdup_printf (" (%" G_GINT64_FORMAT " %s)", line->packs, rc_unit_get_name (line->pack_unit))
              : g_strdup ("");
  return g_strdup_printf ("%s %s%s, %s", quantity, rc_unit_get_name (line->unit), packs, amount);
}

static void
add_items (RcChangeList *list, const RcQuote *before, const RcQuote *after)
{
  for (guint i = 0; i < before->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (before->lines, i);

      rc_change_list_add (list, "item", g_strdup (line->name), format_line (line, &before->currency),
                          format_line (find_line (after, line), &after->currency));
    }
  for (guint i = 0; i < after->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (after->lines, i);

      if (find_line (before, line) == NULL)
        rc_change_list_add (list, "item", g_strdup (line->name), NULL, format_line (line, &after->currency));
    }
}

static void
add_sum (RcChangeList *list, const char *name, RcMoney before, const RcCurrency *currency_before, RcMoney after,
         const RcCurrency *currency_after)
{
  rc_change_list_add (list, "total", g_strdup (name), rc_money_format (before, currency_before),
                      rc_money_format (after, currency_after));
}

static void
add_totals (RcChangeList *list, const RcQuote *before, const RcQuote *after)
{
  const RcCurrency *from = &before->currency, *to = &after->currency;

  add_sum (list, _ ("Net"), before->net, from, after->net, to);
  add_sum (list, _ ("Tax"), before->tax, from, after->tax, to);
  add_sum (list, _ ("Total"), before->total, from, after->total, to);
}

static RcLengthStyle
get_style (const RcJob *job)
{
  RcLengthStyle style = *rc_job_get_length_style (job);

  /* The finest fraction that is measured, so that no change prints as none. */
  style.denominator = 32;
  return style;
}

GPtrArray *
rc_compare (const RcPlan *before, const RcQuote *quote_before, const RcPlan *after, const RcQuote *quote_after)
{
  RcChangeList list
      = { before, after, get_style (after->job), g_ptr_array_new_with_free_func ((GDestroyNotify)rc_change_free) };

  rc_change_list_add_rooms (&list);
  rc_change_list_add_stairs (&list);
  rc_change_list_add_cuts (&list);
  rc_change_list_add (&list, "carpet", g_strdup (_ ("Carpet off the rolls")),
                      rc_change_list_format_length (&list, before->carpet_length),
                      rc_change_list_format_length (&list, after->carpet_length));
  if (quote_before != NULL && quote_after != NULL)
    {
      add_items (&list, quote_before, quote_after);
      add_totals (&list, quote_before, quote_after);
    }
  return list.changes;
}
