#include "area-plan.h"

#include "area-bound.h"
#include "area-key.h"
#include "area-search.h"
#include "like.h"
#include "option-list.h"
#include "option.h"
#include "pile.h"
#include "pin-kept.h"
#include "realize.h"

/* The nester gets so much for the cuts of each option weighed, when there is time: an area's few cuts need no more. */
#define OPTION_SECONDS 0.02

typedef struct _RcAreaPlanner RcPlanning;

/* One pile direction being planned, in a thread of its own. */
typedef struct
{
  const RcPlanning *planning;
  GPtrArray        *found;  /* of RcOption, the best for each goal */
  guint             n_kept; /* pins that the first of them keeps */
  const RcBeside   *beside; /* for a search beside other cuts; else NULL */
  RcScore           score;  /* of that search */
  GError           *error;
  RcSite           *site;
  RcAreaSearch     *search;
  RcAreaBound       bound;
  double            pile_degrees;
} RcAxis;

struct _RcAreaPlanner
{
  const RcJob        *job;
  const RcPlanParams *params;
  const RcHouse      *house;
  const RcFloorArea  *area;
  RcPlanWeights       weights;
  char               *shape, *key; /* as in area-key.h */
  RcPlanning         *model;       /* nullable: of a like area, which does the work for this one */
  RcRegion           *floor;       /* as laid, in the house */
  RcArea              floor_area;
  RcAreaPlan         *area_plan; /* while its options are made */
  RcAxis              axes[RC_PILE_MOST_AXES];
  guint               n_axes;
  RcLength            length_bound;
  RcMoney             cost_bound, share_bound;
  double              seconds;
  gboolean            has_kept;
  gboolean            deep;
  gint64 budget_us, deadline_us; /* with an effort each axis has the budget, else all end at the deadline */
  gint64 work_us;                /* of all runs so far */
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

static void
add_axis (RcPlanning *planning, double degrees, gboolean pinned)
{
  RcAxis        *axis = &planning->axes[planning->n_axes++];
  const RcGoods *carpet = rc_job_find_goods (planning->job, planning->area->carpet);
  axis->site = rc_site_new (planning->job, planning->house, planning->area, carpet, &planning->weights, 90 - degrees);
  axis->pile_degrees = pinned ? degrees : rc_pile_face_entry (axis->site, planning->floor, degrees);
  if (axis->pile_degrees != degrees) /* the frame's y runs the way the pile leans: then so does the roll */
    {
      rc_site_free (axis->site);
      degrees = axis->pile_degrees;
      axis->site
          = rc_site_new (planning->job, planning->house, planning->area, carpet, &planning->weights, 90 - degrees);
    }
  axis->search = rc_area_search_new (axis->site, planning->params->effort > 0);
  axis->planning = planning;
  axis->found = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  g_autoptr (GPtrArray) turned = rc_region_rotate (planning->floor, 90 - degrees);
  axis->bound = rc_area_bound_compute (axis->site, turned);
}

static void
add_axes (RcPlanning *planning)
{
  double   degrees[RC_PILE_MOST_AXES];
  gboolean is_pinned;
  guint    n = rc_pile_list_axes (planning->area, planning->floor, degrees, &is_pinned);
  for (guint i = 0; i < n; i++)
    add_axis (planning, degrees[i], is_pinned);
}

/* The least over the directions allowed. */
static void
compute_bounds (RcPlanning *planning)
{
  planning->length_bound = planning->cost_bound = planning->share_bound = G_MAXINT64;
  for (guint i = 0; i < planning->n_axes; i++)
    {
      const RcAxis *axis = &planning->axes[i];
      RcLength      length = axis->bound.carpet_length, bought = rc_goods_compute_bought (axis->site->carpet, length);
      planning->length_bound = MIN (planning->length_bound, length);
      planning->share_bound = MIN (planning->share_bound, rc_area_bound_weigh (&axis->bound, axis->site, length));
      planning->cost_bound = MIN (planning->cost_bound, rc_area_bound_weigh (&axis->bound, axis->site, bought));
    }
}

static void
weigh_option (const RcPlanning *planning, const RcSite *site, RcOption *option)
{
  RcNestParams params = { .cancellable = planning->params->cancellable, .seed = planning->params->seed };
  params.seconds = planning->params->steady ? 0 : MIN (OPTION_SECONDS, planning->seconds / 20);
  rc_option_weigh (option, site, &params);
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
get_us (const RcAxis *axis)
{
  return rc_area_state_get_us (rc_area_search_get_state (axis->search));
}

static gint64
get_deadline (const RcAxis *axis)
{
  const RcPlanning *planning = axis->planning;
  return planning->params->effort > 0 ? get_us (axis) + planning->budget_us : planning->deadline_us;
}

/* Finds the best option for each goal along one direction. */
static gpointer
plan_axis (gpointer data)
{
  RcAxis           *axis = data;
  const RcPlanning *planning = axis->planning;
  gint64            deadline_us = get_deadline (axis);
  for (guint g = 0; g < G_N_ELEMENTS (goals) && axis->error == NULL; g++)
    {
      RcScore   score;
      RcOption *option = NULL;
      if (rc_area_search_run (axis->search, &goals[g].objective, planning->deep, deadline_us,
                              planning->params->cancellable, &score, &axis->error))
        option = realize (planning, axis, goals[g].name, &axis->error);
      if (option != NULL)
        g_ptr_array_add (axis->found, option);
    }
  return NULL;
}

/* The one best option along one direction beside other cuts. */
static gpointer
plan_axis_beside (gpointer data)
{
  RcAxis           *axis = data;
  const RcPlanning *planning = axis->planning;
  rc_area_search_set_beside (axis->search, axis->beside);
  if (rc_area_search_run (axis->search, &goals[0].objective, planning->deep, get_deadline (axis),
                          planning->params->cancellable, &axis->score, &axis->error))
    {
      RcOption *option = realize (planning, axis, goals[0].name, &axis->error);
      if (option != NULL)
        g_ptr_array_add (axis->found, option);
    }
  rc_area_search_set_beside (axis->search, NULL);
  return NULL;
}

/* Each direction in a thread of its own. */
static gboolean
run_axes (RcPlanning *planning, GThreadFunc run, GError **error)
{
  GThread *threads[RC_PILE_MOST_AXES] = { NULL };
  gint64   before[RC_PILE_MOST_AXES] = { 0 }, spent = 0;
  for (guint i = 0; i < planning->n_axes; i++)
    {
      g_ptr_array_set_size (planning->axes[i].found, 0);
      before[i] = get_us (&planning->axes[i]);
    }
  for (guint i = 1; i < planning->n_axes; i++)
    threads[i] = g_thread_new ("pile direction", run, &planning->axes[i]);
  run (&planning->axes[0]);
  for (guint i = 1; i < planning->n_axes; i++)
    g_thread_join (threads[i]);
  for (guint i = 0; i < planning->n_axes; i++)
    spent = MAX (spent, get_us (&planning->axes[i]) - before[i]);
  planning->work_us += spent;
  gboolean fine = TRUE;
  for (guint i = 0; i < planning->n_axes; i++)
    if (planning->axes[i].error != NULL && fine)
      {
        g_propagate_error (error, g_steal_pointer (&planning->axes[i].error));
        fine = FALSE;
      }
    else
      g_clear_error (&planning->axes[i].error);
  return fine;
}

/* The pins that the first option found along one direction keeps, of that which keeps most. */
static guint
count_most_kept (RcPlanning *planning)
{
  guint most = 0;
  for (guint i = 0; i < planning->n_axes; i++)
    {
      RcAxis *axis = &planning->axes[i];
      axis->n_kept = rc_pins_count_kept (axis->site, g_ptr_array_index (axis->found, 0));
      most = MAX (most, axis->n_kept);
    }
  return most;
}

/* Each search is a good try and no proof, so what one finds for its goal may be another's best. */
static void
gather_options (RcPlanning *planning)
{
  GPtrArray *options = planning->area_plan->options;
  guint      most = count_most_kept (planning);
  for (guint g = 0; g < G_N_ELEMENTS (goals); g++)
    for (guint i = 0; i < planning->n_axes; i++)
      if (planning->axes[i].n_kept == most)
        g_ptr_array_add (options, rc_option_copy (g_ptr_array_index (planning->axes[i].found, g)));
  rc_option_list_drop_unbought (options, rc_job_find_goods (planning->job, planning->area->carpet));
  rc_option_list_settle (options);
}

static gboolean
plan (RcPlanning *planning, GError **error)
{
  if (!run_axes (planning, plan_axis, error))
    return FALSE;
  gather_options (planning);
  rc_area_plan_choose (planning->area_plan);
  return TRUE;
}

static RcAreaPlan *
new_plan (const RcPlanning *planning)
{
  RcAreaPlan *area_plan = g_new0 (RcAreaPlan, 1);
  area_plan->area = planning->area;
  area_plan->key = g_strdup (planning->key);
  area_plan->origin = rc_area_key_find_origin (planning->house, planning->area);
  area_plan->seconds = planning->params->seconds;
  area_plan->floor = rc_region_copy (planning->floor);
  area_plan->floor_area = planning->floor_area;
  area_plan->options = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_option_free);
  return area_plan;
}

/* The same area in another plan; NULL: it is not there, or has changed. */
static const RcAreaPlan *
find_same (const RcPlanning *planning, const RcPlan *plan)
{
  const RcAreaPlan *known = plan != NULL ? rc_plan_find_area (plan, planning->area->id) : NULL;
  return known != NULL && g_str_equal (known->key, planning->key) ? known : NULL;
}

/* The options that the previous plan found for the same area, if there are, moved along with it. */
static RcAreaPlan *
reuse (const RcPlanning *planning)
{
  const RcAreaPlan *laid = find_same (planning, planning->params->laid);
  const RcAreaPlan *known = laid != NULL ? laid : find_same (planning, planning->params->previous);
  if (known == NULL || (laid == NULL && known->seconds < planning->params->seconds))
    return NULL;
  RcAreaPlan *copy = new_plan (planning);
  copy->stays = laid != NULL;
  copy->seconds = known->seconds;
  copy->share_lower_bound = known->share_lower_bound;
  copy->alone_lower_bound = known->alone_lower_bound;
  for (guint i = 0; i < known->options->len; i++)
    {
      RcOption *option = rc_option_copy (g_ptr_array_index (known->options, i));
      rc_option_move (option, copy->origin.x - known->origin.x, copy->origin.y - known->origin.y);
      g_ptr_array_add (copy->options, option);
    }
  copy->chosen = known->chosen;
  if (planning->area->option != NULL || known->area->option != NULL)
    rc_area_plan_choose (copy);
  return copy;
}

RcAreaPlanner *
rc_area_planner_new (const RcJob *job, const RcHouse *house, const RcFloorArea *area, const RcPlanWeights *weights,
                     const RcPlanParams *params, GError **error)
{
  RcPlanning *planning = g_new0 (RcPlanning, 1);
  planning->job = job;
  planning->params = params;
  planning->house = house;
  planning->area = area;
  planning->weights = *weights;
  planning->shape = rc_area_key_new_shape (job, house, area, weights);
  planning->key = rc_area_key_new (planning->shape, house, area);
  planning->floor = rc_house_compute_floor (house, area, &planning->floor_area, error);
  if (planning->floor == NULL)
    {
      g_prefix_error (error, "%s: ", area->name);
      g_clear_pointer (&planning, rc_area_planner_free);
    }
  return planning;
}

void
rc_area_planner_free (RcAreaPlanner *planning)
{
  if (planning == NULL)
    return;
  for (guint i = 0; i < planning->n_axes; i++)
    {
      g_ptr_array_unref (planning->axes[i].found);
      g_clear_error (&planning->axes[i].error);
      rc_area_search_free (planning->axes[i].search);
      rc_site_free (planning->axes[i].site);
    }
  g_free (planning->shape);
  g_free (planning->key);
  g_clear_pointer (&planning->floor, g_ptr_array_unref);
  g_free (planning);
}

/* The axes are made when they are first needed. */
static void
need_axes (RcPlanning *planning)
{
  if (planning->n_axes > 0)
    return;
  add_axes (planning);
  compute_bounds (planning);
}

static void
prepare (RcPlanning *planning, gboolean deep, gint64 budget_us)
{
  planning->deep = deep;
  planning->budget_us = budget_us;
  planning->deadline_us = g_get_monotonic_time () + budget_us;
  need_axes (planning);
}

gboolean
rc_area_planner_follow (RcAreaPlanner *planning, RcAreaPlanner *model)
{
  if (!g_str_equal (planning->shape, model->shape)
      || !rc_like_is_possible (planning->house, model->area, planning->area))
    return FALSE;
  planning->model = model;
  return TRUE;
}

const char *
rc_area_planner_get_shape (const RcAreaPlanner *planning)
{
  return planning->shape;
}

RcAreaPlanner *
rc_area_planner_get_model (RcAreaPlanner *planning)
{
  return planning->model != NULL ? planning->model : planning;
}

/* The model's option as one of this area. */
static RcOption *
copy_from_model (const RcPlanning *planning, const RcOption *option)
{
  return rc_like_copy_option (option, planning->house, planning->model->area, planning->area);
}

GPtrArray *
rc_area_planner_list_sites (RcAreaPlanner *planning)
{
  GPtrArray *sites = g_ptr_array_new ();
  need_axes (planning);
  for (guint i = 0; i < planning->n_axes; i++)
    g_ptr_array_add (sites, planning->axes[i].site);
  return sites;
}

gboolean
rc_area_planner_keeps_pins (RcAreaPlanner *planning, const RcOption *option, const RcOption *other)
{
  if (planning->area->pins->len == 0)
    return TRUE;
  g_autoptr (GPtrArray) sites = rc_area_planner_list_sites (planning);
  return rc_pins_count_kept_among (sites, option) >= rc_pins_count_kept_among (sites, other);
}

RcAreaPlan *
rc_area_planner_plan (RcAreaPlanner *planning, gboolean deep, double seconds, GError **error)
{
  RcAreaPlan *kept = reuse (planning);
  planning->has_kept = kept != NULL;
  if (planning->has_kept)
    return kept;
  planning->seconds = seconds;
  planning->area_plan = new_plan (planning);
  prepare (planning, deep, (gint64)(seconds * G_USEC_PER_SEC));
  planning->area_plan->share_lower_bound = planning->share_bound;
  if (!plan (planning, error))
    {
      g_prefix_error (error, "%s: ", planning->area->name);
      g_clear_pointer (&planning->area_plan, rc_area_plan_free);
    }
  return g_steal_pointer (&planning->area_plan);
}

RcAreaPlan *
rc_area_planner_copy_plan (RcAreaPlanner *planning, const RcAreaPlan *of_model)
{
  RcAreaPlan *kept = reuse (planning);
  planning->has_kept = kept != NULL;
  if (planning->has_kept)
    return kept;
  RcAreaPlan *copy = new_plan (planning);
  copy->seconds = of_model->seconds;
  copy->share_lower_bound = of_model->share_lower_bound;
  copy->alone_lower_bound = of_model->alone_lower_bound;
  for (guint i = 0; i < of_model->options->len; i++)
    g_ptr_array_add (copy->options, copy_from_model (planning, g_ptr_array_index (of_model->options, i)));
  rc_area_plan_choose (copy);
  return copy;
}

gboolean
rc_area_planner_has_kept (const RcAreaPlanner *planning)
{
  return planning->has_kept;
}

RcOption *
rc_area_planner_take_way (RcAreaPlanner *planning, const RcAreaWay *way, GError **error)
{
  if (planning->model != NULL)
    {
      g_autoptr (RcOption) found = rc_area_planner_take_way (planning->model, way, error);
      return found != NULL ? copy_from_model (planning, found) : NULL;
    }
  const RcAxis *axis = &planning->axes[way->axis];
  RcOption     *option = NULL;
  gboolean      possible;
  if (!rc_area_search_take (axis->search, way->partings, way->lines, &possible, error)
      || (possible && (option = realize (planning, axis, goals[0].name, error)) == NULL))
    g_prefix_error (error, "%s: ", planning->area->name);
  return option;
}

RcOption *
rc_area_planner_search_beside (RcAreaPlanner *planning, const RcBeside *beside, gboolean deep, gint64 budget_us,
                               GError **error)
{
  const RcAxis *best = &planning->axes[0];
  if (planning->model != NULL)
    {
      g_autoptr (GPtrArray) cuts = rc_like_exchange_cuts (beside->cuts, planning->model->area, planning->area);
      RcBeside exchanged = { cuts, beside->rolls };
      g_autoptr (RcOption) found = rc_area_planner_search_beside (planning->model, &exchanged, deep, budget_us, error);
      return found != NULL ? copy_from_model (planning, found) : NULL;
    }
  prepare (planning, deep, budget_us);
  for (guint i = 0; i < planning->n_axes; i++)
    planning->axes[i].beside = beside;
  if (!run_axes (planning, plan_axis_beside, error))
    {
      g_prefix_error (error, "%s: ", planning->area->name);
      return NULL;
    }
  guint most = count_most_kept (planning);
  for (guint i = 1; i < planning->n_axes; i++)
    if (planning->axes[i].n_kept == most
        && (best->n_kept < most || rc_score_is_better (planning->axes[i].score, best->score)))
      best = &planning->axes[i];
  return rc_option_copy (g_ptr_array_index (best->found, 0));
}

gint64
rc_area_planner_get_work_us (const RcAreaPlanner *planning)
{
  return planning->model != NULL ? planning->model->work_us : planning->work_us;
}
