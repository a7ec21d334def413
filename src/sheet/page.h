/* Pages as a list of things to draw, and a cursor that fills them from top to bottom.
 *
 * Sheets are laid out into RcPages once; drawing replays the list. Sizes are points, the origin is the page's top left.
 */
#pragma once

#include <cairo.h>

#include "text.h"

typedef struct
{
  double     width, height;
  GPtrArray *items;
} RcPage;

/* Draws into the rectangle given; `data` is what the item was added with. */
typedef void (*RcPageDrawing) (cairo_t *cr, double x, double y, double width, double height, gconstpointer data);

typedef struct
{
  double        paper_width, paper_height; /* upright */
  PangoContext *context;
  GPtrArray    *pages; /* of RcPage */
  char         *title; /* running header: what the sheet is */
  char         *about; /* running header: whose */
  char         *foot;  /* running footer, left */
} RcPages;

#define RC_PAGE_MARGIN      40.0 /* left, right and bottom of the footer; printers keep at most 18 pt to themselves */
#define RC_PAGE_TOP         40.0
#define RC_PAGE_FOOT_HEIGHT 22.0 /* above the bottom margin, kept for the footer */
#define RC_PAGE_HEAD_HEIGHT 24.0 /* under the top margin, kept for the running header from page 2 on */

RcPages *rc_pages_new (double paper_width, double paper_height, const char *title, const char *about, const char *foot);
void     rc_pages_free (RcPages *pages);
/* Adds header and footer with "1 of 3"; once, when all pages are there. */
void rc_pages_finish (RcPages *pages);
void rc_pages_draw (const RcPages *pages, guint page, cairo_t *cr);

/* Items. Layouts are taken over (transfer full). Grey: 0 black to 1 white. */
void rc_page_add_layout (RcPage *page, double x, double y, PangoLayout *layout, double grey);
/* Only lines first .. first + n - 1 of the layout, the first at y. */
void rc_page_add_layout_lines (RcPage *page, double x, double y, PangoLayout *layout, double grey, guint first,
                               guint n_lines);
void rc_page_add_line (RcPage *page, double x0, double y0, double x1, double y1, double line_width, double grey);
void rc_page_add_fill (RcPage *page, double x, double y, double width, double height, double grey);
void rc_page_add_frame (RcPage *page, double x, double y, double width, double height, double line_width, double grey);
/* `data` is taken over, freed with `destroy` (nullable). */
void rc_page_add_drawing (RcPage *page, double x, double y, double width, double height, RcPageDrawing drawing,
                          gpointer data, GDestroyNotify destroy);

/* The cursor. */
typedef struct
{
  RcPages *pages;
  RcPage  *page;
  double   x, width; /* the column */
  double   y;        /* where the next thing goes */
  double   bottom;   /* where the page is full */
} RcFlow;

/* Starts on a new page, upright or landscape. */
void rc_flow_start (RcFlow *flow, RcPages *pages, gboolean landscape);
void rc_flow_break (RcFlow *flow, gboolean landscape);
/* Breaks the page when `height` does not fit on what is left; TRUE when it did. Taller than a page: breaks once. */
gboolean rc_flow_need (RcFlow *flow, double height);
void     rc_flow_skip (RcFlow *flow, double height);
double   rc_flow_get_left (const RcFlow *flow);

/* Paragraphs; long ones run on to the next page line by line. */
void rc_flow_text (RcFlow *flow, RcTextStyle style, const char *text);
void rc_flow_text_at (RcFlow *flow, RcTextStyle style, const char *text, double indent);
/* "3  Text", the number hanging in front of the text. */
void rc_flow_numbered (RcFlow *flow, const char *number, const char *text);
/* A section's head with a rule over it, kept together with `keep` points of what follows. */
void rc_flow_heading (RcFlow *flow, const char *text, double keep);
void rc_flow_subheading (RcFlow *flow, const char *text, double keep);
