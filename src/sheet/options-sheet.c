#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "area-view.h"
#include "floor-figure.h"
#include "floor-rooms.h"
#include "option-facts.h"
#include "scale.h"
#include "table.h"
#include "words.h"

#define MOST_COLUMNS 3     /* drawings side by side */
#define MOST_OPTIONS 5     /* in one table */
#define FACTS_HEIGHT 180.0 /* about what the table of figures takes */
#define ROW_HEIGHT   190.0 /* a row of drawings with its names, at most */
#define GAP          14.0
#define PAD          12.0  /* inside a frame, for the walls */
#define HIGHEST      150.0 /* a frame */
#define HIGHEST_OF_2 110.0 /* where there are two rows of them, so that their table stays on the page */
#define SHORT_PAGE   280.0 /* points: less is left empty rather than filled with drawings whose figures go overleaf */

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
  FACT_RULES,
  FACT_CARPET_PRICE,
  FACT_SEAM_PRICE,
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
  N_ ("Weighed against its seams*"),
  N_ ("Carpet, before tax"),
  N_ ("Seaming, before tax"),
  N_ ("Carpet and seaming, before tax"),
};

static char *
dup_price (const RcSheetData *data, const RcAreaPlan *area_plan, const RcOption *option, Fact fact)
{
  RcMoney carpet, seaming, sum;

  if (!rc_option_compute_prices (data, area_plan->area, option, &carpet, &seaming)
      || !rc_money_add (carpet, seaming, &sum))
    return g_strdup ("–");

  return rc_money_format (fact == FACT_CARPET_PRICE ? carpet
                          : fact == FACT_SEAM_PRICE ? seaming
                                                    : sum,
                          &data->book->currency);
}

static char *
dup_cross_seams (const RcJob *job, const RcOption *option)
{
  g_autofree char *length = rc_text_format_length (job, option->cross_seam);

  return option->cross_seam == 0 ? g_strdup (_ ("none"))
                                 : g_strdup_printf (_ ("%u, %s in all"), rc_option_count_cross_seams (option), length);
}

static char *
dup_fact (const RcSheetData *data, const RcAreaPlan *area_plan, const RcOption *option, Fact fact)
{
  const RcJob *job = data->plan->job;

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
      return dup_cross_seams (job, option);
    case FACT_N_PIECES:
      return g_strdup_printf ("%u", option->pieces->len);
    case FACT_N_BROKEN:
      return option->broken->len ? g_strdup_printf ("%u", option->broken->len) : g_strdup (_ ("none"));
    case FACT_RULES:
      return rc_money_format (option->rule_cost, &job->currency);
    case FACT_CARPET_PRICE:
    case FACT_SEAM_PRICE:
    case FACT_PRICE:
      return dup_price (data, area_plan, option, fact);
    case N_FACTS:
      break;
    }

  return NULL;
}

/* The option that stands at a place of the sheet: the one taken first, then the others in their order. */
static guint
get_index (const RcAreaPlan *area_plan, guint place)
{
  if (place == 0)
    return area_plan->chosen;

  return place <= area_plan->chosen ? place - 1 : place;
}

static const RcOption *
get_option (const RcAreaPlan *area_plan, guint place)
{
  return g_ptr_array_index (area_plan->options, get_index (area_plan, place));
}

static char *
dup_name (const RcAreaPlan *area_plan, guint place)
{
  g_autofree char *names = rc_option_dup_label (get_option (area_plan, place));

  return place == 0 ? g_strdup_printf (_ ("%s (proposed)"), names) : g_steal_pointer (&names);
}

/* A frame for each storey of the area under the option's name; all frames of one row to one scale. */
typedef struct
{
  RcFlow           *flow;
  const RcAreaPlan *area_plan;
  guint             first, n; /* places */
  double            column;   /* width of one */
  double            highest;  /* height of one */
} Row;

