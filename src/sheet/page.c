#include "page.h"

#include <glib/gi18n-lib.h>

typedef enum
{
  ITEM_LAYOUT,
  ITEM_LINE,
  ITEM_FILL,
  ITEM_FRAME,
  ITEM_DRAWING,
} ItemKind;

typedef struct
{
  ItemKind       kind;
  double         x, y, width, height; /* a line: from x, y by width, height */
  double         grey, line_width;
  PangoLayout   *layout;
  guint          first_line, n_lines;
  RcPageDrawing  drawing;
  gpointer       data;
  GDestroyNotify destroy;
} Item;

static void
item_free (gpointer data)
{
  Item *item = data;

  g_clear_object (&item->layout);
  if (item->destroy)
    item->destroy (item->data);
  g_free (item);
}

static Item *
add_item (RcPage *page, ItemKind kind, double x, double y, double width, double height, double grey)
{
  Item *item = g_new0 (Item, 1);

  item->kind = kind;
  item->x = x;
  item->y = y;
  item->width = width;
  item->height = height;
  item->grey = grey;
  g_ptr_array_add (page->items, item);

  return item;
}

static void
page_free (gpointer data)
{
  RcPage *page = data;

  g_ptr_array_unref (page->items);
  g_free (page);
}

RcPages *
rc_pages_new (double paper_width, double paper_height, const char *title, const char *about, const char *foot)
{
  RcPages *pages = g_new0 (RcPages, 1);

  pages->paper_width = paper_width;
  pages->paper_height = paper_height;
  pages->context = rc_text_context_new (pango_cairo_font_map_get_default ());
  pages->pages = g_ptr_array_new_with_free_func (page_free);
  pages->title = g_strdup (title);
  pages->about = g_strdup (about);
  pages->foot = g_strdup (foot);

  return pages;
}

void
rc_pages_free (RcPages *pages)
{
  if (!pages)
    return;
  g_object_unref (pages->context);
  g_ptr_array_unref (pages->pages);
  g_free (pages->title);
  g_free (pages->about);
  g_free (pages->foot);
  g_free (pages);
}

void
rc_page_add_layout (RcPage *page, double x, double y, PangoLayout *layout, double grey)
{
  rc_page_add_layout_lines (page, x, y, layout, grey, 0, G_MAXUINT);
}

void
rc_page_add_layout_lines (RcPage *page, double x, double y, PangoLayout *layout, double grey, guint first,
                          guint n_lines)
{
  Item *item = add_item (page, ITEM_LAYOUT, x, y, 0, 0, grey);

  item->layout = layout;
  item->first_line = first;
  item->n_lines = n_lines;
}

void
rc_page_add_line (RcPage *page, double x0, double y0, double x1, double y1, double line_width, double grey)
{
  add_item (page, ITEM_LINE, x0, y0, x1 - x0, y1 - y0, grey)->line_width = line_width;
}

void
rc_page_add_fill (RcPage *page, double x, double y, double width, double height, double grey)
{
  add_item (page, ITEM_FILL, x, y, width, height, grey);
}

void
rc_page_add_frame (RcPage *page, double x, double y, double width, double height, double line_width, double grey)
{
  add_item (page, ITEM_FRAME, x, y, width, height, grey)->line_width = line_width;
}

void
rc_page_add_drawing (RcPage *page, double x, double y, double width, double height, RcPageDrawing drawing,
                     gpointer data, GDestroyNotify destroy)
{
  Item *item = add_item (page, ITEM_DRAWING, x, y, width, height, 0);

  item->drawing = drawing;
  item->data = data;
  item->destroy = destroy;
}

/* Line tops and bottoms of a layout, in points. */
static GArray *
layout_dup_line_ends (PangoLayout *layout)
{
  GArray          *ends = g_array_new (FALSE, FALSE, sizeof (double));
  PangoLayoutIter *iter = pango_layout_get_iter (layout);

  do
    {
      PangoRectangle logical;
      double         end;

      pango_layout_iter_get_line_extents (iter, NULL, &logical);
      end = (double)(logical.y + logical.height) / PANGO_SCALE;
      g_array_append_val (ends, end);
    }
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);

  return ends;
}

