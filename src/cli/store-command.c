#include "store-command.h"

#include "accounts-command.h"
#include "command.h"
#include "job-file.h"
#include "json-out.h"
#include "price-csv.h"
#include "shop-store.h"
#include "number-commands.h"
#include "text-table.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

typedef RcStoreOptions StoreOptions;

typedef struct
{
  const char *name;
  const char *parameters;
  const char *summary;
  int         n_least, n_most;
  int (*run) (RcStore *store, const StoreOptions *options, GStrv arguments);
  gboolean may_make; /* the store, when it is not there */
  /* In place of `run`: with the store's path, for a store that may not open. Nullable. */
  int (*run_closed) (const char *path, GStrv arguments);
  /* What is wrong with how the command is used, for people; NULL when nothing is. Nullable. */
  const char *(*find_fault) (const StoreOptions *options, GStrv arguments);
} StoreCommand;

int
rc_store_run_fail (const char *what, const GError *error)
{
  g_autofree char *command = g_strconcat ("store ", what, NULL);

  return rc_command_fail (command, error);
}

static int
run_check (RcStore *store, const StoreOptions *options, GStrv arguments)
{
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_sound = rc_store_check (store, &report, &error);

  if (error != NULL)
    return rc_store_run_fail ("check", error);
  if (options->json)
    {
      g_autoptr (RcJson) json = rc_json_new ();
      g_auto (GStrv) faults = g_strsplit (report != NULL ? report : "", "\n", -1);

      rc_json_begin_object (json, NULL);
      rc_json_add_bool (json, "sound", is_sound);
      rc_json_begin_array (json, "faults");
      for (guint i = 0; faults[i] != NULL && !is_sound; i++)
        if (faults[i][0] != '\0')
          rc_json_add_string (json, NULL, faults[i]);
      rc_json_end_array (json);
      rc_json_end_object (json);
      return rc_json_print (json) && is_sound ? RC_EXIT_DONE : RC_EXIT_FAILED;
    }
  if (is_sound)
    printf ("%s\n", _ ("The store is sound."));
  else
    fprintf (
        stderr, "%s\n%s\n%s\n", _ ("rowcut-cli store check: the store is not sound:"), report,
        _ ("What to do: move the store's file to another place and keep it. Then “rowcut-cli store backups” lists "
           "the backups, and “rowcut-cli store restore BACKUP” puts one in its place. Jobs that are not named above "
           "can be taken out of the file that was moved: rowcut-cli store export JOB FILE --store MOVED"));
  return is_sound ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

static int
run_backup (RcStore *store, const StoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;

  if (!rc_store_backup (store, arguments[0], &error))
    return rc_store_run_fail ("backup", error);
  printf (_ ("Backed up to %s\n"), arguments[0]);
  return RC_EXIT_DONE;
}

static int
run_backups (const char *path, GStrv arguments)
{
  g_autoptr (GPtrArray) backups = rc_store_find_backups (path);

  for (guint i = 0; i < backups->len; i++)
    printf ("%s\n", (const char *)backups->pdata[i]);
  if (backups->len == 0)
    fprintf (stderr, _ ("There are no daily backups of %s\n"), path);
  return RC_EXIT_DONE;
}

static int
run_restore (const char *path, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *kept = rc_store_restore (path, arguments[0], &error);

  if (kept == NULL)
    return rc_store_run_fail ("restore", error);
  printf (_ ("%s is as it was in %s\n"), path, arguments[0]);
  if (g_file_test (kept, G_FILE_TEST_EXISTS))
    printf (_ ("What was there before is in %s\n"), kept);
  return RC_EXIT_DONE;
}

static gboolean
import_job (RcStore *store, const char *path, const StoreOptions *options, GError **error)
{
  g_autoptr (RcPriceBook) book = NULL;
  g_autoptr (RcJob) job = rc_job_file_read (path, &book, error);
  g_autoptr (RcJob) old = NULL;
  g_autofree char *now = rc_command_dup_now ();
  gint64           revision;

  if (job == NULL || !rc_store_get_revision (store, job->id, &revision, error))
    return FALSE;
  if (revision != 0 && options->as_new)
    {
      g_free (job->id);
      job->id = rc_store_dup_new_job_id (store, error);
      if (job->id == NULL)
        return FALSE;
    }
  else if (revision != 0 && !options->replace)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE,
                   _ ("%s: the store has a job “%s” already; import it with --replace to write over that one (which "
                      "can be undone) or with --new beside it"),
                   path, job->id);
      return FALSE;
    }
  /* The store lets a job be written over only by who has read it. */
  else if (revision != 0)
    {
      old = rc_store_load_job (store, job->id, error);
      if (old == NULL)
        return FALSE;
    }
  if (!rc_store_save_job (store, job, _ ("Import"), now, error))
    return FALSE;
  printf (_ ("%s is job %s\n"), path, job->id);
  return TRUE;
}

