#include <glib/gi18n-lib.h>
#include <string.h>

#include "file-store.h"
#include "query.h"
#include "revision.h"

#define COUNTER "quotation"

/* Quotations that are issued together. */
typedef struct
{
  const RcJob *job;
  const char  *date;
  const char  *revises; /* nullable */
  char        *number;  /* of the first */
} Issue;

static gboolean
insert_quote (RcStore *store, const Issue *issue, const char *number, const RcQuote *quote, GError **error)
{
  const RcJob *job = issue->job;
  gint64       key, revision = 0, serial;

  if (!rc_revision_find_job (store, job->id, &key, error)
      || (key != 0 && !rc_revision_find (store, key, &revision, error))
      || !rc_query_find_integer (store, "SELECT max (serial) FROM issued_quotations", NULL, 0, 0, &serial, error))
    return FALSE;
  return rc_query_run (
      store,
      "INSERT INTO issued_quotations (number, serial, job_id, job_revision, issued, title, customer, address, currency,"
      " currency_digits, tax_ppm, net_minor, tax_minor, total_minor, deposit_minor, cost_minor, margin_minor, n_lines,"
      " sum_minor, discount_ppm, discount_minor, tax_name, detail, valid_days, terms, option_name, variation, offer,"
      " revises) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
      RC_VALUES (
          rc_value_text (number), rc_value_integer (serial + 1), rc_value_text (job->id), rc_value_integer (revision),
          rc_value_text (issue->date), rc_value_text (job->title), rc_value_text (job->customer.name),
          rc_value_text (job->customer.address), rc_value_text (quote->currency.code),
          rc_value_integer (quote->currency.digits), rc_value_integer (quote->tax_ppm), rc_value_integer (quote->net),
          rc_value_integer (quote->tax), rc_value_integer (quote->total), rc_value_integer (quote->deposit),
          rc_value_integer (quote->cost), rc_value_integer (quote->margin), rc_value_integer (quote->lines->len),
          rc_value_integer (quote->sum), rc_value_integer (quote->discount_ppm), rc_value_integer (quote->discount),
          rc_value_text (quote->tax_name), rc_value_text (rc_detail_get_name (quote->detail)),
          rc_value_integer (quote->valid_days), rc_value_text (quote->terms), rc_value_text (quote->option),
          rc_value_integer (quote->variation != FALSE), rc_value_text (issue->number), rc_value_text (issue->revises)),
      error);
}

static gboolean
insert_line (RcStore *store, const char *number, guint position, const RcQuoteLine *line, GError **error)
{
  return rc_query_run (
      store,
      "INSERT INTO issued_lines (number, position, item, name, because, quantity_micro, unit, packs, pack_unit,"
      " price_minor, amount_minor, cost_minor, is_work, from_stock, gross_minor, discount_ppm, tax_ppm, optional,"
      " hidden, needed_micro, needed_unit, from_micro, price_since)"
      " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
      RC_VALUES (rc_value_text (number), rc_value_integer (position), rc_value_text (line->item),
                 rc_value_text (line->name), rc_value_text (line->because), rc_value_integer (line->quantity_micro),
                 rc_value_text (rc_unit_get_name (line->unit)), rc_value_integer (line->packs),
                 rc_value_text (rc_unit_get_name (line->pack_unit)), rc_value_integer (line->price),
                 rc_value_integer (line->amount), rc_value_integer (line->cost),
                 rc_value_integer (line->is_work != FALSE), rc_value_integer (line->from_stock != FALSE),
                 rc_value_integer (line->gross), rc_value_integer (line->discount_ppm),
                 rc_value_integer (line->tax_ppm), rc_value_integer (line->optional != FALSE),
                 rc_value_integer (line->hidden != FALSE), rc_value_integer (line->needed_micro),
                 rc_value_text (rc_unit_get_name (line->needed_unit)), rc_value_integer (line->from_micro),
                 rc_value_text (line->price_since)),
      error);
}

