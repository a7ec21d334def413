#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "fitters-area.h"
#include "fitters-words.h"
#include "table.h"
#include "words.h"

static void
add_list (RcSheetWork *work, const char *const *texts, guint *number)
{
  for (; *texts; texts++)
    {
      g_autofree char *label = g_strdup_printf ("%u", ++*number);

      rc_flow_numbered (&work->flow, label, _ (*texts));
    }
}

static void
add_section (RcSheetWork *work, const char *title, const char *const *texts)
{
  guint number = 0;

  rc_flow_heading (&work->flow, title, 40);
  add_list (work, texts, &number);
}

/* A plan made anew since may not be the one that the goods were quoted and ordered by. */
static void
add_departures (RcSheetWork *work)
{
  const RcSheetData *data = work->data;
  guint              number = 0;

  if (data->accepted == NULL || data->quote == NULL)
    return;
  g_autofree char *title = g_strdup_printf (_ ("The plan is not the one accepted with %s:"), data->accepted_as);
  g_autoptr (GPtrArray) all = rc_quote_list_departures (data->accepted, data->quote, data->plan->job, FALSE);
  for (guint i = 0; i < all->len; i++)
    {
      g_autofree char *label = g_strdup_printf ("%u", ++number);

      if (i == 0)
        rc_flow_heading (&work->flow, title, 40);
      rc_flow_numbered (&work->flow, label, g_ptr_array_index (all, i));
    }
}

/* Which rolls of each carpet to bring, at a glance. */
static void
add_goods (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();

  if (!work->data->quantities || work->data->quantities->len == 0)
    return;
  rc_table_add_column (table, _ ("BRING"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("QUANTITY"), RC_COLUMN_DECIMAL, 0);
  rc_table_add_column (table, _ ("UNIT"), RC_COLUMN_TEXT, 0);
  rc_table_add_column (table, _ ("PACKS"), RC_COLUMN_TEXT, 0);
  for (guint i = 0; i < work->data->quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (work->data->quantities, i);
      g_autofree char      *quantity = rc_quantity_format (line->quantity_micro, 3);
      g_autofree char      *packs = rc_words_dup_packs (line->packs, line->pack_unit);

      if (line->work != RC_WORK_NONE)
        continue;
      if (line->roll_length > 0 && !*packs)
        {
          g_autofree char *length = rc_text_format_length (plan->job, line->roll_length);

          g_free (packs);
          packs = g_strdup_printf (line->from_stock ? _ ("%s of roll, from stock") : _ ("%s of roll"), length);
        }
      rc_table_add_row (table, RC_ROW_BODY, line->name, quantity, rc_unit_get_label (line->unit), packs);
    }
  rc_flow_heading (&work->flow, _ ("Goods"), 40);
  rc_table_flow (table, &work->flow);
}

static void
add_note (RcSheetWork *work, const char *place, const char *text, guint *number)
{
  g_autofree char *label = NULL, *line = NULL;

  if (!text || !*text)
    return;
  if (*number == 0)
    rc_flow_heading (&work->flow, _ ("Noted when measuring"), 40);
  label = g_strdup_printf ("%u", ++*number);
  line = place ? g_strdup_printf (_ ("%s: %s"), place, text) : g_strdup (text);
  rc_flow_numbered (&work->flow, label, line);
}

/* What the estimator wrote down about the house, its rooms and its stairs. */
static void
add_measured_notes (RcSheetWork *work)
{
  const RcMeasure *measure = work->data->plan->measure;
  guint            number = 0;

  add_note (work, NULL, measure->notes, &number);
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *room = g_ptr_array_index (measure->rooms, i);

      add_note (work, room->name ? room->name : room->id, room->notes, &number);
    }
  for (guint i = 0; i < measure->stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (measure->stairs, i);

      add_note (work, stair->name ? stair->name : stair->id, stair->notes, &number);
    }
}

