#include "rule.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "site-pins.h"

typedef __int128 Wide;

static Wide
dot (RcPoint a, RcPoint b)
{
  return (Wide)a.x * b.x + (Wide)a.y * b.y;
}

static Wide
cross (RcPoint a, RcPoint b)
{
  return (Wide)a.x * b.y - (Wide)a.y * b.x;
}

static RcPoint
subtract (RcPoint a, RcPoint b)
{
  return (RcPoint){ a.x - b.x, a.y - b.y };
}

/* The point a part t of the way from a to b. */
static RcPoint
go_along (RcPoint a, RcPoint b, double t)
{
  return (RcPoint){ a.x + llround (t * (double)(b.x - a.x)), a.y + llround (t * (double)(b.y - a.y)) };
}

/* TRUE if the directions are within 45 degrees of each other, either way round. */
static gboolean
is_alike (RcPoint a, RcPoint b)
{
  Wide along = dot (a, b), across = cross (a, b);
  return (along < 0 ? -along : along) > (across < 0 ? -across : across);
}

static int
side_of (RcPoint a, RcPoint b, RcPoint p)
{
  Wide turn = cross (subtract (b, a), subtract (p, a));
  return turn > 0 ? 1 : turn < 0 ? -1 : 0;
}

/* FALSE only if every point of a-b is at least `distance` away from every point of c-d, by their boxes. */
static gboolean
may_be_near (RcPoint a, RcPoint b, RcPoint c, RcPoint d, RcLength distance)
{
  return MAX (a.x, b.x) + distance > MIN (c.x, d.x) && MAX (c.x, d.x) + distance > MIN (a.x, b.x)
         && MAX (a.y, b.y) + distance > MIN (c.y, d.y) && MAX (c.y, d.y) + distance > MIN (a.y, b.y);
}

/* TRUE if the segments a-b and c-d share a point that is inside c-d (not one of its ends). */
static gboolean
meets_inside (RcPoint a, RcPoint b, RcPoint c, RcPoint d)
{
  if (!may_be_near (a, b, c, d, 1))
    return FALSE;
  int c_side = side_of (a, b, c), d_side = side_of (a, b, d);
  int a_side = side_of (c, d, a), b_side = side_of (c, d, b);
  return c_side * d_side < 0 && a_side * b_side <= 0;
}

/* The cost; and where `broken` is not NULL and the rule is on, an entry with the reason. */
/* `format`: of the reason, marked for translation; what it tells are texts, at most four, ended by NULL. */
static gint64 note (RcRule rule, RcMoney cost, RcPoint place, GPtrArray *broken, const char *format,
                    ...) G_GNUC_NULL_TERMINATED;

static gint64
note (RcRule rule, RcMoney cost, RcPoint place, GPtrArray *broken, const char *format, ...)
{
  if (broken != NULL && cost > 0)
    {
      g_autoptr (GStrvBuilder) args = g_strv_builder_new ();
      RcBrokenRule *entry = g_new0 (RcBrokenRule, 1);
      const char   *arg;
      va_list       list;

      va_start (list, format);
      /* NOLINTNEXTLINE(clang-analyzer-valist.Uninitialized): it does not know va_start where a cleanup stands before */
      while ((arg = va_arg (list, const char *)) != NULL)
        g_strv_builder_add (args, arg);
      va_end (list);
      *entry = (RcBrokenRule){ rule, place, format, g_strv_builder_end (args), cost };
      g_ptr_array_add (broken, entry);
    }
  return cost;
}

/* The name of the room at a place, for people; NULL where nobody is told. */
static const char *
name_room (const RcSite *site, RcPoint place, const GPtrArray *broken)
{
  const RcRoom *room = broken != NULL ? rc_site_find_room (site, place) : NULL;
  if (broken == NULL)
    return NULL;
  return room != NULL ? room->name : site->area->name;
}

static RcMoney
price (const RcSite *site, RcRule rule)
{
  return site->settings->rule_cost[rule];
}

/* A rule about a size and the least it should be: its price at the least, twice that at nothing. `of`: the room of the
 * door that `what` is; NULL where it is no door. */
