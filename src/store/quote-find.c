/* Reading issued quotations. */
#include <glib/gi18n-lib.h>

#include "query.h"

static RcQuoteState
parse_state (const char *name)
{
  for (guint i = 0; i < RC_N_QUOTE_STATES; i++)
    if (g_strcmp0 (rc_quote_state_get_name (i), name) == 0)
      return i;
  return RC_QUOTE_OPEN;
}

void
rc_issued_quote_free (RcIssuedQuote *quote)
{
  if (quote == NULL)
    return;
  g_free (quote->number);
  g_free (quote->job_id);
  g_free (quote->date);
  g_free (quote->title);
  g_free (quote->customer);
  g_free (quote->address);
  g_free (quote->offer);
  g_free (quote->option);
  g_free (quote->revises);
  g_free (quote->marked);
  g_free (quote);
}

GPtrArray *
rc_store_find_quotes (RcStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) quotes = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_issued_quote_free);
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_query_start (&query, store,
                       "SELECT q.number, job_id, issued, title, customer, address, total_minor, currency,"
                       " currency_digits, coalesce (offer, q.number), option_name, revises, valid_days, variation,"
                       " margin_minor, e.state, e.day FROM issued_quotations q LEFT JOIN quotation_events e"
                       " ON e.event = (SELECT max (event) FROM quotation_events WHERE number = q.number)"
                       " WHERE ?1 IS NULL OR job_id = ?1 ORDER BY serial",
                       RC_VALUES (rc_value_text (job_id)), error))
    return NULL;
  while (rc_query_next (&query, error))
    {
      RcIssuedQuote *quote = g_new0 (RcIssuedQuote, 1);

      quote->number = rc_query_dup_text (&query, 0);
      quote->job_id = rc_query_dup_text (&query, 1);
      quote->date = rc_query_dup_text (&query, 2);
      quote->title = rc_query_dup_text (&query, 3);
      quote->customer = rc_query_dup_text (&query, 4);
      quote->address = rc_query_dup_text (&query, 5);
      quote->total = rc_query_get_integer (&query, 6);
      g_strlcpy (quote->currency.code, rc_query_get_text (&query, 7), sizeof quote->currency.code);
      quote->currency.digits = (int)rc_query_get_integer (&query, 8);
      quote->offer = rc_query_dup_text (&query, 9);
      quote->option = rc_query_dup_text (&query, 10);
      quote->revises = rc_query_dup_text (&query, 11);
      quote->valid_days = (int)rc_query_get_integer (&query, 12);
      quote->variation = rc_query_get_integer (&query, 13) != 0;
      quote->margin = rc_query_get_integer (&query, 14);
      quote->state = parse_state (rc_query_get_text (&query, 15));
      quote->marked = rc_query_dup_text (&query, 16);
      g_ptr_array_add (quotes, quote);
    }
  return query.failed ? NULL : g_steal_pointer (&quotes);
}

static gboolean
load_head (RcStore *store, const char *number, RcQuote *quote, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (
          &query, store,
          "SELECT currency, currency_digits, tax_ppm, net_minor, tax_minor, total_minor, deposit_minor,"
          " cost_minor, margin_minor, coalesce (sum_minor, net_minor), discount_ppm, discount_minor, tax_name, detail,"
          " valid_days, terms, option_name, variation FROM issued_quotations WHERE number = ?",
          RC_VALUES (rc_value_text (number)), error))
    return FALSE;
  if (!rc_query_next (&query, error))
    {
      if (!query.failed)
        g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no quotation %s in the store."), number);
      return FALSE;
    }
  g_strlcpy (quote->currency.code, rc_query_get_text (&query, 0), sizeof quote->currency.code);
  quote->currency.digits = (int)rc_query_get_integer (&query, 1);
  quote->tax_ppm = rc_query_get_integer (&query, 2);
  quote->net = rc_query_get_integer (&query, 3);
  quote->tax = rc_query_get_integer (&query, 4);
  quote->total = rc_query_get_integer (&query, 5);
  quote->deposit = rc_query_get_integer (&query, 6);
  quote->cost = rc_query_get_integer (&query, 7);
  quote->margin = rc_query_get_integer (&query, 8);
  quote->sum = rc_query_get_integer (&query, 9);
  quote->discount_ppm = rc_query_get_integer (&query, 10);
  quote->discount = rc_query_get_integer (&query, 11);
  quote->tax_name = rc_query_dup_text (&query, 12);
  quote->valid_days = (int)rc_query_get_integer (&query, 14);
  quote->terms = rc_query_dup_text (&query, 15);
  quote->option = rc_query_dup_text (&query, 16);
  quote->variation = rc_query_get_integer (&query, 17) != 0;
  return rc_detail_parse (rc_query_get_text (&query, 13), &quote->detail, error);
}