static gboolean
insert_sums (RcStore *store, const char *number, const RcQuote *quote, GError **error)
{
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);

      if (!rc_query_run (store, "INSERT INTO issued_taxes (number, tax_ppm, net_minor, tax_minor) VALUES (?, ?, ?, ?)",
                         RC_VALUES (rc_value_text (number), rc_value_integer (part->ppm), rc_value_integer (part->net),
                                    rc_value_integer (part->tax)),
                         error))
        return FALSE;
    }
  for (guint i = 0; i < quote->payments->len; i++)
    {
      const RcPaymentStep *step = quote->payments->pdata[i];

      if (!rc_query_run (store,
                         "INSERT INTO issued_payments (number, position, name, part_ppm, days, amount_minor)"
                         " VALUES (?, ?, ?, ?, ?, ?)",
                         RC_VALUES (rc_value_text (number), rc_value_integer (i), rc_value_text (step->name),
                                    rc_value_integer (step->part_ppm), rc_value_integer (step->days),
                                    rc_value_integer (step->amount)),
                         error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
insert_whole (RcStore *store, const Issue *issue, const char *number, const RcQuote *quote, GError **error)
{
  if (!insert_quote (store, issue, number, quote, error))
    return FALSE;
  for (guint i = 0; i < quote->lines->len; i++)
    if (!insert_line (store, number, i, quote->lines->pdata[i], error))
      return FALSE;
  return insert_sums (store, number, quote, error);
}

/* Q-12, or for what takes the place of another: the number stays, and says which time it is. */
static char *
dup_number (RcStore *store, const char *revises, GError **error)
{
  g_autofree char *base = NULL;
  gint64           serial, n_before;

  if (revises == NULL)
    return rc_store_count (store, COUNTER, &serial, error) ? g_strdup_printf ("Q-%" G_GINT64_FORMAT, serial) : NULL;
  base = g_strndup (revises, strcspn (revises, "."));
  if (!rc_query_find_integer (store,
                              "SELECT count (*) FROM issued_quotations WHERE (number = ?1 OR number LIKE ?1 || '.%')"
                              " AND (offer IS NULL OR offer = number)",
                              RC_VALUES (rc_value_text (base)), 0, &n_before, error))
    return NULL;
  return g_strdup_printf ("%s.%" G_GINT64_FORMAT, base, n_before + 1);
}

static gboolean
mark_within (RcStore *store, const char *number, RcQuoteState state, const char *day, const char *notes, GError **error)
{
  return rc_query_run (store, "INSERT INTO quotation_events (number, state, day, notes) VALUES (?, ?, ?, ?)",
                       RC_VALUES (rc_value_text (number), rc_value_text (rc_quote_state_get_name (state)),
                                  rc_value_text (day), rc_value_text (notes)),
                       error);
}

/* All that was issued together with a quotation. */
static gboolean
mark_offer (RcStore *store, const char *number, RcQuoteState state, const char *day, GError **error)
{
  return rc_query_run (store,
                       "INSERT INTO quotation_events (number, state, day)"
                       " SELECT number, ?2, ?3 FROM issued_quotations WHERE coalesce (offer, number) ="
                       " (SELECT coalesce (offer, number) FROM issued_quotations WHERE number = ?1) AND number <> ?4",
                       RC_VALUES (rc_value_text (number), rc_value_text (rc_quote_state_get_name (state)),
                                  rc_value_text (day), rc_value_text (state == RC_QUOTE_DECLINED ? number : "")),
                       error);
}

static gboolean
issue_within (RcStore *store, Issue *issue, const GPtrArray *quotes, GError **error)
{
  if (issue->revises != NULL)
    {
      gint64 n_found;

      if (!rc_query_find_integer (store, "SELECT count (*) FROM issued_quotations WHERE number = ?",
                                  RC_VALUES (rc_value_text (issue->revises)), 0, &n_found, error))
        return FALSE;
      if (n_found == 0)
        {
          g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no quotation %s in the store."),
                       issue->revises);
          return FALSE;
        }
    }
  issue->number = dup_number (store, issue->revises, error);
  if (issue->number == NULL)
    return FALSE;
  for (guint i = 0; i < quotes->len; i++)
    {
      g_autofree char *number
          = i == 0 ? g_strdup (issue->number) : g_strdup_printf ("%s-%c", issue->number, (char)('A' + MIN (i, 25)));

      if (!insert_whole (store, issue, number, quotes->pdata[i], error))
        return FALSE;
    }
  return issue->revises == NULL || mark_offer (store, issue->revises, RC_QUOTE_SUPERSEDED, issue->date, error);
}

char *
rc_store_issue_offer (RcStore *store, const RcJob *job, const GPtrArray *quotes, const char *revises, const char *date,
                      GError **error)
{
  g_autofree char *doing = NULL;
  Issue            issue = { job, date, revises, NULL };

  g_return_val_if_fail (store != NULL && job != NULL && job->id != NULL && date != NULL, NULL);
  g_return_val_if_fail (quotes->len > 0 && quotes->len <= RC_STORE_MAX_OPTIONS, NULL);

  doing = g_strdup_printf (_ ("Issuing the quotation for job %s"), job->id);
  for (guint i = 0; i < quotes->len; i++)
    if (!rc_quote_check (quotes->pdata[i], error))
      {
        g_prefix_error (error, "%s: ", doing);
        return NULL;
      }
  if (!rc_store_begin (store, doing, error))
    return NULL;
  if (!issue_within (store, &issue, quotes, error))
    {
      g_free (issue.number);
      rc_store_rollback (store);
      return NULL;
    }
  if (!rc_store_commit (store, doing, error))
    g_clear_pointer (&issue.number, g_free);
  return issue.number;
}

char *
rc_store_issue_quote (RcStore *store, const RcJob *job, const RcQuote *quote, const char *date, GError **error)
{
  g_autoptr (GPtrArray) quotes = g_ptr_array_new ();

  g_return_val_if_fail (quote != NULL, NULL);

  g_ptr_array_add (quotes, (gpointer)quote);
  return rc_store_issue_offer (store, job, quotes, NULL, date, error);
}

/* --- what became of it --- */

static const char *const state_names[] = { "open", "accepted", "declined", "superseded" };
G_STATIC_ASSERT (G_N_ELEMENTS (state_names) == RC_N_QUOTE_STATES);

const char *
rc_quote_state_get_name (RcQuoteState state)
{
  g_return_val_if_fail ((guint)state < RC_N_QUOTE_STATES, "");
  return state_names[state];
}

const char *
rc_quote_state_get_label (RcQuoteState state)
{
  static const char *const labels[] = { N_ ("Waiting"), N_ ("Accepted"), N_ ("Declined"), N_ ("Replaced") };

  g_return_val_if_fail ((guint)state < RC_N_QUOTE_STATES, "");
  return _ (labels[state]);
}

gboolean
rc_store_mark_quote (RcStore *store, const char *number, RcQuoteState state, const char *day, const char *notes,
                     GError **error)
{
  g_autofree char *doing = NULL;
  gint64           n_found;

  g_return_val_if_fail (store != NULL && number != NULL && day != NULL && (guint)state < RC_N_QUOTE_STATES, FALSE);

  doing = g_strdup_printf (_ ("Noting what became of quotation %s"), number);
  if (!rc_query_find_integer (store, "SELECT count (*) FROM issued_quotations WHERE number = ?",
                              RC_VALUES (rc_value_text (number)), 0, &n_found, error))
    return FALSE;
  if (n_found == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no quotation %s in the store."), number);
      return FALSE;
    }
  if (!rc_store_begin (store, doing, error))
    return FALSE;
  /* Of options issued together the customer takes one. */
  if ((state == RC_QUOTE_ACCEPTED && !mark_offer (store, number, RC_QUOTE_DECLINED, day, error))
      || !mark_within (store, number, state, day, notes, error))
    return rc_store_rollback (store);
  return rc_store_commit (store, doing, error);
}

gboolean
rc_store_keep_paper (RcStore *store, const char *number, GBytes *pdf, GError **error)
{
  g_autofree char *doing = NULL, *digest = NULL;

  g_return_val_if_fail (store != NULL && number != NULL && pdf != NULL, FALSE);

  doing = g_strdup_printf (_ ("Keeping the paper of quotation %s"), number);
  if (!rc_store_begin (store, doing, error))
    return FALSE;
  digest = rc_file_store_add (store, pdf, error);
  if (digest == NULL
      || !rc_query_run (store, "INSERT INTO issued_papers (number, digest) VALUES (?, ?)",
                        RC_VALUES (rc_value_text (number), rc_value_text (digest)), error))
    return rc_store_rollback (store);
  return rc_store_commit (store, doing, error);
}

GBytes *
rc_store_load_paper (RcStore *store, const char *number, GError **error)
{
  g_autofree char *digest = NULL;

  g_return_val_if_fail (store != NULL && number != NULL, NULL);

  {
    g_auto (RcQuery) query = { 0 };

    if (!rc_query_start (&query, store, "SELECT digest FROM issued_papers WHERE number = ?",
                         RC_VALUES (rc_value_text (number)), error))
      return NULL;
    if (rc_query_next (&query, error))
      digest = rc_query_dup_text (&query, 0);
    else if (query.failed)
      return NULL;
  }
  if (digest != NULL)
    return rc_store_load_file (store, digest, error);
  g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("The paper of quotation %s was not kept."), number);
  return NULL;
}
