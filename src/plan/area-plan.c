#include "area-plan.h"

#include <math.h>
#include <string.h>

#include "area-bound.h"
#include "area-key.h"
#include "area-search.h"
#include "cutting.h"
#include "option.h"
#include "realize.h"

/* Pile directions are tried along the main wall direction and square to it. */
#define N_AXES 2

/* The nester gets so much for the cuts of each option weighed, when there is time: an area's few cuts need no more. */
#define OPTION_SECONDS 0.02

typedef struct _RcPlanning RcPlanning;

/* One pile direction being planned, in a thread of its own. */
typedef struct
{
  const RcPlanning *planning;
  GPtrArray        *found; /* of RcOption, the best for each goal */
  GError           *error;
  RcSite           *site;
  RcAreaSearch     *search;
  RcAreaBound       bound;
  double            pile_degrees;
} RcAxis;

struct _RcPlanning
{
  const RcJob        *job;
  const RcPlanParams *params;
  RcAreaPlan         *area_plan;
  RcAxis              axes[N_AXES];
  guint               n_axes;
  RcLength            length_bound;
  RcMoney             cost_bound;
  gint64              deadline_us;
};

/* With carpet to be saved above all a broken rule still weighs a quarter of its price: nobody lays a room in five
 * joined pieces for a foot of carpet. */
static const struct
{
  const char *name;
  RcObjective objective;
} goals[] = {
  { "least-cost", { .carpet = 1, .seam = 1, .rule = 1, .each_join = 0 } },
  { "fewest-seams", { .carpet = 1, .seam = 1000, .rule = 1, .each_join = 1000 } },
  { "least-carpet", { .carpet = 1000, .seam = 1, .rule = 250, .each_join = 0 } },
};

void
rc_area_plan_free (RcAreaPlan *area_plan)
{
  if (area_plan == NULL)
    return;
  g_free (area_plan->key);
  g_clear_pointer (&area_plan->floor, g_ptr_array_unref);
  g_clear_pointer (&area_plan->options, g_ptr_array_unref);
  g_free (area_plan);
}

/* A wall's direction in degrees from 0 to under 90, square ones alike. */
static double
get_edge_degrees (const RcRing *ring, guint i)
{
  const RcPoint *a = rc_ring_get (ring, i), *b = rc_ring_get (ring, (i + 1) % ring->len);
  double         degrees = fmod (atan2 ((double)(b->y - a->y), (double)(b->x - a->x)) * 180 / G_PI + 360, 90);
  return degrees > 89.999 ? 0 : degrees;
}

/* The direction that most wall length of the largest room runs along or square to. */
static double
find_main_degrees (const RcRegion *floor)
{
  const RcPolygon *largest = NULL;
  for (guint p = 0; p < floor->len; p++)
    if (largest == NULL || rc_polygon_compute_area (g_ptr_array_index (floor, p)) > rc_polygon_compute_area (largest))
      largest = g_ptr_array_index (floor, p);
  double best = 0, best_length = 0;
  for (guint i = 0; largest != NULL && i < largest->outer->len; i++)
    {
      double degrees = get_edge_degrees (largest->outer, i), length = 0;
      for (guint k = 0; k < largest->outer->len; k++)
        if (fabs (get_edge_degrees (largest->outer, k) - degrees) < 0.01)
          length += (double)rc_point_distance (*rc_ring_get (largest->outer, k),
                                               *rc_ring_get (largest->outer, (k + 1) % largest->outer->len));
      if (length > best_length * 1.000001)
        {
          best = degrees;
          best_length = length;
        }
    }
  return best < 0.001 ? 0 : best;
}

/* Of the two ways the pile can lean along an axis, the one that faces the way in (Workspace Training): towards the
 * door that leads out of the area. */
static double
face_entry (const RcSite *site, const RcRegion *floor, double degrees)
{
  RcBox box = rc_region_compute_box (floor);
  for (guint i = 0; i < site->doors->len; i++)
    {
      const RcSiteOpening *door = &g_array_index (site->doors, RcSiteOpening, i);
      gboolean             inside
          = door->other != NULL && rc_site_has_room (site, door->room) && rc_site_has_room (site, door->other);
      if (inside)
        continue;
      RcPoint at = rc_point_rotate (door->from, -site->turn_degrees);
      double  dx = (double)at.x - (double)(box.x0 + box.x1) / 2, dy = (double)at.y - (double)(box.y0 + box.y1) / 2;
      double  along = dx * cos (degrees * G_PI / 180) + dy * sin (degrees * G_PI / 180);
      if (along < -RC_TICKS_PER_MM)
        return fmod (degrees + 180, 360);
      if (along > RC_TICKS_PER_MM)
        return degrees;
    }
  return degrees;
}

