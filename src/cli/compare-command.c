#include "compare-command.h"

#include "job-work.h"
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

int
rc_compare_command_run (int argc, char **argv)
{
  g_auto (RcJobOptions) options = { 0 };
  const RcCommandUsage usage = {
    .name = "compare",
    .parameters = "JOB.xml M1 M2",
    .summary = _ ("Says what changes from one measure of a job to another: rooms, cuts, material, price."),
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
  changes = rc_compare (before->plan, before->quote, after->plan, after->quote);
  if (options.json)
    return print_json (before, after, changes);
  print_text (before, after, changes);
  return RC_EXIT_DONE;
}
