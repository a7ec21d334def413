/* The check of a whole job: every fault is refused, with the kind of error and words that name what is wrong. */
#include <string.h>

#include "house.h"
#include "plan-maker.h"
#include "rowcut-error.h"

/* What the faults are put into: two rooms in two areas, a stair, a roll with a flaw, a pin. */
typedef struct
{
  RcJob       *job;
  RcGoods     *carpet, *cushion;
  RcRoll      *roll;
  RcMeasure   *measure;
  RcRoom      *a, *b;
  RcFloorArea *one, *two;
  RcStair     *stair;
  RcPin       *pin;
} Parts;

static RcJob *
new_job (void)
{
  const RcFlaw flaw = { FT (3), FT (4) };
  RcJob       *job = make_job (FT (12));
  RcMeasure   *measure = rc_job_get_measure (job, NULL);
  RcRoll      *roll = rc_roll_new ("R-1", "carpet", FT (30));
  RcStair     *stair = rc_stair_new ("s", "Attic stair");
  RcPin       *pin = rc_pin_new (RC_PIN_ROLL, "a");
  RcPoint      inside = { FT (2), FT (2) };

  add_rectangle (job, "a", 0, 0, FT (10), FT (12), "one");
  add_rectangle (job, "b", FT (20), 0, FT (8), FT (9), "two");
  add_door (measure->rooms->pdata[0], "D1", 1, FT (2), IN (30), 0, NULL);
  g_ptr_array_add (job->goods, rc_goods_new ("soft", RC_GOODS_CUSHION, "Soft"));
  g_array_append_val (roll->flaws, flaw);
  g_ptr_array_add (job->rolls, roll);
  stair->carpet = g_strdup ("carpet");
  stair->steps = 12;
  stair->rise = stair->going = IN (8);
  stair->width = FT (3);
  g_ptr_array_add (measure->stairs, stair);
  g_array_append_val (pin->points, inside);
  pin->roll = g_strdup ("R-1");
  g_ptr_array_add (get_area (job, "one")->pins, pin);
  return job;
}

static Parts
find_parts (RcJob *job)
{
  RcMeasure *measure = rc_job_get_measure (job, NULL);

  return (Parts){ .job = job,
                  .carpet = job->goods->pdata[0],
                  .cushion = job->goods->pdata[1],
                  .roll = job->rolls->pdata[0],
                  .measure = measure,
                  .a = measure->rooms->pdata[0],
                  .b = measure->rooms->pdata[1],
                  .one = measure->areas->pdata[0],
                  .two = measure->areas->pdata[1],
                  .stair = measure->stairs->pdata[0],
                  .pin = ((RcFloorArea *)measure->areas->pdata[0])->pins->pdata[0] };
}

static void
set (char **text, const char *value)
{
  g_free (*text);
  *text = g_strdup (value);
}

static void
move_pin (Parts p, RcLength x, RcLength y)
{
  *rc_ring_get (p.pin->points, 0) = (RcPoint){ x, y };
}

static void
add_pin_point (Parts p, RcLength x, RcLength y)
{
  RcPoint point = { x, y };

  g_array_append_val (p.pin->points, point);
}

/* A fault: what is done to a sound job, and what the error says. */
#define FAULT(name, action)                                                                                            \
  static void name (Parts p)                                                                                           \
  {                                                                                                                    \
    action;                                                                                                            \
  }

