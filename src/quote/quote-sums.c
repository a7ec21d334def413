/* The rule of sums, and its check. */
#include "quote-sums.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"
#include "wide.h"

/* No tax and no deposit is more than ten times the sum it is taken of; no discount more than the whole. */
#define RATE_MAX_PPM (10 * RC_MICRO)
#define SUM_MAX      (G_MAXINT64 / 16)

gboolean
rc_quote_check_rate (gint64 rate_ppm, gint64 most_ppm, const char *what, GError **error)
{
  g_autofree char *rate = NULL;

  if (rate_ppm >= 0 && rate_ppm <= most_ppm)
    return TRUE;
  rate = rc_rate_format (rate_ppm);
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s of %s %% is not between 0 and %d %%"), what, rate,
               (int)(most_ppm / 10000));
  return FALSE;
}

static int
compare_rates (gconstpointer a, gconstpointer b)
{
  gint64 left = ((const RcTaxPart *)a)->ppm, right = ((const RcTaxPart *)b)->ppm;

  return (left > right) - (left < right);
}

/* The sums of the lines by rate, lowest first. (transfer full) */
static GArray *
part_by_rate (const RcQuote *quote)
{
  GArray *parts = g_array_new (FALSE, TRUE, sizeof (RcTaxPart));

  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);
      RcTaxPart          part = { .ppm = line->tax_ppm };
      guint              k = 0;

      if (line->optional)
        continue;
      while (k < parts->len && g_array_index (parts, RcTaxPart, k).ppm != line->tax_ppm)
        k++;
      if (k == parts->len)
        g_array_append_val (parts, part);
      g_array_index (parts, RcTaxPart, k).net += line->amount;
    }
  g_array_sort (parts, compare_rates);
  return parts;
}

/* Spreads the discount over the rates and taxes what is left. */
static void
tax_parts (GArray *parts, RcMoney sum, RcMoney discount)
{
  RcMoney up_to = 0, taken = 0;

  for (guint i = 0; i < parts->len; i++)
    {
      RcTaxPart *part = &g_array_index (parts, RcTaxPart, i);
      RcMoney    due;

      up_to += part->net;
      due = i + 1 == parts->len || sum <= 0 ? discount : (RcMoney)rc_wide_divide_round ((RcWide)discount * up_to, sum);
      part->net -= due - taken;
      taken = due;
      part->tax = rc_money_part (part->net, part->ppm);
    }
}

gboolean
rc_quote_sum_lines (RcQuote *quote, RcMoney further_discount, GError **error)
{
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (!rc_quote_check_rate (line->tax_ppm, RATE_MAX_PPM, _ ("Tax"), error))
        return FALSE;
      if (line->optional)
        continue;
      if (!rc_money_add (quote->sum, line->amount, &quote->sum)
          || !rc_money_add (quote->cost, line->cost, &quote->cost))
        {
          g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The quotation's sum is too large, at the line %s"),
                       line->name);
          return FALSE;
        }
    }
  if (ABS (quote->sum) > SUM_MAX || ABS (quote->cost) > SUM_MAX)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The sum is too large for %s to be taken of it"), _ ("Tax"));
      return FALSE;
    }
  if (!rc_quote_check_rate (quote->discount_ppm, RC_MICRO, _ ("A discount"), error))
    return FALSE;
  quote->discount = rc_money_part (quote->sum, quote->discount_ppm);
  if (further_discount < 0 || further_discount > MAX (0, quote->sum - quote->discount))
    {
      g_autofree char *discount = rc_money_format (further_discount, &quote->currency);

      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("A discount of %s is more than what it is taken off"), discount);
      return FALSE;
    }
  quote->discount += further_discount;
  quote->net = quote->sum - quote->discount;
  g_array_unref (quote->taxes);
  quote->taxes = part_by_rate (quote);
  tax_parts (quote->taxes, quote->sum, quote->discount);
  for (guint i = 0; i < quote->taxes->len; i++)
    quote->tax += g_array_index (quote->taxes, RcTaxPart, i).tax;
  quote->total = quote->net + quote->tax;
  quote->margin = quote->net - quote->cost;
  return TRUE;
}

static RcPaymentStep *
step_new (const char *name, gint64 part_ppm, int days)
{
  RcPaymentStep *step = g_new0 (RcPaymentStep, 1);

  step->name = g_strdup (name);
  step->part_ppm = part_ppm;
  step->days = days;
  return step;
}

void
rc_payment_step_free (RcPaymentStep *step)
{
  if (step == NULL)
    return;
  g_free (step->name);
  g_free (step);
}

