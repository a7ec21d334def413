/* All that can be typed about the chosen room.
 */
#pragma once

#include "wall-table.h"

#define RC_TYPE_ROOM_PANEL (rc_room_panel_get_type ())
G_DECLARE_FINAL_TYPE (RcRoomPanel, rc_room_panel, RC, ROOM_PANEL, RcPanel)

RcWallTable *rc_room_panel_get_wall_table (RcRoomPanel *self);
void         rc_room_panel_focus_name (RcRoomPanel *self);
