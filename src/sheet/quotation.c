#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "option-facts.h"
#include "quote-table.h"
#include "table.h"
#include "words.h"

static char *
dup_room_names (const RcPlan *plan, const RcFloorArea *area)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < area->rooms->len; i++)
    g_string_append_printf (names, "%s%s", i ? ", " : "",
                            rc_words_get_place (plan, g_ptr_array_index (area->rooms, i)));

  return g_string_free (names, FALSE);
}

static char *
dup_seams (const RcJob *job, RcLength side_seam, RcLength cross_seam)
{
  g_autofree char *side = rc_text_format_length (job, side_seam);
  g_autofree char *cross = rc_text_format_length (job, cross_seam);

  if (side_seam == 0 && cross_seam == 0)
    return g_strdup (_ ("no seams"));
  if (cross_seam == 0)
    return g_strdup_printf (_ ("side seams %s"), side);
  if (side_seam == 0)
    return g_strdup_printf (_ ("cross seams %s"), cross);

  return g_strdup_printf (_ ("side seams %s, cross seams %s"), side, cross);
}

/* What the customer gets, area by area, in words before the figures. */
static void
add_summary (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;

  if (plan->areas->len + plan->measure->stairs->len == 0)
    return;
  rc_flow_subheading (&work->flow, _ ("What is laid"), 20);
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      const RcOption   *option = rc_area_plan_get_chosen (area_plan);
      g_autofree char  *rooms = dup_room_names (plan, area_plan->area);
      g_autofree char  *size = rc_text_format_area (plan->job, area_plan->floor_area);
      g_autofree char  *seams = dup_seams (plan->job, option ? option->side_seam : 0, option ? option->cross_seam : 0);
      g_autofree char  *line = g_strdup_printf (_ ("%s: %s. %s of floor, %s."), rooms,
                                                rc_words_get_goods (plan, area_plan->area->carpet), size, seams);

      rc_flow_text (&work->flow, RC_TEXT_BODY, line);
      rc_flow_skip (&work->flow, 2);
    }
  for (guint i = 0; i < plan->measure->stairs->len; i++)
    {
      const RcStair   *stair = g_ptr_array_index (plan->measure->stairs, i);
      guint            n = rc_stair_count_steps (stair);
      g_autofree char *line
          = g_strdup_printf (ngettext ("%s: %s. %u step.", "%s: %s. %u steps.", n),
                             rc_words_get_place (plan, stair->id), rc_words_get_goods (plan, stair->carpet), n);

      rc_flow_text (&work->flow, RC_TEXT_BODY, line);
      rc_flow_skip (&work->flow, 2);
    }
  rc_flow_skip (&work->flow, 6);
}

/* How much carpet it takes is not told where quantities are not. */
static gboolean
is_carpet_told (const RcSheetWork *work)
{
  return work->data->quote->detail == RC_DETAIL_FULL;
}

static void
add_way_row (RcSheetWork *work, RcTable *table, RcRowKind kind, const char *name, const char *carpet, const char *seams,
             const char *difference)
{
  if (is_carpet_told (work))
    rc_table_add_row (table, kind, name, carpet, seams, difference);
  else
    rc_table_add_row (table, kind, name, seams, difference);
}

/* One way of laying an area; `proposed` has the price it is compared with (NULL: not known). */
static void
add_way (RcSheetWork *work, RcTable *table, const RcAreaPlan *area_plan, guint index, const RcMoney *proposed)
{
  const RcPlan    *plan = work->data->plan;
  const RcOption  *option = g_ptr_array_index (area_plan->options, index);
  gboolean         taken = index == area_plan->chosen;
  g_autofree char *names = rc_option_dup_label (option);
  g_autofree char *carpet = rc_text_format_area (plan->job, option->carpet_area);
  g_autofree char *seams = dup_seams (plan->job, option->side_seam, option->cross_seam);
  g_autofree char *difference = NULL;
  RcMoney          price;

  if (taken)
    difference = g_strdup (_ ("proposed"));
  else if (proposed && rc_option_compute_price (work->data, area_plan->area, option, &price))
    {
      g_autofree char *amount = rc_text_format_amount (price - *proposed, &work->data->book->currency);

      difference = g_strdup_printf (price >= *proposed ? "+%s" : "%s", amount);
    }
  else
    difference = g_strdup ("–");
  add_way_row (work, table, RC_ROW_BODY, names, carpet, seams, difference);
}

/* A way that costs more without saving any seam is not worth the customer's time. */
static gboolean
is_worth_telling (const RcSheetData *data, const RcAreaPlan *area_plan, const RcOption *option, const RcMoney *proposed)
{
  const RcOption *taken = rc_area_plan_get_chosen (area_plan);
  RcMoney         price;

  if (!taken || option->side_seam + option->cross_seam < taken->side_seam + taken->cross_seam)
    return TRUE;
  if (!proposed || !rc_option_compute_price (data, area_plan->area, option, &price))
    return option->carpet_area < taken->carpet_area;

  return price < *proposed;
}

