/* Where the pointer is taken to be: on corners and walls of other rooms, behind their walls, at right angles to the
 * wall before, at whole steps.
 *
 * The two axes of the house snap on their own, so that a corner may line up with one room to the left and another
 * below.
 */
#pragma once

#include "gesture-scene.h"

typedef enum
{
  RC_SNAP_NONE,   /* as pointed at */
  RC_SNAP_STEP,   /* a whole step */
  RC_SNAP_SQUARE, /* at a right angle (or half of one) from the anchor */
  RC_SNAP_WALL,   /* in line with a wall or a corner */
  RC_SNAP_BEHIND, /* a wall's thickness behind a wall */
  RC_SNAP_CORNER, /* on a corner */
} RcSnapKind;

typedef struct
{
  RcPoint        pointer;
  RcLength       reach; /* how near is near: some pixels */
  gboolean       has_anchor;
  RcPoint        anchor; /* the corner before: right angles and whole steps count from it */
  const RcPoint *others; /* corners of what is being drawn, to line up with; nullable */
  guint          n_others;
  const char    *except_room;  /* nullable: its walls are being moved */
  gboolean       is_free;      /* nothing snaps */
  gboolean       keeps_square; /* sloping walls come in half right angles from the anchor */
} RcSnapRequest;

typedef struct
{
  RcPoint    point;
  RcSnapKind x_kind, y_kind;
  RcPoint    x_from, y_from; /* what the point lines up with, for a guide to be drawn; where the kind is WALL, BEHIND or
                                CORNER */
} RcSnap;

RcSnap rc_snap_find (const RcScene *scene, const RcSnapRequest *request);

/* The nearest multiple of `step` (> 0). */
RcLength rc_snap_round (RcLength length, RcLength step);
