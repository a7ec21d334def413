/* Parts of a job one by one: words read and refused, walls that meet, stairs that turn, alternatives. */
#include <string.h>

#include "house.h"
#include "plan-maker.h"
#include "rowcut-error.h"
#include "ticket.h"

/* --- words --- */

/* Each word is read as what it is called, and another is refused with all there are. */
#define CHECK_WORDS(Type, parse, get_name, n)                                                                          \
  G_STMT_START                                                                                                         \
  {                                                                                                                    \
    g_autoptr (GError) error = NULL;                                                                                   \
    Type value = 0;                                                                                                    \
                                                                                                                       \
    for (guint i = 0; i < (guint)(n); i++)                                                                             \
      {                                                                                                                \
        g_assert_true (parse (get_name ((Type)i), &value, NULL));                                                      \
        g_assert_cmpuint ((guint)value, ==, i);                                                                        \
      }                                                                                                                \
    value = 0;                                                                                                         \
    g_assert_false (parse ("sideways", &value, &error));                                                               \
    g_assert_error (error, RC_ERROR, RC_ERROR_PARSE);                                                                  \
    g_assert_nonnull (strstr (error->message, "sideways"));                                                            \
    for (guint i = 0; i < (guint)(n); i++)                                                                             \
      g_assert_nonnull (strstr (error->message, get_name ((Type)i)));                                                  \
    g_assert_cmpuint ((guint)value, ==, 0);                                                                            \
  }                                                                                                                    \
  G_STMT_END

static void
test_words (void)
{
  CHECK_WORDS (RcStairStyle, rc_stair_style_parse, rc_stair_style_get_name, 2);
  CHECK_WORDS (RcStairCutting, rc_stair_cutting_parse, rc_stair_cutting_get_name, 2);
  CHECK_WORDS (RcTurnKind, rc_turn_kind_parse, rc_turn_kind_get_name, 2);
  CHECK_WORDS (RcBend, rc_bend_parse, rc_bend_get_name, 5);
  CHECK_WORDS (RcDetail, rc_detail_parse, rc_detail_get_name, RC_N_DETAILS);
  CHECK_WORDS (RcPinKind, rc_pin_kind_parse, rc_pin_kind_get_name, RC_N_PIN_KINDS);
  CHECK_WORDS (RcFixing, rc_fixing_parse, rc_fixing_get_name, 2);
  CHECK_WORDS (RcJobState, rc_job_state_parse, rc_job_state_get_name, RC_N_JOB_STATES);
  CHECK_WORDS (RcOpeningKind, rc_opening_kind_parse, rc_opening_kind_get_name, 3);
  CHECK_WORDS (RcSwing, rc_swing_parse, rc_swing_get_name, 2);
}

/* --- walls that meet --- */

/* Points in feet, as many as there are. */
typedef struct
{
  const char *name;
  const char *says; /* NULL: a sound room */
  guint       n;
  int         corners[8][2];
} Outline;

static const Outline outlines[] = {
  { "a square", NULL, 4, { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 } } },
  { "walked the other way round", NULL, 4, { { 0, 0 }, { 0, 10 }, { 10, 10 }, { 10, 0 } } },
  { "two walls that cross", "meets", 4, { { 0, 0 }, { 10, 10 }, { 10, 0 }, { 0, 10 } } },
  { "a corner on another wall", "meets", 5, { { 0, 0 }, { 10, 0 }, { 10, 10 }, { 5, 0 }, { 0, 10 } } },
  { "a wall that ends on the first", "meets", 6, { { 5, 0 }, { 10, 0 }, { 10, 10 }, { 0, 10 }, { 0, 0 }, { 7, 0 } } },
  { "a wall back over itself", "meets", 5, { { 0, 0 }, { 10, 0 }, { 4, 0 }, { 4, 10 }, { 0, 10 } } },
  { "two corners in one place",
    "meets",
    8,
    { { 0, 0 }, { 10, 0 }, { 10, 4 }, { 5, 5 }, { 10, 10 }, { 0, 10 }, { 5, 5 }, { 0, 4 } } },
  { "all in one line", "", 3, { { 0, 0 }, { 5, 0 }, { 10, 0 } } },
};

