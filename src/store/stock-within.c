#include "stock-within.h"

#include <glib/gi18n-lib.h>

#include "query.h"
#include "roll-rows.h"

/* A line of a roll's history, borrowed. */
typedef struct
{
  RcMoveKind  kind;
  const char *job_id; /* nullable */
  RcLength    length;
  const char *cause, *notes; /* nullable */
} Move;

static gboolean
note (RcStore *store, const char *roll_id, const Move *move, const char *now, GError **error)
{
  return rc_query_run (
      store,
      "INSERT INTO roll_moves (roll, kind, job_id, length_ticks, balance_ticks, made, notes, cause)"
      " VALUES (?1, ?2, ?3, ?4, coalesce ((SELECT length_ticks FROM rolls WHERE id = ?1), 0), ?5, ?6, ?7)",
      RC_VALUES (rc_value_text (roll_id), rc_value_text (rc_move_kind_get_name (move->kind)),
                 rc_value_text (move->job_id), rc_value_integer (move->length), rc_value_text (now),
                 rc_value_text (move->notes), rc_value_text (move->cause)),
      error);
}

static gboolean
find_number (RcStore *store, const char *sql, const char *roll_id, const char *job_id, gint64 *number, GError **error)
{
  return rc_query_find_integer (store, sql, RC_VALUES (rc_value_text (roll_id), rc_value_text (job_id)), 0, number,
                                error);
}

gboolean
rc_stock_find_standing (RcStore *store, const char *roll_id, const char *job_id, RcStanding *standing, GError **error)
{
  gint64 n_rolls;

  if (!find_number (store, "SELECT count (*) FROM rolls WHERE id = ?1 AND ?2 IS ?2", roll_id, NULL, &n_rolls, error))
    return FALSE;
  if (n_rolls == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no roll %s in stock."), roll_id);
      return FALSE;
    }
  return find_number (store, "SELECT length_ticks FROM rolls WHERE id = ?1 AND ?2 IS ?2", roll_id, NULL,
                      &standing->length, error)
         && find_number (store, "SELECT sum (length_ticks) FROM reservations WHERE roll = ?1 AND job_id IS ?2", roll_id,
                         job_id, &standing->own, error)
         && find_number (store, "SELECT sum (length_ticks) FROM reservations WHERE roll = ?1 AND job_id IS NOT ?2",
                         roll_id, job_id, &standing->others, error);
}

/* Rolls belong to no job, so both ways of measuring are said: 30' (9.144 m). (transfer full) */
static char *
dup_length (RcLength length)
{
  g_autofree char *feet = rc_length_format (length, &RC_LENGTH_STYLE_IMPERIAL);
  g_autofree char *metres = rc_length_format (length, &RC_LENGTH_STYLE_METRIC);

  return g_strdup_printf ("%s (%s)", feet, metres);
}

static gboolean
refuse_length (const char *roll_id, RcLength wanted, const RcStanding *standing, GError **error)
{
  g_autofree char *length = dup_length (standing->length), *asked = dup_length (wanted);
  g_autofree char *others = dup_length (standing->others);

  g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
               _ ("Roll %s has %s, of which %s is promised to other jobs: not %s more. Take another roll, or release a "
                  "promise."),
               roll_id, length, others, asked);
  return FALSE;
}

static gboolean
set_promise (RcStore *store, const char *roll_id, const char *job_id, RcLength length, const char *now, GError **error)
{
  if (length == 0)
    return rc_query_run (store, "DELETE FROM reservations WHERE roll = ? AND job_id = ?",
                         RC_VALUES (rc_value_text (roll_id), rc_value_text (job_id)), error);
  return rc_query_run (
      store,
      "INSERT INTO reservations (roll, job_id, length_ticks, made) VALUES (?, ?, ?, ?)"
      " ON CONFLICT (roll, job_id) DO UPDATE SET length_ticks = excluded.length_ticks, made = excluded.made",
      RC_VALUES (rc_value_text (roll_id), rc_value_text (job_id), rc_value_integer (length), rc_value_text (now)),
      error);
}

