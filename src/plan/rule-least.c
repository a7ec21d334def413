#include "rule-least.h"

#include <math.h>

/* What is that near to the end of something may be rounded out of it. */
#define NEAR 4

/* Seams between two places that break a rule wherever they lie there. */
typedef struct
{
  RcRule   rule;
  RcLength from, to; /* both not among them */
} Reach;

/* A seam that runs along one axis, seen as if that were x. */
typedef struct
{
  const RcSite *site;
  RcSeamKind    kind;
  RcBox         box;
  GArray       *reaches; /* of Reach, in y */
} Look;

static RcPoint
turn (const Look *self, RcPoint point)
{
  return self->kind == RC_SEAM_CROSS ? point : (RcPoint){ point.y, point.x };
}

static void
add_reach (Look *self, RcRule rule, double from, double to)
{
  Reach reach = { rule, (RcLength)ceil (from) + NEAR, (RcLength)floor (to) - NEAR };
  if (reach.from < reach.to && reach.to > self->box.y0 && reach.from < self->box.y1)
    g_array_append_val (self->reaches, reach);
}

/* Ways within 45 degrees of the seam are along it, not across. */
static void
add_way (Look *self, const RcSiteWay *way)
{
  RcPoint from = turn (self, way->from), to = turn (self, way->to);
  if (from.y > to.y)
    {
      RcPoint kept = from;
      from = to;
      to = kept;
    }
  double dx = (double)(to.x - from.x), dy = (double)(to.y - from.y), low = (double)from.y, high = (double)to.y;
  if (fabs (dx) > dy || dy == 0)
    return;
  double x0 = (double)self->box.x0 + NEAR, x1 = (double)self->box.x1 - NEAR;
  if (dx == 0 && ((double)from.x <= x0 || (double)from.x >= x1))
    return;
  if (dx != 0)
    {
      double a = low + (x0 - (double)from.x) * dy / dx, b = low + (x1 - (double)from.x) * dy / dx;
      low = MAX (low, MIN (a, b));
      high = MIN (high, MAX (a, b));
    }
  add_reach (self, RC_RULE_SEAM_ACROSS_TRAFFIC, low, high);
}

/* Where the seam is nearer to the door than it should be. */
static void
add_door (Look *self, const RcSiteOpening *door)
{
  RcPoint from = turn (self, door->from), to = turn (self, door->to);
  double  distance = (double)(self->site->settings->door_distance - NEAR);
  double  apart = (double)MAX (0, MAX (MIN (from.x, to.x) - self->box.x1, self->box.x0 - MAX (from.x, to.x)));
  if ((from.x != to.x && from.y != to.y) || apart >= distance)
    return;
  double reach = sqrt (distance * distance - apart * apart);
  double low = (double)MIN (from.y, to.y), high = (double)MAX (from.y, to.y);
  /* A seam through the doorway is told by its distance from the jambs alone. */
  add_reach (self, RC_RULE_CROSS_SEAM_AT_DOOR, low - reach, low + reach);
  add_reach (self, RC_RULE_CROSS_SEAM_AT_DOOR, high - reach, high + reach);
}

/* FALSE only if no point inside the box is on the edge. */
static gboolean
may_meet (RcBox box, const RcPoint *a, const RcPoint *b)
{
  double t0 = 0, t1 = 1, from[] = { (double)a->x, (double)a->y };
  double steps[] = { (double)(b->x - a->x), (double)(b->y - a->y) };
  double low[] = { (double)box.x0, (double)box.y0 }, high[] = { (double)box.x1, (double)box.y1 };
  for (int i = 0; i < 2; i++)
    {
      if (steps[i] == 0 && (from[i] <= low[i] || from[i] >= high[i]))
        return FALSE;
      if (steps[i] == 0)
        continue;
      double at = (low[i] - from[i]) / steps[i], until = (high[i] - from[i]) / steps[i];
      t0 = MAX (t0, MIN (at, until));
      t1 = MIN (t1, MAX (at, until));
    }
  return t0 <= t1;
}

