#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "floor-figure.h"
#include "roll-drawing.h"
#include "scale.h"
#include "table.h"
#include "words.h"

#define RIBBON_FONT    6.75
#define RIBBON_HIGHEST 128.0 /* points that a roll's width may take on the page */
#define RIBBON_LEAST   44.0  /* under this, the roll goes on in another row */
#define RULER_ASIDE    13.0  /* half of a figure of the ruler, at both ends */

/* What of a roll is drawn, and how. */
typedef struct
{
  RcLength shown; /* from its start: the cuts, and enough of the balance to see it */
  gboolean torn;
  guint    ratio;
  double   scale;
  RcLength row; /* length of roll in one row */
} RibbonPlan;

static RibbonPlan
plan_ribbon (const RcPlan *plan, const RcCutting *cutting, const RcNestUse *use, double width)
{
  RcUnitSystem units = plan->job->units;
  RcLength     roll_width = cutting->problem->roll_width, length = MAX (use->length, use->used);
  RcLength     tail = MAX (roll_width / 2, use->used / 8);
  RibbonPlan   ribbon;

  ribbon.shown = length;
  ribbon.torn = FALSE;
  if (length > use->used + 2 * tail)
    {
      ribbon.shown = use->used + tail;
      ribbon.torn = TRUE;
    }
  width -= 2 * RULER_ASIDE;
  ribbon.ratio = rc_scale_choose (units, ribbon.shown, roll_width, width, RIBBON_HIGHEST);
  /* A long roll would get too thin: at the scale that still reads it takes several rows. */
  if ((double)roll_width * rc_scale_to_points_per_tick (ribbon.ratio) < RIBBON_LEAST)
    ribbon.ratio = rc_scale_choose (units, 0, roll_width, width, RIBBON_LEAST * 1.6);
  ribbon.scale = rc_scale_to_points_per_tick (ribbon.ratio);
  ribbon.row = (RcLength)(width / ribbon.scale);

  return ribbon;
}

/* Where a row of ribbon ends: at the last place before `most` at which no piece is parted; at `most` where there is
 * none. */
static RcLength
find_row_end (const RcCutting *cutting, guint use, RcLength from, RcLength most)
{
  const GArray *placements = cutting->answer->placements;
  RcLength      end = most;
  gboolean      moved = TRUE;

  while (moved)
    {
      moved = FALSE;
      for (guint i = 0; i < placements->len; i++)
        {
          const RcNestPlacement *placement = &g_array_index (placements, RcNestPlacement, i);

          if (placement->roll == use && placement->along < end && placement->along + placement->length > end)
            {
              end = placement->along;
              moved = TRUE;
            }
        }
    }
  return end > from + (most - from) / 3 ? end : most;
}

static void
add_ribbon (RcSheetWork *work, const RcCutting *cutting, guint use_index)
{
  RcFlow          *flow = &work->flow;
  const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, use_index);
  RibbonPlan       plan = plan_ribbon (work->data->plan, cutting, use, flow->width);
  double           height = rc_roll_get_stretch_height (cutting, RIBBON_FONT, plan.scale);
  g_autofree char *scale = rc_scale_format (work->data->plan->job->units, plan.ratio);
  g_autofree char *note = g_strdup_printf (
      _ ("Drawn %s from the roll’s start at the left, its left edge on top. Grey is waste, dots are balance."), scale);

  for (RcLength from = 0, to; from < plan.shown; from = to)
    {
      to = from + plan.row < plan.shown ? find_row_end (cutting, use_index, from, from + plan.row) : plan.shown;
      const RcRollStretch stretch = { work->data->plan, cutting, use_index, 0, from, to, plan.torn || to < plan.shown };

      rc_flow_need (flow, height + 4);
      rc_roll_add_stretch (flow->page, &stretch, RIBBON_FONT, flow->x + RULER_ASIDE, flow->y, plan.scale);
      flow->y += height + 4;
    }
  rc_flow_text (flow, RC_TEXT_NOTE, note);
  flow->y += 4;
}

