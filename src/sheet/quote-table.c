#include "quote-table.h"

#include <glib/gi18n-lib.h>

#include "table.h"
#include "words.h"

#define SUMS_WIDTH 270

static RcTable *
table_new (const RcCurrency *currency, RcDetail detail)
{
  RcTable         *table = rc_table_new ();
  g_autofree char *amount = g_strdup_printf (_ ("AMOUNT, %s"), currency->code);

  rc_table_add_column (table, _ ("ITEM"), RC_COLUMN_TEXT, 1);
  if (detail == RC_DETAIL_FULL)
    {
      rc_table_add_column (table, _ ("QUANTITY"), RC_COLUMN_DECIMAL, 0);
      rc_table_add_column (table, _ ("UNIT"), RC_COLUMN_TEXT, 0);
      rc_table_add_column (table, _ ("PRICE"), RC_COLUMN_DECIMAL, 0);
    }
  rc_table_add_column (table, amount, RC_COLUMN_DECIMAL, 0);
  return table;
}

static void
add_row (RcTable *table, RcRowKind kind, RcDetail detail, const char *name, const char *amount)
{
  if (detail == RC_DETAIL_FULL)
    rc_table_add_row (table, kind, name, NULL, NULL, NULL, amount);
  else
    rc_table_add_row (table, kind, name, amount);
}

/* With as many decimals as it takes for quantity times price to be the amount that is printed; three do mostly. */
static char *
dup_quantity (const RcQuoteLine *line)
{
  gint64 step = 1000;

  for (int decimals = 3; decimals < 6; decimals++, step /= 10)
    {
      gint64  rounded = (ABS (line->quantity_micro) + step / 2) / step * step;
      RcMoney product;

      if (line->quantity_micro < 0)
        rounded = -rounded;
      if (rc_money_multiply (line->price, rounded, &product, NULL) && product == line->gross)
        return rc_quantity_format (line->quantity_micro, decimals);
    }
  return rc_quantity_format (line->quantity_micro, 6);
}

static void
add_line (RcTable *table, const RcQuoteLine *line, const RcCurrency *currency, const RcLinesShown *shown)
{
  RcDetail         detail = shown->detail;
  g_autofree char *quantity = dup_quantity (line);
  g_autofree char *packs = rc_words_dup_packs (line->packs, line->pack_unit);
  g_autofree char *price = rc_text_format_amount (line->price, currency);
  g_autofree char *amount = rc_text_format_amount (line->amount, currency);
  g_autofree char *rate = rc_text_format_percent (line->discount_ppm);
  g_autofree char *less = g_strdup_printf (_ ("less %s"), rate);
  const char      *name = line->name ? line->name : line->item;

  if (detail == RC_DETAIL_FULL)
    rc_table_add_row (table, RC_ROW_BODY, name, quantity, rc_unit_get_label (line->unit), price, amount);
  else
    rc_table_add_row (table, RC_ROW_BODY, name, amount);
  if (shown->reasons)
    rc_table_set_note (table, 0, line->because);
  if (detail != RC_DETAIL_FULL)
    return;
  rc_table_set_note (table, 2, packs);
  rc_table_set_note (table, 3, line->discount_ppm != 0 ? less : NULL);
}

/* A sum in place of lines that are not shown by themselves. */
static void
add_rest (RcTable *table, const char *name, RcMoney sum, const RcCurrency *currency, RcDetail detail)
{
  g_autofree char *amount = rc_text_format_amount (sum, currency);

  add_row (table, RC_ROW_BODY, detail, name, amount);
}

static gboolean
is_shown (const RcQuoteLine *line, RcDetail detail)
{
  return detail != RC_DETAIL_GROUPS && !line->hidden;
}

/* The lines of goods, or of work. */
static void
add_group (RcTable *table, const GPtrArray *lines, gboolean work, gboolean headed, const RcCurrency *currency,
           const RcLinesShown *shown)
{
  RcDetail detail = shown->detail;
  RcMoney  rest = 0;
  gboolean any = FALSE, any_rest = FALSE;

  for (guint i = 0; i < lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (lines, i);

      if (line->is_work != work || line->optional)
        continue;
      if (!any && headed)
        add_row (table, RC_ROW_GROUP, detail, work ? _ ("Work") : _ ("Goods"), NULL);
      any = TRUE;
      if (is_shown (line, detail))
        add_line (table, line, currency, shown);
      else
        {
          rest += line->amount;
          any_rest = TRUE;
        }
    }
  if (any_rest)
    add_rest (table,
              detail == RC_DETAIL_GROUPS ? (work ? _ ("All work") : _ ("All goods"))
                                         : (work ? _ ("Other work") : _ ("Other goods")),
              rest, currency, detail);
}

void
rc_quote_table_flow (RcSheetWork *work, const GPtrArray *lines, const RcLinesShown *shown, const RcCurrency *currency)
{
  g_autoptr (RcTable) table = table_new (currency, shown->detail);
  gboolean any_work = FALSE;

  for (guint i = 0; i < lines->len; i++)
    any_work = any_work || ((const RcQuoteLine *)g_ptr_array_index (lines, i))->is_work;
  for (int pass = 0; pass < 2; pass++)
    add_group (table, lines, pass == 1, any_work, currency, shown);
  rc_table_flow (table, &work->flow);
}

void
rc_quote_optional_flow (RcSheetWork *work, const GPtrArray *lines, const RcLinesShown *shown,
                        const RcCurrency *currency)
{
  g_autoptr (RcTable) table = table_new (currency, shown->detail);

  for (guint i = 0; i < lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (lines, i);

      if (line->optional)
        add_line (table, line, currency, shown);
    }
  if (rc_table_get_n_rows (table) == 0)
    return;
  rc_flow_heading (&work->flow, _ ("If you wish, besides"), 60);
  rc_table_set_foot (table, _ ("Not in the total; before tax."));
  rc_table_flow (table, &work->flow);
}

