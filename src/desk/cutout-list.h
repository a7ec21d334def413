/* What stands on the floor of the chosen room: a card for each, and the buttons that put more there. */
#pragma once

#include "panel.h"

#define RC_TYPE_CUTOUT_LIST (rc_cutout_list_get_type ())
G_DECLARE_FINAL_TYPE (RcCutoutList, rc_cutout_list, RC, CUTOUT_LIST, RcPanel)

/* One of a usual size at `wall`, its place ready to be typed. */
void rc_cutout_list_add (RcCutoutList *self, RcCutoutKind kind, guint wall);
