#include "typing.h"

/* The text of a field since the keyboard came to it. */
typedef struct
{
  GtkEditable *text;      /* borrowed: has this as its data */
  gboolean     was_whole; /* all of it was selected, and nobody has pressed a key or the pointer since */
} Typing;

static gboolean
is_whole (GtkEditable *text)
{
  int start = 0, end = 0;
  int n_chars = (int)g_utf8_strlen (gtk_editable_get_text (text), -1);

  return n_chars > 0 && gtk_editable_get_selection_bounds (text, &start, &end) && start == 0 && end == n_chars;
}

static void
on_selection (Typing *typing)
{
  if (is_whole (typing->text))
    typing->was_whole = TRUE;
}

static void
forget (Typing *typing)
{
  typing->was_whole = FALSE;
}

static gboolean
on_key (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType modifiers, gpointer data)
{
  Typing   *typing = data;
  GdkEvent *event = gtk_event_controller_get_current_event (GTK_EVENT_CONTROLLER (controller));

  if (event && gdk_key_event_is_modifier (event)) /* Shift, before a capital */
    return GDK_EVENT_PROPAGATE;
  if (typing->was_whole && !gtk_editable_get_selection_bounds (typing->text, NULL, NULL))
    gtk_editable_select_region (typing->text, 0, -1);
  typing->was_whole = FALSE;
  return GDK_EVENT_PROPAGATE;
}

void
rc_typing_prepare (GtkEditable *field)
{
  GtkEditable *delegate = gtk_editable_get_delegate (field);
  GtkEditable *text = delegate ? delegate : field;
  Typing      *typing = g_new0 (Typing, 1);

  gtk_editable_set_enable_undo (field, FALSE);
  typing->text = text;
  g_object_set_data_full (G_OBJECT (text), "rowcut-typing", typing, g_free);
  g_signal_connect_swapped (text, "notify::selection-bound", G_CALLBACK (on_selection), typing);
  g_signal_connect_swapped (text, "notify::cursor-position", G_CALLBACK (on_selection), typing);

  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), typing);
  gtk_widget_add_controller (GTK_WIDGET (text), keys);

  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (forget), typing);
  gtk_widget_add_controller (GTK_WIDGET (text), focus);

  GtkGesture *press = gtk_gesture_click_new ();
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (press), GTK_PHASE_CAPTURE);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (press), 0);
  g_signal_connect_swapped (press, "pressed", G_CALLBACK (forget), typing);
  gtk_widget_add_controller (GTK_WIDGET (text), GTK_EVENT_CONTROLLER (press));
}
