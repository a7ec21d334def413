/* The table in which the walls of the chosen room are typed: direction and length, wall by wall.
 *
 * A blank row at the end takes the next wall. Return goes on to the next length, Up and Down to the row above and
 * below. A length may have its direction before it: "ne 3'". Under the table stands what is wrong, and buttons that
 * would close the room.
 */
#pragma once

#include "panel.h"

#define RC_TYPE_WALL_TABLE (rc_wall_table_get_type ())
G_DECLARE_FINAL_TYPE (RcWallTable, rc_wall_table, RC, WALL_TABLE, RcPanel)

/* Puts the focus in the length of a wall (from 0; the number of walls: the blank row). */
void rc_wall_table_focus_wall (RcWallTable *self, guint wall);

/* The wall last typed in, 0 at first: where a new opening goes. */
guint rc_wall_table_get_focused_wall (RcWallTable *self);