static gboolean
import_prices (RcStore *store, const char *path, GError **error)
{
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, error);
  g_autoptr (RcPriceBook) read = NULL;
  g_autofree char *csv = NULL;

  if (book == NULL || !g_file_get_contents (path, &csv, NULL, error))
    return FALSE;
  read = rc_price_csv_parse (csv, path, &book->currency, error);
  if (read == NULL)
    return FALSE;
  rc_price_book_take_list (book, read);
  if (!rc_store_save_price_book (store, book, error))
    return FALSE;
  printf (ngettext ("%s: %u price\n", "%s: %u prices\n", read->prices->len), path, read->prices->len);
  return TRUE;
}

static const char *
find_import_fault (const StoreOptions *options, GStrv arguments)
{
  return options->replace && options->as_new ? _ ("--replace and --new do not go together") : NULL;
}

static int
run_import (RcStore *store, const StoreOptions *options, GStrv arguments)
{
  for (guint i = 0; arguments[i] != NULL; i++)
    {
      g_autoptr (GError) error = NULL;
      gboolean done = options->prices ? import_prices (store, arguments[i], &error)
                                      : import_job (store, arguments[i], options, &error);

      if (!done)
        return rc_store_run_fail ("import", error);
    }
  return RC_EXIT_DONE;
}

static gboolean
export_job (RcStore *store, const char *id, const char *path, GError **error)
{
  g_autoptr (RcJob) job = rc_store_load_job (store, id, error);

  return job != NULL && rc_job_file_write (job, NULL, path, error);
}

static gboolean
export_prices (RcStore *store, const char *path, GError **error)
{
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, error);
  g_autofree char *csv = book != NULL ? rc_price_csv_format (book) : NULL;

  return csv != NULL && g_file_set_contents (path, csv, -1, error);
}

static const char *
find_export_fault (const StoreOptions *options, GStrv arguments)
{
  return g_strv_length (arguments) == (options->prices ? 1 : 2) ? NULL : _ ("wanted: JOB FILE, or --prices FILE");
}

static int
run_export (RcStore *store, const StoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  const char *path = arguments[options->prices ? 0 : 1];

  if (!options->replace && g_file_test (path, G_FILE_TEST_EXISTS))
    g_set_error (&error, RC_ERROR, RC_ERROR_STORE, _ ("“%s” is there already; --replace writes over it"), path);
  else if (options->prices ? export_prices (store, path, &error) : export_job (store, arguments[0], path, &error))
    {
      printf (_ ("Written to %s\n"), path);
      return RC_EXIT_DONE;
    }
  return rc_store_run_fail ("export", error);
}

