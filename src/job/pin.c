#include "pin.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"
#include "words.h"

/* More is a slip. */
#define MOST_POINTS 1000

static const char *const kind_names[] = { "seam", "split", "no-seams", "roll" };
G_STATIC_ASSERT (G_N_ELEMENTS (kind_names) == RC_N_PIN_KINDS);

RcPin *
rc_pin_new (RcPinKind kind, const char *room)
{
  RcPin *pin = g_new0 (RcPin, 1);
  pin->kind = kind;
  pin->room = g_strdup (room);
  pin->points = rc_ring_new ();
  return pin;
}

RcPin *
rc_pin_copy (const RcPin *pin)
{
  RcPin *copy = rc_pin_new (pin->kind, pin->room);
  g_array_append_vals (copy->points, pin->points->data, pin->points->len);
  copy->roll = g_strdup (pin->roll);
  return copy;
}

void
rc_pin_free (RcPin *pin)
{
  if (pin == NULL)
    return;
  g_free (pin->room);
  g_free (pin->roll);
  g_array_unref (pin->points);
  g_free (pin);
}

const char *
rc_pin_kind_get_name (RcPinKind kind)
{
  g_return_val_if_fail ((guint)kind < RC_N_PIN_KINDS, "");
  return kind_names[kind];
}

gboolean
rc_pin_kind_parse (const char *name, RcPinKind *kind, GError **error)
{
  guint index;

  if (!rc_words_parse (kind_names, G_N_ELEMENTS (kind_names), _ ("kind of pin"), name, &index, error))
    return FALSE;
  *kind = index;
  return TRUE;
}

gboolean
rc_pin_check (const RcPin *pin, GError **error)
{
  static const guint least[] = { 2, 1, 3, 1 }, most[] = { 2, MOST_POINTS, MOST_POINTS, 1 };
  guint              n = pin->points->len;

  for (guint i = 0; i < n; i++)
    if (ABS (rc_ring_get (pin->points, i)->x) > RC_LENGTH_MAX || ABS (rc_ring_get (pin->points, i)->y) > RC_LENGTH_MAX)
      {
        g_set_error_literal (error, RC_ERROR, RC_ERROR_RANGE, _ ("a pinned point lies too far off"));
        return FALSE;
      }
  if (n < least[pin->kind] || n > most[pin->kind])
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("a pin of the kind “%s” has %u points; it should have %u to %u"),
                   rc_pin_kind_get_name (pin->kind), n, least[pin->kind], most[pin->kind]);
      return FALSE;
    }
  if (pin->kind == RC_PIN_SEAM && rc_point_distance (*rc_ring_get (pin->points, 0), *rc_ring_get (pin->points, 1)) == 0)
    {
      g_set_error_literal (error, RC_ERROR, RC_ERROR_GEOMETRY, _ ("a pinned seam has no length"));
      return FALSE;
    }
  if (pin->kind == RC_PIN_NO_SEAMS)
    {
      g_autoptr (RcPolygon) floor = rc_polygon_new ();
      g_array_append_vals (floor->outer, pin->points->data, n);
      rc_polygon_normalize (floor);
      if (floor->outer->len < 3 || rc_polygon_compute_area (floor) == 0)
        {
          g_set_error_literal (error, RC_ERROR, RC_ERROR_GEOMETRY,
                               _ ("the floor to be kept free of seams has no area; give its corners in order"));
          return FALSE;
        }
      return rc_polygon_check (floor, error);
    }
  if (pin->kind == RC_PIN_ROLL && (pin->roll == NULL || *pin->roll == '\0'))
    {
      g_set_error_literal (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("a pinned piece names no roll"));
      return FALSE;
    }
  return TRUE;
}
