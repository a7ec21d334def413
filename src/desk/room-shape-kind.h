/* Common shapes of rooms, given by a few sizes.
 *
 * A bay stands in the middle of the front, which is the south wall. Its front may be shorter than its opening: then its
 * sides run at an angle. The corner taken off an L or an angled room is the north-east one.
 */
#pragma once

#include "job.h"

typedef enum
{
  RC_SHAPE_RECTANGLE,
  RC_SHAPE_L,
  RC_SHAPE_BAY,
  RC_SHAPE_L_BAY,
  RC_SHAPE_ANGLED,
  RC_N_SHAPES
} RcShape;

#define RC_SHAPE_MAX_SIZES 7

const char *rc_shape_get_label (RcShape shape); /* translated */
guint       rc_shape_get_n_sizes (RcShape shape);
const char *rc_shape_get_size_label (RcShape shape, guint size); /* translated */

/* Puts walls of these sizes into `room`, clockwise from its south-west corner, in place of those it has; openings and
 * cut-outs go. FALSE with an error that names the size that cannot be. */
gboolean rc_shape_build (RcShape shape, const RcLength *sizes, RcRoom *room, GError **error);
