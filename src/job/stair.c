#include "stair.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const style_names[] = { "waterfall", "cap-and-band" };
static const char *const cutting_names[] = { "whole-flight", "per-step" };

RcStair *
rc_stair_new (const char *id, const char *name)
{
  RcStair *stair = g_new0 (RcStair, 1);

  stair->id = g_strdup (id);
  stair->name = g_strdup (name);
  /* Litchfield, Renovation, "Carpeting stairs": 1 in a step and 6 in once; 2 1/2 in on the width, 1 1/4 in of tuck at
   * each side. */
  stair->nose_extra = RC_TICKS_PER_INCH;
  stair->end_extra = 6 * RC_TICKS_PER_INCH;
  stair->width_extra = 5 * RC_TICKS_PER_INCH / 2;
  stair->piece_extra = 2 * RC_TICKS_PER_INCH;
  stair->turns = g_array_new (FALSE, FALSE, sizeof (RcStairTurn));
  return stair;
}

RcStair *
rc_stair_copy (const RcStair *stair)
{
  RcStair *copy = g_memdup2 (stair, sizeof *stair);

  copy->id = g_strdup (stair->id);
  copy->name = g_strdup (stair->name);
  copy->carpet = g_strdup (stair->carpet);
  copy->cushion = g_strdup (stair->cushion);
  copy->notes = g_strdup (stair->notes);
  copy->turns = g_array_copy (stair->turns);
  return copy;
}

void
rc_stair_free (RcStair *stair)
{
  if (stair == NULL)
    return;
  g_free (stair->id);
  g_free (stair->name);
  g_free (stair->carpet);
  g_free (stair->cushion);
  g_free (stair->notes);
  g_array_unref (stair->turns);
  g_free (stair);
}

RcStairTurn *
rc_stair_get_turn (const RcStair *stair, guint index)
{
  return &g_array_index (stair->turns, RcStairTurn, index);
}

gboolean
rc_stair_has_turn (const RcStair *stair, RcTurnKind kind)
{
  for (guint i = 0; i < stair->turns->len; i++)
    if (rc_stair_get_turn (stair, i)->kind == kind)
      return TRUE;
  return FALSE;
}

guint
rc_stair_count_flight_steps (const RcStair *stair, guint flight)
{
  guint left = stair->steps;

  for (guint i = 0; i < flight; i++)
    left -= MIN (left, rc_stair_get_turn (stair, i)->after);
  return flight < stair->turns->len ? MIN (left, rc_stair_get_turn (stair, flight)->after) : left;
}

guint
rc_stair_count_steps (const RcStair *stair)
{
  guint n = stair->steps;

  for (guint i = 0; i < stair->turns->len; i++)
    n += rc_stair_turn_count_steps (rc_stair_get_turn (stair, i));
  return n;
}

guint
rc_stair_get_plain_step (const RcStair *stair)
{
  guint n = rc_stair_count_steps (stair);

  for (guint flight = stair->turns->len; flight > 0 && rc_stair_count_flight_steps (stair, flight) == 0; flight--)
    n -= rc_stair_turn_count_steps (rc_stair_get_turn (stair, flight - 1));
  return n;
}

/* The turn that a step belongs to; NULL for a straight one. */
static const RcStairTurn *
find_turn_of_step (const RcStair *stair, guint step)
{
  guint last = 0;

  for (guint i = 0; i < stair->turns->len; i++)
    {
      const RcStairTurn *turn = rc_stair_get_turn (stair, i);

      last += rc_stair_count_flight_steps (stair, i);
      if (step <= last)
        return NULL;
      last += rc_stair_turn_count_steps (turn);
      if (step <= last)
        return turn;
    }
  return NULL;
}

RcStairStep
rc_stair_get_step (const RcStair *stair, guint step)
{
  const RcStairTurn *turn = find_turn_of_step (stair, step);
  RcStairStep        found = { turn, turn ? turn->going : stair->going, turn ? turn->width : stair->width };

  if (step == 1 && turn == NULL && stair->curved_width > 0)
    found.width = stair->curved_width;
  if (stair->runner_width > 0)
    found.width = stair->runner_width;
  return found;
}

