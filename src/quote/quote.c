#include "quote.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

/* No tax and no deposit is more than ten times the sum it is taken of. */
#define RATE_MAX_PPM (10 * RC_MICRO)

void
rc_quote_free (RcQuote *quote)
{
  if (quote == NULL)
    return;
  g_ptr_array_unref (quote->lines);
  g_free (quote);
}

/* The job's whole quantity of the line's item, in the line's unit. */
static gint64
sum_item (const GPtrArray *quantities, const RcQuantityLine *line)
{
  gint64 sum = 0;

  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *other = g_ptr_array_index (quantities, i);

      if (other->unit == line->unit && g_str_equal (other->item, line->item)
          && __builtin_add_overflow (sum, other->quantity_micro, &sum))
        return G_MAXINT64;
    }
  return sum;
}

static gboolean
has_no_charge (const RcQuantityLine *line, const RcPriceBook *book, const char *date)
{
  return line->work == RC_WORK_FIXED && rc_price_book_find (book, line->item, date) == NULL;
}

static gboolean
add_lines (RcQuote *quote, const GPtrArray *quantities, const RcPriceBook *book, const char *date, GError **error)
{
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *quantity = g_ptr_array_index (quantities, i);
      RcQuoteLine          *line;

      if (has_no_charge (quantity, book, date))
        continue;
      line = rc_quote_line_new_sale (quantity, sum_item (quantities, quantity), book, date, error);
      if (line == NULL)
        return FALSE;
      g_ptr_array_add (quote->lines, line);
    }
  return TRUE;
}

static gboolean
take_part (RcMoney money, gint64 rate_ppm, const char *what, RcMoney *part, GError **error)
{
  /* Within these limits no part overflows. */
  if (rate_ppm < 0 || rate_ppm > RATE_MAX_PPM)
    {
      g_autofree char *rate = rc_quantity_format (rate_ppm * 100, 4);

      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s of %s %% is not between 0 and 1000 %%"), what, rate);
      return FALSE;
    }
  if (ABS (money) > G_MAXINT64 / 16)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The sum is too large for %s to be taken of it"), what);
      return FALSE;
    }
  *part = rc_money_part (money, rate_ppm);
  return TRUE;
}

static gboolean
sum_lines (RcQuote *quote, gint64 deposit_ppm, GError **error)
{
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (!rc_money_add (quote->net, line->amount, &quote->net)
          || !rc_money_add (quote->cost, line->cost, &quote->cost))
        {
          g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The quotation's sum is too large, at the line %s"),
                       line->name);
          return FALSE;
        }
    }
  if (!take_part (quote->net, quote->tax_ppm, _ ("Tax"), &quote->tax, error))
    return FALSE;
  quote->total = quote->net + quote->tax;
  quote->margin = quote->net - quote->cost;
  return take_part (quote->total, deposit_ppm, _ ("A deposit"), &quote->deposit, error);
}

RcQuote *
rc_quote_new (const RcJob *job, const GPtrArray *quantities, const RcPriceBook *book, const char *date, GError **error)
{
  g_autoptr (RcQuote) quote = g_new0 (RcQuote, 1);

  quote->lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);
  quote->currency = book->currency;
  quote->tax_ppm = job->tax_ppm >= 0 ? job->tax_ppm : book->tax_ppm;

  if (!g_str_equal (job->currency.code, book->currency.code))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("The job is in %s and the price book in %s"),
                   job->currency.code, book->currency.code);
      return NULL;
    }
  if (!add_lines (quote, quantities, book, date, error) || !sum_lines (quote, book->deposit_ppm, error))
    return NULL;
  return g_steal_pointer (&quote);
}
