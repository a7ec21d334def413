/* The quick bound over slices against the linear program that it stands for, which is solved to its end. */
#include <time.h>

#include "rounds.h"
#include "slice-few.h"

static const RcNestClock never = { G_MAXINT64, G_MAXUINT64, NULL, FALSE };

static void
test_alone (void)
{
  /* A fill more than half as wide as the roll, and one that lies beside it nowhere: one after the other. */
  RcNestSliceItem items[] = { { 60, 1000, 1 }, { 50, 300, 1 } };
  g_assert_cmpint (rc_nest_slice_bound_few (items, 2, NULL, 0, 100, 0), ==, 1300);

  /* Whole it takes all of the roll, however narrow; joined of two pieces they lie side by side. */
  RcNestSliceItem fill = { 40, 1000, 1 };
  g_assert_cmpint (rc_nest_slice_bound_few (&fill, 1, NULL, 0, 100, 0), ==, 1000);
  fill.count = 2;
  g_assert_cmpint (rc_nest_slice_bound_few (&fill, 1, NULL, 0, 100, 0), ==, 500);
  fill.count = 3; /* no room for more */
  g_assert_cmpint (rc_nest_slice_bound_few (&fill, 1, NULL, 0, 100, 0), ==, 500);

  g_assert_cmpint (rc_nest_slice_bound_few (&fill, 1, NULL, 0, 100, 900), ==, 900);
  g_assert_cmpint (rc_nest_slice_bound_few (NULL, 0, NULL, 0, 100, 7), ==, 7);
}

static void
test_program (void)
{
  guint  n_rounds = scale_rounds (400);
  double short_of = 0;
  for (guint round = 0; round < n_rounds; round++)
    {
      RcNestSliceItem items[8];
      guint           n = (guint)g_test_rand_int_range (1, 9);
      RcLength        width = g_test_rand_int_range (40, 241);
      for (guint i = 0; i < n; i++)
        items[i] = (RcNestSliceItem){ g_test_rand_int_range (1, (int)width + 1), g_test_rand_int_range (1, 100000),
                                      (guint)g_test_rand_int_range (1, 4) };
      RcLength quick = rc_nest_slice_bound_few (items, n, NULL, 0, width, 0);
      RcLength program = rc_nest_slice_bound (items, n, width, 0, 1, &never);
      g_assert_cmpint (quick, <=, program + 1);
      g_assert_cmpint (quick, >, 0);
      short_of += 1 - (double)quick / (double)program;
    }
  g_test_message ("%.2f %% short of the program, on average", 100 * short_of / n_rounds);
  g_assert_cmpfloat (short_of / n_rounds, <, 0.005);
}

/* Many narrow items lie side by side in more ways than are listed: never more than the program, and not far below it
 * where what is wide is exact. */
static void
test_narrow (void)
{
  guint  n_rounds = scale_rounds (100);
  double short_of = 0;
  for (guint round = 0; round < n_rounds; round++)
    {
      RcNestSliceItem items[12];
      guint           n = (guint)g_test_rand_int_range (8, 13);
      RcLength        width = 240;
      for (guint i = 0; i < n; i++)
        items[i] = (RcNestSliceItem){ g_test_rand_int_range (i < 3 ? 80 : 3, i < 3 ? 200 : 30),
                                      g_test_rand_int_range (1, 100000), i < 3 ? 1 : G_MAXUINT8 };
      RcLength quick = rc_nest_slice_bound_few (items, n, NULL, 0, width, 0);
      RcLength program = rc_nest_slice_bound (items, n, width, 0, 1, &never);
      g_assert_cmpint (quick, <=, program + 1);
      short_of += 1 - (double)quick / (double)program;
    }
  g_test_message ("%.2f %% short of the program, on average", 100 * short_of / n_rounds);
  g_assert_cmpfloat (short_of / n_rounds, <, 0.05);
}

/* A length that items share out among themselves: never more than however it is shared out, and as much as where that
 * comes to least. */
static void
test_shared (void)
{
  guint n_rounds = scale_rounds (200);
  for (guint round = 0; round < n_rounds; round++)
    {
      RcNestSliceItem items[5], shared[5];
      guint           n = (guint)g_test_rand_int_range (2, 6);
      RcLength        width = g_test_rand_int_range (40, 241), least = G_MAXINT64;
      RcNestSlicePool pool = { g_test_rand_int_range (1000, 100000), 0, 2 };
      for (guint i = 0; i < n; i++)
        items[i] = (RcNestSliceItem){ g_test_rand_int_range (1, (int)width + 1), g_test_rand_int_range (1, 100000),
                                      (guint)g_test_rand_int_range (1, 3) };
      RcLength quick = rc_nest_slice_bound_few (items, n, &pool, 1, width, 0);
      for (guint k = 0; k <= 100; k++)
        {
          memcpy (shared, items, sizeof items);
          shared[0].demand += pool.length * k / 100;
          shared[1].demand += pool.length - pool.length * k / 100;
          RcLength program = rc_nest_slice_bound (shared, n, width, 0, 1, &never);
          g_assert_cmpint (quick, <=, program + 1);
          least = MIN (least, program);
        }
      g_assert_cmpint (quick, >=, least - pool.length / 50 - 1);
    }
}

/* All side by side but for one: of the sets of so many nearly all hold room for more, and are not all gone through. */
static void
test_nearly_all_fit (void)
{
  RcNestSliceItem items[24];
  RcLength        width = -1, longest = 0;
  for (guint i = 0; i < G_N_ELEMENTS (items); i++)
    {
      items[i] = (RcNestSliceItem){ 1000 + i, 5000 + 10 * i, 1 };
      width += items[i].w;
      longest = MAX (longest, items[i].demand);
    }
  gint64   start = clock ();
  RcLength quick = rc_nest_slice_bound_few (items, G_N_ELEMENTS (items), NULL, 0, width, longest);
  g_assert_cmpint (quick, >=, longest);
  g_assert_cmpint (quick, <=, rc_nest_slice_bound (items, G_N_ELEMENTS (items), width, longest, 1, &never) + 1);
  g_assert_cmpint (clock () - start, <, 10 * CLOCKS_PER_SEC); /* of the processor; some milliseconds */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nest/slices/alone", test_alone);
  g_test_add_func ("/nest/slices/program", test_program);
  g_test_add_func ("/nest/slices/narrow", test_narrow);
  g_test_add_func ("/nest/slices/shared", test_shared);
  g_test_add_func ("/nest/slices/nearly-all-fit", test_nearly_all_fit);
  return g_test_run ();
}
