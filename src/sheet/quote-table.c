#include "quote-table.h"

#include <glib/gi18n-lib.h>

#include "table.h"
#include "words.h"

static void
add_line (RcTable *table, const RcQuoteLine *line, const RcCurrency *currency)
{
  g_autofree char *quantity = rc_quantity_format (line->quantity_micro, 3);
  g_autofree char *packs = rc_words_dup_packs (line->packs, line->pack_unit);
  g_autofree char *price = rc_text_format_amount (line->price, currency);
  g_autofree char *amount = rc_text_format_amount (line->amount, currency);

  rc_table_add_row (table, RC_ROW_BODY, line->name ? line->name : line->item, quantity, rc_words_get_unit (line->unit),
                    price, amount);
  rc_table_set_note (table, 0, line->because);
  rc_table_set_note (table, 2, packs);
}

void
rc_quote_table_flow (RcSheetWork *work, const GPtrArray *lines, const RcCurrency *currency)
{
  g_autoptr (RcTable) table = rc_table_new ();
  g_autofree char *amount = g_strdup_printf (_ ("AMOUNT, %s"), currency->code);
  gboolean         any_work = FALSE;

  rc_table_add_column (table, _ ("ITEM"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("QUANTITY"), RC_COLUMN_DECIMAL, 0);
  rc_table_add_column (table, _ ("UNIT"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("PRICE"), RC_COLUMN_DECIMAL, 0);
  rc_table_add_column (table, amount, RC_COLUMN_DECIMAL, 0);
  for (guint i = 0; i < lines->len; i++)
    any_work = any_work || ((const RcQuoteLine *)g_ptr_array_index (lines, i))->is_work;
  for (int pass = 0; pass < 2; pass++)
    {
      gboolean headed = FALSE;

      for (guint i = 0; i < lines->len; i++)
        {
          const RcQuoteLine *line = g_ptr_array_index (lines, i);

          if (line->is_work != (pass == 1))
            continue;
          if (!headed && any_work)
            rc_table_add_row (table, RC_ROW_GROUP, pass == 0 ? _ ("Goods") : _ ("Work"), NULL, NULL, NULL, NULL);
          headed = TRUE;
          add_line (table, line, currency);
        }
    }
  rc_table_flow (table, &work->flow);
}

static void
add_sum (RcSheetWork *work, const char *label, const char *amount, RcTextStyle style)
{
  RcFlow      *flow = &work->flow;
  double       width = 230, left = flow->x + flow->width - width, height, other;
  PangoLayout *words = rc_text_layout_new (work->pages->context, style, label, width * 0.5);
  PangoLayout *figure = rc_text_layout_new (work->pages->context, style, amount, width * 0.5);

  pango_layout_set_alignment (figure, PANGO_ALIGN_RIGHT);
  rc_text_measure (words, NULL, &height);
  rc_text_measure (figure, NULL, &other);
  rc_page_add_layout (flow->page, left, flow->y, words, rc_text_style_get_grey (style));
  rc_page_add_layout (flow->page, left + width * 0.5, flow->y, figure, rc_text_style_get_grey (style));
  flow->y += MAX (height, other) + 4;
}

void
rc_quote_sums_flow (RcSheetWork *work, RcMoney net, gint64 tax_ppm, RcMoney tax, RcMoney total, RcMoney deposit,
                    const RcCurrency *currency)
{
  RcFlow          *flow = &work->flow;
  g_autofree char *net_text = rc_money_format (net, currency);
  g_autofree char *tax_text = rc_money_format (tax, currency);
  g_autofree char *total_text = rc_money_format (total, currency);
  g_autofree char *deposit_text = rc_money_format (deposit, currency);
  g_autofree char *rate = rc_text_format_percent (MAX (0, tax_ppm));
  g_autofree char *tax_label = tax_ppm < 0 ? g_strdup (_ ("Tax")) : g_strdup_printf (_ ("Tax, %s"), rate);
  double           left = flow->x + flow->width - 230;

  rc_flow_need (flow, 84);
  flow->y += 6;
  add_sum (work, _ ("Net"), net_text, RC_TEXT_BODY);
  add_sum (work, tax_label, tax_text, RC_TEXT_BODY);
  rc_page_add_line (flow->page, left, flow->y - 1, flow->x + flow->width, flow->y - 1, 1.0, 0.08);
  flow->y += 4;
  add_sum (work, _ ("Total"), total_text, RC_TEXT_TOTAL);
  if (deposit != 0)
    add_sum (work, _ ("Deposit with the order"), deposit_text, RC_TEXT_BODY);
  rc_page_add_line (flow->page, left, flow->y, flow->x + flow->width, flow->y, 0.4, 0.5);
  flow->y += 8;
}