static gint64
note_size (const RcSite *site, RcRule rule, RcPoint place, GPtrArray *broken, const char *what, const char *of,
           RcLength size, RcLength least)
{
  RcMoney cost = price (site, rule) + (RcMoney)((__int128)price (site, rule) * (least - MAX (size, 0)) / least);
  if (broken == NULL || cost == 0)
    return cost;
  g_autofree char *size_text = rc_length_format (size, site->style),
                  *least_text = rc_length_format (least, site->style);
  switch (rule)
    {
    case RC_RULE_FILL_TOO_NARROW:
      return note (rule, cost, place, broken, N_ ("A fill in %s is %s wide, less than %s"), what, size_text, least_text,
                   NULL);
    case RC_RULE_PIECE_TOO_SHORT:
      return note (rule, cost, place, broken, N_ ("A joined piece in %s is %s long, less than %s"), what, size_text,
                   least_text, NULL);
    case RC_RULE_CROSS_SEAM_AT_DOOR:
      return note (rule, cost, place, broken, N_ ("A cross seam lies near %s of %s: %s away, less than %s"), what, of,
                   size_text, least_text, NULL);
    default:
      return note (rule, cost, place, broken,
                   N_ ("Cross seams of neighbouring pieces in %s are %s apart, less than %s"), what, size_text,
                   least_text, NULL);
    }
}

static const char *
get_room_name (const RcSiteOpening *opening)
{
  return opening->room->room->name;
}

/* The seam strikes across the light when it runs along the window's wall in front of the window, in the same room:
 * *facing is where it faces that. */
static gboolean
is_across_light (const RcSite *site, const RcSiteOpening *window, RcPoint a, RcPoint b, RcPoint *facing)
{
  RcPoint seam = subtract (b, a);
  if (!is_alike (seam, subtract (window->to, window->from)))
    return FALSE;
  gboolean vertical = a.x == b.x;
  RcLength low = vertical ? MIN (window->from.y, window->to.y) : MIN (window->from.x, window->to.x);
  RcLength high = vertical ? MAX (window->from.y, window->to.y) : MAX (window->from.x, window->to.x);
  low = MAX (low, vertical ? MIN (a.y, b.y) : MIN (a.x, b.x));
  high = MIN (high, vertical ? MAX (a.y, b.y) : MAX (a.x, b.x));
  if (low >= high)
    return FALSE;
  RcLength at = low + (high - low) / 2;
  *facing = vertical ? (RcPoint){ a.x, at } : (RcPoint){ at, a.y };
  return rc_site_find_room (site, *facing) == window->room->room;
}

static gint64
weigh_light (const RcSite *site, RcPoint a, RcPoint b, GPtrArray *broken)
{
  for (guint i = 0; i < site->windows->len; i++)
    {
      const RcSiteOpening *window = &g_array_index (site->windows, RcSiteOpening, i);
      RcPoint              facing;
      if (is_across_light (site, window, a, b, &facing))
        return note (RC_RULE_SEAM_ACROSS_LIGHT, price (site, RC_RULE_SEAM_ACROSS_LIGHT), facing, broken,
                     N_ ("A seam lies across the light of window %s of %s"), window->opening->id,
                     get_room_name (window), NULL);
    }
  return 0;
}

/* Where the lines a-b and c-d, not along one another, meet. */
static RcPoint
find_meeting (RcPoint a, RcPoint b, RcPoint c, RcPoint d)
{
  double abx = (double)(b.x - a.x), aby = (double)(b.y - a.y), cdx = (double)(d.x - c.x), cdy = (double)(d.y - c.y);
  double t = ((double)(c.x - a.x) * cdy - (double)(c.y - a.y) * cdx) / (abx * cdy - aby * cdx);
  return go_along (a, b, t);
}

static gint64
weigh_traffic (const RcSite *site, RcPoint a, RcPoint b, GPtrArray *broken)
{
  for (guint i = 0; i < site->ways->len; i++)
    {
      const RcSiteWay *way = &g_array_index (site->ways, RcSiteWay, i);
      RcPoint          from = way->from, to = way->to;
      if (is_alike (subtract (to, from), subtract (b, a)))
        continue;
      /* A seam in the doorway itself is not on the way. */
      const RcSiteOpening *p = &g_array_index (site->doors, RcSiteOpening, way->door_a);
      const RcSiteOpening *q = &g_array_index (site->doors, RcSiteOpening, way->door_b);
      if (meets_inside (from, to, a, b) && meets_inside (a, b, from, to))
        return note (RC_RULE_SEAM_ACROSS_TRAFFIC, price (site, RC_RULE_SEAM_ACROSS_TRAFFIC),
                     find_meeting (a, b, from, to), broken, N_ ("A seam lies across the way from %s of %s to %s of %s"),
                     p->opening->id, get_room_name (p), q->opening->id, get_room_name (q), NULL);
    }
  return 0;
}

/* The seam runs into the opening: it meets the room's face, the middle of the wall or its other face between the jambs.
 */
