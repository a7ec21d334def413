/* What a gesture on the floor can see: the rooms of one storey where they lie in the house.
 *
 * Made anew from the job for each gesture; owns a copy of nothing: the job must outlive it.
 */
#pragma once

#include "house.h"

typedef struct
{
  const RcRoom *room;
  RcPoint       at;      /* where its own origin lies in the house */
  RcRing       *corners; /* in the house, one for each wall in the order walked: wall i runs from corner i */
  gboolean      is_left; /* walked counter-clockwise: the floor lies to the left of its walls */
} RcSceneRoom;

typedef struct
{
  const RcJob     *job;
  const RcMeasure *measure;
  int              floor;
  GPtrArray       *rooms; /* of RcSceneRoom */
  GPtrArray       *below; /* those of the storey below: walls stand over walls */
  RcLength         step;  /* lengths drawn by hand are whole steps: 1 in or 10 mm */
  RcLength         wall;  /* usual thickness of a wall between rooms */
} RcScene;

/* `house` (nullable): the last that could be built of this measure, perhaps of an earlier state; it says where rooms
 * lie that are not placed themselves. Rooms of other storeys, without corners or of unknown place are left out.
 * (transfer full) */
RcScene *rc_scene_new (const RcJob *job, const RcMeasure *measure, const RcHouse *house, int floor);
/* Every room where its `at` says, placed or not. (transfer full) */
RcScene *rc_scene_new_noted (const RcJob *job, const RcMeasure *measure, int floor);
void     rc_scene_free (RcScene *scene);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcScene, rc_scene_free)

/* NULL when the storey has no such room. */
const RcSceneRoom *rc_scene_find_room (const RcScene *scene, const char *id);
/* The room whose floor holds the point; the last where they lie over each other; NULL for none. */
const RcSceneRoom *rc_scene_find_room_at (const RcScene *scene, RcPoint point);

/* Ends of wall `wall` in the house. */
void rc_scene_get_wall (const RcSceneRoom *room, guint wall, RcPoint *from, RcPoint *to);

/* The wall (of the room `only`, nullable: of any) nearest to the point and no farther than `reach`; FALSE for none.
 * *along is the distance from its start to the foot of the point. */
typedef struct
{
  const RcSceneRoom *room;
  guint              wall;
  RcLength           along, length;
  double             distance; /* ticks */
} RcSceneWall;

gboolean rc_scene_find_wall (const RcScene *scene, const char *only, RcPoint point, RcLength reach, RcSceneWall *found);

/* The corner likewise. */
gboolean rc_scene_find_corner (const RcScene *scene, const char *only, RcPoint point, RcLength reach,
                               const RcSceneRoom **room, guint *corner);

/* A wall of another room that runs right behind this one, the other way, no farther than `thick_max` away. */
typedef struct
{
  const RcSceneRoom *room;
  guint              wall;
  RcLength           gap;      /* between the two faces */
  RcLength           from, to; /* what the two share, along this wall from its start; from < to */
} RcSceneBehind;

/* All of them (transfer full; of RcSceneBehind). */
GArray *rc_scene_find_behind (const RcScene *scene, const RcSceneRoom *room, guint wall, RcLength thick_max);