static int
print_jobs_json (const GPtrArray *jobs)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_begin_array (json, "jobs");
  for (guint i = 0; i < jobs->len; i++)
    {
      const RcJobSummary *job = g_ptr_array_index (jobs, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "id", job->id);
      rc_json_add_string (json, "number", job->number);
      rc_json_add_string (json, "title", job->title);
      rc_json_add_string (json, "customer", job->customer);
      rc_json_add_string (json, "address", job->address);
      rc_json_add_string (json, "date", job->date);
      rc_json_add_string (json, "changed", job->changed);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

static int
run_jobs (RcStore *store, const StoreOptions *options, GStrv arguments)
{
  g_autofree char *words = g_strjoinv (" ", arguments);
  g_autoptr (RcTextTable) table = rc_text_table_new ("lllll");
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) jobs = rc_store_find_jobs (store, words, &error);

  if (jobs == NULL)
    return rc_store_run_fail ("jobs", error);
  if (options->json)
    return print_jobs_json (jobs);
  rc_text_table_add (table, _ ("Job"));
  rc_text_table_add (table, _ ("Number"));
  rc_text_table_add (table, _ ("Date"));
  rc_text_table_add (table, _ ("Customer"));
  rc_text_table_add (table, _ ("Title"));
  for (guint i = 0; i < jobs->len; i++)
    {
      const RcJobSummary *job = g_ptr_array_index (jobs, i);

      rc_text_table_add (table, job->id);
      rc_text_table_add (table, job->number);
      rc_text_table_add (table, job->date);
      rc_text_table_add (table, job->customer);
      rc_text_table_add (table, job->title);
    }
  rc_text_table_print (table, TRUE);
  return RC_EXIT_DONE;
}

static const StoreCommand commands[] = {
  { "check", "", N_ ("Checks the store from end to end and says what is wrong."), 0, 0, run_check, FALSE, NULL, NULL },
  { "backup", "FILE", N_ ("Copies the store, also while it is in use, to a new file."), 1, 1, run_backup, FALSE, NULL,
    NULL },
  { "backups", "", N_ ("Lists the daily backups, latest first."), 0, 0, NULL, FALSE, run_backups, NULL },
  { "restore", "BACKUP", N_ ("Puts a backup in the place of the store, and keeps what was there beside it."), 1, 1,
    NULL, FALSE, run_restore, NULL },
  { "import", "JOB.xml...", N_ ("Takes job files, or with --prices price lists in CSV, into the store."), 1, G_MAXINT,
    run_import, TRUE, NULL, find_import_fault },
  { "export", "JOB FILE", N_ ("Writes a job as a job file, or with --prices the price book as CSV."), 1, 2, run_export,
    FALSE, NULL, find_export_fault },
  { "jobs", "[WORDS...]", N_ ("Lists the jobs, or those that hold every word."), 0, G_MAXINT, run_jobs, FALSE, NULL,
    NULL },
  { "numbers", "[PATTERN]", N_ ("Shows the pattern of job numbers, or sets it: YYYY-### and the like."), 0, 1,
    rc_store_run_numbers, FALSE, NULL, NULL },
  { "duplicate", "JOB [CUSTOMER]", N_ ("Makes a job from another: new number, no states, nothing that was cut."), 1, 2,
    rc_store_run_duplicate, FALSE, NULL, NULL },
  { "stock", "", N_ ("Lists the rolls in stock and what of each is free."), 0, 0, rc_store_run_stock, FALSE, NULL,
    NULL },
  { "receive", "ROLL GOODS LENGTH [LOT [PLACE]]", N_ ("Puts a new roll into stock."), 3, 5, rc_store_run_receive, FALSE,
    NULL, NULL },
  { "reserve", "ROLL JOB LENGTH", N_ ("Keeps a length of a roll for a job; 0 gives it back."), 3, 3,
    rc_store_run_reserve, FALSE, NULL, NULL },
  { "cut", "ROLL JOB LENGTH [PIECE:WIDTHxLENGTH...]",
    N_ ("Cuts a length off a roll for a job into its pieces; the piece “remnant” comes into stock."), 3, G_MAXINT,
    rc_store_run_cut, FALSE, NULL, NULL },
  { "history", "[ROLL]", N_ ("Lists what happened to the rolls, or to one."), 0, 1, rc_store_run_history, FALSE, NULL,
    NULL },
  { "quotations", "[JOB]", N_ ("Lists the quotations issued."), 0, 1, rc_store_run_quotations, FALSE, NULL, NULL },
  { "accept", "NUMBER", N_ ("Notes that the customer has accepted a quotation."), 1, 1, rc_store_run_accept, FALSE,
    NULL, NULL },
  { "orders", "[JOB]", N_ ("Lists the orders to suppliers."), 0, 1, rc_store_run_orders, FALSE, NULL, NULL },
  { "arrived", "ORDER [LINE [QUANTITY]]", N_ ("Notes what has come in of an order; all that is open by default."), 1, 3,
    rc_store_run_arrived, FALSE, NULL, NULL },
  { "cancel", "ORDER", N_ ("Calls an order off of which nothing has come in."), 1, 1, rc_store_run_cancel, FALSE, NULL,
    NULL },
  { "accounts", "FILE [FROM [TO]]",
    N_ ("Writes what was accepted and what was ordered as CSV, from one day to another, a line a tax rate."), 1, 3,
    rc_store_run_accounts, FALSE, NULL, rc_store_find_accounts_fault },
};

