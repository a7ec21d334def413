/* Job numbers by a pattern, and duplicates of jobs. */
#include "job-number.h"
#include "rowcut-error.h"
#include <sqlite3.h>

#include "store-maker.h"

/* YYYY-### and what else the office may write; the day's parts and the running number in their places. */
static void
test_number_patterns (void)
{
  static const struct
  {
    const char *pattern, *number, *series; /* NULL: no pattern */
  } rows[] = {
    { "YYYY-###", "2026-007", "2026-#" },
    { "#", "7", "#" },
    { "J YY/MM/DD.##", "J 26/03/09.07", "J 26/03/09.#" },
    { "Floors ####", "Floors 0007", "Floors #" },
    { "YYYY", NULL, NULL },
    { "#-#", NULL, NULL },
    { "", NULL, NULL },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *number = rc_job_number_format (rows[i].pattern, "2026-03-09", 7);
      g_autofree char *series = rc_job_number_dup_series (rows[i].pattern, "2026-03-09");
      g_autoptr (GError) error = NULL;

      g_assert_cmpint (rc_job_number_check_pattern (rows[i].pattern, &error), ==, rows[i].number != NULL);
      if (rows[i].number == NULL)
        {
          g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);
          continue;
        }
      g_assert_cmpstr (number, ==, rows[i].number);
      g_assert_cmpstr (series, ==, rows[i].series);
    }
}

static void
assert_takes (RcStore *store, const char *date, const char *number)
{
  g_autoptr (GError) error = NULL;
  const RcCurrency usd = { "USD", 2 };
  g_autoptr (RcJob) job = rc_job_new (NULL, &usd);

  g_assert_true (rc_store_save_new_job (store, job, "new", date, "2026-03-09T10:00:00Z", &error));
  g_assert_no_error (error);
  g_assert_cmpstr (job->number, ==, number);
  g_assert_nonnull (job->id);
}

/* Two programs on one store take turns and never get the same; a number given by hand is passed over; each year begins
 * anew; another pattern is counted by itself. */
static void
test_numbers (void)
{
  const RcCurrency usd = { "USD", 2 };
  g_autofree char *folder = g_dir_make_tmp ("rowcut-XXXXXX", NULL), *path = g_build_filename (folder, "a.db", NULL);
  g_autoptr (RcStore) one = rc_store_open (path, NULL, NULL);
  g_autoptr (RcStore) other = rc_store_open (path, NULL, NULL);
  g_autoptr (RcPriceBook) book = rc_price_book_new (&usd);
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);

  job->number = g_strdup ("2026-003");
  g_assert_true (rc_store_save_job (one, job, "save", "2026-03-09T10:00:00Z", NULL));
  assert_takes (one, "2026-03-09", "2026-001");
  assert_takes (other, "2026-03-09", "2026-002");
  assert_takes (one, "2026-03-10", "2026-004");
  assert_takes (other, "2027-01-02", "2027-001");
  assert_takes (one, "2026-12-31", "2026-005");
  book->job_numbers = g_strdup ("YYMM##");
  g_assert_true (rc_store_save_price_book (one, book, NULL));
  assert_takes (other, "2026-03-09", "260301");
  assert_takes (one, "2026-03-09", "260302");
}

/* A duplicate has the house, not what became of the other: no states, nothing cut, nothing issued. */
static void
test_duplicate (void)
{
  const RcCurrency usd = { "USD", 2 };
  const RcCustomer customer = { .name = (char *)"Wren Tolliver" };
  g_autoptr (RcStore) store = rc_store_open (":memory:", NULL, NULL);
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);
  g_autoptr (RcJob) copy = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) quotes = NULL;
  g_autofree char *id = NULL, *number = NULL;
  g_autoptr (RcQuote) quote = rc_quote_new_empty (&usd);
  RcRoll *cut = rc_roll_new ("C-1", "twist", 1600);

  job->number = g_strdup ("2026-014");
  job->customer.name = g_strdup ("Tamsin Oddlebury");
  job->customer.phone = g_strdup ("555 0142");
  rc_job_set_state (job, RC_JOB_CUT, "2026-02-01");
  cut->cut = TRUE;
  g_ptr_array_add (job->rolls, rc_roll_new ("R-1", "twist", 1600));
  g_ptr_array_add (job->rolls, cut);
  g_ptr_array_add (job->attachments, rc_attachment_new ("F1", "sketch.jpg"));
  g_assert_true (rc_store_save_job (store, job, "save", "2026-03-09T10:00:00Z", NULL));
  number = rc_store_issue_quote (store, job, quote, "2026-03-09", &error);
  g_assert_no_error (error);

  id = rc_store_duplicate_job (store, "J-1", &customer, "2026-03-10", "2026-03-10T10:00:00Z", &error);
  g_assert_no_error (error);
  copy = rc_store_load_job (store, id, NULL);
  g_assert_cmpstr (copy->number, ==, "2026-001");
  g_assert_cmpstr (copy->date, ==, "2026-03-10");
  g_assert_cmpint (rc_job_get_state (copy), ==, RC_JOB_ENQUIRY);
  g_assert_cmpstr (copy->customer.name, ==, "Wren Tolliver");
  g_assert_null (copy->customer.phone);
  g_assert_cmpuint (copy->rolls->len, ==, 1);
  g_assert_cmpuint (copy->attachments->len, ==, 0);
  g_assert_cmpuint (copy->measures->len, ==, job->measures->len);
  quotes = rc_store_find_quotes (store, id, NULL);
  g_assert_cmpuint (quotes->len, ==, 0);
}

static void
duplicate_again (RcStore *store, const char *trouble, gboolean done)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;
  sqlite3         *db = NULL;

  g_assert_cmpint (sqlite3_open (trouble, &db), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (db,
                                 done ? "DROP TRIGGER trouble"
                                      : "CREATE TRIGGER trouble BEFORE INSERT ON measures WHEN NEW.job > 1"
                                        " BEGIN SELECT RAISE (ABORT, 'no'); END",
                                 NULL, NULL, NULL),
                   ==, SQLITE_OK);
  sqlite3_close (db);
  id = rc_store_duplicate_job (store, "J-1", NULL, "2026-03-10", "2026-03-10T10:00:00Z", &error);
  g_assert_true ((id != NULL) == done);
}

/* A duplicate that cannot be saved takes no number: the next one has it. */
static void
test_duplicate_is_one (void)
{
  const RcCurrency usd = { "USD", 2 };
  char            *folder = g_dir_make_tmp ("rowcut-store-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "store.db", NULL);
  RcStore         *store = rc_store_open (path, NULL, NULL);
  g_autoptr (RcJob) job = rc_job_new ("J-1", &usd);
  g_autoptr (GPtrArray) found = NULL;

  g_assert_true (rc_store_save_job (store, job, "save", "2026-03-09T10:00:00Z", NULL));
  duplicate_again (store, path, FALSE);
  duplicate_again (store, path, TRUE);
  found = rc_store_find_jobs (store, "2026-001", NULL);
  g_assert_cmpuint (found->len, ==, 1);
  rc_store_maker_assert_sound (store);
  rc_store_close (store);
  rc_store_maker_remove_folder (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/numbers/patterns", test_number_patterns);
  g_test_add_func ("/store/numbers/two programs", test_numbers);
  g_test_add_func ("/store/numbers/duplicate", test_duplicate);
  g_test_add_func ("/store/numbers/duplicating is one transaction", test_duplicate_is_one);
  return g_test_run ();
}
