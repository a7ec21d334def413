/* A job at a glance, for the office's own eye: what the shop pays and what is left are on it. */
#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "floor-pieces.h"
#include "job-summary.h"
#include "plan-totals.h"
#include "share-bar.h"
#include "table.h"
#include "words.h"

#define GAP         16.0
#define STEP_HEIGHT 9.0
#define BAR_HEIGHT  9.0

static void
add_words (RcSheetWork *work, RcTextStyle style, const char *text, double x, double width, double *y)
{
  PangoLayout *layout = rc_text_layout_new (work->pages->context, style, text, width);
  double       height;

  rc_text_measure (layout, NULL, &height);
  rc_page_add_layout (work->flow.page, x, *y, layout, rc_text_style_get_grey (style));
  *y += height;
}

/* --- how far it has come --- */

static void
add_course (RcSheetWork *work)
{
  const RcJob *job = work->data->plan->job;
  RcFlow      *flow = &work->flow;
  double       column = flow->width / RC_N_JOB_STATES, lowest = 0;
  RcJobState   state = rc_job_get_state (job);

  flow->y += 2;
  rc_step_row_add (flow->page, flow->x, flow->y, flow->width, STEP_HEIGHT, RC_N_JOB_STATES, state);
  for (RcJobState s = RC_JOB_ENQUIRY; s < RC_N_JOB_STATES; s++)
    {
      double x = flow->x + s * column, y = flow->y + STEP_HEIGHT + 2;

      add_words (work, s == state ? RC_TEXT_STRONG : RC_TEXT_NOTE, rc_job_state_get_label (s), x, column - 4, &y);
      if (s <= state && job->reached[s])
        add_words (work, RC_TEXT_NOTE, job->reached[s], x, column - 4, &y);
      lowest = MAX (lowest, y);
    }
  flow->y = lowest + 8;
}

/* --- the figures that decide --- */

typedef struct
{
  const char *label;
  char       *figure, *detail; /* freed when added */
  RcShare     shares[2];
} Tile;

static void
add_tiles (RcSheetWork *work, Tile *tiles, guint n)
{
  RcFlow *flow = &work->flow;
  double  column = (flow->width - (n - 1) * GAP) / n, lowest = 0;

  for (guint i = 0; i < n; i++)
    {
      double x = flow->x + i * (column + GAP), y = flow->y;

      add_words (work, RC_TEXT_LABEL, tiles[i].label, x, column, &y);
      y += 1;
      add_words (work, RC_TEXT_SHOP, tiles[i].figure, x, column, &y);
      y += 3;
      rc_share_bar_add (flow->page, x, y, column, BAR_HEIGHT, tiles[i].shares, 2);
      y += BAR_HEIGHT + 3;
      add_words (work, RC_TEXT_NOTE, tiles[i].detail, x, column, &y);
      lowest = MAX (lowest, y);
      g_free (tiles[i].figure);
      g_free (tiles[i].detail);
    }
  flow->y = lowest + 8;
}

static void
fill_margin_tile (const RcSheetData *data, Tile *tile)
{
  const RcQuote   *quote = data->quote;
  g_autofree char *margin = NULL, *net = NULL;

  tile->label = _ ("MARGIN");
  if (!quote)
    {
      tile->figure = g_strdup (_ ("no price"));
      tile->detail = g_strdup ("");
      return;
    }
  margin = rc_text_format_amount (quote->margin, &quote->currency);
  net = rc_money_format (quote->net, &quote->currency);
  tile->figure = rc_text_format_tenths (rc_price_get_margin_ppm (quote->cost, quote->net));
  tile->detail = g_strdup_printf (_ ("%s of %s net"), margin, net);
  tile->shares[0] = (RcShare){ (double)quote->margin, RC_SHARE_FULL };
  tile->shares[1] = (RcShare){ (double)(quote->net - MAX (0, quote->margin)), RC_SHARE_OPEN };
}

static void
fill_waste_tile (const RcPlan *plan, Tile *tile)
{
  g_autofree char *off = rc_text_format_area (plan->job, plan->carpet_area);
  g_autofree char *on = rc_text_format_area (plan->job, plan->covered_area);

  tile->label = _ ("WASTE");
  tile->figure = rc_text_format_tenths (plan->waste_ppm);
  tile->detail = g_strdup_printf (_ ("%s off the rolls, %s laid"), off, on);
  tile->shares[0] = (RcShare){ (double)plan->waste_ppm, RC_SHARE_FULL };
  tile->shares[1] = (RcShare){ (double)(RC_MICRO - plan->waste_ppm), RC_SHARE_OPEN };
}

