#include "pen.h"

#include <math.h>
#include <string.h>

#include "text.h"

void
rc_pen_init (RcPen *pen, cairo_t *cr, const RcView *view, const RcPalette *palette, double font_size)
{
  pen->cr = cr;
  pen->view = *view;
  pen->palette = palette;
  pen->font_size = font_size;
  pen->line = font_size / 11;
  cairo_clip_extents (cr, &pen->visible.x0, &pen->visible.y0, &pen->visible.x1, &pen->visible.y1);
  pen->focus = pen->visible;
  pen->layouts = pen->own_layouts = rc_layouts_new (pango_cairo_font_map_get_default ());
  pen->taken = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify)g_array_unref);
}

void
rc_pen_clear (RcPen *pen)
{
  g_clear_pointer (&pen->own_layouts, rc_layouts_free);
  g_clear_pointer (&pen->taken, g_hash_table_unref);
}

void
rc_pen_set_colour (RcPen *pen, const double colour[3], double share)
{
  const double *paper = pen->palette->paper;

  cairo_set_source_rgb (pen->cr, paper[0] + (colour[0] - paper[0]) * share, paper[1] + (colour[1] - paper[1]) * share,
                        paper[2] + (colour[2] - paper[2]) * share);
}

RcSpot
rc_pen_get_spot (const RcPen *pen, RcPoint point)
{
  return (RcSpot){ pen->view.x0 + (double)point.x * pen->view.scale, pen->view.y0 - (double)point.y * pen->view.scale };
}

gboolean
rc_pen_sees (const RcPen *pen, const RcExtent *extent)
{
  return extent->x1 >= pen->visible.x0 && extent->x0 <= pen->visible.x1 && extent->y1 >= pen->visible.y0
         && extent->y0 <= pen->visible.y1;
}

RcExtent
rc_pen_get_box_extent (const RcPen *pen, RcBox box)
{
  RcSpot low = rc_pen_get_spot (pen, (RcPoint){ box.x0, box.y0 });
  RcSpot high = rc_pen_get_spot (pen, (RcPoint){ box.x1, box.y1 });

  return (RcExtent){ low.x, high.y, high.x, low.y };
}

static GArray *
dup_ring (const RcPen *pen, const RcRing *ring)
{
  GArray *spots = g_array_sized_new (FALSE, FALSE, sizeof (RcSpot), ring->len);

  for (guint i = 0; i < ring->len; i++)
    {
      RcSpot spot = rc_pen_get_spot (pen, *rc_ring_get (ring, i));

      g_array_append_val (spots, spot);
    }

  return spots;
}

GPtrArray *
rc_pen_dup_rings (const RcPen *pen, const RcPolygon *polygon)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);

  g_ptr_array_add (rings, dup_ring (pen, polygon->outer));
  for (guint i = 0; i < polygon->holes->len; i++)
    g_ptr_array_add (rings, dup_ring (pen, g_ptr_array_index (polygon->holes, i)));

  return rings;
}

RcExtent
rc_rings_get_extent (const GPtrArray *rings)
{
  RcExtent      extent = { G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE, -G_MAXDOUBLE };
  const GArray *outer = g_ptr_array_index (rings, 0);

  for (guint i = 0; i < outer->len; i++)
    {
      const RcSpot *spot = &g_array_index (outer, RcSpot, i);

      extent.x0 = MIN (extent.x0, spot->x);
      extent.y0 = MIN (extent.y0, spot->y);
      extent.x1 = MAX (extent.x1, spot->x);
      extent.y1 = MAX (extent.y1, spot->y);
    }

  return extent;
}

GPtrArray *
rc_extent_dup_rings (const RcExtent *box)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  GArray    *ring = g_array_new (FALSE, FALSE, sizeof (RcSpot));
  RcSpot     corners[4] = { { box->x0, box->y0 }, { box->x1, box->y0 }, { box->x1, box->y1 }, { box->x0, box->y1 } };

  g_array_append_vals (ring, corners, 4);
  g_ptr_array_add (rings, ring);

  return rings;
}

void
rc_pen_add_path (RcPen *pen, const GPtrArray *rings)
{
  for (guint r = 0; r < rings->len; r++)
    {
      const GArray *ring = g_ptr_array_index (rings, r);

      /* Words drawn before leave a point that is no part of it. */
      cairo_new_sub_path (pen->cr);
      for (guint i = 0; i < ring->len; i++)
        cairo_line_to (pen->cr, g_array_index (ring, RcSpot, i).x, g_array_index (ring, RcSpot, i).y);
      cairo_close_path (pen->cr);
    }
  cairo_set_fill_rule (pen->cr, CAIRO_FILL_RULE_EVEN_ODD);
}