/* goods and rolls */
FAULT (no_roll_width, p.carpet->roll_width = 0)
FAULT (roll_too_wide, p.carpet->roll_width = RC_ROOM_MAX_SIDE + 1)
FAULT (usable_below_nothing, p.carpet->usable_width = -1)
FAULT (usable_wider_than_roll, p.carpet->usable_width = FT (12) + 1)
FAULT (narrower_than_trim, (p.carpet->roll_width = IN (2), p.job->settings.trim_width = IN (3)))
FAULT (repeat_below_nothing, p.carpet->repeat_length = -1)
FAULT (width_repeat_below_nothing, p.carpet->repeat_width = -1)
FAULT (step_below_nothing, p.carpet->length_step = -1)
FAULT (full_roll_below_nothing, p.carpet->full_roll = -1)
FAULT (least_cut_below_nothing, p.carpet->least_cut = -1)
FAULT (drop_without_repeat, p.carpet->match = RC_MATCH_HALF_DROP)
FAULT (pack_below_nothing, p.cushion->pack_micro = -1)
FAULT (pack_covers_less_than_no_area, p.cushion->pack_covers_area = -1)
FAULT (pack_covers_less_than_no_length, p.cushion->pack_covers_length = -1)
FAULT (goods_twice, set (&p.cushion->id, "carpet"))
FAULT (goods_without_id, set (&p.cushion->id, ""))
FAULT (goods_of_another_kind, p.carpet->kind = RC_GOODS_CUSHION)
FAULT (roll_twice, g_ptr_array_add (p.job->rolls, rc_roll_new ("R-1", "carpet", FT (3))))
FAULT (roll_of_nothing, p.roll->length = 0)
FAULT (roll_too_long, p.roll->length = RC_LENGTH_MAX + 1)
FAULT (roll_of_less_than_no_width, p.roll->width = -1)
FAULT (roll_wider_than_a_room, p.roll->width = RC_ROOM_MAX_SIDE + 1)
FAULT (flaw_before_the_roll, g_array_index (p.roll->flaws, RcFlaw, 0).from = -1)
FAULT (flaw_backwards, g_array_index (p.roll->flaws, RcFlaw, 0).to = FT (3))
/* rooms and areas */
FAULT (room_twice, set (&p.b->id, "a"))
FAULT (room_with_spaces, set (&p.b->id, "back room"))
FAULT (opening_without_id, set (&((RcOpening *)p.a->openings->pdata[0])->id, NULL))
FAULT (room_far_right, p.b->at.x = 10 * RC_ROOM_MAX_SIDE + 1)
FAULT (room_far_down, p.b->at.y = -10 * RC_ROOM_MAX_SIDE - 1)
FAULT (area_twice, set (&p.two->id, "one"))
FAULT (area_without_rooms, g_ptr_array_set_size (p.two->rooms, 0))
FAULT (room_not_measured, set ((char **)&p.two->rooms->pdata[0], "attic"))
FAULT (room_in_two_areas, set ((char **)&p.two->rooms->pdata[0], "a"))
FAULT (carpet_missing, set (&p.two->carpet, "velvet"))
FAULT (carpet_not_named, set (&p.two->carpet, NULL))
FAULT (cushion_missing, set (&p.two->cushion, "springy"))
FAULT (pile_before_north, p.two->pile_degrees = -2)
FAULT (pile_too_far_round, p.two->pile_degrees = 360)
FAULT (unnamed_area, (set (&p.two->name, ""), p.two->pile_degrees = 360))
/* pins */
FAULT (pin_in_another_room, set (&p.pin->room, "b"))
FAULT (pin_in_no_room, set (&p.pin->room, NULL))
FAULT (pin_on_no_roll, set (&p.pin->roll, NULL))
FAULT (pin_on_missing_roll, set (&p.pin->roll, "R-2"))
FAULT (pin_too_far_right, move_pin (p, RC_LENGTH_MAX + 1, 0))
FAULT (pin_too_far_down, move_pin (p, 0, -RC_LENGTH_MAX - 1))
FAULT (pin_of_two_points, add_pin_point (p, 0, 0))
FAULT (seam_of_one_point, p.pin->kind = RC_PIN_SEAM)
FAULT (seam_of_no_length, (p.pin->kind = RC_PIN_SEAM, add_pin_point (p, FT (2), FT (2))))
FAULT (floor_on_a_line,
       (p.pin->kind = RC_PIN_NO_SEAMS, add_pin_point (p, FT (4), FT (4)), add_pin_point (p, FT (3), FT (3))))
