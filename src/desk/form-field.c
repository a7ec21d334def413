#include "form-field.h"

#include "typing.h"

void
rc_form_field_set_name (GtkLabel *label, GtkWidget *widget, const char *name)
{
  gtk_label_set_text (label, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

GtkWidget *
rc_form_field_new (const char *name, GtkWidget *widget, GtkLabel **label)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2), *shown = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (shown), 0);
  gtk_widget_add_css_class (shown, "field-label");
  gtk_box_append (GTK_BOX (box), shown);
  gtk_box_append (GTK_BOX (box), widget);
  rc_form_field_set_name (GTK_LABEL (shown), widget, name);
  if (label != NULL)
    *label = GTK_LABEL (shown);
  return box;
}

GtkWidget *
rc_form_entry_new (const char *placeholder, int width_chars)
{
  GtkWidget *entry = gtk_entry_new ();

  rc_typing_prepare (GTK_EDITABLE (entry));
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width_chars);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), placeholder);
  return entry;
}
