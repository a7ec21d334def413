#include "area-axis.h"
#include "range-price.h"

/* More partings of an area's doorways than this are not tried one by one. */
#define MOST_WAYS 1024

/* --- making --- */

static void
axis_clear (gpointer data)
{
  RcAreaAxis *axis = data;
  g_ptr_array_unref (axis->cells);
  g_array_unref (axis->members);
  for (guint i = 0; i < axis->ways->len; i++)
    g_array_unref (g_array_index (axis->ways, RcAxisWay, i).partings);
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
        cost += rc_range_weigh_down (length, site->weights.side_seam_per_m);
      else
        cost += rc_range_weigh_down (length, site->weights.cross_seam_per_m) + site->weights.cross_seam_each;
    }
  return cost;
}

/* `known`: index + 1 of each cell by its key. */
static gboolean
add_way (RcAreaAxis *axis, const GArray *doorways, GHashTable *known, GError **error)
{
  RcAxisWay way = { g_array_new (FALSE, FALSE, sizeof (RcParting)), weigh_doorways (axis->site, doorways),
                    axis->members->len, 0 };
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
add_ways (RcAreaAxis *axis, const RcNestClock *clock, GError **error)
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
  choice->axes = g_array_new (FALSE, FALSE, sizeof (RcAreaAxis));
  g_array_set_clear_func (choice->axes, axis_clear);
  for (guint i = 0; i < sites->len; i++)
    {
      RcAreaAxis axis
          = { g_ptr_array_index (sites, i), g_ptr_array_new_with_free_func ((GDestroyNotify)g_ptr_array_unref),
              g_array_new (FALSE, FALSE, sizeof (guint)), g_array_new (FALSE, FALSE, sizeof (RcAxisWay)) };
      g_array_append_val (choice->axes, axis);
      if (!add_ways (&g_array_index (choice->axes, RcAreaAxis, i), clock, error))
        return NULL;
    }
  return g_steal_pointer (&choice);
}

/* --- finding --- */

/* The cheapest of a cell's ranges, and where in it. */
typedef struct
{
  gint64             cost;
  const RcLineRange *range;
  RcLength           moved;
} Found;

static Found
find_in_cell (RcRangePricing *self, const GPtrArray *ranges)
{
  Found found = { G_MAXINT64, NULL, 0 };
  for (guint i = 0; i < ranges->len; i++)
    {
      const RcLineRange *range = g_ptr_array_index (ranges, i);
      RcLength           moved = 0;
      gint64             cost = self->likely ? rc_range_weigh_at (self, range, 0, 1)
                                             : rc_range_find_least (self, range, 0, range->to - range->from, &moved);
      if (cost < found.cost)
        found = (Found){ cost, range, moved };
    }
  return found;
}

/* Lists what the way found consists of. */
static void
tell (RcRangePricing *self, const RcAreaAxis *axis, const RcAxisWay *way, const Found *found, GArray *cuts,
      RcAreaWay *told)
{
  told->partings = g_array_copy (way->partings);
  told->lines = g_array_new (FALSE, FALSE, sizeof (RcLength));
  self->cuts = cuts;
  for (guint i = 0; i < way->n_cells; i++)
    {
      const Found *at = &found[g_array_index (axis->members, guint, way->first_cell + i)];
      RcLength     line = rc_wrap (at->range->from + at->moved, axis->site->strip_width);
      rc_range_weigh_at (self, at->range, at->moved, at->moved + 1);
      g_array_append_val (told->lines, line);
    }
}

/* The axis's least below `least`; *found is told where there is one and `cuts` is not NULL. */
static gint64
find_along (RcRangePricing *self, const RcAreaChoice *choice, guint index, gint64 least, GArray *cuts, RcAreaWay **told)
{
  const RcAreaAxis *axis = &g_array_index (choice->axes, RcAreaAxis, index);
  g_autofree Found *found = g_new (Found, axis->cells->len + 1);
  const RcAxisWay  *best = NULL;
  self->site = axis->site;
  self->cuts = NULL;
  for (guint i = 0; i < axis->cells->len; i++)
    found[i] = find_in_cell (self, g_ptr_array_index (axis->cells, i));
  for (guint w = 0; w < axis->ways->len; w++)
    {
      const RcAxisWay *way = &g_array_index (axis->ways, RcAxisWay, w);
      gint64           cost = self->carpet_only ? 0 : way->doorways * RC_RANGE_UNIT;
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
  RcRangePricing self
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