/* Appends a piece over the steps first .. last that is `length` long with `extra` more for the cut. FALSE where that is
 * too long. */
static gboolean
append (GArray *pieces, const RcStair *stair, RcStairPieceKind kind, guint first, guint last, RcLength length,
        RcLength extra)
{
  RcStairPiece piece = { .kind = kind, .first = first, .last = last, .length = length };

  piece.width = rc_stair_get_step (stair, first).width;
  if (!rc_length_add (piece.width, stair->width_extra, &piece.cut_width)
      || !rc_length_add (length, extra, &piece.cut_length))
    return FALSE;
  g_array_append_val (pieces, piece);
  return TRUE;
}

/* The carpet that a step takes: tread, riser below and nose. */
static gboolean
measure_step (const RcStair *stair, guint step, RcLength *length)
{
  return rc_length_add (rc_stair_get_step (stair, step).going, stair->rise, length)
         && rc_length_add (*length, stair->nose_extra, length);
}

static gboolean
append_step (GArray *pieces, const RcStair *stair, guint step)
{
  RcStairStep      here = rc_stair_get_step (stair, step);
  gboolean         curved = step == 1 && stair->curved_width > 0;
  RcStairPieceKind kind = here.turn == NULL ? curved ? RC_STAIR_PIECE_CURVED_STEP : RC_STAIR_PIECE_STEP
                          : here.turn->kind == RC_TURN_LANDING ? RC_STAIR_PIECE_LANDING
                                                               : RC_STAIR_PIECE_WINDER;
  RcLength         length, cap;

  if (kind == RC_STAIR_PIECE_STEP && stair->style == RC_STAIR_CAP_AND_BAND)
    return append (pieces, stair, RC_STAIR_PIECE_BAND, step, step, stair->rise, stair->piece_extra)
           && rc_length_add (here.going, stair->nose_extra, &cap)
           && append (pieces, stair, RC_STAIR_PIECE_CAP, step, step, cap, stair->piece_extra);
  return measure_step (stair, step, &length) && append (pieces, stair, kind, step, step, length, stair->piece_extra);
}

/* The straight steps first .. last as one piece, or each by itself. */
static gboolean
append_flight (GArray *pieces, const RcStair *stair, guint first, guint last)
{
  RcLength step, length;

  if (first > last)
    return TRUE;
  if (stair->cutting == RC_STAIR_WHOLE_FLIGHT)
    return measure_step (stair, last, &step) && rc_length_multiply (step, last - first + 1, &length)
           && append (pieces, stair, RC_STAIR_PIECE_FLIGHT, first, last, length, stair->end_extra);
  for (guint i = first; i <= last; i++)
    if (!append_step (pieces, stair, i))
      return FALSE;
  return TRUE;
}

/* Appends flight `flight`, whose first step comes after step `below`: the curved bottom step by itself. */
static gboolean
append_flight_above (GArray *pieces, const RcStair *stair, guint flight, guint below)
{
  guint    last = below + rc_stair_count_flight_steps (stair, flight);
  gboolean curved = stair->curved_width > 0 && below == 0 && last > 0;

  return (!curved || append_step (pieces, stair, 1)) && append_flight (pieces, stair, below + 1 + curved, last);
}

static gboolean
append_all (GArray *pieces, const RcStair *stair)
{
  guint below = 0;

  for (guint flight = 0; flight <= stair->turns->len; flight++)
    {
      if (!append_flight_above (pieces, stair, flight, below))
        return FALSE;
      below += rc_stair_count_flight_steps (stair, flight);
      guint turn = flight < stair->turns->len ? rc_stair_turn_count_steps (rc_stair_get_turn (stair, flight)) : 0;
      for (; turn > 0; turn--)
        if (!append_step (pieces, stair, ++below))
          return FALSE;
    }
  return TRUE;
}

GArray *
rc_stair_compute_pieces (const RcStair *stair)
{
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (RcStairPiece));
  RcLength from_top = 0;

  if (!append_all (pieces, stair))
    return NULL;
  for (guint i = pieces->len; i-- > 0;)
    {
      RcStairPiece *piece = &g_array_index (pieces, RcStairPiece, i);

      piece->from_top = from_top;
      if (!rc_length_add (from_top, piece->length, &from_top))
        return NULL;
    }
  return g_steal_pointer (&pieces);
}

