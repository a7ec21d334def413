#include "plan-maker.h"

#include <string.h>

RcJob *
make_job (RcLength roll_width)
{
  RcCurrency currency = { "USD", 2 };
  RcJob     *job = rc_job_new ("J-1", &currency);
  RcGoods   *carpet = rc_goods_new ("carpet", RC_GOODS_CARPET, "Carpet");
  carpet->roll_width = roll_width;
  carpet->unit = RC_UNIT_SQ_YD;
  g_ptr_array_add (job->goods, carpet);
  job->settings.trim_length = 0;
  job->settings.trim_width = 0;
  memset (job->settings.rule_cost, 0, sizeof job->settings.rule_cost);
  return job;
}

RcFloorArea *
get_area (RcJob *job, const char *area)
{
  RcMeasure   *measure = rc_job_get_measure (job, NULL);
  RcFloorArea *found = rc_measure_find_area (measure, area);
  if (found == NULL)
    {
      found = rc_floor_area_new (area, area);
      found->carpet = g_strdup ("carpet");
      g_ptr_array_add (measure->areas, found);
    }
  return found;
}

RcRoom *
add_outline (RcJob *job, const char *id, const RcPoint *points, guint n_points, const char *area)
{
  RcRoom *room = rc_room_new (id, id);
  g_array_append_vals (room->outline, points, n_points);
  room->placed = TRUE;
  g_ptr_array_add (rc_job_get_measure (job, NULL)->rooms, room);
  if (area != NULL)
    g_ptr_array_add (get_area (job, area)->rooms, g_strdup (id));
  return room;
}

RcRoom *
add_rectangle (RcJob *job, const char *id, RcLength x, RcLength y, RcLength width, RcLength length, const char *area)
{
  RcPoint points[] = { { x, y }, { x + width, y }, { x + width, y + length }, { x, y + length } };
  return add_outline (job, id, points, G_N_ELEMENTS (points), area);
}

RcOpening *
add_door (RcRoom *room, const char *id, guint wall, RcLength offset, RcLength width, RcLength depth,
          const char *to_room)
{
  RcOpening *door = rc_opening_new (id, RC_OPENING_DOOR);
  door->wall = wall;
  door->offset = offset;
  door->width = width;
  door->depth = depth;
  door->to_room = g_strdup (to_room);
  g_ptr_array_add (room->openings, door);
  return door;
}

void
plain_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data)
{
  *weights = (RcPlanWeights){
    .carpet_per_m = 1000, .side_seam_per_m = 100, .cross_seam_per_m = 150, .cross_seam_each = 200
  };
}

RcPlan *
make_plan (const RcJob *job)
{
  return make_plan_within (job, 0);
}

RcPlan *
make_plan_within (const RcJob *job, double seconds)
{
  g_autoptr (GError) error = NULL;
  RcPlanParams params = { .effort = (guint64)(seconds * 1000), .steady = TRUE };
  RcPlan      *plan = rc_plan_new (job, rc_job_get_measure (job, NULL), plain_weights, NULL, &params, &error);
  g_assert_no_error (error);
  return plan;
}

const RcOption *
find_option (const RcPlan *plan, guint area, const char *name)
{
  const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, area);
  guint             index;
  if (rc_area_plan_find_option (area_plan, name, &index))
    return g_ptr_array_index (area_plan->options, index);
  return NULL;
}
