/* A gesture on the floor: what the pointer and the keys do to the rooms, each step a pure function.
 *
 * A gesture is a plain value. rc_gesture_handle takes one, what the floor looks like, and an event, and gives the next;
 * where something has been made, also a new state of the job and the name of the step. No screen, no store: the widget
 * forwards events, shows rc_gesture_sketch and commits what comes out. All places are in the house.
 */
#pragma once

#include "gesture-snap.h"

typedef enum
{
  RC_TOOL_CHOOSE, /* pick; drag corners, walls, openings and cut-outs of the chosen room */
  RC_TOOL_ROOM,   /* a rectangle from corner to corner */
  RC_TOOL_OUTLINE,
  RC_TOOL_DOOR,
  RC_TOOL_ARCHWAY,
  RC_TOOL_WINDOW,
  RC_TOOL_CUTOUT,
  RC_TOOL_CLOSET, /* a room behind a wall, with its opening */
  RC_TOOL_STAIR,  /* on the drawing */
  RC_TOOL_SPLIT,
  RC_TOOL_MERGE,
  RC_TOOL_MOVE, /* a whole room */
  RC_TOOL_JOIN, /* two openings become one, the second one's room comes along */
  RC_TOOL_PILE,
  RC_TOOL_SEAM,
  RC_TOOL_ZONE,   /* floor that no seam may lie on */
  RC_TOOL_SCALE,  /* of the plan picture */
  RC_TOOL_SLIDE,  /* the plan picture */
  RC_TOOL_SWIVEL, /* it, about a point */
  RC_N_TOOLS
} RcTool;

const char *rc_tool_get_name (RcTool tool); /* "choose", "room", ... */
const char *rc_tool_get_hint (RcTool tool); /* translated: what to do with it */
gboolean    rc_tool_parse (const char *name, RcTool *tool);

typedef enum
{
  RC_EVENT_PRESS,
  RC_EVENT_MOTION,
  RC_EVENT_RELEASE,
  RC_EVENT_LETTER, /* of a length typed over what the pointer says */
  RC_EVENT_RUBOUT,
  RC_EVENT_NEXT, /* to the next length */
  RC_EVENT_ENTER,
  RC_EVENT_ESCAPE,
  RC_EVENT_ARROW,  /* a direction: 0 east, 1 north, 2 west, 3 south, 4 to 7 north-east and on round */
  RC_EVENT_REMOVE, /* what can be gripped at the pointer */
} RcEventKind;

typedef struct
{
  RcEventKind kind;
  RcPoint     at;      /* of the pointer: PRESS, MOTION, RELEASE */
  RcLength    reach;   /* how near is near */
  gboolean    is_free; /* nothing snaps */
  gboolean    is_bow;  /* a wall is bent, not moved */
  gunichar    letter;
  int         arrow;
} RcGestureEvent;

#define RC_GESTURE_MAX_POINTS 128
#define RC_GESTURE_FIELDS     3
#define RC_GESTURE_MAX_TEXT   24

typedef enum
{
  RC_GRIP_NONE,
  RC_GRIP_CORNER,
  RC_GRIP_WALL,
  RC_GRIP_OPENING,
  RC_GRIP_CUTOUT,
  RC_GRIP_ROOM,
  RC_GRIP_STAIR,
  RC_GRIP_TURN, /* beside the room: turns it */
} RcGrip;

