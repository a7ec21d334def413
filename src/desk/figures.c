#include "figures.h"

#include <glib/gi18n-lib.h>

static void
count_rolls (const RcPlan *plan, RcFigures *figures)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);
      for (guint u = 0; u < cutting->answer->rolls->len; u++)
        {
          const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, u);
          gboolean         is_stock
              = use->source < cutting->roll_ids->len && g_ptr_array_index (cutting->roll_ids, use->source) != NULL;
          if (is_stock)
            figures->from_stock += use->used;
          else
            figures->to_buy += use->length;
        }
    }
}

void
rc_figures_compute (const RcOutcome *outcome, RcFigures *figures)
{
  *figures = (RcFigures){ .waste_ppm = outcome->plan->waste_ppm, .n_seams = outcome->plan->seams->len };

  count_rolls (outcome->plan, figures);
  for (guint s = 0; s < outcome->plan->seams->len; s++)
    {
      const RcSeam *seam = g_ptr_array_index (outcome->plan->seams, s);
      *(seam->kind == RC_SEAM_SIDE ? &figures->side_seam : &figures->cross_seam) += seam->length;
    }
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
      {
        gint64 tenths = (figures->waste_ppm + 500) / 1000;
        return g_strdup_printf ("%" G_GINT64_FORMAT ".%" G_GINT64_FORMAT " %%", tenths / 10, tenths % 10);
      }
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