static void
test_outlines (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (outlines); i++)
    {
      const Outline *outline = &outlines[i];
      g_autoptr (RcJob) job = make_job (FT (12));
      g_autoptr (RcHouse) house = NULL;
      g_autoptr (GError) error = NULL;
      RcPoint points[8];

      for (guint k = 0; k < outline->n; k++)
        points[k] = (RcPoint){ FT (outline->corners[k][0]), FT (outline->corners[k][1]) };
      add_outline (job, "den", points, outline->n, "A");
      house = rc_house_new (rc_job_get_measure (job, NULL), &job->settings.closure, &error);
      if (outline->says == NULL)
        {
          g_assert_no_error (error);
          g_assert_cmpint (rc_polygon_compute_area (rc_house_find_room (house, "den")->polygon), ==,
                           2 * FT (10) * FT (10));
          continue;
        }
      g_assert_null (house);
      g_assert_nonnull (error);
      if (strstr (error->message, "den") == NULL || strstr (error->message, outline->says) == NULL)
        g_error ("%s: “%s”", outline->name, error->message);
    }
}

/* --- stairs --- */

static RcStair *
new_stair (void)
{
  RcStair *stair = rc_stair_new ("s", "Attic stair");

  stair->carpet = g_strdup ("carpet");
  stair->steps = 12;
  stair->rise = stair->going = IN (8);
  stair->width = FT (3);
  return stair;
}

static void
assert_stair (void (*change) (RcStair *stair), const char *says)
{
  g_autoptr (RcJob) job = make_job (FT (12));
  RcStair *stair = new_stair ();
  g_autoptr (GError) error = NULL;
  gboolean sound;

  add_rectangle (job, "den", 0, 0, FT (10), FT (12), "A");
  g_ptr_array_add (rc_job_get_measure (job, NULL)->stairs, stair);
  change (stair);
  sound = rc_job_check (job, rc_job_get_measure (job, NULL), &error);
  if (says == NULL)
    g_assert_no_error (error);
  else if (sound || strstr (error->message, says) == NULL)
    g_error ("“%s” does not say “%s”", sound ? "sound" : error->message, says);
}

#define CHANGE(name, action)                                                                                           \
  static void name (RcStair *s)                                                                                        \
  {                                                                                                                    \
    action;                                                                                                            \
  }

static RcStairTurn *
turn (RcStair *s, RcTurnKind kind)
{
  RcStairTurn made = { .kind = kind, .after = 6, .winders = 3, .going = FT (3), .width = FT (3) };

  g_array_append_val (s->turns, made);
  return rc_stair_get_turn (s, s->turns->len - 1);
}

CHANGE (plain, (void)s)
CHANGE (landing, turn (s, RC_TURN_LANDING))
CHANGE (winders, turn (s, RC_TURN_WINDERS))
CHANGE (two_turns, (turn (s, RC_TURN_LANDING)->bend = RC_BEND_AHEAD, turn (s, RC_TURN_WINDERS)))
CHANGE (no_going, turn (s, RC_TURN_LANDING)->going = 0)
CHANGE (no_width, (turn (s, RC_TURN_WINDERS), turn (s, RC_TURN_LANDING)->width = 0))
CHANGE (turns_too_late, turn (s, RC_TURN_LANDING)->after = 13)
CHANGE (second_too_late, (turn (s, RC_TURN_LANDING), turn (s, RC_TURN_LANDING)->after = 7))
CHANGE (no_winders, (turn (s, RC_TURN_LANDING), turn (s, RC_TURN_WINDERS)->winders = 0))
CHANGE (too_many_winders, turn (s, RC_TURN_WINDERS)->winders = RC_STAIR_MAX_STEPS + 1)
CHANGE (winders_ahead, turn (s, RC_TURN_WINDERS)->bend = RC_BEND_AHEAD)
CHANGE (too_many_steps, turn (s, RC_TURN_WINDERS)->winders = RC_STAIR_MAX_STEPS)

static void
too_many_turns (RcStair *s)
{
  for (guint i = 0; i <= RC_STAIR_MAX_TURNS; i++)
    turn (s, RC_TURN_LANDING)->after = 0;
}

