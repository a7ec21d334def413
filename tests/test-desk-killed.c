/* The desk killed at any moment while somebody types: all that had been shown as done is there again. */
#include <errno.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#include "desk-fixture.h"

#define EDIT_OPTION "--edit"

/* The states that a hand goes through, by number: a title typed, a room added, taken back, done again; after some of
 * them a new job, as a job that grows without end would be planned ever slower. */
#define STATES_OF_JOB 24

static char *
dup_job_id (guint state)
{
  return g_strdup_printf ("J-%u", state / STATES_OF_JOB + 1);
}

static guint
get_n_rooms (guint state)
{
  state %= STATES_OF_JOB;
  return state / 4 + (state % 4 == 2 ? 1 : 0);
}

static char *
dup_title (guint state)
{
  return state % STATES_OF_JOB == 0 ? g_strdup ("") : g_strdup_printf ("Edit %u", (state - 1) / 4 * 4 + 1);
}

static void
act (RcWindow *window, const char *name)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), name, NULL));
  desk_fixture_settle ();
}

static void
enter_state (RcWindow *window, guint state)
{
  g_autofree char *title = dup_title (state);

  if (state % STATES_OF_JOB == 0)
    act (window, "win.new-job");
  else if (state % 4 == 2)
    act (window, "win.new-room");
  else if (state % 4 == 3)
    act (window, "win.undo");
  else if (state % 4 == 0)
    act (window, "win.redo");
  else
    {
      act (window, "win.choose-job");
      act (window, "win.edit-chosen");
      gtk_editable_select_region (GTK_EDITABLE (gtk_window_get_focus (GTK_WINDOW (window))), 0, -1);
      desk_fixture_type (GTK_WINDOW (window), title);
    }
}

/* The program that is killed. Whatever it has done and shown it tells on standard output, by the state's number. */
static int
edit_until_killed (const char *path, guint state)
{
  g_autofree char *id = dup_job_id (state);
  g_autoptr (GError) error = NULL;
  RcStore  *store;
  RcWindow *window;

  gtk_init ();
  rc_desk_load_resources ();
  store = rc_desk_open_store (path, &error);
  g_assert_no_error (error);
  GtkApplication *application = g_object_new (RC_TYPE_DESK, "application-id", "org.rowcut.Rowcut.Test", "flags",
                                              G_APPLICATION_NON_UNIQUE, NULL);
  g_application_register (G_APPLICATION (application), NULL, &error);
  g_assert_no_error (error);
  window = rc_window_new (application, store);
  if (!rc_window_open_job (window, id, NULL))
    act (window, "win.new-job");
  gtk_window_present (GTK_WINDOW (window));
  desk_fixture_settle ();
  for (;;)
    {
      enter_state (window, ++state);
      if (write (STDOUT_FILENO, &state, sizeof state) != sizeof state)
        return EXIT_FAILURE;
    }
}

/* The number of the last state that was shown before the kill. */
static guint
run_and_kill (const char *path, guint state)
{
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *number = g_strdup_printf ("%u", state);
  char            *arguments[] = { self, (char *)EDIT_OPTION, (char *)path, number, NULL };
  guint            next, reported = state;
  int              output, status;
  GPid             child;
  g_autoptr (GError) error = NULL;

  g_spawn_async_with_pipes (NULL, arguments, NULL, G_SPAWN_DO_NOT_REAP_CHILD, NULL, NULL, &child, NULL, &output, NULL,
                            &error);
  g_assert_no_error (error);
  /* Most often among its edits, sometimes while it starts. */
  if (g_test_rand_int_range (0, 8) > 0 && read (output, &next, sizeof next) == sizeof next)
    reported = next;
  g_usleep ((gulong)g_test_rand_int_range (0, 400000));
  kill (child, SIGKILL);
  while (waitpid (child, &status, 0) < 0)
    g_assert_cmpint (errno, ==, EINTR);
  g_assert_true (WIFSIGNALED (status)); /* it did not stop by itself */
  while (read (output, &next, sizeof next) == sizeof next)
    reported = next;
  close (output);
  return reported;
}

static RcJob *
load_job (RcStore *store, guint state)
{
  g_autofree char *id = dup_job_id (state);

  return rc_store_load_job (store, id, NULL);
}

static gboolean
is_state (const RcJob *job, guint state)
{
  g_autofree char *title = dup_title (state);

  return rc_job_get_measure (job, NULL)->rooms->len == get_n_rooms (state)
         && (state % STATES_OF_JOB == 0 || g_strcmp0 (job->title, title) == 0);
}

/* A title on its way from one state to the next. */
static gboolean
is_being_typed (const RcJob *job, guint next)
{
  g_autofree char *title = dup_title (next);

  return next % 4 == 1 && rc_job_get_measure (job, NULL)->rooms->len == get_n_rooms (next)
         && (job->title == NULL || g_str_has_prefix (title, job->title));
}

/* The state that the store is in, which is the one shown last or the next. */
static guint
find_state (RcStore *store, guint reported)
{
  g_autoptr (RcJob) next = load_job (store, reported + 1);
  g_autoptr (RcJob) job = load_job (store, reported);

  if (next != NULL && is_state (next, reported + 1))
    return reported + 1;
  if (job == NULL)
    g_assert_cmpuint (reported, ==, 0); /* killed before there was a job */
  else if (!is_state (job, reported) && !is_being_typed (job, reported + 1))
    g_error ("after state %u: “%s”, %u rooms", reported, job->title, rc_job_get_measure (job, NULL)->rooms->len);
  return reported;
}

static void
assert_earlier_jobs (RcStore *store, guint state)
{
  for (guint last = STATES_OF_JOB - 1; last + 1 <= state; last += STATES_OF_JOB)
    {
      g_autoptr (RcJob) job = load_job (store, last);

      g_assert_true (job != NULL && is_state (job, last));
    }
}

static void
test_killed (void)
{
  const guint      n_rounds = g_test_slow () ? 500 : 6;
  g_autofree char *folder = g_dir_make_tmp ("rowcut-killed-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "shop.db", NULL);
  guint            state = 0;

  for (guint i = 0; i < n_rounds; i++)
    {
      guint reported = run_and_kill (path, state);
      g_autoptr (GError) error = NULL;
      g_autoptr (RcStore) store = rc_store_open (path, NULL, &error);
      g_autofree char *report = NULL;

      g_assert_no_error (error);
      state = find_state (store, reported);
      assert_earlier_jobs (store, state);
      g_assert_true (rc_store_check (store, &report, &error));
      g_assert_cmpstr (report, ==, "");
    }
  g_test_message ("killed %u times, %u states shown, none lost", n_rounds, state);
  desk_fixture_remove_folder (folder);
}

int
main (int argc, char **argv)
{
  if (argc == 4 && g_str_equal (argv[1], EDIT_OPTION))
    return edit_until_killed (argv[2], (guint)g_ascii_strtoull (argv[3], NULL, 10));
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/desk/a killed desk loses nothing that was shown", test_killed);
  return g_test_run ();
}
