#include "joint.h"

#include "cutting.h"
#include "option-list.h"
#include "option.h"
#include "taking.h"

/* With more areas and stairs than this in one carpet, options are chosen by the area of their cuts: in so large a set
 * of cuts there is always some that fits beside another. */
#define MOST_GROUPS 16

/* A search of one area looks at no more cuts of others than this. */
#define MOST_BESIDE 40

/* So few cuts are weighed exactly. */
#define MOST_EXACT 8

/* One dye lot: goods to buy, or rolls in stock. */
typedef struct
{
  GPtrArray *rolls; /* of RcNestRoll; empty: one roll bought to measure */
  RcTaking   taking;
  RcTaken    taken; /* by the groups in it now */
} RcLot;

/* What comes out of one dye lot: an area's pieces as its option is chosen, or a stair's. */
typedef struct
{
  RcAreaPlan    *area_plan; /* NULL for a stair */
  RcAreaPlanner *planner;
  GPtrArray     *pieces;   /* of RcPiece: a stair's */
  GPtrArray     *cut_sets; /* of RcCutSet: of each option, or the stair's */
  guint          lot;
} RcGroup;

typedef struct
{
  const RcGoods *carpet;
  gint64         carpet_per_m;
  GArray        *groups; /* of RcGroup */
  GArray        *lots;   /* of RcLot; the first is goods to buy */
  RcMoney        cost;   /* of everything as it is chosen now; G_MAXINT64 when something finds no place */
  gint64         deadline_us;
  GCancellable  *cancellable;
  RcProgress    *progress;
} RcJoint;

static RcGroup *
get_group (const RcJoint *joint, guint group)
{
  return &g_array_index (joint->groups, RcGroup, group);
}

static RcLot *
get_lot (const RcJoint *joint, guint lot)
{
  return &g_array_index (joint->lots, RcLot, lot);
}

static gboolean
is_over (const RcJoint *joint)
{
  return rc_progress_get_us (joint->progress) > joint->deadline_us || g_cancellable_is_cancelled (joint->cancellable);
}

/* --- what there is --- */

static void
add_lot (RcJoint *joint, GPtrArray *rolls)
{
  RcLot lot = { .rolls = rolls };
  rc_taking_init (&lot.taking, joint->carpet, joint->carpet_per_m);
  rc_taking_set_most_exact (&lot.taking, MOST_EXACT);
  rc_taking_set_rolls (&lot.taking, rolls);
  g_array_append_val (joint->lots, lot);
}

/* Goods to buy and stock without a lot are of one lot; those in stock are grouped by theirs. */
static void
add_lots (RcJoint *joint, const RcJob *job)
{
  g_autoptr (GPtrArray) all = rc_cutting_new_rolls (job, joint->carpet, joint->carpet_per_m, NULL);
  add_lot (joint, g_ptr_array_new_with_free_func ((GDestroyNotify)rc_nest_roll_free));
  for (guint i = 0; i < all->len; i++)
    {
      RcNestRoll *roll = g_ptr_array_index (all, i);
      guint       lot = roll->lot == NULL ? 0 : 1;
      for (; lot > 0 && lot < joint->lots->len; lot++)
        if (g_str_equal (((RcNestRoll *)g_ptr_array_index (get_lot (joint, lot)->rolls, 0))->lot, roll->lot))
          break;
      if (lot == joint->lots->len)
        add_lot (joint, g_ptr_array_new_with_free_func ((GDestroyNotify)rc_nest_roll_free));
      g_ptr_array_add (get_lot (joint, lot)->rolls, roll);
      g_ptr_array_index (all, i) = NULL;
    }
  if (get_lot (joint, 0)->rolls->len == 1) /* nothing but the roll to buy */
    g_ptr_array_set_size (get_lot (joint, 0)->rolls, 0);
  for (guint l = 0; l < joint->lots->len; l++)
    rc_taking_set_rolls (&get_lot (joint, l)->taking, get_lot (joint, l)->rolls);
}