static gboolean
runs_into (const RcSiteOpening *door, RcPoint a, RcPoint b)
{
  if (is_alike (subtract (b, a), subtract (door->to, door->from)))
    return FALSE;
  for (int halves = 0; halves <= 2; halves++)
    {
      if (meets_inside (a, b, rc_site_opening_get_from (door, halves), rc_site_opening_get_to (door, halves)))
        return TRUE;
    }
  return FALSE;
}

static gint64
weigh_square_to_door (const RcSite *site, RcPoint a, RcPoint b, GPtrArray *broken)
{
  for (guint i = 0; i < site->doors->len; i++)
    {
      const RcSiteOpening *door = &g_array_index (site->doors, RcSiteOpening, i);
      if (runs_into (door, a, b))
        return note (RC_RULE_SEAM_SQUARE_TO_DOOR, price (site, RC_RULE_SEAM_SQUARE_TO_DOOR),
                     rc_site_opening_get_middle (door), broken, N_ ("A seam runs square into %s of %s"),
                     door->opening->id, get_room_name (door), NULL);
    }
  return 0;
}

/* TRUE if a-b runs through the swept floor, more than a sliver inside its edges: *nearest is its point there that lies
 * nearest to the hinge. */
static gboolean
crosses_sweep (const RcSweep *sweep, RcPoint a, RcPoint b, RcPoint *nearest)
{
  double ax = (double)(a.x - sweep->hinge.x), ay = (double)(a.y - sweep->hinge.y);
  double bx = (double)(b.x - sweep->hinge.x), by = (double)(b.y - sweep->hinge.y);
  double u0 = ax * sweep->along_x + ay * sweep->along_y, v0 = ax * sweep->into_x + ay * sweep->into_y;
  double du = bx * sweep->along_x + by * sweep->along_y - u0, dv = bx * sweep->into_x + by * sweep->into_y - v0;
  double t0 = 0, t1 = 1, starts[] = { u0, v0 }, steps[] = { du, dv };
  for (guint i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      double room = starts[i] - RC_SLIVER; /* room + t x step must not be below 0 */
      if (steps[i] > 0)
        t0 = MAX (t0, -room / steps[i]);
      else if (steps[i] < 0)
        t1 = MIN (t1, -room / steps[i]);
      else if (room < 0)
        return FALSE;
    }
  if (t0 >= t1)
    return FALSE;
  double length2 = du * du + dv * dv, t = length2 > 0 ? CLAMP (-(u0 * du + v0 * dv) / length2, t0, t1) : t0;
  *nearest = go_along (a, b, t);
  return hypot (u0 + t * du, v0 + t * dv) < sweep->reach - RC_SLIVER;
}

static gint64
weigh_sweeps (const RcSite *site, RcPoint a, RcPoint b, GPtrArray *broken)
{
  gint64 cost = 0;
  for (guint i = 0; i < site->doors->len; i++)
    {
      const RcSiteOpening *door = &g_array_index (site->doors, RcSiteOpening, i);
      RcPoint              there;
      /* A seam square into the doorway is worse, and noted as that. */
      if (door->sweep.reach > 0 && crosses_sweep (&door->sweep, a, b, &there) && !runs_into (door, a, b))
        cost += note (RC_RULE_SEAM_IN_DOOR_SWING, price (site, RC_RULE_SEAM_IN_DOOR_SWING), there, broken,
                      N_ ("A seam lies under the sweep of door %s of %s"), door->opening->id, get_room_name (door),
                      NULL);
    }
  return cost;
}

static gint64
weigh_kept_floor (const RcSite *site, RcPoint a, RcPoint b, GPtrArray *broken)
{
  RcPoint          place;
  const RcSitePin *pin = rc_site_find_kept_floor (site, a, b, &place);
  if (pin == NULL)
    return 0;
  return note (RC_RULE_SEAM_ON_KEPT_FLOOR, price (site, RC_RULE_SEAM_ON_KEPT_FLOOR), place, broken,
               N_ ("A seam lies on floor of %s that is to be free of seams"), rc_room_get_name (pin->room), NULL);
}

/* How far along a-b its point nearest to p lies: 0 at a, 1 at b. */
static double
find_nearest (RcPoint p, RcPoint a, RcPoint b)
{
  RcPoint ab = subtract (b, a), ap = subtract (p, a);
  double  length2 = (double)dot (ab, ab);
  return length2 > 0 ? CLAMP ((double)dot (ap, ab) / length2, 0.0, 1.0) : 0.0;
}