/* The trade's rule of one repeat a cut is the roll length that the supplier or a colleague would reckon with. */
static void
add_pattern_note (RcSheetWork *work, const RcCutting *cutting)
{
  const RcJob     *job = work->data->plan->job;
  g_autofree char *safe = rc_text_format_length (job, cutting->safe_length);
  g_autofree char *used = rc_text_format_length (job, cutting->answer->used_length);
  g_autofree char *note = NULL;

  rc_flow_text (&work->flow, RC_TEXT_NOTE,
                _ ("Patterned goods: positions keep the pattern along the roll and across it. Check the repeat on the "
                   "roll itself before the first cut."));
  if (cutting->safe_length == 0)
    return;
  note = g_strdup_printf (_ ("Cut at these places the carpet takes %s in all; by the safe rule of one repeat more for "
                             "each cut it would take %s."),
                          used, safe);
  rc_flow_text (&work->flow, RC_TEXT_NOTE, note);
}

static void
add_cuts (RcSheetWork *work, const RcCutting *cutting, guint use)
{
  const RcPlan *plan = work->data->plan;
  const GArray *placements = cutting->answer->placements;
  gboolean      patterned = FALSE;
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("PIECE"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("KIND"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("FOR"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("WIDTH"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("LENGTH"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("FROM START"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("FROM LEFT EDGE"), RC_COLUMN_RIGHT, 0);
  for (guint i = 0; i < placements->len; i++)
    {
      const RcNestPlacement *placement = &g_array_index (placements, RcNestPlacement, i);
      guint                  number = g_array_index (cutting->piece_numbers, guint, placement->cut);
      const RcPiece         *piece = rc_plan_find_piece (plan, number);
      g_autofree char       *number_text = g_strdup_printf ("%u", number);
      g_autofree char       *width = rc_text_format_length (plan->job, placement->width);
      g_autofree char       *length = rc_text_format_length (plan->job, placement->length);
      g_autofree char       *along = rc_text_format_length (plan->job, placement->along);
      g_autofree char       *across = rc_text_format_length (plan->job, placement->across);

      if (placement->roll != use || !piece)
        continue;
      rc_table_add_row (table, RC_ROW_BODY, number_text, rc_words_get_piece_kind (piece),
                        rc_words_get_place (plan, piece->room), width, length, along, across);
      patterned = patterned || piece->repeat > 0;
    }
  rc_table_flow (table, &work->flow);
  if (patterned)
    add_pattern_note (work, cutting);
}

/* The numbers of the pieces that lie free after a stroke. (transfer full) */
static char *
dup_freed (const RcCutting *cutting, const guint *freed_by, guint stroke)
{
  GString *text = g_string_new (NULL);

  for (guint p = 0; p < cutting->answer->placements->len; p++)
    if (freed_by[p] == stroke)
      {
        const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, p);

        g_string_append_printf (text, "%s%u", text->len > 0 ? ", " : "",
                                g_array_index (cutting->piece_numbers, guint, placement->cut));
      }
  return g_string_free (text, FALSE);
}

static void
add_stroke (const RcPlan *plan, RcTable *table, const RcNestStroke *stroke, guint number, const char *freed)
{
  g_autofree char *number_text = g_strdup_printf ("%u", number);
  g_autofree char *at = rc_text_format_length (plan->job, stroke->at);
  g_autofree char *from = rc_text_format_length (plan->job, stroke->from);
  g_autofree char *to = rc_text_format_length (plan->job, stroke->to);
  g_autofree char *place = NULL, *reach = NULL;

  if (stroke->along_roll)
    {
      place = g_strdup_printf (_ ("%s from the left edge"), at);
      reach = g_strdup_printf (_ ("%s to %s from the start"), from, to);
    }
  else
    {
      place = g_strdup_printf (_ ("%s from the start"), at);
      reach = stroke->stage <= 1 ? g_strdup (_ ("edge to edge"))
                                 : g_strdup_printf (_ ("%s to %s from the left edge"), from, to);
    }
  rc_table_add_row (table, RC_ROW_BODY, number_text, stroke->along_roll ? _ ("Along the roll") : _ ("Across the roll"),
                    place, reach, freed);
}

static void
add_strokes (RcSheetWork *work, const RcCutting *cutting, guint use)
{
  const GArray     *strokes = cutting->answer->strokes;
  g_autofree guint *freed_by = rc_nest_answer_list_freeing (cutting->answer);
  guint             number = 0;
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("ORDER"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("CUT"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("AT"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("REACHES"), RC_COLUMN_TEXT, 1.3);
  rc_table_add_column (table, _ ("OUT COMES"), RC_COLUMN_TEXT, 0);
  for (guint i = 0; i < strokes->len; i++)
    {
      const RcNestStroke *stroke = &g_array_index (strokes, RcNestStroke, i);
      g_autofree char    *freed = dup_freed (cutting, freed_by, i);

      if (stroke->roll == use)
        add_stroke (work->data->plan, table, stroke, ++number, freed);
    }
  if (number == 0)
    return;
  rc_flow_subheading (&work->flow, _ ("Cuts in order"), 40);
  rc_table_flow (table, &work->flow);
}

static void
add_roll (RcSheetWork *work, const RcCutting *cutting, guint use_index)
{
  const RcPlan    *plan = work->data->plan;
  const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, use_index);
  const RcRoll    *stock = rc_roll_find_stock (plan, cutting, use_index);
  g_autofree char *name = rc_roll_dup_name (plan, cutting, use_index);
  g_autofree char *length = rc_text_format_length (plan->job, use->length);
  g_autofree char *used = rc_text_format_length (plan->job, use->used);
  g_autofree char *balance = rc_text_format_length (plan->job, MAX (0, use->length - use->used));
  g_autofree char *line = NULL;

  line = g_strdup_printf (stock ? _ ("%s: %s long, used %s, balance %s") : _ ("%s: %s to buy, used %s, balance %s"),
                          name, length, used, balance);
  rc_flow_subheading (&work->flow, line, 120);
  add_ribbon (work, cutting, use_index);
  add_cuts (work, cutting, use_index);
  add_strokes (work, cutting, use_index);
  rc_flow_skip (&work->flow, 6);
}

static void
add_cutting (RcSheetWork *work, const RcCutting *cutting)
{
  const RcPlan    *plan = work->data->plan;
  const RcGoods   *goods = cutting->goods;
  g_autofree char *width = rc_text_format_length (plan->job, cutting->problem->roll_width);
  g_autofree char *used = rc_text_format_length (plan->job, cutting->answer->used_length);
  g_autofree char *bound = rc_text_format_length (plan->job, cutting->answer->lower_bound);
  guint            n_pieces = cutting->answer->placements->len, n_rolls = cutting->answer->rolls->len;
  g_autofree char *pieces = g_strdup_printf (ngettext ("%u piece", "%u pieces", n_pieces), n_pieces);
  g_autofree char *rolls = g_strdup_printf (ngettext ("%u roll", "%u rolls", n_rolls), n_rolls);
  g_autofree char *summary = NULL;

  rc_flow_heading (&work->flow, goods->name ? goods->name : goods->id, 150);
  summary = g_strdup_printf (cutting->answer->used_length <= cutting->answer->lower_bound
                                 ? _ ("Usable width %s. %s off %s, %s of roll in all; no cutting uses less.")
                                 : _ ("Usable width %s. %s off %s, %s of roll in all; no cutting uses less than %s."),
                             width, pieces, rolls, used, bound);
  rc_flow_text (&work->flow, RC_TEXT_BODY, summary);
  if (cutting->answer->status == RC_NEST_INFEASIBLE)
    {
      rc_flow_text (&work->flow, RC_TEXT_STRONG,
                    cutting->answer->reason ? cutting->answer->reason : _ ("These pieces cannot be cut."));
      return;
    }
  for (guint i = 0; i < cutting->answer->rolls->len; i++)
    add_roll (work, cutting, i);
}

void
rc_cut_list_lay_out (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;

  rc_flow_start (&work->flow, work->pages, FALSE);
  rc_sheet_add_job_head (work);
  rc_flow_text (&work->flow, RC_TEXT_NOTE,
                _ ("Every piece keeps the roll’s direction. Sizes include the trim allowance. Check goods, dye lot and "
                   "flaws before the first cut; write the piece’s number on its back."));
  for (guint i = 0; i < plan->cuttings->len; i++)
    add_cutting (work, g_ptr_array_index (plan->cuttings, i));
  if (plan->cuttings->len == 0)
    {
      rc_flow_skip (&work->flow, 8);
      rc_flow_text (&work->flow, RC_TEXT_BODY, _ ("There is nothing to cut yet."));
    }
}
