/* Jobs, prices, rolls and quotations in the store and out again. */
#include <glib/gstdio.h>

#include "rowcut-error.h"
#include "store-maker.h"

typedef struct
{
  char    *folder, *path;
  RcStore *store;
  GRand   *rand;
} Fixture;

static RcStore *
open_store (const char *path)
{
  g_autoptr (GError) error = NULL;
  RcStore *store = rc_store_open (path, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (store);
  return store;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
  fixture->store = open_store (fixture->path);
  fixture->rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
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
reopen (Fixture *fixture)
{
  rc_store_close (fixture->store);
  fixture->store = open_store (fixture->path);
}

static void
save (RcStore *store, const RcJob *job, const char *step)
{
  g_autoptr (GError) error = NULL;
  gboolean saved = rc_store_save_job (store, job, step, NOW, &error);

  g_assert_no_error (error);
  g_assert_true (saved);
}

static void
test_round_trip (Fixture *fixture, gconstpointer data)
{
  for (guint i = 1; i <= 60; i++)
    {
      g_autofree char *id = g_strdup_printf ("J-%u", i);
      g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, id, i % 12);
      g_autofree char *dump = rc_store_maker_dump_job (job);

      save (fixture->store, job, "New job");
      rc_store_maker_assert_stored (fixture->store, id, dump);
      if (i % 20 == 0)
        {
          reopen (fixture);
          rc_store_maker_assert_stored (fixture->store, id, dump);
        }
    }
  rc_store_maker_assert_sound (fixture->store);
}

static void
test_edits_are_durable (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 6);

  save (fixture->store, job, "New job");
  for (guint i = 0; i < 150; i++)
    {
      g_autoptr (RcStore) other = NULL;
      g_autofree char *dump = NULL;

      save (fixture->store, job, rc_store_maker_edit_job (fixture->rand, job));
      dump = rc_store_maker_dump_job (job);
      other = open_store (fixture->path);
      rc_store_maker_assert_stored (other, "J-1", dump);
    }
  rc_store_maker_assert_sound (fixture->store);
}

/* A field added to the model must be added to the store as well, and to the comparison in store-dump.c: then its size
 * here. On machines with other sizes the check says nothing. */
static void
test_no_field_forgotten (void)
{
  if (sizeof (gpointer) != 8)
    {
      g_test_skip ("sizes are those of 64-bit machines");
      return;
    }
  g_assert_cmpuint (sizeof (RcJob), ==, 384);
  g_assert_cmpuint (sizeof (RcSettings), ==, 168);
  g_assert_cmpuint (sizeof (RcMeasure), ==, 56);
  g_assert_cmpuint (sizeof (RcRoom), ==, 104);
  g_assert_cmpuint (sizeof (RcWall), ==, 24);
  g_assert_cmpuint (sizeof (RcDiagonal), ==, 16);
  g_assert_cmpuint (sizeof (RcCutout), ==, 40);
  g_assert_cmpuint (sizeof (RcPlanPicture), ==, 72);
  g_assert_cmpuint (sizeof (RcOpening), ==, 72);
  g_assert_cmpuint (sizeof (RcStair), ==, 168);
  g_assert_cmpuint (sizeof (RcStairTurn), ==, 32);
  g_assert_cmpuint (sizeof (RcFloorArea), ==, 64);
  g_assert_cmpuint (sizeof (RcGoods), ==, 144);
  g_assert_cmpuint (sizeof (RcRoll), ==, 80); /* what is kept of it stands in the reservations */
  g_assert_cmpuint (sizeof (RcPrice), ==, 56);
  g_assert_cmpuint (sizeof (RcPriceBook), ==, 120);
  g_assert_cmpuint (sizeof (RcQuote), ==, 152);
  g_assert_cmpuint (sizeof (RcQuoteLine), ==, 160); /* what was charged before is told anew each time */
}

static void
assert_refused (RcStore *store, const RcJob *job, const char *part)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (rc_store_save_job (store, job, "Edit", NOW, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_STORE);
  if (strstr (error->message, part) == NULL || strstr (error->message, "J-1") == NULL)
    g_error ("“%s” does not name J-1 and “%s”", error->message, part);
}

