/* The demo house entered from nothing with the pointer, as the estimator reads the sketch: rooms, openings, areas,
 * carpets, the stair, a seam. Floors, carpet and total come out as the demo job's; how many gestures and keys it took
 * is told. */
#include "document-things.h"
#include "outcome.h"
#include "shipped.h"
#include "sketch-openings.h"

#define IN RC_TICKS_PER_INCH

/* The shop's rolls as they come into stock here: whole ones, none noted as a remnant. */
static void
stock_rolls (Sketcher *user)
{
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < user->demo->rolls->len; i++)
    {
      RcRoll *roll = g_ptr_array_index (user->demo->rolls, i);
      roll->remnant = FALSE;
      g_free (rc_store_receive_roll (user->hand.desk.store, roll, NULL, "2026-03-02T08:00:00Z", &error));
      g_assert_no_error (error);
    }
}

static void
set_up (Sketcher *user, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  desk_fixture_open (&user->hand.desk, FALSE);
  user->demo = rc_shipped_load_demo_job (&error);
  g_assert_no_error (error);
  user->sketch = rc_job_get_measure (user->demo, NULL);
  user->house = rc_house_new (user->sketch, &user->demo->settings.closure, &error);
  g_assert_no_error (error);
  stock_rolls (user);
}

static void
tear_down (Sketcher *user, gconstpointer data)
{
  rc_house_free (user->house);
  rc_job_free (user->demo);
  desk_fixture_close (&user->hand.desk);
}

/* Areas, the stair, all of it. */

static void
enter_area (Sketcher *user, const RcFloorArea *area, gboolean is_first)
{
  if (is_first)
    sketch_click_label (user, sketch_find (user, "things_list"), "Carpet");
  else
    sketch_click_label (user, GTK_WIDGET (user->hand.desk.window), "+ Area");
  sketch_enter (user, "name_entry", area->name);
  sketch_pick (user, "carpet_drop", rc_job_find_goods (user->demo, area->carpet)->name);
  sketch_pick (user, "cushion_drop", area->cushion ? rc_job_find_goods (user->demo, area->cushion)->name : "none");
  if (area->fixing == RC_FIXING_GLUE)
    sketch_pick (user, "fixing_drop", "stuck down");
  sketch_count (user, area->name);
}

static void
enter_count (Sketcher *user, GtkWidget *spin, guint n)
{
  g_autofree char *text = g_strdup_printf ("%u", n);
  pointer_hand_enter (&user->hand, spin, text);
}

/* In the card of the turn that is added. */
static void
enter_turn (Sketcher *user, const RcStairTurn *turn)
{
  pointer_hand_click_widget (&user->hand, sketch_find (user, "add_turn_button"));
  GtkWidget *card = gtk_widget_get_last_child (sketch_find (user, "turns_box"));
  if (turn->kind == RC_TURN_WINDERS)
    pointer_hand_pick (&user->hand, pointer_hand_find (card, "kind_drop"), "winders");
  enter_count (user, pointer_hand_find (card, "after_spin"), turn->after);
  enter_count (user, pointer_hand_find (card, "winders_spin"), turn->winders);
  sketch_enter_length (user, pointer_hand_find (card, "going_entry"), turn->going);
  sketch_enter_length (user, pointer_hand_find (card, "width_entry"), turn->width);
}

static void
enter_stair (Sketcher *user, const RcStair *stair)
{
  sketch_click_label (user, GTK_WIDGET (user->hand.desk.window), "+ Stair");
  sketch_enter (user, "name_entry", stair->name);
  enter_count (user, sketch_find (user, "steps_spin"), stair->steps);
  sketch_enter_length (user, sketch_find (user, "rise_entry"), stair->rise);
  sketch_enter_length (user, sketch_find (user, "going_entry"), stair->going);
  sketch_enter_length (user, sketch_find (user, "width_entry"), stair->width);
  sketch_pick (user, "style_drop", "cap and band");
  sketch_pick (user, "carpet_drop", rc_job_find_goods (user->demo, stair->carpet)->name);
  sketch_pick (user, "cushion_drop", rc_job_find_goods (user->demo, stair->cushion)->name);
  for (guint i = 0; i < stair->turns->len; i++)
    enter_turn (user, rc_stair_get_turn (stair, i));
  sketch_count (user, stair->name);
}

static void
begin_job (Sketcher *user)
{
  sketch_click_label (user, sketch_find (user, "welcome"), "New job");
  sketch_pick (user, "units_drop", "feet and inches");
  rc_document_set_improve_seconds (pointer_hand_get_document (&user->hand), 0);
  sketch_enter (user, "title_entry", user->demo->title);
  sketch_count (user, "a new job");
}

/* The whole house must be on the screen: the wheel makes the floor smaller. */
static void
make_smaller (Sketcher *user, int turns)
{
  pointer_hand_point (&user->hand, 10 * 12 * IN, 12 * 12 * IN);
  pointer_hand_do ("xdotool click --repeat %d --delay 20 5", turns);
  user->hand.n_turns += (guint)turns;
}

