/* One opening of the chosen room, with all that can be typed about it.
 */
#pragma once

#include "panel.h"

#define RC_TYPE_OPENING_CARD (rc_opening_card_get_type ())
G_DECLARE_FINAL_TYPE (RcOpeningCard, rc_opening_card, RC, OPENING_CARD, RcPanel)

/* For the opening `id` of `room`. */
GtkWidget  *rc_opening_card_new (const char *room, const char *id);
const char *rc_opening_card_get_id (RcOpeningCard *self);
/* Where one begins to type a new opening: its kind and wall are known. */
void rc_opening_card_focus_offset (RcOpeningCard *self);