static void
test_bad_jobs_are_refused (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 3);
  g_autoptr (RcJob) bad = NULL;
  g_autofree char *dump = rc_store_maker_dump_job (job);
  RcRoom          *room;

  save (fixture->store, job, "New job");
  bad = rc_job_copy (job);
  room = ((RcMeasure *)bad->measures->pdata[0])->rooms->pdata[1];
  g_free (room->id);
  room->id = g_strdup (((RcRoom *)((RcMeasure *)bad->measures->pdata[0])->rooms->pdata[0])->id);
  assert_refused (fixture->store, bad, room->id);
  g_free (room->id);
  room->id = NULL;
  assert_refused (fixture->store, bad, "room");
  room->id = g_strdup ("hall");
  g_free (room->name);
  room->name = g_strdup ("H\xff"
                         "all");
  assert_refused (fixture->store, bad, "hall");
  g_free (room->name);
  room->name = NULL;
  g_array_set_size (room->walls, 1);
  g_array_index (room->walls, RcWall, 0).bearing_degrees = g_ascii_strtod ("nan", NULL);
  assert_refused (fixture->store, bad, "hall");
  rc_store_maker_assert_stored (fixture->store, "J-1", dump);
}

static void
test_nothing_changed_is_no_step (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 3);
  gint64 before = 0, after = 0;

  save (fixture->store, job, "New job");
  g_assert_true (rc_store_get_revision (fixture->store, "J-1", &before, NULL));
  save (fixture->store, job, "Nothing");
  g_assert_true (rc_store_get_revision (fixture->store, "J-1", &after, NULL));
  g_assert_cmpint (before, ==, after);
  g_assert_false (rc_store_can_undo (fixture->store, "J-1"));
}