/* Tack strip room by room, where any room is stretched. */
static gboolean
add_strip_table (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  g_autoptr (RcTable) table = rc_table_new ();

  rc_table_add_column (table, _ ("ROOM"), RC_COLUMN_TEXT, 1);
  rc_table_add_column (table, _ ("WALLS AND CUT-OUTS"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("LESS OPENINGS"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("STRIP"), RC_COLUMN_RIGHT, 0);
  rc_table_add_column (table, _ ("ROWS"), RC_COLUMN_TEXT, 0);
  for (guint a = 0; a < plan->areas->len; a++)
    {
      const RcFloorArea *area = ((const RcAreaPlan *)g_ptr_array_index (plan->areas, a))->area;

      for (guint r = 0; area->fixing == RC_FIXING_STRETCH && r < area->rooms->len; r++)
        {
          const RcPlacedRoom *room = rc_house_find_room (plan->house, g_ptr_array_index (area->rooms, r));
          RcLength            boundary, openings, strip;
          gboolean            doubled;
          g_autofree char    *walls = NULL, *less = NULL, *length = NULL;

          if (!room)
            continue;
          strip = rc_room_compute_strip (plan->house, room, plan->job->settings.strip_double_from, &boundary, &openings,
                                         &doubled);
          walls = rc_text_format_length (plan->job, boundary);
          less = rc_text_format_length (plan->job, openings);
          length = rc_text_format_length (plan->job, strip);
          rc_table_add_row (table, RC_ROW_BODY, rc_words_get_place (plan, room->room->id), walls, less, length,
                            doubled ? _ ("doubled: long room") : _ ("one"));
        }
    }
  if (rc_table_get_n_rows (table) == 0)
    return FALSE;
  rc_table_flow (table, &work->flow);

  return TRUE;
}

static gboolean
plan_has (const RcPlan *plan, RcFixing fixing, gboolean with_cushion)
{
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcFloorArea *area = ((const RcAreaPlan *)g_ptr_array_index (plan->areas, i))->area;

      if (area->fixing == fixing && (!with_cushion || area->cushion))
        return TRUE;
    }

  return FALSE;
}

static void
add_ground (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;
  guint         number = 0;

  if (plan_has (plan, RC_FIXING_STRETCH, FALSE))
    {
      rc_flow_heading (&work->flow, _ ("Tack strip and cushion"), 60);
      add_list (work, RC_FITTERS_STRIP, &number);
      add_list (work, RC_FITTERS_CUSHION, &number);
      add_strip_table (work);
    }
  if (plan_has (plan, RC_FIXING_GLUE, FALSE))
    {
      number = 0;
      rc_flow_heading (&work->flow, _ ("Stuck-down areas"), 60);
      add_list (work, RC_FITTERS_GLUE, &number);
    }
}

/* What is signed stands on the page of the signatures: the last section with its lines to write on. */
#define CLOSING_HEIGHT 200.0

/* Lines to write on. */
static void
add_notes (RcSheetWork *work)
{
  RcFlow *flow = &work->flow;

  for (int i = 0; i < 3; i++)
    {
      rc_flow_need (flow, 22);
      flow->y += 20;
      rc_page_add_line (flow->page, flow->x + 20, flow->y, flow->x + flow->width, flow->y, 0.4, 0.5);
    }
  rc_flow_need (flow, 46);
  flow->y += 34;
  rc_sheet_add_signature (work, flow->x + 20, flow->width * 0.42, _ ("Fitter, date"));
  rc_sheet_add_signature (work, flow->x + flow->width * 0.55, flow->width * 0.45, _ ("Customer, date"));
  flow->y += 12;
}

void
rc_fitters_sheet_lay_out (RcSheetWork *work)
{
  const RcPlan *plan = work->data->plan;

  rc_flow_start (&work->flow, work->pages, FALSE);
  rc_sheet_add_job_head (work);
  add_departures (work);
  add_section (work, _ ("Safety first"), RC_FITTERS_CAUTIONS);
  add_section (work, _ ("Before any cut"), RC_FITTERS_SITE_CHECKS);
  add_measured_notes (work);
  add_goods (work);
  add_ground (work);
  if (plan->seams->len > 0)
    add_section (work, _ ("How the seams are made"), RC_FITTERS_SEAMS);
  for (guint i = 0; i < plan->areas->len; i++)
    rc_fitters_add_area (work, g_ptr_array_index (plan->areas, i));
  if (plan_has (plan, RC_FIXING_STRETCH, FALSE))
    {
      add_section (work, _ ("Stretching in"), RC_FITTERS_STRETCH);
      rc_fitters_add_stretch_table (work);
    }
  for (guint i = 0; i < plan->measure->stairs->len; i++)
    rc_fitters_add_stair (work, g_ptr_array_index (plan->measure->stairs, i));
  rc_flow_need (&work->flow, CLOSING_HEIGHT);
  add_section (work, _ ("When the carpet is down"), RC_FITTERS_FINISH);
  add_notes (work);
}