static void
draw_layout (const Item *item, cairo_t *cr)
{
  PangoLayoutIter *iter;
  double           top = 0;
  guint            line = 0;

  if (item->n_lines == G_MAXUINT)
    {
      cairo_move_to (cr, item->x, item->y);
      pango_cairo_show_layout (cr, item->layout);
      return;
    }
  iter = pango_layout_get_iter (item->layout);
  do
    {
      PangoRectangle logical;
      double         baseline = (double)pango_layout_iter_get_baseline (iter) / PANGO_SCALE;

      pango_layout_iter_get_line_extents (iter, NULL, &logical);
      if (line == item->first_line)
        top = (double)logical.y / PANGO_SCALE;
      if (line >= item->first_line && line - item->first_line < item->n_lines)
        {
          cairo_move_to (cr, item->x + (double)logical.x / PANGO_SCALE, item->y + baseline - top);
          pango_cairo_show_layout_line (cr, pango_layout_iter_get_line_readonly (iter));
        }
      line++;
    }
  while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
}

static void
draw_item (const Item *item, cairo_t *cr)
{
  cairo_save (cr);
  cairo_set_source_rgb (cr, item->grey, item->grey, item->grey);
  cairo_set_line_width (cr, item->line_width);
  switch (item->kind)
    {
    case ITEM_LAYOUT:
      draw_layout (item, cr);
      break;
    case ITEM_LINE:
      cairo_move_to (cr, item->x, item->y);
      cairo_rel_line_to (cr, item->width, item->height);
      cairo_stroke (cr);
      break;
    case ITEM_FILL:
      cairo_rectangle (cr, item->x, item->y, item->width, item->height);
      cairo_fill (cr);
      break;
    case ITEM_FRAME:
      cairo_rectangle (cr, item->x, item->y, item->width, item->height);
      cairo_stroke (cr);
      break;
    case ITEM_DRAWING:
      item->drawing (cr, item->x, item->y, item->width, item->height, item->data);
      break;
    }
  cairo_restore (cr);
}

void
rc_pages_draw (const RcPages *pages, guint number, cairo_t *cr)
{
  const RcPage *page;

  g_return_if_fail (number < pages->pages->len);

  page = g_ptr_array_index (pages->pages, number);
  for (guint i = 0; i < page->items->len; i++)
    draw_item (g_ptr_array_index (page->items, i), cr);
}

