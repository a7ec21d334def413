#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "area-view.h"
#include "floor-figure.h"
#include "floor-rooms.h"
#include "option-facts.h"
#include "scale.h"
#include "table.h"
#include "words.h"

#define MOST_COLUMNS 3     /* drawings side by side */
#define MOST_OPTIONS 5     /* in one table */
#define FACTS_HEIGHT 165.0 /* about what the table of figures takes */
#define GAP          14.0
#define PAD          12.0  /* inside a frame, for the walls */
#define HIGHEST      150.0 /* a frame */

/* What is compared: a label, and a figure for each option. */
typedef enum
{
  FACT_CARPET_LENGTH,
  FACT_CARPET_AREA,
  FACT_LEFT_OVER,
  FACT_SIDE_SEAM,
  FACT_CROSS_SEAM,
  FACT_N_PIECES,
  FACT_N_BROKEN,
  FACT_BOUND,
  FACT_PRICE,
  N_FACTS
} Fact;

static const char *const fact_labels[N_FACTS] = {
  N_ ("Carpet off the roll"),
  N_ ("Carpet area"),
  N_ ("Offcuts and trim"),
  N_ ("Side seams"),
  N_ ("Cross seams"),
  N_ ("Pieces"),
  N_ ("Seam rules broken"),
  N_ ("No way of laying it needs less than"),
  N_ ("Carpet and seaming, before tax"),
};

static char *
dup_fact (const RcSheetData *data, const RcAreaPlan *area_plan, const RcOption *option, Fact fact)
{
  const RcJob     *job = data->plan->job;
  g_autofree char *length = NULL;
  RcMoney          price;

  switch (fact)
    {
    case FACT_CARPET_LENGTH:
      return rc_text_format_length (job, option->carpet_length);
    case FACT_CARPET_AREA:
      return rc_text_format_area (job, option->carpet_area);
    case FACT_LEFT_OVER:
      return rc_text_format_area (job, MAX (0, option->carpet_area - area_plan->floor_area));
    case FACT_SIDE_SEAM:
      return option->side_seam ? rc_text_format_length (job, option->side_seam) : g_strdup (_ ("none"));
    case FACT_CROSS_SEAM:
      if (option->cross_seam == 0)
        return g_strdup (_ ("none"));
      length = rc_text_format_length (job, option->cross_seam);
      return g_strdup_printf (_ ("%u, %s in all"), rc_option_count_cross_seams (option), length);
    case FACT_N_PIECES:
      return g_strdup_printf ("%u", option->pieces->len);
    case FACT_N_BROKEN:
      return option->broken->len ? g_strdup_printf ("%u", option->broken->len) : g_strdup (_ ("none"));
    case FACT_BOUND:
      return rc_text_format_length (job, option->length_lower_bound);
    case FACT_PRICE:
      return rc_option_compute_price (data, area_plan->area, option, &price)
                 ? rc_money_format (price, &data->book->currency)
                 : g_strdup ("–");
    case N_FACTS:
      break;
    }

  return NULL;
}

/* A frame for each storey of the area under the option's name; all frames of one row to one scale. */
typedef struct
{
  RcFlow           *flow;
  const RcAreaPlan *area_plan;
  guint             first, n; /* options */
  double            column;   /* width of one */
} Row;

static void
add_names (RcSheetWork *work, const Row *row)
{
  double tallest = 0;

  for (guint i = 0; i < row->n; i++)
    {
      g_autofree char *names = rc_option_dup_label (g_ptr_array_index (row->area_plan->options, row->first + i));
      g_autofree char *head
          = row->first + i == row->area_plan->chosen ? g_strdup_printf (_ ("%s (proposed)"), names) : g_strdup (names);
      PangoLayout *layout = rc_text_layout_new (work->pages->context, RC_TEXT_SUBHEADING, head, row->column);
      double       height;

      rc_text_measure (layout, NULL, &height);
      tallest = MAX (tallest, height);
      rc_page_add_layout (row->flow->page, row->flow->x + i * (row->column + GAP), row->flow->y, layout, 0.08);
    }
  row->flow->y += tallest + 4;
}

static void
add_frames (RcSheetWork *work, const Row *row, int floor, RcBox box, double scale)
{
  double  height = (double)(box.y1 - box.y0) * scale + 2 * PAD;
  RcFlow *flow = row->flow;

  for (guint i = 0; i < row->n; i++)
    {
      double   x = flow->x + i * (row->column + GAP);
      gboolean taken = row->first + i == row->area_plan->chosen;
      RcFigure figure = {
        rc_area_view_new (work->data->plan, row->area_plan, row->first + i), rc_area_view_free, floor, box, scale, 6.25,
        RC_FLOOR_LAYER_ROOMS | RC_FLOOR_LAYER_PIECES | RC_FLOOR_LAYER_SEAMS
      };

      rc_figure_add (flow->page, x + 1, flow->y + 1, row->column - 2, height - 2, &figure);
      rc_page_add_frame (flow->page, x, flow->y, row->column, height, taken ? 1.5 : 0.4, taken ? 0.08 : 0.6);
    }
  flow->y += height + 6;
}

/* The scale at which a storey of the area fits a column. */
static double
get_scale (RcBox box, double column)
{
  double across = (column - 2 * PAD) / (double)MAX (1, box.x1 - box.x0);
  double up = (HIGHEST - 2 * PAD) / (double)MAX (1, box.y1 - box.y0);

  return MIN (MIN (across, up), rc_scale_to_points_per_tick (48));
}

