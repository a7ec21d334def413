#include "area-search.h"

#include "area-guess.h"
#include "rule.h"
#include "site-pins.h"

/* For a first answer, so many positions of the strip lines of a cell are weighed with their cuts on the roll, the best
 * by a guess, and so many of those with all layouts. */
#define MOST_GRIDS   5
#define MOST_REFINED 2

/* A deep search weighs so many cuts exactly. */
#define MOST_EXACT 8

/* A state as it was, to go back to. */
typedef struct
{
  RcScore score;
  GArray *doorways; /* of RcDoorway */
  GArray *chosen;   /* of guint */
  GArray *picks;    /* of guint */
} RcKept;

struct _RcAreaSearch
{
  const RcSite *site;
  RcAreaState   state;
  GHashTable   *known;    /* cell key -> RcCellGrids: all cells met, for as long as the search lives */
  GArray       *doorways; /* of RcDoorway */
  RcSplitting   splitting;
  RcKept        kept; /* the best state of a deep search */
  gboolean      deep; /* weigh all, pairs of parts too, until the deadline */
  gint64        deadline_us;
  GCancellable *cancellable; /* nullable, borrowed */
  GArray       *offsets;     /* strip lines that all cells share: pinned ones, or a pattern that must meet; else NULL */
};

static void
cell_grids_free (gpointer data)
{
  RcCellGrids *cell_grids = data;
  rc_cell_free (cell_grids->cell);
  g_ptr_array_unref (cell_grids->grids);
  g_free (cell_grids);
}

RcAreaSearch *
rc_area_search_new (const RcSite *site, gboolean counts_work)
{
  RcAreaSearch *search = g_new0 (RcAreaSearch, 1);
  search->site = site;
  rc_area_state_init (&search->state, site);
  search->state.counts_work = counts_work;
  rc_splitting_init (&search->splitting);
  search->known = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, cell_grids_free);
  search->doorways = rc_site_find_doorways (site);
  search->offsets = rc_site_find_shared_offsets (site);
  search->kept.doorways = g_array_new (FALSE, FALSE, sizeof (RcDoorway));
  search->kept.chosen = g_array_new (FALSE, FALSE, sizeof (guint));
  search->kept.picks = g_array_new (FALSE, FALSE, sizeof (guint));
  return search;
}

void
rc_area_search_free (RcAreaSearch *search)
{
  if (search == NULL)
    return;
  rc_area_state_clear (&search->state);
  rc_splitting_clear (&search->splitting);
  g_hash_table_unref (search->known);
  g_array_unref (search->doorways);
  g_clear_pointer (&search->offsets, g_array_unref);
  g_array_unref (search->kept.doorways);
  g_array_unref (search->kept.chosen);
  g_array_unref (search->kept.picks);
  g_free (search);
}

static gboolean
is_over (const RcAreaSearch *search)
{
  return rc_area_state_get_us (&search->state) > search->deadline_us
         || g_cancellable_is_cancelled (search->cancellable);
}

/* Picks layouts in the cells first .. first + n - 1 for one position of their strip lines. */
static RcScore
pick_layouts (RcAreaSearch *search, guint grid, guint first, guint n)
{
  RcScore score = { 0 };
  for (guint c = first; c < first + n; c++)
    {
      g_array_index (search->state.chosen, guint, c) = grid;
      rc_grid_add_layouts (rc_area_state_get_grid (&search->state, c), search->site, &search->splitting);
    }
  score = rc_area_state_start_picks (&search->state, first, n, FALSE);
  if (search->deep && !rc_area_state_try_all_picks (&search->state, first, n, search->deadline_us, &score))
    for (guint c = first; c < first + n; c++)
      score = rc_area_state_improve_pairs (&search->state, c, first, n, search->deadline_us);
  return score;
}

static gboolean
refine (RcAreaSearch *search, guint grid, guint first, guint n, GError **error)
{
  for (guint c = first; c < first + n; c++)
    {
      RcCellGrids *cell_grids = rc_area_state_get_cell (&search->state, c);
      if (!rc_grid_refine (g_ptr_array_index (cell_grids->grids, grid), search->site, &search->splitting,
                           cell_grids->cell->floor, error))
        return FALSE;
    }
  return TRUE;
}