static void
enter_house (Sketcher *user)
{
  begin_job (user);
  for (guint a = 0; a < user->sketch->areas->len; a++)
    {
      const RcFloorArea *area = g_ptr_array_index (user->sketch->areas, a);
      enter_area (user, area, a == 0);
      for (guint r = 0; r < area->rooms->len; r++)
        {
          sketch_draw_room (user, rc_measure_find_room ((RcMeasure *)user->sketch, g_ptr_array_index (area->rooms, r)));
          if (a == 0 && r == 0)
            make_smaller (user, 2);
        }
    }
  sketch_mend_openings (user);
  sketch_count (user, "other sides of doors");
  for (guint i = 0; i < user->sketch->stairs->len; i++)
    enter_stair (user, g_ptr_array_index (user->sketch->stairs, i));
}

/* The demo job as it stands, planned and priced by the program itself with the shop's own price book and rolls. */
static RcOutcome *
plan_demo (Sketcher *user)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (user->hand.desk.store, &error);
  g_assert_no_error (error);
  RcOutcome *outcome = rc_outcome_new (user->demo, NULL, NULL, book, "2026-03-20", 0, NULL, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return outcome;
}

/* Floors and lines come in the order in which they were entered: each is sought by what it is of. */
static void
assert_floor (const RcPlan *plan, const RcAreaPlan *wanted)
{
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *got = g_ptr_array_index (plan->areas, i);
      g_autofree char  *floor = rc_area_format (got->floor_area, RC_AREA_UNIT_SQ_FT, 1, TRUE);
      g_autofree char  *sketched = rc_area_format (wanted->floor_area, RC_AREA_UNIT_SQ_FT, 1, TRUE);
      if (g_strcmp0 (got->area->name, wanted->area->name) != 0)
        continue;
      g_assert_cmpstr (floor, ==, sketched);
      g_assert_cmpstr (got->area->carpet, ==, wanted->area->carpet);
      return;
    }
  g_assert_not_reached ();
}

static void
assert_line (const RcQuote *quote, const RcQuoteLine *wanted)
{
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *got = g_ptr_array_index (quote->lines, i);
      if (g_strcmp0 (got->name, wanted->name) != 0)
        continue;
      g_assert_cmpint (ABS (got->quantity_micro - wanted->quantity_micro), <, 1000); /* as no tape is that fine */
      g_assert_cmpint (got->amount, ==, wanted->amount);
      return;
    }
  g_assert_not_reached ();
}

static void
assert_like_demo (Sketcher *user)
{
  g_autoptr (RcOutcome) wanted = plan_demo (user);
  RcDocument      *document = pointer_hand_get_document (&user->hand);
  const RcOutcome *got = rc_document_get_outcome (document);

  g_assert_true (rc_document_is_planned (document));
  g_assert_no_error (rc_document_get_fault (document));
  g_assert_cmpuint (got->plan->areas->len, ==, wanted->plan->areas->len);
  for (guint i = 0; i < wanted->plan->areas->len; i++)
    assert_floor (got->plan, g_ptr_array_index (wanted->plan->areas, i));
  g_assert_cmpuint (got->quote->lines->len, ==, wanted->quote->lines->len);
  for (guint i = 0; i < wanted->quote->lines->len; i++)
    assert_line (got->quote, g_ptr_array_index (wanted->quote->lines, i));
  g_assert_cmpint (got->quote->total, ==, wanted->quote->total);
}

/* Pins of the area that the living room is laid with. */
static guint
count_pins (Sketcher *user)
{
  return ((RcFloorArea *)pointer_hand_get_measure (&user->hand)->areas->pdata[0])->pins->len;
}

/* A seam dragged 4 ft from the living room's east wall: the plan has it there, and the button takes it back. */
static void
drag_seam (Sketcher *user)
{
  g_autoptr (RcScene) scene = rc_document_new_scene (pointer_hand_get_document (&user->hand), 0);
  const RcRoom *living = g_ptr_array_index (user->sketch->rooms, 1);
  RcBox         box = rc_ring_compute_box (sketch_find_seen (scene, user, living)->corners);
  RcLength      x = box.x1 - 48 * IN, nearest = G_MAXINT64;

  sketch_take_tool (user, "Carpet and seams|Place of a seam");
  pointer_hand_drag (&user->hand, x, box.y0 + 60 * IN, x, box.y1 - 60 * IN);
  g_assert_cmpuint (count_pins (user), ==, 1);
  const RcAreaPlan *area
      = g_ptr_array_index (rc_document_get_outcome (pointer_hand_get_document (&user->hand))->plan->areas, 0);
  const RcOption *option = g_ptr_array_index (area->options, area->chosen);
  for (guint i = 0; i < option->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (option->seams, i);
      if (seam->from.x == seam->to.x)
        nearest = MIN (nearest, ABS (seam->from.x - x));
    }
  g_assert_cmpint (nearest, <, 3 * IN);
  pointer_hand_click_widget (&user->hand, sketch_find (user, "undo_button"));
  g_assert_cmpuint (count_pins (user), ==, 0);
  sketch_count (user, "a seam dragged, and taken back");
}

static void
test_house (Sketcher *user, gconstpointer data)
{
  if (pointer_hand_is_missing ())
    return;
  enter_house (user);
  g_test_message ("the whole house: %u clicks and drags, %u keys, %u turns of the wheel", user->n_clicks, user->n_keys,
                  user->n_turns);
  assert_like_demo (user);
  drag_seam (user);
  assert_like_demo (user);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add ("/pointer-house/demo", Sketcher, NULL, set_up, test_house, tear_down);
  return g_test_run ();
}