CHANGE (runner_below_nothing, s->runner_width = -1)
CHANGE (runner_too_wide, s->runner_width = FT (3) + 1)
CHANGE (runner, s->runner_width = FT (2))
CHANGE (curved, s->curved_width = FT (4))
CHANGE (curved_too_narrow, s->curved_width = FT (3) - 1)
CHANGE (curved_in_the_turn, (turn (s, RC_TURN_LANDING)->after = 0, s->curved_width = FT (4)))
CHANGE (curved_below_the_turn, (turn (s, RC_TURN_LANDING), s->curved_width = FT (4)))
CHANGE (too_wide_for_the_roll, s->width = FT (13))

static void
test_stairs (void)
{
  const struct
  {
    void (*change) (RcStair *stair);
    const char *says;
  } rows[] = {
    { plain, NULL },
    { landing, NULL },
    { winders, NULL },
    { runner, NULL },
    { curved, NULL },
    { curved_below_the_turn, NULL },
    { two_turns, NULL },
    { no_going, "turn 1: its going and its width" },
    { no_width, "turn 2: its going and its width" },
    { turns_too_late, "turn 1 comes after 13 straight steps, but only 12 of the stair’s 12 are left" },
    { second_too_late, "turn 2 comes after 7 straight steps, but only 6 of the stair’s 12 are left" },
    { no_winders, "turn 2 has 0 winders" },
    { winders_ahead, "turn 1: winders lead to a side or back" },
    { too_many_turns, "has 21 turns" },
    { too_many_steps, "has 1012 steps" },
    { too_many_winders, "winders; it should have" },
    { runner_below_nothing, "runner" },
    { runner_too_wide, "runner" },
    { curved_too_narrow, "curved bottom step" },
    { curved_in_the_turn, "below the turn" },
    { too_wide_for_the_roll, "wider than its carpet" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_stair (rows[i].change, rows[i].says);
}

/* --- alternatives --- */

/* Two carpets as wide as one another, one narrower; a seam pinned in the area and a roll; a stair. */
static RcJob *
new_job_with_choices (void)
{
  RcJob   *job = make_job (FT (12));
  RcGoods *same = rc_goods_new ("same", RC_GOODS_CARPET, "As wide"),
          *narrow = rc_goods_new ("narrow", RC_GOODS_CARPET, "");
  RcPin *seam = rc_pin_new (RC_PIN_SEAM, "den"), *roll = rc_pin_new (RC_PIN_ROLL, "den");

  same->roll_width = FT (12);
  narrow->roll_width = FT (9);
  g_ptr_array_add (job->goods, same);
  g_ptr_array_add (job->goods, narrow);
  add_rectangle (job, "den", 0, 0, FT (15), FT (12), "A");
  g_ptr_array_add (get_area (job, "A")->pins, seam);
  g_ptr_array_add (get_area (job, "A")->pins, roll);
  g_ptr_array_add (rc_job_get_measure (job, NULL)->stairs, new_stair ());
  g_ptr_array_add (job->offer->alternatives, rc_alternative_new ("B", "Another"));
  return job;
}

static RcJob *
swap (const RcJob *job, const char *place, const char *carpet, const char *option, GError **error)
{
  RcAlternative *alternative = job->offer->alternatives->pdata[0];

  g_ptr_array_set_size (alternative->swaps, 0);
  g_ptr_array_add (alternative->swaps, rc_swap_new (place, carpet, option));
  return rc_job_new_alternative (job, NULL, alternative, error);
}

static const RcFloorArea *
get_first_area (const RcJob *job)
{
  return rc_job_get_measure (job, NULL)->areas->pdata[0];
}

static void
test_alternatives (void)
{
  g_autoptr (RcJob) job = new_job_with_choices ();
  g_autoptr (RcJob) same = swap (job, "A", "same", "least-cost", NULL);
  g_autoptr (RcJob) narrow = swap (job, "A", "narrow", NULL, NULL);
  g_autoptr (RcJob) option = swap (job, "A", NULL, "fewest-seams", NULL);
  g_autoptr (RcJob) stair = swap (job, "s", "same", "least-cost", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (get_first_area (same)->carpet, ==, "same");
  g_assert_cmpstr (get_first_area (same)->option, ==, "least-cost");
  g_assert_cmpuint (get_first_area (same)->pins->len, ==, 2);
  g_assert_cmpuint (same->offer->alternatives->len, ==, 0); /* it is itself one */
  g_assert_cmpstr (get_first_area (narrow)->carpet, ==, "narrow");
  g_assert_null (get_first_area (narrow)->option);
  g_assert_cmpuint (get_first_area (narrow)->pins->len, ==, 1); /* a seam has no place in another width */
  g_assert_cmpstr (get_first_area (option)->carpet, ==, "carpet");
  g_assert_cmpstr (get_first_area (option)->option, ==, "fewest-seams");
  g_assert_cmpstr (((const RcStair *)rc_job_get_measure (stair, NULL)->stairs->pdata[0])->carpet, ==, "same");
  g_assert_cmpstr (get_first_area (stair)->carpet, ==, "carpet");

  g_assert_null (swap (job, "attic", "same", NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (error->message, "no area or stair “attic”"));
  g_clear_error (&error);
  g_assert_null (swap (job, "A", "velvet", NULL, &error));
  g_assert_error (error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (error->message, "no carpet “velvet”"));
}

/* What owns nothing yet can be freed like the rest. */
static void
test_nothing_is_freed (void)
{
  rc_attachment_free (NULL);
  rc_cutout_free (NULL);
  rc_goods_free (NULL);
  rc_roll_free (NULL);
  rc_house_free (NULL);
  rc_floor_area_free (NULL);
  rc_measure_free (NULL);
  rc_job_free (NULL);
  rc_offer_free (NULL);
  rc_line_terms_free (NULL);
  rc_extra_line_free (NULL);
  rc_payment_free (NULL);
  rc_swap_free (NULL);
  rc_alternative_free (NULL);
  rc_pin_free (NULL);
  rc_plan_picture_free (NULL);
  rc_opening_free (NULL);
  rc_room_free (NULL);
  rc_stair_free (NULL);
}

/* Whatever a piece or a roll is called, people read it; tickets of earlier programs too. */
static void
test_tickets (void)
{
  const struct
  {
    const char *piece, *roll, *words;
  } cases[] = { { "3", "R-12", "piece 3, cut from roll R-12" },
                { "a/b %", "R/9", "piece a/b %, cut from roll R/9" },
                { NULL, "R-12", "a piece cut from roll R-12" },
                { "3", NULL, "piece 3, cut already" },
                { NULL, NULL, "a piece cut already" } };
  g_autofree char *old = rc_ticket_format ("cut/1"), *own = rc_ticket_format ("R-12"),
                  *bare = rc_ticket_format_bare ("R-12");
  g_autofree char *order = rc_ticket_new_on_order (1, "O-1"), *ordered = rc_ticket_format (order);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *ticket = rc_ticket_new_cut (i, cases[i].piece, cases[i].roll);
      g_autofree char *words = rc_ticket_format (ticket);

      g_assert_true (rc_ticket_is_cut (ticket));
      g_assert_false (rc_ticket_is_on_order (ticket));
      g_assert_cmpstr (words, ==, cases[i].words);
    }
  g_assert_cmpstr (old, ==, "a piece cut already");
  g_assert_cmpstr (own, ==, "roll R-12");
  g_assert_cmpstr (bare, ==, "R-12");
  g_assert_cmpstr (order, ==, "order/O-1/2");
  g_assert_true (rc_ticket_is_on_order (order));
  g_assert_cmpstr (ordered, ==, "order O-1");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job-parts/words", test_words);
  g_test_add_func ("/job-parts/outlines", test_outlines);
  g_test_add_func ("/job-parts/stairs", test_stairs);
  g_test_add_func ("/job-parts/alternatives", test_alternatives);
  g_test_add_func ("/job-parts/nothing-is-freed", test_nothing_is_freed);
  g_test_add_func ("/job-parts/tickets in words", test_tickets);
  return g_test_run ();
}
