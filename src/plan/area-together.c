#include "area-together.h"

#include "area-axis.h"
#include "range-price.h"

enum
{
  MOST_PARTINGS = 4096 /* of the doorways of all areas */
};

/* Ways are weighed up to so much above what is known of them, a part of that or a hundred minor units: those that cost
 * more are weighed again once they are the most promising. */
#define MARGIN       50
#define LEAST_MARGIN (100 * RC_RANGE_UNIT)

/* Ends of a stretch nearer to each other than this are one place: 1 mm. */
#define NEAR RC_TICKS_PER_MM

/* A range of a cell's strip lines, and what it costs at least by the prices. */
typedef struct
{
  const RcLineRange *range;
  gint64             cost;
} Ranked;

/* A cell's ranges, the cheapest first. */
typedef struct
{
  const RcSite *site;
  GArray       *ranges; /* of Ranked */
} Cell;

/* Each area along an axis, its doorways parted. */
typedef struct
{
  GPtrArray *cells;    /* of Cell, borrowed: of all areas, one after the other */
  gint64     doorways; /* what their seams cost, in the units of RcNestChoice */
} Parted;

/* Some of the ways: a parting, each cell's strip lines in a stretch. */
typedef struct
{
  gint64         bound;
  const Parted  *parted;
  guint         *ranks; /* by cell: its range; NULL once it is a stretch */
  guint          last;  /* the cell in which it differs from the ways it was listed after */
  gboolean       is_weighed;
  RcLineStretch *cells; /* once they are stretches */
  gint64        *costs; /* by cell, likewise: at least, by the prices */
} Ways;

struct _RcTogether
{
  GArray      *cuts;
  RcLayCost    cost;
  RcNestPrices prices;
  GPtrArray   *cells;  /* of Cell */
  GPtrArray   *parted; /* of Parted */
  GPtrArray   *heap;   /* of Ways: none has a lower bound than the one it hangs from */
};

static void
ways_free (gpointer data)
{
  Ways *ways = data;
  g_free (ways->ranks);
  g_free (ways->cells);
  g_free (ways->costs);
  g_free (ways);
}

static void
cell_free (gpointer data)
{
  g_array_unref (((Cell *)data)->ranges);
  g_free (data);
}

static void
parted_free (gpointer data)
{
  g_ptr_array_unref (((Parted *)data)->cells);
  g_free (data);
}

/* --- the heap --- */

static gint64
get_bound (const RcTogether *self, guint i)
{
  return ((const Ways *)g_ptr_array_index (self->heap, i))->bound;
}

static void
swap (RcTogether *self, guint a, guint b)
{
  gpointer kept = g_ptr_array_index (self->heap, a);
  g_ptr_array_index (self->heap, a) = g_ptr_array_index (self->heap, b);
  g_ptr_array_index (self->heap, b) = kept;
}

/* Takes it over; what cannot be is forgotten. */
static void
push (RcTogether *self, Ways *ways)
{
  if (ways->bound == G_MAXINT64)
    {
      ways_free (ways);
      return;
    }
  g_ptr_array_add (self->heap, ways);
  for (guint i = self->heap->len - 1; i > 0 && get_bound (self, i) < get_bound (self, (i - 1) / 2); i = (i - 1) / 2)
    swap (self, i, (i - 1) / 2);
}

static Ways *
pop (RcTogether *self)
{
  guint last = self->heap->len - 1;
  swap (self, 0, last);
  Ways *least = g_ptr_array_steal_index (self->heap, last);
  for (guint i = 0, child = 1; child < last; child = 2 * i + 1)
    {
      if (child + 1 < last && get_bound (self, child + 1) < get_bound (self, child))
        child++;
      if (get_bound (self, child) >= get_bound (self, i))
        break;
      swap (self, i, child);
      i = child;
    }
  return least;
}

/* --- cells by the prices --- */

static int
compare_ranked (gconstpointer a, gconstpointer b)
{
  const Ranked *p = a, *q = b;
  return p->cost != q->cost ? (p->cost > q->cost) - (p->cost < q->cost)
                            : (p->range->from > q->range->from) - (p->range->from < q->range->from);
}