static gboolean
may_meet_ring (RcBox box, const RcRing *ring)
{
  for (guint i = 0, j = ring->len - 1; i < ring->len; j = i++)
    if (may_meet (box, rc_ring_get (ring, j), rc_ring_get (ring, i)))
      return TRUE;
  return FALSE;
}

/* TRUE if all of the box, in the site's frame, is floor of the room. */
static gboolean
is_within (const RcSite *site, const RcPlacedRoom *placed, RcBox box)
{
  for (guint i = 0; i < site->rooms->len; i++)
    {
      const RcSiteRoom *room = g_ptr_array_index (site->rooms, i);
      if (room->placed != placed)
        continue;
      gboolean meets = may_meet_ring (box, room->polygon->outer);
      for (guint h = 0; h < room->polygon->holes->len && !meets; h++)
        meets = may_meet_ring (box, g_ptr_array_index (room->polygon->holes, h));
      return !meets && rc_polygon_locate (room->polygon, (RcPoint){ (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 }) > 0;
    }
  return FALSE;
}

/* A window along the seam, in front of part of it, with floor of its room wherever the seam may pass it. */
static void
add_window (Look *self, const RcSiteOpening *window)
{
  RcPoint from = turn (self, window->from), to = turn (self, window->to);
  RcBox   box = self->box, before = { MIN (from.x, to.x), box.y0 - NEAR, MAX (from.x, to.x), box.y1 + NEAR };
  if (from.y != to.y || before.x1 <= box.x0 + NEAR || before.x0 >= box.x1 - NEAR)
    return;
  if (self->kind == RC_SEAM_SIDE)
    before = (RcBox){ before.y0, before.x0, before.y1, before.x1 };
  if (is_within (self->site, window->room, before))
    add_reach (self, RC_RULE_SEAM_ACROSS_LIGHT, (double)box.y0 - 3 * NEAR, (double)box.y1 + 3 * NEAR);
}

static RcMoney
weigh_at (const Look *self, RcLength y)
{
  gboolean breaks[RC_N_RULES] = { FALSE };
  RcMoney  cost = 0;
  for (guint i = 0; i < self->reaches->len; i++)
    {
      const Reach *reach = &g_array_index (self->reaches, Reach, i);
      breaks[reach->rule] |= y > reach->from && y < reach->to;
    }
  for (guint r = 0; r < RC_N_RULES; r++)
    cost += breaks[r] ? self->site->settings->rule_cost[r] : 0;
  return cost;
}

/* Between ends of reaches nothing changes, and at an end no more is broken than beside it. */
static RcMoney
find_least (const Look *self)
{
  RcMoney least = MIN (weigh_at (self, self->box.y0), weigh_at (self, self->box.y1));
  for (guint i = 0; i < self->reaches->len; i++)
    {
      const Reach *reach = &g_array_index (self->reaches, Reach, i);
      if (reach->from > self->box.y0)
        least = MIN (least, weigh_at (self, reach->from));
      if (reach->to < self->box.y1)
        least = MIN (least, weigh_at (self, reach->to));
    }
  return least;
}

static RcMoney
weigh (const RcSite *site, RcSeamKind kind, RcBox box)
{
  Look self = { site, kind, box, NULL };
  if (box.x0 >= box.x1)
    return 0;
  self.reaches = g_array_new (FALSE, FALSE, sizeof (Reach));
  for (guint i = 0; i < site->ways->len; i++)
    add_way (&self, &g_array_index (site->ways, RcSiteWay, i));
  for (guint i = 0; i < site->doors->len && kind == RC_SEAM_CROSS; i++)
    add_door (&self, &g_array_index (site->doors, RcSiteOpening, i));
  for (guint i = 0; i < site->windows->len; i++)
    add_window (&self, &g_array_index (site->windows, RcSiteOpening, i));
  RcMoney least = find_least (&self);
  g_array_unref (self.reaches);
  return least;
}

RcMoney
rc_rules_weigh_side_least (const RcSite *site, RcBox box)
{
  return weigh (site, RC_SEAM_SIDE, (RcBox){ box.y0, box.x0, box.y1, box.x1 });
}

RcMoney
rc_rules_weigh_cross_least (const RcSite *site, RcBox box)
{
  return weigh (site, RC_SEAM_CROSS, box);
}