const char *
rc_stair_piece_kind_get_name (RcStairPieceKind kind)
{
  static const char *const names[] = { "flight", "step", "cap", "band", "winder", "landing", "curved-step" };

  g_return_val_if_fail ((guint)kind < G_N_ELEMENTS (names), "");
  return names[kind];
}

char *
rc_stair_piece_dup_label (const RcStairPiece *piece)
{
  static const char *const formats[] = {
    [RC_STAIR_PIECE_STEP] = N_ ("Step %u"),
    [RC_STAIR_PIECE_CAP] = N_ ("Cap of step %u"),
    [RC_STAIR_PIECE_BAND] = N_ ("Band of step %u"),
    [RC_STAIR_PIECE_WINDER] = N_ ("Winder, step %u"),
    [RC_STAIR_PIECE_LANDING] = N_ ("Landing, step %u"),
    [RC_STAIR_PIECE_CURVED_STEP] = N_ ("Curved bottom step %u"),
  };

  if (piece->kind == RC_STAIR_PIECE_FLIGHT && piece->first == piece->last)
    return g_strdup_printf (_ ("Step %u"), piece->first);
  if (piece->kind == RC_STAIR_PIECE_FLIGHT)
    return g_strdup_printf (_ ("Flight, steps %u to %u"), piece->first, piece->last);
  return g_strdup_printf (_ (formats[piece->kind]), piece->first);
}

/* `below`: the steps under the turn. */
static void
add_turn_text (const RcStairTurn *turn, guint below, const RcLengthStyle *style, GString *text)
{
  g_autofree char *going = rc_length_format (turn->going, style);
  g_autofree char *width = rc_length_format (turn->width, style);

  if (turn->kind == RC_TURN_LANDING)
    g_string_append_printf (text, _ ("; a landing of %s by %s after step %u"), going, width, below);
  else
    g_string_append_printf (text,
                            ngettext ("; %u winder after step %u, %s at its widest, %s long",
                                      "; %u winders after step %u, %s at their widest, %s long", turn->winders),
                            turn->winders, below, going, width);
}

char *
rc_stair_dup_extras (const RcStair *stair, const RcLengthStyle *style)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0, below = 0; i < stair->turns->len; i++)
    {
      const RcStairTurn *turn = rc_stair_get_turn (stair, i);

      below += rc_stair_count_flight_steps (stair, i);
      add_turn_text (turn, below, style, text);
      below += rc_stair_turn_count_steps (turn);
    }
  if (stair->curved_width > 0)
    {
      g_autofree char *curved = rc_length_format (stair->curved_width, style);
      g_string_append_printf (text, _ ("; bottom step %s round its curved end"), curved);
    }
  if (stair->runner_width > 0)
    {
      g_autofree char *runner = rc_length_format (stair->runner_width, style);
      g_string_append_printf (text, _ ("; a runner %s wide"), runner);
    }
  if (stair->cutting == RC_STAIR_PER_STEP)
    g_string_append (text, _ ("; cut step by step"));
  return g_string_free (text, FALSE);
}

const char *
rc_stair_style_get_name (RcStairStyle style)
{
  g_return_val_if_fail ((guint)style < G_N_ELEMENTS (style_names), "");
  return style_names[style];
}

gboolean
rc_stair_style_parse (const char *name, RcStairStyle *style, GError **error)
{
  guint index;

  if (!rc_words_parse (style_names, G_N_ELEMENTS (style_names), _ ("way to carpet a stair"), name, &index, error))
    return FALSE;
  *style = index;
  return TRUE;
}

const char *
rc_stair_cutting_get_name (RcStairCutting cutting)
{
  g_return_val_if_fail ((guint)cutting < G_N_ELEMENTS (cutting_names), "");
  return cutting_names[cutting];
}

gboolean
rc_stair_cutting_parse (const char *name, RcStairCutting *cutting, GError **error)
{
  guint index;

  if (!rc_words_parse (cutting_names, G_N_ELEMENTS (cutting_names), _ ("way to cut a stair"), name, &index, error))
    return FALSE;
  *cutting = index;
  return TRUE;
}
