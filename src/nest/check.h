/* Within the check of an answer, which shares nothing with the solver but the public header. */
#pragma once

#include "nest.h"

/* How the cuts lie: each roll's pieces are apart, its strokes go through none of them, cut each one free and can be
 * made in the stages allowed; its leftovers are on it, of use, sound and apart from all else. The placements' rolls and
 * cuts must have been checked. Near n log n for n cuts. */
gboolean rc_nest_check_lay (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error);

/* Sets an error and returns FALSE. */
gboolean rc_nest_check_fail (GError **error, const char *format, ...) G_GNUC_PRINTF (2, 3);

const char *rc_nest_check_get_label (const RcNestProblem *problem, guint cut);

/* NULL: the problem lists no rolls. */
const RcNestRoll *rc_nest_check_get_roll (const RcNestProblem *problem, const RcNestUse *use);

/* The usable width of a roll, and what is trimmed off its end. */
RcLength rc_nest_check_get_width (const RcNestProblem *problem, const RcNestUse *use);
RcLength rc_nest_check_get_trim_end (const RcNestProblem *problem, const RcNestUse *use);
