#include "quote-store.h"

#include <glib/gi18n-lib.h>

#include "query.h"
#include "revision.h"

#define COUNTER "quotation"

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

gboolean
rc_quote_store_check_sums (const RcQuote *quote, GError **error)
{
  RcMoney net = 0, cost = 0, total, margin;

  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = quote->lines->pdata[i];
      RcMoney            amount;

      if (!rc_money_multiply (line->price, line->quantity_micro, &amount, error)
          || !refuse_sum (_ ("amount"), line->amount, amount, &quote->currency, error))
        {
          g_prefix_error (error, _ ("line %u, %s: "), i + 1, line->name != NULL ? line->name : "");
          return FALSE;
        }
      if (!rc_money_add (net, line->amount, &net) || !rc_money_add (cost, line->cost, &cost))
        {
          g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("line %u: the sum is too large"), i + 1);
          return FALSE;
        }
    }
  if (!rc_money_add (quote->net, quote->tax, &total) || !rc_money_add (quote->net, -quote->cost, &margin))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("the total is too large"));
      return FALSE;
    }
  return refuse_sum (_ ("net"), quote->net, net, &quote->currency, error)
         && refuse_sum (_ ("tax"), quote->tax, rc_money_part (net, quote->tax_ppm), &quote->currency, error)
         && refuse_sum (_ ("total"), quote->total, total, &quote->currency, error)
         && refuse_sum (_ ("cost"), quote->cost, cost, &quote->currency, error)
         && refuse_sum (_ ("margin"), quote->margin, margin, &quote->currency, error);
}

static gboolean
insert_quote (RcStore *store, const char *number, gint64 serial, const RcJob *job, const RcQuote *quote,
              const char *date, GError **error)
{
  gint64 key, revision = 0;

  if (!rc_revision_find_job (store, job->id, &key, error)
      || (key != 0 && !rc_revision_find (store, key, &revision, error)))
    return FALSE;
  return rc_query_run (
      store,
      "INSERT INTO issued_quotations (number, serial, job_id, job_revision, issued, title, customer, address, currency,"
      " currency_digits, tax_ppm, net_minor, tax_minor, total_minor, deposit_minor, cost_minor, margin_minor, n_lines)"
      " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
      RC_VALUES (rc_value_text (number), rc_value_integer (serial), rc_value_text (job->id),
                 rc_value_integer (revision), rc_value_text (date), rc_value_text (job->title),
                 rc_value_text (job->customer.name), rc_value_text (job->customer.address),
                 rc_value_text (quote->currency.code), rc_value_integer (quote->currency.digits),
                 rc_value_integer (quote->tax_ppm), rc_value_integer (quote->net), rc_value_integer (quote->tax),
                 rc_value_integer (quote->total), rc_value_integer (quote->deposit), rc_value_integer (quote->cost),
                 rc_value_integer (quote->margin), rc_value_integer (quote->lines->len)),
      error);
}

static gboolean
insert_line (RcStore *store, const char *number, guint position, const RcQuoteLine *line, GError **error)
{
  return rc_query_run (
      store,
      "INSERT INTO issued_lines (number, position, item, name, because, quantity_micro, unit, packs, pack_unit,"
      " price_minor, amount_minor, cost_minor, is_work, from_stock) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
      RC_VALUES (rc_value_text (number), rc_value_integer (position), rc_value_text (line->item),
                 rc_value_text (line->name), rc_value_text (line->because), rc_value_integer (line->quantity_micro),
                 rc_value_text (rc_unit_get_name (line->unit)), rc_value_integer (line->packs),
                 rc_value_text (rc_unit_get_name (line->pack_unit)), rc_value_integer (line->price),
                 rc_value_integer (line->amount), rc_value_integer (line->cost),
                 rc_value_integer (line->is_work != FALSE), rc_value_integer (line->from_stock != FALSE)),
      error);
}

static char *
issue_within (RcStore *store, const RcJob *job, const RcQuote *quote, const char *date, GError **error)
{
  g_autofree char *number = NULL;
  gint64           serial;

  if (!rc_store_count (store, COUNTER, &serial, error))
    return NULL;
  number = g_strdup_printf ("Q-%" G_GINT64_FORMAT, serial);
  if (!insert_quote (store, number, serial, job, quote, date, error))
    return NULL;
  for (guint i = 0; i < quote->lines->len; i++)
    if (!insert_line (store, number, i, quote->lines->pdata[i], error))
      return NULL;
  return g_steal_pointer (&number);
}

char *
rc_store_issue_quote (RcStore *store, const RcJob *job, const RcQuote *quote, const char *date, GError **error)
{
  g_autofree char *number = NULL, *doing = NULL;

  g_return_val_if_fail (store != NULL && job != NULL && job->id != NULL && quote != NULL && date != NULL, NULL);

  doing = g_strdup_printf (_ ("Issuing the quotation for job %s"), job->id);
  if (!rc_quote_store_check_sums (quote, error))
    {
      g_prefix_error (error, "%s: ", doing);
      return NULL;
    }
  if (!rc_store_begin (store, doing, error))
    return NULL;
  number = issue_within (store, job, quote, date, error);
  if (number == NULL)
    {
      rc_store_rollback (store);
      return NULL;
    }
  if (!rc_store_commit (store, doing, error))
    return NULL;
  return g_steal_pointer (&number);
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
  g_free (quote);
}

GPtrArray *
rc_store_find_quotes (RcStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) quotes = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_issued_quote_free);
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_query_start (&query, store,
                       "SELECT number, job_id, issued, title, customer, address, total_minor, currency,"
                       " currency_digits FROM issued_quotations WHERE ?1 IS NULL OR job_id = ?1 ORDER BY serial",
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
      g_ptr_array_add (quotes, quote);
    }
  return query.failed ? NULL : g_steal_pointer (&quotes);
}

static gboolean
load_head (RcStore *store, const char *number, RcQuote *quote, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store,
                       "SELECT currency, currency_digits, tax_ppm, net_minor, tax_minor, total_minor, deposit_minor,"
                       " cost_minor, margin_minor FROM issued_quotations WHERE number = ?",
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
  return TRUE;
}

static gboolean
load_line (const RcQuery *query, RcQuoteLine *line, GError **error)
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
  return rc_unit_parse (rc_query_get_text (query, 4), &line->unit, error)
         && rc_unit_parse (rc_query_get_text (query, 6), &line->pack_unit, error);
}

static gboolean
load_lines (RcStore *store, const char *number, RcQuote *quote, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store,
                       "SELECT item, name, because, quantity_micro, unit, packs, pack_unit, price_minor, amount_minor,"
                       " cost_minor, is_work, from_stock FROM issued_lines WHERE number = ? ORDER BY position",
                       RC_VALUES (rc_value_text (number)), error))
    return FALSE;
  while (rc_query_next (&query, error))
    {
      RcQuoteLine *line = g_new0 (RcQuoteLine, 1);

      g_ptr_array_add (quote->lines, line);
      if (!load_line (&query, line, error))
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
  g_autoptr (RcQuote) quote = NULL;

  g_return_val_if_fail (store != NULL && number != NULL, NULL);

  quote = g_new0 (RcQuote, 1);
  quote->lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);
  if (!load_head (store, number, quote, error) || !load_lines (store, number, quote, error))
    return NULL;
  return g_steal_pointer (&quote);
}
