#include "area-together.h"

#include "area-axis.h"
#include "range-price.h"

enum
{
  STEP_LOOKS = 20,    /* of them take as long as a step of the clock */
  MOST_LOOKS = 20000, /* stretches and sets of cells' ranges that are looked at */
  CLOCK_SETS = 256,   /* of them are listed between looks at the clock */
  MOST_SETS = 300000  /* sets of ranges, a range for each cell, to begin with */
};

/* Ends of a stretch nearer to each other than this are one place: 1 mm. */
#define NEAR RC_TICKS_PER_MM

/* Some of the ways: each area along an axis, its doorways parted, each cell's strip lines in a stretch. */
typedef struct
{
  gint64         bound;
  gboolean       is_weighed; /* else a glance */
  gint64         doorways;   /* what their seams cost, in minor units */
  guint          n_cells;
  RcLineStretch *cells; /* of all areas, one after the other */
} Ways;

typedef struct
{
  const GPtrArray   *choices;
  const GArray      *cuts;
  RcLengthCost       cost;
  gconstpointer      user_data;
  const RcNestClock *clock;
  GPtrArray         *heap; /* of Ways: none has a lower bound than the one it hangs from */
  guint              n_looks;
  gboolean           is_cut_short; /* the clock was over before all ways were listed */
  GHashTable        *glances;      /* from RcLineRange to RcLayLook */
} Search;

static void
ways_free (gpointer data)
{
  Ways *ways = data;
  g_free (ways->cells);
  g_free (ways);
}

/* --- the heap --- */

static gint64
get_bound (const Search *self, guint i)
{
  return ((const Ways *)g_ptr_array_index (self->heap, i))->bound;
}

static void
swap (Search *self, guint a, guint b)
{
  gpointer kept = g_ptr_array_index (self->heap, a);
  g_ptr_array_index (self->heap, a) = g_ptr_array_index (self->heap, b);
  g_ptr_array_index (self->heap, b) = kept;
}

static void
push (Search *self, Ways *ways)
{
  g_ptr_array_add (self->heap, ways);
  for (guint i = self->heap->len - 1; i > 0 && get_bound (self, i) < get_bound (self, (i - 1) / 2); i = (i - 1) / 2)
    swap (self, i, (i - 1) / 2);
}

static Ways *
pop (Search *self)
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

/* --- ways at a glance --- */

static const GPtrArray *
get_ranges (const RcAreaAxis *axis, const RcAxisWay *way, guint cell)
{
  return g_ptr_array_index (axis->cells, g_array_index (axis->members, guint, way->first_cell + cell));
}

static double
count_sets (const RcAreaChoice *choice)
{
  double sum = 0;
  for (guint a = 0; a < choice->axes->len; a++)
    {
      const RcAreaAxis *axis = &g_array_index (choice->axes, RcAreaAxis, a);
      for (guint w = 0; w < axis->ways->len; w++)
        {
          const RcAxisWay *way = &g_array_index (axis->ways, RcAxisWay, w);
          double           n = 1;
          for (guint i = 0; i < way->n_cells; i++)
            n *= get_ranges (axis, way, i)->len;
          sum += n;
        }
    }
  return sum;
}

/* Sets being made: what has been chosen so far. */
typedef struct
{
  Search *search;
  GArray *cells; /* of RcLineStretch */
  gint64  doorways;
} Making;

/* The glance at the whole of a range, which is taken once. */
static const RcLayLook *
look_at (Search *self, const RcLineStretch *all)
{
  RcLayLook *look = g_hash_table_lookup (self->glances, all->range);
  if (look != NULL)
    return look;
  look = g_new (RcLayLook, 1);
  *look = rc_lay_look (all);
  g_hash_table_insert (self->glances, (gpointer)all->range, look);
  return look;
}

static void
push_set (Making *making, RcLayLook sum)
{
  Search *self = making->search;
  self->is_cut_short |= self->heap->len % CLOCK_SETS == 0 && rc_nest_clock_is_over (self->clock);
  if (self->is_cut_short)
    return;
  Ways  *ways = g_new0 (Ways, 1);
  gint64 carpet = self->cost (self->user_data,
                              (RcLength)(sum.area / g_array_index (making->cells, RcLineStretch, 0).site->roll_width));
  *ways = (Ways){ .doorways = making->doorways, .n_cells = making->cells->len };
  ways->cells = g_memdup2 (making->cells->data, sizeof (RcLineStretch) * making->cells->len);
  ways->bound = carpet == G_MAXINT64 ? carpet : carpet + sum.beside + ways->doorways * RC_RANGE_UNIT;
  if (ways->bound == G_MAXINT64)
    ways_free (ways);
  else
    push (self, ways);
}

static void make_areas (Making *making, guint area, RcLayLook sum);

static void
make_cells (Making *making, guint area, const RcAreaAxis *axis, const RcAxisWay *way, guint cell, RcLayLook sum)
{
  if (cell == way->n_cells)
    {
      make_areas (making, area + 1, sum);
      return;
    }
  const GPtrArray *ranges = get_ranges (axis, way, cell);
  for (guint i = 0; i < ranges->len && !making->search->is_cut_short; i++)
    {
      const RcLineRange *range = g_ptr_array_index (ranges, i);
      RcLineStretch      all = { axis->site, range, 0, range->to - range->from };
      const RcLayLook   *look = look_at (making->search, &all);
      g_array_append_val (making->cells, all);
      make_cells (making, area, axis, way, cell + 1, (RcLayLook){ sum.beside + look->beside, sum.area + look->area });
      g_array_set_size (making->cells, making->cells->len - 1);
    }
}