static void
add_names (RcSheetWork *work, const Row *row)
{
  double tallest = 0;

  for (guint i = 0; i < row->n; i++)
    {
      g_autofree char *head = dup_name (row->area_plan, row->first + i);
      PangoLayout     *layout = rc_text_layout_new (work->pages->context, RC_TEXT_SUBHEADING, head, row->column);
      double           height;

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
      gboolean taken = row->first + i == 0;
      RcFigure figure
          = { rc_area_view_new (work->data->plan, row->area_plan, get_index (row->area_plan, row->first + i)),
              rc_area_view_free,
              floor,
              box,
              scale,
              6.25,
              RC_FLOOR_LAYER_ROOMS | RC_FLOOR_LAYER_PIECES | RC_FLOOR_LAYER_SEAMS };

      rc_figure_add (flow->page, x + 1, flow->y + 1, row->column - 2, height - 2, &figure);
      rc_page_add_frame (flow->page, x, flow->y, row->column, height, taken ? 1.5 : 0.4, taken ? 0.08 : 0.6);
    }
  flow->y += height + 6;
}

/* The scale at which a storey of the area fits a column. */
static double
get_scale (RcBox box, const Row *row)
{
  double across = (row->column - 2 * PAD) / (double)MAX (1, box.x1 - box.x0);
  double up = (row->highest - 2 * PAD) / (double)MAX (1, box.y1 - box.y0);

  return MIN (MIN (across, up), rc_scale_to_points_per_tick (48));
}

static void
add_facts (RcSheetWork *work, const RcAreaPlan *area_plan, guint first, guint n)
{
  const char *cells[MOST_OPTIONS + 1];
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, "", RC_COLUMN_TEXT, 1.4);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = dup_name (area_plan, first + i);

      rc_table_add_column (table, name, RC_COLUMN_RIGHT, 1);
    }
  for (int fact = 0; fact < N_FACTS; fact++)
    {
      if (fact >= FACT_CARPET_PRICE && !work->data->book)
        continue;
      cells[0] = _ (fact_labels[fact]);
      for (guint i = 0; i < n; i++)
        cells[i + 1] = dup_fact (work->data, area_plan, get_option (area_plan, first + i), fact);
      rc_table_add_cells (table, fact == FACT_PRICE ? RC_ROW_STRONG : RC_ROW_BODY, cells);
      for (guint i = 0; i < n; i++)
        g_free ((char *)cells[i + 1]);
    }
  rc_flow_need (&work->flow, FACTS_HEIGHT);
  rc_table_flow (table, &work->flow);
}

/* The rules that an option breaks, each reason once: "A seam lies across the light (2 times)". NULL: none. */
static char *
dup_reasons (const RcOption *option)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < option->broken->len; i++)
    {
      g_autofree char *reason = rc_broken_rule_dup_reason (g_ptr_array_index (option->broken, i));
      guint            times = 0;
      gboolean         said = FALSE;

      for (guint j = 0; j < option->broken->len; j++)
        {
          g_autofree char *other = rc_broken_rule_dup_reason (g_ptr_array_index (option->broken, j));

          if (strcmp (reason, other) != 0)
            continue;
          times++;
          said = said || j < i;
        }
      if (said)
        continue;
      g_string_append (text, text->len ? "; " : "");
      g_string_append (text, reason);
      if (times > 1)
        g_string_append_printf (text, ngettext (" (%u time)", " (%u times)", times), times);
    }

  return g_string_free (text, text->len == 0);
}

static void
add_broken (RcSheetWork *work, const RcOption *option)
{
  g_autofree char *names = rc_option_dup_label (option), *reasons = dup_reasons (option);
  g_autofree char *line = reasons ? g_strdup_printf (_ ("%s breaks rules for seams: %s."), names, reasons) : NULL;

  if (!line)
    return;
  rc_flow_text (&work->flow, RC_TEXT_NOTE, line);
  rc_flow_skip (&work->flow, 2);
}