static double
distance_to (RcPoint p, RcPoint a, RcPoint b)
{
  RcPoint ab = subtract (b, a), ap = subtract (p, a);
  double  t = find_nearest (p, a, b);
  return hypot ((double)ap.x - t * (double)ab.x, (double)ap.y - t * (double)ab.y);
}

static gint64
weigh_near_door (const RcSite *site, RcPoint a, RcPoint b, GPtrArray *broken)
{
  for (guint i = 0; i < site->doors->len; i++)
    {
      const RcSiteOpening *door = &g_array_index (site->doors, RcSiteOpening, i);
      if (!may_be_near (a, b, door->from, door->to, site->settings->door_distance))
        continue;
      double distance = MIN (MIN (distance_to (a, door->from, door->to), distance_to (b, door->from, door->to)),
                             MIN (distance_to (door->from, a, b), distance_to (door->to, a, b)));
      if (distance < (double)site->settings->door_distance)
        return note_size (site, RC_RULE_CROSS_SEAM_AT_DOOR,
                          go_along (a, b, find_nearest (rc_site_opening_get_middle (door), a, b)), broken,
                          door->opening->id, get_room_name (door), (RcLength)distance, site->settings->door_distance);
    }
  return 0;
}

gint64
rc_rules_weigh_seam (const RcSite *site, RcSeamKind kind, RcPoint a, RcPoint b, GPtrArray *broken)
{
  gint64 cost = weigh_light (site, a, b, broken) + weigh_traffic (site, a, b, broken)
                + weigh_square_to_door (site, a, b, broken) + weigh_sweeps (site, a, b, broken)
                + weigh_kept_floor (site, a, b, broken);
  if (kind == RC_SEAM_CROSS)
    cost += weigh_near_door (site, a, b, broken);
  return cost + price (site, RC_RULE_EACH_SEAM);
}

/* Mean width of the floor inside the box; the box's own where `floor` fills it (NULL) or where the fill is nowhere near
 * too narrow. */
static RcLength
find_mean_width (RcBox box, const RcRegion *floor, RcLength least)
{
  RcLength width = box.x1 - box.x0, length = box.y1 - box.y0;
  if (floor == NULL || width < least || width > 4 * least || length <= 0)
    return width;
  return MIN (width, (RcLength)(rc_region_compute_area_between (floor, box.y0, box.y1) / 2 / length));
}

gint64
rc_rules_weigh_piece (const RcSite *site, RcBox box, const RcRegion *floor, gboolean is_fill, gboolean is_joined,
                      GPtrArray *broken)
{
  const RcSettings *settings = site->settings;
  gint64            cost = 0;
  RcPoint           place = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  RcLength          width = is_fill ? find_mean_width (box, floor, settings->least_fill_width) : 0;
  RcLength          length = box.y1 - box.y0;
  /* In a doorway no strip along a wall must hold it (CRI 2015 11.1: none is set there), and none can be wider. */
  if (is_fill && width < settings->least_fill_width && !rc_site_is_in_doorway (site, box))
    cost += note_size (site, RC_RULE_FILL_TOO_NARROW, place, broken, name_room (site, place, broken), NULL, width,
                       settings->least_fill_width);
  if (is_joined && length < settings->least_piece_length)
    cost += note_size (site, RC_RULE_PIECE_TOO_SHORT, place, broken, name_room (site, place, broken), NULL, length,
                       settings->least_piece_length);
  return cost;
}

gint64
rc_rules_weigh_stagger (const RcSite *site, RcLength y_a, RcLength y_b, RcPoint place, GPtrArray *broken)
{
  RcLength apart = ABS (y_a - y_b);
  if (apart >= site->settings->stagger)
    return 0;
  return note_size (site, RC_RULE_CROSS_SEAMS_NOT_STAGGERED, place, broken, name_room (site, place, broken), NULL,
                    apart, site->settings->stagger);
}

gint64
rc_rules_weigh_joins (const RcSite *site, guint joins, RcPoint place, GPtrArray *broken)
{
  if (joins <= site->settings->most_joins)
    return 0;
  if (broken == NULL)
    return price (site, RC_RULE_TOO_MANY_JOINS);
  g_autofree char *there = g_strdup_printf ("%u", joins), *allowed = g_strdup_printf ("%u", site->settings->most_joins);

  return note (RC_RULE_TOO_MANY_JOINS, price (site, RC_RULE_TOO_MANY_JOINS), place, broken,
               N_ ("A drop or fill in %s has %s cross seams, more than %s"), name_room (site, place, broken), there,
               allowed, NULL);
}
