/* All that can be typed about the chosen stair.
 */
#pragma once

#include "panel.h"

#define RC_TYPE_STAIR_PANEL (rc_stair_panel_get_type ())
G_DECLARE_FINAL_TYPE (RcStairPanel, rc_stair_panel, RC, STAIR_PANEL, RcPanel)

void rc_stair_panel_focus_name (RcStairPanel *self);
