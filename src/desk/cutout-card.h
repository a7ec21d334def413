/* The card of something that stands on a room's floor: what it is, where it stands from a corner, how large it is. */
#pragma once

#include "panel.h"

#define RC_TYPE_CUTOUT_CARD (rc_cutout_card_get_type ())
G_DECLARE_FINAL_TYPE (RcCutoutCard, rc_cutout_card, RC, CUTOUT_CARD, RcPanel)

/* `index` among the room's cut-outs. */
GtkWidget *rc_cutout_card_new (const char *room, guint index);
void       rc_cutout_card_focus_place (RcCutoutCard *self);
