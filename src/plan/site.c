#include "site.h"

#include <math.h>

#include "pattern.h"
#include "site-pins.h"

static void
site_room_free (gpointer data)
{
  RcSiteRoom *room = data;
  rc_polygon_free (room->polygon);
  g_free (room);
}

static RcPolygon *
turn_polygon (const RcPolygon *polygon, double degrees)
{
  g_autoptr (GPtrArray) region = rc_region_new ();
  g_ptr_array_add (region, rc_polygon_copy (polygon));
  g_autoptr (GPtrArray) turned = rc_region_rotate (region, degrees);
  return g_ptr_array_steal_index (turned, 0);
}

gboolean
rc_site_has_room (const RcSite *site, const RcPlacedRoom *room)
{
  for (guint i = 0; i < site->rooms->len; i++)
    if (((RcSiteRoom *)g_ptr_array_index (site->rooms, i))->placed == room)
      return TRUE;
  return FALSE;
}

/* Of the two sides of the wall a leaf sweeps the one where the door's first room lies, or the other. */
static void
find_sweep (const RcSite *site, RcSiteOpening *door)
{
  RcSweep         *sweep = &door->sweep;
  const RcOpening *opening = door->opening;
  gboolean         far = opening->swing == RC_SWING_OUT;
  if (opening->swing == RC_SWING_NONE || opening->kind != RC_OPENING_DOOR)
    return;
  RcPoint start = far ? door->far_from : door->from, end = far ? door->far_to : door->to;
  RcPoint hinge = opening->hinge_at_end ? end : start, latch = opening->hinge_at_end ? start : end;
  sweep->hinge = hinge;
  sweep->reach = hypot ((double)(latch.x - hinge.x), (double)(latch.y - hinge.y));
  if (sweep->reach < 1)
    {
      sweep->reach = 0;
      return;
    }
  sweep->along_x = (double)(latch.x - hinge.x) / sweep->reach;
  sweep->along_y = (double)(latch.y - hinge.y) / sweep->reach;
  sweep->into_x = -sweep->along_y;
  sweep->into_y = sweep->along_x;

  RcPoint near = rc_site_opening_get_middle (door);
  RcPoint probe
      = { near.x + (RcLength)(sweep->into_x * 5 * RC_SLIVER), near.y + (RcLength)(sweep->into_y * 5 * RC_SLIVER) };
  gboolean inside = rc_polygon_locate (door->room->polygon, rc_point_rotate (probe, -site->turn_degrees)) > 0;
  if (inside == far)
    {
      sweep->into_x = -sweep->into_x;
      sweep->into_y = -sweep->into_y;
    }
}

static RcPoint
add (RcPoint a, RcPoint b)
{
  return (RcPoint){ a.x + b.x, a.y + b.y };
}

static RcPoint
subtract (RcPoint a, RcPoint b)
{
  return (RcPoint){ a.x - b.x, a.y - b.y };
}

static void
add_opening (RcSite *site, const RcPlacedOpening *placed)
{
  const RcPlacedRoom *room = rc_house_find_room (site->house, placed->room->id);
  /* A door that names a room but does not stand against it is, for the carpet, a door out of the area. */
  const RcPlacedRoom *other = placed->joins ? rc_house_find_room (site->house, placed->other->id) : NULL;
  if (!rc_site_has_room (site, room) && (other == NULL || !rc_site_has_room (site, other)))
    return;

  RcSiteOpening opening = {
    .opening = placed->opening,
    .room = room,
    .other = other,
    .from = rc_point_rotate (placed->from, site->turn_degrees),
    .to = rc_point_rotate (placed->to, site->turn_degrees),
    .outward = rc_point_rotate (placed->outward, site->turn_degrees),
    .blocked = placed->blocked,
  };
  if (other != NULL && rc_site_has_room (site, other))
    {
      opening.far_from = rc_point_rotate (placed->other_from, site->turn_degrees);
      opening.far_to = rc_point_rotate (placed->other_to, site->turn_degrees);
    }
  else
    {
      opening.far_from = add (opening.from, opening.outward);
      opening.far_to = add (opening.to, opening.outward);
    }
  if (!rc_site_has_room (site, room)) /* the wall is as deep as it was measured, wherever that room lies */
    {
      opening.from = subtract (opening.far_from, opening.outward);
      opening.to = subtract (opening.far_to, opening.outward);
    }
  find_sweep (site, &opening);
  g_array_append_val (placed->opening->kind == RC_OPENING_WINDOW ? site->windows : site->doors, opening);
}

static gboolean
share_room (const RcSite *site, const RcSiteOpening *p, const RcSiteOpening *q)
{
  if (p->room == q->room && rc_site_has_room (site, p->room))
    return TRUE;
  return (p->room == q->other && rc_site_has_room (site, p->room))
         || (p->other != NULL && (p->other == q->room || p->other == q->other) && rc_site_has_room (site, p->other));
}

