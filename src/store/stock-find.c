/* Reading the stock: rolls, promises, history, cut pieces. */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "query.h"
#include "roll-rows.h"
#include "stock-within.h"

void
rc_reservation_free (RcReservation *reservation)
{
  if (reservation == NULL)
    return;
  g_free (reservation->roll_id);
  g_free (reservation->job_id);
  g_free (reservation->made);
  g_free (reservation);
}

void
rc_roll_move_free (RcRollMove *move)
{
  if (move == NULL)
    return;
  g_free (move->roll_id);
  g_free (move->job_id);
  g_free (move->made);
  g_free (move->notes);
  g_free (move);
}

RcCutPiece *
rc_cut_piece_new (const char *piece, RcLength width, RcLength length)
{
  RcCutPiece *cut = g_new0 (RcCutPiece, 1);

  cut->piece = g_strdup (piece);
  cut->width = width;
  cut->length = length;
  return cut;
}

void
rc_cut_piece_free (RcCutPiece *piece)
{
  if (piece == NULL)
    return;
  g_free (piece->piece);
  g_free (piece->job_id);
  g_free (piece->roll_id);
  g_free (piece->goods_id);
  g_free (piece->lot);
  g_free (piece->made);
  g_free (piece);
}

GPtrArray *
rc_stock_find_rolls (RcStore *store, const char *job_id, RcLength least, GError **error)
{
  g_autoptr (GPtrArray) rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store,
                       "SELECT id, goods, lot, length_ticks - coalesce ((SELECT sum (length_ticks) FROM reservations"
                       " WHERE roll = rolls.id AND job_id IS NOT ?1), 0) AS free, remnant, place, width_ticks, flaws,"
                       " coalesce ((SELECT length_ticks FROM reservations WHERE roll = rolls.id AND job_id IS ?1), 0)"
                       " FROM rolls WHERE free >= ?2 ORDER BY goods, id",
                       RC_VALUES (rc_value_text (job_id), rc_value_integer (least)), error))
    return NULL;
  while (rc_query_next (&query, error))
    {
      RcRoll *roll = rc_roll_rows_read (&query);

      roll->kept = rc_query_get_integer (&query, 8);
      g_ptr_array_add (rolls, roll);
    }
  return query.failed ? NULL : g_steal_pointer (&rolls);
}

GPtrArray *
rc_store_load_rolls_for_job (RcStore *store, const char *job_id, GError **error)
{
  g_return_val_if_fail (store != NULL, NULL);

  return rc_stock_find_rolls (store, job_id, 1, error);
}

GPtrArray *
rc_store_find_reservations (RcStore *store, const char *roll_id, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_reservation_free);
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_query_start (&query, store,
                       "SELECT roll, job_id, length_ticks, made FROM reservations WHERE (?1 IS NULL OR roll = ?1)"
                       " AND (?2 IS NULL OR job_id = ?2) ORDER BY made, roll, job_id",
                       RC_VALUES (rc_value_text (roll_id), rc_value_text (job_id)), error))
    return NULL;
  while (rc_query_next (&query, error))
    {
      RcReservation *one = g_new0 (RcReservation, 1);

      one->roll_id = rc_query_dup_text (&query, 0);
      one->job_id = rc_query_dup_text (&query, 1);
      one->length = rc_query_get_integer (&query, 2);
      one->made = rc_query_dup_text (&query, 3);
      g_ptr_array_add (found, one);
    }
  return query.failed ? NULL : g_steal_pointer (&found);
}

static RcMoveKind
parse_kind (const char *name)
{
  for (guint i = 0; i < RC_N_MOVES; i++)
    if (g_strcmp0 (rc_move_kind_get_name (i), name) == 0)
      return i;
  return RC_MOVE_CORRECTED;
}

/* In the reader's language. (transfer full) NULL: nothing known. */
static char *
dup_cause (const char *cause)
{
  if (cause == NULL)
    return NULL;
  if (g_str_has_prefix (cause, RC_CAUSE_REMNANT))
    return g_strdup_printf (_ ("remnant of roll %s"), cause + strlen (RC_CAUSE_REMNANT));
  if (g_str_has_prefix (cause, RC_CAUSE_ORDER))
    return g_strdup_printf (_ ("order %s"), cause + strlen (RC_CAUSE_ORDER));
  return g_strdup (g_str_equal (cause, RC_CAUSE_NO_DAMAGE) ? _ ("no damage") : _ ("damage"));
}

/* What the program knows of it, and what people wrote. (transfer full) NULL: nothing. */
static char *
dup_notes (const char *cause, const char *notes)
{
  g_autofree char *known = dup_cause (cause);

  if (known == NULL || notes == NULL || *notes == '\0')
    return known != NULL ? g_steal_pointer (&known) : g_strdup (notes);
  return g_strdup_printf ("%s, %s", known, notes);
}

GPtrArray *
rc_store_find_moves (RcStore *store, const char *roll_id, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_move_free);
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_query_start (&query, store,
                       "SELECT roll, kind, job_id, length_ticks, balance_ticks, made, notes, cause FROM roll_moves"
                       " WHERE ?1 IS NULL OR roll = ?1 ORDER BY move",
                       RC_VALUES (rc_value_text (roll_id)), error))
    return NULL;
  while (rc_query_next (&query, error))
    {
      RcRollMove *move = g_new0 (RcRollMove, 1);

      move->roll_id = rc_query_dup_text (&query, 0);
      move->kind = parse_kind (rc_query_get_text (&query, 1));
      move->job_id = rc_query_dup_text (&query, 2);
      move->length = rc_query_get_integer (&query, 3);
      move->balance = rc_query_get_integer (&query, 4);
      move->made = rc_query_dup_text (&query, 5);
      move->notes = dup_notes (rc_query_get_text (&query, 7), rc_query_get_text (&query, 6));
      g_ptr_array_add (found, move);
    }
  return query.failed ? NULL : g_steal_pointer (&found);
}

GPtrArray *
rc_store_find_cut_pieces (RcStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_query_start (&query, store,
                       "SELECT piece, width_ticks, length_ticks, job_id, roll, goods, lot, made FROM cut_pieces"
                       " WHERE ?1 IS NULL OR job_id = ?1 ORDER BY cut",
                       RC_VALUES (rc_value_text (job_id)), error))
    return NULL;
  while (rc_query_next (&query, error))
    {
      RcCutPiece *piece = rc_cut_piece_new (rc_query_get_text (&query, 0), rc_query_get_integer (&query, 1),
                                            rc_query_get_integer (&query, 2));

      piece->job_id = rc_query_dup_text (&query, 3);
      piece->roll_id = rc_query_dup_text (&query, 4);
      piece->goods_id = rc_query_dup_text (&query, 5);
      piece->lot = rc_query_dup_text (&query, 6);
      piece->made = rc_query_dup_text (&query, 7);
      g_ptr_array_add (found, piece);
    }
  return query.failed ? NULL : g_steal_pointer (&found);
}