void
rc_pen_measure_text (RcPen *pen, const char *text, double size, gboolean bold, double *width, double *height)
{
  rc_text_measure (rc_layouts_get (pen->layouts, text, size, bold), width, height);
}

void
rc_pen_draw_text (RcPen *pen, const char *text, double size, gboolean bold, RcSpot middle, double turn,
                  gboolean cleared)
{
  PangoLayout *layout = rc_layouts_get (pen->layouts, text, size, bold);
  double       width, height;

  rc_text_measure (layout, &width, &height);
  cairo_save (pen->cr);
  cairo_translate (pen->cr, middle.x, middle.y);
  cairo_rotate (pen->cr, turn);
  if (cleared)
    {
      cairo_save (pen->cr);
      rc_pen_set_colour (pen, pen->palette->paper, 1);
      cairo_rectangle (pen->cr, -width / 2 - size * 0.15, -height / 2, width + size * 0.3, height);
      cairo_fill (pen->cr);
      cairo_restore (pen->cr);
    }
  cairo_move_to (pen->cr, -width / 2, -height / 2);
  pango_cairo_show_layout (pen->cr, layout);
  cairo_restore (pen->cr);
  cairo_new_path (pen->cr);
}

/* The grid cells that an extent meets; an extent far outside what is seen is pulled to the edge. */
typedef struct
{
  int x0, y0, x1, y1;
} Cells;

static Cells
get_cells (const RcPen *pen, const RcExtent *extent)
{
  double side = pen->font_size * 8;

  return (Cells){ (int)floor (CLAMP (extent->x0, pen->visible.x0, pen->visible.x1) / side),
                  (int)floor (CLAMP (extent->y0, pen->visible.y0, pen->visible.y1) / side),
                  (int)floor (CLAMP (extent->x1, pen->visible.x0, pen->visible.x1) / side),
                  (int)floor (CLAMP (extent->y1, pen->visible.y0, pen->visible.y1) / side) };
}

static gpointer
cell_to_key (int x, int y)
{
  return GINT_TO_POINTER ((int)(((guint)x << 16) ^ ((guint)y & 0xffff)));
}

static gboolean
cell_is_free (const GArray *extents, const RcExtent *extent)
{
  for (guint i = 0; extents && i < extents->len; i++)
    {
      const RcExtent *other = &g_array_index (extents, RcExtent, i);

      if (other->x1 > extent->x0 && other->x0 < extent->x1 && other->y1 > extent->y0 && other->y0 < extent->y1)
        return FALSE;
    }

  return TRUE;
}

gboolean
rc_pen_is_free (const RcPen *pen, const RcExtent *extent)
{
  Cells cells = get_cells (pen, extent);

  for (int x = cells.x0; x <= cells.x1; x++)
    for (int y = cells.y0; y <= cells.y1; y++)
      if (!cell_is_free (g_hash_table_lookup (pen->taken, cell_to_key (x, y)), extent))
        return FALSE;

  return TRUE;
}

void
rc_pen_take (RcPen *pen, const RcExtent *extent)
{
  Cells cells = get_cells (pen, extent);

  for (int x = cells.x0; x <= cells.x1; x++)
    for (int y = cells.y0; y <= cells.y1; y++)
      {
        GArray *extents = g_hash_table_lookup (pen->taken, cell_to_key (x, y));

        if (!extents)
          {
            extents = g_array_new (FALSE, FALSE, sizeof (RcExtent));
            g_hash_table_insert (pen->taken, cell_to_key (x, y), extents);
          }
        g_array_append_val (extents, *extent);
      }
}

gboolean
rc_pen_claim (RcPen *pen, const RcExtent *extent)
{
  if (!rc_pen_is_free (pen, extent))
    return FALSE;
  rc_pen_take (pen, extent);

  return TRUE;
}

