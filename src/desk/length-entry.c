#include "length-entry.h"

#include "typing.h"

struct _RcLengthEntry
{
  GtkEntry             parent_instance;
  RcLengthUnit         bare_unit;
  const RcLengthStyle *style;
  gboolean             optional;
  gboolean             is_setting;
  RcLength             value; /* -1: none */
  char                *fault;
  RcLengthLead         lead; /* nullable */
  gpointer             lead_data;
};

G_DEFINE_FINAL_TYPE (RcLengthEntry, rc_length_entry, GTK_TYPE_ENTRY)

static guint edited_signal;

static void
set_text (RcLengthEntry *self, const char *text)
{
  if (self->is_setting || g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self)), text))
    return;
  self->is_setting = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self), text);
  self->is_setting = FALSE;
}

void
rc_entry_show_fault (GtkWidget *entry, const char *fault)
{
  gtk_widget_set_tooltip_text (entry, fault);
  if (fault)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               fault ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  if (fault)
    gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, fault, -1);
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

static void
set_fault (RcLengthEntry *self, const char *fault)
{
  if (g_strcmp0 (self->fault, fault) == 0)
    return;
  g_free (self->fault);
  self->fault = g_strdup (fault);
  rc_entry_show_fault (GTK_WIDGET (self), fault);
}

static void
show_value (RcLengthEntry *self)
{
  if (self->value < 0 || (self->optional && self->value == 0))
    {
      set_text (self, "");
      return;
    }
  g_autofree char *text = rc_length_format (self->value, self->style);
  set_text (self, text);
}

static void
on_changed (RcLengthEntry *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self));
  RcLength    value = 0;
  g_autoptr (GError) error = NULL;

  if (self->is_setting)
    return;
  gsize n_lead = self->lead ? self->lead (text, self->lead_data) : 0;
  text += n_lead;
  if (n_lead > 0 && *text == '\0') /* the length comes now */
    {
      set_fault (self, NULL);
      return;
    }
  gboolean is_blank = *text == '\0';
  if (is_blank && !self->optional && self->value < 0)
    {
      set_fault (self, NULL);
      return;
    }
  if (!(is_blank && self->optional) && !rc_length_parse (text, self->bare_unit, &value, &error))
    {
      set_fault (self, error->message);
      return;
    }
  set_fault (self, NULL);
  if (value == self->value && n_lead == 0)
    return;
  self->value = value;
  g_signal_emit (self, edited_signal, 0);
}

static void
on_leave (RcLengthEntry *self)
{
  if (self->fault == NULL)
    show_value (self);
}

static void
rc_length_entry_finalize (GObject *object)
{
  g_free (RC_LENGTH_ENTRY (object)->fault);
  G_OBJECT_CLASS (rc_length_entry_parent_class)->finalize (object);
}

static void
rc_length_entry_class_init (RcLengthEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_length_entry_finalize;
  edited_signal = g_signal_new ("edited", RC_TYPE_LENGTH_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
rc_length_entry_init (RcLengthEntry *self)
{
  self->value = -1;
  self->bare_unit = RC_LENGTH_UNIT_FOOT_INCH;
  self->style = &RC_LENGTH_STYLE_IMPERIAL;
  rc_typing_prepare (GTK_EDITABLE (self));
  gtk_editable_set_width_chars (GTK_EDITABLE (self), 9);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self), 12);
  g_signal_connect (self, "changed", G_CALLBACK (on_changed), NULL);

  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

GtkWidget *
rc_length_entry_new (void)
{
  return g_object_new (RC_TYPE_LENGTH_ENTRY, NULL);
}

void
rc_length_entry_set_units (RcLengthEntry *self, RcLengthUnit bare_unit, const RcLengthStyle *style)
{
  gboolean is_other = style != self->style;

  self->bare_unit = bare_unit;
  self->style = style;
  if (is_other && self->fault == NULL)
    show_value (self);
}

void
rc_length_entry_set_optional (RcLengthEntry *self, gboolean optional)
{
  self->optional = optional;
}

void
rc_length_entry_set_lead (RcLengthEntry *self, RcLengthLead lead, gpointer data)
{
  self->lead = lead;
  self->lead_data = data;
}

void
rc_length_entry_set_value (RcLengthEntry *self, RcLength value)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self));

  if (self->is_setting) /* half of a text that is being set: it may read as empty */
    return;
  if (value == self->value && (self->fault != NULL || *text != '\0' || value == 0))
    return;
  self->value = value;
  set_fault (self, NULL);
  show_value (self);
}

void
rc_length_entry_clear (RcLengthEntry *self)
{
  self->value = -1;
  set_fault (self, NULL);
  set_text (self, "");
}

RcLength
rc_length_entry_get_value (RcLengthEntry *self)
{
  return MAX (self->value, 0);
}

const char *
rc_length_entry_get_fault (RcLengthEntry *self)
{
  return self->fault;
}