static void
add_cut_set (const RcJoint *joint, RcGroup *group, const GPtrArray *pieces)
{
  RcCutSet *set = rc_cut_set_new (rc_goods_get_usable_width (joint->carpet), rc_goods_compute_longest (joint->carpet));
  for (guint i = 0; i < pieces->len; i++)
    {
      RcNestCut cut = rc_piece_get_cut (g_ptr_array_index (pieces, i));
      rc_cut_set_add (set, &cut);
    }
  g_ptr_array_add (group->cut_sets, set);
}

/* Of the options that have none yet. */
static void
add_cut_sets (const RcJoint *joint, RcGroup *group)
{
  if (group->cut_sets == NULL)
    group->cut_sets = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_set_free);
  if (group->area_plan == NULL)
    add_cut_set (joint, group, group->pieces);
  else
    for (guint o = group->cut_sets->len; o < group->area_plan->options->len; o++)
      add_cut_set (joint, group, ((RcOption *)g_ptr_array_index (group->area_plan->options, o))->pieces);
}

static void
add_groups (RcJoint *joint, const RcPlan *plan, const GPtrArray *planners, const GPtrArray *stairs)
{
  for (guint i = 0; i < plan->areas->len; i++)
    {
      RcGroup group = { .area_plan = g_ptr_array_index (plan->areas, i), .planner = g_ptr_array_index (planners, i) };
      if (g_strcmp0 (group.area_plan->area->carpet, joint->carpet->id) == 0)
        g_array_append_val (joint->groups, group);
    }
  for (guint i = 0; i < stairs->len; i++)
    {
      RcPiece *piece = g_ptr_array_index (stairs, i);
      RcGroup *last = joint->groups->len > 0 ? get_group (joint, joint->groups->len - 1) : NULL;
      if (last == NULL || last->area_plan != NULL
          || g_strcmp0 (((RcPiece *)g_ptr_array_index (last->pieces, 0))->room, piece->room) != 0)
        {
          RcGroup group = { .pieces = g_ptr_array_new () };
          g_array_append_val (joint->groups, group);
          last = get_group (joint, joint->groups->len - 1);
        }
      g_ptr_array_add (last->pieces, piece);
    }
  for (guint g = 0; g < joint->groups->len; g++)
    add_cut_sets (joint, get_group (joint, g));
}

static void
joint_clear (RcJoint *joint)
{
  for (guint g = 0; g < joint->groups->len; g++)
    {
      g_clear_pointer (&get_group (joint, g)->pieces, g_ptr_array_unref);
      g_ptr_array_unref (get_group (joint, g)->cut_sets);
    }
  for (guint l = 0; l < joint->lots->len; l++)
    {
      rc_taking_clear (&get_lot (joint, l)->taking);
      g_ptr_array_unref (get_lot (joint, l)->rolls);
    }
  g_array_unref (joint->groups);
  g_array_unref (joint->lots);
}

/* --- what it costs --- */

static const RcOption *
get_option (const RcGroup *group, guint option)
{
  return g_ptr_array_index (group->area_plan->options, option);
}

static const GPtrArray *
get_pieces (const RcGroup *group)
{
  return group->area_plan != NULL ? get_option (group, group->area_plan->chosen)->pieces : group->pieces;
}

/* Seams and broken rules. */
static RcMoney
get_other_cost (const RcOption *option)
{
  return option->seam_cost + option->rule_cost;
}

static const RcCutSet *
get_cut_set (const RcGroup *group)
{
  return g_ptr_array_index (group->cut_sets, group->area_plan != NULL ? group->area_plan->chosen : 0);
}

/* The cuts of all groups in the lot but one at hand. */
static void
gather_lot (const RcJoint *joint, guint lot, guint but)
{
  RcTaking *taking = &get_lot (joint, lot)->taking;
  taking->sum = (RcCutsSum){ 0 };
  for (guint g = 0; g < joint->groups->len; g++)
    if (g != but && get_group (joint, g)->lot == lot)
      rc_taking_add (taking, get_cut_set (get_group (joint, g)));
}

