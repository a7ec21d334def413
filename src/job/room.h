/* Rooms as measured: walls, openings, cut-outs. */
#pragma once

#include "cutout.h"
#include "traverse.h"

typedef struct
{
  double   bearing_degrees; /* the way the wall is walked, clockwise from north; N 0, E 90 */
  RcLength length;          /* as measured */
  RcLength bow;             /* curved wall: rise of the arc over its chord `length`, > 0 bulging outwards; 0 straight */
} RcWall;

typedef enum
{
  RC_OPENING_DOOR,
  RC_OPENING_ARCHWAY,
  RC_OPENING_WINDOW,
} RcOpeningKind;

typedef enum
{
  RC_SWING_NONE, /* no leaf, or sliding */
  RC_SWING_IN,   /* leaf sweeps this room */
  RC_SWING_OUT,
} RcSwing;

/* An opening in a wall. Doors and archways interrupt tack strip; windows only bring light. */
typedef struct
{
  char         *id; /* unique in the room: "D1" */
  RcOpeningKind kind;
  guint         wall;   /* index of its wall (of its outline edge) */
  RcLength      offset; /* from the wall's start to the opening's near edge */
  RcLength      width;
  RcLength      depth; /* wall thickness, from this room's face to the other room's */
  RcSwing       swing;
  gboolean      hinge_at_end; /* hinges at the edge farther along the wall */
  char         *to_room;      /* id of the room it leads to, NULL: outside or a room not measured */
  char         *to_opening;   /* id of the same opening as measured in that room; NULL when only measured here */
  char         *transition;   /* goods id of the moulding where the floors differ; NULL: none */
} RcOpening;

/* A check measurement: how far two corners are apart. Corner i, from 0, is where wall i begins. */
typedef struct
{
  guint    from, to;
  RcLength length; /* as measured; 0: not yet */
} RcDiagonal;

/* A room. Its corners come from walls walked clockwise or counter-clockwise, or from `outline`; exactly one of the two
 * is non-empty. Walls of an outline are its edges in order. */
typedef struct
{
  char      *id;        /* unique in the measure, stable: "living" */
  char      *name;      /* "Living room" */
  int        floor;     /* 0 ground, 1 first above */
  GArray    *walls;     /* of RcWall */
  RcRing    *outline;   /* points as given, any orientation */
  gboolean   spread;    /* spread the misclosure by the compass rule */
  GPtrArray *cutouts;   /* of RcCutout */
  GPtrArray *openings;  /* of RcOpening */
  GArray    *diagonals; /* of RcDiagonal: they check the walls and change nothing */
  gboolean   placed;    /* `at` is given; else the room is placed by a door that meets a placed room */
  RcPoint    at;        /* where the room's own origin lies in the house */
  char      *notes;
} RcRoom;

RcOpening *rc_opening_new (const char *id, RcOpeningKind kind);
RcOpening *rc_opening_copy (const RcOpening *opening);
void       rc_opening_free (RcOpening *opening);
RcRoom    *rc_room_new (const char *id, const char *name);
RcRoom    *rc_room_copy (const RcRoom *room);
void       rc_room_free (RcRoom *room);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcRoom, rc_room_free)

/* The longest wall (or farthest corner), the most walls and the most openings of one room: more is a slip, and is
 * refused with the limit named. */
#define RC_ROOM_MAX_SIDE     (1000 * RC_TICKS_PER_M)
#define RC_ROOM_MAX_WALLS    4096
#define RC_ROOM_MAX_OPENINGS 1000

/* Limits on a misclosure. */
typedef struct
{
  RcLength error_max; /* refused above this, e.g. 3 in */
  RcLength close_max; /* at most this is taken as closed without a word, e.g. 1/4 in */
} RcClosureLimits;

/* The room's closed shape in its own coordinates, normalised, cut-outs as holes (or cut off where they stand at a
 * wall), curved walls as chords that hold the floor (each at most 1 mm off the arc). A misclosure is spread with
 * `spread`, else closed on the last wall. Errors (RC_ERROR_GEOMETRY), all naming the room: fewer than three walls, too
 * many or too long ones, a wall of no length or bowed by more than half of it; walls that miss closing by more than the
 * limit, with or without `spread` (says by how much, 1 part in how many, and the walls to measure again in order of
 * suspicion); walls that cross (names both); a cut-out outside the room or that parts it in two; an opening wider than
 * its wall, past its end, over another door, a door in a curved wall. */
RcPolygon *rc_room_compute_polygon (const RcRoom *room, const RcClosureLimits *limits, GError **error);

/* The part of the above about openings alone, for rooms whose walls are known to be sound. */
gboolean rc_room_check_openings (const RcRoom *room, GError **error);

/* The walk's closure; zero for an outline. */
void rc_room_compute_closure (const RcRoom *room, RcClosure *closure);

guint rc_room_get_n_walls (const RcRoom *room);

/* The two ends of wall `wall` in the room's own coordinates, in the order walked, after closing. FALSE when there is no
 * such wall. */
gboolean rc_room_get_wall_ends (const RcRoom *room, guint wall, RcPoint *from, RcPoint *to);

/* The two ends of an opening on its wall, in the room's own coordinates. */
gboolean rc_room_get_opening_ends (const RcRoom *room, const RcOpening *opening, RcPoint *from, RcPoint *to);

/* The step of `depth` square through wall `wall`, out of the room: exact along the axes, else rounded to the nearest
 * tick. FALSE when there is no such wall or it has no length. */
gboolean rc_room_get_outward_step (const RcRoom *room, guint wall, RcLength depth, RcPoint *step);

/* The corners after closing, one for each wall in the order walked: wall i runs from corner i to the next. Curved walls
 * by their chords. (transfer full) */
RcRing *rc_room_compute_corners (const RcRoom *room);

/* What to call the room and its walls in messages: the name, or the id where it has none; wall 3 (12' 0" going north),
 * numbered from 1. (transfer full) the wall's. */
const char *rc_room_get_name (const RcRoom *room);
char       *rc_room_describe_wall (const RcRoom *room, guint wall);

/* Feet and inches where every wall is a whole number of 1/32 in, else metric. */
const RcLengthStyle *rc_room_get_length_style (const RcRoom *room);

const RcOpening *rc_room_find_opening (const RcRoom *room, const char *id);

const char *rc_opening_kind_get_name (RcOpeningKind kind);  /* "door", "archway", "window" */
const char *rc_opening_kind_get_label (RcOpeningKind kind); /* the same, translated */
gboolean    rc_opening_kind_parse (const char *name, RcOpeningKind *kind, GError **error);
const char *rc_swing_get_name (RcSwing swing); /* "none", "in", "out" */
gboolean    rc_swing_parse (const char *name, RcSwing *swing, GError **error);
