#include "quote-issue.h"

#include <glib/gi18n-lib.h>

#include "offer-plans.h"
#include "rowcut-error.h"
#include "sheet-set.h"

typedef struct
{
  const RcQuote *quote;
  const char    *changes; /* the number of the quotation before */
} Variation;

/* The sheet as it is printed, in the customer's language, kept beside the frozen figures. `plans` (of RcOfferPlan,
 * nullable): the ways shown side by side. `variation`: what it is of; NULL: the outcome's quotation. */
static gboolean
keep_paper (RcStore *store, RcOutcome *outcome, const GPtrArray *plans, const Variation *variation, const char *number,
            RcPaper paper, GError **error)
{
  g_autoptr (RcSheetSet) set = rc_sheet_set_new (outcome, plans, outcome->job->customer.language);
  g_autoptr (GBytes) pdf = NULL;
  RcSheetData data;

  rc_sheet_set_get_data (set, (guint)rc_sheet_set_find (set, RC_SHEET_QUOTATION), paper, number, &data);
  if (variation != NULL)
    {
      data.quote = variation->quote;
      data.changes = variation->changes;
    }
  pdf = rc_sheet_make_pdf (RC_SHEET_QUOTATION, &data, error);
  return pdf != NULL && rc_store_keep_paper (store, number, pdf, error);
}

static gboolean
has_price (const RcOutcome *outcome, GError **error)
{
  if (outcome != NULL && outcome->quote != NULL)
    return TRUE;
  if (outcome != NULL && outcome->price_fault != NULL)
    g_propagate_error (error, g_error_copy (outcome->price_fault));
  else
    g_set_error_literal (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("The job has no price yet: nothing can be issued."));
  return FALSE;
}

/* Each way to do the job must have one. */
static gboolean
have_prices (const GPtrArray *plans, GError **error)
{
  for (guint i = 0; i < plans->len; i++)
    {
      const RcOfferPlan *plan = g_ptr_array_index (plans, i);

      if (plan->fault == NULL)
        continue;
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, "%s%s%s", plan->name ? plan->name : "", plan->name ? ": " : "",
                   plan->fault);
      return FALSE;
    }
  return TRUE;
}

/* The papers of all that was issued with `number`, in the order of `plans`. */
static gboolean
keep_papers (RcStore *store, const GPtrArray *plans, const char *number, RcPaper paper, GError **error)
{
  const RcOutcome *first = ((const RcOfferPlan *)g_ptr_array_index (plans, 0))->outcome;
  g_autoptr (GPtrArray) issued = rc_store_find_quotes (store, first->job->id, error);
  guint at = 0;

  if (issued == NULL)
    return FALSE;
  for (guint i = 0; i < issued->len && at < plans->len; i++)
    {
      const RcIssuedQuote *one = g_ptr_array_index (issued, i);
      RcOutcome           *outcome = ((const RcOfferPlan *)g_ptr_array_index (plans, at))->outcome;

      if (g_strcmp0 (one->number, number) != 0 && g_strcmp0 (one->offer, number) != 0)
        continue;
      if (!keep_paper (store, outcome, at == 0 ? plans : NULL, NULL, one->number, paper, error))
        return FALSE;
      at++;
    }
  return TRUE;
}

char *
rc_quote_issue (RcStore *store, const GPtrArray *plans, const char *revises, RcPaper paper, GError **error)
{
  const RcOutcome *outcome = plans->len > 0 ? ((const RcOfferPlan *)g_ptr_array_index (plans, 0))->outcome : NULL;
  g_autoptr (GPtrArray) quotes = g_ptr_array_new ();
  g_autofree char *number = NULL;

  if (!has_price (outcome, error) || !have_prices (plans, error))
    return NULL;
  for (guint i = 0; i < plans->len; i++)
    g_ptr_array_add (quotes, ((const RcOfferPlan *)g_ptr_array_index (plans, i))->outcome->quote);
  number = rc_store_issue_offer (store, outcome->job, quotes, revises, outcome->date, error);
  if (number == NULL || !keep_papers (store, plans, number, paper, error))
    return NULL;
  return g_steal_pointer (&number);
}

char *
rc_quote_issue_variation (RcStore *store, RcOutcome *outcome, const char *number, RcPaper paper, GError **error)
{
  g_autoptr (RcQuote) before = has_price (outcome, error) ? rc_store_load_quote (store, number, error) : NULL;
  g_autoptr (RcQuote) variation = before != NULL ? rc_quote_new_variation (before, outcome->quote, error) : NULL;
  g_autofree char *issued = NULL;

  if (variation == NULL)
    return NULL;
  if (variation->lines->len == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("Nothing differs from quotation %s: there is no variation."),
                   number);
      return NULL;
    }
  issued = rc_store_issue_quote (store, outcome->job, variation, outcome->date, error);
  if (issued == NULL || !keep_paper (store, outcome, NULL, &(Variation){ variation, number }, issued, paper, error))
    return NULL;
  return g_steal_pointer (&issued);
}