static void
fill_seam_tile (const RcPlan *plan, const RcPlanTotals *totals, Tile *tile)
{
  guint            n = totals->n_side_seams + totals->n_cross_seams;
  g_autofree char *seams = g_strdup_printf (ngettext ("%u seam", "%u seams", n), n);
  g_autofree char *cross = rc_text_format_length (plan->job, totals->cross_seam);

  tile->label = _ ("SEAMS");
  tile->figure = rc_text_format_length (plan->job, totals->side_seam + totals->cross_seam);
  tile->detail = totals->n_cross_seams > 0
                     ? g_strdup_printf (_ ("%s; dark: cross seams, %u, %s"), seams, totals->n_cross_seams, cross)
                     : g_strdup_printf (_ ("%s, none of them cross"), seams);
  tile->shares[0] = (RcShare){ (double)totals->cross_seam, RC_SHARE_FULL };
  tile->shares[1] = (RcShare){ (double)totals->side_seam, RC_SHARE_OPEN };
}

static void
fill_carpet_tile (const RcPlan *plan, const RcPlanTotals *totals, Tile *tile)
{
  g_autofree char *stock = rc_text_format_length (plan->job, totals->from_stock);

  tile->label = _ ("CARPET TO BUY");
  tile->figure = rc_text_format_length (plan->job, totals->to_buy);
  tile->detail = totals->from_stock > 0 ? g_strdup_printf (_ ("of roll; %s from stock besides"), stock)
                                        : g_strdup (_ ("of roll; nothing from stock"));
  tile->shares[0] = (RcShare){ (double)totals->to_buy, RC_SHARE_FULL };
  tile->shares[1] = (RcShare){ (double)totals->from_stock, RC_SHARE_OPEN };
}

static void
add_figures (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  RcPlanTotals  totals;
  Tile          tiles[4] = { 0 };

  rc_plan_compute_totals (plan, &totals);
  fill_margin_tile (work->data, &tiles[0]);
  fill_waste_tile (plan, &tiles[1]);
  fill_seam_tile (plan, &totals, &tiles[2]);
  fill_carpet_tile (plan, &totals, &tiles[3]);
  add_tiles (work, tiles, G_N_ELEMENTS (tiles));
}

/* --- what to look at before it goes out --- */

static void
append_pins (GPtrArray *faults, const RcPlan *plan, const RcAreaPlan *area_plan)
{
  for (guint i = 0; area_plan->pins && i < area_plan->pins->len; i++)
    {
      const RcPinResult *result = &g_array_index (area_plan->pins, RcPinResult, i);
      g_autofree char   *label = rc_pin_dup_label (plan->measure, area_plan->area, i);

      if (result->unmet)
        g_ptr_array_add (faults, g_strdup_printf ("%s: %s", label ? label : "", result->unmet));
    }
}

static void
append_lines (GPtrArray *faults, const RcQuote *quote)
{
  for (guint i = 0; quote && i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);
      const char        *name = line->name ? line->name : line->item;
      g_autofree char   *loss = rc_money_format (line->cost - line->amount, &quote->currency);

      if (line->optional)
        continue;
      if (line->cost > line->amount)
        g_ptr_array_add (faults, g_strdup_printf (_ ("%s is sold at %s less than it costs."), name, loss));
      else if (line->cost == 0 && line->amount > 0)
        g_ptr_array_add (faults, g_strdup_printf (_ ("%s has no cost: its margin is not known."), name));
    }
}