static gboolean
insert_roll (RcStore *store, const RcRoll *roll, const char *id, GError **error)
{
  g_autofree char *flaws = rc_roll_rows_format_flaws (roll->flaws);

  return rc_query_run (store,
                       "INSERT INTO rolls (id, goods, lot, length_ticks, remnant, place, width_ticks, flaws)"
                       " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                       RC_VALUES (rc_value_text (id), rc_value_text (roll->goods_id), rc_value_text (roll->lot),
                                  rc_value_integer (roll->length), rc_value_integer (roll->remnant != FALSE),
                                  rc_value_text (roll->place), rc_value_integer (roll->width), rc_value_text (flaws)),
                       error);
}

/* The next ticket that no roll has or had. (transfer full) */
static char *
dup_free_ticket (RcStore *store, GError **error)
{
  for (;;)
    {
      g_autofree char *id = NULL;
      gint64           serial, n_found;

      if (!rc_store_count (store, "roll", &serial, error))
        return NULL;
      id = g_strdup_printf ("R-%" G_GINT64_FORMAT, serial);
      if (!find_number (store,
                        "SELECT (SELECT count (*) FROM rolls WHERE id = ?1)"
                        " + (SELECT count (*) FROM roll_moves WHERE roll = ?1) WHERE ?2 IS ?2",
                        id, NULL, &n_found, error))
        return NULL;
      if (n_found == 0)
        return g_steal_pointer (&id);
    }
}

char *
rc_stock_receive (RcStore *store, const RcRoll *roll, const char *job_id, const char *cause, const char *notes,
                  const char *now, GError **error)
{
  g_autofree char *id = roll->id != NULL ? g_strdup (roll->id) : dup_free_ticket (store, error);
  gint64           n_found;

  if (id == NULL
      || !find_number (store, "SELECT count (*) FROM rolls WHERE id = ?1 AND ?2 IS ?2", id, NULL, &n_found, error))
    return NULL;
  if (n_found > 0 || roll->length <= 0)
    {
      if (n_found > 0)
        g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
                     _ ("There is a roll %s in stock already; give this one another "
                        "ticket."),
                     id);
      else
        g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("Roll %s: its length must be more than nothing."), id);
      return NULL;
    }
  if (!insert_roll (store, roll, id, error)
      || !note (store, id, &(Move){ RC_MOVE_RECEIVED, job_id, roll->length, cause, notes }, now, error))
    return NULL;
  return g_steal_pointer (&id);
}

gboolean
rc_stock_reserve (RcStore *store, const char *roll_id, const char *job_id, RcLength length, const char *now,
                  GError **error)
{
  RcStanding standing;

  if (!rc_stock_find_standing (store, roll_id, job_id, &standing, error))
    return FALSE;
  if (length < 0 || length > standing.length - standing.others)
    return refuse_length (roll_id, length, &standing, error);
  if (length == standing.own)
    return TRUE;
  return set_promise (store, roll_id, job_id, length, now, error)
         && note (store, roll_id,
                  &(Move){ length > standing.own ? RC_MOVE_RESERVED : RC_MOVE_RELEASED, job_id, length - standing.own },
                  now, error);
}

/* Damaged lengths move towards the roll's start with what is cut before them. */
static char *
dup_flaws_after (RcStore *store, const char *roll_id, RcLength length, GError **error)
{
  g_autoptr (GArray) flaws = g_array_new (FALSE, FALSE, sizeof (RcFlaw)),
                     left = g_array_new (FALSE, FALSE, sizeof (RcFlaw));
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store, "SELECT flaws FROM rolls WHERE id = ?", RC_VALUES (rc_value_text (roll_id)),
                       error))
    return NULL;
  if (rc_query_next (&query, error))
    rc_roll_rows_parse_flaws (rc_query_get_text (&query, 0), flaws);
  for (guint i = 0; i < flaws->len; i++)
    {
      RcFlaw flaw = g_array_index (flaws, RcFlaw, i);

      flaw.from = MAX (0, flaw.from - length);
      flaw.to -= length;
      if (flaw.to > flaw.from)
        g_array_append_val (left, flaw);
    }
  return rc_roll_rows_format_flaws (left);
}

