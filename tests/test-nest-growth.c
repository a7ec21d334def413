#include <time.h>

#include "nest-cases.h"
#include "spaces.h"

/* --- free spaces against a plain list --- */

typedef struct
{
  RcNestSpace spaces[2000];
  guint       n;
} List;

/* The first of at least this key and room. */
static const RcNestSpace *
find_in_list (const List *list, RcLength key, RcLength room)
{
  const RcNestSpace *first = NULL;

  for (guint i = 0; i < list->n; i++)
    {
      const RcNestSpace *space = &list->spaces[i];

      if (space->key >= key && space->room >= room
          && (first == NULL || space->key < first->key || (space->key == first->key && space->id < first->id)))
        first = space;
    }
  return first;
}

static void
change_both (GRand *rand, RcNestSpaces *spaces, List *list, int id)
{
  RcLength room = g_rand_int_range (rand, 0, 1000);
  guint    i = list->n > 0 ? (guint)g_rand_int_range (rand, 0, (gint32)list->n) : 0;

  switch (list->n > 0 && list->n < G_N_ELEMENTS (list->spaces) ? g_rand_int_range (rand, 0, 4) : list->n == 0)
    {
    case 0:
      rc_nest_spaces_remove (spaces, list->spaces[i].key, list->spaces[i].id);
      list->spaces[i] = list->spaces[--list->n];
      break;
    case 1:
    case 2:
      list->spaces[list->n] = (RcNestSpace){ g_rand_int_range (rand, 0, 100), room, id };
      rc_nest_spaces_add (spaces, list->spaces[list->n].key, room, id);
      list->n++;
      break;
    default:
      list->spaces[i].room = room;
      rc_nest_spaces_set_room (spaces, list->spaces[i].key, list->spaces[i].id, room);
    }
}

static void
test_spaces (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (51);
  RcNestSpaces spaces;
  List        *list = g_new0 (List, 1);

  rc_nest_spaces_init (&spaces);
  for (int round = 0, id = 0; round < 4; round++)
    {
      rc_nest_spaces_reset (&spaces);
      list->n = 0;
      for (int step = 0; step < 3000; step++)
        {
          RcLength           key = g_rand_int_range (rand, 0, 110), room = g_rand_int_range (rand, 0, 1100);
          RcNestSpacesPlace  place;
          const RcNestSpace *found, *expected;

          change_both (rand, &spaces, list, id++);
          place = rc_nest_spaces_find (&spaces, key, room);
          found = rc_nest_spaces_get (&spaces, place);
          expected = find_in_list (list, key, room);
          g_assert_true ((found == NULL) == (expected == NULL));
          if (found == NULL)
            continue;
          g_assert_cmpint (found->id, ==, expected->id);
          g_assert_cmpint (found->room, ==, expected->room);
          place = rc_nest_spaces_find_next (&spaces, place, room);
          g_assert_true (rc_nest_spaces_get (&spaces, place) == NULL
                         || rc_nest_spaces_get (&spaces, place)->key >= found->key);
        }
    }
  rc_nest_spaces_clear (&spaces);
  g_free (list);
}

/* --- how the first answer's time grows --- */

/* Processor time of this thread, the least of some runs. */
static double
measure_first_answer (guint n, gboolean repeats, guint n_runs)
{
  double least = G_MAXDOUBLE;
  guint  seed = 0;

  for (guint run = 0; run < n_runs; seed++)
    {
      g_autoptr (GRand) rand = g_rand_new_with_seed (60 + seed);
      g_autoptr (RcNestProblem) problem = rc_nest_case_new_trade (rand, n);
      g_autoptr (RcNestAnswer) answer = NULL;
      struct timespec begin, end;

      if ((((RcNestCut *)problem->cuts->pdata[0])->repeat > 0) != repeats || problem->rolls->len < 20)
        continue;
      run++;
      clock_gettime (CLOCK_THREAD_CPUTIME_ID, &begin);
      answer = rc_nest_solve (problem, NULL);
      clock_gettime (CLOCK_THREAD_CPUTIME_ID, &end);
      g_assert_cmpint (answer->status, !=, RC_NEST_INFEASIBLE);
      least = MIN (least, (double)(end.tv_sec - begin.tv_sec) + 1e-9 * (double)(end.tv_nsec - begin.tv_nsec));
    }
  return least;
}

/* Sixteen times as many cuts take 22 times as long at n log n, 64 times at n^1.5, 256 times at n^2. */
static void
assert_grows_little (gboolean repeats)
{
  double few = measure_first_answer (1000, repeats, 6), many = measure_first_answer (16000, repeats, 2);

  g_test_message ("1000 cuts %.1f ms, 16000 cuts %.1f ms: %.1f times", 1000 * few, 1000 * many, many / few);
  g_assert_cmpfloat (many / few, <, 45);
}

static void
test_growth (void)
{
  assert_grows_little (FALSE);
}

static void
test_growth_with_repeats (void)
{
  assert_grows_little (TRUE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/growth/free spaces are found as in a plain list", test_spaces);
  g_test_add_func ("/nest/growth/the first answer's time grows little more than the number of cuts", test_growth);
  g_test_add_func ("/nest/growth/with repeats too", test_growth_with_repeats);
  return g_test_run ();
}
