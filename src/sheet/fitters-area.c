#include "fitters-area.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "area-view.h"
#include "fitters-words.h"
#include "floor-figure.h"
#include "floor-rooms.h"
#include "order.h"
#include "roll-drawing.h"
#include "scale.h"
#include "table.h"
#include "words.h"

#define FIGURE_HIGHEST 250.0

static RcPoint
piece_get_middle (const RcPiece *piece)
{
  RcBox box = piece->cut_box;

  if (box.x1 <= box.x0 && piece->outline)
    box = rc_region_compute_box (piece->outline);

  return (RcPoint){ box.x0 + (box.x1 - box.x0) / 2, box.y0 + (box.y1 - box.y0) / 2 };
}

guint
rc_seam_find_first_cut (const RcPlan *plan, const RcSeam *seam)
{
  const RcPiece *a = rc_plan_find_piece (plan, seam->piece_a), *b = rc_plan_find_piece (plan, seam->piece_b);
  RcPoint        from, to;
  double         radians, along, distance;

  if (!a || !b)
    return 0;
  from = piece_get_middle (a);
  to = piece_get_middle (b);
  radians = a->pile_degrees * G_PI / 180;
  along = (double)(to.x - from.x) * cos (radians) + (double)(to.y - from.y) * sin (radians);
  distance = hypot ((double)(to.x - from.x), (double)(to.y - from.y));
  if (fabs (along) < 0.01 * distance)
    return 0;

  return along > 0 ? seam->piece_a : seam->piece_b;
}

char *
rc_fitters_dup_source (const RcPlan *plan, const RcPiece *piece)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);

      for (guint i = 0; i < cutting->answer->placements->len; i++)
        {
          const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
          const RcRoll          *stock;
          g_autofree char       *at = NULL, *bought = NULL;

          if (g_array_index (cutting->piece_numbers, guint, placement->cut) != piece->number)
            continue;
          stock = rc_roll_find_stock (plan, cutting, placement->roll);
          at = rc_text_format_length (plan->job, placement->along);
          if (stock)
            {
              g_autofree char *name = rc_ticket_format_bare (stock->id);

              return g_strdup_printf (_ ("%s at %s"), name, at);
            }

          bought = rc_order_dup_length_name (cutting, placement->roll);
          return bought ? g_strdup_printf (_ ("%s at %s"), bought, at) : g_strdup_printf (_ ("bought roll at %s"), at);
        }
    }

  return g_strdup ("–");
}

static double
measure_first_figure (RcSheetWork *work, const RcAreaPlan *area_plan)
{
  RcPlan *probe = rc_area_view_new (work->data->plan, area_plan, G_MAXUINT);
  g_autoptr (GArray) floors = rc_house_dup_floors (probe->house);
  double height = 0;

  if (floors->len > 0)
    {
      RcBox box = rc_figure_compute_box (probe->house, g_array_index (floors, int, 0));
      guint ratio
          = rc_figure_choose_ratio (probe->job->units, box, work->flow.width, FIGURE_HIGHEST, RC_FIGURE_BARE_PAD);

      height = rc_figure_get_height (box, ratio, RC_FIGURE_BARE_PAD);
    }
  rc_area_view_free (probe);

  return height;
}

/* The area alone, one drawing for each storey it lies on. */
static void
add_area_figures (RcSheetWork *work, const RcAreaPlan *area_plan)
{
  const RcPlan *plan = work->data->plan;
  RcFlow       *flow = &work->flow;
  RcPlan       *probe = rc_area_view_new (plan, area_plan, G_MAXUINT);
  g_autoptr (GArray) floors = rc_house_dup_floors (probe->house);

  for (guint i = 0; i < floors->len; i++)
    {
      int    floor = g_array_index (floors, int, i);
      RcBox  box = rc_figure_compute_box (probe->house, floor);
      guint  ratio = rc_figure_choose_ratio (plan->job->units, box, flow->width, FIGURE_HIGHEST, RC_FIGURE_BARE_PAD);
      double height = rc_figure_get_height (box, ratio, RC_FIGURE_BARE_PAD);
      g_autofree char *scale = rc_scale_format (plan->job->units, ratio);
      g_autofree char *note = g_strdup_printf (
          _ ("Scale %s. Sizes in the drawing are cut sizes; dimensions are on the seam plan."), scale);
      RcFigure figure = { rc_area_view_new (plan, area_plan, G_MAXUINT),
                          rc_area_view_free,
                          floor,
                          box,
                          rc_scale_to_points_per_tick (ratio),
                          rc_figure_get_font_size (ratio),
                          RC_FLOOR_LAYER_ROOMS | RC_FLOOR_LAYER_PIECES | RC_FLOOR_LAYER_SEAMS };

      rc_flow_need (flow, height + 14);
      rc_figure_add (flow->page, flow->x, flow->y, flow->width, height, &figure);
      flow->y += height;
      rc_flow_text (flow, RC_TEXT_NOTE, note);
      rc_flow_skip (flow, 4);
    }
  rc_area_view_free (probe);
}