static void
test_lost_update_is_refused (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) other = open_store (fixture->path);
  g_autoptr (RcJob) mine = rc_store_maker_new_job (fixture->rand, "J-1", 3);
  g_autoptr (RcJob) theirs = NULL;
  g_autoptr (RcJob) again = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *dump = NULL;
  gint64           version = 0, version_after = 0;

  save (fixture->store, mine, "New job");
  g_assert_true (rc_store_get_data_version (fixture->store, &version, &error));
  theirs = rc_store_load_job (other, "J-1", &error);
  g_free (theirs->title);
  theirs->title = g_strdup ("Theirs");
  save (other, theirs, "Their edit");
  dump = rc_store_maker_dump_job (theirs);

  g_assert_true (rc_store_get_data_version (fixture->store, &version_after, &error));
  g_assert_cmpint (version, !=, version_after);
  g_free (mine->title);
  mine->title = g_strdup ("Mine");
  g_assert_false (rc_store_save_job (fixture->store, mine, "My edit", NOW, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
  g_clear_error (&error);
  g_assert_false (rc_store_undo (fixture->store, "J-1", NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
  g_clear_error (&error);
  g_assert_false (rc_store_delete_job (fixture->store, "J-1", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
  g_clear_error (&error);
  rc_store_maker_assert_stored (other, "J-1", dump);

  again = rc_store_load_job (fixture->store, "J-1", &error);
  g_assert_no_error (error);
  g_free (again->title);
  again->title = g_strdup ("Mine");
  save (fixture->store, again, "My edit");
}

static void
test_unknown_job_is_not_overwritten (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) other = open_store (fixture->path);
  g_autoptr (RcJob) one = rc_store_maker_new_job (fixture->rand, "J-1", 1);
  g_autoptr (RcJob) two = rc_store_maker_new_job (fixture->rand, "J-1", 1);
  g_autoptr (GError) error = NULL;

  save (fixture->store, one, "New job");
  g_assert_false (rc_store_save_job (other, two, "New job", NOW, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
}

static void
test_new_ids_are_never_used_twice (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GHashTable) used = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < 30; i++)
    {
      g_autofree char *id = rc_store_dup_new_job_id (fixture->store, &error);
      g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, id, 0);

      g_assert_no_error (error);
      g_assert_true (g_hash_table_add (used, g_strdup (id)));
      if (i == 5)
        {
          g_free (job->number);
          job->number = g_strdup ("J-9"); /* written by hand: then no other job is given it */
          g_hash_table_add (used, g_strdup ("J-9"));
        }
      save (fixture->store, job, "New job");
      if (i % 3 == 0)
        g_assert_true (rc_store_delete_job (fixture->store, id, &error));
    }
}

static void
test_delete_and_take_back (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 5);
  g_autoptr (GPtrArray) found = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *first = rc_store_maker_dump_job (job), *dump = NULL, *step = NULL;

  save (fixture->store, job, "New job");
  g_array_set_size (((RcRoom *)rc_job_get_measure (job, NULL)->rooms->pdata[0])->walls, 0);
  g_free (job->title);
  job->title = g_strdup ("Second");
  save (fixture->store, job, "Edit");
  dump = rc_store_maker_dump_job (job);

  g_assert_true (rc_store_delete_job (fixture->store, "J-1", &error));
  g_assert_null (rc_store_load_job (fixture->store, "J-1", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_clear_error (&error);
  found = rc_store_find_jobs (fixture->store, NULL, &error);
  g_assert_cmpuint (found->len, ==, 0);
  rc_store_maker_assert_sound (fixture->store);
  reopen (fixture);

  g_assert_true (rc_store_undo (fixture->store, "J-1", &step, &error));
  rc_store_maker_assert_stored (fixture->store, "J-1", dump);
  g_assert_false (rc_store_can_redo (fixture->store, "J-1"));
  g_assert_true (rc_store_undo (fixture->store, "J-1", NULL, &error));
  rc_store_maker_assert_stored (fixture->store, "J-1", first);
  rc_store_maker_assert_sound (fixture->store);
}

static void
test_saved_over_deleted (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) old = rc_store_maker_new_job (fixture->rand, "J-1", 5);
  g_autoptr (RcJob) other = rc_store_maker_new_job (fixture->rand, "J-1", 2);
  g_autofree char *old_dump = rc_store_maker_dump_job (old), *other_dump = rc_store_maker_dump_job (other);
  g_autoptr (GError) error = NULL;

  save (fixture->store, old, "New job");
  g_assert_true (rc_store_delete_job (fixture->store, "J-1", &error));
  save (fixture->store, other, "Bring in");
  rc_store_maker_assert_stored (fixture->store, "J-1", other_dump);
  g_assert_true (rc_store_undo (fixture->store, "J-1", NULL, &error));
  rc_store_maker_assert_stored (fixture->store, "J-1", old_dump);
  rc_store_maker_assert_sound (fixture->store);
}

static void
test_price_book (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (rc_store_load_price_book (fixture->store, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_clear_error (&error);
  for (guint i = 0; i < 20; i++)
    {
      g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (fixture->rand, i * 3 % 17);
      g_autoptr (RcPriceBook) found = NULL;
      g_autofree char *dump = rc_store_maker_dump_price_book (book), *found_dump = NULL;

      g_assert_true (rc_store_save_price_book (fixture->store, book, &error));
      reopen (fixture);
      found = rc_store_load_price_book (fixture->store, &error);
      g_assert_no_error (error);
      found_dump = rc_store_maker_dump_price_book (found);
      g_assert_cmpstr (dump, ==, found_dump);
    }
}

static void
test_price_book_lost_update (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcStore) other = open_store (fixture->path);
  g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (fixture->rand, 3);
  g_autoptr (RcPriceBook) theirs = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (rc_store_save_price_book (fixture->store, book, &error));
  theirs = rc_store_load_price_book (other, &error);
  theirs->tax_ppm++;
  g_assert_true (rc_store_save_price_book (other, theirs, &error));
  g_assert_false (rc_store_save_price_book (fixture->store, book, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_CONFLICT);
}

static void
test_rolls (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) rolls = NULL;
  g_autoptr (GError) error = NULL;
  RcRoll *roll = rc_roll_new ("R-2", "harbour-twist", 12345);

  roll->lot = g_strdup ("lot 7");
  g_assert_true (rc_store_save_roll (fixture->store, roll, &error));
  roll->length = 777;
  roll->remnant = TRUE;
  roll->place = g_strdup ("rack 3");
  g_assert_true (rc_store_save_roll (fixture->store, roll, &error));
  roll->length = -1;
  g_assert_false (rc_store_save_roll (fixture->store, roll, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
  g_clear_error (&error);
  rc_roll_free (roll);
  roll = rc_roll_new ("R-1", "harbour-twist", 5);
  g_assert_true (rc_store_save_roll (fixture->store, roll, &error));
  rc_roll_free (roll);
  reopen (fixture);

  rolls = rc_store_load_rolls (fixture->store, &error);
  g_assert_cmpuint (rolls->len, ==, 2);
  roll = rolls->pdata[1];
  g_assert_cmpstr (roll->id, ==, "R-2");
  g_assert_cmpstr (roll->goods_id, ==, "harbour-twist");
  g_assert_cmpstr (roll->lot, ==, "lot 7");
  g_assert_cmpstr (roll->place, ==, "rack 3");
  g_assert_cmpint (roll->length, ==, 777);
  g_assert_true (roll->remnant);
  g_assert_true (rc_store_delete_roll (fixture->store, "R-1", &error));
  g_assert_false (rc_store_delete_roll (fixture->store, "R-1", &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
}

static void
test_issued_quotations (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 1);
  g_autoptr (GPtrArray) issued = NULL;
  g_autoptr (GPtrArray) none = NULL;
  g_autoptr (GError) error = NULL;
  char *dumps[12];

  save (fixture->store, job, "New job");
  for (guint i = 0; i < G_N_ELEMENTS (dumps); i++)
    {
      g_autoptr (RcQuote) quote = rc_store_maker_new_quote (fixture->rand, i);
      g_autofree char *number = rc_store_issue_quote (fixture->store, job, quote, "2025-03-04", &error);
      g_autofree char *expected = g_strdup_printf ("Q-%u", i + 1);

      g_assert_no_error (error);
      g_assert_cmpstr (number, ==, expected);
      dumps[i] = rc_store_maker_dump_quote (quote);
    }
  g_assert_true (rc_store_delete_job (fixture->store, "J-1", &error));
  issued = rc_store_find_quotes (fixture->store, "J-1", &error);
  none = rc_store_find_quotes (fixture->store, "J-2", &error);
  g_assert_cmpuint (issued->len, ==, G_N_ELEMENTS (dumps));
  g_assert_cmpuint (none->len, ==, 0);
  for (guint i = 0; i < issued->len; i++)
    {
      const RcIssuedQuote *one = issued->pdata[i];
      g_autoptr (RcQuote) quote = rc_store_load_quote (fixture->store, one->number, &error);
      g_autofree char *dump = NULL;

      g_assert_no_error (error);
      dump = rc_store_maker_dump_quote (quote);
      g_assert_cmpstr (dump, ==, dumps[i]);
      g_assert_cmpint (one->total, ==, quote->total);
      g_assert_cmpstr (one->date, ==, "2025-03-04");
      g_assert_cmpstr (one->currency.code, ==, "USD");
      g_assert_cmpstr (one->customer, ==, job->customer.name);
      g_free (dumps[i]);
    }
  rc_store_maker_assert_sound (fixture->store);
}

static void
test_wrong_sums_are_not_issued (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 1);

  for (guint i = 0; i < 6; i++)
    {
      g_autoptr (RcQuote) quote = rc_store_maker_new_quote (fixture->rand, 3);
      g_autoptr (GPtrArray) issued = NULL;
      g_autoptr (GError) error = NULL;
      RcMoney *sums[] = { &quote->net,    &quote->tax,  &quote->total,
                          &quote->margin, &quote->cost, &((RcQuoteLine *)quote->lines->pdata[1])->amount };

      *sums[i] += 1;
      g_assert_null (rc_store_issue_quote (fixture->store, job, quote, "2025-03-04", &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_RANGE);
      issued = rc_store_find_quotes (fixture->store, NULL, NULL);
      g_assert_cmpuint (issued->len, ==, 0);
    }
}

static void
test_saving_is_quick (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcJob) job = rc_store_maker_new_job (fixture->rand, "J-1", 10);
  const guint n = 200;
  clock_t     start;
  double      cpu_ms;

  save (fixture->store, job, "New job");
  start = clock ();
  for (guint i = 0; i < n; i++)
    {
      RcRoom *room = rc_job_get_measure (job, NULL)->rooms->pdata[i % 10];

      room->at.x++;
      save (fixture->store, job, "Move room");
    }
  cpu_ms = 1000.0 * (double)(clock () - start) / CLOCKS_PER_SEC / n;
  g_test_message ("one edit of a 10-room job: %.2f ms of processor time", cpu_ms);
  g_test_minimized_result (cpu_ms, "one edit of a 10-room job: %.2f ms of processor time", cpu_ms);
  if (g_getenv ("ASAN_OPTIONS") == NULL && !g_test_slow ())
    g_assert_cmpfloat (cpu_ms, <, 50.0); /* 5 ms is the aim; machines that test are busy */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/model/no-field-is-forgotten", test_no_field_forgotten);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/store/jobs/come-back-as-they-were", test_round_trip);
  ADD ("/store/jobs/every-edit-is-there-for-another-program", test_edits_are_durable);
  ADD ("/store/jobs/bad-ids-and-text-are-refused-by-name", test_bad_jobs_are_refused);
  ADD ("/store/jobs/nothing-changed-is-no-step", test_nothing_changed_is_no_step);
  ADD ("/store/jobs/an-edit-over-somebody-elses-is-refused", test_lost_update_is_refused);
  ADD ("/store/jobs/an-unknown-job-is-not-overwritten", test_unknown_job_is_not_overwritten);
  ADD ("/store/jobs/new-ids-are-never-used-twice", test_new_ids_are_never_used_twice);
  ADD ("/store/jobs/a-deleted-job-comes-back", test_delete_and_take_back);
  ADD ("/store/jobs/a-job-saved-over-a-deleted-one-keeps-its-steps", test_saved_over_deleted);
  ADD ("/store/jobs/saving-is-quick", test_saving_is_quick);
  ADD ("/store/prices/come-back-as-they-were", test_price_book);
  ADD ("/store/prices/an-edit-over-somebody-elses-is-refused", test_price_book_lost_update);
  ADD ("/store/rolls/come-back-as-they-were", test_rolls);
  ADD ("/store/quotations/stay-as-issued", test_issued_quotations);
  ADD ("/store/quotations/wrong-sums-are-not-issued", test_wrong_sums_are_not_issued);
  return g_test_run ();
}
