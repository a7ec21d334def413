/* Sheets on paper: the same drawing code for screen, PDF and PNG. Draw functions change nothing.
 *
 * A sheet is laid out once (rc_sheet_new) and its pages then drawn as often as wanted. The plan sheets choose for each
 * page the way round that gives the larger drawing, so a page may be landscape: ask rc_sheet_get_page_size.
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
  RC_SHEET_ORDER,        /* one per supplier */
  RC_SHEET_OPTIONS,      /* options side by side, for the customer */
  RC_SHEET_ALTERNATIVES, /* the quotation and its alternatives side by side */
  RC_SHEET_ROLL_LABELS,  /* to tie to what is cut off the rolls and to what is left on them */
  RC_SHEET_JOB_SUMMARY,  /* cost and margin at a glance: for the office alone */
  RC_N_SHEETS
} RcSheetKind;

/* What pages are drawn from; all borrowed, and outliving an RcSheet made from it. */
typedef struct
{
  const RcPlan        *plan;         /* may be NULL for an order and for labels of stock */
  const GPtrArray     *quantities;   /* of RcQuantityLine; nullable */
  const RcQuote       *quote;        /* may be NULL for plan sheets */
  const GPtrArray     *alternatives; /* of RcQuote: the same job done otherwise, each named; nullable */
  const RcOrder       *order;        /* for RC_SHEET_ORDER */
  const char          *jobs;         /* whose goods an order is for; NULL: the plan's job */
  const RcPriceBook   *book;         /* letterhead and terms; nullable */
  const char          *number;       /* of the quotation or order; nullable: draft */
  const char          *changes;      /* number of the quotation that a variation changes; nullable */
  const char          *date;         /* ISO 8601, printed as given; also the PDF's creation date; nullable */
  RcPaper              paper;
  const GPtrArray     *stock;       /* of RcRoll: labels for these, as they lie there, without a plan; nullable */
  const RcLengthStyle *lengths;     /* how those are measured; NULL without them */
  const RcQuote       *accepted;    /* that the plan is held against on the fitters' sheet; nullable */
  const char          *accepted_as; /* its numbers; nullable */
  const char          *language;    /* of the sheet's own words, as rc_translation_begin; NULL: the program's */
} RcSheetData;

const char *rc_sheet_kind_get_name (RcSheetKind kind);  /* stable, for file names: "seam-plan", "fitters-sheet", ... */
const char *rc_sheet_kind_get_label (RcSheetKind kind); /* translated */

/* What is made for the customer to keep; what the shop pays is on none of these. */
gboolean rc_sheet_kind_is_customers (RcSheetKind kind);

void rc_paper_get_size (RcPaper paper, double *width_pt, double *height_pt); /* upright */

/* A sheet laid out: its pages. Laid out and drawn in the main thread where it has a language of its own. The data (not
 * the struct itself) must outlive it. (transfer full) */
typedef struct _RcSheet RcSheet;

RcSheet *rc_sheet_new (RcSheetKind kind, const RcSheetData *data);
void     rc_sheet_free (RcSheet *sheet);
guint    rc_sheet_get_n_pages (const RcSheet *sheet); /* at least 1 */
/* Size of page `page` (from 0): the paper's, upright or on its side. */
void rc_sheet_get_page_size (const RcSheet *sheet, guint page, double *width_pt, double *height_pt);
/* Draws a page at 1 unit = 1 pt, origin at the page's top left, on whatever lies there (paper is not painted). */
void rc_sheet_draw (const RcSheet *sheet, guint page, cairo_t *cr);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcSheet, rc_sheet_free)

/* The same in one call each, laying the sheet out every time, for callers that know only the paper: a page that lies on
 * its side is drawn turned, its top at the left of the upright paper. */
guint rc_sheet_count_pages (RcSheetKind kind, const RcSheetData *data);
void  rc_sheet_draw_page (RcSheetKind kind, const RcSheetData *data, guint page, cairo_t *cr);

/* Byte-identical for the same data. (transfer full) */
GBytes *rc_sheet_make_pdf (RcSheetKind kind, const RcSheetData *data, GError **error);
/* The same as a file. Whole files only: on an error the old file stands. Errors: G_FILE_ERROR. */
gboolean rc_sheet_write_pdf (RcSheetKind kind, const RcSheetData *data, const char *path, GError **error);
/* One file per page: path "x.png" gives x-1.png, x-2.png when there are several. dpi e.g. 150, from 18 to 1200. */
gboolean rc_sheet_write_png (RcSheetKind kind, const RcSheetData *data, double dpi, const char *path, GError **error);
