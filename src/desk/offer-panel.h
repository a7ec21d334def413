/* What the office settles for the whole quotation of the open job: detail, discount, tax area, validity, steps of
 * payment, terms.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define RC_TYPE_OFFER_PANEL (rc_offer_panel_get_type ())
G_DECLARE_FINAL_TYPE (RcOfferPanel, rc_offer_panel, RC, OFFER_PANEL, GtkBox)

GtkWidget *rc_offer_panel_new (RcDocument *document);
