/* Pages drawn with cairo and Pango: the same drawing code for screen, PDF and PNG. Draw functions change nothing.
 */
#pragma once

#include <cairo.h>

#include "quote.h"

typedef enum
{
  RC_PAPER_LETTER, /* 612 x 792 pt */
  RC_PAPER_A4,     /* 595.276 x 841.890 pt */
} RcPaper;

typedef enum
{
  RC_SHEET_SEAM_PLAN,
  RC_SHEET_FITTERS,
  RC_SHEET_CUT_LIST,
  RC_SHEET_QUOTATION,
  RC_SHEET_ORDER,   /* one per supplier */
  RC_SHEET_OPTIONS, /* options side by side, for the customer */
  RC_N_SHEETS
} RcSheetKind;

/* What pages are drawn from; all borrowed. */
typedef struct
{
  const RcPlan      *plan;
  const GPtrArray   *quantities; /* of RcQuantityLine */
  const RcQuote     *quote;      /* may be NULL for plan sheets */
  const RcOrder     *order;      /* for RC_SHEET_ORDER */
  const RcPriceBook *book;       /* letterhead and terms; nullable */
  const char        *number;     /* of the quotation or order; nullable: draft */
  const char        *date;       /* ISO 8601, printed as given; also the PDF's creation date */
  RcPaper            paper;
} RcSheetData;

const char *rc_sheet_kind_get_name (RcSheetKind kind);  /* stable, for file names: "seam-plan", "fitters-sheet", ... */
const char *rc_sheet_kind_get_label (RcSheetKind kind); /* translated */

void  rc_paper_get_size (RcPaper paper, double *width_pt, double *height_pt);
guint rc_sheet_count_pages (RcSheetKind kind, const RcSheetData *data);
/* Draws one page (from 0) at 1 unit = 1 pt, origin at the page's top left. */
void rc_sheet_draw_page (RcSheetKind kind, const RcSheetData *data, guint page, cairo_t *cr);

/* Byte-identical for the same data. */
gboolean rc_sheet_write_pdf (RcSheetKind kind, const RcSheetData *data, const char *path, GError **error);
/* One file per page: path "x.png" gives x-1.png, x-2.png when there are several. dpi e.g. 150. */
gboolean rc_sheet_write_png (RcSheetKind kind, const RcSheetData *data, double dpi, const char *path, GError **error);
