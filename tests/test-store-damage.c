/* Rows that the program never writes, in a store that opens: another program's work, or damage that SQLite does not
 * see. What they belong to and what is wrong with them is told; nothing is made up for them, and nothing crashes. */
#include <string.h>

#include "schema.h"
#include "rounds.h"
#include "store-maker.h"
#include "store-office.h"

#define NO_CHECKS "PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF;"

typedef struct
{
  RcStore *store;
  sqlite3 *whole; /* a copy of it, to begin again with */
} Fixture;

static void
copy_database (sqlite3 *from, sqlite3 *to)
{
  sqlite3_backup *backup = sqlite3_backup_init (to, "main", from, "main");

  g_assert_nonnull (backup);
  g_assert_cmpint (sqlite3_backup_step (backup, -1), ==, SQLITE_DONE);
  g_assert_cmpint (sqlite3_backup_finish (backup), ==, SQLITE_OK);
}

static gint64
find_integer (sqlite3 *db, const char *sql)
{
  sqlite3_stmt *statement;
  gint64        found;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_step (statement), ==, SQLITE_ROW);
  found = sqlite3_column_int64 (statement, 0);
  sqlite3_finalize (statement);
  return found;
}

/* The first column, as text. (transfer full) */
static GPtrArray *
find_texts (sqlite3 *db, const char *sql)
{
  GPtrArray    *texts = g_ptr_array_new_with_free_func (g_free);
  sqlite3_stmt *statement;

  g_assert_cmpint (sqlite3_prepare_v2 (db, sql, -1, &statement, NULL), ==, SQLITE_OK);
  while (sqlite3_step (statement) == SQLITE_ROW)
    g_ptr_array_add (texts, g_strdup ((const char *)sqlite3_column_text (statement, 0)));
  sqlite3_finalize (statement);
  return texts;
}

/* Tables with rows of a job; all others hold what the office has. */
#define JOB_TABLES                                                                                                     \
  "SELECT m.name FROM sqlite_schema m WHERE m.type = 'table' AND m.name NOT IN ('revisions', 'steps', "                \
  "'issued_quotations')"                                                                                               \
  " AND EXISTS (SELECT 1 FROM pragma_table_info (m.name) c WHERE c.name = 'job') ORDER BY m.name"

static gboolean
has_rows_everywhere (sqlite3 *db)
{
  g_autoptr (GPtrArray) tables = find_texts (db, JOB_TABLES);

  g_assert_cmpuint (tables->len, >, 20);
  for (guint i = 0; i < tables->len; i++)
    {
      g_autofree char *sql = g_strdup_printf ("SELECT count (*) FROM %s", (const char *)tables->pdata[i]);

      if (find_integer (db, sql) == 0)
        return FALSE;
    }
  return TRUE;
}

/* A job J-1 with at least one row in every table of jobs: the first that chance makes. */
static void
save_rich_job (RcStore *store)
{
  for (guint32 seed = 1; seed < 1000; seed++)
    {
      g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
      g_autoptr (RcJob) job = rc_store_maker_new_job (rand, "J-1", 3);

      g_assert_true (rc_store_save_job (store, job, "New job", NOW, NULL));
      if (has_rows_everywhere (store->db))
        return;
      g_assert_true (rc_store_delete_job (store, "J-1", NULL));
    }
  g_assert_not_reached ();
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (rand, 4);
  g_autoptr (RcJob) job = NULL;
  g_autoptr (GError) error = NULL;

  fixture->store = rc_store_open (":memory:", NULL, &error);
  g_assert_no_error (error);
  save_rich_job (fixture->store);
  job = rc_store_load_job (fixture->store, "J-1", NULL);
  g_assert_true (rc_store_save_price_book (fixture->store, book, &error));
  store_office_fill (fixture->store, job, rand);
  g_assert_cmpint (sqlite3_open (":memory:", &fixture->whole), ==, SQLITE_OK);
  copy_database (fixture->store->db, fixture->whole);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_store_close (fixture->store);
  sqlite3_close (fixture->whole);
}

/* FALSE when SQLite refuses it: the type of a column holds even here. */
static gboolean
damage (Fixture *fixture, const char *sql)
{
  g_autofree char *all = g_strconcat (NO_CHECKS, sql, NULL);

  return sqlite3_exec (fixture->store->db, all, NULL, NULL, NULL) == SQLITE_OK;
}

static gboolean
load_job (RcStore *store, GError **error)
{
  g_autoptr (RcJob) job = rc_store_load_job (store, "J-1", error);
  g_autofree char *dump = job != NULL ? rc_store_maker_dump_job (job) : NULL;

  return job != NULL;
}

static gboolean
load_prices (RcStore *store, GError **error)
{
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, error);
  g_autofree char *dump = book != NULL ? rc_store_maker_dump_price_book (book) : NULL;

  return book != NULL;
}

