/* Tack strip round stretched rooms and on stairs. */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "passage.h"
#include "reason.h"
#include "take-off.h"

/* How far a ring reaches along and across the direction dx, dy (a wall's). Exact for walls along the axes. */
static void
compute_reach (const RcRing *ring, double dx, double dy, double *along, double *across)
{
  double length = hypot (dx, dy);
  double along_min = INFINITY, along_max = -INFINITY, across_min = INFINITY, across_max = -INFINITY;

  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *point = rc_ring_get (ring, i);
      double         x = (double)point->x, y = (double)point->y;
      double         here_along = (x * dx + y * dy) / length, here_across = (y * dx - x * dy) / length;

      along_min = MIN (along_min, here_along);
      along_max = MAX (along_max, here_along);
      across_min = MIN (across_min, here_across);
      across_max = MAX (across_max, here_across);
    }
  *along = along_max - along_min;
  *across = across_max - across_min;
}

/* The longer side of the least rectangle that lies along one of the walls. */
static RcLength
compute_longer_side (const RcRing *ring)
{
  double least_area = INFINITY, longer_side = 0;

  for (guint i = 0; i < ring->len; i++)
    {
      const RcPoint *from = rc_ring_get (ring, i), *to = rc_ring_get (ring, (i + 1) % ring->len);
      double         along, across;

      if (from->x == to->x && from->y == to->y)
        continue;
      compute_reach (ring, (double)(to->x - from->x), (double)(to->y - from->y), &along, &across);
      if (along * across < least_area)
        {
          least_area = along * across;
          longer_side = MAX (along, across);
        }
    }
  return (RcLength)llround (longer_side);
}

static RcLength
compute_boundary (const RcPolygon *polygon)
{
  RcLength length = rc_ring_compute_length (polygon->outer);

  for (guint i = 0; i < polygon->holes->len; i++)
    length += rc_ring_compute_length (g_ptr_array_index (polygon->holes, i));
  return length;
}

/* Doors and archways in a room's walls, those measured only from the other room too (CRI 2015 11.1, p. 18: no strip
 * across door openings). */
static RcLength
sum_openings (const RcHouse *house, const RcRoom *room)
{
  RcLength sum = 0;

  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (room->openings, i);

      if (rc_opening_is_passage (opening))
        sum += opening->width;
    }
  for (guint i = 0; i < house->openings->len; i++)
    {
      const RcPlacedOpening *placed = g_ptr_array_index (house->openings, i);

      if (placed->other == room && rc_opening_is_passage (placed->opening)
          && rc_placed_opening_find_other_side (placed) == NULL)
        sum += placed->opening->width;
    }
  return sum;
}

/* Edges of the floor without strip: at things that are to have none. */
static RcLength
sum_bare_edges (const RcPlacedRoom *room)
{
  RcLength sum = 0;

  for (guint i = 0; i < room->room->cutouts->len; i++)
    {
      const RcCutout *cutout = g_ptr_array_index (room->room->cutouts, i);

      if (!cutout->strip)
        sum += rc_cutout_compute_edge (cutout, room->polygon, room->at);
    }
  return sum;
}

RcLength
rc_room_compute_strip (const RcHouse *house, const RcPlacedRoom *room, RcLength double_from, RcLength *boundary,
                       RcLength *openings, gboolean *doubled)
{
  RcLength around = compute_boundary (room->polygon) - sum_bare_edges (room);
  RcLength passages = sum_openings (house, room->room);
  gboolean twice = double_from > 0 && compute_longer_side (room->polygon->outer) > double_from;

  if (boundary != NULL)
    *boundary = around;
  if (openings != NULL)
    *openings = passages;
  if (doubled != NULL)
    *doubled = twice;
  return MAX (0, around - passages) * (twice ? 2 : 1);
}

RcLength
rc_stair_get_inner_width (const RcStair *stair, guint step)
{
  /* CRI 2011 17.2, p. 19: turned edges, strip and cushion about 1 1/2 in less than the carpet's width. */
  const RcLength turned_edges = 3 * RC_TICKS_PER_INCH / 2;
  RcLength       width = rc_stair_get_step (stair, step).width;

  return stair->width_extra > 0 ? MAX (0, width - turned_edges) : width;
}

/* One on each tread; for waterfall also one on each riser; for cap and band none there (CRI 2011 17.2). */
static guint
get_strips_per_step (const RcStair *stair)
{
  return stair->style == RC_STAIR_WATERFALL ? 2 : 1;
}

