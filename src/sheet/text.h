/* Text on paper: the few styles that every sheet uses, laid out by Pango in points, and numbers as the sheets print
 * them. Layouts are made without hinting, so that they measure the same for screen, PDF and PNG.
 */
#pragma once

#include <pango/pangocairo.h>

#include "job.h"

typedef enum
{
  RC_TEXT_TITLE,      /* the sheet's name */
  RC_TEXT_SHOP,       /* letterhead */
  RC_TEXT_HEADING,    /* a section */
  RC_TEXT_SUBHEADING, /* a part of a section */
  RC_TEXT_BODY,
  RC_TEXT_STRONG,
  RC_TEXT_NOTE,  /* smaller, grey */
  RC_TEXT_LABEL, /* heads of columns and fields: small, bold, grey */
  RC_TEXT_TOTAL, /* the figure that decides */
  RC_N_TEXT_STYLES
} RcTextStyle;

#define RC_TEXT_FAMILY "Sans"

/* One context serves a whole sheet. A font map is for one thread at a time, and so is what is laid out with it.
 * (transfer full) */
PangoContext *rc_text_context_new (PangoFontMap *fonts);

/* `text` in a style, wrapped at `width` points between words, inside a word only when it is wider than the line;
 * width <= 0: not wrapped. Text that is not UTF-8 is mended, NULL is empty. (transfer full) */
PangoLayout *rc_text_layout_new (PangoContext *context, RcTextStyle style, const char *text, double width);

/* Logical size in points. */
void rc_text_measure (PangoLayout *layout, double *width, double *height);

/* How dark a style is printed: 0 black to 1 white. */
double rc_text_style_get_grey (RcTextStyle style);
double rc_text_style_get_size (RcTextStyle style);

/* Decimal number without locale: "12.5". (transfer full) */
char *rc_text_format_double (double value, int decimals);

/* "12' 0\" × 20' 3\"": width first. (transfer full) */
char *rc_text_format_size (const RcJob *job, RcLength width, RcLength length);

/* A length as this job prints it. (transfer full) */
char *rc_text_format_length (const RcJob *job, RcLength length);

/* An area with its unit as this job prints it: "33.3 sq yd", "27.87 m²". (transfer full) */
char *rc_text_format_area (const RcJob *job, RcArea area);

/* "8.25 %", "7 %". (transfer full) */
char *rc_text_format_percent (gint64 ppm);

/* A part of something, to the tenth of a percent: "8.3 %". (transfer full) */
char *rc_text_format_tenths (gint64 ppm);

/* Money without its code, for columns that name it in their head: "1,234.50". (transfer full) */
char *rc_text_format_amount (RcMoney money, const RcCurrency *currency);