/* stairs */
FAULT (stair_twice, g_ptr_array_add (p.measure->stairs, rc_stair_copy (p.stair)))
FAULT (stair_of_no_steps, p.stair->steps = 0)
FAULT (stair_to_the_sky, p.stair->steps = RC_STAIR_MAX_STEPS + 1)
FAULT (stair_without_rise, p.stair->rise = 0)
FAULT (stair_without_going, p.stair->going = 0)
FAULT (stair_without_width, (p.stair->width = 0, set (&p.stair->name, "")))
FAULT (stair_nose_below_nothing, p.stair->nose_extra = -1)
FAULT (stair_end_below_nothing, p.stair->end_extra = -1)
FAULT (stair_edges_below_nothing, p.stair->width_extra = -1)
FAULT (stair_pieces_below_nothing, p.stair->piece_extra = -1)
FAULT (runner_below_nothing, p.stair->runner_width = -1)
FAULT (runner_wider_than_stair, p.stair->runner_width = FT (4))
FAULT (curved_step_narrower, p.stair->curved_width = FT (2))
FAULT (stair_without_carpet, set (&p.stair->carpet, NULL))
FAULT (stair_without_its_cushion, set (&p.stair->cushion, "springy"))
FAULT (stair_wider_than_roll, p.stair->width = FT (13))
FAULT (stair_beyond_all, p.stair->rise = G_MAXINT64)
/* settings and the whole */
FAULT (trim_below_nothing, p.job->settings.trim_length = -1)
FAULT (trim_beyond_all, p.job->settings.trim_length = RC_ROOM_MAX_SIDE + 1)
FAULT (rule_below_nothing, p.job->settings.rule_cost[0] = -1)
FAULT (no_measure, g_ptr_array_set_size (p.job->measures, 0))

