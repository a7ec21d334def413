#include "pin-kept.h"

const RcSitePin *
rc_pin_find_in_site (const RcSite *site, guint index)
{
  for (guint i = 0; i < site->pins->len; i++)
    if (((RcSitePin *)g_ptr_array_index (site->pins, i))->index == index)
      return g_ptr_array_index (site->pins, i);
  return NULL;
}

/* A seam of the option in the frame, turned upright or level to the tick. */
static void
get_seam (const RcSite *site, const RcSeam *seam, RcPoint *from, RcPoint *to)
{
  *from = rc_point_rotate (seam->from, site->turn_degrees);
  *to = rc_point_rotate (seam->to, site->turn_degrees);
  if (ABS (from->x - to->x) <= RC_SLIVER)
    to->x = from->x;
  if (ABS (from->y - to->y) <= RC_SLIVER)
    to->y = from->y;
}

static gboolean
lies_on (RcPoint from, RcPoint to, RcPoint point)
{
  return point.x >= MIN (from.x, to.x) - RC_SLIVER && point.x <= MAX (from.x, to.x) + RC_SLIVER
         && point.y >= MIN (from.y, to.y) - RC_SLIVER && point.y <= MAX (from.y, to.y) + RC_SLIVER;
}

/* TRUE if a seam of that kind of the option lies at the point. */
static gboolean
has_seam_at (const RcSite *site, const RcOption *option, RcSeamKind kind, RcPoint point)
{
  for (guint i = 0; i < option->seams->len; i++)
    {
      const RcSeam *seam = g_ptr_array_index (option->seams, i);
      RcPoint       from, to;
      get_seam (site, seam, &from, &to);
      if (seam->kind == kind && lies_on (from, to, point))
        return TRUE;
    }
  return FALSE;
}

static RcPoint
get_middle (const RcSitePin *pin)
{
  const RcPoint *a = rc_ring_get (pin->points, 0), *b = rc_ring_get (pin->points, 1);
  return (RcPoint){ a->x + (b->x - a->x) / 2, a->y + (b->y - a->y) / 2 };
}

static gboolean
is_along_pile (const RcSitePin *pin)
{
  return ABS (rc_ring_get (pin->points, 0)->x - rc_ring_get (pin->points, 1)->x) <= RC_SLIVER;
}

gboolean
rc_pin_is_kept (const RcSite *site, const RcOption *option, const RcSitePin *pin)
{
  switch (pin->pin->kind)
    {
    case RC_PIN_SEAM:
      return is_along_pile (pin) && has_seam_at (site, option, RC_SEAM_SIDE, get_middle (pin));
    case RC_PIN_SPLIT:
      for (guint i = 1; i < pin->points->len; i++)
        if (!has_seam_at (site, option, RC_SEAM_CROSS, *rc_ring_get (pin->points, i)))
          return FALSE;
      return TRUE;
    case RC_PIN_NO_SEAMS:
      for (guint i = 0; i < option->seams->len; i++)
        {
          RcPoint from, to;
          get_seam (site, g_ptr_array_index (option->seams, i), &from, &to);
          const RcSitePin *through = rc_site_find_kept_floor (site, from, to, NULL);
          if (through == pin)
            return FALSE;
        }
      return TRUE;
    case RC_PIN_ROLL:
      for (guint i = 0; i < option->pieces->len; i++)
        {
          const RcPiece *piece = g_ptr_array_index (option->pieces, i);
          if (piece->roll != NULL && piece->roll_pin == pin->index)
            return TRUE;
        }
      return FALSE;
    case RC_N_PIN_KINDS:
    default:
      return TRUE;
    }
}

guint
rc_pins_count_kept (const RcSite *site, const RcOption *option)
{
  guint n = 0;
  for (guint i = 0; i < site->pins->len; i++)
    n += rc_pin_is_kept (site, option, g_ptr_array_index (site->pins, i));
  return n;
}

guint
rc_pins_count_kept_among (const GPtrArray *sites, const RcOption *option)
{
  for (guint i = 0; i < sites->len; i++)
    {
      const RcSite *site = g_ptr_array_index (sites, i);
      if (site->turn_degrees == 90 - option->pile_degrees)
        return rc_pins_count_kept (site, option);
    }
  return 0;
}
