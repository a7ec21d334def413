/* What is chosen on the bench: one thing of the job, and perhaps one piece of carpet. The floor, the rolls and the
 * lists all show the same choice. A plain value; functions give the new choice.
 */
#pragma once

#include "plan.h"

typedef enum
{
  RC_THING_JOB,
  RC_THING_AREA,
  RC_THING_ROOM,
  RC_THING_STAIR,
} RcThing;

typedef struct
{
  RcThing     thing;
  const char *id;    /* interned; NULL for the job */
  guint       piece; /* number in the plan; 0: none */
  guint       wall;  /* of the room, from 1: the one being typed; 0: none */
} RcChoice;

RcChoice rc_choice_of_thing (RcThing thing, const char *id);

/* The piece with its room or stair; the choice of the job when the plan has no such piece. plan nullable. */
RcChoice rc_choice_of_piece (const RcPlan *plan, guint number);

/* The next (step 1) or previous (step -1) piece of the plan, round the end. */
RcChoice rc_choice_step_piece (RcChoice choice, const RcPlan *plan, int step);

/* What of the choice is still there in this measure and plan (nullable): a thing that is gone gives the job, a piece
 * that is gone gives none. */
RcChoice rc_choice_mend (RcChoice choice, const RcMeasure *measure, const RcPlan *plan);

gboolean rc_choice_equal (RcChoice a, RcChoice b);

/* The area the choice lies in: itself, its room's, or the measure's first. NULL when there is none. */
const RcFloorArea *rc_choice_find_area (RcChoice choice, const RcMeasure *measure);

/* The area that holds the room; NULL for none. */
const RcFloorArea *rc_choice_find_area_of_room (const RcMeasure *measure, const char *room);