static gboolean
load_quote (RcStore *store, GError **error)
{
  g_autoptr (RcQuote) quote = rc_store_load_quote (store, OFFICE_QUOTE, error);
  g_autofree char *dump = quote != NULL ? rc_store_maker_dump_quote (quote) : NULL;

  return quote != NULL;
}

static gboolean
load_order (RcStore *store, GError **error)
{
  g_autoptr (RcPurchase) order = rc_store_load_purchase (store, OFFICE_ORDER, error);

  return order != NULL;
}

/* --- words --- */

typedef struct
{
  const char *table, *column;
  gboolean (*load) (RcStore *store, GError **error);
  const char *place; /* what the message names beside the word */
} Word;

static const Word words[] = {
  { "jobs", "units", load_job, "Job J-1" },
  { "rule_costs", "rule", load_job, "Job J-1" },
  { "job_goods", "kind", load_job, "goods" },
  { "job_goods", "unit", load_job, "goods" },
  { "job_goods", "match", load_job, "goods" },
  { "job_goods", "pack_unit", load_job, "goods" },
  { "cutouts", "kind", load_job, "cut-out" },
  { "openings", "kind", load_job, "opening" },
  { "openings", "swing", load_job, "opening" },
  { "stairs", "style", load_job, "stair" },
  { "stairs", "cutting", load_job, "stair" },
  { "stairs", "turn", load_job, "stair" },
  { "stair_turns", "kind", load_job, "stair" },
  { "stair_turns", "bend", load_job, "stair" },
  { "areas", "fixing", load_job, "area" },
  { "pins", "kind", load_job, "area" },
  { "job_states", "state", load_job, "Job J-1" },
  { "offers", "detail", load_job, "Job J-1" },
  { "offer_extras", "unit", load_job, "line" },
  { "catalogue", "kind", load_prices, "goods" },
  { "prices", "unit", load_prices, "" },
  { "issued_lines", "unit", load_quote, OFFICE_QUOTE },
  { "issued_lines", "pack_unit", load_quote, OFFICE_QUOTE },
  { "issued_lines", "needed_unit", load_quote, OFFICE_QUOTE },
  { "order_lines", "unit", load_order, OFFICE_ORDER },
  { "order_lines", "pack_unit", load_order, OFFICE_ORDER },
};

static void
test_words (Fixture *fixture, gconstpointer data)
{
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      const Word      *word = &words[i];
      g_autofree char *sql = g_strdup_printf ("DROP TRIGGER issued_lines_stay; UPDATE OR IGNORE %s SET %s = 'cubit'",
                                              word->table, word->column);
      g_autoptr (GError) error = NULL;

      copy_database (fixture->whole, fixture->store->db);
      g_assert_true (word->load (fixture->store, &error));
      g_assert_no_error (error);
      g_assert_true (damage (fixture, sql));
      if (word->load (fixture->store, &error))
        g_error ("%s of %s: a word that is none was taken", word->column, word->table);
      g_assert_cmpint (error->domain, ==, RC_ERROR);
      if (strstr (error->message, "cubit") == NULL || strstr (error->message, word->place) == NULL)
        g_error ("%s of %s: “%s” does not name the word and %s", word->column, word->table, error->message,
                 word->place);
    }
}

/* --- rows that belong to nothing --- */

typedef struct
{
  const char        *path, *sql;
  const char *const *orphans; /* the tables that are named, each when the one before has been emptied */
  const char        *parent;  /* what their rows are said to lack */
} Orphans;

static const char *const of_measures[]
    = { "rooms",  "walls",       "outline_points", "cutouts",    "cutout_points", "openings",   "diagonals",
        "stairs", "stair_turns", "areas",          "area_rooms", "pins",          "pin_points", NULL };
static const char *const of_rooms[]
    = { "walls", "outline_points", "cutouts", "cutout_points", "openings", "diagonals", NULL };
static const char *const of_stairs[] = { "stair_turns", NULL };
static const char *const of_areas[] = { "area_rooms", "pins", "pin_points", NULL };
static const char *const none[] = { NULL };

static const Orphans orphans[] = {
  { "measures", "DELETE FROM measures", of_measures, "measure" },
  { "rooms", "DELETE FROM rooms", of_rooms, "room" },
  { "stairs", "DELETE FROM stairs", of_stairs, "stair" },
  { "areas", "DELETE FROM areas", of_areas, "area" },
  /* Points of nothing draw nothing, and a swap of no alternative swaps nothing. */
  { "pins", "DELETE FROM pins", none, NULL },
  { "cut-outs", "DELETE FROM cutouts", none, NULL },
  { "alternatives", "DELETE FROM alternatives", none, NULL },
  { "settings", "DELETE FROM settings; DELETE FROM rule_costs", none, NULL },
};

