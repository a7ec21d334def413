/* A store of many jobs: makes one (50,000 unless said otherwise) and measures opening it, the list of the latest jobs,
 * and searching as somebody types. Aims: 500 ms from the start to a window, of which the store is a part; 30 ms for a
 * letter. Not run with the tests.
 *
 *   bench-store FILE [JOBS]    FILE is made when it is not there: on a disk in memory (/dev/shm) in about a minute
 */
#include <glib/gstdio.h>
#include <stdlib.h>
#include <time.h>

#include "house.h"
#include "store.h"

#define NOW    "2026-03-04T05:06:07Z"
#define ROUNDS 9
#define SHOWN  200 /* as many as the desk's list has */

static const char *const first_names[]
    = { "Tamsin",   "Wren",   "Ottilie", "Bram",  "Isaura", "Jory",  "Perran", "Merewen",
        "Édouarda", "Sorrel", "Aldith",  "Corin", "Hesper", "Lowen", "Piran",  "Zillah" };
static const char *const last_names[]
    = { "Oddlebury", "Tolliver",  "Quillfeather", "Marlpit",   "Sandrel",   "Brackenholm",
        "Penhallow", "Wherrison", "Ropewalker",   "Fennimoor", "Larkriser", "Dovecote" };
static const char *const streets[] = { "Lantern Lane", "Ropewalk",  "Gull Street",      "Harbour Steps", "Skerrow Road",
                                       "Tolland Vale", "Quay Hill", "Old Brindle Road", "Fennel Close",  "Mill Race" };
static const char *const towns[] = { "Port Sandrel", "Thorrin", "Upper Marl", "Skerrow", "Wherry Bridge" };
static const char *const notes[] = { "Seam under the arch",
                                     "Dog in the yard, ring first",
                                     "Old floor stays",
                                     "Take up and dispose",
                                     "Stairs to be done later",
                                     "Call before coming",
                                     "" };

#define ANY(rand, list) list[g_rand_int_range (rand, 0, G_N_ELEMENTS (list))]

static RcJob *
job_new (GRand *rand, guint i)
{
  const RcCurrency usd = { "USD", 2 };
  g_autofree char *id = g_strdup_printf ("J-%u", i + 1);
  RcJob           *job = rc_job_new (id, &usd);
  RcMeasure       *measure = job->measures->pdata[0];

  job->number = g_strdup_printf ("%d-%05u", 2000 + (int)(i / 2000), i % 2000 + 1);
  job->title = g_strdup_printf ("%s %s", ANY (rand, streets), i % 3 == 0 ? "ground floor" : "upper floor");
  job->date = g_strdup_printf ("%d-%02u-%02u", 2000 + (int)(i / 2000), i % 12 + 1, i % 28 + 1);
  job->customer.name = g_strdup_printf ("%s %s", ANY (rand, first_names), ANY (rand, last_names));
  job->customer.address
      = g_strdup_printf ("%d %s\n%s", g_rand_int_range (rand, 1, 200), ANY (rand, streets), ANY (rand, towns));
  job->customer.phone = g_strdup_printf ("555 %04d", g_rand_int_range (rand, 0, 10000));
  job->notes = g_strdup (ANY (rand, notes));
  for (int room = g_rand_int_range (rand, 1, 4); room > 0; room--)
    {
      g_autofree char *room_id = g_strdup_printf ("R%d", room);
      g_ptr_array_add (measure->rooms, rc_room_new (room_id, "Room"));
    }
  return job;
}

static void
make (const char *path, guint n)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcStore) store = rc_store_open (path, NULL, &error);
  GRand *rand = g_rand_new_with_seed (7);

  g_assert_no_error (error);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (RcJob) job = job_new (rand, i);

      if (!rc_store_save_job (store, job, "Make", NOW, &error))
        g_error ("%s", error->message);
    }
  g_rand_free (rand);
}

static double
get_ms (clockid_t clock)
{
  struct timespec now;

  clock_gettime (clock, &now);
  return now.tv_sec * 1e3 + now.tv_nsec / 1e6;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return (x > y) - (x < y);
}

/* Processor time: the median of some rounds. */
static double
time_search (RcStore *store, const char *words, guint most, guint *n_found)
{
  double times[ROUNDS];

  for (int i = 0; i < ROUNDS; i++)
    {
      double start = get_ms (CLOCK_PROCESS_CPUTIME_ID);
      g_autoptr (GPtrArray) found = rc_store_find_latest_jobs (store, words, most, NULL);

      *n_found = found->len;
      times[i] = get_ms (CLOCK_PROCESS_CPUTIME_ID) - start;
    }
  qsort (times, ROUNDS, sizeof *times, compare_doubles);
  return times[ROUNDS / 2];
}

/* What the list of jobs does for each of its small floors, of the latest jobs: the longest that a key may have to wait
 * for, and all together. */
static void
time_floors (RcStore *store)
{
  g_autoptr (GPtrArray) found = rc_store_find_latest_jobs (store, NULL, SHOWN, NULL);
  double longest = 0, all = 0;
  guint  n_rooms = 0;

  for (guint i = 0; i < found->len; i++)
    {
      double start = get_ms (CLOCK_PROCESS_CPUTIME_ID), ms;
      g_autoptr (RcJob) job = rc_store_read_job (store, ((const RcJobSummary *)found->pdata[i])->id, NULL);
      g_autoptr (RcHouse) house = rc_house_new_rooms (rc_job_get_measure (job, NULL), &job->settings.closure, NULL);

      ms = get_ms (CLOCK_PROCESS_CPUTIME_ID) - start;
      n_rooms += house != NULL ? house->rooms->len : 0;
      longest = MAX (longest, ms);
      all += ms;
    }
  g_print ("%-24s %8.1f ms the longest, %.1f ms for %u of %u rooms\n", "small floors", longest, all, found->len,
           n_rooms);
}

int
main (int argc, char **argv)
{
  static const char *const typed[]
      = { NULL,     "o",       "od",        "odd",     "oddle",          "r",           "ropewalk", "2",
          "2024-0", "tam odd", "port sand", "5 lan p", "édouarda marlp", "no such one", "555 01",   "a b c" };
  g_autoptr (RcStore) store = NULL;
  g_autoptr (GError) error = NULL;
  double start, cpu;
  guint  n;

  if (argc < 2)
    {
      g_printerr ("bench-store FILE [JOBS]\n");
      return 2;
    }
  if (!g_file_test (argv[1], G_FILE_TEST_EXISTS))
    make (argv[1], argc > 2 ? (guint)atoi (argv[2]) : 50000);
  start = get_ms (CLOCK_MONOTONIC);
  cpu = get_ms (CLOCK_PROCESS_CPUTIME_ID);
  store = rc_store_open (argv[1], NULL, &error);
  g_assert_no_error (error);
  g_print ("%-24s %8.1f ms of processor, %.1f ms on the clock\n", "open", get_ms (CLOCK_PROCESS_CPUTIME_ID) - cpu,
           get_ms (CLOCK_MONOTONIC) - start);
  for (gsize i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      double ms = time_search (store, typed[i], SHOWN, &n);

      g_print ("%-24s %8.1f ms, %u shown\n", typed[i] != NULL ? typed[i] : "(all)", ms, n);
    }
  time_floors (store);
  return 0;
}