static void
weigh_all (RcJoint *joint)
{
  joint->cost = 0;
  for (guint l = 0; l < joint->lots->len; l++)
    {
      RcLot *lot = get_lot (joint, l);
      gather_lot (joint, l, G_MAXUINT);
      lot->taken = rc_taking_take (&lot->taking);
      joint->cost += lot->taken.cost;
    }
  for (guint g = 0; g < joint->groups->len; g++)
    {
      const RcGroup *group = get_group (joint, g);
      if (group->area_plan != NULL)
        joint->cost += get_other_cost (get_option (group, group->area_plan->chosen));
    }
}

/* --- choosing --- */

static gboolean
is_free (const RcGroup *group)
{
  guint taken;
  if (group->area_plan == NULL || group->area_plan->stays)
    return FALSE;
  /* Also where the option that was taken is not among those found now. */
  return !rc_area_plan_find_option (group->area_plan, group->area_plan->area->option, &taken)
         || get_option (group, taken)->merits == RC_MERIT_WITH_THE_JOB;
}

/* Options first .. last - 1 of the group out of the lot, beside all that is at hand there; `rest` is what all else
 * costs. */
static void
try_options (RcJoint *joint, const RcGroup *group, guint lot_index, guint first, guint last, RcMoney rest,
             guint *option, guint *lot_taken)
{
  RcLot    *lot = get_lot (joint, lot_index);
  RcCutsSum others = lot->taking.sum;
  for (guint o = first; o < last; o++)
    {
      RcMoney cost = rest;
      if (group->area_plan != NULL)
        cost += get_other_cost (get_option (group, o));
      lot->taking.sum = others;
      rc_taking_add (&lot->taking, g_ptr_array_index (group->cut_sets, o));
      RcTaken taken = rc_taking_take (&lot->taking);
      cost += taken.cost;
      if (taken.unplaced == 0 && cost < joint->cost)
        {
          joint->cost = cost;
          *option = o;
          *lot_taken = lot_index;
        }
    }
  lot->taking.sum = others;
}

/* The cheapest of the group's options from `from` on, out of the cheapest lot, while all else stays. */
static gboolean
choose_for (RcJoint *joint, guint g, guint from)
{
  RcGroup *group = get_group (joint, g);
  guint    option = group->area_plan != NULL ? group->area_plan->chosen : 0, lot = group->lot;
  guint    first = is_free (group) ? from : option;
  guint    last = is_free (group) ? group->area_plan->options->len : option + 1;
  RcMoney  before = joint->cost, rest = joint->cost;

  if (group->area_plan != NULL)
    rest -= get_other_cost (get_option (group, option));
  gather_lot (joint, group->lot, g);
  RcTaken without = rc_taking_take (&get_lot (joint, group->lot)->taking);
  rest -= get_lot (joint, group->lot)->taken.cost - without.cost;
  for (guint l = 0; l < joint->lots->len; l++)
    {
      RcTaken held = l == group->lot ? without : get_lot (joint, l)->taken;
      gather_lot (joint, l, g);
      try_options (joint, group, l, first, last, rest - held.cost, &option, &lot);
    }
  if (joint->cost == before)
    return FALSE;
  group->lot = lot;
  if (group->area_plan != NULL)
    group->area_plan->chosen = option;
  weigh_all (joint);
  return TRUE;
}

