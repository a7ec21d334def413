/* A hand for tests of gestures: events in, the job as it becomes out. */
#pragma once

#include "gesture.h"

/* A hand over a job: each event is handled, and what comes of it becomes the job. */
typedef struct
{
  RcJob      *job;
  RcGesture   gesture;
  char       *step;
  char       *fault;
  const char *room;
} Hand;

void hand_set_up (Hand *hand, gconstpointer data);
void hand_tear_down (Hand *hand, gconstpointer data);

/* A tool by its name; `room` (nullable) is the chosen one. */
void       hand_take (Hand *hand, const char *tool, const char *room);
RcMeasure *hand_get_measure (Hand *hand);
RcRoom    *hand_get_room (Hand *hand, const char *id);

void hand_send (Hand *hand, RcGestureEvent event);
void hand_press (Hand *hand, RcLength x, RcLength y);
void hand_move (Hand *hand, RcLength x, RcLength y);
void hand_release (Hand *hand, RcLength x, RcLength y);
void hand_drag (Hand *hand, RcLength x0, RcLength y0, RcLength x1, RcLength y1);
void hand_click (Hand *hand, RcLength x, RcLength y);
void hand_key (Hand *hand, RcEventKind kind);
void hand_arrow (Hand *hand, int direction);
void hand_type (Hand *hand, const char *text);

/* The room's corners in the house, as "x,y x,y" in inches. */
char *hand_dup_corners (Hand *hand, const char *id);
void  hand_assert_corners (Hand *hand, const char *id, const char *expected);
/* The house can be built: rooms apart, doors meeting. */
void hand_assert_sound (Hand *hand);
