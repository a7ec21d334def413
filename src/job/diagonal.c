#include "diagonal.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

#define ROUNDS     40
#define FACING_MIN 0.999 /* cosine: walls that face each other */
#define MOST_WALLS 256   /* of a room whose walls are tried one by one */
#define SAME       1e-6  /* degrees: the bearing that was */

gboolean
rc_diagonal_compute (const RcRoom *room, const RcDiagonal *diagonal, RcLength *computed)
{
  g_autoptr (GArray) corners = rc_room_compute_corners (room);

  if (diagonal->from >= corners->len || diagonal->to >= corners->len || diagonal->from == diagonal->to)
    return FALSE;
  *computed = rc_point_distance (*rc_ring_get (corners, diagonal->from), *rc_ring_get (corners, diagonal->to));
  return TRUE;
}

/* --- which wall is wrong --- */

/* What the diagonals and the closing miss by, squared and summed, when `wall` and its partner are longer by `more`; the
 * worst of them too. */
static double
sum_off (const RcRoom *room, guint wall, guint partner, double more, double *worst)
{
  guint n = room->walls->len;
  /* cppcheck-suppress allocaCalled ; n is at most MOST_WALLS */
  double *x = g_newa (double, n), *y = g_newa (double, n), px = 0, py = 0, sum = 0;

  for (guint i = 0; i < n; i++)
    {
      const RcWall *w = &g_array_index (room->walls, RcWall, i);
      double        length = (double)w->length + (i == wall || i == partner ? more : 0);
      x[i] = px;
      y[i] = py;
      px += length * sin (w->bearing_degrees * G_PI / 180);
      py += length * cos (w->bearing_degrees * G_PI / 180);
    }
  sum = px * px + py * py;
  *worst = sqrt (sum);
  for (guint i = 0; i < room->diagonals->len; i++)
    {
      const RcDiagonal *d = &g_array_index (room->diagonals, RcDiagonal, i);
      if (d->from >= n || d->to >= n || d->from == d->to || d->length == 0)
        continue;
      double off = hypot (x[d->to] - x[d->from], y[d->to] - y[d->from]) - (double)d->length;
      sum += off * off;
      *worst = MAX (*worst, fabs (off));
    }
  return sum;
}

/* The change between -limit and limit that leaves least: golden section, as the sum of squares has one valley where a
 * single length changes by little. */
static double
find_best (const RcRoom *room, guint wall, guint partner, double limit)
{
  const double part = (sqrt (5) - 1) / 2;
  double       a = -limit, b = limit, worst;

  for (int round = 0; round < ROUNDS; round++)
    {
      double left = b - part * (b - a), right = a + part * (b - a);
      if (sum_off (room, wall, partner, left, &worst) <= sum_off (room, wall, partner, right, &worst))
        b = right;
      else
        a = left;
    }
  return (a + b) / 2;
}

/* The wall that runs back: the longest of those that face it. */
static guint
find_partner (const RcRoom *room, guint wall)
{
  const RcWall *w = &g_array_index (room->walls, RcWall, wall);
  guint         partner = wall;

  for (guint i = 0; i < room->walls->len; i++)
    {
      const RcWall *other = &g_array_index (room->walls, RcWall, i);
      if (cos ((other->bearing_degrees - w->bearing_degrees) * G_PI / 180) > -FACING_MIN)
        continue;
      if (partner == wall || other->length > g_array_index (room->walls, RcWall, partner).length)
        partner = i;
    }
  return partner;
}

RcDiagonalsFinding
rc_room_judge_diagonals (const RcRoom *given, RcLength off_max)
{
  RcDiagonalsFinding finding = { .verdict = RC_DIAGONALS_AGREE };
  RcClosure          closure = { 0 };
  double             worst, best_worst = 0, least = INFINITY, least_change = INFINITY;

  if (given->walls->len < 3 || given->diagonals->len == 0)
    return finding;
  sum_off (given, 0, 0, 0, &worst);
  if (worst <= (double)off_max)
    return finding;
  finding.verdict = RC_DIAGONALS_ANGLES;
  if (given->walls->len > MOST_WALLS)
    return finding;
  rc_room_compute_closure (given, &closure);
  gboolean is_closed = closure.error <= off_max;
  rc_closure_clear (&closure);
  for (guint wall = 0; wall < given->walls->len; wall++)
    {
      double length = (double)g_array_index (given->walls, RcWall, wall).length;
      guint  partner = is_closed ? find_partner (given, wall) : wall;
      double change = find_best (given, wall, partner, length / 2);
      double left = sqrt (sum_off (given, wall, partner, change, &worst));
      /* A tick is nothing: of equals, the smaller change. */
      if (left > least + 1 || (left > least - 1 && fabs (change) >= least_change - 1))
        continue;
      least = left;
      least_change = fabs (change);
      best_worst = worst;
      finding.wall = wall;
      finding.partner = partner;
      finding.length = llround (length + change);
    }
  finding.verdict = best_worst <= (double)off_max ? RC_DIAGONALS_WALL : RC_DIAGONALS_ANGLES;
  return finding;
}

