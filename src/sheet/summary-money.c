#include "job-summary.h"

#include <glib/gi18n-lib.h>

#include "share-bar.h"
#include "table.h"
#include "words.h"

#define BAR_HEIGHT 16.0
#define SWATCH     9.0

/* What is charged and paid for some lines. */
typedef struct
{
  RcMoney charged, cost;
} Sums;

static Sums
sum_lines (const RcQuote *quote, gboolean work)
{
  Sums sums = { 0, 0 };

  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (line->optional || line->is_work != work)
        continue;
      sums.charged += line->amount;
      sums.cost += line->cost;
    }
  return sums;
}

/* --- the net as a bar --- */

/* The swatch, what it stands for, and how much that is; returns where the next may stand. */
static double
add_key (RcSheetWork *work, double x, RcShareFill fill, const char *label, RcMoney money)
{
  const RcQuote   *quote = work->data->quote;
  g_autofree char *amount = rc_text_format_amount (money, &quote->currency);
  g_autofree char *text = g_strdup_printf ("%s %s", label, amount);
  PangoLayout     *layout = rc_text_layout_new (work->pages->context, RC_TEXT_NOTE, text, 0);
  double           width;

  rc_text_measure (layout, &width, NULL);
  rc_share_bar_add (work->flow.page, x, work->flow.y, SWATCH, SWATCH - 1, &(RcShare){ 1, fill }, 1);
  rc_page_add_layout (work->flow.page, x + SWATCH + 4, work->flow.y - 0.5, layout,
                      rc_text_style_get_grey (RC_TEXT_NOTE));
  return x + SWATCH + 4 + width + 18;
}

static void
add_bar (RcSheetWork *work)
{
  RcFlow        *flow = &work->flow;
  const RcQuote *quote = work->data->quote;
  RcMoney        goods = sum_lines (quote, FALSE).cost, labour = sum_lines (quote, TRUE).cost;
  double         x = flow->x;
  const RcShare  shares[] = { { (double)goods, RC_SHARE_LINES },
                              { (double)labour, RC_SHARE_CROSSED },
                              { (double)quote->margin, RC_SHARE_FULL } };

  rc_share_bar_add (flow->page, flow->x, flow->y, flow->width, BAR_HEIGHT, shares, G_N_ELEMENTS (shares));
  flow->y += BAR_HEIGHT + 4;
  x = add_key (work, x, RC_SHARE_LINES, _ ("Goods cost"), goods);
  x = add_key (work, x, RC_SHARE_CROSSED, _ ("Work costs"), labour);
  add_key (work, x, RC_SHARE_FULL, _ ("Margin"), quote->margin);
  flow->y += 16;
}

/* --- figures --- */

static void
add_sums_row (RcTable *table, RcRowKind kind, const char *label, RcMoney charged, RcMoney cost,
              const RcCurrency *currency)
{
  g_autofree char *charged_text = rc_text_format_amount (charged, currency);
  g_autofree char *cost_text = rc_text_format_amount (cost, currency);
  g_autofree char *margin = rc_text_format_amount (charged - cost, currency);
  g_autofree char *rate
      = charged > 0 ? rc_text_format_tenths (rc_price_get_margin_ppm (cost, charged)) : g_strdup ("–");

  rc_table_add_row (table, kind, label, charged_text, cost_text, margin, rate);
}

static RcTable *
table_new (const char *first, const RcCurrency *currency)
{
  RcTable         *table = rc_table_new ();
  g_autofree char *charged = g_strdup_printf (_ ("CHARGED, %s"), currency->code);

  rc_table_add_column (table, first, RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, charged, RC_COLUMN_DECIMAL, 0);
  rc_table_add_column (table, _ ("COST"), RC_COLUMN_DECIMAL, 0);
  rc_table_add_column (table, _ ("MARGIN"), RC_COLUMN_DECIMAL, 0);
  rc_table_add_column (table, _ ("OF THE CHARGE"), RC_COLUMN_DECIMAL, 0);
  return table;
}

