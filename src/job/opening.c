#include "room.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const kind_names[] = { "door", "archway", "window" };
static const char *const swing_names[] = { "none", "in", "out" };

RcOpening *
rc_opening_new (const char *id, RcOpeningKind kind)
{
  RcOpening *opening = g_new0 (RcOpening, 1);

  opening->id = g_strdup (id);
  opening->kind = kind;
  return opening;
}

RcOpening *
rc_opening_copy (const RcOpening *opening)
{
  RcOpening *copy = g_memdup2 (opening, sizeof *opening);

  copy->id = g_strdup (opening->id);
  copy->to_room = g_strdup (opening->to_room);
  copy->to_opening = g_strdup (opening->to_opening);
  copy->transition = g_strdup (opening->transition);
  return copy;
}

void
rc_opening_free (RcOpening *opening)
{
  if (opening == NULL)
    return;
  g_free (opening->id);
  g_free (opening->to_room);
  g_free (opening->to_opening);
  g_free (opening->transition);
  g_free (opening);
}

const char *
rc_opening_kind_get_name (RcOpeningKind kind)
{
  g_return_val_if_fail ((guint)kind < G_N_ELEMENTS (kind_names), "");
  return kind_names[kind];
}

const char *
rc_opening_kind_get_label (RcOpeningKind kind)
{
  switch (kind)
    {
    case RC_OPENING_ARCHWAY:
      return _ ("archway");
    case RC_OPENING_WINDOW:
      return _ ("window");
    case RC_OPENING_DOOR:
    default:
      return _ ("door");
    }
}

gboolean
rc_opening_kind_parse (const char *name, RcOpeningKind *kind, GError **error)
{
  guint index;

  if (!rc_words_parse (kind_names, G_N_ELEMENTS (kind_names), _ ("kind of opening"), name, &index, error))
    return FALSE;
  *kind = index;
  return TRUE;
}

const char *
rc_swing_get_name (RcSwing swing)
{
  g_return_val_if_fail ((guint)swing < G_N_ELEMENTS (swing_names), "");
  return swing_names[swing];
}

gboolean
rc_swing_parse (const char *name, RcSwing *swing, GError **error)
{
  guint index;

  if (!rc_words_parse (swing_names, G_N_ELEMENTS (swing_names), _ ("swing of a door"), name, &index, error))
    return FALSE;
  *swing = index;
  return TRUE;
}
