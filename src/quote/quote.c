#include "quote.h"

#include <glib/gi18n-lib.h>

#include "charged.h"
#include "quote-sums.h"
#include "rowcut-error.h"

void
rc_quote_free (RcQuote *quote)
{
  if (quote == NULL)
    return;
  g_ptr_array_unref (quote->lines);
  g_array_unref (quote->taxes);
  g_ptr_array_unref (quote->payments);
  g_free (quote->tax_name);
  g_free (quote->terms);
  g_free (quote->option);
  g_free (quote);
}

static gboolean
has_no_charge (const RcQuantityLine *line, const RcPriceBook *book, const char *date)
{
  return (line->work == RC_WORK_FIXED || line->work == RC_WORK_FITTING)
         && rc_price_book_find (book, line->item, date) == NULL;
}

static gboolean
add_lines (RcQuote *quote, const GPtrArray *quantities, const RcPriceBook *book, const char *date, GError **error)
{
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *quantity = g_ptr_array_index (quantities, i);

      if (!has_no_charge (quantity, book, date)
          && !rc_quote_lines_add_sale (quote->lines, quantities, i, book, date, error))
        return FALSE;
    }
  return TRUE;
}

/* What is charged already, and what of the quantities is to be added to it. */
static gboolean
add_lines_after (RcQuote *quote, const RcCharged *charged, const GPtrArray *quantities, const RcPriceBook *book,
                 const char *date, GError **error)
{
  g_autoptr (GPtrArray) rest = NULL;
  guint first;

  if (charged == NULL || !g_str_equal (charged->before->currency.code, book->currency.code))
    return add_lines (quote, quantities, book, date, error);
  rest = rc_charged_add_lines (charged, quote->lines, quantities, error);
  first = quote->lines->len;
  return rest != NULL && add_lines (quote, rest, book, date, error)
         && rc_charged_hold_prices (charged, quote->lines, first, error);
}

/* --- what the office adds --- */

static const RcPrice *
find_extra_price (const RcExtraLine *extra, const RcPriceBook *book, const char *date, gint64 *quantity_micro,
                  GError **error)
{
  const RcGoods *goods = rc_price_book_find_goods (book, extra->item);
  const RcPrice *price = rc_price_book_find_for (book, goods, extra->item, date, extra->quantity_micro, extra->unit);

  if (price == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                 _ ("Line %s: the price book has no price for %s (item “%s”): add one, or give the line its own"),
                 extra->id, extra->name != NULL ? extra->name : extra->item, extra->item);
  else if (!rc_conversion_apply (goods, extra->quantity_micro, extra->unit, price->unit, quantity_micro))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("Line %s is counted in %s, but its price is for 1 %s"),
                   extra->id, rc_unit_get_name (extra->unit), rc_unit_get_name (price->unit));
      price = NULL;
    }
  return price;
}

static RcQuoteLine *
extra_line_new (const RcExtraLine *extra, const RcPriceBook *book, const char *date, GError **error)
{
  const RcGoods *goods = rc_price_book_find_goods (book, extra->item);
  const char    *name = extra->name != NULL ? extra->name : goods != NULL ? goods->name : extra->item;
  const RcPrice *price;
  RcQuoteLine   *line;
  gint64         quantity_micro;

  if (extra->item == NULL)
    return rc_quote_line_new_plain (extra->id, name, extra->quantity_micro, extra->unit, extra->price, extra->cost,
                                    extra->is_work, error);
  price = find_extra_price (extra, book, date, &quantity_micro, error);
  if (price == NULL)
    return NULL;
  line = rc_quote_line_new_plain (extra->id, name, quantity_micro, price->unit, price->sale, price->cost, goods == NULL,
                                  error);
  if (line != NULL)
    {
      line->from_micro = price->from_micro;
      line->price_since = g_strdup (price->valid_from);
    }
  return line;
}

static gboolean
add_extras (RcQuote *quote, const RcOffer *offer, const RcPriceBook *book, const char *date, GError **error)
{
  for (guint i = 0; i < offer->extras->len; i++)
    {
      RcQuoteLine *line = extra_line_new (g_ptr_array_index (offer->extras, i), book, date, error);

      if (line == NULL)
        return FALSE;
      g_ptr_array_add (quote->lines, line);
    }
  return TRUE;
}

/* --- freight --- */

static const RcGoods *
find_goods (const GPtrArray *quantities, const RcQuoteLine *line)
{
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *quantity = g_ptr_array_index (quantities, i);

      if (g_str_equal (quantity->item, line->item))
        return quantity->goods;
    }
  return NULL;
}

/* What is bought of one supplier, at cost. */
static gboolean
sum_bought (const RcQuote *quote, const GPtrArray *quantities, const char *supplier, RcMoney *sum)
{
  gboolean any = FALSE;

  *sum = 0;
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);
      const RcGoods     *goods = find_goods (quantities, line);

      if (goods == NULL || line->from_stock || line->quantity_micro == 0 || g_strcmp0 (goods->supplier, supplier) != 0)
        continue;
      any = TRUE;
      if (!rc_money_add (*sum, line->cost, sum))
        *sum = G_MAXINT64;
    }
  return any;
}

