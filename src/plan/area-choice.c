#include "area-choice.h"

#include "line-range.h"

/* More partings of an area's doorways than this are not tried one by one. */
#define MOST_WAYS 1024

/* One minor unit of money in the units of RcNestChoice. */
#define UNIT ((gint64)RC_NEST_PRICE_PARTS * RC_TICKS_PER_M)

/* One parting of the doorways. */
typedef struct
{
  GArray *partings;            /* of RcParting */
  gint64  doorways;            /* what their seams cost, in minor units */
  guint   first_cell, n_cells; /* in Axis.members */
} Way;

typedef struct
{
  const RcSite *site;
  GPtrArray    *cells;   /* of GPtrArray of RcLineRange: every cell of any parting, once */
  GArray       *members; /* of guint: cells of the ways */
  GArray       *ways;    /* of Way */
} Axis;

struct _RcAreaChoice
{
  GArray *axes; /* of Axis */
};

/* --- making --- */

static void
axis_clear (gpointer data)
{
  Axis *axis = data;
  g_ptr_array_unref (axis->cells);
  g_array_unref (axis->members);
  for (guint i = 0; i < axis->ways->len; i++)
    g_array_unref (g_array_index (axis->ways, Way, i).partings);
  g_array_unref (axis->ways);
}

RcAreaWay *
rc_area_way_copy (const RcAreaWay *way)
{
  RcAreaWay *copy = g_new (RcAreaWay, 1);
  *copy = (RcAreaWay){ way->axis, g_array_copy (way->partings), g_array_copy (way->lines) };
  return copy;
}

void
rc_area_way_free (RcAreaWay *way)
{
  if (way == NULL)
    return;
  g_array_unref (way->partings);
  g_array_unref (way->lines);
  g_free (way);
}

void
rc_area_choice_free (RcAreaChoice *choice)
{
  if (choice == NULL)
    return;
  g_array_unref (choice->axes);
  g_free (choice);
}

/* A price for a length, rounded down: as little as any sum of rounded seams may come to. */
static gint64
weigh_down (RcLength length, gint64 per_m)
{
  return length > 0 ? (gint64)((__int128)length * per_m / RC_TICKS_PER_M) : 0;
}

/* The seams in the doorways; corners of pieces may take a hair off each. */
static gint64
weigh_doorways (const RcSite *site, const GArray *doorways)
{
  gint64 cost = 0;
  for (guint i = 0; i < doorways->len; i++)
    {
      RcPoint from, to;
      if (!rc_doorway_get_seam (&g_array_index (doorways, RcDoorway, i), &from, &to))
        continue;
      RcLength length = rc_point_distance (from, to) - 10 * RC_SLIVER;
      if (ABS (to.y - from.y) > ABS (to.x - from.x))
        cost += weigh_down (length, site->weights.side_seam_per_m);
      else
        cost += weigh_down (length, site->weights.cross_seam_per_m) + site->weights.cross_seam_each;
    }
  return cost;
}

/* `known`: index + 1 of each cell by its key. */
static gboolean
add_way (Axis *axis, const GArray *doorways, GHashTable *known, GError **error)
{
  Way way = { g_array_new (FALSE, FALSE, sizeof (RcParting)), weigh_doorways (axis->site, doorways), axis->members->len,
              0 };
  for (guint i = 0; i < doorways->len; i++)
    g_array_append_val (way.partings, g_array_index (doorways, RcDoorway, i).parting);
  g_autoptr (GPtrArray) cells = rc_cells_new (axis->site, doorways, known, error);
  if (cells == NULL)
    {
      g_array_unref (way.partings);
      return FALSE;
    }
  for (guint i = 0; i < cells->len; i++)
    {
      const RcCell *cell = g_ptr_array_index (cells, i);
      guint         index = GPOINTER_TO_UINT (g_hash_table_lookup (known, cell->key));
      if (index == 0)
        {
          g_ptr_array_add (axis->cells, rc_line_ranges_new (axis->site, cell->floor));
          index = axis->cells->len;
          g_hash_table_insert (known, g_strdup (cell->key), GUINT_TO_POINTER (index));
        }
      index--;
      g_array_append_val (axis->members, index);
    }
  way.n_cells = cells->len;
  g_array_append_val (axis->ways, way);
  return TRUE;
}

static guint
count_partings (const RcDoorway *doorway)
{
  return doorway->may_run_through ? RC_N_PARTINGS : RC_PARTING_NONE;
}

