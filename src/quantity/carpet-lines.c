/* Carpet: what is taken from stock and what is bought, per carpet. */
#include <glib/gi18n-lib.h>

#include "reason.h"
#include "rowcut-error.h"
#include "take-off.h"
#include "ticket.h"

/* Lengths of one carpet, from stock or bought. */
typedef struct
{
  RcLength   used, length;                 /* cut from the rolls; taken or bought */
  RcLength   counted_used, counted_length; /* as so much of the whole width: a narrow remnant counts for less */
  GArray    *pieces;                       /* of guint, piece numbers */
  GPtrArray *places;                       /* of const char*, names of rooms and stairs */
  GString   *rolls;                        /* stock: each roll and what is cut from it */
  gboolean   is_least;                     /* a length bought is the shortest that is sold */
} Lengths;

static void
lengths_init (Lengths *lengths)
{
  *lengths = (Lengths){ .pieces = g_array_new (FALSE, FALSE, sizeof (guint)),
                        .places = g_ptr_array_new (),
                        .rolls = g_string_new (NULL) };
}

static void
lengths_clear (Lengths *lengths)
{
  g_array_unref (lengths->pieces);
  g_ptr_array_unref (lengths->places);
  g_string_free (lengths->rolls, TRUE);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Lengths, lengths_clear)

static void
add_pieces (Lengths *lengths, const RcPlan *plan, const RcCutting *cutting, guint roll)
{
  for (guint i = 0; i < cutting->answer->placements->len; i++)
    {
      const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, i);
      const RcPiece         *piece;
      guint                  number;

      if (placement->roll != roll || placement->cut >= cutting->piece_numbers->len)
        continue;
      number = g_array_index (cutting->piece_numbers, guint, placement->cut);
      g_array_append_val (lengths->pieces, number);
      piece = rc_plan_find_piece (plan, number);
      if (piece != NULL)
        rc_reason_add_name (lengths->places, rc_reason_get_place (plan, piece->room));
    }
}

/* The roll's width where it is narrower than its goods; else 0. */
static RcLength
get_narrow_width (const RcCutting *cutting, const RcNestUse *use)
{
  const RcNestRoll *roll = g_ptr_array_index (cutting->problem->rolls, use->source);
  return roll->width > 0 && roll->width < rc_goods_get_usable_width (cutting->goods) ? roll->width : 0;
}

RcLength
rc_carpet_count_length (const RcGoods *carpet, RcLength width, RcLength length)
{
  RcLength whole = carpet->roll_width;

  return width > 0 && width < rc_goods_get_usable_width (carpet)
             ? (RcLength)(((__int128)length * width + whole / 2) / whole)
             : length;
}

static RcLength
count_length (const RcCutting *cutting, const RcNestUse *use, RcLength length)
{
  return rc_carpet_count_length (cutting->goods, get_narrow_width (cutting, use), length);
}

/* "roll R-1102: 6' 3", 4' wide". (transfer full) */
static char *
format_use (const RcPlan *plan, const RcCutting *cutting, const RcNestUse *use, const char *roll_id)
{
  g_autofree char *length = rc_reason_format_roll_length (plan, cutting->goods, use->used);
  g_autofree char *width = rc_reason_format_roll_length (plan, cutting->goods, get_narrow_width (cutting, use));
  g_autofree char *roll = rc_ticket_format (roll_id);
  if (get_narrow_width (cutting, use) == 0)
    return g_strdup_printf (_ ("%s: %s"), roll, length);
  return g_strdup_printf (_ ("%s: %s, %s wide"), roll, length, width);
}

static gboolean
add_use (Lengths *lengths, const RcPlan *plan, const RcCutting *cutting, guint roll, GError **error)
{
  const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, roll);
  const char      *roll_id = rc_cutting_get_roll_id (cutting, use);
  RcLength         length = roll_id != NULL ? use->used : use->length;

  add_pieces (lengths, plan, cutting, roll);
  lengths->is_least |= roll_id == NULL && use->used < cutting->goods->least_cut;
  if (roll_id != NULL)
    rc_reason_add_part (lengths->rolls, format_use (plan, cutting, use, roll_id));
  return rc_take_off_sum (&lengths->used, use->used, cutting->goods->name, error)
         && rc_take_off_sum (&lengths->length, length, cutting->goods->name, error)
         && rc_take_off_sum (&lengths->counted_used, count_length (cutting, use, use->used), cutting->goods->name,
                             error)
         && rc_take_off_sum (&lengths->counted_length, count_length (cutting, use, length), cutting->goods->name,
                             error);
}