/* A line of running text, cut with an ellipsis where it is too long; right-aligned when `right`. */
static void
add_running (RcPages *pages, RcPage *page, const char *text, double x, double y, double width, gboolean right)
{
  PangoLayout *layout = rc_text_layout_new (pages->context, RC_TEXT_NOTE, text, width);

  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_alignment (layout, right ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
  rc_page_add_layout (page, x, y, layout, rc_text_style_get_grey (RC_TEXT_NOTE));
}

void
rc_pages_finish (RcPages *pages)
{
  for (guint i = 0; i < pages->pages->len; i++)
    {
      RcPage          *page = g_ptr_array_index (pages->pages, i);
      double           width = page->width - 2 * RC_PAGE_MARGIN;
      double           y = page->height - RC_PAGE_MARGIN - 10;
      g_autofree char *number = g_strdup_printf (_ ("%u of %u"), i + 1, pages->pages->len);

      rc_page_add_line (page, RC_PAGE_MARGIN, y - 5, RC_PAGE_MARGIN + width, y - 5, 0.4, 0.6);
      add_running (pages, page, pages->foot, RC_PAGE_MARGIN, y, width - 70, FALSE);
      add_running (pages, page, number, RC_PAGE_MARGIN + width - 60, y, 60, TRUE);
      if (i == 0)
        continue;
      add_running (pages, page, pages->title, RC_PAGE_MARGIN, RC_PAGE_TOP, width * 0.3, FALSE);
      add_running (pages, page, pages->about, RC_PAGE_MARGIN + width * 0.32, RC_PAGE_TOP, width * 0.68, TRUE);
      rc_page_add_line (page, RC_PAGE_MARGIN, RC_PAGE_TOP + 13, RC_PAGE_MARGIN + width, RC_PAGE_TOP + 13, 0.4, 0.6);
    }
}

void
rc_flow_start (RcFlow *flow, RcPages *pages, gboolean landscape)
{
  flow->pages = pages;
  rc_flow_break (flow, landscape);
}

void
rc_flow_break (RcFlow *flow, gboolean landscape)
{
  RcPages *pages = flow->pages;
  RcPage  *page = g_new0 (RcPage, 1);

  page->width = landscape ? pages->paper_height : pages->paper_width;
  page->height = landscape ? pages->paper_width : pages->paper_height;
  page->items = g_ptr_array_new_with_free_func (item_free);
  g_ptr_array_add (pages->pages, page);

  flow->page = page;
  flow->x = RC_PAGE_MARGIN;
  flow->width = page->width - 2 * RC_PAGE_MARGIN;
  flow->y = RC_PAGE_TOP + (pages->pages->len > 1 ? RC_PAGE_HEAD_HEIGHT : 0);
  flow->bottom = page->height - RC_PAGE_MARGIN - RC_PAGE_FOOT_HEIGHT;
}

double
rc_flow_get_left (const RcFlow *flow)
{
  return flow->bottom - flow->y;
}

static double
flow_get_page_height (const RcFlow *flow)
{
  return flow->bottom - RC_PAGE_TOP - RC_PAGE_HEAD_HEIGHT;
}

gboolean
rc_flow_need (RcFlow *flow, double height)
{
  if (flow->y + height <= flow->bottom)
    return FALSE;
  /* Nothing is gained by leaving a page that is still empty. */
  if (flow->y <= RC_PAGE_TOP + RC_PAGE_HEAD_HEIGHT + 0.01)
    return FALSE;
  rc_flow_break (flow, flow->page->width > flow->page->height);

  return TRUE;
}

void
rc_flow_skip (RcFlow *flow, double height)
{
  flow->y += height;
}

void
rc_flow_text_at (RcFlow *flow, RcTextStyle style, const char *text, double indent)
{
  g_autoptr (PangoLayout) layout = rc_text_layout_new (flow->pages->context, style, text, flow->width - indent);
  g_autoptr (GArray) ends = layout_dup_line_ends (layout);
  guint first = 0;

  while (first < ends->len)
    {
      double top = first ? g_array_index (ends, double, first - 1) : 0;
      guint  n_lines = 0;

      while (first + n_lines < ends->len
             && flow->y + g_array_index (ends, double, first + n_lines) - top <= flow->bottom)
        n_lines++;
      /* Two lines at least stay together at the foot of a page, and one is always placed on an empty page. */
      if ((n_lines == 0 || (n_lines == 1 && ends->len - first > 1)) && rc_flow_need (flow, flow_get_page_height (flow)))
        continue;
      n_lines = MAX (n_lines, 1);
      rc_page_add_layout_lines (flow->page, flow->x + indent, flow->y, g_object_ref (layout),
                                rc_text_style_get_grey (style), first, n_lines);
      flow->y += g_array_index (ends, double, first + n_lines - 1) - top;
      first += n_lines;
    }
}

void
rc_flow_text (RcFlow *flow, RcTextStyle style, const char *text)
{
  rc_flow_text_at (flow, style, text, 0);
}

void
rc_flow_numbered (RcFlow *flow, const char *number, const char *text)
{
  const double indent = 20;
  PangoLayout *layout = rc_text_layout_new (flow->pages->context, RC_TEXT_STRONG, number, 0);
  PangoLayout *probe = rc_text_layout_new (flow->pages->context, RC_TEXT_BODY, text, flow->width - indent);
  double       height, number_width;

  rc_text_measure (probe, NULL, &height);
  rc_text_measure (layout, &number_width, NULL);
  g_object_unref (probe);
  /* Steps are not torn apart unless they are long. */
  rc_flow_need (flow, MIN (height, 60));
  rc_page_add_layout (flow->page, flow->x + indent - 6 - number_width, flow->y, layout, 0.08);
  rc_flow_text_at (flow, RC_TEXT_BODY, text, indent);
  flow->y += 3;
}

void
rc_flow_heading (RcFlow *flow, const char *text, double keep)
{
  double size = rc_text_style_get_size (RC_TEXT_HEADING);

  rc_flow_need (flow, 12 + 2 * size + keep);
  flow->y += 8;
  rc_page_add_line (flow->page, flow->x, flow->y, flow->x + flow->width, flow->y, 1.0, 0.08);
  flow->y += 5;
  rc_flow_text (flow, RC_TEXT_HEADING, text);
  flow->y += 3;
}

void
rc_flow_subheading (RcFlow *flow, const char *text, double keep)
{
  rc_flow_need (flow, 20 + keep);
  flow->y += 5;
  rc_flow_text (flow, RC_TEXT_SUBHEADING, text);
  flow->y += 2;
}
