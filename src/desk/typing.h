/* What every field that is typed into does alike. */
#pragma once

#include <gtk/gtk.h>

/* Call once for a new field. Undo is the job's, never the field's own. And what the keyboard comes to stays selected
 * until it is typed over: the toolkit drops a selection when word of another, already gone, comes late from the
 * display, and a hand that types fast would then add its figures to those that were there.
 */
void rc_typing_prepare (GtkEditable *field);
