/* What forms are made of: widgets to write in with their names above, what is read of them, and the ways out. */
#pragma once

#include <gtk/gtk.h>

/* The name and the widget in a box; *name (nullable) is the label above. */
GtkWidget *rc_form_field_new (const char *name, GtkWidget *widget, GtkLabel **label);
/* Names a field anew, for the eye and for assistive tools. */
void rc_form_field_set_name (GtkLabel *label, GtkWidget *widget, const char *name);
/* An entry as forms have them; placeholder nullable. */
GtkWidget *rc_form_entry_new (const char *placeholder, int width_chars);

/* What is written, without blanks around it; NULL: nothing. (transfer full) */
char *rc_form_dup_text (GtkEditable *entry);
char *rc_form_dup_lines (GtkTextBuffer *buffer);
/* A whole number of days; NULL is 0. RC_ERROR_PARSE. */
gboolean rc_form_read_days (const char *text, int *days, GError **error);

/* For the class of a form, once it has its template: the signal "left", when nothing is to be kept, by Escape and by
 * the template's callback "leave"; it binds "on_key" too. */
void rc_form_class_add_leave (GtkWidgetClass *klass);
/* The signal "keep", when it is to be kept as it is written, by the template's callback "keep". */
void rc_form_class_add_keep (GtkWidgetClass *klass);
/* Emits it. */
void rc_form_keep (GtkWidget *form);
