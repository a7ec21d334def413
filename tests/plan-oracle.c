#include "plan-oracle.h"

#include <math.h>
#include <string.h>

#define MOST_PIECES 12
#define MOST_PLACES 48
#define MOST_PARTS  8

typedef struct
{
  RcLength w, h;
} Cut;

typedef struct
{
  RcLength x0, x1, y0, y1;
} Box;

/* One way to cut a part: what it costs by itself, and its cuts. */
typedef struct
{
  Cut      cuts[MOST_PLACES];
  guint    n_cuts;
  RcLength seams[MOST_PLACES];
  guint    n_seams;
  RcMoney  cost; /* cross seams and rules */
} Way;

typedef struct
{
  Box      box;
  gboolean both; /* columns */
  guint    column;
  gboolean seamed;
  GArray  *ways; /* of Way */
} Part;

typedef struct
{
  const OracleFloor   *floor;
  const RcSettings    *settings;
  const RcPlanWeights *weights;
  const RcGoods       *carpet;
  RcLength             width;
  RcPoint              door_from, door_to;
  Part                 parts[MOST_PARTS];
  guint                n_parts;
  RcMoney              fixed; /* side seams and their rules */
  RcMoney              best;
  GHashTable          *lengths;
} Oracle;

static RcMoney
per_m (RcLength length, gint64 price)
{
  return (RcMoney)(((__int128)length * price + RC_TICKS_PER_M / 2) / RC_TICKS_PER_M);
}

static RcMoney
size_price (const Oracle *o, RcRule rule, RcLength size, RcLength least)
{
  RcMoney price = o->settings->rule_cost[rule];
  return price + (RcMoney)((__int128)price * (least - size) / least);
}

/* --- the least roll length: levels across the roll, columns in a level, pieces one above the other in a column --- */

/* Least width of the pieces of each set in columns no higher than `height`; G_MAXINT64 / 2 when one is higher. */
static void
find_widths (const RcLength *set_w, const RcLength *set_h, guint n, RcLength height, RcLength *widths)
{
  widths[0] = 0;
  for (guint set = 1; set < 1u << n; set++)
    {
      widths[set] = G_MAXINT64 / 2;
      for (guint column = set; column > 0; column = (column - 1) & set)
        if (set_h[column] <= height)
          widths[set] = MIN (widths[set], set_w[column] + widths[set ^ column]);
    }
}

static RcLength
find_length (const Cut *cuts, guint n, RcLength roll)
{
  guint    sets = 1u << n;
  RcLength set_w[1 << MOST_PIECES] = { 0 }, set_h[1 << MOST_PIECES] = { 0 };
  RcLength level[1 << MOST_PIECES], widths[1 << MOST_PIECES], total[1 << MOST_PIECES];
  for (guint set = 1; set < sets; set++)
    {
      level[set] = G_MAXINT64 / 2;
      for (guint i = 0; i < n; i++)
        if (set >> i & 1)
          {
            set_w[set] = MAX (set_w[set], cuts[i].w);
            set_h[set] += cuts[i].h;
          }
    }
  for (guint column = 1; column < sets; column++)
    {
      find_widths (set_w, set_h, n, set_h[column], widths);
      for (guint set = 1; set < sets; set++)
        if (widths[set] <= roll)
          level[set] = MIN (level[set], set_h[column]);
    }
  total[0] = 0;
  for (guint set = 1; set < sets; set++)
    {
      total[set] = G_MAXINT64 / 2;
      for (guint part = set; part > 0; part = (part - 1) & set)
        total[set] = MIN (total[set], level[part] + total[set ^ part]);
    }
  return total[sets - 1];
}

static int
compare_cuts (gconstpointer a, gconstpointer b)
{
  const Cut *p = a, *q = b;
  if (p->w != q->w)
    return p->w > q->w ? -1 : 1;
  return p->h > q->h ? -1 : p->h < q->h;
}

static RcLength
recall_length (Oracle *o, Cut *cuts, guint n)
{
  RcLength wide = 0;
  for (guint i = 0; i < n; i++)
    wide += cuts[i].w;
  qsort (cuts, n, sizeof *cuts, compare_cuts);
  if (n == 0)
    return 0;
  GString *key = g_string_new (NULL);
  for (guint i = 0; i < n; i++)
    g_string_append_printf (key, "%" G_GINT64_FORMAT "x%" G_GINT64_FORMAT " ", cuts[i].w, cuts[i].h);
  RcLength *known = g_hash_table_lookup (o->lengths, key->str);
  if (known == NULL)
    {
      known = g_new (RcLength, 1);
      *known = find_length (cuts, n, o->width);
      g_hash_table_insert (o->lengths, g_strdup (key->str), known);
    }
  g_string_free (key, TRUE);
  return *known;
}