static void
add_area_pieces (RcSheetWork *work, const RcFloorArea *area)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("PIECE"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("KIND"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("LIES IN"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("CUT WIDTH"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("CUT LENGTH"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("COMES OFF"), RC_COLUMN_TEXT, 0);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece   *piece = g_ptr_array_index (plan->pieces, i);
      g_autofree char *number = g_strdup_printf ("%u", piece->number);
      g_autofree char *width = rc_text_format_length (plan->job, piece->cut_width);
      g_autofree char *length = rc_text_format_length (plan->job, piece->cut_length);
      g_autofree char *source = NULL;

      if (g_strcmp0 (piece->area, area->id) != 0)
        continue;
      source = rc_fitters_dup_source (plan, piece);
      rc_table_add_row (table, RC_ROW_BODY, number, rc_words_get_piece_kind (piece),
                        rc_words_get_place (plan, piece->room), width, length, source);
    }
  rc_table_flow (table, &work->flow);
}

/* The tape that the quantities were worked out with; NULL when none is known. */
static const RcGoods *
find_tape (const RcSheetData *data)
{
  for (guint i = 0; data->quantities && i < data->quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (data->quantities, i);

      if (line->goods && line->goods->kind == RC_GOODS_TAPE)
        return line->goods;
    }
  for (guint i = 0; i < data->plan->job->goods->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (data->plan->job->goods, i);

      if (goods->kind == RC_GOODS_TAPE)
        return goods;
    }

  return NULL;
}

static void
add_seam_row (RcSheetWork *work, RcTable *table, const RcSeam *seam, guint order, gboolean taped)
{
  const RcPlan    *plan = work->data->plan;
  const RcGoods   *tape = find_tape (work->data);
  guint            first = seam->kind == RC_SEAM_CROSS ? rc_seam_find_first_cut (plan, seam) : 0;
  g_autofree char *number = g_strdup_printf ("%u", order);
  g_autofree char *pieces = g_strdup_printf (_ ("%u and %u"), seam->piece_a, seam->piece_b);
  g_autofree char *length = rc_text_format_length (plan->job, seam->length);
  g_autofree char *tape_length
      = taped ? rc_text_format_length (plan->job, rc_seam_compute_tape (seam, tape ? tape->tape_width : 0))
              : g_strdup (_ ("none"));
  g_autofree char *first_cut = first ? g_strdup_printf (_ ("piece %u"), first) : g_strdup ("–");
  g_autofree char *marks
      = seam->kind == RC_SEAM_CROSS ? g_strdup_printf ("%u", rc_fitters_get_n_marks (seam->length)) : g_strdup ("–");

  rc_table_add_row (table, RC_ROW_BODY, number, rc_words_get_seam_kind (seam->kind), pieces,
                    rc_words_get_place (plan, seam->room), length, tape_length, first_cut, marks);
}

/* The order in which seams are made: the cross seams inside each fill, then side seams (common practice, no
 * source), last the cross seams where what lies in one room meets what lies in another. */
enum
{
  SEAM_STEP_FILLS,
  SEAM_STEP_SIDES,
  SEAM_STEP_ROOMS,
  N_SEAM_STEPS
};

static int
seam_get_step (const RcPlan *plan, const RcSeam *seam)
{
  const RcPiece *a = rc_plan_find_piece (plan, seam->piece_a), *b = rc_plan_find_piece (plan, seam->piece_b);

  if (seam->kind == RC_SEAM_SIDE)
    return SEAM_STEP_SIDES;

  return a && b && a->fill && a->fill == b->fill ? SEAM_STEP_FILLS : SEAM_STEP_ROOMS;
}

static void
add_area_seams (RcSheetWork *work, const RcFloorArea *area)
{
  const RcPlan *plan = work->data->plan;
  gboolean      taped = rc_floor_area_is_taped (area);
  guint         order = 0;
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("ORDER"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("SEAM"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("PIECES"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("IN"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("LENGTH"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("TAPE TO CUT"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("CUT FIRST"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("MARKS"), RC_COLUMN_RIGHT, 0);
  for (int step = 0; step < N_SEAM_STEPS; step++)
    for (guint i = 0; i < plan->seams->len; i++)
      {
        const RcSeam *seam = g_ptr_array_index (plan->seams, i);

        if (g_strcmp0 (seam->area, area->id) == 0 && seam_get_step (plan, seam) == step)
          add_seam_row (work, table, seam, ++order, taped);
      }
  if (order == 0)
    {
      rc_flow_text (&work->flow, RC_TEXT_BODY, _ ("No seams in this area."));
      return;
    }
  rc_flow_subheading (&work->flow, _ ("Seams in order"), 40);
  rc_table_flow (table, &work->flow);
}

/* The way the pile leans in an area's pieces, in words. */
static char *
dup_area_pile (const RcPlan *plan, const RcFloorArea *area)
{
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);

      if (g_strcmp0 (piece->area, area->id) == 0)
        return rc_words_dup_pile (piece->pile_degrees);
    }

  return g_strdup ("–");
}

void
rc_fitters_add_area (RcSheetWork *work, const RcAreaPlan *area_plan)
{
  const RcPlan      *plan = work->data->plan;
  const RcFloorArea *area = area_plan->area;
  const char        *name = area->name ? area->name : area->id;
  g_autofree char   *size = rc_text_format_area (plan->job, area_plan->floor_area);
  g_autofree char   *pile = dup_area_pile (plan, area);
  g_autofree char   *title = g_strdup_printf (_ ("Area: %s"), name);
  GString           *text = g_string_new (NULL);

  g_string_append_printf (text, "%s. ", rc_words_get_goods (plan, area->carpet));
  if (area->fixing == RC_FIXING_GLUE)
    g_string_append (text, area->cushion ? _ ("Double glued over cushion") : _ ("Glued down"));
  else
    g_string_append (text, area->cushion ? _ ("Stretched in over cushion") : _ ("Stretched in"));
  if (area->cushion)
    g_string_append_printf (text, " (%s)", rc_words_get_goods (plan, area->cushion));
  g_string_append_printf (text, _ (". Floor %s. The pile leans %s in every piece."), size, pile);

  rc_flow_heading (&work->flow, title, measure_first_figure (work, area_plan) + 50);
  rc_flow_text (&work->flow, RC_TEXT_BODY, text->str);
  g_string_free (text, TRUE);
  add_area_figures (work, area_plan);
  add_area_pieces (work, area);
  add_area_seams (work, area);
}

/* One hundredth of a length, rounded up to what a fitter reads: 1/8 in or 1 mm. (transfer full) */
static char *
dup_stretch (const RcJob *job, RcLength length)
{
  static const RcLengthStyle inches = { RC_LENGTH_UNIT_INCH, 8, 0, TRUE }, mm = { RC_LENGTH_UNIT_MM, 1, 0, TRUE };

  RcLength step = job->units == RC_UNITS_METRIC ? RC_TICKS_PER_MM : RC_TICKS_PER_INCH / 8;

  return rc_length_format (rc_length_round_up ((length + 99) / 100, step),
                           job->units == RC_UNITS_METRIC ? &mm : &inches);
}

void
rc_fitters_add_stretch_table (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("ROOM"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("LEFT TO RIGHT ON THE PLAN"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("1 %"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("BOTTOM TO TOP"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("1 %"), RC_COLUMN_RIGHT, 0);
  for (guint a = 0; a < plan->areas->len; a++)
    {
      const RcFloorArea *area = ((const RcAreaPlan *)g_ptr_array_index (plan->areas, a))->area;

      for (guint r = 0; area->fixing == RC_FIXING_STRETCH && r < area->rooms->len; r++)
        {
          const RcPlacedRoom *room = rc_house_find_room (plan->house, g_ptr_array_index (area->rooms, r));
          RcBox               box;
          g_autofree char    *across = NULL, *up = NULL, *across_part = NULL, *up_part = NULL;

          if (!room)
            continue;
          box = rc_ring_compute_box (room->polygon->outer);
          across = rc_text_format_length (plan->job, box.x1 - box.x0);
          up = rc_text_format_length (plan->job, box.y1 - box.y0);
          across_part = dup_stretch (plan->job, box.x1 - box.x0);
          up_part = dup_stretch (plan->job, box.y1 - box.y0);
          rc_table_add_row (table, RC_ROW_BODY, rc_words_get_place (plan, room->room->id), across, across_part, up,
                            up_part);
        }
    }
  rc_table_flow (table, &work->flow);
}