static void
add_axis (RcPlanning *planning, const RcHouse *house, const RcGoods *carpet, const RcPlanWeights *weights,
          double degrees, gboolean pinned)
{
  RcAreaPlan *area_plan = planning->area_plan;
  RcAxis     *axis = &planning->axes[planning->n_axes++];
  axis->site = rc_site_new (planning->job, house, area_plan->area, carpet, weights, 90 - degrees);
  axis->search = rc_area_search_new (axis->site);
  axis->planning = planning;
  axis->found = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  axis->pile_degrees = pinned ? degrees : face_entry (axis->site, area_plan->floor, degrees);
  g_autoptr (GPtrArray) turned = rc_region_rotate (area_plan->floor, 90 - degrees);
  axis->bound = rc_area_bound_compute (axis->site, turned);
}

static void
add_axes (RcPlanning *planning, const RcHouse *house, const RcGoods *carpet, const RcPlanWeights *weights)
{
  const RcFloorArea *area = planning->area_plan->area;
  double             main_degrees = find_main_degrees (planning->area_plan->floor);
  if (area->pile_degrees < 0)
    {
      for (guint i = 0; i < N_AXES; i++)
        add_axis (planning, house, carpet, weights, main_degrees + 90 * i, FALSE);
      return;
    }
  double degrees = area->pile_degrees;
  for (int quarter = 0; quarter < 5; quarter++)
    if (fabs (main_degrees + 90 * quarter - degrees) < 1)
      degrees = fmod (main_degrees + 90 * quarter, 360);
  add_axis (planning, house, carpet, weights, degrees, TRUE);
}

/* The least over the directions allowed. */
static void
compute_bounds (RcPlanning *planning)
{
  planning->length_bound = G_MAXINT64;
  planning->cost_bound = G_MAXINT64;
  for (guint i = 0; i < planning->n_axes; i++)
    {
      const RcAxis *axis = &planning->axes[i];
      RcLength      bought = rc_length_round_up (axis->bound.carpet_length, axis->site->carpet->length_step);
      RcMoney       cost = rc_weigh (bought, axis->site->weights.carpet_per_m)
                     + rc_weigh (axis->bound.side_seam, axis->site->weights.side_seam_per_m);
      planning->length_bound = MIN (planning->length_bound, axis->bound.carpet_length);
      planning->cost_bound = MIN (planning->cost_bound, cost);
    }
}

/* Costs of an option by the weights, with its cuts really placed on a roll. */
static void
weigh_option (const RcPlanning *planning, const RcSite *site, RcOption *option)
{
  RcNestParams params = { .cancellable = planning->params->cancellable, .seed = planning->params->seed };
  params.seconds = planning->params->steady ? 0 : MIN (OPTION_SECONDS, planning->params->seconds / 20);
  g_autoptr (RcNestProblem) problem = rc_cutting_new_problem (site->carpet, option->pieces);
  g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, &params);
  option->carpet_length = answer->used_length;
  option->carpet_area = rc_area_from_rectangle (site->roll_width, option->carpet_length);

  const RcPlanWeights *weights = &site->weights;
  option->carpet_cost
      = rc_weigh (rc_length_round_up (option->carpet_length, site->carpet->length_step), weights->carpet_per_m);
  option->seam_cost = rc_weigh (option->side_seam, weights->side_seam_per_m)
                      + rc_weigh (option->cross_seam, weights->cross_seam_per_m);
  for (guint i = 0; i < option->seams->len; i++)
    if (((RcSeam *)g_ptr_array_index (option->seams, i))->kind == RC_SEAM_CROSS)
      option->seam_cost += weights->cross_seam_each;
  option->cost = option->carpet_cost + option->seam_cost + option->rule_cost;
  /* A floor up to a sliver wider than the roll is laid without a seam, so the bound may lie a hair above. */
  option->length_lower_bound = MIN (planning->length_bound, option->carpet_length);
  option->cost_lower_bound = MIN (planning->cost_bound, option->cost);
}

