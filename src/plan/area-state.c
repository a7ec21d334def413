#include "area-state.h"

#include <string.h>

#include "pattern.h"
#include "rule.h"

void
rc_area_state_init (RcAreaState *state, const RcSite *site)
{
  *state = (RcAreaState){ .site = site };
  state->cells = g_ptr_array_new ();
  state->chosen = g_array_new (FALSE, TRUE, sizeof (guint));
  rc_taking_init (&state->taking, site->carpet, site->weights.carpet_per_m);
}

void
rc_area_state_clear (RcAreaState *state)
{
  g_ptr_array_unref (state->cells);
  g_array_unref (state->chosen);
  rc_taking_clear (&state->taking);
  g_clear_pointer (&state->beside_set, rc_cut_set_free);
}

gint64
rc_area_state_get_us (const RcAreaState *state)
{
  return state->counts_work ? state->taking.work_us : g_get_monotonic_time ();
}

static gboolean
is_over (const RcAreaState *state, gint64 deadline_us)
{
  return rc_area_state_get_us (state) > deadline_us || g_cancellable_is_cancelled (state->cancellable);
}

RcCellGrids *
rc_area_state_get_cell (const RcAreaState *state, guint cell)
{
  return g_ptr_array_index (state->cells, cell);
}

RcGrid *
rc_area_state_get_grid (const RcAreaState *state, guint cell)
{
  return g_ptr_array_index (rc_area_state_get_cell (state, cell)->grids, g_array_index (state->chosen, guint, cell));
}

static RcPart *
get_part (const RcGrid *grid, guint part)
{
  return g_ptr_array_index (grid->parts, part);
}

static RcLayout *
get_layout (const RcPart *part)
{
  return g_ptr_array_index (part->layouts, part->pick);
}

void
rc_area_state_set_beside (RcAreaState *state, const RcBeside *beside)
{
  rc_taking_set_rolls (&state->taking, beside != NULL ? beside->rolls : NULL);
  g_clear_pointer (&state->beside_set, rc_cut_set_free);
  state->beside_set = rc_cut_set_new (state->site->roll_width, rc_goods_compute_longest (state->site->carpet));
  for (guint i = 0; beside != NULL && i < beside->cuts->len; i++)
    rc_cut_set_add (state->beside_set, g_ptr_array_index (beside->cuts, i));
  rc_taking_add (&state->taking, state->beside_set);
  state->beside = state->taking.sum;
}

static RcCutSet *
new_cut_set (const RcSite *site, const RcGrid *grid, const RcPart *part, const RcLayout *layout)
{
  RcCutSet *set = rc_cut_set_new (site->roll_width, rc_goods_compute_longest (site->carpet));
  for (guint b = 0; b < layout->blocks->len; b++)
    {
      RcNestCut cut = rc_pattern_get_cut (site, grid, part, &g_array_index (layout->blocks, RcBlock, b));
      rc_cut_set_add (set, &cut);
    }
  return set;
}

static void
add_part (RcAreaState *state, const RcGrid *grid, const RcPart *part)
{
  RcLayout *layout = get_layout (part);
  if (layout->cut_set == NULL)
    layout->cut_set = new_cut_set (state->site, grid, part, layout);
  state->seam += layout->seam_cost + layout->crosses->len * state->objective.each_join;
  state->rule += layout->rule_cost;
  rc_taking_add (&state->taking, layout->cut_set);
}

static gint64
weigh_side_stagger (const RcSite *site, const RcGrid *grid, const RcSideLine *side)
{
  gint64          cost = 0;
  const RcLayout *left = get_layout (get_part (grid, side->left));
  if (left->crosses->len == 0)
    return 0;
  const RcLayout *right = get_layout (get_part (grid, side->right));
  for (guint a = 0; a < left->crosses->len; a++)
    for (guint b = 0; b < right->crosses->len; b++)
      cost += rc_rules_weigh_stagger (site, g_array_index (left->crosses, RcCrossLine, a).y,
                                      g_array_index (right->crosses, RcCrossLine, b).y, (RcPoint){ 0, 0 }, NULL);
  return cost;
}

