#include "item-pieces.h"

#include <glib/gi18n-lib.h>

#include "order.h"

static const char *
get_kind_label (RcPieceKind kind)
{
  static const char *const LABELS[] = { N_ ("Drop"), N_ ("Fill"), N_ ("Stair") };
  return _ (LABELS[kind]);
}

static const char *
find_name (const RcMeasure *measure, const RcPiece *piece)
{
  const RcRoom  *room = rc_measure_find_room (measure, piece->room);
  const RcStair *stair = rc_measure_find_stair (measure, piece->room);
  return room ? room->name : stair ? stair->name : "";
}

static const char *
get_roll (const RcCutting *cutting, const RcNestPlacement *placement)
{
  return rc_cutting_get_roll_id (cutting, g_ptr_array_index (cutting->answer->rolls, placement->roll));
}

/* "R-1041 at 12' 0\""; of goods to be bought which of their lengths, where there are several; "": off no roll. */
static char *
dup_place (const RcPlan *plan, const RcPiece *piece, const RcLengthStyle *style)
{
  const RcCutting       *cutting;
  const RcNestPlacement *placement = rc_plan_find_placement (plan, piece->number, &cutting);

  if (placement == NULL)
    return g_strdup ("");
  const char      *roll = get_roll (cutting, placement);
  g_autofree char *at = rc_length_format (placement->along, style);
  g_autofree char *bought = rc_order_dup_length_name (cutting, placement->roll);
  g_autofree char *name = roll ? rc_ticket_format_bare (roll) : g_strdup (bought ? bought : _ ("new goods"));
  return g_strdup_printf (_ ("%s at %s"), name, at);
}

/* A length that a line is not broken in. */
static char *
dup_length (RcLength length, const RcLengthStyle *style)
{
  g_autofree char *text = rc_length_format (length, style);
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  return g_strjoinv ("\302\240", words);
}

static char *
dup_title (const RcOutcome *outcome, const RcPiece *piece)
{
  const RcLengthStyle *style = rc_job_get_length_style (outcome->job);
  g_autofree char     *width = dup_length (piece->cut_width, style);
  g_autofree char     *length = dup_length (piece->cut_length, style);
  return g_strdup_printf (_ ("%s %s × %s"), get_kind_label (piece->kind), width, length);
}

static char *
dup_detail (const RcOutcome *outcome, const RcPiece *piece)
{
  g_autofree char *place = dup_place (outcome->plan, piece, rc_job_get_length_style (outcome->job));
  return g_strdup_printf ("%s, %s", find_name (outcome->measure, piece), place);
}

/* The line that the piece's carpet is charged by. */
static const RcQuoteLine *
find_quote_line (const RcOutcome *outcome, const RcPiece *piece)
{
  const RcFloorArea     *area = piece->area ? rc_measure_find_area (outcome->measure, piece->area) : NULL;
  const RcStair         *stair = rc_measure_find_stair (outcome->measure, piece->room);
  const char            *carpet = area ? area->carpet : stair ? stair->carpet : NULL;
  const RcQuoteLine     *other = NULL;
  const RcCutting       *cutting;
  const RcNestPlacement *placement = rc_plan_find_placement (outcome->plan, piece->number, &cutting);
  const char            *roll = placement != NULL ? get_roll (cutting, placement) : NULL;

  for (guint i = 0; outcome->quote && i < outcome->quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (outcome->quote->lines, i);
      if (g_strcmp0 (line->item, carpet) != 0)
        continue;
      if (line->from_stock == (roll != NULL))
        return line;
      other = line;
    }
  return other; /* ordered when it was quoted, and cut since */
}

char *
rc_item_dup_pointed_words (RcDocument *document)
{
  RcOutcome     *outcome = document ? rc_document_get_outcome (document) : NULL;
  const GArray  *pointed = outcome ? rc_document_get_pointed (document) : NULL;
  guint          number = pointed && pointed->len == 1 ? g_array_index (pointed, guint, 0) : 0;
  const RcPiece *piece = number ? rc_plan_find_piece (outcome->plan, number) : NULL;

  if (piece == NULL)
    return NULL;
  const RcQuoteLine *line = find_quote_line (outcome, piece);
  g_autofree char   *title = dup_title (outcome, piece), *detail = dup_detail (outcome, piece);
  if (line == NULL)
    return g_strdup_printf ("%u  %s\n%s", number, title, detail);
  g_autofree char *amount = rc_money_format (line->amount, &outcome->quote->currency);
  g_autofree char *charged = g_strdup_printf (_ ("On the quotation: part of %s, %s"), line->name, amount);
  return g_strdup_printf ("%u  %s\n%s\n%s", number, title, detail, charged);
}

void
rc_item_fill_pieces (GListStore *rows, RcDocument *document)
{
  RcOutcome *outcome = rc_document_get_outcome (document);
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; outcome && i < outcome->plan->pieces->len; i++)
    {
      const RcPiece   *piece = g_ptr_array_index (outcome->plan->pieces, i);
      g_autofree char *mark = g_strdup_printf ("%u", piece->number);
      g_autofree char *title = dup_title (outcome, piece), *detail = dup_detail (outcome, piece);
      RcChoice         choice = rc_choice_of_piece (outcome->plan, piece->number);
      rc_item_add (wanted, choice, mark, title, detail);
      GArray *own = g_array_new (FALSE, FALSE, sizeof (guint));
      g_array_append_val (own, piece->number);
      rc_item_set_pieces (g_ptr_array_index (wanted, i), own, TRUE);
    }
  rc_item_take_rows (rows, wanted);
}

/* Lines. */

