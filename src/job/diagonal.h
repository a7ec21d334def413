/* Check measurements of a room: distances between two of its corners, held against what the walls say. */
#pragma once

#include "room.h"

/* The distance as the walls have it. FALSE when there are no such corners, or the two are one. */
gboolean rc_diagonal_compute (const RcRoom *room, const RcDiagonal *diagonal, RcLength *computed);

/* How walls and diagonals agree. */
typedef enum
{
  RC_DIAGONALS_AGREE,  /* or there are none */
  RC_DIAGONALS_WALL,   /* another length of one wall explains all of them */
  RC_DIAGONALS_ANGLES, /* no length does: the corners are not as drawn */
} RcDiagonalsVerdict;

typedef struct
{
  RcDiagonalsVerdict verdict;
  guint              wall; /* WALL: the one most likely to be wrong, and its length then */
  RcLength           length;
  guint              partner; /* the wall over against it that must change as much for the room to close; else `wall` */
} RcDiagonalsFinding;

/* Each wall in turn is given the length with which the diagonals come out best (least squares); where the walls close
 * by now, the wall over against it gets longer by as much. The wall that leaves least is suspected, of equals the one
 * that changes less; when it leaves more than `off_max` at some diagonal, the angles are; also in a room of more than
 * 256 walls, which are not tried. */
RcDiagonalsFinding rc_room_judge_diagonals (const RcRoom *room, RcLength off_max);

/* The shape that has the walls' lengths and the diagonals: the bearings of all walls but the first follow from them, a
 * triangle at a time; each corner stays on the side where it is now. Curved walls by their chords. The room must be
 * given by walls. RC_ERROR_GEOMETRY naming the room, when the diagonals do not part it into triangles (says how many
 * are wanted) or three lengths make no triangle (names them); the room is then unchanged. */
gboolean rc_room_fit_diagonals (RcRoom *room, GError **error);
