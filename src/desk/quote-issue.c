#include "quote-issue.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "rowcut-error.h"
#include "sheet-set.h"

/* The sheet as it is printed, in the customer's language, kept beside the frozen figures. `variation`: what it is of;
 * NULL: the outcome's quotation. */
static gboolean
keep_paper (RcStore *store, RcOutcome *outcome, const RcQuote *variation, const char *number, RcPaper paper,
            GError **error)
{
  g_autoptr (RcSheetSet) set = rc_sheet_set_new (outcome, outcome->job->customer.language);
  g_autofree char *path = NULL, *contents = NULL;
  RcSheetData      data;
  gsize            length;
  int              file = g_file_open_tmp ("rowcut-XXXXXX.pdf", &path, error);
  gboolean         done;

  if (file < 0 || !g_close (file, error))
    return FALSE;
  rc_sheet_set_get_data (set, (guint)rc_sheet_set_find (set, RC_SHEET_QUOTATION), paper, number, &data);
  if (variation != NULL)
    data.quote = variation;
  done = rc_sheet_write_pdf (RC_SHEET_QUOTATION, &data, path, error)
         && g_file_get_contents (path, &contents, &length, error);
  g_unlink (path);
  if (!done)
    return FALSE;
  g_autoptr (GBytes) bytes = g_bytes_new_take (g_steal_pointer (&contents), length);
  return rc_store_keep_paper (store, number, bytes, error);
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

/* The job as it stands, then each other way to do it. (transfer full) GPtrArray of RcOutcome. */
static GPtrArray *
plan_offer (RcOutcome *outcome, GError **error)
{
  g_autoptr (GPtrArray) outcomes = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_outcome_unref);
  const GPtrArray *alternatives = outcome->job->offer->alternatives;

  g_ptr_array_add (outcomes, rc_outcome_ref (outcome));
  for (guint i = 0; i < alternatives->len; i++)
    {
      g_autoptr (RcJob) job
          = rc_job_new_alternative (outcome->job, outcome->measure->id, g_ptr_array_index (alternatives, i), error);
      RcOutcome *other = job != NULL ? rc_outcome_new (job, outcome->measure->id, outcome->book, outcome->date, 0,
                                                       outcome, NULL, NULL, NULL, error)
                                     : NULL;

      if (other != NULL)
        g_ptr_array_add (outcomes, other);
      if (other == NULL || !has_price (other, error))
        return NULL;
    }
  return g_steal_pointer (&outcomes);
}

/* The papers of all that was issued with `number`, in the order of `outcomes`. */
static gboolean
keep_papers (RcStore *store, const GPtrArray *outcomes, const char *number, RcPaper paper, GError **error)
{
  const RcOutcome *first = g_ptr_array_index (outcomes, 0);
  g_autoptr (GPtrArray) issued = rc_store_find_quotes (store, first->job->id, error);
  guint at = 0;

  if (issued == NULL)
    return FALSE;
  for (guint i = 0; i < issued->len && at < outcomes->len; i++)
    {
      const RcIssuedQuote *one = g_ptr_array_index (issued, i);
      RcOutcome           *outcome = g_ptr_array_index (outcomes, at);

      if (g_strcmp0 (one->number, number) != 0 && g_strcmp0 (one->offer, number) != 0)
        continue;
      if (!keep_paper (store, outcome, NULL, one->number, paper, error))
        return FALSE;
      at++;
    }
  return TRUE;
}

char *
rc_quote_issue (RcStore *store, RcOutcome *outcome, const char *revises, RcPaper paper, GError **error)
{
  g_autoptr (GPtrArray) outcomes = has_price (outcome, error) ? plan_offer (outcome, error) : NULL;
  g_autoptr (GPtrArray) quotes = g_ptr_array_new ();
  g_autofree char *number = NULL;

  if (outcomes == NULL)
    return NULL;
  for (guint i = 0; i < outcomes->len; i++)
    g_ptr_array_add (quotes, ((const RcOutcome *)g_ptr_array_index (outcomes, i))->quote);
  number = rc_store_issue_offer (store, outcome->job, quotes, revises, outcome->date, error);
  if (number == NULL || !keep_papers (store, outcomes, number, paper, error))
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
  if (issued == NULL || !keep_paper (store, outcome, variation, issued, paper, error))
    return NULL;
  return g_steal_pointer (&issued);
}
