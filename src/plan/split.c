#include "split.h"

#include <math.h>

/* No more offcuts than this are tried for one fill, the longest first. */
#define MOST_OFFCUTS 4

void
rc_splitting_init (RcSplitting *splitting)
{
  *splitting = (RcSplitting){ .offcuts = g_array_new (FALSE, FALSE, sizeof (RcOffcut)), .stamp = 1 };
}

void
rc_splitting_clear (RcSplitting *splitting)
{
  g_array_unref (splitting->offcuts);
}

static int
compare_offcuts (gconstpointer a, gconstpointer b)
{
  const RcOffcut *x = a, *y = b;
  if (x->length != y->length)
    return x->length > y->length ? -1 : 1;
  return x->width > y->width ? -1 : x->width < y->width;
}

void
rc_splitting_set_offcuts (RcSplitting *splitting, const RcSite *site, const GPtrArray *cuts, const GPtrArray *rolls)
{
  GArray *offcuts = splitting->offcuts;
  if (cuts == NULL && rolls == NULL && offcuts->len == 0)
    return;
  g_array_set_size (offcuts, 0);
  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    {
      const RcNestCut *cut = g_ptr_array_index (cuts, i);
      RcOffcut         offcut = { site->roll_width - cut->width, cut->length };
      if (offcut.width >= site->settings->least_fill_width)
        g_array_append_val (offcuts, offcut);
    }
  for (guint i = 0; rolls != NULL && i < rolls->len; i++)
    {
      const RcNestRoll *roll = g_ptr_array_index (rolls, i);
      RcOffcut          offcut = { site->roll_width, roll->length };
      if (roll->length > 0)
        g_array_append_val (offcuts, offcut);
    }
  g_array_sort (offcuts, compare_offcuts);
  splitting->stamp++;
}

RcLength
rc_split_compute_longest (const RcSite *site)
{
  RcLength longest = rc_goods_compute_longest (site->carpet);
  return longest == G_MAXINT64 ? longest : MAX (1, longest - site->settings->trim_length);
}

/* Keeps those inside the box, sorted, each once. */
static GArray *
settle (GArray *places, RcBox box)
{
  guint kept = 0;
  g_array_sort (places, rc_length_compare);
  for (guint i = 0; i < places->len; i++)
    {
      RcLength y = g_array_index (places, RcLength, i);
      if (y - box.y0 > RC_SLIVER && box.y1 - y > RC_SLIVER
          && (kept == 0 || y != g_array_index (places, RcLength, kept - 1)))
        g_array_index (places, RcLength, kept++) = y;
    }
  g_array_set_size (places, kept);
  return places;
}

static void
add (GArray *places, RcLength y)
{
  g_array_append_val (places, y);
}

/* How far up and down from a door a seam between box.x0 and box.x1 is nearer to it than `distance`. */
static void
add_around (GArray *places, RcBox box, RcPoint a, RcPoint b, RcLength distance)
{
  RcLength low = MIN (a.y, b.y), high = MAX (a.y, b.y);
  RcLength apart = MAX (0, MAX (MIN (a.x, b.x) - box.x1, box.x0 - MAX (a.x, b.x)));
  if (apart >= distance)
    return;
  RcLength reach = (RcLength)ceil (sqrt ((double)distance * (double)distance - (double)apart * (double)apart));
  add (places, low - reach);
  add (places, high + reach);
}

static void
add_rule_places (GArray *places, const RcSite *site, RcBox box)
{
  const RcSettings *settings = site->settings;
  add (places, box.y0 + settings->least_piece_length);
  add (places, box.y1 - settings->least_piece_length);
  RcLength longest = rc_split_compute_longest (site);
  if (longest < box.y1 - box.y0)
    {
      add (places, box.y0 + longest);
      add (places, box.y1 - longest);
    }
  for (guint i = 0; i < site->doors->len; i++)
    {
      const RcSiteOpening *door = &g_array_index (site->doors, RcSiteOpening, i);
      add_around (places, box, door->from, door->to, settings->door_distance);
      if (door->opening->swing != RC_SWING_NONE && door->opening->width > settings->door_distance)
        add_around (places, box, door->from, door->to, door->opening->width);
    }
}

static void
add_offcut_places (GArray *places, const RcSite *site, RcBox box, RcLength cut_width, const GArray *offcuts)
{
  guint n = 0;
  for (guint i = 0; i < offcuts->len && n < MOST_OFFCUTS; i++)
    {
      const RcOffcut *offcut = &g_array_index (offcuts, RcOffcut, i);
      RcLength        length = offcut->length - site->settings->trim_length;
      if (offcut->width < cut_width || length < site->settings->least_piece_length || length >= box.y1 - box.y0)
        continue;
      add (places, box.y0 + length);
      add (places, box.y1 - length);
      n++;
    }
}

GArray *
rc_split_find_rule_places (const RcSite *site, RcBox box)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (RcLength));
  add_rule_places (places, site, box);
  return settle (places, box);
}

GArray *
rc_split_find_offcut_places (const RcSite *site, RcBox box, RcLength cut_width, const GArray *offcuts)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (RcLength));
  add_offcut_places (places, site, box, cut_width, offcuts);
  return settle (places, box);
}

static void
add_equal_places (GArray *places, RcLength y0, RcLength y1, guint most_pieces)
{
  for (guint n = 2; n <= most_pieces; n++)
    for (guint i = 1; i < n; i++)
      add (places, y0 + (y1 - y0) * i / n);
}

GArray *
rc_split_find_all_places (const RcSite *site, RcBox box, RcLength cut_width, const GArray *offcuts, const GArray *steps,
                          guint most_pieces)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (RcLength));
  add_rule_places (places, site, box);
  add_offcut_places (places, site, box, cut_width, offcuts);
  settle (places, box);
  guint n_anchors = places->len;
  add_equal_places (places, box.y0, box.y1, most_pieces);
  for (guint i = 0; i < n_anchors + steps->len; i++)
    {
      RcLength y = i < n_anchors ? g_array_index (places, RcLength, i) : g_array_index (steps, RcLength, i - n_anchors);
      add_equal_places (places, box.y0, y, most_pieces);
      add_equal_places (places, y, box.y1, most_pieces);
    }
  return settle (places, box);
}