/* TRUE when the segment from a to b meets the open rectangle (Liang and Barsky's clipping). */
static gboolean
segment_meets (const RcSpot *a, const RcSpot *b, const RcExtent *box)
{
  double p[4] = { a->x - b->x, b->x - a->x, a->y - b->y, b->y - a->y };
  double q[4] = { a->x - box->x0, box->x1 - a->x, a->y - box->y0, box->y1 - a->y };
  double enter = 0, leave = 1;

  for (int i = 0; i < 4; i++)
    {
      if (p[i] == 0)
        {
          if (q[i] <= 0)
            return FALSE;
          continue;
        }
      if (p[i] < 0)
        enter = MAX (enter, q[i] / p[i]);
      else
        leave = MIN (leave, q[i] / p[i]);
    }

  return enter < leave;
}

static gboolean
rings_hold (const GPtrArray *rings, const RcExtent *box)
{
  double   x = (box->x0 + box->x1) / 2, y = (box->y0 + box->y1) / 2;
  gboolean inside = FALSE;

  for (guint r = 0; r < rings->len; r++)
    {
      const GArray *ring = g_ptr_array_index (rings, r);

      for (guint i = 0; i < ring->len; i++)
        {
          const RcSpot *a = &g_array_index (ring, RcSpot, i);
          const RcSpot *b = &g_array_index (ring, RcSpot, (i + 1) % ring->len);

          if (segment_meets (a, b, box))
            return FALSE;
          if ((a->y <= y) != (b->y <= y) && x < a->x + (b->x - a->x) * (y - a->y) / (b->y - a->y))
            inside = !inside;
        }
    }

  return inside;
}

static gboolean
claim_within (RcPen *pen, const GPtrArray *rings, RcExtent extent, double width, double height, RcSpot *middle)
{
  const int reach = 6;
  double    step_x = (extent.x1 - extent.x0 - width) / 2 / reach;
  double    step_y = (extent.y1 - extent.y0 - height) / 2 / reach;

  if (step_x < 0 || step_y < 0)
    return FALSE;
  for (int ring = 0; ring <= reach; ring++)
    for (int i = -ring; i <= ring; i++)
      for (int j = -ring; j <= ring; j += (ABS (i) == ring || ring == 0) ? 1 : 2 * ring)
        {
          double   x = (extent.x0 + extent.x1) / 2 + i * step_x, y = (extent.y0 + extent.y1) / 2 + j * step_y;
          RcExtent box = { x - width / 2, y - height / 2, x + width / 2, y + height / 2 };

          if (!rc_pen_is_free (pen, &box) || !rings_hold (rings, &box))
            continue;
          rc_pen_take (pen, &box);
          *middle = (RcSpot){ x, y };
          return TRUE;
        }

  return FALSE;
}

RcExtent
rc_extent_clip (const RcExtent *extent, const RcExtent *to)
{
  return (RcExtent){ MAX (extent->x0, to->x0), MAX (extent->y0, to->y0), MIN (extent->x1, to->x1),
                     MIN (extent->y1, to->y1) };
}

static gboolean
is_same_extent (const RcExtent *a, const RcExtent *b)
{
  return a->x0 == b->x0 && a->y0 == b->y0 && a->x1 == b->x1 && a->y1 == b->y1;
}

gboolean
rc_pen_claim_inside (RcPen *pen, const GPtrArray *rings, double width, double height, RcSpot *middle)
{
  RcExtent whole = rc_rings_get_extent (rings), visible = rc_extent_clip (&whole, &pen->visible);
  RcExtent focused = rc_extent_clip (&whole, &pen->focus);

  if (!is_same_extent (&focused, &visible) && claim_within (pen, rings, focused, width, height, middle))
    return TRUE;

  return claim_within (pen, rings, visible, width, height, middle);
}

void
rc_pen_draw_arrow (RcPen *pen, RcSpot middle, double degrees, double length)
{
  double head = length * 0.28;

  cairo_save (pen->cr);
  cairo_translate (pen->cr, middle.x, middle.y);
  cairo_rotate (pen->cr, -degrees * G_PI / 180);
  cairo_set_line_width (pen->cr, pen->line);
  cairo_move_to (pen->cr, -length / 2, 0);
  cairo_line_to (pen->cr, length / 2 - head, 0);
  cairo_stroke (pen->cr);
  cairo_move_to (pen->cr, length / 2, 0);
  cairo_line_to (pen->cr, length / 2 - head, -head * 0.45);
  cairo_line_to (pen->cr, length / 2 - head, head * 0.45);
  cairo_close_path (pen->cr);
  cairo_fill (pen->cr);
  cairo_restore (pen->cr);
}