static void
add_facts (RcSheetWork *work, const RcAreaPlan *area_plan, guint first, guint n)
{
  const char *cells[MOST_OPTIONS + 1];
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, "", RC_COLUMN_TEXT, 1);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *names = rc_option_dup_label (g_ptr_array_index (area_plan->options, first + i));

      rc_table_add_column (table, names, RC_COLUMN_RIGHT, 1);
    }
  for (int fact = 0; fact < N_FACTS; fact++)
    {
      if (fact == FACT_PRICE && !work->data->book)
        continue;
      cells[0] = _ (fact_labels[fact]);
      for (guint i = 0; i < n; i++)
        cells[i + 1] = dup_fact (work->data, area_plan, g_ptr_array_index (area_plan->options, first + i), fact);
      rc_table_add_cells (table, fact == FACT_PRICE ? RC_ROW_STRONG : RC_ROW_BODY, cells);
      for (guint i = 0; i < n; i++)
        g_free ((char *)cells[i + 1]);
    }
  rc_table_flow (table, &work->flow);
}

/* The rules that an option breaks, each reason once: "A seam lies across the light (2 times)". */
static void
add_broken (RcSheetWork *work, const RcAreaPlan *area_plan, guint index)
{
  const RcOption  *option = g_ptr_array_index (area_plan->options, index);
  g_autofree char *names = rc_option_dup_label (option);
  GString         *text = g_string_new (NULL);

  for (guint i = 0; i < option->broken->len; i++)
    {
      const char *reason = ((const RcBrokenRule *)g_ptr_array_index (option->broken, i))->reason;
      guint       times = 0;
      gboolean    said = FALSE;

      for (guint j = 0; j < option->broken->len; j++)
        if (g_strcmp0 (reason, ((const RcBrokenRule *)g_ptr_array_index (option->broken, j))->reason) == 0)
          {
            times++;
            said = said || j < i;
          }
      if (said || !reason)
        continue;
      g_string_append (text, text->len ? "; " : "");
      g_string_append (text, reason);
      if (times > 1)
        g_string_append_printf (text, ngettext (" (%u time)", " (%u times)", times), times);
    }
  if (text->len > 0)
    {
      g_autofree char *line = g_strdup_printf (_ ("%s breaks rules for seams: %s."), names, text->str);

      rc_flow_text (&work->flow, RC_TEXT_NOTE, line);
      rc_flow_skip (&work->flow, 2);
    }
  g_string_free (text, TRUE);
}

/* One row of at most MOST_COLUMNS drawings; `keep` points of what follows stay on the page with the last of them. */
static void
add_row (RcSheetWork *work, const RcAreaPlan *area_plan, guint first, guint n, guint n_columns, double keep)
{
  RcPlan *view = rc_area_view_new (work->data->plan, area_plan, G_MAXUINT);
  g_autoptr (GArray) floors = rc_house_dup_floors (view->house);
  Row row = { &work->flow, area_plan, first, n, (work->flow.width - GAP * (n_columns - 1)) / n_columns };

  for (guint i = 0; i < floors->len; i++)
    {
      int    floor = g_array_index (floors, int, i);
      RcBox  box = rc_figure_compute_box (view->house, floor);
      double scale = get_scale (box, row.column);
      double height = (double)(box.y1 - box.y0) * scale + 2 * PAD + 30;

      rc_flow_need (&work->flow, height + (i + 1 < floors->len ? 0 : keep));
      if (i == 0)
        add_names (work, &row);
      add_frames (work, &row, floor, box, scale);
    }
  rc_area_view_free (view);
}

/* Up to MOST_OPTIONS options: drawings, figures, reasons. */
static void
add_options (RcSheetWork *work, const RcAreaPlan *area_plan, guint first, guint n)
{
  /* Four are drawn two by two. */
  guint n_columns = n == 4 ? 2 : CLAMP (n, 2, MOST_COLUMNS);

  for (guint from = 0; from < n; from += n_columns)
    {
      guint here = MIN (n_columns, n - from);

      add_row (work, area_plan, first + from, here, n_columns, from + here < n ? 0 : FACTS_HEIGHT);
    }
  add_facts (work, area_plan, first, n);
  for (guint i = 0; i < n; i++)
    add_broken (work, area_plan, first + i);
}

static void
add_area (RcSheetWork *work, const RcAreaPlan *area_plan)
{
  const RcPlan      *plan = work->data->plan;
  const RcFloorArea *area = area_plan->area;
  guint              n = area_plan->options->len;
  g_autofree char   *size = rc_text_format_area (plan->job, area_plan->floor_area);
  g_autofree char   *title = g_strdup_printf ("%s: %s, %s", area->name ? area->name : area->id,
                                              rc_words_get_goods (plan, area->carpet), size);

  rc_flow_heading (&work->flow, title, HIGHEST + 60 + (n <= MOST_COLUMNS ? FACTS_HEIGHT : 0));
  for (guint from = 0; from < n; from += MOST_OPTIONS)
    add_options (work, area_plan, from, MIN (MOST_OPTIONS, n - from));
}

void
rc_options_sheet_lay_out (RcSheetWork *work)
{
  const RcPlan    *plan = work->data->plan;
  g_autofree char *customer = rc_words_dup_customer (&plan->job->customer);

  rc_flow_start (&work->flow, work->pages, FALSE);
  rc_sheet_add_letter_head (work, _ ("FOR"), customer, NULL);
  rc_flow_text (
      &work->flow, RC_TEXT_BODY,
      _ ("Each area can be laid in more than one way. More seams often need less carpet; fewer seams show less. "
         "Sizes in the drawings are cut sizes. Every figure is for the area alone, cut from a roll of its own: a whole "
         "job shares its rolls and may "
         "need less."));
  for (guint i = 0; i < plan->areas->len; i++)
    add_area (work, g_ptr_array_index (plan->areas, i));
  if (plan->areas->len == 0)
    rc_flow_text (&work->flow, RC_TEXT_BODY, _ ("There is nothing to choose between yet."));
}