/* Lines that are only offered are in no sum, and are not taxed. */
static gboolean
has_taxed_line (const RcQuote *quote)
{
  for (guint i = 0; i < quote->lines->len; i++)
    if (!((const RcQuoteLine *)quote->lines->pdata[i])->optional)
      return TRUE;
  return FALSE;
}

static gboolean
load_taxes (RcStore *store, const char *number, RcQuote *quote, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store,
                       "SELECT tax_ppm, net_minor, tax_minor FROM issued_taxes WHERE number = ? ORDER BY tax_ppm",
                       RC_VALUES (rc_value_text (number)), error))
    return FALSE;
  while (rc_query_next (&query, error))
    {
      RcTaxPart part
          = { rc_query_get_integer (&query, 0), rc_query_get_integer (&query, 1), rc_query_get_integer (&query, 2) };

      g_array_append_val (quote->taxes, part);
    }
  /* Issued by a program that knew one rate. */
  if (!query.failed && quote->taxes->len == 0 && has_taxed_line (quote))
    {
      RcTaxPart part = { quote->tax_ppm, quote->net, quote->tax };

      g_array_append_val (quote->taxes, part);
    }
  return !query.failed;
}

static gboolean
load_payments (RcStore *store, const char *number, RcQuote *quote, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store,
                       "SELECT name, part_ppm, days, amount_minor FROM issued_payments WHERE number = ?"
                       " ORDER BY position",
                       RC_VALUES (rc_value_text (number)), error))
    return FALSE;
  while (rc_query_next (&query, error))
    {
      RcPaymentStep *step = g_new0 (RcPaymentStep, 1);

      step->name = rc_query_dup_text (&query, 0);
      step->part_ppm = rc_query_get_integer (&query, 1);
      step->days = (int)rc_query_get_integer (&query, 2);
      step->amount = rc_query_get_integer (&query, 3);
      g_ptr_array_add (quote->payments, step);
    }
  return !query.failed;
}

static gboolean
load_line (const RcQuery *query, const RcQuote *quote, RcQuoteLine *line, GError **error)
{
  line->item = rc_query_dup_text (query, 0);
  line->name = rc_query_dup_text (query, 1);
  line->because = rc_query_dup_text (query, 2);
  line->quantity_micro = rc_query_get_integer (query, 3);
  line->packs = rc_query_get_integer (query, 5);
  line->price = rc_query_get_integer (query, 7);
  line->amount = rc_query_get_integer (query, 8);
  line->cost = rc_query_get_integer (query, 9);
  line->is_work = rc_query_get_integer (query, 10) != 0;
  line->from_stock = rc_query_get_integer (query, 11) != 0;
  line->gross = rc_query_get_integer (query, 12);
  line->discount_ppm = rc_query_get_integer (query, 13);
  line->tax_ppm
      = rc_query_get_value (query, 14).kind == RC_VALUE_NULL ? quote->tax_ppm : rc_query_get_integer (query, 14);
  line->optional = rc_query_get_integer (query, 15) != 0;
  line->hidden = rc_query_get_integer (query, 16) != 0;
  line->needed_micro = rc_query_get_integer (query, 17);
  line->from_micro = rc_query_get_integer (query, 19);
  line->price_since = rc_query_dup_text (query, 20);
  return rc_unit_parse (rc_query_get_text (query, 4), &line->unit, error)
         && rc_unit_parse (rc_query_get_text (query, 6), &line->pack_unit, error)
         && rc_unit_parse (rc_query_get_text (query, 18), &line->needed_unit, error);
}

static gboolean
load_lines (RcStore *store, const char *number, RcQuote *quote, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (
          &query, store,
          "SELECT item, name, because, quantity_micro, unit, packs, pack_unit, price_minor, amount_minor,"
          " cost_minor, is_work, from_stock, coalesce (gross_minor, amount_minor), discount_ppm, tax_ppm, optional,"
          " hidden, coalesce (needed_micro, quantity_micro), coalesce (needed_unit, unit), from_micro,"
          " price_since FROM issued_lines WHERE number = ? ORDER BY position",
          RC_VALUES (rc_value_text (number)), error))
    return FALSE;
  while (rc_query_next (&query, error))
    {
      RcQuoteLine *line = g_new0 (RcQuoteLine, 1);

      g_ptr_array_add (quote->lines, line);
      if (!load_line (&query, quote, line, error))
        {
          g_prefix_error (error, _ ("Quotation %s, line %u: "), number, quote->lines->len);
          return FALSE;
        }
    }
  return !query.failed;
}

RcQuote *
rc_store_load_quote (RcStore *store, const char *number, GError **error)
{
  const RcCurrency none = { "", 0 };
  g_autoptr (RcQuote) quote = NULL;

  g_return_val_if_fail (store != NULL && number != NULL, NULL);

  quote = rc_quote_new_empty (&none);
  if (!load_head (store, number, quote, error) || !load_lines (store, number, quote, error)
      || !load_taxes (store, number, quote, error) || !load_payments (store, number, quote, error))
    return NULL;
  return g_steal_pointer (&quote);
}
