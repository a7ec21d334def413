/* Several programs on one store, and programs that are killed. */
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "rowcut-error.h"
#include "store-maker.h"

typedef struct
{
  char *folder, *path;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->folder = rc_store_maker_new_folder ();
  fixture->path = g_build_filename (fixture->folder, "shop.db", NULL);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  rc_store_maker_remove_folder (fixture->folder);
  g_free (fixture->path);
}

static void
set_title (RcJob *job, guint number)
{
  g_free (job->title);
  job->title = g_strdup_printf ("Edit %u", number);
}

/* Saves, and now and then takes back, for ever. After each save its number goes up the pipe. */
static void
edit_until_killed (const char *path, guint number, int pipe, guint32 seed)
{
  g_autoptr (RcStore) store = rc_store_open (path, NULL, NULL);
  g_autoptr (RcJob) job = rc_store_load_job (store, "J-1", NULL);
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);

  for (;;)
    {
      number++;
      set_title (job, number);
      rc_store_maker_edit_job (rand, job);
      set_title (job, number);
      /* Every third edit is a letter more of the one before; not where it is taken back below. */
      if (!(number % 3 == 0 && number % 7 != 0 ? rc_store_amend_job (store, job, "Edit", NOW, NULL, NULL)
                                               : rc_store_save_job (store, job, "Edit", NOW, NULL))
          || write (pipe, &number, sizeof number) < 0)
        _exit (1);
      if (number % 7 == 0 && (!rc_store_undo (store, "J-1", NULL, NULL) || !rc_store_redo (store, "J-1", NULL, NULL)))
        _exit (2);
    }
}

/* The number of the last edit that was reported as done before the kill. */
static guint
run_and_kill (const char *path, guint number)
{
  int     pipes[2], status;
  guint   reported = number, next;
  guint32 seed = (guint32)g_test_rand_int ();
  pid_t   child;

  g_assert_cmpint (pipe (pipes), ==, 0);
  child = fork ();
  if (child == 0)
    edit_until_killed (path, number, pipes[1], seed);
  close (pipes[1]);
  /* Most often among its edits, sometimes while it opens the store. */
  if (g_test_rand_int_range (0, 4) > 0 && read (pipes[0], &next, sizeof next) == sizeof next)
    reported = next;
  g_usleep ((gulong)g_test_rand_int_range (0, 150000));
  kill (child, SIGKILL);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status)); /* it did not stop by itself */
  while (read (pipes[0], &next, sizeof next) == sizeof next)
    reported = next;
  close (pipes[0]);
  return reported;
}

static void
test_killed (Fixture *fixture, gconstpointer data)
{
  const guint n_rounds = g_test_slow () ? 500 : 20;
  guint       number = 0;

  {
    g_autoptr (RcStore) store = rc_store_open (fixture->path, NULL, NULL);
    g_autoptr (GRand) rand = g_rand_new_with_seed (1);
    g_autoptr (RcJob) job = rc_store_maker_new_job (rand, "J-1", 10);

    set_title (job, 0);
    g_assert_true (rc_store_save_job (store, job, "New job", NOW, NULL));
  }
  for (guint i = 0; i < n_rounds; i++)
    {
      guint reported = run_and_kill (fixture->path, number);
      g_autoptr (GError) error = NULL;
      g_autoptr (RcStore) store = rc_store_open (fixture->path, NULL, &error);
      g_autoptr (RcJob) job = NULL;

      g_assert_no_error (error);
      job = rc_store_load_job (store, "J-1", &error);
      g_assert_no_error (error);
      g_assert_true (g_str_has_prefix (job->title, "Edit "));
      number = (guint)g_ascii_strtoull (job->title + strlen ("Edit "), NULL, 10);
      /* The last one may be done and not yet reported, or taken back and not yet done again. */
      if (number + 1 == reported && reported % 7 == 0)
        {
          g_assert_true (rc_store_redo (store, "J-1", NULL, &error));
          number++;
        }
      g_assert_cmpuint (number, >=, reported);
      g_assert_cmpuint (number, <=, reported + 1);
      if (i % 5 == 0)
        rc_store_maker_assert_sound (store);
    }
  g_test_message ("killed %u times, %u edits done, none lost", n_rounds, number);
}