/* --- seams --- */

static double
distance_to (RcPoint p, RcPoint a, RcPoint b)
{
  double dx = (double)(b.x - a.x), dy = (double)(b.y - a.y), length2 = dx * dx + dy * dy;
  double t = length2 > 0 ? ((double)(p.x - a.x) * dx + (double)(p.y - a.y) * dy) / length2 : 0;
  t = CLAMP (t, 0, 1);
  return hypot ((double)(p.x - a.x) - t * dx, (double)(p.y - a.y) - t * dy);
}

static RcMoney
weigh_door (const Oracle *o, RcPoint a, RcPoint b, gboolean is_cross)
{
  RcPoint  c = o->door_from, d = o->door_to;
  RcMoney  cost = 0;
  gboolean door_level = c.y == d.y, seam_level = a.y == b.y;
  if (c.x == d.x && c.y == d.y)
    return 0;
  if (door_level != seam_level) /* does it run square into the door? */
    {
      RcLength at = door_level ? a.x : a.y, wall = door_level ? c.y : c.x;
      RcLength from = door_level ? MIN (c.x, d.x) : MIN (c.y, d.y), to = door_level ? MAX (c.x, d.x) : MAX (c.y, d.y);
      RcLength low = door_level ? MIN (a.y, b.y) : MIN (a.x, b.x), high = door_level ? MAX (a.y, b.y) : MAX (a.x, b.x);
      if (at > from && at < to && wall >= low && wall <= high)
        cost += o->settings->rule_cost[RC_RULE_SEAM_SQUARE_TO_DOOR];
    }
  if (is_cross)
    {
      double near = MIN (MIN (distance_to (a, c, d), distance_to (b, c, d)),
                         MIN (distance_to (c, a, b), distance_to (d, a, b)));
      if (near < (double)o->settings->door_distance)
        cost += size_price (o, RC_RULE_CROSS_SEAM_AT_DOOR, (RcLength)near, o->settings->door_distance);
    }
  return cost;
}

/* --- ways to cut a part --- */

/* What of the floor's width lies in the part between two heights; its area, doubled not. */
static Box
find_piece (const Oracle *o, const Part *part, RcLength y0, RcLength y1, __int128 *area)
{
  Box piece = { G_MAXINT64, G_MININT64, y0, y1 };
  *area = 0;
  for (guint c = 0; c < 2; c++)
    {
      RcLength x0 = MAX (part->box.x0, o->floor->x[c]), x1 = MIN (part->box.x1, o->floor->x[c + 1]);
      RcLength low = MAX (y0, o->floor->low[c]), high = MIN (y1, o->floor->high[c]);
      if (x0 >= x1 || low >= high)
        continue;
      piece.x0 = MIN (piece.x0, x0);
      piece.x1 = MAX (piece.x1, x1);
      *area += (__int128)(x1 - x0) * (high - low);
    }
  return piece;
}

static gboolean
is_full_width (const Oracle *o, Box piece)
{
  return piece.x1 - piece.x0 + o->settings->trim_width >= o->width;
}

static RcMoney
weigh_piece (const Oracle *o, const Part *part, Box piece, __int128 area, gboolean is_joined)
{
  RcMoney  cost = 0;
  RcLength width = piece.x1 - piece.x0, length = piece.y1 - piece.y0, least = o->settings->least_fill_width;
  if (part->seamed && !is_full_width (o, piece))
    {
      if (part->both && width >= least && width <= 4 * least)
        width = MIN (width, (RcLength)(area / length));
      if (width < least)
        cost += size_price (o, RC_RULE_FILL_TOO_NARROW, width, least);
    }
  if (is_joined && length < o->settings->least_piece_length)
    cost += size_price (o, RC_RULE_PIECE_TOO_SHORT, length, o->settings->least_piece_length);
  return cost;
}

static void
add_way (Oracle *o, Part *part, const RcLength *seams, const gboolean *steps, guint n)
{
  Way way = { .n_seams = n };
  Box below = { 0 };
  for (guint i = 0; i <= n; i++)
    {
      __int128 area;
      Box piece = find_piece (o, part, i == 0 ? part->box.y0 : seams[i - 1], i == n ? part->box.y1 : seams[i], &area);
      gboolean full = is_full_width (o, piece);
      way.cuts[way.n_cuts++] = (Cut){ full ? o->width : piece.x1 - piece.x0 + o->settings->trim_width,
                                      piece.y1 - piece.y0 + o->settings->trim_length };
      way.cost += weigh_piece (o, part, piece, area, n > 0);
      if (i > 0)
        {
          RcLength x0 = MAX (below.x0, piece.x0), x1 = MIN (below.x1, piece.x1), y = seams[i - 1];
          RcLength wider = MAX (below.x1 - below.x0, piece.x1 - piece.x0);
          if (!steps[i - 1] && (full || is_full_width (o, below)))
            return;
          if (x1 - x0 < o->settings->least_fill_width && x1 - x0 < wider)
            return;
          way.seams[i - 1] = y;
          way.cost += per_m (x1 - x0, o->weights->cross_seam_per_m) + o->weights->cross_seam_each
                      + o->settings->rule_cost[RC_RULE_EACH_SEAM]
                      + weigh_door (o, (RcPoint){ x0, y }, (RcPoint){ x1, y }, TRUE);
        }
      below = piece;
    }
  if (n > o->settings->most_joins)
    way.cost += o->settings->rule_cost[RC_RULE_TOO_MANY_JOINS];
  g_array_append_val (part->ways, way);
}