/* Chooses one position for all the cells first .. first + n - 1, and their picks, that scores best over them. */
static gboolean
choose_grid (RcAreaSearch *search, guint first, guint n, RcScore *best, GError **error)
{
  g_autoptr (GArray) ranks = rc_area_guess_rank (&search->state, first, n);
  guint best_grid = 0;
  if (!search->deep)
    {
      g_array_set_size (ranks, MIN (ranks->len, MOST_GRIDS));
      for (guint r = 0; r < ranks->len; r++)
        {
          RcRank *rank = &g_array_index (ranks, RcRank, r);
          rank->score = pick_layouts (search, rank->index, first, n).score;
        }
      rc_area_guess_sort (ranks);
      g_array_set_size (ranks, MIN (ranks->len, MOST_REFINED));
    }
  best->score = G_MAXINT64;
  for (guint r = 0; r < ranks->len && (r == 0 || !is_over (search)); r++)
    {
      guint grid = g_array_index (ranks, RcRank, r).index;
      if (!refine (search, grid, first, n, error))
        return FALSE;
      RcScore found = pick_layouts (search, grid, first, n);
      if (rc_score_is_better (found, *best))
        {
          *best = found;
          best_grid = grid;
        }
    }
  for (guint c = first; c < first + n; c++)
    g_array_index (search->state.chosen, guint, c) = best_grid;
  return TRUE;
}

/* Takes the cell over; its grids are made. */
static RcCellGrids *
learn_cell (RcAreaSearch *search, RcCell *cell)
{
  RcCellGrids *cell_grids = g_new0 (RcCellGrids, 1);
  g_autoptr (GArray) offsets = rc_site_find_cell_offsets (search->site, search->offsets, cell->floor);
  cell_grids->cell = cell;
  cell_grids->grids = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_grid_free);
  for (guint i = 0; i < offsets->len; i++)
    g_ptr_array_add (cell_grids->grids, rc_grid_new (search->site, cell->floor, g_array_index (offsets, RcLength, i)));
  g_hash_table_insert (search->known, cell->key, cell_grids);
  return cell_grids;
}

static void
weigh_doorways (RcAreaSearch *search)
{
  const RcPlanWeights *weights = &search->site->weights;
  gint64               cost = 0;
  search->state.doorway_rules = 0;
  for (guint i = 0; i < search->doorways->len; i++)
    {
      RcPoint from, to;
      if (!rc_doorway_get_seam (&g_array_index (search->doorways, RcDoorway, i), &from, &to))
        continue;
      search->state.doorway_rules += search->site->settings->rule_cost[RC_RULE_EACH_SEAM];
      RcLength length = rc_point_distance (from, to);
      if (ABS (to.y - from.y) > ABS (to.x - from.x))
        cost += rc_weigh (length, weights->side_seam_per_m);
      else
        cost += rc_weigh (length, weights->cross_seam_per_m) + weights->cross_seam_each;
    }
  search->state.doorway_seams = cost;
}

/* Makes the cells for the doorways as parted now. */
static gboolean
make_cells (RcAreaSearch *search, GError **error)
{
  RcAreaState *state = &search->state;
  g_autoptr (GPtrArray) cells = rc_cells_new (search->site, search->doorways, search->known, error);
  if (cells == NULL)
    return FALSE;
  g_ptr_array_set_size (state->cells, 0);
  g_array_set_size (state->chosen, 0);
  g_array_set_size (state->chosen, cells->len);
  for (guint i = 0; i < cells->len; i++)
    {
      RcCell      *cell = g_ptr_array_index (cells, i);
      RcCellGrids *cell_grids = g_hash_table_lookup (search->known, cell->key);
      if (cell_grids == NULL)
        {
          cell_grids = learn_cell (search, cell);
          g_ptr_array_index (cells, i) = NULL;
        }
      g_ptr_array_add (state->cells, cell_grids);
    }
  weigh_doorways (search);
  return TRUE;
}

/* Each cell by itself, then each again beside all the others until nothing gets better. */
static gboolean
search_cells (RcAreaSearch *search, RcScore *score, GError **error)
{
  RcAreaState *state = &search->state;
  guint        n = state->cells->len;
  if (search->offsets != NULL)
    {
      if (!choose_grid (search, 0, n, score, error))
        return FALSE;
    }
  else
    for (guint c = 0; c < n; c++)
      if (!choose_grid (search, c, 1, score, error))
        return FALSE;

  *score = n > 1 ? rc_area_state_start_picks (state, 0, n, TRUE) : rc_area_state_compute_score (state, 0, n);
  return TRUE;
}

