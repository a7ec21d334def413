/* Edits of what stands on a room's floor, in place on a copy that the caller owns: where it stands and how large it is,
 * as a tape says it from a corner.
 */
#pragma once

#include "job.h"

/* Seen from a corner: along the wall that begins there, and off that wall into the room, to the nearest edge. Of
 * something askew to the wall or with many corners: of the box round it. Round: both sizes are the diameter. */
typedef struct
{
  RcLength along, off;
  RcLength width, length; /* along the wall, off it */
} RcCutoutPlace;

/* FALSE when the room has no such corner, its wall no length, or the thing no points. */
gboolean rc_cutout_edit_get_place (const RcRoom *room, const RcCutout *cutout, guint corner, RcCutoutPlace *place);
/* Moves and stretches it so that the place is this one; a round one takes its width for the diameter. FALSE as above,
 * or where a size is not above 0: nothing has changed. */
gboolean rc_cutout_edit_set_place (const RcRoom *room, RcCutout *cutout, guint corner, const RcCutoutPlace *place);

/* The corner nearest to it. */
guint rc_cutout_edit_find_corner (const RcRoom *room, const RcCutout *cutout);

/* Round, as wide as it is along the wall of `corner`; or the square round the circle. */
gboolean rc_cutout_edit_set_round (const RcRoom *room, RcCutout *cutout, guint corner, gboolean is_round);

/* One of a usual size (common practice, no source): a hearth or a fixture against the middle of the wall, anything else
 * a step off it, a column round. NULL when there is no such wall. (transfer none) */
RcCutout *rc_cutout_edit_add (RcRoom *room, RcCutoutKind kind, guint wall, RcUnitSystem units);
