/* Real rooms, drawn by architects and surveyors, read from $RC_SHARED/floors/rooms.jsonl: one a line.
 */
#pragma once

#include "house.h"

/* The file's text; NULL, and the test skipped, where it is not there. (transfer full) */
char *rc_outlines_load (void);

/* A room by its outline and cut-outs, not placed. (transfer full) */
RcRoom *rc_outlines_read_room (const char *line);

/* Where the value of a key begins. */
const char *rc_outlines_find_value (const char *line, const char *key);

/* The points, in mm, of the ring that begins at *text, which goes to behind its closing bracket. (transfer full) */
RcRing *rc_outlines_read_ring (const char **text);
