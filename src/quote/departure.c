/* Where a plan has come to differ from the one that was accepted. */
#include <glib/gi18n-lib.h>

#include "quote.h"
#include "work.h"

/* What the plan's own choice shows in: how much carpet it takes, and what is seamed. */
static gboolean
is_of_plan (const RcQuoteLine *line, const RcJob *job)
{
  const RcGoods *goods = rc_job_find_goods (job, line->item);

  if (line->optional)
    return FALSE;
  return (goods != NULL && goods->kind == RC_GOODS_CARPET)
         || g_str_equal (line->item, rc_work_get_name (RC_WORK_SIDE_SEAM))
         || g_str_equal (line->item, rc_work_get_name (RC_WORK_CROSS_SEAM));
}

/* Of the item in `unit`, bought or from stock. FALSE where some of it is counted otherwise. */
static gboolean
sum_needed (const RcQuote *quote, const char *item, RcUnit unit, gint64 *needed_micro)
{
  *needed_micro = 0;
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (line->optional || !g_str_equal (line->item, item))
        continue;
      if (line->needed_unit != unit)
        return FALSE;
      *needed_micro += line->needed_micro;
    }
  return TRUE;
}

static void
compare_item (const RcQuoteLine *line, const RcQuote *accepted, const RcQuote *now, const RcJob *job,
              GPtrArray *departures)
{
  const RcGoods *goods = rc_job_find_goods (job, line->item);
  const char    *name = goods != NULL ? goods->name : line->name; /* bought or from stock */
  const char    *unit = rc_unit_get_label (line->needed_unit);
  gint64         was_micro, is_micro;

  if (!sum_needed (accepted, line->item, line->needed_unit, &was_micro)
      || !sum_needed (now, line->item, line->needed_unit, &is_micro) || was_micro == is_micro)
    return;
  g_autofree char *was = rc_quantity_format (was_micro, 3), *is = rc_quantity_format (is_micro, 3);
  g_ptr_array_add (departures, g_strdup_printf (_ ("%s: %s %s in place of %s %s"), name, is, unit, was, unit));
}

GPtrArray *
rc_quote_list_departures (const RcQuote *accepted, const RcQuote *now, const RcJob *job, gboolean totals)
{
  const RcQuote *const quotes[] = { now, accepted }; /* names as they are now */
  GPtrArray           *departures = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint q = 0; q < G_N_ELEMENTS (quotes); q++)
    for (guint i = 0; i < quotes[q]->lines->len; i++)
      {
        const RcQuoteLine *line = g_ptr_array_index (quotes[q]->lines, i);

        if (is_of_plan (line, job) && g_hash_table_add (seen, line->item))
          compare_item (line, accepted, now, job, departures);
      }
  if (totals && departures->len > 0)
    {
      g_autofree char *was = rc_money_format (accepted->total, &accepted->currency);
      g_autofree char *is = rc_money_format (now->total, &now->currency);

      g_ptr_array_add (departures, g_strdup_printf (_ ("Total: %s in place of %s"), is, was));
    }
  return departures;
}
