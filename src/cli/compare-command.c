#include "compare-command.h"

#include "job-work.h"
#include "lines.h"
#include "remeasure.h"
#include "shop-store.h"
#include "json-out.h"
#include "text-table.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

static const char *
get_kind_name (RcChangeKind kind)
{
  switch (kind)
    {
    case RC_CHANGE_ADDED:
      return "added";
    case RC_CHANGE_REMOVED:
      return "removed";
    case RC_CHANGE_CHANGED:
      return "changed";
    }
  g_return_val_if_reached ("");
}

static const char *
get_kind_label (RcChangeKind kind)
{
  switch (kind)
    {
    case RC_CHANGE_ADDED:
      return _ ("added");
    case RC_CHANGE_REMOVED:
      return _ ("removed");
    case RC_CHANGE_CHANGED:
      return _ ("changed");
    }
  g_return_val_if_reached ("");
}

static void
add_side (RcJson *json, const char *name, const RcJobWork *work)
{
  rc_json_begin_object (json, name);
  rc_json_add_string (json, "measure", work->measure->id);
  rc_json_add_length (json, "carpet_length", work->plan->carpet_length);
  rc_json_add_area (json, "carpet_area", work->plan->carpet_area);
  rc_json_add_money (json, "total", work->quote->total, &work->quote->currency);
  rc_json_add_string (json, "currency", work->quote->currency.code);
  rc_json_end_object (json);
}