static const RcFloorArea *
find_area (const RcOutcome *outcome, const RcPiece *piece)
{
  return piece->area ? rc_measure_find_area (outcome->measure, piece->area) : NULL;
}

static gboolean
is_at_seam (const RcOutcome *outcome, guint number, gboolean side, gboolean cross, gboolean taped)
{
  for (guint i = 0; i < outcome->plan->seams->len; i++)
    {
      const RcSeam      *seam = g_ptr_array_index (outcome->plan->seams, i);
      const RcFloorArea *area = rc_measure_find_area (outcome->measure, seam->area);
      if ((seam->piece_a == number || seam->piece_b == number) && (seam->kind == RC_SEAM_SIDE ? side : cross)
          && (!taped || (area && rc_floor_area_is_taped (area))))
        return TRUE;
    }
  return FALSE;
}

static gboolean
has_transition (const RcOutcome *outcome, const RcPiece *piece, const char *goods)
{
  const RcRoom *room = rc_measure_find_room (outcome->measure, piece->room);

  for (guint i = 0; room && i < room->openings->len; i++)
    if (g_strcmp0 (((const RcOpening *)g_ptr_array_index (room->openings, i))->transition, goods) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
is_for_work (const RcOutcome *outcome, RcWork work, const RcPiece *piece)
{
  const RcRoom *room = rc_measure_find_room (outcome->measure, piece->room);

  switch (work)
    {
    case RC_WORK_LAY:
      return piece->kind != RC_PIECE_STAIR;
    case RC_WORK_SIDE_SEAM:
      return is_at_seam (outcome, piece->number, TRUE, FALSE, FALSE);
    case RC_WORK_CROSS_SEAM:
      return is_at_seam (outcome, piece->number, FALSE, TRUE, FALSE);
    case RC_WORK_STAIR:
      return piece->kind == RC_PIECE_STAIR;
    case RC_WORK_FITTING:
      return room && room->cutouts->len > 0;
    case RC_WORK_NONE:
    case RC_WORK_FIXED:
    default:
      return FALSE;
    }
}

static gboolean
is_for_goods (const RcOutcome *outcome, const RcGoods *goods, const RcPiece *piece)
{
  const RcFloorArea *area = find_area (outcome, piece);
  const RcStair     *stair = rc_measure_find_stair (outcome->measure, piece->room);

  switch (goods->kind)
    {
    case RC_GOODS_CUSHION:
      return g_strcmp0 (area ? area->cushion : stair ? stair->cushion : NULL, goods->id) == 0;
    case RC_GOODS_TAPE:
      return is_at_seam (outcome, piece->number, TRUE, TRUE, TRUE);
    case RC_GOODS_SEALER:
      return is_at_seam (outcome, piece->number, TRUE, TRUE, FALSE);
    case RC_GOODS_STRIP:
      return area == NULL || area->fixing == RC_FIXING_STRETCH;
    case RC_GOODS_ADHESIVE:
      return area && area->fixing == RC_FIXING_GLUE;
    case RC_GOODS_TRANSITION:
      return has_transition (outcome, piece, goods->id);
    case RC_GOODS_CARPET:
    default:
      return FALSE;
    }
}

static const RcGoods *
find_goods (const RcOutcome *outcome, const char *id)
{
  const RcGoods *goods = rc_job_find_goods (outcome->job, id);
  return goods ? goods : rc_price_book_find_goods (outcome->book, id);
}

/* The pieces that a line is charged for; `is_carpet` when it is their carpet itself. */
static GArray *
list_pieces (const RcOutcome *outcome, const RcQuoteLine *line, gboolean *is_carpet)
{
  const RcGoods *goods = line->is_work ? NULL : find_goods (outcome, line->item);
  GArray        *pieces = g_array_new (FALSE, FALSE, sizeof (guint));
  RcWork         work = RC_WORK_NONE;

  if (line->is_work)
    rc_work_parse (line->item, &work, NULL);
  *is_carpet = goods && goods->kind == RC_GOODS_CARPET;
  for (guint i = 0; i < outcome->plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (outcome->plan->pieces, i);
      if (*is_carpet ? find_quote_line (outcome, piece) == line
          : goods    ? is_for_goods (outcome, goods, piece)
                     : is_for_work (outcome, work, piece))
        g_array_append_val (pieces, piece->number);
    }
  return pieces;
}

static void
add_line (GPtrArray *wanted, const RcOutcome *outcome, const RcQuoteLine *line)
{
  gboolean         is_carpet = FALSE;
  GArray          *pieces = list_pieces (outcome, line, &is_carpet);
  g_autofree char *amount = rc_money_format (line->amount, &outcome->quote->currency);
  g_autofree char *quantity = rc_quantity_format (line->quantity_micro, 1);
  g_autofree char *detail = g_strdup_printf ("%s %s, %s", quantity, rc_unit_get_label (line->unit), amount);
  g_autofree char *key = g_strdup_printf ("%s %d", line->item ? line->item : line->name, line->from_stock);

  rc_item_add (wanted, rc_item_choice_of_line (key), is_carpet ? "▤" : line->is_work ? "✓" : "▫", line->name, detail);
  rc_item_set_pieces (g_ptr_array_index (wanted, wanted->len - 1), pieces, is_carpet);
}

void
rc_item_fill_lines (GListStore *rows, RcDocument *document)
{
  RcOutcome *outcome = rc_document_get_outcome (document);
  g_autoptr (GPtrArray) wanted = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; outcome && outcome->quote && i < outcome->quote->lines->len; i++)
    add_line (wanted, outcome, g_ptr_array_index (outcome->quote->lines, i));
  rc_item_take_rows (rows, wanted);
}