static guint
add_place (RcLength *places, guint n, const Part *part, RcLength y)
{
  for (guint i = 0; i < n; i++)
    if (places[i] == y)
      return n;
  if (y - part->box.y0 > RC_TICKS_PER_MM && part->box.y1 - y > RC_TICKS_PER_MM)
    places[n++] = y;
  return n;
}

static int
compare_lengths (gconstpointer a, gconstpointer b)
{
  RcLength x = *(const RcLength *)a, y = *(const RcLength *)b;
  return x < y ? -1 : x > y;
}

/* Every set of the places from `next` on, besides the seams there are: up to `joins` below and above the step. */
static void
add_sets (Oracle *o, Part *part, const RcLength *places, guint n_places, RcLength step, guint next, RcLength *seams,
          gboolean *steps, guint n, guint joins_left, guint joins)
{
  add_way (o, part, seams, steps, n);
  for (guint i = next; i < n_places; i++)
    {
      seams[n] = places[i];
      steps[n] = places[i] == step;
      if (steps[n] || joins_left > 0)
        add_sets (o, part, places, n_places, step, i + 1, seams, steps, n + 1, steps[n] ? joins : joins_left - 1,
                  joins);
    }
}

static void
find_ways (Oracle *o, Part *part)
{
  RcLength places[MOST_PLACES], step = G_MAXINT64;
  guint    n = 0, joins = o->settings->most_joins;
  if (part->both)
    {
      step = o->floor->low[0] != o->floor->low[1] ? MAX (o->floor->low[0], o->floor->low[1])
                                                  : MIN (o->floor->high[0], o->floor->high[1]);
      n = add_place (places, n, part, step);
    }
  n = add_place (places, n, part, part->box.y0 + o->settings->least_piece_length);
  n = add_place (places, n, part, part->box.y1 - o->settings->least_piece_length);
  RcPoint  c = o->door_from, d = o->door_to;
  RcLength aside = MAX (0, MAX (MIN (c.x, d.x) - part->box.x1, part->box.x0 - MAX (c.x, d.x)));
  if ((c.x != d.x || c.y != d.y) && aside < o->settings->door_distance)
    {
      RcLength reach = (RcLength)ceil (sqrt ((double)o->settings->door_distance * (double)o->settings->door_distance
                                             - (double)aside * (double)aside));
      n = add_place (places, n, part, MIN (c.y, d.y) - reach);
      n = add_place (places, n, part, MAX (c.y, d.y) + reach);
    }
  RcLength anchors[MOST_PLACES];
  guint    n_anchors = n;
  memcpy (anchors, places, sizeof anchors);
  anchors[n_anchors] = part->box.y1;
  for (guint a = 0; a <= n_anchors; a++)
    for (guint k = 2; k <= joins + 1; k++)
      for (guint i = 1; i < k; i++)
        {
          n = add_place (places, n, part, part->box.y0 + (anchors[a] - part->box.y0) * i / k);
          n = add_place (places, n, part, anchors[a] + (part->box.y1 - anchors[a]) * i / k);
        }
  g_assert_cmpuint (n, <, MOST_PLACES);
  qsort (places, n, sizeof *places, compare_lengths);
  RcLength seams[MOST_PLACES];
  gboolean steps[MOST_PLACES];
  add_sets (o, part, places, n, step, 0, seams, steps, 0, joins, joins);
}

/* --- strips --- */

