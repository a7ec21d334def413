#include "sheet-set.h"

#include <glib/gi18n-lib.h>

#include "translation.h"

static void
add (RcSheetSet *set, RcSheetKind kind, int order)
{
  RcSheetEntry entry = { kind, order };
  g_array_append_val (set->sheets, entry);
}

/* The quotations of the other ways to do the job; in another language they are made anew. */
static GPtrArray *
word_alternatives (const RcSheetSet *set)
{
  g_autoptr (GPtrArray) as_made = rc_offer_plans_list_alternatives (set->plans);
  GPtrArray *worded;

  if (set->language == NULL)
    return g_steal_pointer (&as_made);
  worded = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_free);
  for (guint i = 1; i < set->plans->len; i++)
    {
      const RcOfferPlan *plan = g_ptr_array_index (set->plans, i);
      const RcOutcome   *outcome = plan->outcome;
      g_autoptr (GPtrArray) quantities
          = plan->fault == NULL ? rc_quantity_compute (outcome->plan, outcome->book->goods, NULL) : NULL;
      RcQuote *quote = quantities != NULL ? rc_outcome_new_quote (outcome, quantities, NULL) : NULL;

      if (quote == NULL)
        continue;
      quote->option = g_strdup (plan->name);
      g_ptr_array_add (worded, quote);
    }
  return worded;
}

/* Lines are worded when they are made. */
static void
word_lines (RcSheetSet *set)
{
  const RcOutcome *outcome = set->outcome;

  rc_translation_begin (set->language);
  if (set->language != NULL && outcome->quantities != NULL)
    set->quantities = rc_quantity_compute (outcome->plan, outcome->book->goods, NULL);
  if (set->quantities != NULL && outcome->quote != NULL)
    set->quote = rc_outcome_new_quote (outcome, set->quantities, NULL);
  if (set->quote != NULL)
    set->quote->option = g_strdup (outcome->quote->option);
  if (outcome->quote != NULL)
    set->orders = rc_order_new_all (outcome->job, outcome->plan,
                                    set->quantities != NULL ? set->quantities : outcome->quantities, outcome->book,
                                    outcome->date, NULL);
  set->alternatives = word_alternatives (set);
  rc_translation_end ();
}

RcSheetSet *
rc_sheet_set_new (RcOutcome *outcome, const GPtrArray *plans, const char *language)
{
  RcSheetSet *set = g_new0 (RcSheetSet, 1);

  set->outcome = rc_outcome_ref (outcome);
  set->language = g_strdup (language);
  set->plans = plans ? g_ptr_array_ref ((GPtrArray *)plans) : g_ptr_array_new ();
  word_lines (set);
  set->sheets = g_array_new (FALSE, FALSE, sizeof (RcSheetEntry));
  if (outcome->quote)
    add (set, RC_SHEET_QUOTATION, -1);
  add (set, RC_SHEET_SEAM_PLAN, -1);
  add (set, RC_SHEET_FITTERS, -1);
  add (set, RC_SHEET_CUT_LIST, -1);
  add (set, RC_SHEET_ROLL_LABELS, -1);
  for (guint i = 0; set->orders && i < set->orders->len; i++)
    add (set, RC_SHEET_ORDER, (int)i);
  if (outcome->plan->areas->len > 0)
    add (set, RC_SHEET_OPTIONS, -1);
  if (outcome->quote && set->alternatives->len > 0)
    add (set, RC_SHEET_ALTERNATIVES, -1);
  add (set, RC_SHEET_JOB_SUMMARY, -1);
  return set;
}

void
rc_sheet_set_free (RcSheetSet *set)
{
  g_clear_pointer (&set->orders, g_ptr_array_unref);
  g_clear_pointer (&set->quote, rc_quote_free);
  g_clear_pointer (&set->quantities, g_ptr_array_unref);
  g_clear_pointer (&set->alternatives, g_ptr_array_unref);
  g_clear_pointer (&set->plans, g_ptr_array_unref);
  g_clear_pointer (&set->sheets, g_array_unref);
  g_clear_pointer (&set->language, g_free);
  g_clear_pointer (&set->outcome, rc_outcome_unref);
  g_free (set);
}

int
rc_sheet_set_find (const RcSheetSet *set, RcSheetKind kind)
{
  for (guint i = 0; i < set->sheets->len; i++)
    if (g_array_index (set->sheets, RcSheetEntry, i).kind == kind)
      return (int)i;
  return -1;
}

const RcOrder *
rc_sheet_set_get_order (const RcSheetSet *set, guint sheet)
{
  int order = g_array_index (set->sheets, RcSheetEntry, sheet).order;
  return order >= 0 ? g_ptr_array_index (set->orders, order) : NULL;
}

char *
rc_sheet_set_dup_label (const RcSheetSet *set, guint sheet)
{
  const RcOrder *order = rc_sheet_set_get_order (set, sheet);
  const char    *label = rc_sheet_kind_get_label (rc_sheet_set_get_kind (set, sheet));

  if (order == NULL)
    return g_strdup (label);
  return g_strdup_printf (_ ("%s: %s"), label, *order->supplier ? order->supplier : _ ("supplier not named"));
}

/* Letters, digits, dots and dashes; all else becomes a dash, so that nothing in a name can lead out of a folder. */
static void
append_safe (GString *name, const char *text)
{
  for (const char *p = text ? text : ""; *p; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      if (g_unichar_isalnum (c))
        g_string_append_unichar (name, c);
      else if (name->len && name->str[name->len - 1] != '-')
        g_string_append_c (name, '-');
    }
}

char *
rc_sheet_set_dup_file_name (const RcSheetSet *set, guint sheet)
{
  const RcOrder *order = rc_sheet_set_get_order (set, sheet);
  const RcJob   *job = set->outcome->job;
  GString       *name = g_string_new (NULL);

  append_safe (name, job->number && *job->number ? job->number : job->id);
  g_string_append_c (name, '-');
  append_safe (name, rc_sheet_kind_get_name (rc_sheet_set_get_kind (set, sheet)));
  if (order)
    {
      g_string_append_c (name, '-');
      append_safe (name, order->supplier);
    }
  g_string_append (name, ".pdf");
  return g_string_free (name, FALSE);
}

RcSheetKind
rc_sheet_set_get_kind (const RcSheetSet *set, guint sheet)
{
  return g_array_index (set->sheets, RcSheetEntry, sheet).kind;
}

void
rc_sheet_set_get_data (const RcSheetSet *set, guint sheet, RcPaper paper, const char *number, RcSheetData *data)
{
  const RcOutcome *outcome = set->outcome;

  *data = (RcSheetData){
    .plan = outcome->plan,
    .quantities = set->quantities != NULL ? set->quantities : outcome->quantities,
    .quote = set->quote != NULL ? set->quote : outcome->quote,
    .alternatives = set->alternatives,
    .order = rc_sheet_set_get_order (set, sheet),
    .book = outcome->book,
    .number = number,
    .date = outcome->date,
    .paper = paper,
    .accepted = rc_held_get_accepted_for (outcome->held, outcome->job, outcome->measure->id),
    .accepted_as = outcome->held != NULL ? outcome->held->accepted_as : NULL,
    .language = set->language,
  };
}