static gboolean
add_ways (Axis *axis, const RcNestClock *clock, GError **error)
{
  g_autoptr (GArray) doorways = rc_site_find_doorways (axis->site);
  g_autoptr (GHashTable) known = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  guint n = 1;
  for (guint i = 0; i < doorways->len && n <= MOST_WAYS; i++)
    n *= count_partings (&g_array_index (doorways, RcDoorway, i));
  for (guint w = 0; w < n; w++)
    {
      guint rest = w;
      if (n > MOST_WAYS || rc_nest_clock_is_over (clock))
        return FALSE;
      for (guint i = 0; i < doorways->len; i++)
        {
          RcDoorway *doorway = &g_array_index (doorways, RcDoorway, i);
          doorway->parting = rest % count_partings (doorway);
          rest /= count_partings (doorway);
        }
      if (!add_way (axis, doorways, known, error))
        return FALSE;
    }
  return TRUE;
}

RcAreaChoice *
rc_area_choice_new (const GPtrArray *sites, const RcNestClock *clock, GError **error)
{
  g_autoptr (RcAreaChoice) choice = g_new0 (RcAreaChoice, 1);
  choice->axes = g_array_new (FALSE, FALSE, sizeof (Axis));
  g_array_set_clear_func (choice->axes, axis_clear);
  for (guint i = 0; i < sites->len; i++)
    {
      Axis axis = { g_ptr_array_index (sites, i), g_ptr_array_new_with_free_func ((GDestroyNotify)g_ptr_array_unref),
                    g_array_new (FALSE, FALSE, sizeof (guint)), g_array_new (FALSE, FALSE, sizeof (Way)) };
      g_array_append_val (choice->axes, axis);
      if (!add_ways (&g_array_index (choice->axes, Axis, i), clock, error))
        return NULL;
    }
  return g_steal_pointer (&choice);
}

/* --- finding --- */

typedef struct
{
  const RcSite       *site;
  const RcNestPrices *prices;
  gboolean            likely, carpet_only;
  GArray             *cuts;  /* nullable */
  GArray             *turns; /* of RcLength: where in a range something changes its price */
} Finding;

static RcLength
get_cut_width (const RcSite *site, RcLength width)
{
  gboolean is_drop = width + site->settings->trim_width >= site->roll_width || width >= site->strip_width;
  return is_drop ? site->roll_width : width + site->settings->trim_width;
}

static gint64
weigh_cut (const Finding *self, RcLength width, RcLength length)
{
  RcNestChoiceCut cut = { get_cut_width (self->site, width), length + self->site->settings->trim_length };
  if (self->cuts != NULL)
    g_array_append_val (self->cuts, cut);
  return rc_nest_prices_get (self->prices, cut.w) * cut.h;
}

static gint64
weigh_join (const Finding *self)
{
  if (self->carpet_only)
    return 0;
  return (self->site->weights.cross_seam_each + self->site->settings->rule_cost[RC_RULE_EACH_SEAM]) * UNIT;
}

/* Narrower than the least fill by that much at least. */
static gint64
weigh_narrow (const Finding *self, RcLength width)
{
  RcLength least = self->site->settings->least_fill_width;
  gint64   price = self->site->settings->rule_cost[RC_RULE_FILL_TOO_NARROW];
  if (self->carpet_only || width >= least)
    return 0;
  return (price + (gint64)((__int128)price * (least - width) / least)) * UNIT;
}

/* --- parts cut across --- */

/* The part's cheapest cutting into two or more pieces. What a piece costs changes evenly as a seam moves along a step
 * of the outline, so that seams at the steps' ends are enough; or all in one with a seam more, between sloping walls,
 * where a step is taken to be as narrow as it gets. G_MAXINT64 where the whole is as cheap. */
static gint64
weigh_joined (Finding *self, const RcLineRange *range, const RcRangePart *part, RcLength moved, gint64 whole)
{
  const RcRangeStep *steps = &g_array_index (range->steps, RcRangeStep, part->first_step);
  guint              n = part->n_steps;
  g_autofree gint64 *least = g_new (gint64, n + 1);
  g_autofree guint  *from = g_new (guint, n + 1);
  gint64             dearest = 0, join = weigh_join (self), floor = join;
  GArray            *cuts = self->cuts;
  for (guint i = 0; i < n; i++)
    {
      gint64 price
          = rc_nest_prices_get (self->prices, get_cut_width (self->site, steps[i].width + steps[i].slope * moved));
      dearest = MAX (dearest, price);
      floor += price * (steps[i].y1 - steps[i].y0);
    }
  /* Steps are those at the range's middle: where the part is shorter elsewhere, so much less. */
  gint64 shorter = dearest * MAX (0, part->box.y1 - part->box.y0 - part->length);
  if (floor - shorter >= whole)
    return G_MAXINT64;

  self->cuts = NULL;
  least[0] = 0;
  for (guint to = 1; to <= n; to++)
    {
      RcLength widest = 0;
      least[to] = G_MAXINT64;
      for (guint i = to; i-- > 0;)
        {
          widest = MAX (widest, steps[i].width + steps[i].slope * moved);
          gint64 cost
              = least[i] + (i > 0 || to == n ? join : 0) + weigh_cut (self, widest, steps[to - 1].y1 - steps[i].y0);
          if (cost < least[to])
            {
              least[to] = cost;
              from[to] = i;
            }
        }
    }
  self->cuts = cuts;
  if (cuts != NULL && least[n] - shorter < whole)
    for (guint to = n; to > 0; to = from[to])
      {
        RcLength widest = 0;
        for (guint i = from[to]; i < to; i++)
          widest = MAX (widest, steps[i].width + steps[i].slope * moved);
        weigh_cut (self, widest, steps[to - 1].y1 - steps[from[to]].y0);
      }
  return least[n] - shorter;
}