/* Cross seams of neighbouring parts of the grid: of all of them, or those that the part `of` has with others. */
static gint64
weigh_stagger (const RcSite *site, const RcGrid *grid, const RcPart *of)
{
  gint64 cost = 0;
  for (guint i = 0; i < grid->sides->len; i++)
    {
      const RcSideLine *side = &g_array_index (grid->sides, RcSideLine, i);
      if (of == NULL || of == get_part (grid, side->left) || of == get_part (grid, side->right))
        cost += weigh_side_stagger (site, grid, side);
    }
  return cost;
}

/* Adds up the cells first .. first + n - 1, leaving out the part `but` (nullable) and its stagger. */
static void
sum_cells (RcAreaState *state, guint first, guint n, const RcPart *but)
{
  state->taking.sum = state->beside;
  state->seam = n == state->cells->len ? state->doorway_seams : 0;
  state->rule = n == state->cells->len ? state->doorway_rules : 0;
  for (guint c = first; c < first + n; c++)
    {
      const RcGrid *grid = rc_area_state_get_grid (state, c);
      state->seam += grid->seam_cost;
      state->rule += grid->rule_cost;
      for (guint p = 0; p < grid->parts->len; p++)
        if (get_part (grid, p) != but)
          add_part (state, grid, get_part (grid, p));
        else
          state->rule -= weigh_stagger (state->site, grid, but);
      state->rule += weigh_stagger (state->site, grid, NULL);
    }
}

static RcScore
make_score (const RcAreaState *state, RcTaken taken)
{
  const RcObjective *objective = &state->objective;
  return (RcScore){ taken.cost * objective->carpet + state->seam * objective->seam + state->rule * objective->rule,
                    taken.length };
}

/* The score of the sum; or, when the cuts' area alone shows that it cannot be better than `limit`, one worse than any.
 */
static RcScore
score_sum_below (RcAreaState *state, RcScore limit)
{
  if (!rc_score_is_better (make_score (state, rc_taking_take_at_least (&state->taking)), limit))
    return (RcScore){ G_MAXINT64, 0 };
  return make_score (state, rc_taking_take (&state->taking));
}

static RcScore
compute_score_below (RcAreaState *state, guint first, guint n, RcScore limit)
{
  sum_cells (state, first, n, NULL);
  return score_sum_below (state, limit);
}

RcScore
rc_area_state_compute_score (RcAreaState *state, guint first, guint n)
{
  return compute_score_below (state, first, n, (RcScore){ G_MAXINT64, 0 });
}

gboolean
rc_score_is_better (RcScore a, RcScore b)
{
  return a.score < b.score || (a.score == b.score && a.length < b.length);
}

/* The best layout for one part while all else stands. */
static gboolean
improve_part (RcAreaState *state, const RcGrid *grid, RcPart *part, guint first, guint n, RcScore *best)
{
  guint     best_pick = part->pick;
  gboolean  improved = FALSE;
  RcCutsSum rest;
  gint64    rest_seam, rest_rule;
  sum_cells (state, first, n, part);
  rest = state->taking.sum;
  rest_seam = state->seam;
  rest_rule = state->rule;
  for (guint l = 0; l < part->layouts->len; l++)
    {
      RcScore score;
      if (l == best_pick)
        continue;
      part->pick = l;
      state->taking.sum = rest;
      state->seam = rest_seam;
      state->rule = rest_rule;
      add_part (state, grid, part);
      state->rule += weigh_stagger (state->site, grid, part);
      score = score_sum_below (state, *best);
      if (rc_score_is_better (score, *best))
        {
          *best = score;
          best_pick = l;
          improved = TRUE;
        }
    }
  part->pick = best_pick;
  return improved;
}

RcScore
rc_area_state_improve_picks (RcAreaState *state, guint cell, guint first, guint n)
{
  const RcGrid *grid = rc_area_state_get_grid (state, cell);
  RcScore       best = rc_area_state_compute_score (state, first, n);
  for (gboolean improved = TRUE; improved;)
    {
      improved = FALSE;
      for (guint p = 0; p < grid->parts->len; p++)
        if (get_part (grid, p)->layouts->len > 1)
          improved |= improve_part (state, grid, get_part (grid, p), first, n, &best);
    }
  return best;
}

