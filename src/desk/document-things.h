/* Adding things to the open job and taking them away, each one step that can be undone, the new thing chosen.
 */
#pragma once

#include "document.h"
#include "gesture-scene.h"

/* A rectangle of a usual size, in the area of what is chosen (else in the first), on the storey `floor`. */
gboolean rc_document_add_room (RcDocument *self, int floor, GError **error);
/* The same with the walls of `like`. */
gboolean rc_document_add_room_like (RcDocument *self, int floor, const RcRoom *like, GError **error);
gboolean rc_document_add_stair (RcDocument *self, GError **error);
gboolean rc_document_add_area (RcDocument *self, GError **error);
gboolean rc_document_duplicate_chosen (RcDocument *self, GError **error); /* a room */
/* FALSE without error when the job itself is chosen. */
gboolean rc_document_remove_chosen (RcDocument *self, GError **error);

/* Pins the chosen piece as it lies, or unpins it, and says so in `told` (transfer full): also why nothing was done,
 * with FALSE. */
gboolean rc_document_pin_chosen_piece (RcDocument *self, gboolean pinned, char **told, GError **error);

/* The storey as it lies now; where that cannot be told, as it lay in the last plan. (transfer full) */
RcScene *rc_document_new_scene (RcDocument *self, int floor);

/* A new state of the job in which the opening leads to another room, by `to_opening` there (either NULL: to none
 * measured). Where it is known, the room that no other door holds comes along to meet it. NULL: nothing changes.
 * (transfer full) */
RcJob *rc_document_lead_opening (RcDocument *self, const char *room, const char *opening, const char *to_room,
                                 const char *to_opening);

/* After an edit of an opening in `job`, a copy of the document's: its other side stays alike, and a room of its own
 * place that no other door holds comes along to meet it, where the house can be built so. (transfer full) both */
RcJob *rc_document_meet_opening (RcDocument *self, RcJob *job, const char *room, const char *opening);

/* A copy of the measure looked at, dated today, to be looked at from now on. */
gboolean rc_document_add_measure (RcDocument *self, GError **error);

/* The job comes to the state today, if it is not so far yet: what is done with it in the office makes it so. TRUE also
 * when there was nothing to change. */
gboolean rc_document_reach (RcDocument *self, RcJobState state, GError **error);
/* Puts the job into the state, forward or back, on the day it has for it, else today. */
gboolean rc_document_set_state (RcDocument *self, RcJobState state, GError **error);
/* What is cut for the job, or on its way, and no longer fits as it is measured now, a line each; NULL: all fits, or it
 * has been decided how to go on. (transfer full) */
char *rc_document_dup_shortfalls (RcDocument *self);
/* What the plan takes otherwise than the quotation that was accepted, when it is the last that will be found; NULL: it
 * is the same, or nothing is accepted, or the job is measured again. (transfer full) */
char *rc_document_dup_departure (RcDocument *self);
