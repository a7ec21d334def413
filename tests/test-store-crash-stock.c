/* Programs killed while they move stock and receive orders: what was said to be done is there, lengths add up, and the
 * quotations issued are as they were. */
#include <signal.h>
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

#include "rounds.h"
#include "schema.h"
#include "store-maker.h"
#include "store-private.h"

#define FT        RC_TICKS_PER_FOOT
#define ROLL      "R-7"
#define N_ROUNDS  20
#define SLOW      25 /* times as many rounds in slow mode */
#define N_ACTIONS 5

/* --- what is done, by number: which roll move or order it was stands in its time --- */

static char *
dup_time (guint number)
{
  return g_strdup_printf ("2025-03-04T%010u", number);
}

static gboolean
receive (RcStore *store, const char *time)
{
  g_autoptr (RcRoll) roll = rc_roll_new (NULL, "twist", 30 * FT);
  g_autofree char *id = rc_store_receive_roll (store, roll, "from the mill", time, NULL);

  return id != NULL;
}

/* A foot of the roll: a piece, and what lies beside it comes into stock. */
static gboolean
cut (RcStore *store, const char *job, const char *time)
{
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  g_autoptr (GPtrArray) remnants = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  RcRoll *remnant = rc_roll_new (NULL, NULL, FT);

  remnant->width = 4 * FT;
  g_ptr_array_add (remnants, remnant);
  g_ptr_array_add (pieces, rc_cut_piece_new ("3", 8 * FT, FT));
  return rc_store_cut_roll (store, ROLL, job, FT, pieces, remnants, -1, time, NULL);
}

static gboolean
act (RcStore *store, guint number)
{
  g_autofree char *time = dup_time (number), *job = g_strdup_printf ("J-%u", number % 3);

  switch (number % N_ACTIONS)
    {
    case 0:
      return receive (store, time);
    case 1: /* never as much as there was before, nor 0: it is noted each time */
      return rc_store_reserve_roll (store, ROLL, job, FT + (RcLength)number, time, NULL);
    case 2:
    case 3:
      return cut (store, job, time);
    default:
      return rc_store_correct_roll (store, ROLL, 9000 * FT - (RcLength)number, "measured", time, NULL);
    }
}

static G_NORETURN void
act_until_killed (const char *path, guint number, int pipe)
{
  g_autoptr (RcStore) store = rc_store_open (path, NULL, NULL);

  for (;;)
    {
      number++;
      if (!act (store, number) || write (pipe, &number, sizeof number) < 0)
        _exit (1);
    }
}

/* The number of the last action that was reported as done before the kill. */
static guint
run_and_kill (const char *path, guint number)
{
  int   pipes[2], status;
  guint reported = number, next;
  pid_t child;

  g_assert_cmpint (pipe (pipes), ==, 0);
  child = fork ();
  if (child == 0)
    act_until_killed (path, number, pipes[1]);
  close (pipes[1]);
  /* Most often among its actions, sometimes while it opens the store. */
  if (g_test_rand_int_range (0, 4) > 0 && read (pipes[0], &next, sizeof next) == sizeof next)
    reported = next;
  g_usleep ((gulong)g_test_rand_int_range (0, 50000));
  kill (child, SIGKILL);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status)); /* it did not stop by itself */
  while (read (pipes[0], &next, sizeof next) == sizeof next)
    reported = next;
  close (pipes[0]);
  return reported;
}

/* --- what is looked at afterwards --- */

static gint64
find_number (RcStore *store, const char *sql)
{
  gint64 number = -1;
  g_autoptr (GError) error = NULL;

  rc_schema_get_integer (store->db, store->path, sql, &number, &error);
  g_assert_no_error (error);
  return number;
}