static Cell *
cell_new (const RcSite *site, const GPtrArray *ranges, const RcNestPrices *prices)
{
  RcRangePricing pricing = { .site = site, .prices = prices };
  Cell          *cell = g_new (Cell, 1);
  pricing.turns = g_array_new (FALSE, FALSE, sizeof (RcLength));
  *cell = (Cell){ site, g_array_new (FALSE, FALSE, sizeof (Ranked)) };
  for (guint i = 0; i < ranges->len; i++)
    {
      Ranked   ranked = { g_ptr_array_index (ranges, i), 0 };
      RcLength moved = 0;
      ranked.cost = rc_range_find_least (&pricing, ranked.range, 0, ranked.range->to - ranked.range->from, &moved);
      g_array_append_val (cell->ranges, ranked);
    }
  g_array_sort (cell->ranges, compare_ranked);
  g_array_unref (pricing.turns);
  return cell;
}

static const Ranked *
get_ranked (const Parted *parted, guint cell, guint rank)
{
  return &g_array_index (((Cell *)g_ptr_array_index (parted->cells, cell))->ranges, Ranked, rank);
}

/* Cells of all areas along all axes. */
static GPtrArray *
list_cells (const GPtrArray *choices, const RcNestPrices *prices)
{
  GPtrArray *cells = g_ptr_array_new_with_free_func (cell_free);
  for (guint i = 0; i < choices->len; i++)
    {
      const RcAreaChoice *choice = g_ptr_array_index (choices, i);
      for (guint a = 0; a < choice->axes->len; a++)
        {
          const RcAreaAxis *axis = &g_array_index (choice->axes, RcAreaAxis, a);
          for (guint c = 0; c < axis->cells->len; c++)
            g_ptr_array_add (cells, cell_new (axis->site, g_ptr_array_index (axis->cells, c), prices));
        }
    }
  return cells;
}

/* --- partings --- */

typedef struct
{
  RcTogether      *self;
  const GPtrArray *choices;
  GPtrArray       *cells; /* of Cell: of the areas before */
} Parting;

/* `first`: the area's first among all cells. */
static void
part (Parting *parting, guint area, guint first, gint64 doorways)
{
  GPtrArray *cells = parting->cells;
  if (area == parting->choices->len)
    {
      Parted *parted = g_new (Parted, 1);
      *parted = (Parted){ g_ptr_array_copy (cells, NULL, NULL), doorways };
      g_ptr_array_add (parting->self->parted, parted);
      return;
    }
  const RcAreaChoice *choice = g_ptr_array_index (parting->choices, area);
  guint               n_own = 0, before = cells->len;
  for (guint a = 0; a < choice->axes->len; a++)
    n_own += g_array_index (choice->axes, RcAreaAxis, a).cells->len;
  for (guint a = 0, of_axis = first; a < choice->axes->len; a++)
    {
      const RcAreaAxis *axis = &g_array_index (choice->axes, RcAreaAxis, a);
      for (guint w = 0; w < axis->ways->len; w++)
        {
          const RcAxisWay *way = &g_array_index (axis->ways, RcAxisWay, w);
          for (guint i = 0; i < way->n_cells; i++)
            g_ptr_array_add (cells,
                             g_ptr_array_index (parting->self->cells,
                                                of_axis + g_array_index (axis->members, guint, way->first_cell + i)));
          part (parting, area + 1, first + n_own, doorways + way->doorways * RC_RANGE_UNIT);
          g_ptr_array_set_size (cells, (int)before);
        }
      of_axis += axis->cells->len;
    }
}

static gboolean
are_few (const GPtrArray *choices)
{
  double n = 1;
  for (guint i = 0; i < choices->len; i++)
    {
      const RcAreaChoice *choice = g_ptr_array_index (choices, i);
      guint               n_own = 0;
      for (guint a = 0; a < choice->axes->len; a++)
        n_own += g_array_index (choice->axes, RcAreaAxis, a).ways->len;
      n *= n_own;
    }
  return n <= MOST_PARTINGS;
}

/* --- ways listed --- */

static gint64
weigh_cuts (const RcTogether *self)
{
  gint64 cost = -self->cost.savings;
  for (guint i = 0; i < self->cuts->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (self->cuts, RcNestChoiceCut, i);
      cost += rc_nest_prices_get (&self->prices, cut->w) * cut->h;
    }
  return cost;
}

