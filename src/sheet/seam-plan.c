#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "area-view.h"
#include "floor-figure.h"
#include "floor-pieces.h"
#include "floor-pins.h"
#include "floor-rooms.h"
#include "scale.h"
#include "table.h"
#include "words.h"

/* A floor drawn smaller than this has its areas drawn again, larger, on pages of their own. */
#define COARSE_METRIC   100
#define COARSE_IMPERIAL 96

#define HEAD_HEIGHT 96.0 /* about what the head takes, for choosing which way round the page lies */

/* The reasons that go under the drawing of a storey. */
typedef struct
{
  GPtrArray *broken; /* of RcBrokenRule, of all storeys */
  GArray    *floors; /* of int */
} Reasons;

#define MOST_RULES   160.0 /* points kept for the reasons; more of them run on to the next page */
#define REASONS_KEEP 24.0  /* of them stay with their heading */
#define REASONS_HEAD 46.0  /* what the heading asks for with these */

static void
add_reasons (RcSheetWork *work, const Reasons *reasons, int floor)
{
  gboolean any = FALSE;

  for (guint i = 0; i < reasons->broken->len; i++)
    {
      const RcBrokenRule *rule = g_ptr_array_index (reasons->broken, i);
      g_autofree char    *number = g_strdup_printf ("▲ %u", i + 1);
      g_autofree char    *reason = rc_broken_rule_dup_reason (rule);

      if (g_array_index (reasons->floors, int, i) != floor)
        continue;
      if (!any)
        rc_flow_subheading (&work->flow, _ ("Placement rules broken here"), REASONS_KEEP);
      any = TRUE;
      rc_flow_numbered (&work->flow, number, reason);
    }
  if (!any)
    rc_flow_text (&work->flow, RC_TEXT_NOTE, _ ("No placement rule is broken on this floor."));
}

/* The height to keep for the reasons of a storey. */
static double
measure_reasons (RcSheetWork *work, const Reasons *reasons, int floor, double width)
{
  double total = 0;

  for (guint i = 0; i < reasons->broken->len && total < MOST_RULES; i++)
    {
      const RcBrokenRule *rule = g_ptr_array_index (reasons->broken, i);
      g_autoptr (PangoLayout) layout = NULL;
      g_autofree char *reason = rc_broken_rule_dup_reason (rule);
      double           height;

      if (g_array_index (reasons->floors, int, i) != floor)
        continue;
      layout = rc_text_layout_new (work->pages->context, RC_TEXT_BODY, reason, width - 20);
      rc_text_measure (layout, NULL, &height);
      total += height + 3;
    }

  return MIN (MOST_RULES, total > 0 ? total + REASONS_HEAD : 14);
}

/* `rules`: the height kept for reasons. The scale that a page lying one way or the other allows. */
static guint
get_ratio (RcSheetWork *work, double rules, RcBox box, gboolean landscape, double head)
{
  double page_width = landscape ? work->pages->paper_height : work->pages->paper_width;
  double page_height = landscape ? work->pages->paper_width : work->pages->paper_height;
  double width = page_width - 2 * RC_PAGE_MARGIN;
  double height
      = page_height - RC_PAGE_TOP - RC_PAGE_MARGIN - RC_PAGE_FOOT_HEIGHT - head - RC_LEGEND_HEIGHT - 28 - rules;

  return rc_figure_choose_ratio (work->data->plan->job->units, box, width, height, RC_FIGURE_PAD);
}

static gboolean
lies_better (RcSheetWork *work, double rules, RcBox box, double head)
{
  return get_ratio (work, rules, box, TRUE, head) < get_ratio (work, rules, box, FALSE, head);
}

/* The drawing with its legend fills the page down to where the reasons will stand. */
static guint
add_drawing (RcSheetWork *work, double rules, int floor, RcBox box, const char *title)
{
  RcFlow          *flow = &work->flow;
  const RcPlan    *plan = work->data->plan;
  RcUnitSystem     units = plan->job->units;
  double           height = rc_flow_get_left (flow) - RC_LEGEND_HEIGHT - rules - 26;
  guint            ratio;
  RcFigure         figure;
  g_autofree char *scale = NULL, *line = NULL;

  ratio = rc_figure_choose_ratio (units, box, flow->width, height, RC_FIGURE_PAD);
  scale = rc_scale_format (units, ratio);
  line = g_strdup_printf ("%s  ·  %s", title, scale);
  rc_flow_subheading (flow, line, 0);
  figure = (RcFigure){
    (RcPlan *)plan,    NULL, floor, box, rc_scale_to_points_per_tick (ratio), rc_figure_get_font_size (ratio),
    RC_FLOOR_LAYER_ALL
  };
  rc_figure_add (flow->page, flow->x, flow->y, flow->width, height, &figure);
  flow->y += height + 2;
  rc_legend_add (flow->page, flow->x, flow->y, flow->width, units, ratio, rc_floor_has_pins (plan, floor));
  flow->y += RC_LEGEND_HEIGHT + 4;

  return ratio;
}