/* `moved`: how far the lines lie from the range's first position; there, and up to the position before `until`, all
 * prices stay. */
static gint64
weigh_part (Finding *self, const RcLineRange *range, const RcRangePart *part, RcLength moved, RcLength until)
{
  RcLength width = part->width + part->slope * moved;
  guint    n_cuts = self->cuts != NULL ? self->cuts->len : 0;
  if (width <= RC_SLIVER || part->length <= RC_SLIVER)
    return 0;
  gint64 cost = weigh_cut (self, width, part->length);
  if (part->n_steps > 0)
    {
      gint64 joined = weigh_joined (self, range, part, moved, cost);
      if (joined < cost && self->cuts != NULL)
        g_array_remove_range (self->cuts, n_cuts, 1);
      cost = MIN (cost, joined);
    }
  if (part->seamed && get_cut_width (self->site, width) < self->site->roll_width)
    cost += weigh_narrow (self, MAX (width, part->width + part->slope * (until - 1)));
  return cost;
}

static gboolean
is_there (const RcRangePart *part, RcLength moved)
{
  return part->width + part->slope * moved > RC_SLIVER;
}

static gint64
weigh_sides (const Finding *self, const RcLineRange *range, RcLength moved)
{
  gint64 cost = 0;
  for (guint i = 0; i < range->sides->len && !self->carpet_only; i++)
    {
      const RcRangeSide *side = &g_array_index (range->sides, RcRangeSide, i);
      if (is_there (&g_array_index (range->parts, RcRangePart, side->left), moved)
          && is_there (&g_array_index (range->parts, RcRangePart, side->right), moved))
        cost += weigh_down (side->length, self->site->weights.side_seam_per_m) + side->rules;
    }
  return cost * UNIT;
}

static gint64
weigh_at (Finding *self, const RcLineRange *range, RcLength moved, RcLength until)
{
  gint64 cost = weigh_sides (self, range, moved);
  for (guint i = 0; i < range->parts->len; i++)
    cost += weigh_part (self, range, &g_array_index (range->parts, RcRangePart, i), moved, until);
  return cost;
}

/* --- ranges --- */

static int
compare_lengths (gconstpointer a, gconstpointer b)
{
  RcLength x = *(const RcLength *)a, y = *(const RcLength *)b;
  return x < y ? -1 : x > y;
}

/* Where a width that grows or shrinks from `width` comes to `at` or leaves it. */
static void
add_turn (Finding *self, const RcLineRange *range, RcLength width, int slope, RcLength at)
{
  RcLength moved = slope > 0 ? at - width : width - at + 1;
  if (moved > 0 && moved <= range->to - range->from)
    g_array_append_val (self->turns, moved);
}

static void
add_turns (Finding *self, const RcLineRange *range, RcLength width, int slope)
{
  const RcSite *site = self->site;
  if (slope == 0)
    return;
  add_turn (self, range, width, slope, RC_SLIVER + 1);
  add_turn (self, range, width, slope, site->settings->least_fill_width);
  add_turn (self, range, width, slope, MIN (site->roll_width - site->settings->trim_width, site->strip_width));
  for (guint i = 0; i < self->prices->turns->len; i++)
    add_turn (self, range, width, slope, g_array_index (self->prices->turns, RcLength, i) - site->settings->trim_width);
}