/* The ways with each cell at its cheapest. */
static void
push_first (RcTogether *self, const Parted *parted, gint64 cuts)
{
  Ways *ways = g_new0 (Ways, 1);
  *ways = (Ways){ .parted = parted, .ranks = g_new0 (guint, parted->cells->len + 1) };
  ways->bound = cuts + parted->doorways;
  for (guint c = 0; c < parted->cells->len; c++)
    ways->bound += get_ranked (parted, c, 0)->cost;
  push (self, ways);
}

/* The ways one rank further in one cell. All are come to once: cells before the last that was moved stay. */
static void
push_next (RcTogether *self, const Ways *ways)
{
  const Parted *parted = ways->parted;
  for (guint c = ways->last; c < parted->cells->len; c++)
    {
      if (ways->ranks[c] + 1 == ((Cell *)g_ptr_array_index (parted->cells, c))->ranges->len)
        continue;
      Ways *next = g_memdup2 (ways, sizeof (Ways));
      next->ranks = g_memdup2 (ways->ranks, sizeof (guint) * (parted->cells->len + 1));
      next->last = c;
      next->ranks[c]++;
      next->bound += get_ranked (parted, c, next->ranks[c])->cost - get_ranked (parted, c, ways->ranks[c])->cost;
      push (self, next);
    }
}

/* --- ways weighed --- */

static void
weigh (const RcTogether *self, Ways *ways)
{
  gint64 beside = ways->parted->doorways;
  guint  n = ways->parted->cells->len;
  for (guint i = 0; i < n; i++)
    beside += rc_lay_weigh_beside (&ways->cells[i]);
  gint64 most = ways->bound + MAX (ways->bound / MARGIN, LEAST_MARGIN);
  ways->bound = rc_lay_bound_compute (ways->cells, n, self->cuts, beside, &self->cost, ways->bound, most);
  ways->is_weighed = ways->bound < most;
}

/* The listed ways are those of the whole of each range. */
static void
make_stretches (Ways *ways)
{
  guint n = ways->parted->cells->len;
  ways->cells = g_new (RcLineStretch, n + 1);
  ways->costs = g_new (gint64, n + 1);
  for (guint c = 0; c < n; c++)
    {
      const Ranked *ranked = get_ranked (ways->parted, c, ways->ranks[c]);
      ways->cells[c] = (RcLineStretch){ ((Cell *)g_ptr_array_index (ways->parted->cells, c))->site, ranked->range, 0,
                                        ranked->range->to - ranked->range->from };
      ways->costs[c] = ranked->cost;
    }
  g_clear_pointer (&ways->ranks, g_free);
}

/* How much of its floor the stretch leaves open, as an area; 0: nothing changes over it. */
static __int128
weigh_stretch (const RcLineStretch *stretch)
{
  RcLength length = 0;
  for (guint p = 0; p < stretch->range->parts->len; p++)
    {
      const RcRangePart *part = &g_array_index (stretch->range->parts, RcRangePart, p);
      RcLength           open = part->slope != 0 ? part->length : 0;
      for (guint s = 0; s < part->n_steps && open == 0; s++)
        if (g_array_index (stretch->range->steps, RcRangeStep, part->first_step + s).slope != 0)
          open = part->length;
      length += MAX (0, open);
    }
  return (__int128)length * (stretch->to - stretch->from);
}

/* The cell whose stretch leaves most open; their number: none does. */
static guint
find_widest (const Ways *ways)
{
  guint    widest = ways->parted->cells->len;
  __int128 most = 0;
  for (guint i = 0; i < ways->parted->cells->len; i++)
    {
      const RcLineStretch *stretch = &ways->cells[i];
      __int128             open = stretch->to - stretch->from > NEAR ? weigh_stretch (stretch) : 0;
      if (open <= most)
        continue;
      most = open;
      widest = i;
    }
  return widest;
}