static RcOption *
realize (const RcPlanning *planning, const RcAxis *axis, const char *name, GError **error)
{
  RcOption *option = rc_option_realize (axis->site, axis->search, axis->pile_degrees, name, error);
  if (option != NULL)
    weigh_option (planning, axis->site, option);
  return option;
}

static gint64
get_goal_score (const RcObjective *objective, const RcOption *option)
{
  return option->carpet_cost * objective->carpet
         + (option->seam_cost + option->joins * objective->each_join) * objective->seam
         + option->rule_cost * objective->rule;
}

/* Finds the best option for each goal along one direction. */
static gpointer
plan_axis (gpointer data)
{
  RcAxis           *axis = data;
  const RcPlanning *planning = axis->planning;
  for (guint g = 0; g < G_N_ELEMENTS (goals) && axis->error == NULL; g++)
    {
      RcScore   score;
      RcOption *option = NULL;
      if (rc_area_search_run (axis->search, &goals[g].objective, planning->params->seconds > 0, planning->deadline_us,
                              planning->params->cancellable, &score, &axis->error))
        option = realize (planning, axis, goals[g].name, &axis->error);
      if (option != NULL)
        g_ptr_array_add (axis->found, option);
    }
  return NULL;
}

static gboolean
plan_axes (RcPlanning *planning, GError **error)
{
  GThread *threads[N_AXES] = { NULL };
  for (guint i = 1; i < planning->n_axes; i++)
    threads[i] = g_thread_new ("pile direction", plan_axis, &planning->axes[i]);
  plan_axis (&planning->axes[0]);
  for (guint i = 1; i < planning->n_axes; i++)
    g_thread_join (threads[i]);
  for (guint i = 0; i < planning->n_axes; i++)
    if (planning->axes[i].error != NULL)
      {
        g_propagate_error (error, g_steal_pointer (&planning->axes[i].error));
        return FALSE;
      }
  return TRUE;
}

/* Takes the better direction for each goal; the other's best for the first goal is an option too. */
static void
gather_options (RcPlanning *planning)
{
  RcOption *other = NULL;
  for (guint g = 0; g < G_N_ELEMENTS (goals); g++)
    {
      RcOption *best = NULL, *worse = NULL;
      for (guint i = 0; i < planning->n_axes; i++)
        {
          RcOption *option = g_ptr_array_index (planning->axes[i].found, g);
          worse = option;
          if (best == NULL || get_goal_score (&goals[g].objective, option) < get_goal_score (&goals[g].objective, best))
            {
              worse = best;
              best = option;
            }
        }
      g_ptr_array_add (planning->area_plan->options, rc_option_copy (best));
      if (g == 0 && worse != NULL)
        other = rc_option_copy (worse);
    }
  if (other == NULL)
    return;
  g_free (other->name);
  other->name = g_strdup ("other-direction");
  g_ptr_array_add (planning->area_plan->options, other);
}

static gboolean
is_same_plan (const RcOption *a, const RcOption *b)
{
  if (a->pieces->len != b->pieces->len || a->cost != b->cost || a->carpet_length != b->carpet_length
      || a->pile_degrees != b->pile_degrees)
    return FALSE;
  for (guint i = 0; i < a->pieces->len; i++)
    {
      const RcPiece *p = g_ptr_array_index (a->pieces, i), *q = g_ptr_array_index (b->pieces, i);
      if (memcmp (&p->cut_box, &q->cut_box, sizeof (RcBox)) != 0)
        return FALSE;
    }
  return TRUE;
}

/* A goal's winner may be beaten at its own game by another's, as each search is a good try and no proof: give every
 * goal the best of all. */
