/* Stairs as measured, and the pieces they are carpeted in.
 *
 * A stair is one straight flight, or several with a turn between two and two: a landing or winders. A flight at an end,
 * or between two turns, may have no steps: a half turn by two quarter landings. A step is a tread with the riser below
 * it; steps are counted from 1 at the bottom, those of the turns with them. Pieces run down the stair with the pile;
 * they meet only where a riser stands on a tread (Litchfield, *Renovation*).
 */
#pragma once

#include "polygon.h"
#include "stair-turn.h"

typedef enum
{
  RC_STAIR_WATERFALL,    /* the carpet falls straight from the nose to the tread below */
  RC_STAIR_CAP_AND_BAND, /* a cap on the tread goes round the nose, a band covers the riser */
} RcStairStyle;

typedef enum
{
  RC_STAIR_WHOLE_FLIGHT, /* a flight in one piece */
  RC_STAIR_PER_STEP,     /* a piece for each step; for cap and band a cap and a band */
} RcStairCutting;

typedef struct
{
  char          *id;
  char          *name;
  guint          steps; /* straight steps, without those of the turns */
  RcLength       rise;  /* of one step */
  RcLength       going; /* of a straight step: tread, edge to riser */
  RcLength       width; /* between walls or strings */
  RcStairStyle   style;
  RcStairCutting cutting;
  RcLength       runner_width; /* of a runner as it lies; 0: carpet over the full width */
  RcLength       curved_width; /* of a bottom step with a curved end, measured round its riser; 0: none */
  GArray        *turns;        /* RcStairTurn, from the bottom up */
  RcLength       nose_extra;   /* added for each step; 1 in (Litchfield) */
  RcLength       end_extra;    /* added to each flight in one piece; 6 in (Litchfield) */
  RcLength       piece_extra;  /* added to each other piece; 2 in, common practice, no source */
  RcLength       width_extra;  /* added to the width, turned edges; 2 1/2 in (Litchfield) */
  char          *carpet;       /* goods id */
  char          *cushion;      /* goods id, nullable */
  char          *notes;
  gboolean       placed;          /* it stands on the drawing of storey `floor`, where it begins: */
  int            floor;           /* 0 ground */
  RcPoint        at;              /* the middle of the edge of its bottom step, in the house */
  int            bearing_degrees; /* the way up, clockwise from north; 0 to 359 */
} RcStair;

RcStair *rc_stair_new (const char *id, const char *name); /* straight, with the allowances of Litchfield, Renovation */
RcStair *rc_stair_copy (const RcStair *stair);
void     rc_stair_free (RcStair *stair);

/* The most steps of a stair, and the most turns; more is a slip. */
#define RC_STAIR_MAX_STEPS 1000
#define RC_STAIR_MAX_TURNS 20

typedef struct
{
  const RcStairTurn *turn;  /* that it belongs to; NULL: a straight step */
  RcLength           going; /* of a winder at its widest */
  RcLength           width; /* of the carpet on it as it lies */
} RcStairStep;

/* Turn `index`, from 0 at the bottom; to be changed where the stair may be. */
RcStairTurn *rc_stair_get_turn (const RcStair *stair, guint index);

gboolean rc_stair_has_turn (const RcStair *stair, RcTurnKind kind);

/* The straight steps of flight `flight`, from 0 at the bottom to the number of turns. Turns that want more than the
 * stair has leave none to those above. */
guint rc_stair_count_flight_steps (const RcStair *stair, guint flight);

/* How many steps with those of the turns. */
guint rc_stair_count_steps (const RcStair *stair);

/* The last straight step: one like most. */
guint rc_stair_get_plain_step (const RcStair *stair);

/* Step `step`, from 1 at the bottom to the count. */
RcStairStep rc_stair_get_step (const RcStair *stair, guint step);

typedef enum
{
  RC_STAIR_PIECE_FLIGHT,
  RC_STAIR_PIECE_STEP,
  RC_STAIR_PIECE_CAP,
  RC_STAIR_PIECE_BAND,
  RC_STAIR_PIECE_WINDER,
  RC_STAIR_PIECE_LANDING,
  RC_STAIR_PIECE_CURVED_STEP,
} RcStairPieceKind;

typedef struct
{
  RcStairPieceKind kind;
  guint            first, last;           /* steps it covers */
  RcLength         width, length;         /* as it lies, down the stair */
  RcLength         cut_width, cut_length; /* off the roll, allowances included */
  RcLength         from_top;              /* carpet from the top of the stair down to where it begins */
} RcStairPiece;

/* The pieces from the bottom up; (transfer full) GArray of RcStairPiece. NULL when a size is too large to reckon with.
 *
 * A flight: (going + rise + nose_extra) x steps + end_extra. A landing takes the riser below and goes round its nosing;
 * each winder is cut from the rectangle round its template, tread and riser below, nose_extra at the nose (both
 * Litchfield). */
GArray *rc_stair_compute_pieces (const RcStair *stair);

/* "flight", "step", "cap", "band", "winder", "landing", "curved-step". */
const char *rc_stair_piece_kind_get_name (RcStairPieceKind kind);

/* Translated: "Flight, steps 1 to 7". (transfer full) */
char *rc_stair_piece_dup_label (const RcStairPiece *piece);

/* Translated: what a stair has beside equal straight steps, as "; 3 winders after step 7", each part begun by "; "; ""
 * for a plain one. Lengths as in `style`. (transfer full) */
char *rc_stair_dup_extras (const RcStair *stair, const RcLengthStyle *style);

const char *rc_stair_style_get_name (RcStairStyle style); /* "waterfall", "cap-and-band" */
gboolean    rc_stair_style_parse (const char *name, RcStairStyle *style, GError **error);
const char *rc_stair_cutting_get_name (RcStairCutting cutting); /* "whole-flight", "per-step" */
gboolean    rc_stair_cutting_parse (const char *name, RcStairCutting *cutting, GError **error);