/* The ways with the cell's lines from .. to; by the prices at first. */
static void
push_half (RcTogether *self, const Ways *ways, guint cell, RcLength from, RcLength to)
{
  Ways          *half = g_memdup2 (ways, sizeof (Ways));
  guint          n = ways->parted->cells->len;
  RcRangePricing pricing = { .site = ways->cells[cell].site, .prices = &self->prices };
  RcLength       moved = 0;
  gint64         cost = weigh_cuts (self) + ways->parted->doorways;
  pricing.turns = g_array_new (FALSE, FALSE, sizeof (RcLength));
  half->cells = g_memdup2 (ways->cells, sizeof (RcLineStretch) * n);
  half->costs = g_memdup2 (ways->costs, sizeof (gint64) * n);
  half->cells[cell].from = from;
  half->cells[cell].to = to;
  half->costs[cell] = rc_range_find_least (&pricing, half->cells[cell].range, from, to, &moved);
  for (guint c = 0; c < n; c++)
    cost += half->costs[c];
  half->bound = MAX (ways->bound, cost);
  half->is_weighed = FALSE;
  push (self, half);
  g_array_unref (pricing.turns);
}

static void
push_halves (RcTogether *self, const Ways *ways, guint cell)
{
  RcLength from = ways->cells[cell].from, to = ways->cells[cell].to, middle = from + (to - from) / 2;
  push_half (self, ways, cell, from, middle);
  push_half (self, ways, cell, middle + 1, to);
}

/* Looks closer at the most promising ways, which it takes over. FALSE: there is no more to see of them. */
static gboolean
look_closer (RcTogether *self, Ways *ways)
{
  guint cell = ways->is_weighed ? find_widest (ways) : 0;
  if (cell == ways->parted->cells->len)
    {
      push (self, ways);
      return FALSE;
    }
  if (ways->is_weighed)
    {
      push_halves (self, ways, cell);
      ways_free (ways);
      return TRUE;
    }
  if (ways->ranks != NULL)
    {
      push_next (self, ways);
      make_stretches (ways);
    }
  weigh (self, ways);
  push (self, ways);
  return TRUE;
}

gboolean
rc_together_look (RcTogether *self, guint n, const RcNestClock *clock)
{
  for (guint i = 0; i < n && self->heap->len > 0 && !rc_nest_clock_is_over (clock); i++)
    if (!look_closer (self, pop (self)))
      return FALSE;
  return self->heap->len > 0;
}

gint64
rc_together_get_bound (const RcTogether *self)
{
  return self->heap->len > 0 ? MAX (0, get_bound (self, 0)) : G_MAXINT64;
}

/* --- a search --- */

/* At one of the prices tried. */
static RcTogether *
new_at (const GPtrArray *choices, const GArray *cuts, const RcLayCost *cost, RcNestPrices prices)
{
  RcTogether *self = g_new0 (RcTogether, 1);
  self->cuts = g_array_copy ((GArray *)cuts);
  self->prices = prices;
  self->cost = *cost;
  self->cost.prices = &self->prices;
  self->cells = list_cells (choices, &self->prices);
  self->parted = g_ptr_array_new_with_free_func (parted_free);
  self->heap = g_ptr_array_new_with_free_func (ways_free);
  g_autoptr (GPtrArray) cells = g_ptr_array_new ();
  Parting parting = { self, choices, cells };
  part (&parting, 0, 0, 0);
  gint64 own = weigh_cuts (self);
  for (guint i = 0; i < self->parted->len; i++)
    push_first (self, g_ptr_array_index (self->parted, i), own);
  return self;
}

RcTogether *
rc_together_new (const GPtrArray *choices, const GArray *cuts, const RcLayCost *cost, const RcNestPrices *prices,
                 gint64 per_m, const GArray *tried)
{
  RcTogether *best = NULL;
  for (guint i = 0; i < tried->len && are_few (choices); i++)
    {
      const RcTogetherPrice *price = &g_array_index (tried, RcTogetherPrice, i);
      RcLayCost   own = { cost->func, cost->user_data, cost->long_from, cost->long_most, NULL, price->savings };
      RcTogether *self = new_at (choices, cuts, &own, rc_nest_prices_scale (prices, price->per_m, per_m));
      RcTogether *worse = self;
      if (best == NULL || get_bound (self, 0) > get_bound (best, 0))
        {
          worse = best;
          best = self;
        }
      rc_together_free (worse);
    }
  return best;
}

void
rc_together_free (RcTogether *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->heap);
  g_ptr_array_unref (self->parted);
  g_ptr_array_unref (self->cells);
  g_array_unref (self->cuts);
  rc_nest_prices_clear (&self->prices);
  g_free (self);
}
