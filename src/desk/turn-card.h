/* The card of one turn of the chosen stair: a landing or winders. */
#pragma once

#include "panel.h"

#define RC_TYPE_TURN_CARD (rc_turn_card_get_type ())
G_DECLARE_FINAL_TYPE (RcTurnCard, rc_turn_card, RC, TURN_CARD, RcPanel)

/* `index` among the stair's turns, from 0 at the bottom. */
GtkWidget *rc_turn_card_new (guint index);
void       rc_turn_card_focus_kind (RcTurnCard *self);