static void
add_floor (RcSheetWork *work, const Reasons *reasons, int floor, gboolean first)
{
  const RcPlan    *plan = work->data->plan;
  RcBox            box = rc_figure_compute_box (plan->house, floor);
  g_autofree char *name = rc_words_dup_floor (floor);
  double           rules = measure_reasons (work, reasons, floor, work->pages->paper_width - 2 * RC_PAGE_MARGIN);
  guint            ratio;

  if (first)
    {
      rc_flow_start (&work->flow, work->pages, lies_better (work, rules, box, HEAD_HEIGHT));
      rc_sheet_add_job_head (work);
    }
  else
    rc_flow_break (&work->flow, lies_better (work, rules, box, RC_PAGE_HEAD_HEIGHT));
  ratio = add_drawing (work, rules, floor, box, name);
  add_reasons (work, reasons, floor);
  if (ratio <= (plan->job->units == RC_UNITS_METRIC ? COARSE_METRIC : COARSE_IMPERIAL))
    return;
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      RcBox             area_box = rc_region_compute_box (area_plan->floor);
      g_autofree char  *title = NULL;
      int               area_floor = 0;

      if (area_plan->area->rooms->len == 0
          || !rc_house_get_room_floor (plan->house, g_ptr_array_index (area_plan->area->rooms, 0), &area_floor)
          || area_floor != floor || area_box.x1 <= area_box.x0)
        continue;
      title = g_strdup_printf (_ ("%s: %s"), name, area_plan->area->name ? area_plan->area->name : area_plan->area->id);
      if (get_ratio (work, 0, area_box, TRUE, RC_PAGE_HEAD_HEIGHT) >= ratio
          && get_ratio (work, 0, area_box, FALSE, RC_PAGE_HEAD_HEIGHT) >= ratio)
        continue;
      rc_flow_break (&work->flow, lies_better (work, 0, area_box, RC_PAGE_HEAD_HEIGHT));
      add_drawing (work, 0, floor, area_box, title);
    }
}

/* "Ground floor: Harbour Twist, slate. The pile leans to the right of the plan." */
static char *
dup_group_head (const RcPlan *plan, const RcPiece *piece)
{
  const char      *goods = rc_words_get_goods (plan, piece->goods);
  g_autofree char *pile = NULL;

  if (piece->kind == RC_PIECE_STAIR)
    return g_strdup_printf (_ ("Stairs: %s. The pile leans down the stair."), goods);
  pile = rc_words_dup_pile (piece->pile_degrees);

  return g_strdup_printf (_ ("%s: %s. The pile leans %s."), rc_words_get_area (plan, piece->area), goods, pile);
}

static void
add_pieces (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();
  const char *area = NULL;

  rc_table_add_column (table, _ ("PIECE"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("KIND"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("LIES IN"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("CUT WIDTH"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("CUT LENGTH"), RC_COLUMN_RIGHT, 0);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece   *piece = g_ptr_array_index (plan->pieces, i);
      g_autofree char *number = g_strdup_printf ("%u", piece->number);
      g_autofree char *width = rc_text_format_length (plan->job, piece->cut_width);
      g_autofree char *length = rc_text_format_length (plan->job, piece->cut_length);

      if (i == 0 || g_strcmp0 (area, piece->area) != 0)
        {
          g_autofree char *head = dup_group_head (plan, piece);

          rc_table_add_row (table, RC_ROW_GROUP, head, NULL, NULL, NULL, NULL);
        }
      area = piece->area;
      rc_table_add_row (table, RC_ROW_BODY, number, rc_words_get_piece_kind (piece),
                        rc_words_get_place (plan, piece->room), width, length);
    }
  rc_flow_heading (&work->flow, _ ("Pieces"), 60);
  rc_table_flow (table, &work->flow);
}

static void
add_seams (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();
  RcLength sums[2] = { 0, 0 };

  rc_table_add_column (table, _ ("SEAM"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("JOINS PIECES"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("IN"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("LENGTH"), RC_COLUMN_RIGHT, 0);
  for (guint i = 0; i < plan->seams->len; i++)
    {
      const RcSeam    *seam = g_ptr_array_index (plan->seams, i);
      g_autofree char *pieces = g_strdup_printf (_ ("%u and %u"), seam->piece_a, seam->piece_b);
      g_autofree char *length = rc_text_format_length (plan->job, seam->length);

      rc_table_add_row (table, RC_ROW_BODY, rc_words_get_seam_kind (seam->kind), pieces,
                        rc_words_get_place (plan, seam->room), length);
      sums[seam->kind] += seam->length;
    }
  if (plan->seams->len == 0)
    return;
  for (int kind = RC_SEAM_SIDE; kind <= RC_SEAM_CROSS; kind++)
    {
      g_autofree char *length = rc_text_format_length (plan->job, sums[kind]);

      if (sums[kind] > 0)
        rc_table_add_row (table, RC_ROW_STRONG,
                          kind == RC_SEAM_SIDE ? _ ("Side seams in all") : _ ("Cross seams in all"), NULL, NULL,
                          length);
    }
  rc_flow_heading (&work->flow, _ ("Seams"), 60);
  rc_table_set_foot (
      table, _ ("Seams are placed as the plan shows. A well-made seam is tight, sealed and keeps its pattern, and "
                "can still be seen."));
  rc_table_flow (table, &work->flow);
}

void
rc_seam_plan_lay_out (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (GArray) floors = rc_house_dup_floors (plan->house);
  Reasons reasons;

  reasons.broken = rc_plan_dup_broken (plan, &reasons.floors);
  if (floors->len == 0)
    {
      rc_flow_start (&work->flow, work->pages, FALSE);
      rc_sheet_add_job_head (work);
      rc_flow_text (&work->flow, RC_TEXT_BODY, _ ("Nothing has been measured yet."));
    }
  for (guint i = 0; i < floors->len; i++)
    add_floor (work, &reasons, g_array_index (floors, int, i), i == 0);
  if (plan->pieces->len > 0)
    {
      rc_flow_break (&work->flow, FALSE);
      add_pieces (work);
      add_seams (work);
    }
  g_ptr_array_unref (reasons.broken);
  g_array_unref (reasons.floors);
}
