#include "action-list.h"

#include <glib/gi18n-lib.h>

#define N_TARGETS 4

struct _RcActionList
{
  GtkPopover parent_instance;

  GtkSearchEntry       *search;
  GtkListBox           *list;
  GtkWidget            *focus; /* weak: what had it before */
  char                 *asked; /* the action to do once the list is shut */
  GtkWidget            *targets[N_TARGETS];
  RcActionListIsEnabled is_enabled;
  gpointer              is_enabled_data;
};

G_DEFINE_FINAL_TYPE (RcActionList, rc_action_list, GTK_TYPE_POPOVER)

#define ACTION_KEY "rowcut-action"
#define WORDS_KEY  "rowcut-words"

static const char *
get_action (gpointer row)
{
  return g_object_get_data (row, ACTION_KEY);
}

/* Finding. */

static gboolean
matches (GtkListBoxRow *row, gpointer data)
{
  RcActionList *self = data;
  const char   *sought = gtk_editable_get_text (GTK_EDITABLE (self->search));

  return *sought == '\0' || g_str_match_string (sought, g_object_get_data (G_OBJECT (row), WORDS_KEY), TRUE);
}

static GtkListBoxRow *
find_next (RcActionList *self, int index, int step)
{
  GtkListBoxRow *row;

  for (index += step; (row = index < 0 ? NULL : gtk_list_box_get_row_at_index (self->list, index)) != NULL;
       index += step)
    if (gtk_widget_get_child_visible (GTK_WIDGET (row)) && gtk_widget_is_sensitive (GTK_WIDGET (row)))
      return row;
  return NULL;
}

static void
choose (RcActionList *self, GtkListBoxRow *row)
{
  graphene_rect_t bounds;

  gtk_list_box_select_row (self->list, row);
  if (row == NULL || !gtk_widget_compute_bounds (GTK_WIDGET (row), GTK_WIDGET (self->list), &bounds))
    return;
  GtkScrolledWindow *scrolled
      = GTK_SCROLLED_WINDOW (gtk_widget_get_ancestor (GTK_WIDGET (self->list), GTK_TYPE_SCROLLED_WINDOW));
  gtk_adjustment_clamp_page (gtk_scrolled_window_get_vadjustment (scrolled), bounds.origin.y,
                             bounds.origin.y + bounds.size.height);
}

static void
on_search_changed (RcActionList *self)
{
  gtk_list_box_invalidate_filter (self->list);
  choose (self, find_next (self, -1, 1));
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, RcActionList *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  int            index = row ? gtk_list_box_row_get_index (row) : -1;

  if (keyval != GDK_KEY_Down && keyval != GDK_KEY_Up)
    return GDK_EVENT_PROPAGATE;
  GtkListBoxRow *next = find_next (self, index, keyval == GDK_KEY_Down ? 1 : -1);
  if (next)
    choose (self, next);
  return GDK_EVENT_STOP;
}

/* Doing: when the list is shut and the focus is back where it was, as many actions are about what has the focus. */

static gboolean
do_asked (gpointer data)
{
  g_autoptr (RcActionList) self = data;
  g_autofree char *name = NULL;
  g_autoptr (GVariant) target = NULL;
  GtkWidget *focus = self->focus;

  if (self->asked && g_action_parse_detailed_name (self->asked, &name, &target, NULL))
    {
      if (focus)
        gtk_widget_grab_focus (focus);
      gboolean is_done = gtk_widget_activate_action_variant (focus ? focus : GTK_WIDGET (self), name, target);
      for (guint i = 0; !is_done && i < N_TARGETS && self->targets[i]; i++)
        is_done = gtk_widget_activate_action_variant (self->targets[i], name, target);
    }
  g_clear_pointer (&self->asked, g_free);
  g_clear_weak_pointer (&self->focus);
  return G_SOURCE_REMOVE;
}

static void
on_row_activated (RcActionList *self, GtkListBoxRow *row)
{
  if (row == NULL || !gtk_widget_is_sensitive (GTK_WIDGET (row)))
    return;
  g_free (self->asked);
  self->asked = g_strdup (get_action (row));
  gtk_popover_popdown (GTK_POPOVER (self));
  g_idle_add (do_asked, g_object_ref (self));
}

static void
on_search_activated (RcActionList *self)
{
  on_row_activated (self, gtk_list_box_get_selected_row (self->list));
}

static void
on_stop_search (RcActionList *self)
{
  gtk_popover_popdown (GTK_POPOVER (self));
}