/* By what each option's cuts measure, as if none were wasted. */
static void
choose_by_area (RcJoint *joint)
{
  RcMoney  before = joint->cost;
  RcLength width = rc_goods_get_usable_width (joint->carpet);
  g_autoptr (GArray) kept = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint g = 0; g < joint->groups->len; g++)
    {
      RcGroup *group = get_group (joint, g);
      guint    was = group->area_plan != NULL ? group->area_plan->chosen : 0;
      RcMoney  best = G_MAXINT64;
      g_array_append_val (kept, was);
      for (guint o = 0; is_free (group) && o < group->area_plan->options->len; o++)
        {
          const RcOption *option = get_option (group, o);
          __int128        area = 0;
          for (guint p = 0; p < option->pieces->len; p++)
            {
              const RcPiece *piece = g_ptr_array_index (option->pieces, p);
              area += (__int128)piece->cut_width * piece->cut_length;
            }
          RcMoney cost = get_other_cost (option) + rc_weigh ((RcLength)(area / width), joint->carpet_per_m);
          if (cost < best)
            {
              best = cost;
              group->area_plan->chosen = o;
            }
        }
    }
  weigh_all (joint);
  if (joint->cost < before)
    return;
  for (guint g = 0; g < joint->groups->len; g++)
    if (is_free (get_group (joint, g)))
      get_group (joint, g)->area_plan->chosen = g_array_index (kept, guint, g);
  weigh_all (joint);
}

/* Round after round over the groups, until nothing gets cheaper; of equals what is stays. */
static void
choose_all (RcJoint *joint, guint most_rounds)
{
  for (guint round = 0; round < most_rounds && !is_over (joint); round++)
    {
      gboolean better = FALSE;
      for (guint g = 0; g < joint->groups->len && (round == 0 || !is_over (joint)); g++)
        better |= choose_for (joint, g, 0);
      if (!better)
        return;
    }
}

/* --- searching --- */

/* The cuts of the groups after g that are in the lot, up to MOST_BESIDE. (transfer full) GPtrArray of RcNestCut. */
static GPtrArray *
list_beside (const RcJoint *joint, guint g, guint lot)
{
  GPtrArray *cuts = g_ptr_array_new_with_free_func (g_free);
  RcLength   width = rc_goods_get_usable_width (joint->carpet);
  gboolean   to_measure = get_lot (joint, lot)->rolls->len == 0;
  for (guint k = 1; k < joint->groups->len && cuts->len < MOST_BESIDE; k++)
    {
      const RcGroup *group = get_group (joint, (g + k) % joint->groups->len);
      if (group->lot != lot)
        continue;
      const GPtrArray *pieces = get_pieces (group);
      for (guint i = 0; i < pieces->len; i++)
        {
          const RcPiece *piece = g_ptr_array_index (pieces, i);
          if (to_measure && piece->cut_width >= width && piece->repeat == 0)
            continue; /* nothing lies beside it */
          RcNestCut *cut = g_new (RcNestCut, 1);
          *cut = rc_piece_get_cut (piece);
          g_ptr_array_add (cuts, cut);
        }
    }
  return cuts;
}

/* Takes the option over. */
static gboolean
add_candidate (const RcJoint *joint, RcGroup *group, RcOption *option)
{
  RcAreaPlan *area_plan = group->area_plan;
  if (rc_option_list_has_like (area_plan->options, option)
      || !rc_area_planner_keeps_pins (group->planner, option, rc_area_plan_get_chosen (area_plan)))
    {
      rc_option_free (option);
      return FALSE;
    }
  rc_option_set_merits (option, RC_MERIT_WITH_THE_JOB);
  g_ptr_array_add (area_plan->options, option);
  add_cut_sets (joint, group);
  return TRUE;
}

