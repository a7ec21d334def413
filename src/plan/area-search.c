#include "area-search.h"

#include "rule.h"

/* So many positions of the strip lines of a cell are weighed with their cuts on the roll. */
#define MOST_GRIDS 5

/* A cell with all its grids, kept for as long as the search lives. */
typedef struct
{
  RcCell    *cell;
  GPtrArray *grids; /* of RcGrid, by offset */
} RcCellGrids;

struct _RcAreaSearch
{
  const RcSite *site;
  GHashTable   *known;    /* cell key -> RcCellGrids */
  GArray       *doorways; /* of RcDoorway */
  GPtrArray    *cells;    /* of RcCellGrids, borrowed from known */
  GArray       *chosen;   /* of guint: the grid taken in each cell */
  RcObjective   objective;

  /* the cuts of a state, made again for each that is weighed */
  RcNestProblem problem;
  GPtrArray    *pool; /* of RcNestCut */
  RcLength      drops_length;
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
rc_area_search_new (const RcSite *site)
{
  RcAreaSearch *search = g_new0 (RcAreaSearch, 1);
  search->site = site;
  search->known = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, cell_grids_free);
  search->doorways = rc_site_find_doorways (site);
  search->cells = g_ptr_array_new ();
  search->chosen = g_array_new (FALSE, TRUE, sizeof (guint));
  search->problem.roll_width = site->roll_width;
  search->problem.cuts = g_ptr_array_new ();
  search->problem.rolls = g_ptr_array_new ();
  search->problem.stages = 3;
  search->pool = g_ptr_array_new_with_free_func (g_free);
  return search;
}

void
rc_area_search_free (RcAreaSearch *search)
{
  if (search == NULL)
    return;
  g_hash_table_unref (search->known);
  g_array_unref (search->doorways);
  g_ptr_array_unref (search->cells);
  g_array_unref (search->chosen);
  g_ptr_array_unref (search->problem.cuts);
  g_ptr_array_unref (search->problem.rolls);
  g_ptr_array_unref (search->pool);
  g_free (search);
}

static RcCellGrids *
get_cell (const RcAreaSearch *search, guint cell)
{
  return g_ptr_array_index (search->cells, cell);
}