typedef struct
{
  RcTool      tool;
  gboolean    is_active; /* between the first event that counts and the last: Escape cancels */
  gboolean    is_down;
  gboolean    has_moved; /* the pointer, while down */
  gboolean    is_free;   /* nothing snaps */
  gboolean    is_bow;    /* a wall is bent, not moved */
  guint       n_points;
  RcPoint     points[RC_GESTURE_MAX_POINTS]; /* corners taken; where a drag began */
  RcPoint     pointer;                       /* as taken: snapped, typed lengths not yet applied */
  RcPoint     raw;                           /* as pointed at */
  RcSnap      snap;
  int         arrow; /* direction given by key, -1: the pointer's */
  const char *room;  /* interned; what is worked on */
  const char *stair; /* interned; the chosen one, or the one at hand; nullable */
  const char *area;  /* interned; that new rooms go to; NULL: that of `room` */
  RcGrip      grip;
  RcGrip      held; /* at rest: what the arrow keys move */
  guint       held_index;
  gboolean    is_exact; /* moved by exactly so much: nothing is rounded, right angles stay */
  guint       index;    /* of the corner, wall, opening or cut-out gripped; of the wall an opening stands in */
  guint       leaf;     /* of a door: 0 to 3; quarters that a stair is turned; kind of a cut-out */
  guint       field;    /* the length being typed */
  char        text[RC_GESTURE_FIELDS][RC_GESTURE_MAX_TEXT]; /* blank: the pointer's */
} RcGesture;

/* What is done to the plan picture. */
typedef struct
{
  enum
  {
    RC_PICTURE_KEEP,
    RC_PICTURE_SCALE, /* from-to is really `length` long */
    RC_PICTURE_MOVE,  /* what is at `from` goes to `to` */
    RC_PICTURE_TURN,  /* about `from` */
  } kind;
  RcPoint  from, to;
  RcLength length;
  gint64   millidegrees; /* to the left */
} RcPictureChange;

/* What an event led to beside the next state. */
typedef struct
{
  RcPictureChange picture;
  RcJob          *job;      /* (transfer full) the new state; NULL: nothing made */
  const char     *step;     /* translated name of the step */
  const char     *room;     /* interned; the room to be chosen; NULL: leave the choice */
  guint           wall;     /* of it, from 1; 0 none */
  const char     *stair;    /* interned; the stair to be chosen */
  char           *fault;    /* (transfer full) why nothing could be made */
  gboolean        is_nudge; /* one of several small ones that make one step */
  gboolean        is_click; /* nothing was dragged: pick what lies there */
} RcGestureResult;

void rc_gesture_result_clear (RcGestureResult *result);

/* The tool at rest. `room` (nullable) is the chosen room: it is the one whose corners and walls can be gripped. */
RcGesture rc_gesture_start (RcTool tool, const char *room);

/* Whether a key belongs to the gesture at rest, before anything has begun: else it is a key of the floor. While the
 * gesture is active every key is its own. */
gboolean rc_gesture_wants_key (const RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event);

RcGesture rc_gesture_handle (RcGesture gesture, const RcScene *scene, const RcGestureEvent *event,
                             RcGestureResult *result);

/* What is shown of a gesture under way. */
typedef struct
{
  RcPoint     from, to;
  RcLength    value;
  int         field; /* the one that typing changes; -1: cannot be typed */
  const char *text;  /* as typed, borrowed from the gesture; NULL: shows `value` */
  gboolean    is_active, is_bad;
} RcSketchLength;

typedef struct
{
  GPtrArray *rings;   /* of RcRing: outlines, the last one open when `is_open` */
  GArray    *lines;   /* of RcPoint, in pairs: strong lines (an opening, a cut) */
  GArray    *guides;  /* of RcPoint, in pairs */
  GArray    *lengths; /* of RcSketchLength */
  gboolean   is_open;
  char      *word; /* translated: what is being put, or how far turned; nullable */
  RcPoint    word_at;
} RcSketch;

RcSketch *rc_gesture_sketch (const RcGesture *gesture, const RcScene *scene);
void      rc_sketch_free (RcSketch *sketch);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcSketch, rc_sketch_free)

/* Where the grip that turns a room is, with `reach` as at the pointer. */
RcPoint rc_gesture_get_turn_grip (const RcSceneRoom *room, RcLength reach);

/* What would be gripped at a point with this gesture's tool and room. */
RcGrip rc_gesture_find_grip (const RcGesture *gesture, const RcScene *scene, RcPoint at, RcLength reach, guint *index);