/* Each of these is 0: lengths add up, and no action is there in part. */
static const char *const differences[] = {
  /* A roll has what its history says. */
  "SELECT count (*) FROM rolls r WHERE length_ticks <> (SELECT sum (length_ticks) FROM roll_moves m"
  " WHERE m.roll = r.id AND m.kind IN ('received', 'cut', 'corrected'))",
  "SELECT count (*) FROM rolls r WHERE length_ticks <> (SELECT balance_ticks FROM roll_moves m WHERE m.roll = r.id"
  " ORDER BY move DESC LIMIT 1)",
  /* It promises no more than it has. */
  "SELECT count (*) FROM rolls r WHERE length_ticks < (SELECT total (length_ticks) FROM reservations WHERE roll = "
  "r.id)",
  /* Each cut made one piece and one remnant. */
  "SELECT (SELECT count (*) FROM roll_moves WHERE kind = 'cut') - (SELECT count (*) FROM cut_pieces)",
  "SELECT (SELECT count (*) FROM cut_pieces) - (SELECT count (*) FROM rolls WHERE remnant = 1)",
  "SELECT count (*) FROM cut_pieces c WHERE NOT EXISTS (SELECT 1 FROM roll_moves m WHERE m.made = c.made"
  " AND m.kind = 'cut' AND m.length_ticks = -c.length_ticks)",
};

/* Every row of what was issued to customers. */
static char *
dup_issued (RcStore *store)
{
  static const char *const tables[]
      = { "issued_quotations", "issued_lines", "issued_taxes", "issued_payments", "issued_papers" };
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      g_autofree char *sql = g_strdup_printf ("SELECT * FROM %s ORDER BY 1, 2", tables[i]);
      sqlite3_stmt    *rows = NULL;

      g_assert_cmpint (sqlite3_prepare_v2 (store->db, sql, -1, &rows, NULL), ==, SQLITE_OK);
      while (sqlite3_step (rows) == SQLITE_ROW)
        for (int column = 0; column < sqlite3_column_count (rows); column++)
          g_string_append_printf (text, "%s|", (const char *)sqlite3_column_text (rows, column));
      g_assert_cmpint (sqlite3_finalize (rows), ==, SQLITE_OK);
    }
  return g_string_free (text, FALSE);
}

static guint
find_last_action (RcStore *store)
{
  return (guint)find_number (store, "SELECT coalesce (max (substr (made, 12)), 0) + 0 FROM roll_moves"
                                    " WHERE made LIKE '2025-03-04T00%'");
}

static void
test_killed (void)
{
  const guint      n_rounds = scale_rounds (g_test_slow () ? SLOW * N_ROUNDS : N_ROUNDS);
  g_autofree char *path = NULL, *issued = NULL, *id = NULL;
  char            *folder = rc_store_maker_new_folder ();
  guint            number = 0;

  path = g_build_filename (folder, "shop.db", NULL);
  {
    g_autoptr (RcStore) store = rc_store_maker_open (path);
    g_autoptr (GRand) rand = g_rand_new_with_seed (7);
    g_autoptr (RcRoll) roll = rc_roll_new (ROLL, "twist", 9000 * FT);

    rc_store_maker_fill (store, rand);
    id = rc_store_receive_roll (store, roll, NULL, NOW, NULL);
    issued = dup_issued (store);
    g_assert_cmpuint (strlen (issued), >, 1000);
  }
  for (guint i = 0; i < n_rounds; i++)
    {
      guint reported = run_and_kill (path, number);
      g_autoptr (RcStore) store = rc_store_maker_open (path);
      g_autofree char *now_issued = dup_issued (store);

      number = find_last_action (store);
      g_assert_cmpuint (number, >=, reported);
      g_assert_cmpuint (number, <=, reported + 1);
      for (guint k = 0; k < G_N_ELEMENTS (differences); k++)
        if (find_number (store, differences[k]) != 0)
          g_error ("after action %u: %s", number, differences[k]);
      g_assert_cmpstr (now_issued, ==, issued);
      if (i % 5 == 0)
        rc_store_maker_assert_sound (store);
    }
  g_test_message ("killed %u times, %u moves done, none lost", n_rounds, number);
  rc_store_maker_remove_folder (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store-crash-stock/a-killed-program-loses-no-move", test_killed);
  return g_test_run ();
}