/* The least over the range: from one turn to the next every price is the same. */
static gint64
find_in_range (Finding *self, const RcLineRange *range, RcLength *moved)
{
  gint64 least = G_MAXINT64;
  g_array_set_size (self->turns, 0);
  for (guint i = 0; i < range->parts->len; i++)
    {
      const RcRangePart *part = &g_array_index (range->parts, RcRangePart, i);
      add_turns (self, range, part->width, part->slope);
      for (guint k = 0; k < part->n_steps; k++)
        {
          const RcRangeStep *step = &g_array_index (range->steps, RcRangeStep, part->first_step + k);
          if (step->slope != part->slope || step->width != part->width)
            add_turns (self, range, step->width, step->slope);
        }
    }
  RcLength zero = 0, end = range->to - range->from + 1;
  g_array_append_val (self->turns, zero);
  g_array_append_val (self->turns, end);
  g_array_sort (self->turns, compare_lengths);
  for (guint i = 0; i + 1 < self->turns->len; i++)
    {
      RcLength at = g_array_index (self->turns, RcLength, i), until = g_array_index (self->turns, RcLength, i + 1);
      if (at == until)
        continue;
      gint64 cost = weigh_at (self, range, at, until);
      if (cost < least)
        {
          least = cost;
          *moved = at;
        }
    }
  return least;
}

/* The cheapest of a cell's ranges, and where in it. */
typedef struct
{
  gint64             cost;
  const RcLineRange *range;
  RcLength           moved;
} Found;

static Found
find_in_cell (Finding *self, const GPtrArray *ranges)
{
  Found found = { G_MAXINT64, NULL, 0 };
  for (guint i = 0; i < ranges->len; i++)
    {
      const RcLineRange *range = g_ptr_array_index (ranges, i);
      RcLength           moved = 0;
      gint64             cost = self->likely ? weigh_at (self, range, 0, 1) : find_in_range (self, range, &moved);
      if (cost < found.cost)
        found = (Found){ cost, range, moved };
    }
  return found;
}

/* Lists what the way found consists of. */
static void
tell (Finding *self, const Axis *axis, const Way *way, const Found *found, GArray *cuts, RcAreaWay *told)
{
  told->partings = g_array_copy (way->partings);
  told->lines = g_array_new (FALSE, FALSE, sizeof (RcLength));
  self->cuts = cuts;
  for (guint i = 0; i < way->n_cells; i++)
    {
      const Found *at = &found[g_array_index (axis->members, guint, way->first_cell + i)];
      RcLength     line = rc_wrap (at->range->from + at->moved, axis->site->strip_width);
      weigh_at (self, at->range, at->moved, at->moved + 1);
      g_array_append_val (told->lines, line);
    }
}

/* The axis's least below `least`; *found is told where there is one and `cuts` is not NULL. */
static gint64
find_along (Finding *self, const RcAreaChoice *choice, guint index, gint64 least, GArray *cuts, RcAreaWay **told)
{
  const Axis       *axis = &g_array_index (choice->axes, Axis, index);
  g_autofree Found *found = g_new (Found, axis->cells->len + 1);
  const Way        *best = NULL;
  self->site = axis->site;
  self->cuts = NULL;
  for (guint i = 0; i < axis->cells->len; i++)
    found[i] = find_in_cell (self, g_ptr_array_index (axis->cells, i));
  for (guint w = 0; w < axis->ways->len; w++)
    {
      const Way *way = &g_array_index (axis->ways, Way, w);
      gint64     cost = self->carpet_only ? 0 : way->doorways * UNIT;
      for (guint i = 0; i < way->n_cells; i++)
        cost += found[g_array_index (axis->members, guint, way->first_cell + i)].cost;
      if (cost >= least)
        continue;
      least = cost;
      best = way;
    }
  if (best == NULL || cuts == NULL)
    return least;
  g_array_set_size (cuts, 0);
  g_clear_pointer (told, rc_area_way_free);
  *told = g_new0 (RcAreaWay, 1);
  (*told)->axis = index;
  tell (self, axis, best, found, cuts, *told);
  return least;
}

gint64
rc_area_choice_find (const RcAreaChoice *choice, const RcNestPrices *prices, RcChoiceScope scope, GArray *cuts,
                     gint64 *own, RcAreaWay **way)
{
  Finding self
      = { .prices = prices, .likely = scope == RC_CHOICE_LIKELY, .carpet_only = scope == RC_CHOICE_CARPET_ONLY };
  gint64     least = G_MAXINT64;
  RcAreaWay *told = NULL;
  self.turns = g_array_new (FALSE, FALSE, sizeof (RcLength));
  for (guint i = 0; i < choice->axes->len; i++)
    least = find_along (&self, choice, i, least, cuts, &told);
  g_array_unref (self.turns);
  if (own != NULL)
    *own = least;
  for (guint i = 0; own != NULL && cuts != NULL && i < cuts->len; i++)
    {
      const RcNestChoiceCut *cut = &g_array_index (cuts, RcNestChoiceCut, i);
      *own -= rc_nest_prices_get (prices, cut->w) * cut->h;
    }
  if (way != NULL)
    *way = g_steal_pointer (&told);
  g_clear_pointer (&told, rc_area_way_free);
  return least;
}
