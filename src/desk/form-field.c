#include "form-field.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"
#include "typing.h"

#define MOST_DAYS 3660

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

/* --- what is written --- */

/* `text` (transfer full). */
static char *
strip (char *text)
{
  if (*g_strstrip (text) == '\0')
    g_clear_pointer (&text, g_free);
  return text;
}

char *
rc_form_dup_text (GtkEditable *entry)
{
  return strip (g_strdup (gtk_editable_get_text (entry)));
}

char *
rc_form_dup_lines (GtkTextBuffer *buffer)
{
  GtkTextIter from, to;

  gtk_text_buffer_get_bounds (buffer, &from, &to);
  return strip (gtk_text_buffer_get_text (buffer, &from, &to, FALSE));
}

gboolean
rc_form_read_days (const char *text, int *days, GError **error)
{
  guint64 number = 0;

  if (text != NULL && !g_ascii_string_to_unsigned (text, 10, 0, MOST_DAYS, &number, NULL))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is no number of days; it should be a whole number, as 30"),
                   text);
      return FALSE;
    }
  *days = (int)number;
  return TRUE;
}

/* --- ways out --- */

static void
leave (GtkWidget *form)
{
  g_signal_emit_by_name (form, "left");
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, gpointer data)
{
  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  leave (gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller)));
  return GDK_EVENT_STOP;
}

void
rc_form_keep (GtkWidget *form)
{
  g_signal_emit_by_name (form, "keep");
}

static void
add_signal (GtkWidgetClass *klass, const char *name)
{
  g_signal_new (name, G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

void
rc_form_class_add_leave (GtkWidgetClass *klass)
{
  add_signal (klass, "left");
  gtk_widget_class_bind_template_callback (klass, on_key);
  gtk_widget_class_bind_template_callback (klass, leave);
}

void
rc_form_class_add_keep (GtkWidgetClass *klass)
{
  add_signal (klass, "keep");
  gtk_widget_class_bind_template_callback_full (klass, "keep", G_CALLBACK (rc_form_keep));
}