static RcGrid *
get_grid (const RcAreaSearch *search, guint cell)
{
  return g_ptr_array_index (get_cell (search, cell)->grids, g_array_index (search->chosen, guint, cell));
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

/* The phase of a block before the whole is shifted so that the first cut starts a roll. */
static RcLength
get_raw_phase (const RcSite *site, const RcGrid *grid, const RcPart *part, const RcBlock *block)
{
  return rc_wrap (block->box.y0 - site->settings->trim_length / 2
                      - site->drop * rc_grid_get_step (grid, site, part->strip),
                  site->repeat);
}

/* The raw phase of the longest block, which starts a roll. */
static RcLength
find_anchor (const RcAreaSearch *search, guint first_cell, guint n_cells)
{
  RcLength longest = 0, anchor = 0;
  for (guint c = first_cell; c < first_cell + n_cells; c++)
    {
      const RcGrid *grid = get_grid (search, c);
      for (guint p = 0; p < grid->parts->len; p++)
        {
          const RcPart   *part = get_part (grid, p);
          const RcLayout *layout = get_layout (part);
          for (guint b = 0; b < layout->blocks->len; b++)
            {
              const RcBlock *block = &g_array_index (layout->blocks, RcBlock, b);
              if (block->cut_length > longest)
                {
                  longest = block->cut_length;
                  anchor = get_raw_phase (search->site, grid, part, block);
                }
            }
        }
    }
  return anchor;
}

RcLength
rc_area_search_get_phase (const RcAreaSearch *search, guint cell, const RcPart *part, const RcBlock *block)
{
  if (search->site->repeat == 0)
    return 0;
  RcLength anchor = find_anchor (search, 0, search->cells->len);
  return rc_wrap (get_raw_phase (search->site, get_grid (search, cell), part, block) - anchor, search->site->repeat);
}

static void
add_cut (RcAreaSearch *search, const RcBlock *block, RcLength phase)
{
  RcLength repeat = search->site->repeat;
  if (block->is_drop && repeat == 0)
    {
      search->drops_length += block->cut_length;
      return;
    }
  guint n = search->problem.cuts->len;
  if (n == search->pool->len)
    g_ptr_array_add (search->pool, g_new0 (RcNestCut, 1));
  RcNestCut *cut = g_ptr_array_index (search->pool, n);
  cut->width = block->cut_width;
  cut->length = block->cut_length;
  cut->quantity = 1;
  cut->repeat = repeat;
  cut->phase = phase;
  g_ptr_array_add (search->problem.cuts, cut);
}

static void
add_cuts (RcAreaSearch *search, const RcGrid *grid, RcLength anchor)
{
  const RcSite *site = search->site;
  for (guint p = 0; p < grid->parts->len; p++)
    {
      const RcPart   *part = get_part (grid, p);
      const RcLayout *layout = get_layout (part);
      for (guint b = 0; b < layout->blocks->len; b++)
        {
          const RcBlock *block = &g_array_index (layout->blocks, RcBlock, b);
          RcLength       phase
              = site->repeat > 0 ? rc_wrap (get_raw_phase (site, grid, part, block) - anchor, site->repeat) : 0;
          add_cut (search, block, phase);
        }
    }
}

static gint64
weigh_stagger (const RcSite *site, const RcGrid *grid)
{
  gint64 cost = 0;
  for (guint i = 0; i < grid->sides->len; i++)
    {
      const RcSideLine *side = &g_array_index (grid->sides, RcSideLine, i);
      const RcLayout   *left = get_layout (get_part (grid, side->left)),
                     *right = get_layout (get_part (grid, side->right));
      for (guint a = 0; a < left->crosses->len; a++)
        for (guint b = 0; b < right->crosses->len; b++)
          cost += rc_rules_weigh_stagger (site, g_array_index (left->crosses, RcCrossLine, a).y,
                                          g_array_index (right->crosses, RcCrossLine, b).y, (RcPoint){ 0, 0 }, NULL);
    }
  return cost;
}

/* Score of the cells first .. first + n - 1 as they are chosen and picked. */
static RcScore
compute_score (RcAreaSearch *search, guint first, guint n)
{
  const RcSite      *site = search->site;
  const RcObjective *objective = &search->objective;
  gint64             seam = 0, rule = 0;
  RcLength           anchor = site->repeat > 0 ? find_anchor (search, first, n) : 0;
  g_ptr_array_set_size (search->problem.cuts, 0);
  search->drops_length = 0;
  for (guint c = first; c < first + n; c++)
    {
      const RcGrid *grid = get_grid (search, c);
      seam += grid->seam_cost;
      rule += grid->rule_cost + weigh_stagger (site, grid);
      for (guint p = 0; p < grid->parts->len; p++)
        {
          const RcLayout *layout = get_layout (get_part (grid, p));
          seam += layout->seam_cost + layout->crosses->len * objective->each_join;
          rule += layout->rule_cost;
        }
      add_cuts (search, grid, anchor);
    }
  RcLength length = search->drops_length;
  if (search->problem.cuts->len > 0)
    length += rc_nest_compute_quick_length (&search->problem);
  RcLength bought = rc_length_round_up (length, site->carpet->length_step);
  return (RcScore){ rc_weigh (bought, site->weights.carpet_per_m) * objective->carpet + seam * objective->seam
                        + rule * objective->rule,
                    length };
}

static gboolean
is_better (RcScore a, RcScore b)
{
  return a.score < b.score || (a.score == b.score && a.length < b.length);
}

/* Takes for each part of the cell the layout that does best while all else stands; until none does better. The score is
 * of the cells first .. first + n - 1, the cell among them. */
static RcScore
improve_picks (RcAreaSearch *search, guint cell, guint first, guint n)
{
  const RcGrid *grid = get_grid (search, cell);
  RcScore       best = compute_score (search, first, n);
  for (gboolean improved = TRUE; improved;)
    {
      improved = FALSE;
      for (guint p = 0; p < grid->parts->len; p++)
        {
          RcPart *part = get_part (grid, p);
          guint   best_pick = part->pick;
          for (guint l = 0; l < part->layouts->len; l++)
            {
              if (l == best_pick)
                continue;
              part->pick = l;
              RcScore score = compute_score (search, first, n);
              if (is_better (score, best))
                {
                  best = score;
                  best_pick = l;
                  improved = TRUE;
                }
            }
          part->pick = best_pick;
        }
    }
  return best;
}

static void
set_picks (const RcGrid *grid, guint pick)
{
  for (guint p = 0; p < grid->parts->len; p++)
    {
      RcPart *part = get_part (grid, p);
      part->pick = MIN (pick, part->layouts->len - 1);
    }
}

static void
get_picks (const RcGrid *grid, GArray *picks)
{
  g_array_set_size (picks, 0);
  for (guint p = 0; p < grid->parts->len; p++)
    g_array_append_val (picks, get_part (grid, p)->pick);
}

static void
restore_picks (const RcGrid *grid, const GArray *picks)
{
  for (guint p = 0; p < grid->parts->len; p++)
    get_part (grid, p)->pick = g_array_index (picks, guint, p);
}

/* Best picks of the cell's chosen grid, from several starts: fills whole, and split alike into 2, 3, .. pieces. */
static RcScore
start_picks (RcAreaSearch *search, guint cell, guint first, guint n)
{
  const RcGrid *grid = get_grid (search, cell);
  g_autoptr (GArray) best_picks = g_array_new (FALSE, FALSE, sizeof (guint));
  RcScore best = { G_MAXINT64, 0 };
  guint   most = 1;
  for (guint p = 0; p < grid->parts->len; p++)
    most = MAX (most, MIN (get_part (grid, p)->layouts->len, search->site->settings->most_joins + 1));
  for (guint start = 0; start < most; start++)
    {
      set_picks (grid, start);
      RcScore score = improve_picks (search, cell, first, n);
      if (is_better (score, best))
        {
          best = score;
          get_picks (grid, best_picks);
        }
    }
  restore_picks (grid, best_picks);
  return best;
}

/* A quick guess at a grid's score: full widths by length, fills by area. */
static gint64
guess_score (const RcAreaSearch *search, const RcGrid *grid)
{
  const RcSite *site = search->site;
  double        length = 0;
  for (guint p = 0; p < grid->parts->len; p++)
    {
      const RcLayout *whole = g_ptr_array_index (get_part (grid, p)->layouts, 0);
      const RcBlock  *block = &g_array_index (whole->blocks, RcBlock, 0);
      length += (double)block->cut_length * (double)block->cut_width / (double)site->roll_width;
    }
  return rc_weigh ((RcLength)length, site->weights.carpet_per_m) * search->objective.carpet
         + grid->seam_cost * search->objective.seam + grid->rule_cost * search->objective.rule;
}

typedef struct
{
  gint64 score;
  guint  index;
} RcRank;

static int
compare_ranks (gconstpointer a, gconstpointer b)
{
  const RcRank *x = a, *y = b;
  return x->score < y->score ? -1 : x->score > y->score ? 1 : (int)x->index - (int)y->index;
}

/* The grids of a cell worth weighing, best guess first. (transfer full) GArray of RcRank. */
static GArray *
rank_grids (const RcAreaSearch *search, guint cell)
{
  const RcCellGrids *cell_grids = get_cell (search, cell);
  GArray            *ranks = g_array_new (FALSE, FALSE, sizeof (RcRank));
  for (guint g = 0; g < cell_grids->grids->len; g++)
    {
      RcRank rank = { guess_score (search, g_ptr_array_index (cell_grids->grids, g)), g };
      g_array_append_val (ranks, rank);
    }
  g_array_sort (ranks, compare_ranks);
  if (ranks->len > MOST_GRIDS)
    g_array_set_size (ranks, MOST_GRIDS);
  return ranks;
}

static gboolean
refine (RcAreaSearch *search, guint cell, GError **error)
{
  return rc_grid_refine (get_grid (search, cell), search->site, get_cell (search, cell)->cell->floor, error);
}

/* Chooses the cell's grid and picks that score best over the cells first .. first + n - 1. */
static gboolean
choose_grid (RcAreaSearch *search, guint cell, guint first, guint n, RcScore *score, GError **error)
{
  g_autoptr (GArray) ranks = rank_grids (search, cell);
  guint  *chosen = &g_array_index (search->chosen, guint, cell);
  guint   best_grid = *chosen;
  RcScore best = { G_MAXINT64, 0 };
  for (guint r = 0; r < ranks->len; r++)
    {
      *chosen = g_array_index (ranks, RcRank, r).index;
      if (!refine (search, cell, error))
        return FALSE;
      RcScore found = start_picks (search, cell, first, n);
      if (is_better (found, best))
        {
          best = found;
          best_grid = *chosen;
        }
    }
  *chosen = best_grid;
  *score = best;
  return TRUE;
}

/* Offsets to try in a cell: its own corners, or the one line that is pinned. */
static GArray *
find_offsets (const RcAreaSearch *search, const RcRegion *floor)
{
  const RcSite *site = search->site;
  if (!site->area->seam_line_pinned)
    return rc_site_find_offsets (site, floor);
  RcPoint  at = rc_point_rotate ((RcPoint){ site->area->seam_line, site->area->seam_line }, site->turn_degrees);
  GArray  *offsets = g_array_new (FALSE, FALSE, sizeof (RcLength));
  RcLength offset = rc_wrap (at.x, site->strip_width);
  g_array_append_val (offsets, offset);
  return offsets;
}

static RcCellGrids *
make_cell_grids (RcAreaSearch *search, RcCell *cell, const GArray *offsets)
{
  RcCellGrids *cell_grids = g_new0 (RcCellGrids, 1);
  cell_grids->cell = cell;
  cell_grids->grids = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_grid_free);
  for (guint i = 0; i < offsets->len; i++)
    g_ptr_array_add (cell_grids->grids, rc_grid_new (search->site, cell->floor, g_array_index (offsets, RcLength, i)));
  g_hash_table_insert (search->known, cell->key, cell_grids);
  return cell_grids;
}

