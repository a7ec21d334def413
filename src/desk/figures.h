/* The figures that decide, always in view above the floor and the rolls.
 */
#pragma once

#include "outcome.h"

typedef struct
{
  RcLength   to_buy;     /* roll length to be bought, over all carpets */
  RcLength   from_stock; /* roll length taken from stock */
  gint64     waste_ppm;
  RcLength   side_seam, cross_seam;
  guint      n_seams;
  gboolean   is_priced;
  RcMoney    total;
  RcCurrency currency;
} RcFigures;

void rc_figures_compute (const RcOutcome *outcome, RcFigures *figures);

typedef enum
{
  RC_FIGURE_CARPET,
  RC_FIGURE_WASTE,
  RC_FIGURE_SEAMS,
  RC_FIGURE_TOTAL,
  RC_N_FIGURES
} RcFigure;

/* As printed on the bench, with its unit. (transfer full) */
char *rc_figures_format (const RcFigures *figures, RcFigure which, const RcLengthStyle *style);
/* A second line under it: how it is made up; "" for none. (transfer full) */
char *rc_figures_format_detail (const RcFigures *figures, RcFigure which, const RcLengthStyle *style);
/* < 0 when `which` went down from before to after, 0 as it was, > 0 up. */
int rc_figures_compare (const RcFigures *before, const RcFigures *after, RcFigure which);