/* --- the shape from the diagonals --- */

typedef struct
{
  gboolean is_known;
  double   x, y;
} Place;

/* The length measured between two corners; FALSE when there is none. */
static gboolean
find_length (const RcRoom *room, guint a, guint b, double *length)
{
  guint n = room->walls->len;

  if ((a + 1) % n == b || (b + 1) % n == a)
    {
      *length = (double)g_array_index (room->walls, RcWall, (a + 1) % n == b ? a : b).length;
      return TRUE;
    }
  for (guint i = 0; i < room->diagonals->len; i++)
    {
      const RcDiagonal *d = &g_array_index (room->diagonals, RcDiagonal, i);
      if (d->length > 0 && ((d->from == a && d->to == b) || (d->from == b && d->to == a)))
        {
          *length = (double)d->length;
          return TRUE;
        }
    }
  return FALSE;
}

/* Puts corner k where its lengths from a and b meet, on the side of a-b where it is now. FALSE: they do not meet. */
static gboolean
put_corner (Place *places, const RcRing *now, guint a, guint b, guint k, double from_a, double from_b)
{
  double  dx = places[b].x - places[a].x, dy = places[b].y - places[a].y, base = hypot (dx, dy);
  double  along = base > 0 ? (from_a * from_a - from_b * from_b + base * base) / (2 * base) : 0;
  double  square = from_a * from_a - along * along;
  RcPoint pa = *rc_ring_get (now, a), pb = *rc_ring_get (now, b), pk = *rc_ring_get (now, k);
  double  side = (double)(pb.x - pa.x) * (double)(pk.y - pa.y) - (double)(pb.y - pa.y) * (double)(pk.x - pa.x);

  if (base == 0 || square < -base)
    return FALSE;
  double off = sqrt (MAX (0, square)) * (side < 0 ? -1 : 1);
  places[k]
      = (Place){ TRUE, places[a].x + (along * dx - off * dy) / base, places[a].y + (along * dy + off * dx) / base };
  return TRUE;
}

static gboolean
fail_on_triangle (const RcRoom *room, guint a, guint b, guint k, GError **error)
{
  g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY,
               _ ("%s: the lengths between corners %u, %u and %u make no triangle; measure them again"),
               rc_room_get_name (room), a + 1, b + 1, k + 1);
  return FALSE;
}

/* One more corner, from two that are known: 1 put, 0 none could be, -1 with an error. */
static int
put_next (const RcRoom *room, Place *places, const RcRing *now, GError **error)
{
  guint n = now->len;

  for (guint k = 0; k < n; k++)
    for (guint a = 0; a < n && !places[k].is_known; a++)
      for (guint b = a + 1; b < n && !places[k].is_known; b++)
        {
          double from_a, from_b;
          if (!places[a].is_known || !places[b].is_known || !find_length (room, a, k, &from_a)
              || !find_length (room, b, k, &from_b))
            continue;
          if (!put_corner (places, now, a, b, k, from_a, from_b))
            {
              fail_on_triangle (room, a, b, k, error);
              return -1;
            }
          return 1;
        }
  return 0;
}

gboolean
rc_room_fit_diagonals (RcRoom *room, GError **error)
{
  g_autoptr (GArray) now = rc_room_compute_corners (room);
  guint             n = room->walls->len, n_known = 2;
  g_autofree Place *places = g_new0 (Place, MAX (n, 2));
  int               put = 1;

  if (n < 3)
    return TRUE;
  const RcWall *first = &g_array_index (room->walls, RcWall, 0);
  places[0].is_known = TRUE;
  places[1] = (Place){ TRUE, (double)first->length * sin (first->bearing_degrees * G_PI / 180),
                       (double)first->length * cos (first->bearing_degrees * G_PI / 180) };
  for (; n_known < n && put > 0; n_known++)
    put = put_next (room, places, now, error);
  if (put < 0)
    return FALSE;
  if (put == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY,
                   _ ("%s: the shape does not follow yet; a room of %u corners takes %u diagonals that part it into "
                      "triangles"),
                   rc_room_get_name (room), n, n - 3);
      return FALSE;
    }
  for (guint i = 1; i < n; i++)
    {
      const Place *from = &places[i], *to = &places[(i + 1) % n];
      RcWall      *wall = &g_array_index (room->walls, RcWall, i);
      double       bearing = atan2 (to->x - from->x, to->y - from->y) * 180 / G_PI;
      double       off = fabs (remainder (bearing - wall->bearing_degrees, 360));
      if (off > SAME)
        wall->bearing_degrees = bearing < 0 ? bearing + 360 : bearing;
    }
  return TRUE;
}
