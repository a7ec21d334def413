/* Stairs on the drawing and in words; how they are cut is in test-job-parts.c. */
#include "stair-figure.h"

#define FT (12 * RC_TICKS_PER_INCH)

/* Whoever walks up the line of a stair comes onto each of its steps, one after the other, whichever way it turns. */
static void
test_walk_climbs_every_step (void)
{
  for (guint turn = RC_STAIR_STRAIGHT; turn <= RC_STAIR_WINDERS; turn++)
    for (guint bend = RC_STAIR_LEFT; bend <= RC_STAIR_BACK_RIGHT; bend++)
      for (int bearing = 0; bearing < 360; bearing += 45)
        {
          RcStair *stair = rc_stair_new ("S", "Stair");
          g_autoptr (GArray) walk = NULL;
          guint at = 1;

          stair->steps = 11;
          stair->going = 10 * RC_TICKS_PER_INCH;
          stair->width = 3 * FT;
          stair->turn = (RcStairTurn)turn;
          stair->bend = (RcStairBend)bend;
          stair->turn_after = 5;
          stair->winders = 3;
          stair->turn_going = 3 * FT;
          stair->turn_width = bend >= RC_STAIR_BACK_LEFT ? 6 * FT : 3 * FT;
          stair->at = (RcPoint){ 40 * FT, -20 * FT };
          stair->bearing_degrees = bearing;
          walk = rc_stair_compute_walk (stair);
          g_assert_cmpuint (walk->len, ==, turn == RC_STAIR_STRAIGHT ? 2 : bend >= RC_STAIR_BACK_LEFT ? 4 : 3);
          g_assert_cmpint (rc_ring_get (walk, 0)->x, ==, stair->at.x);
          g_assert_cmpint (rc_ring_get (walk, 0)->y, ==, stair->at.y);
          for (guint i = 0; i + 1 < walk->len; i++)
            for (int part = 1; part < 100; part++)
              {
                RcPoint a = *rc_ring_get (walk, i), b = *rc_ring_get (walk, i + 1);
                RcPoint here = { a.x + (b.x - a.x) * part / 100, a.y + (b.y - a.y) * part / 100 };
                guint   step = rc_stair_find_step (stair, here);

                g_assert_true (step == at || step == at + 1);
                at = step;
              }
          g_assert_cmpuint (at, ==, rc_stair_count_steps (stair));
          rc_stair_free (stair);
        }
}

/* Steps without a size take no place on the drawing, and nobody finds them. */
static void
test_stair_of_no_size (void)
{
  RcStair *stair = rc_stair_new ("S", "Stair");
  g_autoptr (GPtrArray) treads = NULL;

  stair->steps = 4;
  stair->turn = RC_STAIR_WINDERS;
  stair->turn_after = 2;
  stair->winders = 3;
  treads = rc_stair_compute_treads (stair);
  g_assert_cmpuint (treads->len, ==, 7);
  for (guint i = 0; i < treads->len; i++)
    g_assert_cmpuint (((const RcRing *)treads->pdata[i])->len, ==, 0);
  g_assert_cmpuint (rc_stair_find_step (stair, (RcPoint){ 0, 0 }), ==, 0);

  stair->steps = 3 * RC_STAIR_MAX_STEPS; /* refused by the check of the job; drawn no further all the same */
  stair->turn_after = 2 * RC_STAIR_MAX_STEPS;
  g_assert_cmpuint (rc_stair_count_steps (stair), >, RC_STAIR_MAX_STEPS);
  g_clear_pointer (&treads, g_ptr_array_unref);
  treads = rc_stair_compute_treads (stair);
  g_assert_cmpuint (treads->len, ==, RC_STAIR_MAX_STEPS);
  rc_stair_free (stair);
}

static void
test_stair_words (void)
{
  static const struct
  {
    RcStairPiece piece;
    const char  *label;
  } pieces[] = {
    { { .kind = RC_STAIR_PIECE_FLIGHT, .first = 2, .last = 9 }, "Flight, steps 2 to 9" },
    { { .kind = RC_STAIR_PIECE_FLIGHT, .first = 4, .last = 4 }, "Step 4" },
    { { .kind = RC_STAIR_PIECE_STEP, .first = 4, .last = 4 }, "Step 4" },
    { { .kind = RC_STAIR_PIECE_CAP, .first = 3, .last = 3 }, "Cap of step 3" },
    { { .kind = RC_STAIR_PIECE_BAND, .first = 3, .last = 3 }, "Band of step 3" },
    { { .kind = RC_STAIR_PIECE_WINDER, .first = 7, .last = 7 }, "Winder, step 7" },
    { { .kind = RC_STAIR_PIECE_LANDING, .first = 6, .last = 6 }, "Landing, step 6" },
    { { .kind = RC_STAIR_PIECE_CURVED_STEP, .first = 1, .last = 1 }, "Curved bottom step 1" },
  };
  const RcLengthStyle *style = &RC_LENGTH_STYLE_IMPERIAL;
  RcStair             *stair = rc_stair_new ("S", "Stair");
  g_autofree char     *plain = rc_stair_dup_extras (stair, style), *landing = NULL, *winders = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
    {
      g_autofree char *label = rc_stair_piece_dup_label (&pieces[i].piece);

      g_assert_cmpstr (label, ==, pieces[i].label);
    }
  g_assert_cmpstr (plain, ==, "");
  stair->turn = RC_STAIR_LANDING;
  stair->turn_after = 5;
  stair->turn_going = 3 * FT;
  stair->turn_width = 4 * FT;
  stair->runner_width = 2 * FT;
  landing = rc_stair_dup_extras (stair, style);
  g_assert_cmpstr (landing, ==, "; a landing of 3' 0\" by 4' 0\" after step 5; a runner 2' 0\" wide");
  stair->turn = RC_STAIR_WINDERS;
  stair->winders = 3;
  stair->runner_width = 0;
  stair->curved_width = 5 * FT;
  stair->cutting = RC_STAIR_PER_STEP;
  winders = rc_stair_dup_extras (stair, style);
  g_assert_cmpstr (winders, ==,
                   "; 3 winders after step 5, 3' 0\" at their widest, 4' 0\" long; bottom step 5' 0\" round its curved "
                   "end; cut step by step");
  rc_stair_free (stair);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job-stairs/the walk climbs every step", test_walk_climbs_every_step);
  g_test_add_func ("/job-stairs/a stair of no size", test_stair_of_no_size);
  g_test_add_func ("/job-stairs/words of stairs", test_stair_words);
  return g_test_run ();
}