gboolean
rc_carpet_measure_roll (const RcGoods *carpet, RcLength length, gint64 *quantity_micro, GError **error)
{
  RcArea area;

  if (rc_unit_is_length (carpet->unit))
    {
      *quantity_micro = rc_unit_from_length (length, carpet->unit);
      return TRUE;
    }
  if (!rc_unit_is_area (carpet->unit))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
                   _ ("Carpet %s is counted in “%s”; it must be counted by area or by length of roll"), carpet->name,
                   rc_unit_get_name (carpet->unit));
      return FALSE;
    }
  area = rc_area_from_rectangle (carpet->roll_width, length);
  if (area < 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The quantity of %s is too large to be counted"), carpet->name);
      return FALSE;
    }
  *quantity_micro = rc_unit_from_area (area, carpet->unit);
  return TRUE;
}

/* "Living room, Hall: pieces 1–5; 27' of roll, 12' wide". */
static char *
format_reason (const Lengths *lengths, const RcPlan *plan, const RcGoods *carpet, gboolean from_stock)
{
  g_autofree char *places = rc_reason_format_names (lengths->places);
  g_autofree char *pieces = rc_reason_format_pieces (lengths->pieces);
  g_autofree char *length = rc_reason_format_roll_length (plan, carpet, lengths->counted_length);
  g_autofree char *used = rc_reason_format_roll_length (plan, carpet, lengths->used);
  g_autofree char *width = rc_reason_format_roll_length (plan, carpet, carpet->roll_width);
  GString         *reason = g_string_new (NULL);

  if (lengths->pieces->len > 0)
    rc_reason_add_part (reason, g_strdup_printf (_ ("%s: %s"), places, pieces));
  if (from_stock)
    rc_reason_add_part (reason, g_strdup (lengths->rolls->str));
  rc_reason_add_part (reason, g_strdup_printf (_ ("%s of roll × %s wide"), length, width));
  if (lengths->is_least)
    {
      g_autofree char *least = rc_reason_format_roll_length (plan, carpet, carpet->least_cut);

      rc_reason_add_part (reason,
                          g_strdup_printf (_ ("%s is cut from it, the supplier sells no less than %s"), used, least));
    }
  else if (lengths->length > lengths->used)
    rc_reason_add_part (reason, g_strdup_printf (_ ("%s is cut from it, the rest is the supplier's step"), used));
  return g_string_free (reason, FALSE);
}

static gboolean
add_line (RcTakeOff *take_off, const RcCutting *cutting, const Lengths *lengths, gboolean from_stock, GError **error)
{
  RcPacking       packing = { .pack_unit = cutting->goods->unit };
  RcQuantityLine *line;

  if (lengths->length == 0)
    return TRUE;
  if (!rc_carpet_measure_roll (cutting->goods, lengths->counted_length, &packing.quantity_micro, error)
      || !rc_carpet_measure_roll (cutting->goods, lengths->counted_used, &packing.net_micro, error))
    return FALSE;
  line = rc_take_off_add_goods (take_off, cutting->goods, &packing,
                                format_reason (lengths, take_off->plan, cutting->goods, from_stock));
  line->from_stock = from_stock;
  line->roll_length = lengths->length;
  if (from_stock)
    {
      g_free (line->name);
      line->name = g_strdup_printf (_ ("%s, from stock"), cutting->goods->name);
    }
  return TRUE;
}

static gboolean
add_cutting (RcTakeOff *take_off, const RcCutting *cutting, GError **error)
{
  g_auto (Lengths) stock, bought;

  lengths_init (&stock);
  lengths_init (&bought);
  for (guint roll = 0; roll < cutting->answer->rolls->len; roll++)
    {
      gboolean in_stock = rc_cutting_get_roll_id (cutting, g_ptr_array_index (cutting->answer->rolls, roll)) != NULL;

      if (!add_use (in_stock ? &stock : &bought, take_off->plan, cutting, roll, error))
        return FALSE;
    }
  return add_line (take_off, cutting, &stock, TRUE, error) && add_line (take_off, cutting, &bought, FALSE, error);
}

gboolean
rc_take_off_add_carpet (RcTakeOff *take_off, GError **error)
{
  for (guint i = 0; i < take_off->plan->cuttings->len; i++)
    if (!add_cutting (take_off, g_ptr_array_index (take_off->plan->cuttings, i), error))
      return FALSE;
  return TRUE;
}
