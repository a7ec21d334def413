/* What the full check finds. */
#include <glib/gstdio.h>
#include <string.h>

#include "schema.h"
#include "store-maker.h"

typedef struct
{
  char    *folder, *path;
  RcStore *store;
  GRand   *rand;
} Fixture;

/* A store with jobs, steps, a deleted job, prices and quotations. */
static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
  fixture->store = rc_store_maker_open (fixture->path);
  rc_store_maker_fill (fixture->store, fixture->rand);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_store_close (fixture->store);
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_rand_free (fixture->rand);
}

static void
execute (RcStore *store, const char *sql)
{
  char *message = NULL;

  sqlite3_exec (store->db, "PRAGMA foreign_keys = OFF", NULL, NULL, NULL);
  sqlite3_exec (store->db, sql, NULL, NULL, &message);
  sqlite3_exec (store->db, "PRAGMA foreign_keys = ON", NULL, NULL, NULL);
  g_assert_cmpstr (message, ==, NULL);
}

typedef struct
{
  const char *path, *sql, *found;
} Fault;

static const Fault faults[] = {
  { "orphan-wall", "DELETE FROM rooms WHERE job = 1", "References" },
  { "missing-customer", "DELETE FROM customers WHERE job = 2", "Job J-2" },
  { "unknown-word",
    "UPDATE areas SET fixing = 'glued'; UPDATE openings SET kind = 'hatch'; UPDATE job_goods SET unit = "
    "'ell'; UPDATE jobs SET units = 'cubits' WHERE job = 2",
    "Job J-2" },
  { "bad-position", "UPDATE measures SET position = 7 WHERE job = 1", "otherwise than it is stored" },
  { "wall-missing-in-between", "DELETE FROM walls WHERE job = 1 AND position = 1", "Job J-1" },
  { "changed-behind-the-steps", "UPDATE jobs SET title = 'Changed by hand' WHERE job = 1", "Steps of job J-1" },
  { "words-not-those-of-the-job", "UPDATE search SET address = 'elsewhere' WHERE rowid = 1", "own words" },
  { "words-missing", "DELETE FROM search WHERE rowid = 2", "own words" },
  { "words-of-nobody", "INSERT INTO search (rowid, title) VALUES (99, 'ghost')", "not there" },
  { "no-revision", "DELETE FROM revisions WHERE job = 2", "last changed" },
  { "step-missing", "DELETE FROM steps WHERE job_id = 'J-3' AND number = 1", "" },
  { "step-of-deleted-job-damaged", "UPDATE steps SET changeset = x'54' WHERE job_id = 'J-3'", "Steps of job J-3" },
  { "quotation-line-changed",
    "DROP TRIGGER issued_lines_stay; UPDATE issued_lines SET amount_minor = amount_minor + 1 WHERE number = 'Q-2' AND "
    "position = 0",
    "Quotation Q-2" },
  { "quotation-line-missing", "DROP TRIGGER issued_lines_remain; DELETE FROM issued_lines WHERE number = 'Q-1'",
    "Quotation Q-1" },
  { "quotation-total-changed",
    "DROP TRIGGER issued_quotations_stay; UPDATE issued_quotations SET tax_minor = tax_minor + 1, total_minor = "
    "total_minor + 1 WHERE number = 'Q-3'",
    "Quotation Q-3" },
  { "price-unit-unknown", "UPDATE prices SET unit = 'ell' WHERE position = 0", "Price" },
  { "tables-changed", "CREATE TABLE extra (a)", "Tables" },
};

static void
test_fault (Fixture *fixture, gconstpointer data)
{
  const Fault     *fault = data;
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;
  gboolean sound;

  rc_store_maker_assert_sound (fixture->store);
  execute (fixture->store, fault->sql);
  sound = rc_store_check (fixture->store, &report, &error);
  g_assert_no_error (error);
  if (fault->found[0] == '\0') /* the first of a job's steps may go: the others still follow one another */
    {
      g_assert_true (sound);
      return;
    }
  g_assert_false (sound);
  if (strstr (report, fault->found) == NULL)
    g_error ("“%s” does not say “%s”", report, fault->found);
}

/* Not even with another program: the triggers are in the file. */
static void
test_issued_stays (Fixture *fixture, gconstpointer data)
{
  static const char *const attempts[] = {
    "UPDATE issued_quotations SET customer = 'x'",
    "DELETE FROM issued_quotations",
    "UPDATE issued_lines SET price_minor = 0",
    "DELETE FROM issued_lines WHERE number = 'Q-1'",
    "INSERT INTO issued_lines (number, position, item, name, because, quantity_micro, unit, packs, pack_unit,"
    " price_minor, amount_minor, cost_minor, is_work, from_stock) SELECT number, 99, item, name, because, "
    "quantity_micro, unit, packs, pack_unit,"
    " price_minor, amount_minor, cost_minor, is_work, from_stock FROM issued_lines WHERE number = 'Q-1' LIMIT 1",
  };
  sqlite3 *db = NULL;

  g_assert_cmpint (sqlite3_open (fixture->path, &db), ==, SQLITE_OK);
  for (guint i = 0; i < G_N_ELEMENTS (attempts); i++)
    {
      g_assert_cmpint (sqlite3_exec (db, attempts[i], NULL, NULL, NULL), ==, SQLITE_CONSTRAINT);
      g_assert_cmpstr (sqlite3_errmsg (db), ==, "an issued quotation is never changed");
    }
  sqlite3_close (db);
  rc_store_maker_assert_sound (fixture->store);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autofree char *path = g_strconcat ("/store-check/finds/", faults[i].path, NULL);

      g_test_add (path, Fixture, &faults[i], set_up, test_fault, tear_down);
    }
  g_test_add ("/store-check/issued-quotations-stay", Fixture, NULL, set_up, test_issued_stays, tear_down);
  return g_test_run ();
}
