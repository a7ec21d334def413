#include "traverse.h"

#include "wide.h"

#include <math.h>

void
rc_closure_clear (RcClosure *closure)
{
  g_clear_pointer (&closure->suspects, g_array_unref);
}

RcPoint
rc_leg_get_step (const RcLeg *leg)
{
  double within = fmod (leg->bearing_degrees, 360.0);
  double bearing = within < 0.0 ? within + 360.0 : within;

  if (bearing == 0.0 || bearing == 360.0)
    return (RcPoint){ 0, leg->length };
  if (bearing == 90.0)
    return (RcPoint){ leg->length, 0 };
  if (bearing == 180.0)
    return (RcPoint){ 0, -leg->length };
  if (bearing == 270.0)
    return (RcPoint){ -leg->length, 0 };

  return (RcPoint){ llround ((double)leg->length * sin (bearing * G_PI / 180.0)),
                    llround ((double)leg->length * cos (bearing * G_PI / 180.0)) };
}

/* How well a change of one leg's length alone would close the walk, in ticks. */
typedef struct
{
  guint  leg;
  gint64 rest;   /* what would stay open after the best change */
  gint64 change; /* size of that change */
} Suspicion;

static Suspicion
leg_compute_suspicion (const RcLeg *legs, guint leg, const RcClosure *closure)
{
  double bearing = legs[leg].bearing_degrees * G_PI / 180.0;
  double east = sin (bearing);
  double north = cos (bearing);
  double change = -((double)closure->dx * east + (double)closure->dy * north);
  double rest_x, rest_y;

  /* a wall cannot be shorter than nothing */
  change = MAX (change, -(double)legs[leg].length);
  rest_x = (double)closure->dx + change * east;
  rest_y = (double)closure->dy + change * north;

  return (Suspicion){ leg, llround (hypot (rest_x, rest_y)), llround (fabs (change)) };
}

static int
compare_suspicion (const void *a, const void *b)
{
  const Suspicion *suspicion = a;
  const Suspicion *other = b;

  if (suspicion->rest != other->rest)
    return suspicion->rest < other->rest ? -1 : 1;
  if (suspicion->change != other->change)
    return suspicion->change < other->change ? -1 : 1;

  return (suspicion->leg > other->leg) - (suspicion->leg < other->leg);
}

static GArray *
find_suspects (const RcLeg *legs, guint n_legs, const RcClosure *closure)
{
  GArray *suspects = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) suspicions = NULL;

  if (closure->error == 0)
    return suspects;

  suspicions = g_array_new (FALSE, FALSE, sizeof (Suspicion));
  for (guint i = 0; i < n_legs; i++)
    {
      Suspicion suspicion = leg_compute_suspicion (legs, i, closure);

      g_array_append_val (suspicions, suspicion);
    }
  g_array_sort (suspicions, compare_suspicion);
  for (guint i = 0; i < suspicions->len; i++)
    g_array_append_val (suspects, g_array_index (suspicions, Suspicion, i).leg);

  return suspects;
}

void
rc_traverse_compute_closure (const RcLeg *legs, guint n_legs, RcClosure *closure)
{
  *closure = (RcClosure){ 0 };

  for (guint i = 0; i < n_legs; i++)
    {
      RcPoint step = rc_leg_get_step (&legs[i]);

      closure->dx += step.x;
      closure->dy += step.y;
      closure->perimeter += legs[i].length;
    }

  closure->error = rc_point_distance ((RcPoint){ 0, 0 }, (RcPoint){ closure->dx, closure->dy });
  if (closure->error > 0)
    closure->ratio = (double)closure->perimeter / (double)closure->error;
  closure->suspects = find_suspects (legs, n_legs, closure);
}

RcRing *
rc_traverse_compute_ring (const RcLeg *legs, guint n_legs, RcPoint start, gboolean spread)
{
  RcRing   *ring = rc_ring_new ();
  RcClosure closure;
  RcPoint   walked = { 0, 0 };
  RcLength  way = 0;

  rc_traverse_compute_closure (legs, n_legs, &closure);

  for (guint i = 0; i < n_legs; i++)
    {
      RcPoint corner = { start.x + walked.x, start.y + walked.y };
      RcPoint step = rc_leg_get_step (&legs[i]);

      /* the sum of all corrections up to here, rounded once, so that roundings do not add up */
      if (spread && closure.perimeter > 0)
        {
          corner.x -= (RcLength)rc_wide_divide_round ((RcWide)closure.dx * way, closure.perimeter);
          corner.y -= (RcLength)rc_wide_divide_round ((RcWide)closure.dy * way, closure.perimeter);
        }
      g_array_append_val (ring, corner);

      walked.x += step.x;
      walked.y += step.y;
      way += legs[i].length;
    }

  rc_closure_clear (&closure);
  return ring;
}