static const struct
{
  const char *what;
  void (*spoil) (Parts parts);
  int         code;
  const char *names[2]; /* in the error's message */
} faults[] = {
#define REFERENCE(fault, first, second)                                                                                \
  {                                                                                                                    \
#fault, fault, RC_ERROR_REFERENCE,                                                                                 \
    {                                                                                                                  \
      first, second                                                                                                    \
    }                                                                                                                  \
  }
#define RANGE(fault, first, second)                                                                                    \
  {                                                                                                                    \
#fault, fault, RC_ERROR_RANGE,                                                                                     \
    {                                                                                                                  \
      first, second                                                                                                    \
    }                                                                                                                  \
  }
  RANGE (no_roll_width, "“carpet”", "roll width"),
  RANGE (roll_too_wide, "“carpet”", "1 km"),
  RANGE (usable_below_nothing, "“carpet”", "usable width"),
  RANGE (usable_wider_than_roll, "“carpet”", "usable width"),
  { "narrower_than_trim", narrower_than_trim, RC_ERROR_INFEASIBLE, { "“carpet” is 2\"", "trim of 3\"" } },
  RANGE (repeat_below_nothing, "“carpet”", "repeats"),
  RANGE (width_repeat_below_nothing, "“carpet”", "repeats"),
  RANGE (step_below_nothing, "“carpet”", "length step"),
  RANGE (full_roll_below_nothing, "“carpet”", "full roll"),
  RANGE (least_cut_below_nothing, "“carpet”", "shortest cut"),
  RANGE (drop_without_repeat, "“carpet”", "half-drop"),
  RANGE (pack_below_nothing, "“soft”", "pack"),
  RANGE (pack_covers_less_than_no_area, "“soft”", "pack"),
  RANGE (pack_covers_less_than_no_length, "“soft”", "pack"),
  REFERENCE (goods_twice, "entry of goods", "“carpet”"),
  REFERENCE (goods_without_id, "entry of goods", "no id"),
  REFERENCE (goods_of_another_kind, "Roll R-1", "cushion"),
  REFERENCE (roll_twice, "roll", "“R-1”"),
  RANGE (roll_of_nothing, "Roll R-1", "length"),
  RANGE (roll_too_long, "Roll R-1", "length"),
  RANGE (roll_of_less_than_no_width, "Roll R-1", "width"),
  RANGE (roll_wider_than_a_room, "Roll R-1", "width"),
  RANGE (flaw_before_the_roll, "Roll R-1", "damaged"),
  RANGE (flaw_backwards, "Roll R-1", "damaged"),
  REFERENCE (room_twice, "room", "“a”"),
  REFERENCE (room_with_spaces, "“back room”", "spaces"),
  REFERENCE (opening_without_id, "a: ", "One opening has no id"),
  RANGE (room_far_right, "b ", "10 km"),
  RANGE (room_far_down, "b ", "10 km"),
  REFERENCE (area_twice, "area", "“one”"),
  REFERENCE (area_without_rooms, "Area two", "no rooms"),
  REFERENCE (room_not_measured, "Area two", "“attic”"),
  REFERENCE (room_in_two_areas, "“a”", "one and two"),
  REFERENCE (carpet_missing, "Area two", "“velvet”"),
  REFERENCE (carpet_not_named, "Area two", "no carpet"),
  REFERENCE (cushion_missing, "Area two", "“springy”"),
  RANGE (pile_before_north, "Area two", "pile direction"),
  RANGE (pile_too_far_round, "Area two", "359"),
  RANGE (unnamed_area, "Area two", "359"),
  REFERENCE (pin_in_another_room, "Area one, pin 1", "“b”"),
  REFERENCE (pin_in_no_room, "Area one, pin 1", "“”"),
  REFERENCE (pin_on_no_roll, "Area one, pin 1", "no roll"),
  REFERENCE (pin_on_missing_roll, "Area one, pin 1", "“R-2”"),
  RANGE (pin_too_far_right, "Area one, pin 1", "too far"),
  RANGE (pin_too_far_down, "Area one, pin 1", "too far"),
  RANGE (pin_of_two_points, "Area one, pin 1", "2 points"),
  RANGE (seam_of_one_point, "Area one, pin 1", "1 points"),
  { "seam_of_no_length", seam_of_no_length, RC_ERROR_GEOMETRY, { "Area one, pin 1", "no length" } },
  { "floor_on_a_line", floor_on_a_line, RC_ERROR_GEOMETRY, { "Area one, pin 1", "no area" } },
  REFERENCE (stair_twice, "stair", "“s”"),
  RANGE (stair_of_no_steps, "Attic stair", "0 steps"),
  RANGE (stair_to_the_sky, "Attic stair", "1 to"),
  RANGE (stair_without_rise, "Attic stair", "rise"),
  RANGE (stair_without_going, "Attic stair", "going"),
  RANGE (stair_without_width, "Stair s", "width"),
  RANGE (stair_nose_below_nothing, "Attic stair", "allowances"),
  RANGE (stair_end_below_nothing, "Attic stair", "allowances"),
  RANGE (stair_edges_below_nothing, "Attic stair", "allowances"),
  RANGE (stair_pieces_below_nothing, "Attic stair", "allowances"),
  RANGE (runner_below_nothing, "Attic stair", "runner"),
  RANGE (runner_wider_than_stair, "Attic stair", "runner"),
  RANGE (curved_step_narrower, "Attic stair", "curved bottom step"),
  REFERENCE (stair_without_carpet, "Attic stair", "no carpet"),
  REFERENCE (stair_without_its_cushion, "Attic stair", "“springy”"),
  { "stair_wider_than_roll", stair_wider_than_roll, RC_ERROR_INFEASIBLE, { "Attic stair", "13' 2 1/2\"" } },
  RANGE (stair_beyond_all, "Attic stair", "too large"),
  RANGE (trim_below_nothing, "settings", "from 0"),
  RANGE (trim_beyond_all, "settings", "1 km"),
  RANGE (rule_below_nothing, "settings", "rule"),
  REFERENCE (no_measure, "no measure", ""),
};

static void
test_faults (void)
{
  g_autoptr (RcJob) sound = new_job ();
  g_autoptr (GError) none = NULL;

  rc_job_check (sound, NULL, &none);
  g_assert_no_error (none);
  for (guint i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autoptr (RcJob) job = rc_job_copy (sound);
      g_autoptr (GError) error = NULL;

      faults[i].spoil (find_parts (job));
      g_assert_false (rc_job_check (job, NULL, &error));
      g_test_message ("%s: %s", faults[i].what, error->message);
      g_assert_error (error, RC_ERROR, faults[i].code);
      for (guint k = 0; k < 2; k++)
        if (strstr (error->message, faults[i].names[k]) == NULL)
          g_error ("%s: “%s” does not name “%s”", faults[i].what, error->message, faults[i].names[k]);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/job/check/every fault is named", test_faults);
  return g_test_run ();
}