static gboolean
insert_piece (RcStore *store, const char *roll_id, const char *job_id, const RcCutPiece *piece, const char *now,
              GError **error)
{
  if (piece->width <= 0 || piece->length <= 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
                   _ ("Piece %s of roll %s: its width and length must be more than "
                      "nothing."),
                   piece->piece != NULL ? piece->piece : "", roll_id);
      return FALSE;
    }
  return rc_query_run (store,
                       "INSERT INTO cut_pieces (job_id, roll, goods, lot, piece, width_ticks, length_ticks, made)"
                       " SELECT ?1, id, goods, lot, ?2, ?3, ?4, ?5 FROM rolls WHERE id = ?6",
                       RC_VALUES (rc_value_text (job_id), rc_value_text (piece->piece), rc_value_integer (piece->width),
                                  rc_value_integer (piece->length), rc_value_text (now), rc_value_text (roll_id)),
                       error);
}

static gboolean
keep_remnant (RcStore *store, const char *roll_id, const char *job_id, RcRoll *remnant, const char *now, GError **error)
{
  g_auto (RcQuery) query = { 0 };
  g_autofree char *id = NULL, *cause = g_strconcat (RC_CAUSE_REMNANT, roll_id, NULL);

  if (!rc_query_start (&query, store, "SELECT goods, lot FROM rolls WHERE id = ?", RC_VALUES (rc_value_text (roll_id)),
                       error)
      || !rc_query_next (&query, error))
    return FALSE;
  g_free (remnant->goods_id);
  g_free (remnant->lot);
  remnant->goods_id = rc_query_dup_text (&query, 0);
  remnant->lot = rc_query_dup_text (&query, 1);
  remnant->remnant = TRUE;
  rc_query_clear (&query);
  id = rc_stock_receive (store, remnant, job_id, cause, NULL, now, error);
  if (id == NULL)
    return FALSE;
  g_free (remnant->id);
  remnant->id = g_steal_pointer (&id);
  return TRUE;
}

static gboolean
shorten (RcStore *store, const char *roll_id, RcLength cut, RcLength balance, GError **error)
{
  g_autoptr (GError) fault = NULL;
  g_autofree char *flaws = dup_flaws_after (store, roll_id, cut, &fault);

  if (fault != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&fault));
      return FALSE;
    }
  return rc_query_run (store, "UPDATE rolls SET length_ticks = ?, flaws = ? WHERE id = ?",
                       RC_VALUES (rc_value_integer (balance), rc_value_text (flaws), rc_value_text (roll_id)), error);
}

gboolean
rc_stock_cut (RcStore *store, const char *roll_id, const char *job_id, RcLength length, const GPtrArray *pieces,
              GPtrArray *remnants, RcLength balance, const char *now, GError **error)
{
  RcStanding standing;
  RcLength   left;

  if (!rc_stock_find_standing (store, roll_id, job_id, &standing, error))
    return FALSE;
  if (length < 0 || length > standing.length - standing.others)
    return refuse_length (roll_id, length, &standing, error);
  left = balance >= 0 ? balance : standing.length - length;
  if (left < standing.others || left > standing.length)
    {
      RcStanding measured = { left, 0, standing.others };

      return refuse_length (roll_id, length, &measured, error);
    }
  /* What is promised to the job goes down with what it gets, and is never more than what the others leave. */
  if (!set_promise (store, roll_id, job_id, MIN (MAX (0, standing.own - length), left - standing.others), now, error)
      || !shorten (store, roll_id, length, left, error)
      || !note (store, roll_id, &(Move){ RC_MOVE_CUT, job_id, left - standing.length }, now, error))
    return FALSE;
  for (guint i = 0; pieces != NULL && i < pieces->len; i++)
    if (!insert_piece (store, roll_id, job_id, pieces->pdata[i], now, error))
      return FALSE;
  for (guint i = 0; remnants != NULL && i < remnants->len; i++)
    if (!keep_remnant (store, roll_id, job_id, remnants->pdata[i], now, error))
      return FALSE;
  return TRUE;
}

