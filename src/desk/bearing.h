/* The direction a wall is walked in, as people write it.
 *
 * Degrees run clockwise from north: N 0, E 90, S 180, W 270.
 */
#pragma once

#include <glib.h>

/* Reads a compass letter or pair (N, NE, E, ...), degrees ("37.5", "37.5°", also with a decimal comma), a surveyor's
 * quadrant ("N 30 E"), or a turn from the wall before it: R or L is a right angle, "R45" and "L 22.5" a part of one.
 * The letter for west may be W or O. `before_degrees` is the bearing of the wall before, for turns.
 * The result lies in [0, 360). Errors: RC_ERROR_PARSE with the text and what would be right; then *degrees is
 * untouched. */
gboolean rc_bearing_parse (const char *text, double before_degrees, double *degrees, GError **error);

/* "N", "NE", "37.5°": the letter where one of the eight fits, else degrees with at most three decimals.
 * (transfer full) */
char *rc_bearing_format (double degrees);
