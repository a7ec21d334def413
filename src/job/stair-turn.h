/* A turn between two flights of a stair: a landing or winders. */
#pragma once

#include "length.h"

typedef enum
{
  RC_TURN_LANDING,
  RC_TURN_WINDERS,
} RcTurnKind;

/* Where a turn leads, as one goes up. */
typedef enum
{
  RC_BEND_LEFT,
  RC_BEND_RIGHT,
  RC_BEND_BACK_LEFT, /* back beside the flight below */
  RC_BEND_BACK_RIGHT,
  RC_BEND_AHEAD, /* straight on: of a landing only */
} RcBend;

typedef struct
{
  RcTurnKind kind;
  RcBend     bend;
  guint      after;   /* straight steps below it, up from the turn before or from the bottom */
  guint      winders; /* steps in a turn of winders; a landing is one step */
  RcLength   going;   /* of a winder at its widest; the landing's length along the way up */
  RcLength   width;   /* the longest of a winder; the landing's width */
} RcStairTurn;

/* The steps of the turn itself. */
guint rc_stair_turn_count_steps (const RcStairTurn *turn);

const char *rc_turn_kind_get_name (RcTurnKind kind); /* "landing", "winders" */
gboolean    rc_turn_kind_parse (const char *name, RcTurnKind *kind, GError **error);
const char *rc_bend_get_name (RcBend bend); /* "left", "right", "back-left", "back-right", "ahead" */
gboolean    rc_bend_parse (const char *name, RcBend *bend, GError **error);