static void
exchange_winners (const RcPlanning *planning)
{
  GPtrArray *options = planning->area_plan->options;
  guint      best[G_N_ELEMENTS (goals)];
  for (guint g = 0; g < G_N_ELEMENTS (goals); g++)
    {
      best[g] = 0; /* of equals the first: then one plan answers several goals */
      for (guint i = 1; i < options->len; i++)
        if (get_goal_score (&goals[g].objective, g_ptr_array_index (options, i))
            < get_goal_score (&goals[g].objective, g_ptr_array_index (options, best[g])))
          best[g] = i;
    }
  GPtrArray *copies = g_ptr_array_new ();
  for (guint g = 0; g < G_N_ELEMENTS (goals); g++)
    g_ptr_array_add (copies, rc_option_copy (g_ptr_array_index (options, best[g])));
  for (guint g = 0; g < G_N_ELEMENTS (goals); g++)
    {
      RcOption *copy = g_ptr_array_index (copies, g);
      g_free (copy->name);
      copy->name = g_strdup (goals[g].name);
      rc_option_free (g_ptr_array_index (options, g));
      g_ptr_array_index (options, g) = copy;
    }
  g_ptr_array_unref (copies);
}

static void
choose (RcAreaPlan *area_plan)
{
  GPtrArray *options = area_plan->options;
  for (guint i = 0; i < options->len; i++)
    {
      RcOption *option = g_ptr_array_index (options, i);
      option->same_as = i;
      for (guint k = 0; k < i && option->same_as == i; k++)
        if (is_same_plan (option, g_ptr_array_index (options, k)))
          option->same_as = k;
      if (g_strcmp0 (option->name, area_plan->area->option) == 0)
        area_plan->chosen = i;
    }
}

static gboolean
plan (RcPlanning *planning, GError **error)
{
  if (!plan_axes (planning, error))
    return FALSE;
  gather_options (planning);
  exchange_winners (planning);
  choose (planning->area_plan);
  return TRUE;
}

/* The options that the previous plan found for the same area, if there are. */
static RcAreaPlan *
reuse (const RcPlanParams *params, const RcFloorArea *area, const char *key)
{
  const RcAreaPlan *known = params->previous != NULL ? rc_plan_find_area (params->previous, area->id) : NULL;
  if (known == NULL || known->seconds < params->seconds || !g_str_equal (known->key, key))
    return NULL;
  RcAreaPlan *copy = g_new0 (RcAreaPlan, 1);
  copy->area = area;
  copy->key = g_strdup (key);
  copy->seconds = known->seconds;
  copy->floor = rc_region_copy (known->floor);
  copy->floor_area = known->floor_area;
  copy->options = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  for (guint i = 0; i < known->options->len; i++)
    g_ptr_array_add (copy->options, rc_option_copy (g_ptr_array_index (known->options, i)));
  choose (copy);
  return copy;
}

RcAreaPlan *
rc_area_plan_new (const RcJob *job, const RcHouse *house, const RcFloorArea *area, const RcPlanWeights *weights,
                  const RcPlanParams *params, GError **error)
{
  g_autofree char *key = rc_area_key_new (job, house, area, weights);
  RcAreaPlan      *kept = reuse (params, area, key);
  if (kept != NULL)
    return kept;

  RcPlanning planning = { .job = job, .params = params };
  planning.deadline_us = g_get_monotonic_time () + (gint64)(params->seconds * G_USEC_PER_SEC);
  planning.area_plan = g_new0 (RcAreaPlan, 1);
  planning.area_plan->area = area;
  planning.area_plan->key = g_steal_pointer (&key);
  planning.area_plan->seconds = params->seconds;
  planning.area_plan->options = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  planning.area_plan->floor = rc_house_compute_floor (house, area, &planning.area_plan->floor_area, error);

  gboolean fine = planning.area_plan->floor != NULL;
  if (fine)
    {
      add_axes (&planning, house, rc_job_find_goods (job, area->carpet), weights);
      compute_bounds (&planning);
      fine = plan (&planning, error);
    }
  for (guint i = 0; i < planning.n_axes; i++)
    {
      g_ptr_array_unref (planning.axes[i].found);
      g_clear_error (&planning.axes[i].error);
      rc_area_search_free (planning.axes[i].search);
      rc_site_free (planning.axes[i].site);
    }
  if (!fine)
    {
      g_prefix_error (error, "%s: ", area->name);
      g_clear_pointer (&planning.area_plan, rc_area_plan_free);
    }
  return planning.area_plan;
}

const RcOption *
rc_area_plan_get_chosen (const RcAreaPlan *area_plan)
{
  return g_ptr_array_index (area_plan->options, area_plan->chosen);
}
