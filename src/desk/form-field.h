/* What forms are made of: a widget to write in with its name above. */
#pragma once

#include <gtk/gtk.h>

/* The name and the widget in a box; *name (nullable) is the label above. */
GtkWidget *rc_form_field_new (const char *name, GtkWidget *widget, GtkLabel **label);
/* Names a field anew, for the eye and for assistive tools. */
void rc_form_field_set_name (GtkLabel *label, GtkWidget *widget, const char *name);
/* An entry as forms have them; placeholder nullable. */
GtkWidget *rc_form_entry_new (const char *placeholder, int width_chars);
