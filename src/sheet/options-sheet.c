#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "floor-figure.h"
#include "floor-pieces.h"
#include "scale.h"
#include "table.h"
#include "words.h"

#define MOST_COLUMNS 3
#define GAP          14.0

/* One option of an area as a plan of its own, sharing what it is made of. */
typedef struct
{
  RcPlan     plan; /* first: freed as one */
  RcAreaPlan area_plan;
} OptionPlan;

static void
option_plan_free (gpointer data)
{
  OptionPlan *option_plan = data;

  g_ptr_array_unref (option_plan->plan.areas);
  g_free (option_plan);
}

static RcPlan *
option_plan_new (const RcPlan *plan, const RcAreaPlan *area_plan, guint index)
{
  OptionPlan     *option_plan = g_new0 (OptionPlan, 1);
  const RcOption *option = g_ptr_array_index (area_plan->options, index);

  option_plan->plan = *plan;
  option_plan->area_plan = *area_plan;
  option_plan->area_plan.chosen = index;
  option_plan->plan.areas = g_ptr_array_new ();
  g_ptr_array_add (option_plan->plan.areas, &option_plan->area_plan);
  option_plan->plan.pieces = option->pieces;
  option_plan->plan.seams = option->seams;

  return &option_plan->plan;
}

/* Options of which none is another's double, the chosen one among them. GArray of guint. */
static GArray *
dup_distinct (const RcAreaPlan *area_plan)
{
  GArray *indices = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < area_plan->options->len; i++)
    {
      const RcOption *option = g_ptr_array_index (area_plan->options, i);

      if (option->same_as == i || option->same_as >= area_plan->options->len)
        g_array_append_val (indices, i);
    }

  return indices;
}

static gboolean
is_chosen (const RcAreaPlan *area_plan, guint index)
{
  const RcOption *chosen;

  if (area_plan->chosen == index)
    return TRUE;
  if (area_plan->chosen >= area_plan->options->len)
    return FALSE;
  chosen = g_ptr_array_index (area_plan->options, area_plan->chosen);

  return chosen->same_as == index;
}

/* All names that stand for the same plan: "Least cost, least carpet". */
static char *
dup_option_names (const RcAreaPlan *area_plan, guint index)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < area_plan->options->len; i++)
    {
      const RcOption *option = g_ptr_array_index (area_plan->options, i);

      if (i == index || option->same_as == index)
        g_string_append_printf (names, "%s%s", names->len ? ", " : "", rc_option_get_label (option));
    }

  return g_string_free (names, FALSE);
}

static guint
count_cross_seams (const RcOption *option)
{
  guint n = 0;

  for (guint i = 0; i < option->seams->len; i++)
    n += ((const RcSeam *)g_ptr_array_index (option->seams, i))->kind == RC_SEAM_CROSS;

  return n;
}

/* Adds quantity x what the customer pays for the item to *sum; FALSE when the book has no price for it. */
static gboolean
add_priced (const RcSheetData *data, const char *item, RcLength length, RcArea area, gint64 each, RcMoney *sum)
{
  const RcPrice *price = data->book && item ? rc_price_book_find (data->book, item, data->date) : NULL;
  gint64         quantity;
  RcMoney        amount;

  if (!price)
    return FALSE;
  switch (price->unit)
    {
    case RC_UNIT_M:
    case RC_UNIT_FT:
    case RC_UNIT_YD:
      quantity = rc_unit_from_length (length, price->unit);
      break;
    case RC_UNIT_M2:
    case RC_UNIT_SQ_FT:
    case RC_UNIT_SQ_YD:
      quantity = rc_unit_from_area (area, price->unit);
      break;
    case RC_UNIT_EACH:
      quantity = each * RC_MICRO;
      break;
    default:
      return FALSE;
    }

  return rc_money_multiply (price->sale, quantity, &amount, NULL) && rc_money_add (*sum, amount, sum);
}

