/* Two measures of a house, side by side or one over the other: what was there before is dashed, what is there now
 * solid, and floor that only one of them has is tinted. Storeys stand beside one another. */
#pragma once

#include <gtk/gtk.h>

#include "outcome.h"

#define RC_TYPE_FLOOR_PAIR (rc_floor_pair_get_type ())
G_DECLARE_FINAL_TYPE (RcFloorPair, rc_floor_pair, RC, FLOOR_PAIR, GtkWidget)

GtkWidget *rc_floor_pair_new (void);

/* Both nullable: nothing is drawn then. */
void rc_floor_pair_show (RcFloorPair *self, RcOutcome *before, RcOutcome *after);
void rc_floor_pair_set_overlaid (RcFloorPair *self, gboolean is_overlaid);
