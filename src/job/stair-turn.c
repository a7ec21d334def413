#include "stair-turn.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const kind_names[] = { "landing", "winders" };
static const char *const bend_names[] = { "left", "right", "back-left", "back-right", "ahead" };

guint
rc_stair_turn_count_steps (const RcStairTurn *turn)
{
  return turn->kind == RC_TURN_LANDING ? 1 : turn->winders;
}

const char *
rc_turn_kind_get_name (RcTurnKind kind)
{
  g_return_val_if_fail ((guint)kind < G_N_ELEMENTS (kind_names), "");
  return kind_names[kind];
}

gboolean
rc_turn_kind_parse (const char *name, RcTurnKind *kind, GError **error)
{
  guint index;

  if (!rc_words_parse (kind_names, G_N_ELEMENTS (kind_names), _ ("turn of a stair"), name, &index, error))
    return FALSE;
  *kind = index;
  return TRUE;
}

const char *
rc_bend_get_name (RcBend bend)
{
  g_return_val_if_fail ((guint)bend < G_N_ELEMENTS (bend_names), "");
  return bend_names[bend];
}

gboolean
rc_bend_parse (const char *name, RcBend *bend, GError **error)
{
  guint index;

  if (!rc_words_parse (bend_names, G_N_ELEMENTS (bend_names), _ ("way that a stair turns"), name, &index, error))
    return FALSE;
  *bend = index;
  return TRUE;
}