/* Carpet and seaming of one option at what the customer pays. (transfer full) */
static char *
dup_price (const RcSheetData *data, const RcFloorArea *area, const RcOption *option)
{
  guint   n_cross = count_cross_seams (option);
  RcMoney sum = 0;

  if (!add_priced (data, area->carpet, option->carpet_length, option->carpet_area, 0, &sum)
      || (option->side_seam > 0
          && !add_priced (data, rc_work_get_name (RC_WORK_SIDE_SEAM), option->side_seam, 0, 0, &sum))
      || (n_cross > 0
          && !add_priced (data, rc_work_get_name (RC_WORK_CROSS_SEAM), option->cross_seam, 0, n_cross, &sum)))
    return g_strdup ("–");

  return rc_money_format (sum, &data->book->currency);
}

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
  N_ ("Carpet left over"),
  N_ ("Side seams"),
  N_ ("Cross seams"),
  N_ ("Pieces"),
  N_ ("Seam rules broken"),
  N_ ("Least length possible at this choice’s terms"),
  N_ ("Carpet and seaming, before tax"),
};

static char *
dup_fact (const RcSheetData *data, const RcAreaPlan *area_plan, const RcOption *option, Fact fact)
{
  const RcJob     *job = data->plan->job;
  g_autofree char *length = NULL;

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
      return g_strdup_printf (_ ("%u, %s in all"), count_cross_seams (option), length);
    case FACT_N_PIECES:
      return g_strdup_printf ("%u", option->pieces->len);
    case FACT_N_BROKEN:
      return option->broken->len ? g_strdup_printf ("%u", option->broken->len) : g_strdup (_ ("none"));
    case FACT_BOUND:
      return rc_text_format_length (job, option->length_lower_bound);
    case FACT_PRICE:
      return dup_price (data, area_plan->area, option);
    case N_FACTS:
      break;
    }

  return NULL;
}

/* The options' drawings side by side, all to one scale. */
static void
add_drawings (RcSheetWork *work, const RcAreaPlan *area_plan, const guint *indices, guint n, guint ratio, double column,
              double height)
{
  const RcPlan *plan = work->data->plan;
  RcFlow       *flow = &work->flow;
  RcBox         box = rc_region_compute_box (area_plan->floor);
  double        tallest = 0;
  int           floor = 0;

  if (area_plan->area->rooms->len > 0)
    rc_house_get_room_floor (plan->house, g_ptr_array_index (area_plan->area->rooms, 0), &floor);
  for (guint i = 0; i < n; i++)
    {
      double           x = flow->x + i * (column + GAP), name_height;
      g_autofree char *names = dup_option_names (area_plan, indices[i]);
      g_autofree char *head
          = is_chosen (area_plan, indices[i]) ? g_strdup_printf (_ ("%s (proposed)"), names) : g_strdup (names);
      PangoLayout *layout = rc_text_layout_new (work->pages->context, RC_TEXT_SUBHEADING, head, column);

      rc_text_measure (layout, NULL, &name_height);
      tallest = MAX (tallest, name_height);
      rc_page_add_layout (flow->page, x, flow->y, layout, 0.08);
    }
  flow->y += tallest + 4;
  for (guint i = 0; i < n; i++)
    {
      double x = flow->x + i * (column + GAP);

      if (is_chosen (area_plan, indices[i]))
        rc_page_add_frame (flow->page, x, flow->y, column, height, 1.4, 0.08);
      else
        rc_page_add_frame (flow->page, x, flow->y, column, height, 0.4, 0.6);
      rc_figure_add_taken (flow->page, x + 1, flow->y + 1, column - 2, height - 2,
                           option_plan_new (plan, area_plan, indices[i]), option_plan_free, floor, box, ratio,
                           RC_FLOOR_LAYER_ROOMS | RC_FLOOR_LAYER_PIECES | RC_FLOOR_LAYER_SEAMS | RC_FLOOR_LAYER_RULES);
    }
  flow->y += height + 6;
}

