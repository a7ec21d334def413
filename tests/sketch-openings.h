/* Doors, archways and windows of the sketch, put into the walls of the rooms that are drawn. */
#pragma once

#include "pointer-sketch.h"

/* Those of a room, as soon as both their rooms stand. */
void sketch_put_openings (Sketcher *user, const RcRoom *room);
/* The other sides of openings, where what came of itself is not as measured. */
void sketch_mend_openings (Sketcher *user);