static void
make_areas (Making *making, guint area, RcLayLook sum)
{
  if (area == making->search->choices->len)
    {
      push_set (making, sum);
      return;
    }
  const RcAreaChoice *choice = g_ptr_array_index (making->search->choices, area);
  for (guint a = 0; a < choice->axes->len; a++)
    {
      const RcAreaAxis *axis = &g_array_index (choice->axes, RcAreaAxis, a);
      for (guint w = 0; w < axis->ways->len; w++)
        {
          const RcAxisWay *way = &g_array_index (axis->ways, RcAxisWay, w);
          making->doorways += way->doorways;
          make_cells (making, area, axis, way, 0, sum);
          making->doorways -= way->doorways;
        }
    }
}

static void
make_sets (Search *self)
{
  Making    making = { self, g_array_new (FALSE, FALSE, sizeof (RcLineStretch)), 0 };
  RcLayLook sum = { 0, 0 };
  for (guint i = 0; i < self->cuts->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (self->cuts, RcNestChoiceCut, i);
      sum.area += (__int128)cut->w * cut->h;
    }
  make_areas (&making, 0, sum);
  g_array_unref (making.cells);
}

/* --- ways weighed --- */

static void
weigh (Search *self, Ways *ways)
{
  gint64 beside = ways->doorways * RC_RANGE_UNIT;
  for (guint i = 0; i < ways->n_cells; i++)
    beside += rc_lay_look (&ways->cells[i]).beside;
  gint64 bound = rc_lay_bound_compute (ways->cells, ways->n_cells, self->cuts, beside, self->cost, self->user_data);
  ways->bound = MAX (ways->bound, bound);
  ways->is_weighed = TRUE;
}

/* The cell whose stretch changes most; ways->n_cells: none does by much. */
static guint
find_widest (const Ways *ways)
{
  guint    widest = ways->n_cells;
  RcLength most = NEAR;
  for (guint i = 0; i < ways->n_cells; i++)
    {
      const RcLineStretch *stretch = &ways->cells[i];
      gboolean             changes = FALSE;
      for (guint p = 0; p < stretch->range->parts->len; p++)
        changes |= g_array_index (stretch->range->parts, RcRangePart, p).slope != 0;
      for (guint s = 0; s < stretch->range->steps->len; s++)
        changes |= g_array_index (stretch->range->steps, RcRangeStep, s).slope != 0;
      if (!changes || stretch->to - stretch->from <= most)
        continue;
      most = stretch->to - stretch->from;
      widest = i;
    }
  return widest;
}

static void
add_half (Search *self, const Ways *ways, guint cell, RcLength from, RcLength to)
{
  Ways *half = g_memdup2 (ways, sizeof (Ways));
  half->cells = g_memdup2 (ways->cells, sizeof (RcLineStretch) * ways->n_cells);
  half->cells[cell].from = from;
  half->cells[cell].to = to;
  weigh (self, half);
  if (half->bound == G_MAXINT64)
    ways_free (half);
  else
    push (self, half);
}

/* Looks closer at the most promising ways, which it takes over. */
static void
look_closer (Search *self, Ways *ways)
{
  guint cell = ways->is_weighed ? find_widest (ways) : 0;
  if (!ways->is_weighed)
    {
      weigh (self, ways);
      if (ways->bound < G_MAXINT64)
        push (self, g_steal_pointer (&ways));
    }
  else
    {
      RcLength from = ways->cells[cell].from, to = ways->cells[cell].to, middle = from + (to - from) / 2;
      add_half (self, ways, cell, from, middle);
      add_half (self, ways, cell, middle + 1, to);
    }
  if (ways != NULL)
    ways_free (ways);
}

static gboolean
is_told (const Ways *ways)
{
  return ways->is_weighed && find_widest (ways) == ways->n_cells;
}

gboolean
rc_area_choices_are_few (const GPtrArray *choices)
{
  double n = 1;
  for (guint i = 0; i < choices->len; i++)
    n *= count_sets (g_ptr_array_index (choices, i));
  return n <= MOST_SETS;
}

gint64
rc_area_choices_find_together (const GPtrArray *choices, const GArray *cuts, RcLengthCost cost, gconstpointer user_data,
                               const RcNestClock *clock)
{
  Search self = { choices, cuts, cost, user_data, clock, NULL, 0, FALSE, NULL };
  guint  most = (guint)MIN (MOST_LOOKS / STEP_LOOKS, clock->steps_left) * STEP_LOOKS;
  gint64 least = G_MAXINT64;
  self.heap = g_ptr_array_new_with_free_func (ways_free);
  self.glances = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  make_sets (&self);
  while (self.heap->len > 0 && least == G_MAXINT64 && !self.is_cut_short)
    {
      Ways *ways = pop (&self);
      if (is_told (ways) || self.n_looks++ > most || rc_nest_clock_is_over (clock))
        {
          least = ways->bound;
          ways_free (ways);
        }
      else
        look_closer (&self, ways);
    }
  g_ptr_array_unref (self.heap);
  g_hash_table_unref (self.glances);
  return self.is_cut_short ? 0 : least;
}