/* One area searched beside what is cut from each lot. */
static gboolean
search_for (RcJoint *joint, guint g, gboolean deep, gint64 deadline_us, gboolean *better, GError **error)
{
  RcGroup *group = get_group (joint, g);
  rc_progress_note_carpet (joint->progress, joint->carpet, joint->cost);
  rc_progress_tell (joint->progress, group->area_plan->area->name);
  for (guint l = 0; l < joint->lots->len && !is_over (joint); l++)
    {
      g_autoptr (GPtrArray) cuts = list_beside (joint, g, l);
      RcBeside beside = { cuts, get_lot (joint, l)->rolls };
      guint    first = group->area_plan->options->len;
      gint64   left = MAX (0, deadline_us - rc_progress_get_us (joint->progress)) / (joint->lots->len - l);
      gint64   before = rc_area_planner_get_work_us (group->planner);
      if (cuts->len == 0 && beside.rolls->len == 0)
        continue; /* by itself it has been searched */
      RcOption *option = rc_area_planner_search_beside (group->planner, &beside, deep, deep ? left : 0, error);
      rc_progress_add_work (joint->progress, rc_area_planner_get_work_us (group->planner) - before);
      if (option == NULL)
        return FALSE;
      if (add_candidate (joint, group, option))
        *better |= choose_for (joint, g, first);
    }
  return TRUE;
}

/* For a first answer an area that is as it was keeps what was found for it then. */
static gboolean
is_to_be_searched (const RcGroup *group, gboolean deep)
{
  return is_free (group) && (deep || !rc_area_planner_has_kept (group->planner));
}

/* All areas in turn, beside what is chosen for the others then, until a round finds nothing better. */
static gboolean
search_all (RcJoint *joint, gboolean deep, guint most_rounds, GError **error)
{
  for (guint round = 0; round < most_rounds && !is_over (joint); round++)
    {
      gboolean better = FALSE;
      for (guint g = 0; g < joint->groups->len && !is_over (joint); g++)
        {
          gint64 now = rc_progress_get_us (joint->progress);
          gint64 until = now + (joint->deadline_us - now) / (joint->groups->len - g);
          if (is_to_be_searched (get_group (joint, g), deep) && !search_for (joint, g, deep, until, &better, error))
            return FALSE;
        }
      if (!better)
        return TRUE;
      choose_all (joint, 1);
    }
  return TRUE;
}

/* Of the candidates only one that was chosen stays. */
static void
drop_candidates (RcAreaPlan *area_plan)
{
  for (guint i = area_plan->options->len; i-- > 0;)
    {
      RcOption *option = g_ptr_array_index (area_plan->options, i);
      if (i == area_plan->chosen || option->merits != RC_MERIT_WITH_THE_JOB)
        continue;
      g_ptr_array_remove_index (area_plan->options, i);
      if (area_plan->chosen > i)
        area_plan->chosen--;
    }
}

static gboolean
choose_and_search (RcJoint *joint, gboolean deep, GError **error)
{
  gboolean few = joint->groups->len <= MOST_GROUPS;
  weigh_all (joint);
  if (!few)
    choose_by_area (joint);
  if (few || deep)
    choose_all (joint, 4);
  return (!few || search_all (joint, FALSE, 1, error)) && (!deep || search_all (joint, TRUE, G_MAXUINT, error));
}

gboolean
rc_joint_choose (RcPlan *plan, const RcGoods *carpet, const GPtrArray *planners, const GPtrArray *stairs,
                 gint64 carpet_per_m, gboolean deep, gint64 deadline_us, GCancellable *cancellable,
                 RcProgress *progress, GError **error)
{
  RcJoint joint = {
    .carpet = carpet,
    .carpet_per_m = carpet_per_m,
    .groups = g_array_new (FALSE, FALSE, sizeof (RcGroup)),
    .lots = g_array_new (FALSE, FALSE, sizeof (RcLot)),
    .deadline_us = deep ? deadline_us : G_MAXINT64,
    .cancellable = cancellable,
    .progress = progress,
  };
  add_lots (&joint, plan->job);
  add_groups (&joint, plan, planners, stairs);
  gboolean fine = choose_and_search (&joint, deep, error);
  for (guint g = 0; g < joint.groups->len; g++)
    if (get_group (&joint, g)->area_plan != NULL)
      drop_candidates (get_group (&joint, g)->area_plan);
  joint_clear (&joint);
  return fine;
}