static void
add_facts (RcSheetWork *work, const RcAreaPlan *area_plan, const guint *indices, guint n)
{
  const char *cells[MOST_COLUMNS + 1];
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, "", RC_COLUMN_TEXT, 1);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *names = dup_option_names (area_plan, indices[i]);

      rc_table_add_column (table, names, RC_COLUMN_RIGHT, 1);
    }
  for (int fact = 0; fact < N_FACTS; fact++)
    {
      if (fact == FACT_PRICE && !work->data->book)
        continue;
      cells[0] = _ (fact_labels[fact]);
      for (guint i = 0; i < n; i++)
        cells[i + 1] = dup_fact (work->data, area_plan, g_ptr_array_index (area_plan->options, indices[i]), fact);
      rc_table_add_cells (table, fact == FACT_PRICE ? RC_ROW_STRONG : RC_ROW_BODY, cells);
      for (guint i = 0; i < n; i++)
        g_free ((char *)cells[i + 1]);
    }
  rc_table_flow (table, &work->flow);
}

static void
add_broken (RcSheetWork *work, const RcAreaPlan *area_plan, guint index)
{
  const RcOption  *option = g_ptr_array_index (area_plan->options, index);
  g_autofree char *names = dup_option_names (area_plan, index);

  for (guint i = 0; i < option->broken->len; i++)
    {
      const RcBrokenRule *rule = g_ptr_array_index (option->broken, i);
      g_autofree char    *text = g_strdup_printf ("%s, ▲ %u: %s", names, i + 1,
                                               rule->reason ? rule->reason : rc_rule_get_label (rule->rule));

      rc_flow_text (&work->flow, RC_TEXT_NOTE, text);
    }
}

static void
add_area (RcSheetWork *work, const RcAreaPlan *area_plan)
{
  const RcPlan      *plan = work->data->plan;
  const RcFloorArea *area = area_plan->area;
  RcFlow            *flow = &work->flow;
  RcBox              box = rc_region_compute_box (area_plan->floor);
  g_autoptr (GArray) indices = dup_distinct (area_plan);
  g_autofree char *size = rc_text_format_area (plan->job, area_plan->floor_area);
  g_autofree char *title = g_strdup_printf ("%s: %s, %s", area->name ? area->name : area->id,
                                            rc_words_get_goods (plan, area->carpet), size);

  for (guint from = 0; from < indices->len; from += MOST_COLUMNS)
    {
      guint            n = MIN (MOST_COLUMNS, indices->len - from);
      double           column = (flow->width - GAP * (MAX (n, 2) - 1)) / MAX (n, 2);
      guint            ratio = rc_figure_choose_ratio (plan->job->units, box, column, 240);
      double           height = rc_figure_get_height (box, ratio);
      const guint     *some = &g_array_index (indices, guint, from);
      g_autofree char *scale = rc_scale_format (plan->job->units, ratio);
      g_autofree char *note = g_strdup_printf (_ ("Drawings %s. Sizes are cut sizes."), scale);

      if (from == 0)
        rc_flow_heading (flow, title, height + 190);
      rc_flow_need (flow, height + 170);
      add_drawings (work, area_plan, some, n, ratio, column, height);
      rc_flow_text (flow, RC_TEXT_NOTE, note);
      rc_flow_skip (flow, 2);
      add_facts (work, area_plan, some, n);
      for (guint i = 0; i < n; i++)
        add_broken (work, area_plan, some[i]);
    }
}

void
rc_options_sheet_lay_out (RcSheetWork *work)
{
  const RcPlan    *plan = work->data->plan;
  g_autofree char *customer = rc_words_dup_customer (&plan->job->customer);

  rc_flow_start (&work->flow, work->pages, FALSE);
  rc_sheet_add_letter_head (work, _ ("FOR"), customer);
  rc_flow_text (
      &work->flow, RC_TEXT_BODY,
      _ ("Each area can be laid in more than one way. More seams often need less carpet; fewer seams show less. "
         "Every figure is for the area alone, cut from a roll of its own: a whole job shares its rolls and may "
         "need less."));
  for (guint i = 0; i < plan->areas->len; i++)
    add_area (work, g_ptr_array_index (plan->areas, i));
  if (plan->areas->len == 0)
    rc_flow_text (&work->flow, RC_TEXT_BODY, _ ("There is nothing to choose between yet."));
}
