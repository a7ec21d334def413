/* The fitters' sheet of one stair. */
#include <glib/gi18n-lib.h>

#include "fitters-area.h"
#include "quantity.h"
#include "stair-drawing.h"
#include "table.h"
#include "words.h"

static void
add_stair_steps (RcSheetWork *work, const RcStair *stair)
{
  const RcPlan    *plan = work->data->plan;
  gboolean         waterfall = stair->style == RC_STAIR_WATERFALL;
  g_autofree char *inner
      = rc_text_format_length (plan->job, rc_stair_get_inner_width (stair, rc_stair_get_plain_step (stair)));
  g_autofree char *strip = rc_text_format_length (plan->job, rc_stair_compute_strip (stair));
  g_autofree char *cut = g_strdup_printf (
      _ ("Cut strip and cushion %s wide: about 1 1/2 in (38 mm) less than the carpet, whose edges are turned."), inner);
  g_autofree char *fix = g_strdup_printf (
      waterfall
          ? _ ("Strip on every tread, pins to the riser, and on every riser, pins down: %s in all. The gully between "
               "the two is slightly less than double the carpet’s thickness.")
          : _ ("Strip on every tread, pins to the riser, none on the risers: %s in all."),
      strip);
  const char *steps[] = {
    /* CRI 2011 17.1: the nose rounded 3/4 to 1 in. */
    _ ("Round the nosings to 3/4 to 1 in (19 to 25 mm); tighten what creaks."),
    cut, /* CRI 2011 17.2 */
    fix, /* CRI 2011 17.2 */
    /* CRI 2011 17.1 */
    _ ("Carry the cushion over each nosing and fix it on the riser below."),
    /* CRI 2011 17.3.1; Litchfield */
    _ ("Carpet parallel to the length of the stair, the pile leaning down the risers, towards the climber on the "
       "treads. "
       "Start at the bottom."),
    waterfall
        ? _ ("Hook each tread’s back edge, stretch, let the carpet fall straight from the nosing to the tread below.")
        : _ ("Wrap the carpet tight round each nosing and fasten it under it, then down the riser."),
    /* Litchfield */
    _ ("Join lengths only where a riser meets a tread. Fold what is left over under, not over."),
    /* Litchfield; folding under: how-to pages */
    rc_stair_has_turn (stair, RC_TURN_WINDERS) ? _ (
        "Cut a template for each winder, its tread and the riser below with 1 in (25 mm) for the nose, and lay it on "
        "the piece with the pile down the middle of the step.")
                                               : NULL,
    /* how-to page */
    rc_stair_has_turn (stair, RC_TURN_LANDING)
        ? _ ("The landing’s piece goes round its nosing and down the riser below it.")
        : NULL,
    stair->curved_width > 0
        ? _ ("Fit the curved bottom step first, its riser from a template; the flight begins on it.")
        : NULL,
    stair->runner_width > 0 ? _ ("Mark the runner’s two edges on every step from the middle before the first strip.")
                            : NULL,
  };
  guint n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      g_autofree char *number = g_strdup_printf ("%u", n + 1);

      if (steps[i] == NULL)
        continue;
      n++;

      rc_flow_numbered (&work->flow, number, steps[i]);
    }
}

/* The pieces of a stair from the bottom up, with what they cover. */
static void
add_stair_pieces (RcSheetWork *work, const RcStair *stair)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (GArray) parts = rc_stair_compute_pieces (stair);
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("PIECE"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("COVERS"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("CUT WIDTH"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("CUT LENGTH"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("COMES OFF"), RC_COLUMN_TEXT, 1);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);

      if (piece->kind == RC_PIECE_STAIR && g_strcmp0 (piece->room, stair->id) == 0 && parts != NULL
          && piece->stair_piece < parts->len)
        {
          g_autofree char *number = g_strdup_printf ("%u", piece->number);
          g_autofree char *covers = rc_stair_piece_dup_label (&g_array_index (parts, RcStairPiece, piece->stair_piece));
          g_autofree char *across = rc_text_format_length (plan->job, piece->cut_width);
          g_autofree char *along = rc_text_format_length (plan->job, piece->cut_length);
          g_autofree char *source = rc_fitters_dup_source (plan, piece);

          rc_table_add_row (table, RC_ROW_BODY, number, covers, across, along, source);
        }
    }
  rc_table_flow (table, &work->flow);
}

void
rc_fitters_add_stair (RcSheetWork *work, const RcStair *stair)
{
  const RcPlan    *plan = work->data->plan;
  RcFlow          *flow = &work->flow;
  const char      *name = stair->name ? stair->name : stair->id;
  g_autofree char *title = g_strdup_printf (_ ("Stair: %s"), name);
  g_autofree char *rise = rc_text_format_length (plan->job, stair->rise);
  g_autofree char *going = rc_text_format_length (plan->job, stair->going);
  g_autofree char *width = rc_text_format_length (plan->job, stair->width);
  g_autofree char *extras = rc_stair_dup_extras (stair, rc_job_get_length_style (plan->job));
  g_autofree char *facts
      = g_strdup_printf (ngettext ("%s, %s. %u step of %s rise and %s tread, %s wide%s.",
                                   "%s, %s. %u steps of %s rise and %s tread, %s wide%s.", stair->steps),
                         rc_words_get_goods (plan, stair->carpet),
                         stair->style == RC_STAIR_WATERFALL ? _ ("waterfall") : _ ("cap-and-band"), stair->steps, rise,
                         going, width, extras);
  double height = rc_stair_drawing_get_height (stair, flow->width);

  rc_flow_heading (flow, title, height + 90);
  rc_flow_text (flow, RC_TEXT_BODY, facts);
  rc_flow_skip (flow, 2);
  rc_stair_drawing_add (flow->page, flow->x, flow->y, flow->width, plan, stair);
  rc_flow_skip (flow, height + 2);
  rc_flow_text (flow, RC_TEXT_NOTE,
                _ ("Laid flat, the bottom step at the left; risers grey, pieces in thick lines. The arrow is the pile, "
                   "down the stair."));
  rc_flow_skip (flow, 4);
  add_stair_pieces (work, stair);
  add_stair_steps (work, stair);
}