/* The best pair of layouts for two parts while all else stands. */
static gboolean
improve_pair (RcAreaState *state, RcPart *a, RcPart *b, guint first, guint n, gint64 deadline_us, RcScore *best)
{
  guint    best_a = a->pick, best_b = b->pick;
  gboolean improved = FALSE;
  for (a->pick = 0; a->pick < a->layouts->len && !is_over (state, deadline_us); a->pick++)
    for (b->pick = 0; b->pick < b->layouts->len; b->pick++)
      {
        RcScore score = compute_score_below (state, first, n, *best);
        if (rc_score_is_better (score, *best))
          {
            *best = score;
            best_a = a->pick;
            best_b = b->pick;
            improved = TRUE;
          }
      }
  a->pick = best_a;
  b->pick = best_b;
  return improved;
}

RcScore
rc_area_state_improve_pairs (RcAreaState *state, guint cell, guint first, guint n, gint64 deadline_us)
{
  const RcGrid *grid = rc_area_state_get_grid (state, cell);
  RcScore       best = rc_area_state_compute_score (state, first, n);
  for (gboolean improved = TRUE; improved;)
    {
      improved = FALSE;
      for (guint p = 0; p < grid->parts->len; p++)
        for (guint q = p + 1; q < grid->parts->len; q++)
          {
            if (is_over (state, deadline_us))
              return best;
            improved |= improve_pair (state, get_part (grid, p), get_part (grid, q), first, n, deadline_us, &best);
          }
    }
  return best;
}

/* More combinations of picks than this are not tried one by one. */
#define MOST_COMBINATIONS 1000000

typedef struct
{
  RcAreaState *state;
  GPtrArray   *parts; /* of RcPart */
  GPtrArray   *grids; /* of RcGrid, the part's */
  GArray      *picks; /* of guint: the best */
  guint        first, n;
  gint64       deadline_us;
  RcScore      best;
} RcTrial;

/* Adds the parts from `next` on in every way to what is summed up; all costs are at least zero, so a sum that is no
 * better than the best already needs no more parts. */
static void
try_parts (RcTrial *trial, guint next)
{
  RcAreaState    *state = trial->state;
  const RcCutsSum sum = state->taking.sum;
  gint64          seam = state->seam, rule = state->rule;
  if (next == trial->parts->len)
    {
      for (guint c = trial->first; c < trial->first + trial->n; c++)
        state->rule += weigh_stagger (state->site, rc_area_state_get_grid (state, c), NULL);
      RcScore score = score_sum_below (state, trial->best);
      if (rc_score_is_better (score, trial->best))
        {
          trial->best = score;
          for (guint p = 0; p < trial->parts->len; p++)
            g_array_index (trial->picks, guint, p) = ((RcPart *)g_ptr_array_index (trial->parts, p))->pick;
        }
      state->rule = rule;
      return;
    }
  RcPart *part = g_ptr_array_index (trial->parts, next);
  for (part->pick = 0; part->pick < part->layouts->len && !is_over (state, trial->deadline_us); part->pick++)
    {
      add_part (state, g_ptr_array_index (trial->grids, next), part);
      if (rc_score_is_better (make_score (state, rc_taking_take_at_least (&state->taking)), trial->best))
        try_parts (trial, next + 1);
      state->taking.sum = sum;
      state->seam = seam;
      state->rule = rule;
    }
  part->pick = 0;
}

gboolean
rc_area_state_try_all_picks (RcAreaState *state, guint first, guint n, gint64 deadline_us, RcScore *best)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new (), grids = g_ptr_array_new ();
  g_autoptr (GArray) picks = g_array_new (FALSE, FALSE, sizeof (guint));
  RcTrial trial = { state, parts, grids, picks, first, n, deadline_us, *best };
  guint64 combinations = state->site->repeat > 0 ? MOST_COMBINATIONS + 1 : 1;
  for (guint c = first; c < first + n; c++)
    {
      const RcGrid *grid = rc_area_state_get_grid (state, c);
      for (guint p = 0; p < grid->parts->len && combinations <= MOST_COMBINATIONS; p++)
        {
          combinations *= get_part (grid, p)->layouts->len;
          g_ptr_array_add (parts, get_part (grid, p));
          g_ptr_array_add (grids, (gpointer)grid);
        }
    }
  if (combinations > MOST_COMBINATIONS)
    return FALSE;
  rc_area_state_exchange_picks (state, first, n, picks, FALSE);
  state->taking.sum = state->beside;
  state->seam = n == state->cells->len ? state->doorway_seams : 0;
  state->rule = n == state->cells->len ? state->doorway_rules : 0;
  for (guint c = first; c < first + n; c++)
    {
      const RcGrid *grid = rc_area_state_get_grid (state, c);
      state->seam += grid->seam_cost;
      state->rule += grid->rule_cost;
    }
  try_parts (&trial, 0);
  rc_area_state_exchange_picks (state, first, n, picks, TRUE);
  *best = trial.best;
  return TRUE;
}

