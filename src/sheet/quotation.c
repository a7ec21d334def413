#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "quote-table.h"
#include "table.h"
#include "words.h"

static char *
dup_options_summary (const RcPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      const RcOption   *option = rc_area_plan_get_chosen (area_plan);
      const char       *name = area_plan->area->name ? area_plan->area->name : area_plan->area->id;
      g_autofree char  *size = rc_text_format_area (plan->job, area_plan->floor_area);
      g_autofree char  *side = NULL, *cross = NULL;

      if (!option)
        continue;
      side = rc_text_format_length (plan->job, option->side_seam);
      cross = rc_text_format_length (plan->job, option->cross_seam);
      g_string_append_printf (text, "%s%s, %s: %s. ", text->len ? "\n" : "", name, size, rc_option_get_label (option));
      if (option->side_seam == 0 && option->cross_seam == 0)
        g_string_append (text, _ ("No seams."));
      else if (option->cross_seam == 0)
        g_string_append_printf (text, _ ("Side seams %s."), side);
      else
        g_string_append_printf (text, _ ("Side seams %s, cross seams %s."), side, cross);
    }

  return g_string_free (text, FALSE);
}

static void
add_terms (RcSheetWork *work)
{
  const RcPriceBook *book = work->data->book;

  if (!book || !book->terms || !*book->terms)
    return;
  rc_flow_heading (&work->flow, _ ("Terms"), 24);
  rc_flow_text (&work->flow, RC_TEXT_BODY, book->terms);
}

static void
add_acceptance (RcSheetWork *work)
{
  RcFlow          *flow = &work->flow;
  double           column = (flow->width - 40) / 3;
  g_autofree char *total = rc_money_format (work->data->quote->total, &work->data->quote->currency);
  g_autofree char *words
      = g_strdup_printf (_ ("I accept quotation %s for %s, and the seams where the seam plan shows them."),
                         rc_sheet_get_number (work->data), total);

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
  g_autofree char *customer = rc_words_dup_customer (&plan->job->customer);
  g_autofree char *summary = dup_options_summary (plan);

  rc_flow_start (&work->flow, work->pages, FALSE);
  rc_sheet_add_letter_head (work, _ ("FOR"), customer);
  if (*summary)
    {
      rc_flow_subheading (&work->flow, _ ("What is laid"), 20);
      rc_flow_text (&work->flow, RC_TEXT_BODY, summary);
      rc_flow_skip (&work->flow, 8);
    }
  rc_quote_table_flow (work, quote->lines, &quote->currency);
  rc_quote_sums_flow (work, quote->net, quote->tax_ppm, quote->tax, quote->total, quote->deposit, &quote->currency);
  add_terms (work);
  add_acceptance (work);
}
