#include <glib/gi18n-lib.h>

#include "job-rows.h"
#include "job-store.h"
#include "revision.h"
#include "schema.h"
#include "search.h"
#include "stair-rows.h"
#include "step.h"

/* More faults of one kind than this are not listed. */
#define MAX_FAULTS "100"

static void add_fault (GString *report, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add_fault (GString *report, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_string_append_vprintf (report, format, arguments);
  va_end (arguments);
  g_string_append_c (report, '\n');
}

/* A fault of what is looked at, not of the looking. */
static void
add_error (GString *report, const char *what, GError **fault)
{
  add_fault (report, "%s: %s", what, (*fault)->message);
  g_clear_error (fault);
}

static gboolean
check_pages (RcStore *store, GString *report, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store, "PRAGMA integrity_check (" MAX_FAULTS ")", NULL, 0, error))
    return FALSE;
  while (rc_query_next (&query, error))
    if (g_strcmp0 (rc_query_get_text (&query, 0), "ok") != 0)
      add_fault (report, _ ("Pages: %s"), rc_query_get_text (&query, 0));
  return !query.failed;
}

static gboolean
check_references (RcStore *store, GString *report, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store,
                       "SELECT \"table\", parent, count (*) FROM pragma_foreign_key_check GROUP BY \"table\", parent",
                       NULL, 0, error))
    return FALSE;
  while (rc_query_next (&query, error))
    add_fault (report, _ ("References: %d rows of %s belong to no row of %s"), (int)rc_query_get_integer (&query, 2),
               rc_query_get_text (&query, 0), rc_query_get_text (&query, 1));
  return !query.failed;
}

static void
check_tables (RcStore *store, GString *report)
{
  g_autoptr (GError) fault = NULL;
  RcSchema schema;

  rc_schema_init_current (&schema);
  if (!rc_schema_check (store->db, store->path, &schema, &fault))
    add_error (report, _ ("Tables"), &fault);
}

/* The index of words against itself. SQLite counts this as writing, though it writes nothing. */
static gboolean
check_search (RcStore *store, GString *report, GError **error)
{
  g_autoptr (GError) fault = NULL;
  gint64 n_stray = 0;

  if (!rc_store_begin (store, _ ("Checking the search"), &fault))
    {
      add_error (report, _ ("Search"), &fault);
      return TRUE;
    }
  if (!rc_query_run (store, "INSERT INTO search (search) VALUES ('integrity-check')", NULL, 0, &fault)
      || !rc_query_find_integer (store, "SELECT count (*) FROM search WHERE rowid NOT IN (SELECT job FROM jobs)", NULL,
                                 0, 0, &n_stray, &fault))
    add_error (report, _ ("Search"), &fault);
  if (n_stray > 0)
    add_fault (report, _ ("Search: words of %d jobs that are not there"), (int)n_stray);
  rc_store_rollback (store);
  return TRUE;
}

/* (transfer full) of RcStep */
static GArray *
read_steps (RcStore *store, const char *job_id, guint *n_done, GError **error)
{
  g_autoptr (GArray) steps = g_array_new (FALSE, FALSE, sizeof (RcStep));
  g_auto (RcQuery) query = { 0 };

  g_array_set_clear_func (steps, (GDestroyNotify)rc_step_clear);
  *n_done = 0;
  if (!rc_query_start (&query, store,
                       "SELECT number, name, deletes, changeset, undone FROM steps WHERE job_id = ? ORDER BY number",
                       RC_VALUES (rc_value_text (job_id)), error))
    return NULL;
  while (rc_query_next (&query, error))
    {
      RcValue changeset = rc_query_get_value (&query, 3);
      RcStep  step = { .number = rc_query_get_integer (&query, 0),
                       .name = rc_query_dup_text (&query, 1),
                       .deletes = rc_query_get_integer (&query, 2) != 0,
                       .changeset = g_bytes_new (changeset.bytes, changeset.size) };

      if (rc_query_get_integer (&query, 4) == 0)
        *n_done = steps->len + 1;
      g_array_append_val (steps, step);
    }
  return query.failed ? NULL : g_steal_pointer (&steps);
}