gboolean
rc_quote_add_payments (RcQuote *quote, const GPtrArray *payments, GError **error)
{
  gint64  parts_ppm = 0;
  RcMoney paid = 0;

  for (guint i = 0; i < payments->len; i++)
    {
      const RcPayment *payment = g_ptr_array_index (payments, i);
      RcPaymentStep   *step = step_new (payment->name, payment->part_ppm, payment->days);

      g_ptr_array_add (quote->payments, step);
      if (!rc_quote_check_rate (payment->part_ppm, RC_MICRO, _ ("A payment"), error)
          || !rc_quote_check_rate (parts_ppm + payment->part_ppm, RC_MICRO, _ ("All payments together"), error))
        return FALSE;
      parts_ppm += payment->part_ppm;
      step->amount = rc_money_part (quote->total, parts_ppm) - paid;
      paid += step->amount;
    }
  if (payments->len > 0 && parts_ppm < RC_MICRO)
    {
      RcPaymentStep *step = step_new (_ ("Balance"), RC_MICRO - parts_ppm, 0);

      step->amount = quote->total - paid;
      g_ptr_array_add (quote->payments, step);
    }
  if (payments->len > 0)
    quote->deposit = ((const RcPaymentStep *)g_ptr_array_index (quote->payments, 0))->amount;
  return TRUE;
}

/* --- the check --- */

static gboolean
refuse_sum (const char *what, RcMoney is, RcMoney should_be, const RcCurrency *currency, GError **error)
{
  g_autofree char *is_text = NULL, *should_be_text = NULL;

  if (is == should_be)
    return TRUE;
  is_text = rc_money_format (is, currency);
  should_be_text = rc_money_format (should_be, currency);
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("the %s is %s, but what it is made of comes to %s"), what, is_text,
               should_be_text);
  return FALSE;
}

static gboolean
check_line (const RcQuote *quote, guint index, GError **error)
{
  const RcQuoteLine *line = g_ptr_array_index (quote->lines, index);
  RcMoney            gross;

  if (rc_money_multiply (line->price, line->quantity_micro, &gross, error)
      && refuse_sum (_ ("amount before discount"), line->gross, gross, &quote->currency, error)
      && refuse_sum (_ ("amount"), line->amount, gross - rc_money_part (gross, line->discount_ppm), &quote->currency,
                     error))
    return TRUE;
  g_prefix_error (error, _ ("line %u, %s: "), index + 1, line->name != NULL ? line->name : "");
  return FALSE;
}

static gboolean
refuse_size (GError **error)
{
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("a sum is too large to be one of a quotation"));
  return FALSE;
}

/* So that a few of them can be added up: a quotation may come out of a file that somebody else wrote. */
static gboolean
check_sizes (const RcQuote *quote, GError **error)
{
  const RcMoney sums[]
      = { quote->sum, quote->discount, quote->net, quote->tax, quote->total, quote->cost, quote->margin };

  for (guint i = 0; i < G_N_ELEMENTS (sums); i++)
    if (sums[i] < -G_MAXINT64 / 4 || sums[i] > G_MAXINT64 / 4)
      return refuse_size (error);
  return TRUE;
}

static gboolean
check_taxes (const RcQuote *quote, GError **error)
{
  g_autoptr (GArray) parts = part_by_rate (quote);
  RcMoney net = 0, tax = 0;

  tax_parts (parts, quote->sum, quote->discount);
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);

      if (!rc_money_add (net, part->net, &net) || !rc_money_add (tax, part->tax, &tax))
        return refuse_size (error);
      if (quote->variation)
        continue;
      if (i >= parts->len || part->ppm != g_array_index (parts, RcTaxPart, i).ppm
          || part->net != g_array_index (parts, RcTaxPart, i).net
          || part->tax != g_array_index (parts, RcTaxPart, i).tax)
        {
          g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("the tax at rate %u is not that of its lines"), i + 1);
          return FALSE;
        }
    }
  if (!quote->variation && quote->taxes->len != parts->len)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("a rate of tax is missing"));
      return FALSE;
    }
  return refuse_sum (_ ("net"), quote->net, net, &quote->currency, error)
         && refuse_sum (_ ("tax"), quote->tax, tax, &quote->currency, error);
}

gboolean
rc_quote_check (const RcQuote *quote, GError **error)
{
  RcMoney sum = 0, cost = 0, paid = 0;

  if (!check_sizes (quote, error))
    return FALSE;
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (!check_line (quote, i, error))
        return FALSE;
      if (line->optional)
        continue;
      if (!rc_money_add (sum, line->amount, &sum) || !rc_money_add (cost, line->cost, &cost))
        {
          g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("line %u: the sum is too large"), i + 1);
          return FALSE;
        }
    }
  for (guint i = 0; i < quote->payments->len; i++)
    if (!rc_money_add (paid, ((const RcPaymentStep *)g_ptr_array_index (quote->payments, i))->amount, &paid))
      return refuse_size (error);
  return refuse_sum (_ ("sum"), quote->sum, sum, &quote->currency, error)
         && refuse_sum (_ ("net"), quote->net, quote->sum - quote->discount, &quote->currency, error)
         && (quote->lines->len == 0 || check_taxes (quote, error))
         && refuse_sum (_ ("total"), quote->total, quote->net + quote->tax, &quote->currency, error)
         && refuse_sum (_ ("cost"), quote->cost, cost, &quote->currency, error)
         && refuse_sum (_ ("margin"), quote->margin, quote->net - quote->cost, &quote->currency, error)
         && (quote->payments->len == 0
             || refuse_sum (_ ("sum of the payments"), paid, quote->total, &quote->currency, error));
}
