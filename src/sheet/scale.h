/* The scales that drawings are made to: the steps people have rulers for.
 */
#pragma once

#include "job.h"

/* Points on paper for one tick of the house at 1 : ratio; exact to double's last digit: 12 ft at 1 : 48 are 216 pt. */
double rc_scale_to_points_per_tick (guint ratio);

/* The largest scale (smallest ratio) of the system's steps at which width x height fit into the points given; beyond
 * the last step, whole multiples of it. Sizes of 0 give the largest step. */
guint rc_scale_choose (RcUnitSystem units, RcLength width, RcLength height, double width_pt, double height_pt);

/* "1/4\" = 1' (1:48)", "1:50". (transfer full) */
char *rc_scale_format (RcUnitSystem units, guint ratio);

/* A round length to divide a scale bar or a ruler by: the smallest of 1, 2, 5, 10 ... feet or
 * 0.1, 0.2, 0.5, 1 ... metres that is at least `least` long. */
RcLength rc_scale_choose_step (RcUnitSystem units, RcLength least);
