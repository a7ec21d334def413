/* Why cuts cannot be placed, in words that name cut, group and sizes. */
#pragma once

#include "layout.h"

/* Sizes that are no sizes, cuts wider than every roll or longer than every roll that takes them. NULL when there is no
 * such fault. (transfer full) */
char *rc_nest_reason_find (const RcNestTask *task);

/* Pins off the rolls, over damage, against a pattern, a match, a dye lot or each other; a match of two repeats. NULL
 * when there is no such fault. (transfer full) */
char *rc_nest_reason_for_ties (const RcNestTask *task);

/* For messages: metric and imperial. (transfer full) */
char       *rc_nest_reason_format_length (RcLength length);
const char *rc_nest_reason_get_label (const RcNestTask *task, const RcNestItem *item);

/* How much length is surely missing on the rolls of a lot for a group; 0 or less: none by these bounds. */
RcLength rc_nest_reason_find_shortage (const RcNestTask *task, int lot, guint group);

/* Why no lot can hold the group. (transfer full) */
char *rc_nest_reason_for_group (const RcNestTask *task, guint group);

/* Why some items of spots are not placed; `proved`: no cutting places them. (transfer full) */
char *rc_nest_reason_for_left_over (const RcNestTask *task, const RcNestSpot *spots, gboolean proved);