/* The ways of laying one area, when there is more than one worth telling. */
static void
add_ways (RcSheetWork *work, RcTable *table, const RcAreaPlan *area_plan)
{
  const RcOption *taken = rc_area_plan_get_chosen (area_plan);
  RcMoney         price;
  RcMoney *proposed = taken && rc_option_compute_price (work->data, area_plan->area, taken, &price) ? &price : NULL;
  gboolean headed = FALSE;

  for (guint index = 0; index < area_plan->options->len; index++)
    {
      const RcOption *option = g_ptr_array_index (area_plan->options, index);

      if (index == area_plan->chosen || !is_worth_telling (work->data, area_plan, option, proposed))
        continue;
      if (!headed)
        {
          add_way_row (work, table, RC_ROW_GROUP, rc_words_get_area (work->data->plan, area_plan->area->id), NULL, NULL,
                       NULL);
          add_way (work, table, area_plan, area_plan->chosen, proposed);
        }
      headed = TRUE;
      add_way (work, table, area_plan, index, proposed);
    }
}

/* The other ways of laying each area, and what they would change. */
static void
add_options (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();
  g_autofree char *difference = g_strdup_printf (_ ("CHANGES THE NET BY ABOUT, %s"), work->data->quote->currency.code);

  rc_table_add_column (table, _ ("WAY OF LAYING"), RC_COLUMN_TEXT, 1);
  if (is_carpet_told (work))
    rc_table_add_column (table, _ ("CARPET"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("SEAMS"), RC_COLUMN_TEXT, 1.4);
  rc_table_add_column (table, difference, RC_COLUMN_RIGHT, 0.8);
  for (guint i = 0; i < plan->areas->len; i++)
    add_ways (work, table, g_ptr_array_index (plan->areas, i));
  if (rc_table_get_n_rows (table) == 0)
    return;
  rc_flow_heading (&work->flow, _ ("Other ways to lay it"), 90);
  rc_table_set_foot (
      table,
      _ ("Carpet and seaming of the area by itself, before tax; a whole job shares its rolls and may differ. Ask "
         "for the sheet that compares them with drawings."));
  rc_table_flow (table, &work->flow);
}

static void
add_terms (RcSheetWork *work)
{
  const RcQuote   *quote = work->data->quote;
  g_autofree char *valid = g_strdup_printf (
      ngettext ("This quotation holds for %d day.", "This quotation holds for %d days.", (gulong)quote->valid_days),
      quote->valid_days);

  if (quote->valid_days == 0 && (!quote->terms || !*quote->terms))
    return;
  rc_flow_heading (&work->flow, _ ("Terms"), 24);
  if (quote->valid_days > 0)
    rc_flow_text (&work->flow, RC_TEXT_BODY, valid);
  if (quote->terms && *quote->terms)
    rc_flow_text (&work->flow, RC_TEXT_BODY, quote->terms);
}

/* What a variation is, in place of what is laid in all. */
static void
add_change (RcSheetWork *work)
{
  const char      *changes = work->data->changes;
  g_autofree char *words
      = changes ? g_strdup_printf (_ ("This changes quotation %s. What is no longer done is taken off, what is done "
                                      "instead is added; every sum is the difference."),
                                   changes)
                : g_strdup (_ ("This changes what was quoted before. What is no longer done is taken off, what is done "
                               "instead is added; every sum is the difference."));

  rc_flow_text (&work->flow, RC_TEXT_BODY, words);
  rc_flow_text (&work->flow, RC_TEXT_BODY,
                _ ("Goods that are ordered or cut already stay as they were quoted; only what is needed beyond them is "
                   "added."));
  rc_flow_skip (&work->flow, 6);
}

static char *
dup_acceptance (const RcSheetData *data)
{
  g_autofree char *total = rc_money_format (data->quote->total, &data->quote->currency);
  gboolean         numbered = data->number && *data->number;

  if (data->quote->variation)
    return g_strdup_printf (
        _ ("I accept variation %s, which changes the total by %s, and the seams where the seam plan "
           "shows them."),
        numbered ? data->number : "", total);
  return numbered ? g_strdup_printf (_ ("I accept quotation %s for %s, and the seams where the seam plan shows them."),
                                     data->number, total)
                  : g_strdup_printf (
                      _ ("I accept this quotation for %s, and the seams where the seam plan shows them."), total);
}

static void
add_acceptance (RcSheetWork *work)
{
  RcFlow          *flow = &work->flow;
  double           column = (flow->width - 40) / 3;
  g_autofree char *words = dup_acceptance (work->data);

  rc_flow_need (flow, 110);
  rc_flow_heading (flow, _ ("Acceptance"), 80);
  rc_flow_text (flow, RC_TEXT_BODY, words);
  flow->y += 36;
  rc_sheet_add_signature (work, flow->x, column, _ ("Signature"));
  rc_sheet_add_signature (work, flow->x + column + 20, column, _ ("Name in print"));
  rc_sheet_add_signature (work, flow->x + 2 * (column + 20), column, _ ("Date"));
  flow->y += 14;
}

void
rc_quotation_lay_out (RcSheetWork *work)
{
  const RcQuote   *quote = work->data->quote;
  const RcPlan    *plan = work->data->plan;
  RcLinesShown     shown = { quote->detail, quote->detail == RC_DETAIL_FULL }; /* reasons tell quantities */
  g_autofree char *customer = rc_words_dup_customer (&plan->job->customer);

  rc_flow_start (&work->flow, work->pages, FALSE);
  rc_sheet_add_letter_head (work, _ ("FOR"), customer, NULL);
  if (quote->variation)
    add_change (work);
  else
    add_summary (work);
  rc_quote_table_flow (work, quote->lines, &shown, &quote->currency);
  rc_quote_sums_flow (work, quote);
  rc_quote_optional_flow (work, quote->lines, &shown, &quote->currency);
  if (!quote->variation)
    add_options (work);
  add_terms (work);
  add_acceptance (work);
  if (!quote->variation)
    rc_alternatives_flow (work);
}