static void
wait_for (const pid_t *children, guint n_children)
{
  for (guint i = 0; i < n_children; i++)
    {
      int status;

      g_assert_cmpint (waitpid (children[i], &status, 0), ==, children[i]);
      g_assert_true (WIFEXITED (status));
      g_assert_cmpint (WEXITSTATUS (status), ==, 0);
    }
}

static void
make_and_save (const char *path, guint number)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcStore) store = rc_store_open (path, NULL, &error);
  g_autoptr (GRand) rand = g_rand_new_with_seed (number);
  g_autofree char *id = g_strdup_printf ("J-%u", number);
  g_autoptr (RcJob) job = rc_store_maker_new_job (rand, id, 2);

  if (store == NULL || !rc_store_save_job (store, job, "New job", NOW, &error))
    {
      g_printerr ("%s\n", error->message);
      _exit (1);
    }
}

/* All of them find no store and make one: one does, the others wait. */
static void
make_by_many (const char *path)
{
  pid_t children[6];
  g_autoptr (RcStore) store = NULL;
  g_autoptr (GPtrArray) jobs = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (children); i++)
    {
      children[i] = fork ();
      if (children[i] == 0)
        {
          make_and_save (path, i + 1);
          _exit (0);
        }
    }
  wait_for (children, G_N_ELEMENTS (children));
  store = rc_store_open (path, NULL, NULL);
  jobs = rc_store_find_jobs (store, NULL, NULL);
  g_assert_cmpuint (jobs->len, ==, G_N_ELEMENTS (children));
  rc_store_maker_assert_sound (store);
}

static void
test_made_by_many (Fixture *fixture, gconstpointer data)
{
  const guint n_stores = g_test_slow () ? 200 : 15;

  for (guint i = 0; i < n_stores; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s-%u.db", fixture->path, i);

      make_by_many (path);
    }
}

/* Adds a room to the one job, again and again; over somebody else's edit it loads anew. */
static void
add_rooms (const char *path, guint me, guint n_rooms)
{
  g_autoptr (RcStore) store = rc_store_open (path, NULL, NULL);

  for (guint i = 0; i < n_rooms;)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RcJob) job = rc_store_load_job (store, "J-1", &error);
      g_autofree char *id = g_strdup_printf ("room %u of %u", i, me);

      if (job == NULL)
        _exit (1);
      g_ptr_array_add (rc_job_get_measure (job, NULL)->rooms, rc_room_new (id, "Room"));
      if (rc_store_save_job (store, job, "Add room", NOW, &error))
        i++;
      else if (!g_error_matches (error, RC_ERROR, RC_ERROR_CONFLICT))
        _exit (2);
    }
}

static void
test_edited_by_many (Fixture *fixture, gconstpointer data)
{
  const guint n_rooms = 15;
  pid_t       children[4];
  g_autoptr (RcStore) store = NULL;
  g_autoptr (RcJob) job = NULL;
  guint n_steps = 0;

  make_and_save (fixture->path, 1);
  for (guint i = 0; i < G_N_ELEMENTS (children); i++)
    {
      children[i] = fork ();
      if (children[i] == 0)
        {
          add_rooms (fixture->path, i, n_rooms);
          _exit (0);
        }
    }
  wait_for (children, G_N_ELEMENTS (children));
  store = rc_store_open (fixture->path, NULL, NULL);
  job = rc_store_load_job (store, "J-1", NULL);
  g_assert_cmpuint (rc_job_get_measure (job, NULL)->rooms->len, ==, 2 + n_rooms * G_N_ELEMENTS (children));
  while (rc_store_undo (store, "J-1", NULL, NULL))
    n_steps++;
  g_assert_cmpuint (n_steps, ==, n_rooms * G_N_ELEMENTS (children));
  rc_store_maker_assert_sound (store);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, function) g_test_add (path, Fixture, NULL, set_up, function, tear_down)
  ADD ("/store-crash/a-killed-program-loses-no-edit", test_killed);
  ADD ("/store-crash/a-store-made-by-many-at-once", test_made_by_many);
  ADD ("/store-crash/a-job-edited-by-many-at-once", test_edited_by_many);
  return g_test_run ();
}
