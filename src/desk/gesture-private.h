/* What the tools share. Each tool handles its own events and sketches itself; gesture.c picks the tool. */
#pragma once

#include "gesture.h"

typedef void (*RcToolHandle) (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                              RcGestureResult *result);
typedef void (*RcToolSketch) (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);

void rc_gesture_draw_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                             RcGestureResult *result);
void rc_gesture_draw_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);

void rc_gesture_move_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                             RcGestureResult *result);
void rc_gesture_move_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);

void rc_gesture_opening_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                                RcGestureResult *result);
void rc_gesture_opening_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);
void rc_gesture_cutout_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                               RcGestureResult *result);
void rc_gesture_cutout_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);
void rc_gesture_split_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                              RcGestureResult *result);
void rc_gesture_split_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);
void rc_gesture_merge_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                              RcGestureResult *result);
void rc_gesture_merge_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);
void rc_gesture_join_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                             RcGestureResult *result);
void rc_gesture_join_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);

void rc_gesture_stair_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                              RcGestureResult *result);
void rc_gesture_stair_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);
/* The choosing tool takes hold of the chosen stair there. */
gboolean rc_gesture_grips_stair (const RcGesture *gesture, const RcScene *scene, RcPoint at);

/* TRUE: the event was for what is held at rest (keys that step through the grips, arrow keys that move it). */
gboolean rc_gesture_held_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                                 RcGestureResult *result);
gboolean rc_gesture_held_wants_key (const RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event);
/* Ends a move of what is gripped: the job, the step's name, or why not. */
void rc_gesture_finish_move (RcGesture *gesture, const RcScene *scene, RcGestureResult *result);

void     rc_gesture_turn_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                                 RcGestureResult *result);
void     rc_gesture_turn_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);
gboolean rc_gesture_grips_turn (const RcGesture *gesture, const RcScene *scene, RcPoint at, RcLength reach);

void rc_gesture_closet_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                               RcGestureResult *result);
void rc_gesture_closet_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);

void rc_gesture_pile_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                             RcGestureResult *result);
void rc_gesture_pile_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);

void rc_gesture_scale_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                              RcGestureResult *result);
void rc_gesture_slide_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                              RcGestureResult *result);
void rc_gesture_picture_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);
void rc_gesture_swivel_handle (RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event,
                               RcGestureResult *result);
void rc_gesture_swivel_sketch (const RcGesture *gesture, const RcScene *scene, RcSketch *sketch);

/* Back to rest with the same tool. */
void rc_gesture_rest (RcGesture *gesture);

/* The corner opposite the first of a rectangle: the pointer's, typed width (0) and length (1) applied. */
RcPoint rc_gesture_get_far_corner (const RcGesture *gesture, const RcScene *scene);
void    rc_sketch_add_rectangle (RcSketch *sketch, const RcGesture *gesture, const RcScene *scene);

/* From where a drag began to where the pointer is. */
RcPoint rc_gesture_get_delta (const RcGesture *gesture);
/* The job as it would be were what is gripped let go here, places noted; NULL: it cannot be so. (transfer full) */
RcJob *rc_gesture_compute_moved (const RcGesture *gesture, const RcScene *scene);

/* A span that begins at the first point and is drawn by a drag or by two clicks, or typed in `n_fields` lengths: what
 * its gestures share once it has begun, with the pointer noted. TRUE: it is complete. */
gboolean rc_gesture_take_span (RcGesture *gesture, const RcGestureEvent *event, guint n_fields);

/* Typed lengths. */
gboolean rc_gesture_take_key (RcGesture *gesture, const RcGestureEvent *event, guint n_fields); /* TRUE: taken */
gboolean rc_gesture_is_typed (const RcGesture *gesture, guint field);
gboolean rc_gesture_has_text (const RcGesture *gesture); /* in any field */
/* What is typed as degrees, 360 at most; FALSE when it does not read so. */
gboolean rc_gesture_parse_degrees (const RcGesture *gesture, double *degrees);
/* What the sketch says of a turn: as typed, else the degrees. (transfer full) */
char *rc_gesture_dup_degrees (const RcGesture *gesture, double degrees);
/* FALSE when nothing, or nothing that reads as a length above 0, is typed. */
gboolean rc_gesture_get_typed (const RcGesture *gesture, const RcScene *scene, guint field, RcLength *length);
/* TRUE where something typed does not read. Then *fault (transfer full) says why. */
gboolean rc_gesture_has_bad_text (const RcGesture *gesture, const RcScene *scene, char **fault);

/* A copy of the scene's job, and in it the measure looked at. (transfer full) */
RcJob     *rc_gesture_dup_job (const RcScene *scene);
RcMeasure *rc_gesture_get_measure (const RcScene *scene, RcJob *job);

/* Sketching. */
RcRing *rc_sketch_add_ring (RcSketch *sketch); /* (transfer none) */
void    rc_sketch_add_line (GArray *lines, RcPoint from, RcPoint to);
void    rc_sketch_add_guides (RcSketch *sketch, const RcGesture *gesture);
void rc_sketch_add_length (RcSketch *sketch, const RcGesture *gesture, const RcScene *scene, RcPoint from, RcPoint to,
                           RcLength value, int field);
