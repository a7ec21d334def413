/* The ribbon of a roll by itself: rc_roll_drawing_draw () without title, and a stretch of it only, for rolls that a
 * sheet shows in several rows.
 */
#pragma once

#include "page.h"
#include "pen.h"

typedef struct
{
  const RcPlan    *plan;
  const RcCutting *cutting;
  guint            use;      /* index in cutting->answer->rolls */
  const GArray    *selected; /* of guint: numbers of pieces; nullable */
  RcLength         from, to; /* the stretch of roll to draw */
  gboolean         torn;     /* the roll goes on after `to`: a torn edge */
} RcRollStretch;

/* Draws the stretch with its left top corner at x, y; the pen's view is not used. */
void rc_roll_draw_stretch (RcPen *pen, const RcRollStretch *stretch, double x, double y, double scale);
/* The same as a thing of a page; the stretch is copied. */
void rc_roll_add_stretch (RcPage *page, const RcRollStretch *stretch, double font_size, double x, double y,
                          double scale);
/* Height of ribbon and ruler. */
double rc_roll_get_stretch_height (const RcCutting *cutting, double font_size, double scale);

/* "Roll R-1041, lot 7, rack 3" or "To be bought, one dye lot". (transfer full) */
char *rc_roll_dup_name (const RcPlan *plan, const RcCutting *cutting, guint use);
/* The stock roll it is; NULL when it is to be bought. */
const RcRoll *rc_roll_find_stock (const RcPlan *plan, const RcCutting *cutting, guint use);