/* Between any two doors of one room of the area. */
static void
find_ways (RcSite *site)
{
  for (guint i = 0; i < site->doors->len; i++)
    for (guint j = i + 1; j < site->doors->len; j++)
      {
        const RcSiteOpening *p = &g_array_index (site->doors, RcSiteOpening, i);
        const RcSiteOpening *q = &g_array_index (site->doors, RcSiteOpening, j);
        RcSiteWay            way = { i, j, rc_site_opening_get_middle (p), rc_site_opening_get_middle (q) };
        if (share_room (site, p, q))
          g_array_append_val (site->ways, way);
      }
}

RcSite *
rc_site_new (const RcJob *job, const RcHouse *house, const RcFloorArea *area, const RcGoods *carpet,
             const RcPlanWeights *weights, double turn_degrees)
{
  RcSite *site = g_new0 (RcSite, 1);
  site->settings = &job->settings;
  site->style = rc_job_get_length_style (job);
  site->area = area;
  site->house = house;
  site->carpet = carpet;
  site->weights = *weights;
  site->turn_degrees = turn_degrees;
  site->roll_width = rc_goods_get_usable_width (carpet);
  site->strip_width = rc_goods_compute_matching_width (carpet);
  site->repeat = carpet->repeat_length;
  site->across_repeat = rc_pattern_compute_across_repeat (carpet);
  site->rooms = g_ptr_array_new_with_free_func (site_room_free);
  site->doors = g_array_new (FALSE, FALSE, sizeof (RcSiteOpening));
  site->windows = g_array_new (FALSE, FALSE, sizeof (RcSiteOpening));
  site->ways = g_array_new (FALSE, FALSE, sizeof (RcSiteWay));

  for (guint i = 0; i < area->rooms->len; i++)
    {
      const RcPlacedRoom *placed = rc_house_find_room (house, g_ptr_array_index (area->rooms, i));
      if (placed == NULL)
        continue;
      RcSiteRoom *room = g_new0 (RcSiteRoom, 1);
      room->placed = placed;
      room->polygon = turn_polygon (placed->polygon, turn_degrees);
      g_ptr_array_add (site->rooms, room);
    }
  for (guint i = 0; i < house->openings->len; i++)
    add_opening (site, g_ptr_array_index (house->openings, i));
  find_ways (site);
  site->pins = rc_site_pins_new (site);
  return site;
}

void
rc_site_free (RcSite *site)
{
  if (site == NULL)
    return;
  g_clear_pointer (&site->rooms, g_ptr_array_unref);
  g_clear_pointer (&site->doors, g_array_unref);
  g_clear_pointer (&site->windows, g_array_unref);
  g_clear_pointer (&site->ways, g_array_unref);
  g_clear_pointer (&site->pins, g_ptr_array_unref);
  g_free (site);
}

static RcPoint
step_towards (RcPoint near, RcPoint far, int halves)
{
  if (halves == 2)
    return far;
  return (RcPoint){ near.x + (far.x - near.x) * halves / 2, near.y + (far.y - near.y) * halves / 2 };
}

RcPoint
rc_site_opening_get_middle (const RcSiteOpening *opening)
{
  return (RcPoint){ (opening->from.x + opening->to.x) / 2, (opening->from.y + opening->to.y) / 2 };
}

RcPoint
rc_site_opening_get_from (const RcSiteOpening *opening, int halves)
{
  return step_towards (opening->from, opening->far_from, halves);
}

RcPoint
rc_site_opening_get_to (const RcSiteOpening *opening, int halves)
{
  return step_towards (opening->to, opening->far_to, halves);
}

gboolean
rc_site_is_in_doorway (const RcSite *site, RcBox box)
{
  for (guint i = 0; i < site->doors->len; i++)
    {
      const RcSiteOpening *door = &g_array_index (site->doors, RcSiteOpening, i);
      if (box.x0 >= MIN (MIN (door->from.x, door->to.x), MIN (door->far_from.x, door->far_to.x))
          && box.x1 <= MAX (MAX (door->from.x, door->to.x), MAX (door->far_from.x, door->far_to.x))
          && box.y0 >= MIN (MIN (door->from.y, door->to.y), MIN (door->far_from.y, door->far_to.y))
          && box.y1 <= MAX (MAX (door->from.y, door->to.y), MAX (door->far_from.y, door->far_to.y)))
        return TRUE;
    }
  return FALSE;
}

const RcRoom *
rc_site_find_room (const RcSite *site, RcPoint point)
{
  for (guint i = 0; i < site->rooms->len; i++)
    {
      const RcSiteRoom *room = g_ptr_array_index (site->rooms, i);
      if (rc_polygon_locate (room->polygon, point) >= 0)
        return room->placed->room;
    }
  return NULL;
}

gint64
rc_weigh (RcLength length, gint64 per_m)
{
  return (gint64)(((__int128)length * per_m + RC_TICKS_PER_M / 2) / RC_TICKS_PER_M);
}

RcLength
rc_wrap (RcLength value, RcLength modulus)
{
  RcLength remainder = value % modulus;
  return remainder < 0 ? remainder + modulus : remainder;
}