static void
print_commands (FILE *file)
{
  g_autoptr (RcTextTable) table = rc_text_table_new ("lll");
  g_autofree char *text = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      rc_text_table_add (table, "");
      rc_text_table_add_take (table, g_strdup_printf ("%s %s", commands[i].name, commands[i].parameters));
      rc_text_table_add (table, _ (commands[i].summary));
    }
  text = rc_text_table_dup_text (table, FALSE);
  fprintf (file, _ ("Usage: rowcut-cli store COMMAND [--store FILE] ...\n\n"));
  fputs (text, file);
}

static int
run (const StoreCommand *command, int argc, char **argv)
{
  StoreOptions       options = { 0 };
  g_autofree char   *path = NULL;
  const GOptionEntry entries[] = {
    { "store", 0, 0, G_OPTION_ARG_FILENAME, &path, N_ ("The store (default: the user's own)"), "FILE" },
    { "json", 0, 0, G_OPTION_ARG_NONE, &options.json, N_ ("Print one JSON object (check, jobs)"), NULL },
    { "prices", 0, 0, G_OPTION_ARG_NONE, &options.prices, N_ ("Prices instead of jobs (import, export)"), NULL },
    { "replace", 0, 0, G_OPTION_ARG_NONE, &options.replace, N_ ("Write over what is there (import, export)"), NULL },
    { "new", 0, 0, G_OPTION_ARG_NONE, &options.as_new, N_ ("Give a job that is there already a new id (import)"),
      NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_autofree char     *name = g_strconcat ("store ", command->name, NULL);
  const RcCommandUsage usage = {
    .name = name,
    .parameters = command->parameters,
    .summary = _ (command->summary),
    .entries = entries,
    .n_least = command->n_least,
    .n_most = command->n_most,
  };
  g_auto (GStrv) arguments = NULL;
  g_autoptr (RcStore) store = NULL;
  g_autoptr (GError) error = NULL;
  const char *fault;
  int         status;

  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  fault = command->find_fault != NULL ? command->find_fault (&options, arguments) : NULL;
  if (fault != NULL)
    return rc_command_fail_usage (usage.name, "%s", fault);
  if (command->run_closed != NULL)
    {
      g_autofree char *file = path != NULL ? g_strdup (path) : rc_store_dup_default_path ();

      return command->run_closed (file, arguments);
    }
  store = command->may_make ? rc_shop_store_open (path, &error) : rc_shop_store_open_existing (path, &error);
  if (store == NULL)
    return rc_store_run_fail (command->name, error);
  return command->run (store, &options, arguments);
}

int
rc_store_command_run (int argc, char **argv)
{
  if (argc > 1)
    {
      for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
        if (g_str_equal (argv[1], commands[i].name))
          return run (&commands[i], argc - 1, argv + 1);
      if (g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h"))
        {
          print_commands (stdout);
          return RC_EXIT_DONE;
        }
      fprintf (stderr, _ ("rowcut-cli store: there is no command “%s”\n"), argv[1]);
    }
  print_commands (stderr);
  return RC_EXIT_USAGE;
}