static void
find_parts (Oracle *o, RcLength first)
{
  const OracleFloor *floor = o->floor;
  gboolean           alike = floor->low[0] == floor->low[1] && floor->high[0] == floor->high[1];
  o->n_parts = 0;
  o->fixed = 0;
  for (RcLength x = first; x < floor->x[2]; x += o->width)
    {
      RcLength x0 = MAX (x, floor->x[0]), x1 = MIN (x + o->width, floor->x[2]);
      gboolean left = x0<floor->x[1], right = x1> floor->x[1];
      Part                                       *part = &o->parts[o->n_parts++];
      *part = (Part){ .ways = g_array_new (FALSE, FALSE, sizeof (Way)) };
      part->both = left && right && !alike;
      part->box = (Box){ x0, x1, left ? floor->low[0] : floor->low[1], left ? floor->high[0] : floor->high[1] };
      if (left && right)
        {
          part->box.y0 = MIN (floor->low[0], floor->low[1]);
          part->box.y1 = MAX (floor->high[0], floor->high[1]);
        }
      if (o->n_parts == 1)
        continue;
      /* The side seam to the strip before. */
      RcLength low
          = MAX (x0 <= floor->x[1] ? floor->low[0] : floor->low[1], x0 >= floor->x[1] ? floor->low[1] : floor->low[0]);
      RcLength high = MIN (x0 <= floor->x[1] ? floor->high[0] : floor->high[1],
                           x0 >= floor->x[1] ? floor->high[1] : floor->high[0]);
      part->seamed = (part - 1)->seamed = TRUE;
      o->fixed += per_m (high - low, o->weights->side_seam_per_m) + o->settings->rule_cost[RC_RULE_EACH_SEAM]
                  + weigh_door (o, (RcPoint){ x0, low }, (RcPoint){ x0, high }, FALSE);
    }
}

static RcMoney
weigh_stagger (const Oracle *o, const Way *a, const Way *b)
{
  RcMoney cost = 0;
  for (guint i = 0; i < a->n_seams; i++)
    for (guint k = 0; k < b->n_seams; k++)
      if (ABS (a->seams[i] - b->seams[k]) < o->settings->stagger)
        cost
            += size_price (o, RC_RULE_CROSS_SEAMS_NOT_STAGGERED, ABS (a->seams[i] - b->seams[k]), o->settings->stagger);
  return cost;
}

static void
try_parts (Oracle *o, guint next, const Way *before, const Cut *cuts, guint n_cuts, RcLength drops, __int128 area,
           RcMoney cost)
{
  RcLength step = o->carpet->length_step, least = drops + (RcLength)((area + o->width - 1) / o->width);
  if (cost + per_m (rc_length_round_up (least, step), o->weights->carpet_per_m) >= o->best)
    return;
  if (next == o->n_parts)
    {
      Cut own[MOST_PIECES];
      memcpy (own, cuts, n_cuts * sizeof *own);
      cost += per_m (rc_length_round_up (drops + recall_length (o, own, n_cuts), step), o->weights->carpet_per_m);
      o->best = MIN (o->best, cost);
      return;
    }
  for (guint w = 0; w < o->parts[next].ways->len; w++)
    {
      const Way *way = &g_array_index (o->parts[next].ways, Way, w);
      Cut        more[MOST_PIECES];
      guint      n = n_cuts;
      RcLength   full = drops;
      __int128   covered = area;
      if (n_cuts > 0)
        memcpy (more, cuts, n_cuts * sizeof *more);
      for (guint i = 0; i < way->n_cuts; i++)
        if (way->cuts[i].w == o->width)
          full += way->cuts[i].h;
        else
          {
            g_assert_cmpuint (n, <, MOST_PIECES);
            more[n++] = way->cuts[i];
            covered += (__int128)way->cuts[i].w * way->cuts[i].h;
          }
      try_parts (o, next + 1, way, more, n, full, covered,
                 cost + way->cost + (before != NULL ? weigh_stagger (o, before, way) : 0));
    }
}

RcMoney
oracle_find_least_cost (const OracleFloor *floor, const RcSettings *settings, const RcGoods *carpet,
                        const RcPlanWeights *weights, RcPoint door_from, RcPoint door_to)
{
  Oracle o
      = { .floor = floor, .settings = settings, .weights = weights, .carpet = carpet, .width = carpet->roll_width };
  RcLength least = settings->least_fill_width;
  RcLength lines[] = { floor->x[0], floor->x[1], floor->x[2], floor->x[0] + least, floor->x[2] - least };
  o.door_from = door_from;
  o.door_to = door_to;
  o.best = G_MAXINT64;
  o.lengths = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  for (guint l = 0; l < G_N_ELEMENTS (lines); l++)
    {
      RcLength first = lines[l];
      while (first > floor->x[0])
        first -= o.width;
      while (first + o.width <= floor->x[0])
        first += o.width;
      find_parts (&o, first);
      for (guint p = 0; p < o.n_parts; p++)
        find_ways (&o, &o.parts[p]);
      try_parts (&o, 0, NULL, NULL, 0, 0, 0, o.fixed);
      for (guint p = 0; p < o.n_parts; p++)
        g_array_unref (o.parts[p].ways);
    }
  g_hash_table_unref (o.lengths);
  return o.best;
}