static void
rc_action_list_map (GtkWidget *widget)
{
  RcActionList  *self = RC_ACTION_LIST (widget);
  GtkRoot       *root = gtk_widget_get_root (gtk_widget_get_parent (widget));
  GtkListBoxRow *row;

  g_set_weak_pointer (&self->focus, gtk_root_get_focus (root));
  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    gtk_widget_set_sensitive (GTK_WIDGET (row),
                              self->is_enabled == NULL || self->is_enabled (get_action (row), self->is_enabled_data));
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  GTK_WIDGET_CLASS (rc_action_list_parent_class)->map (widget);
  on_search_changed (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

/* Filling. */

static char *
dup_keys (GtkShortcutsShortcut *shortcut, const char *action, GtkApplication *application)
{
  g_autofree char *own = NULL;
  g_auto (GStrv) accels = gtk_application_get_accels_for_action (application, action);

  g_object_get (shortcut, "accelerator", &own, NULL);
  const char     *first = accels && accels[0] ? accels[0] : own;
  guint           keyval = 0;
  GdkModifierType modifiers = 0;
  if (first && gtk_accelerator_parse (first, &keyval, &modifiers) && keyval)
    return gtk_accelerator_get_label (keyval, modifiers);
  return g_strdup ("");
}

static GtkWidget *
new_row (const char *title, const char *group, const char *keys, const char *action)
{
  GtkWidget       *row = gtk_list_box_row_new ();
  GtkWidget       *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget       *labels[] = { gtk_label_new (title), gtk_label_new (group), gtk_label_new (keys) };
  g_autofree char *words = g_strdup_printf ("%s %s", title, group);
  g_autofree char *said
      = *keys ? g_strdup_printf ("%s, %s, %s", title, group, keys) : g_strdup_printf ("%s, %s", title, group);

  gtk_label_set_xalign (GTK_LABEL (labels[0]), 0);
  gtk_widget_set_hexpand (labels[0], TRUE);
  gtk_widget_add_css_class (labels[1], "dim-label");
  gtk_widget_add_css_class (labels[2], "action-keys");
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    gtk_box_append (GTK_BOX (box), labels[i]);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  g_object_set_data_full (G_OBJECT (row), ACTION_KEY, g_strdup (action), g_free);
  g_object_set_data_full (G_OBJECT (row), WORDS_KEY, g_utf8_casefold (words, -1), g_free);
  return row;
}

static void
add_shortcut (RcActionList *self, GtkShortcutsShortcut *shortcut, GtkApplication *application)
{
  GtkWidget       *group = gtk_widget_get_ancestor (GTK_WIDGET (shortcut), GTK_TYPE_SHORTCUTS_GROUP);
  const char      *id = gtk_buildable_get_buildable_id (GTK_BUILDABLE (shortcut));
  g_autofree char *title = NULL, *heading = NULL, *action = NULL, *name = NULL, *canonical = NULL;
  g_autoptr (GVariant) target = NULL;

  g_object_get (shortcut, "title", &title, "action-name", &action, NULL);
  if (action == NULL && id && strchr (id, '.'))
    action = g_strdup (id);
  if (action == NULL || group == NULL)
    return;
  if (g_action_parse_detailed_name (action, &name, &target, NULL))
    canonical = g_action_print_detailed_name (name, target);
  g_object_get (group, "title", &heading, NULL);
  g_autofree char *keys = dup_keys (shortcut, action, application);
  gtk_list_box_append (self->list, new_row (title, heading, keys, canonical ? canonical : action));
}

void
rc_action_list_fill (RcActionList *self, GtkBuilder *builder, GtkApplication *application)
{
  GSList *objects = gtk_builder_get_objects (builder);

  for (GSList *item = objects; item; item = item->next)
    if (GTK_IS_SHORTCUTS_SHORTCUT (item->data))
      add_shortcut (self, item->data, application);
  g_slist_free (objects);
}

static int
compare_rows (GtkListBoxRow *a, GtkListBoxRow *b, gpointer data)
{
  return g_utf8_collate (g_object_get_data (G_OBJECT (a), WORDS_KEY), g_object_get_data (G_OBJECT (b), WORDS_KEY));
}

void
rc_action_list_set_enabled_func (RcActionList *self, RcActionListIsEnabled is_enabled, gpointer data)
{
  self->is_enabled = is_enabled;
  self->is_enabled_data = data;
}

void
rc_action_list_set_targets (RcActionList *self, GtkWidget *const targets[], guint n_targets)
{
  for (guint i = 0; i < N_TARGETS; i++)
    self->targets[i] = i < n_targets ? targets[i] : NULL;
}

gboolean
rc_action_list_has (RcActionList *self, const char *action)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    if (g_str_equal (get_action (row), action))
      return TRUE;
  return FALSE;
}

guint
rc_action_list_get_n_shown (RcActionList *self)
{
  GtkListBoxRow *row;
  guint          n = 0;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    n += gtk_widget_get_child_visible (GTK_WIDGET (row));
  return n;
}

const char *
rc_action_list_get_first (RcActionList *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  return row ? get_action (row) : NULL;
}

static void
rc_action_list_dispose (GObject *object)
{
  RcActionList *self = RC_ACTION_LIST (object);

  g_clear_weak_pointer (&self->focus);
  g_clear_pointer (&self->asked, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_ACTION_LIST);
  G_OBJECT_CLASS (rc_action_list_parent_class)->dispose (object);
}

static void
rc_action_list_class_init (RcActionListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_action_list_dispose;
  widget_class->map = rc_action_list_map;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/action-list.ui");
  gtk_widget_class_bind_template_child (widget_class, RcActionList, search);
  gtk_widget_class_bind_template_child (widget_class, RcActionList, list);
  gtk_widget_class_bind_template_callback (widget_class, on_search_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_search_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_stop_search);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_key);
}

static void
rc_action_list_init (RcActionList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_list_box_set_filter_func (self->list, matches, self, NULL);
  gtk_list_box_set_sort_func (self->list, compare_rows, NULL, NULL);
  gtk_search_entry_set_key_capture_widget (self->search, GTK_WIDGET (self));
}
