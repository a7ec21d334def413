#include "stair.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const style_names[] = { "waterfall", "cap-and-band" };
static const char *const cutting_names[] = { "whole-flight", "per-step" };
static const char *const turn_names[] = { "straight", "landing", "winders" };
static const char *const bend_names[] = { "left", "right", "back-left", "back-right" };

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
  g_free (stair);
}

static guint
count_turn_steps (const RcStair *stair)
{
  return stair->turn == RC_STAIR_LANDING ? 1 : stair->turn == RC_STAIR_WINDERS ? stair->winders : 0;
}

/* Straight steps below the turn. */
static guint
count_lower_steps (const RcStair *stair)
{
  return stair->turn == RC_STAIR_STRAIGHT ? stair->steps : MIN (stair->turn_after, stair->steps);
}

guint
rc_stair_count_steps (const RcStair *stair)
{
  return stair->steps + count_turn_steps (stair);
}

guint
rc_stair_get_plain_step (const RcStair *stair)
{
  guint lower = count_lower_steps (stair);

  return stair->steps > lower ? rc_stair_count_steps (stair) : lower;
}

RcStairStep
rc_stair_get_step (const RcStair *stair, guint step)
{
  guint       lower = count_lower_steps (stair);
  gboolean    turns = step > lower && step <= lower + count_turn_steps (stair);
  RcStairStep found = { turns ? stair->turn : RC_STAIR_STRAIGHT, turns ? stair->turn_going : stair->going,
                        turns ? stair->turn_width : stair->width };
  if (step == 1 && !turns && stair->curved_width > 0)
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
  gboolean         curved = step == 1 && here.kind == RC_STAIR_STRAIGHT && stair->curved_width > 0;
  RcStairPieceKind kind = here.kind == RC_STAIR_LANDING   ? RC_STAIR_PIECE_LANDING
                          : here.kind == RC_STAIR_WINDERS ? RC_STAIR_PIECE_WINDER
                          : curved                        ? RC_STAIR_PIECE_CURVED_STEP
                                                          : RC_STAIR_PIECE_STEP;
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

static gboolean
append_all (GArray *pieces, const RcStair *stair)
{
  guint n = rc_stair_count_steps (stair), lower = count_lower_steps (stair), turn = count_turn_steps (stair);
  guint first = stair->curved_width > 0 && lower > 0 ? 2 : 1;

  if ((first == 2 && !append_step (pieces, stair, 1)) || !append_flight (pieces, stair, first, lower))
    return FALSE;
  for (guint i = lower + 1; i <= lower + turn; i++)
    if (!append_step (pieces, stair, i))
      return FALSE;
  return append_flight (pieces, stair, lower + turn + 1, n);
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

static void
add_turn_text (const RcStair *stair, const RcLengthStyle *style, GString *text)
{
  g_autofree char *going = rc_length_format (stair->turn_going, style);
  g_autofree char *width = rc_length_format (stair->turn_width, style);

  if (stair->turn == RC_STAIR_LANDING)
    g_string_append_printf (text, _ ("; a landing of %s by %s after step %u"), going, width, stair->turn_after);
  else if (stair->turn == RC_STAIR_WINDERS)
    g_string_append_printf (text,
                            ngettext ("; %u winder after step %u, %s at its widest, %s long",
                                      "; %u winders after step %u, %s at their widest, %s long", stair->winders),
                            stair->winders, stair->turn_after, going, width);
}

char *
rc_stair_dup_extras (const RcStair *stair, const RcLengthStyle *style)
{
  GString *text = g_string_new (NULL);

  add_turn_text (stair, style, text);
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

const char *
rc_stair_turn_get_name (RcStairTurn turn)
{
  g_return_val_if_fail ((guint)turn < G_N_ELEMENTS (turn_names), "");
  return turn_names[turn];
}

gboolean
rc_stair_turn_parse (const char *name, RcStairTurn *turn, GError **error)
{
  guint index;

  if (!rc_words_parse (turn_names, G_N_ELEMENTS (turn_names), _ ("turn of a stair"), name, &index, error))
    return FALSE;
  *turn = index;
  return TRUE;
}

const char *
rc_stair_bend_get_name (RcStairBend bend)
{
  g_return_val_if_fail ((guint)bend < G_N_ELEMENTS (bend_names), "");
  return bend_names[bend];
}

gboolean
rc_stair_bend_parse (const char *name, RcStairBend *bend, GError **error)
{
  guint index;

  if (!rc_words_parse (bend_names, G_N_ELEMENTS (bend_names), _ ("way that a stair turns"), name, &index, error))
    return FALSE;
  *bend = index;
  return TRUE;
}