static void
add_sum (RcSheetWork *work, const char *label, const char *amount, RcTextStyle style)
{
  RcFlow      *flow = &work->flow;
  double       width = SUMS_WIDTH, left = flow->x + flow->width - width, height, other;
  PangoLayout *words = rc_text_layout_new (work->pages->context, style, label, width * 0.62);
  PangoLayout *figure = rc_text_layout_new (work->pages->context, style, amount, width * 0.38);

  pango_layout_set_alignment (figure, PANGO_ALIGN_RIGHT);
  rc_text_measure (words, NULL, &height);
  rc_text_measure (figure, NULL, &other);
  rc_page_add_layout (flow->page, left, flow->y, words, rc_text_style_get_grey (style));
  rc_page_add_layout (flow->page, left + width * 0.62, flow->y, figure, rc_text_style_get_grey (style));
  flow->y += MAX (height, other) + 4;
}

static void
add_money (RcSheetWork *work, const char *label, RcMoney money, const RcCurrency *currency, RcTextStyle style)
{
  g_autofree char *text = rc_money_format (money, currency);

  add_sum (work, label, text, style);
}

static void
add_discount (RcSheetWork *work, const RcQuote *quote)
{
  g_autofree char *rate = rc_text_format_percent (quote->discount_ppm);
  g_autofree char *label
      = quote->discount_ppm != 0 && quote->discount == rc_money_part (quote->sum, quote->discount_ppm)
            ? g_strdup_printf (_ ("Discount, %s"), rate)
            : g_strdup (_ ("Discount"));

  if (quote->discount == 0)
    return;
  add_money (work, _ ("Sum"), quote->sum, &quote->currency, RC_TEXT_BODY);
  add_money (work, label, -quote->discount, &quote->currency, RC_TEXT_BODY);
}

/* One line a rate; where there are several, each says what it is of. */
static void
add_taxes (RcSheetWork *work, const RcQuote *quote)
{
  const char *name = quote->tax_name != NULL ? quote->tax_name : _ ("Tax");

  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);
      g_autofree char *rate = rc_text_format_percent (part->ppm);
      g_autofree char *of = rc_text_format_amount (part->net, &quote->currency);
      g_autofree char *label = quote->taxes->len > 1 ? g_strdup_printf (_ ("%s, %s of %s"), name, rate, of)
                                                     : g_strdup_printf ("%s, %s", name, rate);

      add_money (work, label, part->tax, &quote->currency, RC_TEXT_BODY);
    }
}

static void
add_payments (RcSheetWork *work, const RcQuote *quote)
{
  if (quote->payments->len == 0 && quote->deposit != 0)
    add_money (work, _ ("Deposit with the order"), quote->deposit, &quote->currency, RC_TEXT_BODY);
  for (guint i = 0; i < quote->payments->len; i++)
    {
      const RcPaymentStep *step = g_ptr_array_index (quote->payments, i);
      const char          *name = step->name != NULL ? step->name : _ ("Payment");
      g_autofree char     *rate = rc_text_format_percent (step->part_ppm);
      g_autofree char     *label
          = step->days > 0 ? g_strdup_printf (ngettext ("%s, after %d day, %s", "%s, after %d days, %s", step->days),
                                              name, step->days, rate)
                           : g_strdup_printf ("%s, %s", name, rate);

      add_money (work, label, step->amount, &quote->currency, RC_TEXT_BODY);
    }
}

void
rc_quote_sums_flow (RcSheetWork *work, const RcQuote *quote)
{
  RcFlow *flow = &work->flow;
  double  left = flow->x + flow->width - SUMS_WIDTH;

  rc_flow_need (flow, 84 + 14 * (quote->taxes->len + quote->payments->len));
  flow->y += 6;
  add_discount (work, quote);
  add_money (work, _ ("Net"), quote->net, &quote->currency, RC_TEXT_BODY);
  add_taxes (work, quote);
  rc_page_add_line (flow->page, left, flow->y - 1, flow->x + flow->width, flow->y - 1, 1.0, 0.08);
  flow->y += 4;
  add_money (work, quote->variation ? _ ("Change of the total") : _ ("Total"), quote->total, &quote->currency,
             RC_TEXT_TOTAL);
  add_payments (work, quote);
  rc_page_add_line (flow->page, left, flow->y, flow->x + flow->width, flow->y, 0.4, 0.5);
  flow->y += 8;
  rc_flow_text (
      flow, RC_TEXT_NOTE,
      quote->detail != RC_DETAIL_FULL
          ? _ (
              "Amounts are rounded to the nearest cent or least coin, halves up; tax is taken once of each rate's sum. "
              "They add up to the total.")
          : _ ("Each amount is quantity times price, rounded once to the nearest cent or least coin, halves up; tax is "
               "taken once of each rate's sum. The amounts add up to the total."));
}

void
rc_order_sums_flow (RcSheetWork *work, const RcOrder *order)
{
  RcFlow *flow = &work->flow;

  rc_flow_need (flow, 60);
  flow->y += 6;
  if (order->tax != 0)
    {
      add_money (work, _ ("Net"), order->net, &order->currency, RC_TEXT_BODY);
      add_money (work, _ ("Tax"), order->tax, &order->currency, RC_TEXT_BODY);
      add_money (work, _ ("Total"), order->total, &order->currency, RC_TEXT_TOTAL);
    }
  else
    add_money (work, _ ("Total before tax"), order->total, &order->currency, RC_TEXT_TOTAL);
  flow->y += 8;
}
