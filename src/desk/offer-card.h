/* One way to do the job, as a card beside the others: its picture, what it comes to, what sets it apart.
 */
#pragma once

#include <gtk/gtk.h>

#include "offer-plans.h"

#define RC_TYPE_OFFER_CARD (rc_offer_card_get_type ())
G_DECLARE_FINAL_TYPE (RcOfferCard, rc_offer_card, RC, OFFER_CARD, GtkButton)

GtkWidget *rc_offer_card_new (void);

/* `first` is the job as it stands. */
void rc_offer_card_show (RcOfferCard *self, const RcOfferPlan *plan, const RcOfferPlan *first, gboolean is_chosen);

const char *rc_offer_card_get_id (RcOfferCard *self); /* of the alternative; NULL: the job as it stands */
