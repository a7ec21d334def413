/* Stairs on the drawing and in words; how they are cut is in test-job-parts.c. */
#include "stair-figure.h"

#define FT (12 * RC_TICKS_PER_INCH)

static void
add_turn (RcStair *stair, RcStairTurn turn)
{
  g_array_append_val (stair->turns, turn);
}

static RcStairTurn
make_turn (RcTurnKind kind, RcBend bend, guint after)
{
  gboolean back = bend == RC_BEND_BACK_LEFT || bend == RC_BEND_BACK_RIGHT;

  return (RcStairTurn){ kind, bend, after, 3, 3 * FT, back ? 6 * FT : 3 * FT };
}

/* Whoever walks up the line of the stair comes onto each of its steps, one after the other. */
static void
assert_walk_climbs (const RcStair *stair, guint n_corners)
{
  g_autoptr (GArray) walk = rc_stair_compute_walk (stair);
  guint at = 1;

  g_assert_cmpuint (walk->len, ==, 2 + n_corners);
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
}

static guint
count_corners (RcBend bend)
{
  return bend == RC_BEND_AHEAD ? 0 : bend >= RC_BEND_BACK_LEFT ? 2 : 1;
}

/* Straight; by one turn, whichever way; by two, with a flight between them and without. */
static void
test_walk_climbs_every_step (void)
{
  static const RcBend others[] = { RC_BEND_RIGHT, RC_BEND_LEFT, RC_BEND_RIGHT, RC_BEND_LEFT, RC_BEND_BACK_RIGHT };

  for (int kind = RC_TURN_LANDING; kind <= RC_TURN_WINDERS; kind++)
    for (int bend = RC_BEND_LEFT; bend <= (kind == RC_TURN_LANDING ? RC_BEND_AHEAD : RC_BEND_BACK_RIGHT); bend++)
      for (int bearing = 0; bearing < 360; bearing += 45)
        {
          RcStair *stair = rc_stair_new ("S", "Stair");

          stair->steps = 11;
          stair->going = 10 * RC_TICKS_PER_INCH;
          stair->width = 3 * FT;
          stair->at = (RcPoint){ 40 * FT, -20 * FT };
          stair->bearing_degrees = bearing;
          assert_walk_climbs (stair, 0);
          add_turn (stair, make_turn (kind, bend, 5));
          assert_walk_climbs (stair, count_corners (bend));
          add_turn (stair, make_turn (1 - kind, others[bend], 4));
          assert_walk_climbs (stair, count_corners (bend) + count_corners (others[bend]));
          rc_stair_get_turn (stair, 1)->after = 0;
          assert_walk_climbs (stair, count_corners (bend) + count_corners (others[bend]));
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
  add_turn (stair, (RcStairTurn){ .kind = RC_TURN_WINDERS, .after = 2, .winders = 3 });
  treads = rc_stair_compute_treads (stair);
  g_assert_cmpuint (treads->len, ==, 7);
  for (guint i = 0; i < treads->len; i++)
    g_assert_cmpuint (((const RcRing *)treads->pdata[i])->len, ==, 0);
  g_assert_cmpuint (rc_stair_find_step (stair, (RcPoint){ 0, 0 }), ==, 0);

  stair->steps = 3 * RC_STAIR_MAX_STEPS; /* refused by the check of the job; drawn no further all the same */
  rc_stair_get_turn (stair, 0)->after = 2 * RC_STAIR_MAX_STEPS;
  add_turn (stair, make_turn (RC_TURN_LANDING, RC_BEND_LEFT, 5 * RC_STAIR_MAX_STEPS));
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
  stair->steps = 9;
  add_turn (stair, (RcStairTurn){ RC_TURN_LANDING, RC_BEND_LEFT, 5, 0, 3 * FT, 4 * FT });
  stair->runner_width = 2 * FT;
  landing = rc_stair_dup_extras (stair, style);
  g_assert_cmpstr (landing, ==, "; a landing of 3' 0\" by 4' 0\" after step 5; a runner 2' 0\" wide");
  add_turn (stair, (RcStairTurn){ RC_TURN_WINDERS, RC_BEND_LEFT, 2, 3, 2 * FT, 4 * FT });
  stair->runner_width = 0;
  stair->curved_width = 5 * FT;
  stair->cutting = RC_STAIR_PER_STEP;
  winders = rc_stair_dup_extras (stair, style);
  g_assert_cmpstr (
      winders, ==,
      "; a landing of 3' 0\" by 4' 0\" after step 5; 3 winders after step 8, 2' 0\" at their widest, 4' 0\" long; "
      "bottom step 5' 0\" round its curved end; cut step by step");
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
