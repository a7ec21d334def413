#include "quote-issue.h"

#include <glib/gi18n-lib.h>

#include "offer-plans.h"
#include "rowcut-error.h"
#include "sheet-set.h"
#include "translation.h"

/* The sheets as the customer gets them: what is frozen is worded like the paper that is kept beside it. `plans` (of
 * RcOfferPlan, nullable): the ways shown side by side. */
static RcSheetSet *
set_new (RcOutcome *outcome, const GPtrArray *plans)
{
  return rc_sheet_set_new (outcome, plans, outcome->job->customer.language);
}

static void
get_data (const RcSheetSet *set, RcPaper paper, const char *number, RcSheetData *data)
{
  rc_sheet_set_get_data (set, (guint)rc_sheet_set_find (set, RC_SHEET_QUOTATION), paper, number, data);
}

static gboolean
keep_paper (RcStore *store, const RcSheetData *data, GError **error)
{
  g_autoptr (GBytes) pdf = rc_sheet_make_pdf (RC_SHEET_QUOTATION, data, error);

  return pdf != NULL && rc_store_keep_paper (store, data->number, pdf, error);
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

/* The papers of all that was issued with `number`, in the order of `sets` (of RcSheetSet). */
static gboolean
keep_papers (RcStore *store, const GPtrArray *sets, const char *number, RcPaper paper, GError **error)
{
  const RcSheetSet *first = g_ptr_array_index (sets, 0);
  g_autoptr (GPtrArray) issued = rc_store_find_quotes (store, first->outcome->job->id, error);
  guint at = 0;

  if (issued == NULL)
    return FALSE;
  for (guint i = 0; i < issued->len && at < sets->len; i++)
    {
      const RcIssuedQuote *one = g_ptr_array_index (issued, i);
      RcSheetData          data;

      if (g_strcmp0 (one->number, number) != 0 && g_strcmp0 (one->offer, number) != 0)
        continue;
      get_data (g_ptr_array_index (sets, at), paper, one->number, &data);
      if (!keep_paper (store, &data, error))
        return FALSE;
      at++;
    }
  return TRUE;
}

char *
rc_quote_issue (RcStore *store, const GPtrArray *plans, const char *revises, RcPaper paper, GError **error)
{
  const RcOutcome *outcome = plans->len > 0 ? ((const RcOfferPlan *)g_ptr_array_index (plans, 0))->outcome : NULL;
  g_autoptr (GPtrArray) sets = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_sheet_set_free);
  g_autoptr (GPtrArray) quotes = g_ptr_array_new ();
  g_autofree char *number = NULL;

  if (!has_price (outcome, error) || !have_prices (plans, error))
    return NULL;
  for (guint i = 0; i < plans->len; i++)
    {
      RcSheetSet *set = set_new (((const RcOfferPlan *)g_ptr_array_index (plans, i))->outcome, i == 0 ? plans : NULL);
      RcSheetData data;

      get_data (set, paper, NULL, &data);
      g_ptr_array_add (sets, set);
      g_ptr_array_add (quotes, (RcQuote *)data.quote);
    }
  number = rc_store_issue_offer (store, outcome->job, quotes, revises, outcome->date, error);
  if (number == NULL || !keep_papers (store, sets, number, paper, error))
    return NULL;
  return g_steal_pointer (&number);
}

/* In the customer's language: the lines as they are now, as those of `before` were when it was issued. */
static RcQuote *
new_variation (const RcQuote *before, const RcQuote *after, const char *language, GError **error)
{
  RcQuote *variation;

  rc_translation_begin (language);
  variation = rc_quote_new_variation (before, after, error);
  rc_translation_end ();
  return variation;
}

/* What a variation of that quotation starts from: where it is accepted, with the variations of it that are. *numbers
 * (transfer full) are those of all of them. */
static RcQuote *
load_before (RcStore *store, const RcOutcome *outcome, const char *number, char **numbers, GError **error)
{
  g_autoptr (RcHeld) held = rc_store_load_held (store, outcome->job, error);
  g_auto (GStrv) accepted = held != NULL && held->accepted_as != NULL ? g_strsplit (held->accepted_as, ", ", -1) : NULL;

  if (held == NULL)
    return NULL;
  if (accepted == NULL || !g_strv_contains ((const char *const *)accepted, number))
    {
      *numbers = g_strdup (number);
      return rc_store_load_quote (store, number, error);
    }
  *numbers = g_strdup (held->accepted_as);
  return g_steal_pointer (&held->accepted);
}

char *
rc_quote_issue_variation (RcStore *store, RcOutcome *outcome, const char *number, RcPaper paper, GError **error)
{
  g_autofree char *numbers = NULL;
  g_autoptr (RcQuote) before
      = has_price (outcome, error) ? load_before (store, outcome, number, &numbers, error) : NULL;
  g_autoptr (RcSheetSet) set = before != NULL ? set_new (outcome, NULL) : NULL;
  g_autoptr (RcQuote) variation = NULL;
  g_autofree char *issued = NULL;
  RcSheetData      data;

  if (set == NULL)
    return NULL;
  get_data (set, paper, NULL, &data);
  variation = new_variation (before, data.quote, set->language, error);
  if (variation == NULL)
    return NULL;
  if (variation->lines->len == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("Nothing differs from quotation %s: there is no variation."),
                   numbers);
      return NULL;
    }
  issued = rc_store_issue_quote (store, outcome->job, variation, outcome->date, error);
  data.quote = variation;
  data.changes = numbers;
  data.number = issued;
  if (issued == NULL || !keep_paper (store, &data, error))
    return NULL;
  return g_steal_pointer (&issued);
}
