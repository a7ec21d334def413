/* Keeping rooms where they lie while their shapes change.
 *
 * Rooms that doors place move when a door moves. A gesture moves what the hand holds and nothing else: before it, every
 * room's place is noted in its `at`; after it, only rooms that doors no longer put there become placed ones.
 */
#pragma once

#include "gesture-scene.h"

/* Notes the scene's places in `at` of the measure's rooms (a copy of the scene's measure). */
void rc_places_note (const RcScene *scene, RcMeasure *measure);

/* The scene as the measure is now, all its rooms where `at` says. (transfer full) */
RcScene *rc_places_new_scene (const RcScene *scene, RcJob *job);

/* Makes placed what must be; rooms still placed by a door get the `at` they had. Doors of rooms in `loosened` (of
 * interned char*, nullable) that no longer meet the ones they name lead nowhere. */
void rc_places_keep (const RcScene *scene, RcJob *job, const GPtrArray *loosened);

/* Lets a door place the room again instead of a place of its own, if that puts no room elsewhere. */
void rc_places_relax (const RcScene *scene, RcJob *job, const char *room);