static void
set_picks (RcAreaState *state, guint first, guint n, guint pick)
{
  for (guint c = first; c < first + n; c++)
    {
      const RcGrid *grid = rc_area_state_get_grid (state, c);
      for (guint p = 0; p < grid->parts->len; p++)
        get_part (grid, p)->pick = MIN (pick, get_part (grid, p)->layouts->len - 1);
    }
}

void
rc_area_state_start_whole (RcAreaState *state, guint cell)
{
  set_picks (state, cell, 1, 0);
}

void
rc_area_state_exchange_picks (RcAreaState *state, guint first, guint n, GArray *picks, gboolean set)
{
  guint at = 0;
  if (!set)
    g_array_set_size (picks, 0);
  for (guint c = first; c < first + n; c++)
    {
      const RcGrid *grid = rc_area_state_get_grid (state, c);
      for (guint p = 0; p < grid->parts->len; p++)
        if (set)
          get_part (grid, p)->pick = g_array_index (picks, guint, at++);
        else
          g_array_append_val (picks, get_part (grid, p)->pick);
    }
}

static guint
count_starts (const RcAreaState *state, guint first, guint n)
{
  guint most = 1;
  for (guint c = first; c < first + n; c++)
    {
      const RcGrid *grid = rc_area_state_get_grid (state, c);
      for (guint p = 0; p < grid->parts->len; p++)
        most = MAX (most, get_part (grid, p)->layouts->len);
    }
  return MIN (most, state->site->settings->most_joins + 1);
}

static RcScore
improve_cells (RcAreaState *state, guint first, guint n)
{
  RcScore score = rc_area_state_compute_score (state, first, n), before;
  do
    {
      before = score;
      for (guint c = first; c < first + n; c++)
        score = rc_area_state_improve_picks (state, c, first, n);
    }
  while (n > 1 && rc_score_is_better (score, before));
  return score;
}

RcScore
rc_area_state_start_picks (RcAreaState *state, guint first, guint n, gboolean keep)
{
  g_autoptr (GArray) best_picks = g_array_new (FALSE, FALSE, sizeof (guint));
  RcScore best = { G_MAXINT64, 0 };
  guint   n_starts = count_starts (state, first, n) + keep;
  for (guint start = 0; start < n_starts; start++)
    {
      if (start > 0 || !keep)
        set_picks (state, first, n, start - keep);
      RcScore score = improve_cells (state, first, n);
      if (rc_score_is_better (score, best))
        {
          best = score;
          rc_area_state_exchange_picks (state, first, n, best_picks, FALSE);
        }
    }
  rc_area_state_exchange_picks (state, first, n, best_picks, TRUE);
  return best;
}

RcScore
rc_area_state_start_cell (RcAreaState *state, guint cell, guint first, guint n)
{
  g_autoptr (GArray) best_picks = g_array_new (FALSE, FALSE, sizeof (guint));
  RcScore best = { G_MAXINT64, 0 };
  guint   n_starts = count_starts (state, cell, 1);
  for (guint start = 0; start < n_starts; start++)
    {
      set_picks (state, cell, 1, start);
      RcScore score = rc_area_state_improve_picks (state, cell, first, n);
      if (rc_score_is_better (score, best))
        {
          best = score;
          rc_area_state_exchange_picks (state, cell, 1, best_picks, FALSE);
        }
    }
  rc_area_state_exchange_picks (state, cell, 1, best_picks, TRUE);
  return best;
}
