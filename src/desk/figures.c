#include "figures.h"

#include <glib/gi18n-lib.h>

#include "plan-totals.h"
#include "text.h"

void
rc_figures_compute (const RcOutcome *outcome, RcFigures *figures)
{
  RcPlanTotals totals;

  rc_plan_compute_totals (outcome->plan, &totals);
  *figures = (RcFigures){ .to_buy = totals.to_buy,
                          .from_stock = totals.from_stock,
                          .waste_ppm = outcome->plan->waste_ppm,
                          .side_seam = totals.side_seam,
                          .cross_seam = totals.cross_seam,
                          .n_seams = totals.n_side_seams + totals.n_cross_seams };
  figures->currency = outcome->job->currency;
  if (outcome->quote)
    {
      figures->is_priced = TRUE;
      figures->total = outcome->quote->total;
      figures->currency = outcome->quote->currency;
    }
}

char *
rc_figures_format (const RcFigures *figures, RcFigure which, const RcLengthStyle *style)
{
  switch (which)
    {
    case RC_FIGURE_CARPET:
      return rc_length_format (figures->to_buy, style);
    case RC_FIGURE_WASTE:
      return rc_text_format_tenths (figures->waste_ppm);
    case RC_FIGURE_SEAMS:
      return rc_length_format (figures->side_seam + figures->cross_seam, style);
    case RC_FIGURE_TOTAL:
    default:
      return figures->is_priced ? rc_money_format (figures->total, &figures->currency) : g_strdup (_ ("no price"));
    }
}

char *
rc_figures_format_detail (const RcFigures *figures, RcFigure which, const RcLengthStyle *style)
{
  if (which == RC_FIGURE_CARPET && figures->from_stock > 0)
    {
      g_autofree char *stock = rc_length_format (figures->from_stock, style);
      return g_strdup_printf (_ ("and %s from stock"), stock);
    }
  if (which == RC_FIGURE_SEAMS && figures->n_seams > 0 && figures->cross_seam == 0)
    return g_strdup_printf (ngettext ("%u seam, none of it cross", "%u seams, none of them cross", figures->n_seams),
                            figures->n_seams);
  if (which == RC_FIGURE_SEAMS && figures->n_seams > 0)
    {
      g_autofree char *cross = rc_length_format (figures->cross_seam, style);
      return g_strdup_printf (ngettext ("%u seam, %s of it cross", "%u seams, %s of it cross", figures->n_seams),
                              figures->n_seams, cross);
    }
  return g_strdup ("");
}

int
rc_figures_compare (const RcFigures *before, const RcFigures *after, RcFigure which)
{
  gint64 change = 0;

  switch (which)
    {
    case RC_FIGURE_CARPET:
      change = after->to_buy - before->to_buy;
      break;
    case RC_FIGURE_WASTE:
      change = (after->waste_ppm + 500) / 1000 - (before->waste_ppm + 500) / 1000;
      break;
    case RC_FIGURE_SEAMS:
      change = after->side_seam + after->cross_seam - before->side_seam - before->cross_seam;
      break;
    case RC_FIGURE_TOTAL:
    default:
      change = after->is_priced && before->is_priced ? after->total - before->total : 0;
    }
  return (change > 0) - (change < 0);
}