/* Makes the cells for the doorways as parted now; grids of cells met before are kept. */
static gboolean
make_cells (RcAreaSearch *search, GError **error)
{
  g_autoptr (GPtrArray) cells = rc_cells_new (search->site, search->doorways, error);
  if (cells == NULL)
    return FALSE;
  g_ptr_array_set_size (search->cells, 0);
  g_array_set_size (search->chosen, 0);
  g_array_set_size (search->chosen, cells->len);
  for (guint i = 0; i < cells->len; i++)
    {
      RcCell      *cell = g_ptr_array_index (cells, i);
      RcCellGrids *cell_grids = g_hash_table_lookup (search->known, cell->key);
      if (cell_grids == NULL)
        {
          g_autoptr (GArray) offsets = find_offsets (search, cell->floor);
          cell_grids = make_cell_grids (search, cell, offsets);
          g_ptr_array_index (cells, i) = NULL; /* taken over */
        }
      g_ptr_array_add (search->cells, cell_grids);
    }
  return TRUE;
}

/* Each cell by itself, then each again beside all the others until nothing gets better. */
static gboolean
search_cells (RcAreaSearch *search, RcScore *score, GError **error)
{
  guint n = search->cells->len;
  for (guint c = 0; c < n; c++)
    if (!choose_grid (search, c, c, 1, score, error))
      return FALSE;
  if (n == 1)
    return TRUE;

  *score = compute_score (search, 0, n);
  for (guint pass = 0; pass < 3; pass++)
    {
      RcScore before = *score;
      for (guint c = 0; c < n; c++)
        *score = improve_picks (search, c, 0, n);
      if (!is_better (*score, before))
        break;
    }
  return TRUE;
}

gboolean
rc_area_search_run (RcAreaSearch *search, const RcObjective *objective, gboolean deep, gint64 deadline_us,
                    GCancellable *cancellable, RcScore *score, GError **error)
{
  search->objective = *objective;
  return make_cells (search, error) && search_cells (search, score, error);
}

guint
rc_area_search_get_n_cells (const RcAreaSearch *search)
{
  return search->cells->len;
}

const RcCell *
rc_area_search_get_cell (const RcAreaSearch *search, guint cell)
{
  return get_cell (search, cell)->cell;
}

const RcGrid *
rc_area_search_get_grid (const RcAreaSearch *search, guint cell)
{
  return get_grid (search, cell);
}

const GArray *
rc_area_search_get_doorways (const RcAreaSearch *search)
{
  return search->doorways;
}