gboolean
rc_stock_correct (RcStore *store, const char *roll_id, RcLength length, const char *notes, const char *now,
                  GError **error)
{
  RcStanding standing;

  if (!rc_stock_find_standing (store, roll_id, NULL, &standing, error))
    return FALSE;
  if (length < 0 || length < standing.others)
    {
      g_autofree char *measured = dup_length (length), *promised = dup_length (standing.others);

      g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
                   _ ("Roll %s cannot be %s long: %s of it is promised to jobs. Release a promise first."), roll_id,
                   measured, promised);
      return FALSE;
    }
  return rc_query_run (store, "UPDATE rolls SET length_ticks = ? WHERE id = ?",
                       RC_VALUES (rc_value_integer (length), rc_value_text (roll_id)), error)
         && note (store, roll_id, &(Move){ RC_MOVE_CORRECTED, NULL, length - standing.length, NULL, notes }, now,
                  error);
}

gboolean
rc_stock_mark_damage (RcStore *store, const char *roll_id, const GArray *flaws, const char *now, GError **error)
{
  g_autofree char *text = rc_roll_rows_format_flaws (flaws);
  RcStanding       standing;

  if (!rc_stock_find_standing (store, roll_id, NULL, &standing, error))
    return FALSE;
  for (guint i = 0; i < flaws->len; i++)
    {
      const RcFlaw    *flaw = &g_array_index (flaws, RcFlaw, i);
      g_autofree char *from = dup_length (flaw->from), *to = dup_length (flaw->to), *has = dup_length (standing.length);

      if (flaw->from >= 0 && flaw->from < flaw->to && flaw->to <= standing.length)
        continue;
      g_set_error (
          error, RC_ERROR, RC_ERROR_RANGE,
          _ ("Roll %s: damaged from %s to %s cannot be, as it has %s; write the place nearer the start first."),
          roll_id, from, to, has);
      return FALSE;
    }
  return rc_query_run (store, "UPDATE rolls SET flaws = ? WHERE id = ?",
                       RC_VALUES (rc_value_text (text), rc_value_text (roll_id)), error)
         && note (store, roll_id,
                  &(Move){ RC_MOVE_CORRECTED, NULL, 0, flaws->len > 0 ? RC_CAUSE_DAMAGE : RC_CAUSE_NO_DAMAGE }, now,
                  error);
}

gboolean
rc_stock_place (RcStore *store, const char *roll_id, const char *place, const char *now, GError **error)
{
  RcStanding standing;

  return rc_stock_find_standing (store, roll_id, NULL, &standing, error)
         && rc_query_run (store, "UPDATE rolls SET place = ? WHERE id = ?",
                          RC_VALUES (rc_value_text (place), rc_value_text (roll_id)), error)
         && note (store, roll_id, &(Move){ RC_MOVE_PLACED, NULL, 0, NULL, place }, now, error);
}

/* The roll as it is in stock; NULL with an error when it is not there. (transfer full) */
static RcRoll *
load_roll (RcStore *store, const char *id, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (
          &query, store,
          "SELECT id, goods, lot, length_ticks, remnant, place, width_ticks, flaws FROM rolls WHERE id = ?",
          RC_VALUES (rc_value_text (id)), error))
    return NULL;
  if (rc_query_next (&query, error))
    return rc_roll_rows_read (&query);
  if (!query.failed)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no roll %s in stock."), id);
  return NULL;
}

static gboolean
is_text_equal (const char *a, const char *b)
{
  return g_strcmp0 (a != NULL ? a : "", b != NULL ? b : "") == 0;
}

gboolean
rc_stock_amend (RcStore *store, const RcRoll *roll, const char *notes, const char *now, GError **error)
{
  g_autoptr (RcRoll) was = load_roll (store, roll->id, error);
  g_autofree char *flaws = rc_roll_rows_format_flaws (roll->flaws), *flaws_before = NULL;

  if (was == NULL)
    return FALSE;
  flaws_before = rc_roll_rows_format_flaws (was->flaws);
  return (roll->length == was->length || rc_stock_correct (store, roll->id, roll->length, notes, now, error))
         && (is_text_equal (roll->place, was->place) || rc_stock_place (store, roll->id, roll->place, now, error))
         && (is_text_equal (flaws, flaws_before) || rc_stock_mark_damage (store, roll->id, roll->flaws, now, error));
}
