#include "plan-text.h"

#include "plan-json.h"
#include "text-table.h"
#include "ticket.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

static char *
dup_length (const RcPlan *plan, RcLength length)
{
  return rc_length_format (length, rc_job_get_length_style (plan->job));
}

static char *
dup_area (const RcPlan *plan, RcArea area)
{
  gboolean is_metric = plan->job->units == RC_UNITS_METRIC;

  return rc_area_format (area, is_metric ? RC_AREA_UNIT_M2 : RC_AREA_UNIT_SQ_YD, 2, TRUE);
}

static void
add_headings (RcTextTable *table, const char *const *headings)
{
  for (guint i = 0; headings[i] != NULL; i++)
    rc_text_table_add (table, _ (headings[i]));
}

static void
print_options (const RcPlan *plan)
{
  static const char *const headings[]
      = { N_ ("Area"),  N_ ("Option"), N_ ("Carpet"), N_ ("At least"), N_ ("Side"), N_ ("Cross seams"),
          N_ ("Joins"), N_ ("Cost"),   NULL };
  g_autoptr (RcTextTable) table = rc_text_table_new ("llrrrrrr");

  add_headings (table, headings);
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);

      for (guint j = 0; j < area_plan->options->len; j++)
        {
          const RcOption  *option = g_ptr_array_index (area_plan->options, j);
          g_autofree char *label = rc_option_dup_label (option);

          rc_text_table_add (table, j == 0 ? area_plan->area->name : "");
          rc_text_table_add_take (table, g_strdup_printf ("%s %s", j == area_plan->chosen ? "*" : " ", label));
          rc_text_table_add_take (table, dup_length (plan, option->carpet_length));
          rc_text_table_add_take (table, dup_length (plan, option->length_lower_bound));
          rc_text_table_add_take (table, dup_length (plan, option->side_seam));
          rc_text_table_add_take (table, dup_length (plan, option->cross_seam));
          rc_text_table_add_take (table, g_strdup_printf ("%u", option->joins));
          rc_text_table_add_take (table, rc_money_format (option->cost, &plan->job->currency));
        }
    }
  rc_text_table_print (table, TRUE);
  printf (_ ("* taken. Cost: carpet, seams and broken rules as the planner weighs them.\n\n"));
}

static void
add_cut_row (RcTextTable *table, const RcPlan *plan, const RcCutting *cutting, const RcNestPlacement *place)
{
  guint            number = g_array_index (cutting->piece_numbers, guint, place->cut);
  const RcPiece   *piece = rc_plan_find_piece (plan, number);
  g_autofree char *roll = rc_cutting_dup_roll_name (cutting, place->roll);

  rc_text_table_add_take (table, g_strdup_printf ("%u", number));
  rc_text_table_add (table, rc_piece_kind_get_name (piece->kind));
  rc_text_table_add (table, piece->room);
  rc_text_table_add_take (table, dup_length (plan, place->width));
  rc_text_table_add_take (table, dup_length (plan, place->length));
  rc_text_table_add_take (table, rc_ticket_format_bare (roll));
  rc_text_table_add_take (table, dup_length (plan, place->along));
  rc_text_table_add_take (table, dup_length (plan, place->across));
}

static void
print_cuts (const RcPlan *plan)
{
  static const char *const headings[] = { N_ ("Cut"),  N_ ("Kind"),  N_ ("Room"),   N_ ("Width"), N_ ("Length"),
                                          N_ ("Roll"), N_ ("Along"), N_ ("Across"), NULL };
  g_autoptr (RcTextTable) table = rc_text_table_new ("rllrrlrr");

  add_headings (table, headings);
  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);

      for (guint j = 0; j < cutting->answer->placements->len; j++)
        add_cut_row (table, plan, cutting, &g_array_index (cutting->answer->placements, RcNestPlacement, j));
    }
  rc_text_table_print (table, TRUE);
}

static void
print_rules (const RcPlan *plan)
{
  gboolean any = FALSE;

  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcOption *option = rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, i));

      for (guint j = 0; j < option->broken->len; j++)
        {
          g_autofree char *reason = rc_broken_rule_dup_reason (g_ptr_array_index (option->broken, j));

          if (!any)
            printf ("\n%s\n", _ ("Rules broken:"));
          any = TRUE;
          printf ("  %s\n", reason);
        }
    }
}

/* What each pin costs, and which could not be kept. */
static void
print_pins (const RcPlan *plan)
{
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);

      for (guint k = 0; area_plan->pins != NULL && k < area_plan->pins->len; k++)
        {
          const RcPinResult *result = &g_array_index (area_plan->pins, RcPinResult, k);
          g_autofree char   *label = rc_pin_dup_label (plan->measure, area_plan->area, k);
          g_autofree char   *cost = rc_money_format (result->cost, &plan->job->currency);

          if (result->unmet != NULL)
            printf ("%s\n", result->unmet);
          else if (label != NULL && result->cost_known)
            printf (_ ("%s, %s: costs %s\n"), area_plan->area->name, label, cost);
        }
    }
}

void
rc_plan_text_print (const RcPlan *plan)
{
  g_autofree char *length = dup_length (plan, plan->carpet_length);
  g_autofree char *area = dup_area (plan, plan->carpet_area);
  g_autofree char *covered = dup_area (plan, plan->covered_area);
  gint64           tenths = (plan->waste_ppm + 500) / 1000;
  g_autofree char *waste = g_strdup_printf ("%d.%d", (int)(tenths / 10), (int)(tenths % 10));

  printf (_ ("%s, measure %s\n\n"), plan->job->title, plan->measure->id);
  print_options (plan);
  print_cuts (plan);
  print_rules (plan);
  print_pins (plan);
  printf (_ ("\nCarpet %s (%s) for a floor of %s, waste %s %%\n"), length, area, covered, waste);
}