/* (transfer full) GPtrArray of char*. */
static GPtrArray *
list_faults (const RcSheetData *data)
{
  const RcPlan *plan = data->plan;
  GPtrArray    *faults = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) broken = rc_plan_dup_broken (plan, NULL);

  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);

      if (cutting->answer->status == RC_NEST_INFEASIBLE)
        g_ptr_array_add (
            faults, g_strdup (cutting->answer->reason ? cutting->answer->reason : _ ("These pieces cannot be cut.")));
      for (guint k = 0; k < cutting->let_go->len; k++)
        g_ptr_array_add (faults, g_strdup (((const RcLetGo *)g_ptr_array_index (cutting->let_go, k))->reason));
    }
  for (guint i = 0; i < plan->areas->len; i++)
    append_pins (faults, plan, g_ptr_array_index (plan->areas, i));
  append_lines (faults, data->quote);
  if (broken->len > 0)
    g_ptr_array_add (
        faults, g_strdup_printf (ngettext ("%u placement rule is broken; the seam plan says where.",
                                           "%u placement rules are broken; the seam plan says where.", broken->len),
                                 broken->len));
  return faults;
}

static void
add_faults (RcSheetWork *work)
{
  g_autoptr (GPtrArray) faults = list_faults (work->data);

  if (faults->len == 0)
    return;
  rc_flow_subheading (&work->flow, _ ("Look at this before it goes out"), 20);
  for (guint i = 0; i < faults->len; i++)
    {
      g_autofree char *number = g_strdup_printf ("%u", i + 1);

      rc_flow_numbered (&work->flow, number, g_ptr_array_index (faults, i));
    }
  rc_flow_skip (&work->flow, 2);
}

/* --- area by area --- */

static void
add_area (RcTable *table, const RcPlan *plan, const RcAreaPlan *area_plan)
{
  const RcOption  *option = rc_area_plan_get_chosen (area_plan);
  RcArea           left = MAX (0, option->carpet_area - area_plan->floor_area);
  g_autofree char *way = rc_option_dup_label (option);
  g_autofree char *goods = g_strdup_printf ("%s; %s", rc_words_get_goods (plan, area_plan->area->carpet), way);
  g_autofree char *floor = rc_text_format_area (plan->job, area_plan->floor_area);
  g_autofree char *off = rc_text_format_length (plan->job, option->carpet_length);
  g_autofree char *waste = rc_text_format_tenths (
      option->carpet_area > 0 ? (gint64)((double)left * RC_MICRO / (double)option->carpet_area) : 0);
  g_autofree char *seams = option->side_seam + option->cross_seam > 0
                               ? rc_text_format_length (plan->job, option->side_seam + option->cross_seam)
                               : g_strdup (_ ("none"));
  g_autofree char *broken
      = option->broken->len > 0 ? g_strdup_printf ("%u", option->broken->len) : g_strdup (_ ("none"));

  rc_table_add_row (table, RC_ROW_BODY, rc_words_get_area (plan, area_plan->area->id), floor, off, waste, seams,
                    broken);
  rc_table_set_note (table, 0, goods);
}

static void
add_areas (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("AREA"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("FLOOR"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("OFF THE ROLL"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("WASTE"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("SEAMS"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("RULES BROKEN"), RC_COLUMN_RIGHT, 0);
  for (guint i = 0; i < plan->areas->len; i++)
    add_area (table, plan, g_ptr_array_index (plan->areas, i));
  if (rc_table_get_n_rows (table) == 0)
    return;
  rc_flow_heading (&work->flow, _ ("Area by area"), 60);
  rc_table_set_foot (
      table, _ ("Each area alone, cut from a roll of its own; the waste above is of the whole job, stairs included, "
                "which shares its rolls."));
  rc_table_flow (table, &work->flow);
}

static void
add_notes (RcSheetWork *work)
{
  const char *notes = work->data->plan->job->notes;

  if (!notes || !*notes)
    return;
  rc_flow_subheading (&work->flow, _ ("Notes on the job"), 20);
  rc_flow_text (&work->flow, RC_TEXT_BODY, notes);
  rc_flow_skip (&work->flow, 2);
}

void
rc_job_summary_lay_out (RcSheetWork *work)
{
  rc_flow_start (&work->flow, work->pages, FALSE);
  rc_sheet_add_job_head (work);
  rc_flow_text (&work->flow, RC_TEXT_STRONG, _ ("For the office only: it shows what the shop pays."));
  rc_flow_skip (&work->flow, 4);
  add_course (work);
  add_figures (work);
  add_faults (work);
  add_notes (work);
  rc_summary_add_money (work);
  rc_summary_add_floors (work);
  rc_summary_add_rolls (work);
  add_areas (work);
  rc_summary_add_lines (work);
}