static void
add_table (RcSheetWork *work)
{
  const RcQuote    *quote = work->data->quote;
  const RcCurrency *currency = &quote->currency;
  g_autoptr (RcTable) table = table_new ("", currency);
  g_autofree char *tax = rc_text_format_amount (quote->tax, currency);
  g_autofree char *total = rc_text_format_amount (quote->total, currency);
  g_autofree char *deposit = rc_text_format_amount (quote->deposit, currency);

  for (int pass = 0; pass < 2; pass++)
    {
      Sums sums = sum_lines (quote, pass == 1);

      add_sums_row (table, RC_ROW_BODY, pass == 1 ? _ ("Work") : _ ("Goods"), sums.charged, sums.cost, currency);
    }
  if (quote->discount != 0)
    add_sums_row (table, RC_ROW_BODY, _ ("Discount"), -quote->discount, 0, currency);
  add_sums_row (table, RC_ROW_STRONG, _ ("Net"), quote->net, quote->cost, currency);
  rc_table_add_row (table, RC_ROW_BODY, _ ("Tax"), tax, NULL, NULL, NULL);
  rc_table_add_row (table, RC_ROW_STRONG, _ ("Total"), total, NULL, NULL, NULL);
  if (quote->deposit != 0)
    rc_table_add_row (table, RC_ROW_BODY, _ ("First payment"), deposit, NULL, NULL, NULL);
  rc_table_flow (table, &work->flow);
}

void
rc_summary_add_money (RcSheetWork *work)
{
  if (!work->data->quote)
    return;
  rc_flow_heading (&work->flow, _ ("Where the money goes"), 120);
  add_bar (work);
  add_table (work);
  rc_flow_skip (&work->flow, 6);
}

/* --- line by line --- */

static void
add_lines (RcTable *table, const RcQuote *quote, gboolean work)
{
  gboolean headed = FALSE;

  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (line->optional || line->is_work != work)
        continue;
      if (!headed)
        rc_table_add_row (table, RC_ROW_GROUP, work ? _ ("Work") : _ ("Goods"), NULL, NULL, NULL, NULL);
      headed = TRUE;
      add_sums_row (table, RC_ROW_BODY, line->name ? line->name : line->item, line->amount, line->cost,
                    &quote->currency);
    }
}

static void
add_optional_lines (RcTable *table, const RcQuote *quote)
{
  gboolean headed = FALSE;

  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (!line->optional)
        continue;
      if (!headed)
        rc_table_add_row (table, RC_ROW_GROUP, _ ("Optional, in no sum"), NULL, NULL, NULL, NULL);
      headed = TRUE;
      add_sums_row (table, RC_ROW_BODY, line->name ? line->name : line->item, line->amount, line->cost,
                    &quote->currency);
    }
}

static void
add_alternatives (RcSheetWork *work)
{
  const RcQuote   *quote = work->data->quote;
  const GPtrArray *alternatives = work->data->alternatives;
  g_autoptr (RcTable) table = NULL;

  if (!alternatives || alternatives->len == 0)
    return;
  table = table_new (_ ("DONE THAT WAY"), &quote->currency);
  add_sums_row (table, RC_ROW_BODY, _ ("As proposed"), quote->net, quote->cost, &quote->currency);
  for (guint i = 0; i < alternatives->len; i++)
    {
      const RcQuote *other = g_ptr_array_index (alternatives, i);

      add_sums_row (table, RC_ROW_BODY, other->option ? other->option : "", other->net, other->cost, &other->currency);
    }
  rc_flow_heading (&work->flow, _ ("Alternatives"), 60);
  rc_table_flow (table, &work->flow);
}

void
rc_summary_add_lines (RcSheetWork *work)
{
  const RcQuote *quote = work->data->quote;
  g_autoptr (RcTable) table = NULL;

  if (!quote)
    return;
  add_alternatives (work);
  table = table_new (_ ("LINE"), &quote->currency);
  add_lines (table, quote, FALSE);
  add_lines (table, quote, TRUE);
  add_optional_lines (table, quote);
  if (rc_table_get_n_rows (table) == 0)
    return;
  rc_flow_heading (&work->flow, _ ("Margin line by line"), 60);
  rc_table_set_foot (table, _ ("Before tax, and before a discount on the whole. A margin is a part of the charge."));
  rc_table_flow (table, &work->flow);
}