static gboolean
has_line (const RcQuote *quote, const char *item)
{
  for (guint i = 0; i < quote->lines->len; i++)
    if (g_strcmp0 (((const RcQuoteLine *)g_ptr_array_index (quote->lines, i))->item, item) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
add_freight (RcQuote *quote, const GPtrArray *quantities, const RcPriceBook *book, GError **error)
{
  for (guint i = 0; i < book->suppliers->len; i++)
    {
      const RcSupplier *supplier = g_ptr_array_index (book->suppliers, i);
      g_autofree char  *item = rc_supplier_dup_freight_item (supplier->name), *name = NULL;
      RcMoney           sum;
      RcQuoteLine      *line;

      if (has_line (quote, item) || (supplier->freight_cost == 0 && supplier->freight_sale == 0)
          || !sum_bought (quote, quantities, supplier->name, &sum)
          || (supplier->freight_free_from > 0 && sum >= supplier->freight_free_from))
        continue;
      name = g_strdup_printf (_ ("Freight, %s"), supplier->name);
      line = rc_quote_line_new_plain (item, name, RC_MICRO, RC_UNIT_EACH, supplier->freight_sale,
                                      supplier->freight_cost, FALSE, error);
      if (line == NULL)
        return FALSE;
      g_ptr_array_add (quote->lines, line);
    }
  return TRUE;
}

/* --- terms --- */

static gboolean
find_tax_area (const RcOffer *offer, const RcPriceBook *book, const RcTaxArea **area, GError **error)
{
  *area = offer->tax_area != NULL ? rc_price_book_find_tax_area (book, offer->tax_area) : NULL;
  if (offer->tax_area == NULL || *area != NULL)
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("The price book has no tax area “%s”"), offer->tax_area);
  return FALSE;
}

static gboolean
apply_terms (RcQuote *quote, const RcOffer *offer, const RcTaxArea *area, GError **error)
{
  for (guint i = 0; i < quote->lines->len; i++)
    {
      RcQuoteLine       *line = g_ptr_array_index (quote->lines, i);
      const RcLineTerms *terms = rc_offer_find_line (offer, line->item);

      line->tax_ppm = area == NULL ? quote->tax_ppm : line->is_work ? area->work_ppm : area->goods_ppm;
      if (terms == NULL)
        continue;
      if (!rc_quote_check_rate (terms->discount_ppm, RC_MICRO, _ ("A discount"), error))
        {
          g_prefix_error (error, "%s: ", line->name);
          return FALSE;
        }
      line->optional = terms->optional;
      line->hidden = terms->hidden;
      rc_quote_line_set_discount (line, terms->discount_ppm);
      if (terms->tax_ppm >= 0)
        line->tax_ppm = terms->tax_ppm;
    }
  return TRUE;
}

static gboolean
set_payments (RcQuote *quote, const RcOffer *offer, const RcPriceBook *book, GError **error)
{
  const GPtrArray *payments = offer->payments->len > 0 ? offer->payments : book->payments;

  if (!rc_quote_check_rate (book->deposit_ppm, 10 * RC_MICRO, _ ("A deposit"), error))
    return FALSE;
  quote->deposit = rc_money_part (quote->total, book->deposit_ppm);
  return rc_quote_add_payments (quote, payments, error);
}

RcQuote *
rc_quote_new_empty (const RcCurrency *currency)
{
  RcQuote *quote = g_new0 (RcQuote, 1);

  quote->currency = *currency;
  quote->lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);
  quote->taxes = g_array_new (FALSE, TRUE, sizeof (RcTaxPart));
  quote->payments = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_payment_step_free);
  return quote;
}

RcQuote *
rc_quote_new (const RcJob *job, const GPtrArray *quantities, const RcPriceBook *book, const char *date, GError **error)
{
  return rc_quote_new_after (NULL, job, quantities, book, date, error);
}

RcQuote *
rc_quote_new_after (const RcCharged *charged, const RcJob *job, const GPtrArray *quantities, const RcPriceBook *book,
                    const char *date, GError **error)
{
  g_autoptr (RcQuote) quote = rc_quote_new_empty (&book->currency);
  const RcOffer   *offer = job->offer;
  const RcTaxArea *area;

  if (!g_str_equal (job->currency.code, book->currency.code))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("The job is in %s and the price book in %s"),
                   job->currency.code, book->currency.code);
      return NULL;
    }
  if (!find_tax_area (offer, book, &area, error))
    return NULL;
  quote->tax_ppm = area != NULL ? area->goods_ppm : job->tax_ppm >= 0 ? job->tax_ppm : book->tax_ppm;
  quote->tax_name = area != NULL ? g_strdup (area->name) : NULL;
  quote->detail = offer->detail;
  quote->discount_ppm = offer->discount_ppm;
  quote->valid_days = offer->valid_days > 0 ? offer->valid_days : book->valid_days;
  quote->terms = g_strdup (offer->terms != NULL ? offer->terms : book->terms);
  if (!add_lines_after (quote, charged, quantities, book, date, error) || !add_freight (quote, quantities, book, error)
      || !add_extras (quote, offer, book, date, error) || !apply_terms (quote, offer, area, error)
      || !rc_quote_sum_lines (quote, offer->discount, error) || !set_payments (quote, offer, book, error))
    return NULL;
  return g_steal_pointer (&quote);
}