/* Every position of one cell's strip lines while the other cells stand as they are; keeps the best. */
static gboolean
move_lines (RcAreaSearch *search, guint cell, RcScore *best, gboolean *improved, GError **error)
{
  RcAreaState *state = &search->state;
  guint       *chosen = &g_array_index (state->chosen, guint, cell);
  guint        taken = *chosen, n = state->cells->len;
  for (guint g = 0; g < rc_area_state_get_cell (state, cell)->grids->len && !is_over (search); g++)
    {
      if (g == taken)
        continue;
      if (!refine (search, g, cell, 1, error))
        return FALSE;
      *chosen = g;
      RcScore score = rc_area_state_start_cell (state, cell, 0, n);
      if (rc_score_is_better (score, *best))
        {
          *best = score;
          taken = g;
          *improved = TRUE;
        }
    }
  *chosen = taken;
  return TRUE;
}

static void
copy_array (GArray *to, const GArray *from)
{
  g_array_set_size (to, 0);
  if (from->len > 0)
    g_array_append_vals (to, from->data, from->len);
}

static void
keep_better (RcAreaSearch *search, RcScore score)
{
  RcKept *kept = &search->kept;
  if (!rc_score_is_better (score, kept->score))
    return;
  kept->score = score;
  copy_array (kept->doorways, search->doorways);
  copy_array (kept->chosen, search->state.chosen);
  rc_area_state_exchange_picks (&search->state, 0, search->state.cells->len, kept->picks, FALSE);
}

static gboolean
go_back_to_kept (RcAreaSearch *search, RcScore *score, GError **error)
{
  const RcKept *kept = &search->kept;
  copy_array (search->doorways, kept->doorways);
  if (!make_cells (search, error))
    return FALSE;
  copy_array (search->state.chosen, kept->chosen);
  rc_area_state_exchange_picks (&search->state, 0, search->state.cells->len, kept->picks, TRUE);
  *score = kept->score;
  return TRUE;
}

/* The cells as they are parted now, their lines moved one cell at a time until nothing scores better. */
static gboolean
search_lines (RcAreaSearch *search, RcScore *score, GError **error)
{
  if (!make_cells (search, error) || !search_cells (search, score, error))
    return FALSE;
  /* Lines shared by all cells stay as chosen. */
  for (gboolean improved = search->offsets == NULL; improved && !is_over (search);)
    {
      improved = FALSE;
      for (guint c = 0; c < search->state.cells->len; c++)
        if (!move_lines (search, c, score, &improved, error))
          return FALSE;
    }
  keep_better (search, *score);
  return TRUE;
}

/* Score of the doorways as parted, by the guess alone. */
static gboolean
guess_doorways (RcAreaSearch *search, RcScore *score, GError **error)
{
  if (!make_cells (search, error))
    return FALSE;
  const RcAreaState *state = &search->state;
  *score = (RcScore){ state->doorway_seams * state->objective.seam + state->doorway_rules * state->objective.rule, 0 };
  guint n = search->state.cells->len, step = search->offsets != NULL ? n : 1;
  for (guint c = 0; c < n; c += step)
    {
      g_autoptr (GArray) ranks = rc_area_guess_rank (&search->state, c, step);
      score->score += g_array_index (ranks, RcRank, 0).score;
    }
  return TRUE;
}

static gboolean
weigh_cells (RcAreaSearch *search, RcScore *score, GError **error)
{
  return make_cells (search, error) && search_cells (search, score, error);
}

typedef gboolean (*WeighFunc) (RcAreaSearch *search, RcScore *score, GError **error);

/* Tries every other parting of one doorway and keeps the best. */
static gboolean
search_doorway (RcAreaSearch *search, RcDoorway *doorway, WeighFunc weigh, RcScore *best, gboolean *improved,
                GError **error)
{
  RcParting taken = doorway->parting;
  for (RcParting parting = 0; parting < RC_N_PARTINGS && !is_over (search); parting++)
    {
      RcScore score;
      doorway->parting = parting;
      if (parting == taken || (parting == RC_PARTING_NONE && !doorway->may_run_through))
        continue;
      if (!weigh (search, &score, error))
        return FALSE;
      if (rc_score_is_better (score, *best))
        {
          *best = score;
          taken = parting;
          *improved = TRUE;
        }
    }
  doorway->parting = taken;
  return TRUE;
}