RcLength
rc_stair_compute_strip (const RcStair *stair)
{
  RcLength sum = 0;

  for (guint i = 1; i <= rc_stair_count_steps (stair); i++)
    {
      RcStairStep step = rc_stair_get_step (stair, i);

      sum += rc_stair_get_inner_width (stair, i) * get_strips_per_step (stair);
      /* A landing is held at its two sides too: common practice, no source. */
      if (step.turn != NULL && step.turn->kind == RC_TURN_LANDING)
        sum += 2 * step.going;
    }
  return sum;
}

/* "Living room 70' less openings 5' 4", twice: longer than 30'". */
static char *
format_room (const RcPlan *plan, const RcPlacedRoom *room)
{
  RcLength         double_from = plan->job->settings.strip_double_from, boundary, openings;
  gboolean         doubled;
  g_autofree char *printed_boundary = NULL, *printed_openings = NULL, *printed_limit = NULL;
  GString         *text = g_string_new (NULL);

  rc_room_compute_strip (plan->house, room, double_from, &boundary, &openings, &doubled);
  printed_boundary = rc_reason_format_length (plan, boundary);
  printed_openings = rc_reason_format_length (plan, openings);
  printed_limit = rc_reason_format_length (plan, double_from);
  if (openings > 0)
    g_string_append_printf (text, _ ("%s %s less openings %s"), room->room->name, printed_boundary, printed_openings);
  else
    g_string_append_printf (text, "%s %s", room->room->name, printed_boundary);
  if (doubled)
    g_string_append_printf (text, _ (", twice: longer than %s"), printed_limit);
  return g_string_free (text, FALSE);
}

/* "Stairs: 13 steps × 2 strips of 2' 10 1/2"", with what the turns and the curved step add. */
static char *
format_stair (const RcPlan *plan, const RcStair *stair)
{
  RcLength         inner = rc_stair_get_inner_width (stair, rc_stair_get_plain_step (stair));
  guint            n_strips = get_strips_per_step (stair), n_steps = rc_stair_count_steps (stair);
  g_autofree char *width = rc_reason_format_length (plan, inner);
  g_autofree char *strips = g_strdup_printf (ngettext ("%u strip of %s", "%u strips of %s", n_strips), n_strips, width);
  g_autofree char *all = NULL, *extra = NULL;
  RcLength         over = rc_stair_compute_strip (stair) - inner * n_strips * n_steps;

  all = g_strdup_printf (ngettext ("%s: %u step × %s", "%s: %u steps × %s", n_steps), stair->name, n_steps, strips);
  if (over == 0)
    return g_steal_pointer (&all);
  extra = rc_reason_format_length (plan, over);
  return g_strdup_printf (_ ("%s and %s at turns and wider steps"), all, extra);
}

/* Sums the strip of the stretched rooms and the stairs; with `reason` (nullable) the words too. */
static gboolean
sum_strip (const RcPlan *plan, RcLength *sum, GString *reason, GError **error)
{
  const GPtrArray *stairs = plan->measure->stairs;

  *sum = 0;
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcFloorArea *area = ((const RcAreaPlan *)g_ptr_array_index (plan->areas, i))->area;

      for (guint j = 0; area->fixing == RC_FIXING_STRETCH && j < area->rooms->len; j++)
        {
          const RcPlacedRoom *room = rc_house_find_room (plan->house, g_ptr_array_index (area->rooms, j));
          RcLength            double_from = plan->job->settings.strip_double_from;

          if (room == NULL)
            continue;
          if (!rc_take_off_sum (sum, rc_room_compute_strip (plan->house, room, double_from, NULL, NULL, NULL),
                                _ ("Tack strip"), error))
            return FALSE;
          if (reason != NULL)
            rc_reason_add_part (reason, format_room (plan, room));
        }
    }
  for (guint i = 0; i < stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (stairs, i);

      if (!rc_take_off_sum (sum, rc_stair_compute_strip (stair), _ ("Tack strip"), error))
        return FALSE;
      if (reason != NULL)
        rc_reason_add_part (reason, format_stair (plan, stair));
    }
  return TRUE;
}

RcLength
rc_quantity_compute_strip (const RcPlan *plan)
{
  RcLength sum;

  return sum_strip (plan, &sum, NULL, NULL) ? sum : 0;
}

gboolean
rc_take_off_add_strip (RcTakeOff *take_off, GError **error)
{
  g_autoptr (GString) reason = g_string_new (NULL);
  const RcGoods *goods;
  RcPacking      packing;
  RcLength       length;

  if (!sum_strip (take_off->plan, &length, reason, error))
    return FALSE;
  if (length == 0)
    return TRUE;
  goods = rc_take_off_find_kind (take_off, RC_GOODS_STRIP, error);
  if (goods == NULL || !rc_packing_from_length (goods, length, &packing, error))
    return FALSE;
  rc_take_off_add_goods (take_off, goods, &packing, g_strdup (reason->str));
  return TRUE;
}