static int
print_json (const RcJobWork *before, const RcJobWork *after, const GPtrArray *changes)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "job", rc_job_work_get_number (before));
  add_side (json, "before", before);
  add_side (json, "after", after);
  rc_json_begin_array (json, "changes");
  for (guint i = 0; i < changes->len; i++)
    {
      const RcChange *change = g_ptr_array_index (changes, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "kind", get_kind_name (change->kind));
      rc_json_add_string (json, "what", change->what);
      rc_json_add_string (json, "name", change->name);
      rc_json_add_string (json, "before", change->before);
      rc_json_add_string (json, "after", change->after);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

static void
print_text (const RcJobWork *before, const RcJobWork *after, const GPtrArray *changes)
{
  g_autoptr (RcTextTable) table = rc_text_table_new ("lllll");

  if (changes->len == 0)
    {
      printf (_ ("Nothing changes from %s to %s.\n"), before->measure->id, after->measure->id);
      return;
    }
  rc_text_table_add (table, "");
  rc_text_table_add (table, _ ("What"));
  rc_text_table_add (table, _ ("Name"));
  rc_text_table_add (table, before->measure->id);
  rc_text_table_add (table, after->measure->id);
  for (guint i = 0; i < changes->len; i++)
    {
      const RcChange *change = g_ptr_array_index (changes, i);

      rc_text_table_add (table, get_kind_label (change->kind));
      rc_text_table_add (table, change->what);
      rc_text_table_add (table, change->name);
      rc_text_table_add (table, change->before);
      rc_text_table_add (table, change->after);
    }
  rc_text_table_print (table, TRUE);
}

/* The job brought to a price as it was measured in `measure`. */
static RcJobWork *
price_measure (const char *path, RcJobOptions *options, GError **error)
{
  g_autoptr (RcJobWork) work = rc_job_work_new (path, options, error);

  if (work == NULL || !rc_job_work_price (work, error))
    return NULL;
  return g_steal_pointer (&work);
}

/* --- what is cut is used first --- */

static RcHeld *
load_held (const RcJobWork *work, GError **error)
{
  g_autoptr (RcStore) store = rc_shop_store_open (work->options->store, error);

  return store != NULL ? rc_store_load_held (store, work->job, error) : NULL;
}

static RcRemeasure *
remeasure (const RcJobWork *before, const RcJobWork *after, const RcHeld *held, GError **error)
{
  g_autoptr (RcJob) job = rc_held_dup_whole_job (held, after->job);

  return rc_remeasure_new (job, after->measure->id, before->plan, held->goods, after->book, after->options->date,
                           after->options->seconds, error);
}

/* From what the customer has accepted, or where nothing is, from the quotation of the measure before. */
static RcQuote *
new_variation (const RcJobWork *before, const RcHeld *held, const RcCure *cure, const char *date, GError **error)
{
  const RcCharged charged = { held, cure->plan, before->plan, held->accepted != NULL ? held->accepted : before->quote };
  g_autoptr (GPtrArray) quantities = rc_quantity_compute (cure->plan, before->book->goods, error);
  g_autoptr (RcQuote) quote
      = quantities != NULL ? rc_quote_new_after (&charged, cure->job, quantities, before->book, date, error) : NULL;

  return quote != NULL ? rc_quote_new_variation (charged.before, quote, error) : NULL;
}

static int
print_cures_json (const RcRemeasure *found, const RcQuote *variation)
{
  const RcCurrency *currency = &variation->currency;
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_begin_array (json, "shortfalls");
  for (guint i = 0; i < found->shortfalls->len; i++)
    rc_json_add_string (json, NULL, g_ptr_array_index (found->shortfalls, i));
  rc_json_end_array (json);
  rc_json_begin_array (json, "cures");
  for (guint i = 0; i < found->cures->len; i++)
    {
      const RcCure *cure = g_ptr_array_index (found->cures, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "name", cure->name);
      rc_json_add_money (json, "cost", cure->cost, currency);
      rc_json_begin_array (json, "extra");
      for (guint k = 0; k < cure->extra->len; k++)
        rc_json_add_string (json, NULL, g_ptr_array_index (cure->extra, k));
      rc_json_end_array (json);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
  rc_json_begin_object (json, "variation");
  rc_lines_add_quote_json (json, variation->lines, currency, FALSE);
  rc_json_add_money (json, "net", variation->net, currency);
  rc_json_add_money (json, "tax", variation->tax, currency);
  rc_json_add_money (json, "total", variation->total, currency);
  rc_json_end_object (json);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

static void
print_cures (const RcRemeasure *found, const RcQuote *variation)
{
  for (guint i = 0; i < found->shortfalls->len; i++)
    printf ("%s\n", (const char *)g_ptr_array_index (found->shortfalls, i));
  if (found->shortfalls->len == 0)
    printf ("%s\n", _ ("What is cut still covers the floor it was cut for."));
  for (guint i = 0; i < found->cures->len; i++)
    {
      const RcCure    *cure = g_ptr_array_index (found->cures, i);
      g_autofree char *cost = rc_money_format (cure->cost, &variation->currency);

      printf (i == 0 ? _ ("\nCheapest cure: %s, %s from here on\n") : _ ("\nOr: %s, %s from here on\n"), cure->name,
              cost);
      for (guint k = 0; k < cure->extra->len; k++)
        printf ("  %s\n", (const char *)g_ptr_array_index (cure->extra, k));
    }
  printf ("\n%s\n\n", _ ("Variation for the customer"));
  rc_lines_print_quote (variation->lines, &variation->currency);
  rc_lines_print_sums (variation->discount, variation->net, variation->tax, variation->total, &variation->currency);
}

static int
run_remeasure (const RcJobWork *before, const RcJobWork *after, GError **error)
{
  g_autoptr (RcHeld) held = load_held (after, error);
  g_autoptr (RcRemeasure) found = held != NULL ? remeasure (before, after, held, error) : NULL;
  g_autoptr (RcQuote) variation
      = found != NULL ? new_variation (before, held, g_ptr_array_index (found->cures, 0), after->options->date, error)
                      : NULL;

  if (variation == NULL)
    return RC_EXIT_FAILED;
  if (after->options->json)
    return print_cures_json (found, variation);
  print_cures (found, variation);
  return RC_EXIT_DONE;
}

int
rc_compare_command_run (int argc, char **argv)
{
  g_auto (RcJobOptions) options = { 0 };
  gboolean           cut = FALSE;
  const GOptionEntry entries[] = {
    { "cut", 0, 0, G_OPTION_ARG_NONE, &cut, N_ ("Plan with what the store says is cut for the job already"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  const RcCommandUsage usage = {
    .name = "compare",
    .parameters = "JOB.xml M1 M2",
    .summary = _ ("Says what changes from one measure of a job to another: rooms, cuts, material, price."),
    .entries = entries,
    .job_options = &options,
    .n_least = 3,
    .n_most = 3,
  };
  g_auto (GStrv) arguments = NULL;
  g_autoptr (RcJobWork) before = NULL;
  g_autoptr (RcJobWork) after = NULL;
  g_autoptr (GPtrArray) changes = NULL;
  g_autoptr (GError) error = NULL;
  RcJobOptions after_options;
  int          status;

  rc_job_options_init (&options);
  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  if (options.measure != NULL)
    return rc_command_fail_usage (usage.name, _ ("--measure does not go with two measures"));
  options.measure = g_strdup (arguments[1]);
  after_options = options;
  after_options.measure = arguments[2];
  before = price_measure (arguments[0], &options, &error);
  after = before != NULL ? price_measure (arguments[0], &after_options, &error) : NULL;
  if (after == NULL)
    return rc_command_fail (usage.name, error);
  if (cut)
    {
      int done = run_remeasure (before, after, &error);

      return error != NULL ? rc_command_fail (usage.name, error) : done;
    }
  changes = rc_compare (before->plan, before->quote, after->plan, after->quote);
  if (options.json)
    return print_json (before, after, changes);
  print_text (before, after, changes);
  return RC_EXIT_DONE;
}
