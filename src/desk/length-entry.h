/* An entry for a length, typed as people write it.
 *
 * Signal "edited" (no arguments) after each key by which the text reads as another length than before. Text that does
 * not read as a length stays as typed, is marked, and its fault can be asked for.
 */
#pragma once

#include <gtk/gtk.h>

#include "length.h"

#define RC_TYPE_LENGTH_ENTRY (rc_length_entry_get_type ())
G_DECLARE_FINAL_TYPE (RcLengthEntry, rc_length_entry, RC, LENGTH_ENTRY, GtkEntry)

GtkWidget *rc_length_entry_new (void);

/* Marks any entry as wrong and says why, to the eye and to assistive tools; fault NULL: nothing is wrong. */
void rc_entry_show_fault (GtkWidget *entry, const char *fault);

/* The unit of a bare number, and how a length is shown; the style must outlive the entry (it is one of the constants).
 */
void rc_length_entry_set_units (RcLengthEntry *self, RcLengthUnit bare_unit, const RcLengthStyle *style);
/* Blank text stands for 0 and 0 is shown blank. */
void rc_length_entry_set_optional (RcLengthEntry *self, gboolean optional);

/* What may stand before the length, as a direction does: how many bytes of the text are not of the length. */
typedef gsize (*RcLengthLead) (const char *text, gpointer data);
void rc_length_entry_set_lead (RcLengthEntry *self, RcLengthLead lead, gpointer data);

/* Shows `value`, unless what is typed in the entry says the same already. Emits nothing. */
void rc_length_entry_set_value (RcLengthEntry *self, RcLength value);
/* Blank and without a value. */
void     rc_length_entry_clear (RcLengthEntry *self);
RcLength rc_length_entry_get_value (RcLengthEntry *self); /* the last text that read as a length */
/* What is wrong with the text as it stands; NULL: nothing. */
const char *rc_length_entry_get_fault (RcLengthEntry *self);
