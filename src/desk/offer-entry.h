/* An entry for one field of the open job's offer: what is typed is read at once, letters typed into it are one step.
 * Text that does not read stays as typed, is marked, and changes nothing.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"
#include "offer-edit.h"

#define RC_TYPE_OFFER_ENTRY (rc_offer_entry_get_type ())
G_DECLARE_FINAL_TYPE (RcOfferEntry, rc_offer_entry, RC, OFFER_ENTRY, GtkEntry)

/* `label` is said of it; `step` names its edits for undo. It follows the document until it is destroyed. */
GtkWidget *rc_offer_entry_new (RcDocument *document, const RcOfferSpot *spot, const char *label, const char *step);
/* Another spot: the entry of a list is used again. */
void rc_offer_entry_set_spot (RcOfferEntry *self, const RcOfferSpot *spot);

/* Takes an edited copy of the job (transfer full); a store that refuses is told by the action "win.tell" of `widget`'s
 * window. */
void rc_offer_commit (GtkWidget *widget, RcDocument *document, RcJob *job, const char *step, const char *key);
