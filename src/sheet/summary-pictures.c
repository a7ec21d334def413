/* The pictures of the job summary: floors side by side, rolls below each other. */
#include "job-summary.h"

#include <glib/gi18n-lib.h>

#include "area-view.h"
#include "floor-figure.h"
#include "order.h"
#include "roll-drawing.h"
#include "scale.h"
#include "words.h"

#define GAP            16.0
#define FLOORS_ABREAST 3
#define FLOOR_HIGHEST  150.0
#define SINGLE_HIGHEST 200.0 /* of a floor that stands by itself */
#define FLOOR_PAD      10.0
#define RIBBON_FONT    5.5
#define RIBBON_WIDEST  30.0 /* points for the roll's width */
#define LEAST_ROLL     96.0 /* the width that a roll's words take */
#define MOST_RIBBONS   8

static void
add_floor (RcSheetWork *work, int floor, double x, double width, double height)
{
  const RcPlan    *plan = work->data->plan;
  RcBox            box = rc_figure_compute_box (plan->house, floor);
  g_autofree char *name = rc_words_dup_floor (floor);
  double           y = work->flow.y;
  double           scale = MIN ((width - 2 * FLOOR_PAD) / (double)MAX (1, box.x1 - box.x0),
                                (height - 2 * FLOOR_PAD) / (double)MAX (1, box.y1 - box.y0));
  RcFigure         figure = { (RcPlan *)plan,
                              NULL,
                              floor,
                              box,
                              MIN (scale, rc_scale_to_points_per_tick (48)),
                              5.5,
                              RC_FLOOR_LAYER_ROOMS | RC_FLOOR_LAYER_PIECES | RC_FLOOR_LAYER_SEAMS | RC_FLOOR_LAYER_RULES };

  rc_page_add_layout (work->flow.page, x, y, rc_text_layout_new (work->pages->context, RC_TEXT_LABEL, name, width),
                      rc_text_style_get_grey (RC_TEXT_LABEL));
  rc_figure_add (work->flow.page, x, y + 11, width, height, &figure);
}

void
rc_summary_add_floors (RcSheetWork *work)
{
  RcFlow *flow = &work->flow;
  g_autoptr (GArray) floors = rc_house_dup_floors (work->data->plan->house);
  guint  n = CLAMP (floors->len, 1, FLOORS_ABREAST);
  double width = (flow->width - (n - 1) * GAP) / n;

  for (guint from = 0; from < floors->len; from += n)
    {
      double highest = 0;

      for (guint i = from; i < MIN (from + n, floors->len); i++)
        {
          RcBox  box = rc_figure_compute_box (work->data->plan->house, g_array_index (floors, int, i));
          double scale
              = MIN ((width - 2 * FLOOR_PAD) / (double)MAX (1, box.x1 - box.x0), rc_scale_to_points_per_tick (48));

          highest = MAX (
              highest, MIN (n > 1 ? FLOOR_HIGHEST : SINGLE_HIGHEST, (double)(box.y1 - box.y0) * scale + 2 * FLOOR_PAD));
        }
      rc_flow_need (flow, highest + 16);
      for (guint i = from; i < MIN (from + n, floors->len); i++)
        add_floor (work, g_array_index (floors, int, i), flow->x + (i - from) * (width + GAP), width, highest);
      flow->y += highest + 18;
    }
}

/* Of a long roll no more than what is cut off it and some of what is left. */
static RcLength
get_shown (const RcCutting *cutting, const RcNestUse *use)
{
  return MIN (MAX (use->length, use->used), use->used + cutting->problem->roll_width / 2);
}

/* Ribbons stand in rows, as many beside each other as fit. */
typedef struct
{
  RcFlow *flow;
  double  scale;
  double  x, tallest; /* of the row begun */
} Rows;

static void
end_row (Rows *rows)
{
  rows->flow->y += rows->tallest;
  rows->x = rows->tallest = 0;
}

static void
add_roll (RcSheetWork *work, Rows *rows, const RcCutting *cutting, guint index)
{
  RcFlow             *flow = rows->flow;
  const RcNestUse    *use = g_ptr_array_index (cutting->answer->rolls, index);
  const RcGoods      *goods = cutting->goods;
  RcLength            shown = get_shown (cutting, use);
  double              height = rc_roll_get_stretch_height (cutting, RIBBON_FONT, rows->scale), words_height;
  double              width = CLAMP ((double)shown * rows->scale + GAP, LEAST_ROLL, flow->width);
  const RcRollStretch stretch = { work->data->plan, cutting, index, 0, 0, shown, shown < MAX (use->length, use->used) };
  const RcRoll       *stock = rc_roll_find_stock (work->data->plan, cutting, index);
  g_autofree char    *used = rc_text_format_length (work->data->plan->job, use->used);
  g_autofree char    *source
      = stock ? g_strdup_printf (_ ("%s, used %s"), stock->id, used) : g_strdup_printf (_ ("to buy, used %s"), used);
  g_autofree char *bought = rc_order_dup_length_name (cutting, index);
  g_autofree char *text = g_strdup_printf ("%s%s%s\n%s", goods->name ? goods->name : goods->id, bought ? ", " : "",
                                           bought ? bought : "", source);
  PangoLayout     *words = rc_text_layout_new (work->pages->context, RC_TEXT_NOTE, text, width);

  rc_text_measure (words, NULL, &words_height);
  if (rows->x + width > flow->width + 1)
    end_row (rows);
  if (rows->x == 0)
    rc_flow_need (flow, height + words_height + 8);
  rc_page_add_layout (flow->page, flow->x + rows->x, flow->y, words, rc_text_style_get_grey (RC_TEXT_NOTE));
  rc_roll_add_stretch (flow->page, &stretch, RIBBON_FONT, flow->x + rows->x + GAP / 2, flow->y + words_height + 2,
                       rows->scale);
  rows->x += width + GAP;
  rows->tallest = MAX (rows->tallest, height + words_height + 8);
}

/* All to one scale: the longest fills the width. */
static double
choose_scale (const RcPlan *plan, double width)
{
  double scale = G_MAXDOUBLE;

  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);

      scale = MIN (scale, RIBBON_WIDEST / (double)MAX (1, cutting->problem->roll_width));
      for (guint i = 0; i < cutting->answer->rolls->len; i++)
        scale
            = MIN (scale, width / (double)MAX (1, get_shown (cutting, g_ptr_array_index (cutting->answer->rolls, i))));
    }
  return scale;
}

void
rc_summary_add_rolls (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  Rows          rows = { &work->flow, choose_scale (plan, work->flow.width - GAP), 0, 0 };
  guint         n = 0;

  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);

      for (guint i = 0; i < cutting->answer->rolls->len; i++, n++)
        {
          if (n == 0)
            rc_flow_heading (&work->flow, _ ("Rolls: grey is waste, dots are balance"), 70);
          if (n < MOST_RIBBONS)
            add_roll (work, &rows, cutting, i);
        }
    }
  end_row (&rows);
  if (n > MOST_RIBBONS)
    {
      guint            rest = n - MOST_RIBBONS;
      g_autofree char *more = g_strdup_printf (
          ngettext ("%u more roll is on the cut list.", "%u more rolls are on the cut list.", rest), rest);

      rc_flow_text (&work->flow, RC_TEXT_NOTE, more);
    }
}