static void
test_orphans (Fixture *fixture, gconstpointer data)
{
  const Orphans *one = data;

  g_assert_true (damage (fixture, one->sql));
  for (guint i = 0; one->orphans[i] != NULL; i++)
    {
      g_autofree char *rows = g_strdup_printf ("a row of %s belongs to no ", one->orphans[i]);
      g_autofree char *sql = g_strconcat ("DELETE FROM ", one->orphans[i], NULL);
      g_autoptr (GError) error = NULL;

      g_assert_false (load_job (fixture->store, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
      if (strstr (error->message, rows) == NULL || strstr (error->message, "Job J-1") == NULL)
        g_error ("“%s” does not say “%s”", error->message, rows);
      g_assert_true (damage (fixture, sql));
    }
  g_assert_true (load_job (fixture->store, NULL));
}

/* --- anything in any column --- */

static const char *const values[] = { "-1", "0", "9223372036854775807", "'cubit'", "''", "NULL", "x'ff00'", "1e300" };

typedef struct
{
  guint n_refused, n_read, n_told;
} Tally;

/* Whatever reads any table: read as it is, or told in words. */
static void
read_all (Fixture *fixture, const char *what, Tally *tally)
{
  gboolean (*const loads[]) (RcStore *, GError **) = { load_job, load_prices, load_quote, load_order };

  for (guint i = 0; i < G_N_ELEMENTS (loads); i++)
    {
      g_autoptr (GError) error = NULL;

      if (loads[i](fixture->store, &error))
        tally->n_read++;
      else if (error == NULL || error->message[0] == '\0')
        g_error ("%s: no word of it", what);
      else
        tally->n_told++;
    }
}

static void
read_lists (Fixture *fixture)
{
  g_autoptr (GPtrArray) jobs = rc_store_find_jobs (fixture->store, NULL, NULL);
  g_autoptr (GPtrArray) quotes = rc_store_find_quotes (fixture->store, NULL, NULL);
  g_autoptr (GPtrArray) orders = rc_store_find_purchases (fixture->store, NULL, NULL);
  g_autoptr (GPtrArray) rolls = rc_store_load_rolls (fixture->store, NULL);
  g_autoptr (GPtrArray) moves = rc_store_find_moves (fixture->store, NULL, NULL);
  g_autoptr (GPtrArray) kept = rc_store_find_reservations (fixture->store, NULL, NULL, NULL);
  RcJobState       state;
  g_autofree char *reached = NULL;

  g_assert_true (jobs != NULL && quotes != NULL && orders != NULL && rolls != NULL && moves != NULL && kept != NULL);
  g_assert_true (rc_store_find_state (fixture->store, "J-1", &state, &reached, NULL));
  g_assert_cmpint (state, <, RC_N_JOB_STATES);
}

static void
test_columns (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) columns = find_texts (
      fixture->whole, "SELECT m.name || ' SET ' || c.name FROM sqlite_schema m, pragma_table_info (m.name) c "
                      "WHERE m.type = 'table' AND m.name NOT LIKE 'search%' AND m.name NOT LIKE 'sqlite%'");
  g_autoptr (GPtrArray) triggers
      = find_texts (fixture->whole, "SELECT 'DROP TRIGGER ' || name || ';' FROM sqlite_schema WHERE type = 'trigger'");
  g_autofree char *drops = NULL;
  Tally            tally = { 0 };

  g_ptr_array_add (triggers, NULL);
  drops = g_strjoinv ("", (char **)triggers->pdata);
  g_assert_cmpuint (columns->len, >, 300);
  /* Every column, or some of them where a round takes long, with one value or all. */
  guint every = MAX (1, columns->len / scale_rounds (columns->len));
  for (guint i = g_test_slow () ? 0 : (guint)g_test_rand_int_range (0, (int)every); i < columns->len;
       i += g_test_slow () ? 1 : every)
    for (guint k = g_test_slow () ? 0 : i % 8; k < G_N_ELEMENTS (values); k += g_test_slow () ? 1 : 8)
      {
        g_autofree char *sql
            = g_strdup_printf ("%s UPDATE OR IGNORE %s = %s", drops, (char *)columns->pdata[i], values[k]);

        copy_database (fixture->whole, fixture->store->db);
        if (damage (fixture, sql))
          {
            read_all (fixture, sql, &tally);
            read_lists (fixture);
          }
        else
          tally.n_refused++;
      }
  g_test_message ("%u changes refused by SQLite, %u loads read, %u told", tally.n_refused, tally.n_read, tally.n_told);
  g_assert_cmpuint (tally.n_read, >, scale_rounds (700));
  g_assert_cmpuint (tally.n_told, >, scale_rounds (20) / 4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/store-damage/a-word-that-is-none", Fixture, NULL, set_up, test_words, tear_down);
  for (guint i = 0; i < G_N_ELEMENTS (orphans); i++)
    {
      g_autofree char *path = g_strconcat ("/store-damage/no-", orphans[i].path, NULL);

      g_test_add (path, Fixture, &orphans[i], set_up, test_orphans, tear_down);
    }
  g_test_add ("/store-damage/anything-in-any-column", Fixture, NULL, set_up, test_columns, tear_down);
  return g_test_run ();
}
