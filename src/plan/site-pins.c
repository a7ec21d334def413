#include "site-pins.h"

#include "strip.h"

static void
site_pin_free (gpointer data)
{
  RcSitePin *pin = data;
  g_array_unref (pin->points);
  g_clear_pointer (&pin->floor, g_ptr_array_unref);
  g_free (pin);
}

GPtrArray *
rc_site_pins_new (const RcSite *site)
{
  GPtrArray *pins = g_ptr_array_new_with_free_func (site_pin_free);
  for (guint i = 0; i < site->area->pins->len; i++)
    {
      const RcPin        *pin = g_ptr_array_index (site->area->pins, i);
      const RcPlacedRoom *placed = rc_house_find_room (site->house, pin->room);
      if (placed == NULL)
        continue;
      RcSitePin *made = g_new0 (RcSitePin, 1);
      *made = (RcSitePin){ .index = i, .pin = pin, .room = placed->room, .points = rc_ring_new () };
      for (guint k = 0; k < pin->points->len; k++)
        {
          RcPoint point = *rc_ring_get (pin->points, k);
          point = rc_point_rotate ((RcPoint){ point.x + placed->at.x, point.y + placed->at.y }, site->turn_degrees);
          g_array_append_val (made->points, point);
        }
      if (pin->kind == RC_PIN_NO_SEAMS)
        {
          made->floor = rc_region_new ();
          g_ptr_array_add (made->floor, rc_polygon_new_take (rc_ring_copy (made->points)));
          rc_polygon_normalize (g_ptr_array_index (made->floor, 0));
        }
      g_ptr_array_add (pins, made);
    }
  return pins;
}

static gboolean
runs_along_pile (const RcSitePin *pin)
{
  const RcPoint *a = rc_ring_get (pin->points, 0), *b = rc_ring_get (pin->points, 1);
  return ABS (a->x - b->x) <= RC_SLIVER && a->y != b->y;
}

gboolean
rc_site_find_pinned_line (const RcSite *site, const RcRegion *floor, RcLength *x)
{
  for (guint i = 0; i < site->pins->len; i++)
    {
      const RcSitePin *pin = g_ptr_array_index (site->pins, i);
      if (pin->pin->kind != RC_PIN_SEAM || !runs_along_pile (pin))
        continue;
      const RcPoint *a = rc_ring_get (pin->points, 0), *b = rc_ring_get (pin->points, 1);
      RcPoint        middle = { a->x, a->y + (b->y - a->y) / 2 };
      if (floor != NULL && rc_region_locate (floor, middle) < 0)
        continue;
      *x = a->x;
      return TRUE;
    }
  return FALSE;
}

const RcSitePin *
rc_site_find_pinned_split (const RcSite *site, const RcBox *box)
{
  for (guint i = 0; i < site->pins->len; i++)
    {
      const RcSitePin *pin = g_ptr_array_index (site->pins, i);
      const RcPoint   *at = rc_ring_get (pin->points, 0);
      if (pin->pin->kind == RC_PIN_SPLIT && at->x >= box->x0 && at->x < box->x1 && at->y >= box->y0 && at->y < box->y1)
        return pin;
    }
  return NULL;
}

const RcSitePin *
rc_site_find_pinned_roll (const RcSite *site, const RcRegion *outline)
{
  for (guint i = 0; i < site->pins->len; i++)
    {
      const RcSitePin *pin = g_ptr_array_index (site->pins, i);
      if (pin->pin->kind == RC_PIN_ROLL && rc_region_locate (outline, *rc_ring_get (pin->points, 0)) >= 0)
        return pin;
    }
  return NULL;
}

static gboolean
runs_through (const RcRegion *floor, RcPoint a, RcPoint b, RcPoint *place)
{
  gboolean along_y = a.x == b.x;
  RcLength low = along_y ? MIN (a.y, b.y) : MIN (a.x, b.x), high = along_y ? MAX (a.y, b.y) : MAX (a.x, b.x);
  g_autoptr (GArray) inside
      = along_y ? rc_region_cross_line_x (floor, a.x) : rc_region_cross_line_y (floor, a.y, low, MAX (high, low + 1));
  for (guint i = 0; i < inside->len; i++)
    {
      const RcInterval *interval = &g_array_index (inside, RcInterval, i);
      RcLength          from = MAX (low, interval->from), to = MIN (high, interval->to), at = from + (to - from) / 2;
      if (to - from <= RC_SLIVER)
        continue;
      if (place != NULL)
        *place = along_y ? (RcPoint){ a.x, at } : (RcPoint){ at, a.y };
      return TRUE;
    }
  return FALSE;
}

const RcSitePin *
rc_site_find_kept_floor (const RcSite *site, RcPoint a, RcPoint b, RcPoint *place)
{
  for (guint i = 0; i < site->pins->len; i++)
    {
      const RcSitePin *pin = g_ptr_array_index (site->pins, i);
      if (pin->floor != NULL && runs_through (pin->floor, a, b, place))
        return pin;
    }
  return NULL;
}