/* `job` is 0 for one that was deleted. From where the job stands forward to its last step, back to before its first,
 * and forward to where it stood. */
static gboolean
walk_steps (RcStore *store, const GArray *steps, guint n_done, gint64 job, GError **error)
{
  for (guint i = n_done; i < steps->len; i++)
    if (!rc_step_apply (store, &g_array_index (steps, RcStep, i), FALSE, &job, error))
      return FALSE;
  for (guint i = steps->len; i > 0; i--)
    if (!rc_step_apply (store, &g_array_index (steps, RcStep, i - 1), TRUE, &job, error))
      return FALSE;
  for (guint i = 0; i < n_done; i++)
    if (!rc_step_apply (store, &g_array_index (steps, RcStep, i), FALSE, &job, error))
      return FALSE;
  return TRUE;
}

static void
check_steps (RcStore *store, const char *id, const RcRowSet *before, GString *report)
{
  g_autoptr (RcRowSet) after = rc_row_set_new (rc_row_set_get_job (before));
  g_autoptr (GError) fault = NULL;
  g_autoptr (GArray) steps = NULL;
  g_autofree char *what = g_strdup_printf (_ ("Steps of job %s"), id), *difference = NULL;
  guint            n_done;

  steps = read_steps (store, id, &n_done, &fault);
  if (steps == NULL || !walk_steps (store, steps, n_done, rc_row_set_get_job (before), &fault)
      || !rc_row_set_read (after, store, 0, RC_N_JOB_TABLES, TRUE, &fault))
    {
      add_error (report, what, &fault);
      return;
    }
  difference = rc_row_set_compare (before, after, 0, RC_N_JOB_TABLES);
  if (difference != NULL)
    add_fault (report, _ ("%s: undone and done again they give another job (%s)"), what, difference);
}

/* The stored rows must be those that the loaded job is written as, but for rules, pinned seams and turns of stairs
 * younger than the job's last edit; `stored` is left without the seams and turns of before. */
static void
check_round_trip (const RcJob *job, RcRowSet *stored, const char *what, GString *report)
{
  g_autoptr (RcRowSet) rows = rc_row_set_new (rc_row_set_get_job (stored));
  g_autoptr (GError) fault = NULL;
  g_autofree char *difference = NULL;

  rc_job_rows_add (job, rows);
  if (!rc_row_set_prepare (rows, 0, RC_N_JOB_TABLES, what, &fault))
    {
      add_error (report, what, &fault);
      return;
    }
  rc_row_set_drop_unknown (rows, stored, RC_TABLE_RULE_COSTS);
  if (rc_measure_rows_drop_seam_lines (stored))
    {
      rc_row_set_drop_unknown (rows, stored, RC_TABLE_PINS);
      rc_row_set_drop_unknown (rows, stored, RC_TABLE_PIN_POINTS);
    }
  if (rc_stair_rows_drop_turns (stored))
    rc_row_set_drop_unknown (rows, stored, RC_TABLE_STAIR_TURNS);
  difference = rc_row_set_compare (stored, rows, 0, RC_N_JOB_TABLES);
  if (difference != NULL)
    add_fault (report, _ ("%s: it would be written otherwise than it is stored (%s)"), what, difference);
}

static void
check_job (RcStore *store, gint64 key, const char *id, GString *report)
{
  g_autoptr (RcRowSet) stored = rc_row_set_new (key);
  g_autoptr (RcJob) job = NULL;
  g_autoptr (GError) fault = NULL;
  g_autofree char *what = g_strdup_printf (_ ("Job %s"), id);
  gboolean         fresh = TRUE;
  gint64           revision = 0;

  if (!rc_row_set_read (stored, store, 0, RC_N_JOB_TABLES, TRUE, &fault)
      || !rc_search_is_fresh (store, key, &fresh, &fault) || !rc_revision_find (store, key, &revision, &fault)
      || (job = rc_job_store_load (store, key, &fault)) == NULL)
    {
      add_error (report, what, &fault);
      return;
    }
  if (!fresh)
    add_fault (report, _ ("%s: it is not found by its own words"), what);
  if (revision == 0)
    add_fault (report, _ ("%s: it is not known when it was last changed"), what);
  check_steps (store, id, stored, report);
  check_round_trip (job, stored, what, report);
}