/* Every doorway in turn, until no other parting scores better or time is up. */
static gboolean
search_doorways (RcAreaSearch *search, WeighFunc weigh, GError **error)
{
  RcScore best = { .score = G_MAXINT64 };
  if (!weigh (search, &best, error))
    return FALSE;
  for (gboolean improved = TRUE; improved && !is_over (search);)
    {
      improved = FALSE;
      for (guint d = 0; d < search->doorways->len; d++)
        if (!search_doorway (search, &g_array_index (search->doorways, RcDoorway, d), weigh, &best, &improved, error))
          return FALSE;
    }
  return TRUE;
}

void
rc_area_search_set_beside (RcAreaSearch *search, const RcBeside *beside)
{
  rc_area_state_set_beside (&search->state, beside);
  rc_splitting_set_offcuts (&search->splitting, search->site, beside != NULL ? beside->cuts : NULL,
                            beside != NULL ? beside->rolls : NULL);
}

/* Tries every split of a part, or the likely ones. */
static void
set_all (RcAreaSearch *search, gboolean all)
{
  if (search->splitting.all == all)
    return;
  search->splitting.all = all;
  rc_taking_set_most_exact (&search->state.taking, all ? MOST_EXACT : 0);
  search->splitting.stamp++;
}

gboolean
rc_area_search_run (RcAreaSearch *search, const RcObjective *objective, gboolean deep, gint64 deadline_us,
                    GCancellable *cancellable, RcScore *score, GError **error)
{
  search->state.objective = *objective;
  search->deep = FALSE;
  set_all (search, FALSE);
  search->deadline_us = G_MAXINT64;
  search->cancellable = cancellable;
  search->state.cancellable = cancellable;
  if (search->doorways->len > 0 && !search_doorways (search, guess_doorways, error))
    return FALSE;
  if (!deep)
    return weigh_cells (search, score, error);

  /* First the lines, then the doorways with them; last all positions and pairs of parts. */
  search->deadline_us = deadline_us;
  search->kept.score = (RcScore){ G_MAXINT64, 0 };
  if (search->doorways->len > 0 ? !search_doorways (search, search_lines, error) : !search_lines (search, score, error))
    return FALSE;
  if (!go_back_to_kept (search, score, error))
    return FALSE;
  search->deep = !is_over (search);
  set_all (search, search->deep);
  if (search->deep && !search_lines (search, score, error))
    return FALSE;
  return go_back_to_kept (search, score, error);
}

/* The grid with a strip line there; made where lines may lie anywhere. */
static gboolean
find_grid (RcAreaSearch *search, guint cell, RcLength line, guint *grid)
{
  RcCellGrids *cell_grids = rc_area_state_get_cell (&search->state, cell);
  GPtrArray   *grids = cell_grids->grids;
  RcLength     pinned;
  for (*grid = 0; *grid < grids->len; (*grid)++)
    if (((RcGrid *)g_ptr_array_index (grids, *grid))->offset == line)
      return TRUE;
  if (search->offsets != NULL || rc_site_find_pinned_line (search->site, cell_grids->cell->floor, &pinned))
    return FALSE;
  g_ptr_array_add (grids, rc_grid_new (search->site, cell_grids->cell->floor, line));
  return TRUE;
}

gboolean
rc_area_search_take (RcAreaSearch *search, const GArray *partings, const GArray *lines, gboolean *possible,
                     GError **error)
{
  *possible = partings->len == search->doorways->len;
  for (guint d = 0; d < search->doorways->len && *possible; d++)
    g_array_index (search->doorways, RcDoorway, d).parting = g_array_index (partings, RcParting, d);
  if (!make_cells (search, error))
    return FALSE;
  *possible = *possible && lines->len == search->state.cells->len;
  for (guint c = 0; c < lines->len && *possible; c++)
    {
      guint grid;
      *possible = find_grid (search, c, g_array_index (lines, RcLength, c), &grid);
      if (!*possible)
        break;
      g_array_index (search->state.chosen, guint, c) = grid;
      if (!refine (search, grid, c, 1, error))
        return FALSE;
      rc_area_state_start_whole (&search->state, c);
    }
  return TRUE;
}

const RcAreaState *
rc_area_search_get_state (const RcAreaSearch *search)
{
  return &search->state;
}

const GArray *
rc_area_search_get_doorways (const RcAreaSearch *search)
{
  return search->doorways;
}
