/* Finding jobs by words. */
#include <string.h>
#include <time.h>

#include "search.h"
#include "store-maker.h"

static void
add_job (RcStore *store, const char *id, const char *title, const char *customer, const char *address,
         const char *notes, const char *now)
{
  RcCurrency currency = { "USD", 2 };
  g_autoptr (RcJob) job = rc_job_new (id, &currency);
  g_autoptr (GError) error = NULL;

  job->number = g_strdup (id);
  job->title = g_strdup (title);
  job->notes = g_strdup (notes);
  job->customer.name = g_strdup (customer);
  job->customer.address = g_strdup (address);
  job->customer.phone = g_strdup ("555 0134");
  rc_store_save_job (store, job, "New job", now, &error);
  g_assert_no_error (error);
}

static char *
find (RcStore *store, const char *words)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) found = rc_store_find_jobs (store, words, &error);
  GString *ids = g_string_new (NULL);

  g_assert_no_error (error);
  for (guint i = 0; i < found->len; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? " " : "", ((RcJobSummary *)found->pdata[i])->id);
  return g_string_free (ids, FALSE);
}

/* words, ids found, latest first */
static const char *const cases[][2] = {
  { NULL, "J-3 J-1 J-2" },
  { "", "J-3 J-1 J-2" },
  { " \t\n", "J-3 J-1 J-2" },
  { "gull", "J-1" },
  { "GUL", "J-1" },
  { "gull cottage", "J-1" },
  { "cottage gull", "J-1" },
  { "cott quay", "J-1" },
  { "cott mill", "" },
  { "ibanez", "J-2" },
  { "Ibáñez", "J-2" },
  { "O'Shea", "J-1" },
  { "o shea", "J-1" },
  { "stairs", "J-3 J-2" },
  { "J-2", "J-2" },
  { "2", "J-2" },
  { "555 01", "J-3 J-1 J-2" },
  { "地毯", "J-3" },
  /* signs and words of the index's own language mean nothing */
  { "*", "J-3 J-1 J-2" },
  { "-- '' \"\" ()", "J-3 J-1 J-2" },
  { "\"gull", "J-1" },
  { "gull\"", "J-1" },
  { "gull OR mill", "" },
  { "NOT gull", "" },
  { "NEAR(gull cottage)", "" },
  { "title:gull", "" },
  { "^gull", "J-1" },
  { "gull*", "J-1" },
  { "{title}: gull", "" },
  { "'; DROP TABLE jobs; --", "" },
  { "\xff\xfe gull", "J-1" },
};

static void
test_words (void)
{
  g_autoptr (RcStore) store = rc_store_open (":memory:", NULL, NULL);

  add_job (store, "J-1", "Gull Cottage", "Ann O'Shea", "3 Quay Street", NULL, "2025-01-02T00:00:00Z");
  add_job (store, "J-2", "Mill House", "Señora Ibáñez", "C/ Mayor 3", "mind the stairs", "2025-01-01T00:00:00Z");
  add_job (store, "J-3", "地毯店", NULL, NULL, "stairs and landing", "2025-01-03T00:00:00Z");
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *ids = find (store, cases[i][0]);

      if (strcmp (ids, cases[i][1]) != 0)
        g_error ("“%s” finds “%s”, not “%s”", cases[i][0], ids, cases[i][1]);
    }
}

static void
test_words_follow_edits (void)
{
  g_autoptr (RcStore) store = rc_store_open (":memory:", NULL, NULL);
  g_autoptr (RcJob) job = NULL;
  g_autofree char *before = NULL, *after = NULL, *undone = NULL;

  add_job (store, "J-1", "Gull Cottage", "Ann", "Quay", NULL, NOW);
  job = rc_store_load_job (store, "J-1", NULL);
  g_free (job->title);
  job->title = g_strdup ("Heron Lodge");
  g_assert_true (rc_store_save_job (store, job, "Title", NOW, NULL));
  before = find (store, "gull");
  after = find (store, "heron");
  g_assert_cmpstr (before, ==, "");
  g_assert_cmpstr (after, ==, "J-1");
  g_assert_true (rc_store_undo (store, "J-1", NULL, NULL));
  undone = find (store, "gull");
  g_assert_cmpstr (undone, ==, "J-1");
}

/* Whatever is typed, there is an answer and no error. */
static void
test_any_text (void)
{
  g_autoptr (RcStore) store = rc_store_open (":memory:", NULL, NULL);
  static const char letters[] = "ag 'j\"*()-+:^{}\\NEAROT,.;%_\n\t\xc3\xa9\xff";

  add_job (store, "J-1", "Gull Cottage", "Ann", "Quay", NULL, NOW);
  for (guint i = 0; i < 3000; i++)
    {
      char             text[80] = "";
      g_autofree char *ids = NULL;

      for (gint j = g_test_rand_int_range (0, (gint32)sizeof text - 1); j > 0; j--)
        text[j - 1] = letters[g_test_rand_int_range (0, (gint32)sizeof letters - 1)];
      ids = find (store, text);
    }
}

static void
test_quick (void)
{
  static const char *const names[] = { "Gull", "Heron", "Plover", "Curlew",    "Teal",   "Wigeon", "Dunlin",
                                       "Knot", "Ruff",  "Snipe",  "Turnstone", "Avocet", "Smew" };
  static const char *const typed[] = { "g", "gu", "gull", "gull h", "gull heron 1", "zz", "" };
  g_autoptr (RcStore) store = rc_store_open (":memory:", NULL, NULL);

  for (guint i = 1; i <= 2000; i++)
    {
      g_autofree char *id = g_strdup_printf ("J-%u", i);
      g_autofree char *title = g_strdup_printf ("%s House %u", names[i % 13], i);
      g_autofree char *customer = g_strdup_printf ("%s %s", names[i / 13 % 13], names[i / 7 % 13]);
      g_autofree char *address = g_strdup_printf ("%u %s Street", i % 97, names[i / 169 % 13]);

      add_job (store, id, title, customer, address, "carpet in the hall and on the stairs", NOW);
    }
  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      clock_t start = clock ();
      g_autoptr (GPtrArray) all = rc_store_find_jobs (store, typed[i], NULL);
      double all_ms = 1000.0 * (double)(clock () - start) / CLOCKS_PER_SEC;
      g_autoptr (GPtrArray) some = NULL;
      double some_ms;

      start = clock ();
      some = rc_store_find_latest_jobs (store, typed[i], 50, NULL);
      some_ms = 1000.0 * (double)(clock () - start) / CLOCKS_PER_SEC;
      g_assert_cmpuint (some->len, ==, MIN (all->len, 50));
      for (guint j = 0; j < some->len; j++)
        g_assert_cmpstr (((RcJobSummary *)some->pdata[j])->id, ==, ((RcJobSummary *)all->pdata[j])->id);
      g_test_message ("“%s” in 2,000 jobs: %u found in %.1f ms, the latest 50 in %.1f ms", typed[i], all->len, all_ms,
                      some_ms);
      g_assert_cmpfloat (some_ms, <, 1000); /* of processor; 30 is the aim, and machines that test are slow */
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store-search/words-and-their-beginnings", test_words);
  g_test_add_func ("/store-search/words-follow-edits-and-undo", test_words_follow_edits);
  g_test_add_func ("/store-search/any-text-has-an-answer", test_any_text);
  g_test_add_func ("/store-search/quick-among-2000-jobs", test_quick);
  return g_test_run ();
}
