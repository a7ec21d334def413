/* Check measurements of the chosen room: which corners, how far apart, what the walls make of it, and which wall is
 * suspected when the two disagree. */
#pragma once

#include "panel.h"

#define RC_TYPE_DIAGONAL_LIST (rc_diagonal_list_get_type ())
G_DECLARE_FINAL_TYPE (RcDiagonalList, rc_diagonal_list, RC, DIAGONAL_LIST, RcPanel)

/* One more, between corners that have none yet, its length ready to be typed. */
void rc_diagonal_list_add (RcDiagonalList *self);
