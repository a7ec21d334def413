/* Another way to do the job: its name, and for each area and stair another carpet or another of the planner's options.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define RC_TYPE_OFFER_SWAPS (rc_offer_swaps_get_type ())
G_DECLARE_FINAL_TYPE (RcOfferSwaps, rc_offer_swaps, RC, OFFER_SWAPS, GtkBox)

/* Of the job's alternative `id`. */
GtkWidget *rc_offer_swaps_new (RcDocument *document, const char *id);

/* As choosing in the drop-downs does; NULL: as it is. */
void rc_offer_swaps_set (RcOfferSwaps *self, const char *place, const char *carpet, const char *option);
