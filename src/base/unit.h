/* Units that goods and work are counted in, and quantities in millionths of such a unit.
 *
 * Codes are UN/ECE Recommendation 20 (packages: Recommendation 21 with X).
 */
#pragma once

#include "area.h"

typedef enum
{
  RC_UNIT_EACH,   /* C62 */
  RC_UNIT_M,      /* MTR */
  RC_UNIT_FT,     /* FOT */
  RC_UNIT_YD,     /* YRD */
  RC_UNIT_M2,     /* MTK */
  RC_UNIT_SQ_FT,  /* FTK */
  RC_UNIT_SQ_YD,  /* YDK */
  RC_UNIT_LITRE,  /* LTR */
  RC_UNIT_GALLON, /* GLL, US liquid gallon, 3.785411784 L */
  RC_UNIT_HOUR,   /* HUR */
  RC_UNIT_ROLL,   /* XRO */
  RC_UNIT_CARTON, /* XCT */
  RC_UNIT_BOX,    /* XBX */
  RC_UNIT_TUB,    /* XTB */
  RC_N_UNITS
} RcUnit;

#define RC_MICRO G_GINT64_CONSTANT (1000000)

const char *rc_unit_get_name (RcUnit unit);  /* stable word for XML, CSV, JSON: "each", "m", "ft", "yd", "m2", "sq ft",
                                                "sq yd", "L", "gal", "h", "roll", "carton", "box", "tub" */
const char *rc_unit_get_label (RcUnit unit); /* translated */
const char *rc_unit_get_unece (RcUnit unit);
gboolean    rc_unit_parse (const char *name, RcUnit *unit, GError **error);

/* Quantity of a length or area in `unit`, in millionths, rounded half up. The unit must be one of length (area);
 * a programmer's error otherwise. */
gint64 rc_unit_from_length (RcLength length, RcUnit unit);
gint64 rc_unit_from_area (RcArea area, RcUnit unit);

/* "36", "37.333": at most `decimals` digits, trailing zeros dropped. (transfer full) */
char *rc_quantity_format (gint64 quantity_micro, int decimals);

/* Reads a decimal number into millionths. Errors: RC_ERROR_PARSE, RC_ERROR_RANGE. */
gboolean rc_quantity_parse (const char *text, gint64 *quantity_micro, GError **error);

/* Rates are parts per million: "7.25" for 72,500. (transfer full) */
char *rc_rate_format (gint64 rate_ppm);
/* Reads "7.25" or "7.25 %", at most four digits after the point. Errors: RC_ERROR_PARSE, RC_ERROR_RANGE. */
gboolean rc_rate_parse (const char *text, gint64 *rate_ppm, GError **error);