/* One row of at most MOST_COLUMNS drawings. */
static void
add_row (RcSheetWork *work, const RcAreaPlan *area_plan, guint first, guint n, guint n_columns, double highest)
{
  RcPlan *view = rc_area_view_new (work->data->plan, area_plan, G_MAXUINT);
  g_autoptr (GArray) floors = rc_house_dup_floors (view->house);
  Row row = { &work->flow, area_plan, first, n, (work->flow.width - GAP * (n_columns - 1)) / n_columns, highest };

  for (guint i = 0; i < floors->len; i++)
    {
      int    floor = g_array_index (floors, int, i);
      RcBox  box = rc_figure_compute_box (view->house, floor);
      double scale = get_scale (box, &row);

      rc_flow_need (&work->flow, (double)(box.y1 - box.y0) * scale + 2 * PAD + 30);
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
    add_row (work, area_plan, first + from, MIN (n_columns, n - from), n_columns,
             n > n_columns ? HIGHEST_OF_2 : HIGHEST);
  add_facts (work, area_plan, first, n);
  for (guint i = 0; i < n; i++)
    add_broken (work, get_option (area_plan, first + i));
}

static char *
dup_title (const RcPlan *plan, const RcAreaPlan *area_plan)
{
  g_autofree char *size = rc_text_format_area (plan->job, area_plan->floor_area);

  return g_strdup_printf ("%s: %s, %s", rc_words_get_area (plan, area_plan->area->id),
                          rc_words_get_goods (plan, area_plan->area->carpet), size);
}

/* What no plan of the area can do with less than. */
static char *
dup_bound (const RcPlan *plan, const RcAreaPlan *area_plan)
{
  return rc_text_format_length (plan->job, rc_area_plan_get_chosen (area_plan)->length_lower_bound);
}

/* An area that can be laid in several ways. */
static void
add_area (RcSheetWork *work, const RcAreaPlan *area_plan)
{
  const RcPlan    *plan = work->data->plan;
  guint            n = area_plan->options->len;
  guint            n_tables = (n + MOST_OPTIONS - 1) / MOST_OPTIONS, share = (n + n_tables - 1) / n_tables;
  g_autofree char *title = dup_title (plan, area_plan), *bound = dup_bound (plan, area_plan);
  g_autofree char *line = g_strdup_printf (_ ("No plan of this area can need less than %s off the roll."), bound);

  rc_flow_heading (&work->flow, title, ROW_HEIGHT + (rc_flow_get_left (&work->flow) < SHORT_PAGE ? FACTS_HEIGHT : 0));
  rc_flow_text (&work->flow, RC_TEXT_NOTE, line);
  rc_flow_skip (&work->flow, 4);
  for (guint from = 0; from < n; from += share)
    add_options (work, area_plan, from, MIN (share, n - from));
}

static void
add_single (RcSheetWork *work, RcTable *table, const RcAreaPlan *area_plan)
{
  const RcPlan    *plan = work->data->plan;
  const RcOption  *option = rc_area_plan_get_chosen (area_plan);
  g_autofree char *title = dup_title (plan, area_plan), *bound = dup_bound (plan, area_plan);
  g_autofree char *reasons = dup_reasons (option);
  g_autofree char *length = rc_text_format_length (plan->job, option->carpet_length);
  g_autofree char *seams = option->side_seam + option->cross_seam > 0
                               ? rc_text_format_length (plan->job, option->side_seam + option->cross_seam)
                               : g_strdup (_ ("none"));
  g_autofree char *price = dup_price (work->data, area_plan, option, FACT_PRICE);

  rc_table_add_row (table, RC_ROW_BODY, title, length, bound, seams, price);
  rc_table_set_note (table, 0, reasons);
}

/* Areas with nothing to choose take a line each. */
static void
add_singles (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("AREA"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("OFF THE ROLL"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("NO PLAN NEEDS LESS THAN"), RC_COLUMN_RIGHT, 0.5);
  rc_table_add_column (table, _ ("SEAMS"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("BEFORE TAX"), RC_COLUMN_RIGHT, 0);
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);

      if (area_plan->options->len == 1)
        add_single (work, table, area_plan);
    }
  if (rc_table_get_n_rows (table) == 0)
    return;
  rc_flow_heading (&work->flow, _ ("One way is best in every respect"), 60);
  rc_flow_text (&work->flow, RC_TEXT_NOTE,
                _ ("No other plan found for these areas costs less, needs less carpet or has fewer seams."));
  rc_flow_skip (&work->flow, 4);
  rc_table_flow (table, &work->flow);
}

static void
add_areas (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  gboolean      any = FALSE;

  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);

      if (area_plan->options->len < 2)
        continue;
      add_area (work, area_plan);
      any = TRUE;
    }
  if (any)
    rc_flow_text (&work->flow, RC_TEXT_NOTE,
                  _ ("* No part of the price. A seam counts against a way of laying where it may show, in the light or "
                     "where people walk; “least cost” counts this in."));
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
  add_areas (work);
  add_singles (work);
  if (plan->areas->len == 0)
    rc_flow_text (&work->flow, RC_TEXT_BODY, _ ("There is nothing to choose between yet."));
}
