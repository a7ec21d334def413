/* All that can be said about the chosen area: its goods, its rooms, what is pinned, and what its plan comes to.
 */
#pragma once

#include "panel.h"

#define RC_TYPE_AREA_PANEL (rc_area_panel_get_type ())
G_DECLARE_FINAL_TYPE (RcAreaPanel, rc_area_panel, RC, AREA_PANEL, RcPanel)

void rc_area_panel_focus_name (RcAreaPanel *self);