/* One job, one transaction that is taken back: others need not wait for the whole check. */
static gboolean
check_jobs (RcStore *store, GString *report, GError **error)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free);

  {
    g_auto (RcQuery) query = { 0 };

    if (!rc_query_start (&query, store, "SELECT id FROM jobs UNION SELECT job_id FROM steps ORDER BY 1", NULL, 0,
                         error))
      return FALSE;
    while (rc_query_next (&query, error))
      g_ptr_array_add (ids, rc_query_dup_text (&query, 0));
    if (query.failed)
      return FALSE;
  }
  for (guint i = 0; i < ids->len; i++)
    {
      g_autoptr (RcRowSet) none = rc_row_set_new (0);
      gint64 key;

      if (!rc_store_begin (store, _ ("Checking the jobs"), error))
        return FALSE;
      if (!rc_revision_find_job (store, ids->pdata[i], &key, error))
        return rc_store_rollback (store);
      if (key != 0)
        check_job (store, key, ids->pdata[i], report);
      else
        check_steps (store, ids->pdata[i], none, report);
      rc_store_rollback (store);
    }
  return TRUE;
}

static void
check_quote (RcStore *store, const char *number, gint64 n_lines, GString *report)
{
  g_autoptr (RcQuote) quote = NULL;
  g_autoptr (GError) fault = NULL;
  g_autofree char *what = g_strdup_printf (_ ("Quotation %s"), number);

  quote = rc_store_load_quote (store, number, &fault);
  if (quote == NULL || !rc_quote_check (quote, &fault))
    add_error (report, what, &fault);
  if (quote != NULL && quote->lines->len != n_lines)
    add_fault (report, _ ("%s: it has %u lines and was issued with %d"), what, quote->lines->len, (int)n_lines);
}

static gboolean
check_quotes (RcStore *store, GString *report, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store, "SELECT number, n_lines FROM issued_quotations ORDER BY serial", NULL, 0, error))
    return FALSE;
  while (rc_query_next (&query, error))
    check_quote (store, rc_query_get_text (&query, 0), rc_query_get_integer (&query, 1), report);
  return !query.failed;
}

static gboolean
check_prices (RcStore *store, GString *report, GError **error)
{
  g_autoptr (GError) fault = NULL;
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, &fault);

  if (book == NULL && !g_error_matches (fault, RC_ERROR, RC_ERROR_REFERENCE))
    add_error (report, _ ("Price book"), &fault);
  return TRUE;
}

/* Damage that stops one part of the check is a fault found, and the other parts are looked at all the same; anything
 * else, such as a disk that cannot be read, ends the check. */
static gboolean
go_on (RcStore *store, const char *what, GString *report, GError **fault, GError **error)
{
  if (*fault == NULL)
    return TRUE;
  if ((sqlite3_errcode (store->db) & 0xff) != SQLITE_CORRUPT)
    {
      g_propagate_error (error, g_steal_pointer (fault));
      return FALSE;
    }
  add_error (report, what, fault);
  return TRUE;
}

gboolean
rc_store_check (RcStore *store, char **report, GError **error)
{
  static const struct
  {
    const char *name;
    gboolean (*check) (RcStore *store, GString *report, GError **error);
  } parts[] = {
    { N_ ("Pages"), check_pages }, { N_ ("References"), check_references }, { N_ ("Search"), check_search },
    { N_ ("Jobs"), check_jobs },   { N_ ("Quotations"), check_quotes },     { N_ ("Price book"), check_prices },
  };
  g_autoptr (GString) faults = g_string_new (NULL);
  gboolean sound;

  g_return_val_if_fail (store != NULL && report != NULL, FALSE);

  *report = NULL;
  check_tables (store, faults);
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autoptr (GError) fault = NULL;

      parts[i].check (store, faults, &fault);
      if (!go_on (store, _ (parts[i].name), faults, &fault, error))
        return FALSE;
    }
  sound = faults->len == 0;
  *report = g_utf8_make_valid (faults->str, (gssize)faults->len);
  return sound;
}
