#include "wall-table.h"

#include <glib/gi18n-lib.h>

#include "room-edit.h"
#include "wall-row.h"

#define MEND_BUTTONS 2

struct _RcWallTable
{
  RcPanel parent_instance;

  GtkGrid   *grid;
  GtkLabel  *fault_label;
  GtkLabel  *info_label;
  GtkBox    *mend_box;
  GtkButton *mend_buttons[MEND_BUTTONS];

  GPtrArray  *rows;    /* of RcWallRow */
  const char *room_id; /* interned; whose walls are shown */
  guint       focused; /* wall last typed in */
  guint       mend_wall[MEND_BUTTONS];
  RcLength    mend_length[MEND_BUTTONS];
};

G_DEFINE_FINAL_TYPE (RcWallTable, rc_wall_table, RC_TYPE_PANEL)

static void
show_fault (RcWallTable *self, const char *message)
{
  gtk_label_set_text (self->fault_label, message ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fault_label), message != NULL);
}

/* Edits. */

static gboolean
remove_wall (RcRoom *room, const RcWallRow *row)
{
  return rc_room_edit_remove_wall (room, row->index);
}

static gboolean
insert_wall (RcRoom *room, const RcWallRow *row)
{
  double before = row->index > 0 ? g_array_index (room->walls, RcWall, row->index - 1).bearing_degrees : 0;
  return rc_room_edit_insert_wall (room, row->index, before + 90, 0);
}

static void
apply (RcWallRow *row, RcWallRowWrite edit, const char *step, const char *what)
{
  RcPanel    *panel = RC_PANEL (row->table);
  RcDocument *document = rc_panel_get_document (panel);

  if (rc_panel_is_showing (panel) || document == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcRoom *room = rc_panel_find_chosen_room (panel, job);
  if (room == NULL)
    return;
  rc_room_edit_make_walls (room);
  if (!edit (room, row))
    return;
  g_autofree char *key = what ? g_strdup_printf ("%s wall %u %s", room->id, row->index, what) : NULL;
  rc_panel_commit (panel, g_steal_pointer (&job), step, key);
}

static void
on_length_edited (RcWallRow *row)
{
  apply (row, rc_wall_row_write_length, _ ("Wall length"), "length");
}

static void
on_bow_edited (RcWallRow *row)
{
  if (!row->is_blank)
    apply (row, rc_wall_row_write_bow, _ ("Wall bow"), "bow");
}

static void
on_bearing_changed (RcWallRow *row)
{
  if (rc_panel_is_showing (RC_PANEL (row->table)))
    return;
  if (!rc_wall_row_judge_bearing (row))
    rc_panel_show (RC_PANEL (row->table));
  else if (!row->is_blank)
    apply (row, rc_wall_row_write_bearing, _ ("Wall direction"), "direction");
}

static void
on_text_changed (RcWallRow *row)
{
  /* After the entry has judged its own text: what is wrong with it shows under the table. */
  if (!rc_panel_is_showing (RC_PANEL (row->table)))
    rc_panel_show (RC_PANEL (row->table));
}

static void
on_remove (RcWallRow *row)
{
  RcWallTable *self = row->table;
  guint        index = row->index;

  if (row->is_blank)
    return;
  apply (row, remove_wall, _ ("Take a wall out"), NULL);
  rc_wall_table_focus_wall (self, index);
}

/* Moving between the fields. */

static void
focus_entry (GtkWidget *entry)
{
  gtk_widget_grab_focus (entry); /* an entry selects its text when it gets the focus */
}

static RcWallRow *
get_row (RcWallTable *self, guint index)
{
  return index < self->rows->len ? g_ptr_array_index (self->rows, index) : NULL;
}

static void
on_bearing_activate (RcWallRow *row)
{
  focus_entry (row->length);
}

/* The way can be typed before the length, so that Return goes down one column. */
static void
on_length_activate (RcWallRow *row)
{
  RcWallRow *next = get_row (row->table, row->index + 1);
  if (next)
    focus_entry (next->length);
}

static RcWallRow *
find_focused_row (RcWallTable *self, GtkWidget **column)
{
  GtkRoot   *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root ? gtk_root_get_focus (root) : NULL;

  for (guint i = 0; focus != NULL && i < self->rows->len; i++)
    if ((*column = rc_wall_row_find_column (get_row (self, i), focus)) != NULL)
      return get_row (self, i);
  return NULL;
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, RcWallTable *self)
{
  GtkWidget *column = NULL;
  RcWallRow *row = find_focused_row (self, &column);

  if (row == NULL || (state & gtk_accelerator_get_default_mod_mask ()) != 0
      || (keyval != GDK_KEY_Up && keyval != GDK_KEY_Down))
    return GDK_EVENT_PROPAGATE;
  RcWallRow *to
      = keyval == GDK_KEY_Up && row->index == 0 ? NULL : get_row (self, row->index + (keyval == GDK_KEY_Up ? -1 : 1));
  if (to)
    focus_entry (column == row->bearing ? to->bearing : column == row->bow ? to->bow : to->length);
  return GDK_EVENT_STOP;
}

/* Rows. */

static void
on_enter (RcWallRow *row)
{
  RcDocument *document = rc_panel_get_document (RC_PANEL (row->table));

  ((RcWallTable *)row->table)->focused = row->index;
  if (document == NULL || rc_panel_is_showing (RC_PANEL (row->table)))
    return;
  RcChoice choice = rc_document_get_choice (document);
  choice.wall = row->is_blank ? 0 : row->index + 1;
  if (choice.thing == RC_THING_ROOM)
    rc_document_choose (document, choice);
}

static void
on_leave (RcWallTable *self)
{
  RcDocument *document = rc_panel_get_document (RC_PANEL (self));
  if (document)
    rc_document_end_step (document);
}

static void
add_row (RcWallTable *self)
{
  RcWallRow *row = rc_wall_row_new (self->grid, self->rows->len, self);

  g_signal_connect_swapped (row->bearing, "changed", G_CALLBACK (on_bearing_changed), row);
  g_signal_connect_swapped (row->bearing, "activate", G_CALLBACK (on_bearing_activate), row);
  g_signal_connect_swapped (row->length, "edited", G_CALLBACK (on_length_edited), row);
  g_signal_connect_swapped (row->length, "changed", G_CALLBACK (on_text_changed), row);
  g_signal_connect_swapped (row->length, "activate", G_CALLBACK (on_length_activate), row);
  g_signal_connect_swapped (row->bow, "edited", G_CALLBACK (on_bow_edited), row);
  g_signal_connect_swapped (row->bow, "activate", G_CALLBACK (on_length_activate), row);
  g_signal_connect_swapped (row->remove, "clicked", G_CALLBACK (on_remove), row);
  GtkWidget *typed[] = { row->bearing, row->length, row->bow };
  for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      GtkEventController *focus = gtk_event_controller_focus_new ();
      g_signal_connect_swapped (focus, "enter", G_CALLBACK (on_enter), row);
      g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), self);
      gtk_widget_add_controller (typed[i], focus);
    }
  g_ptr_array_add (self->rows, row);
}

static void
remove_last_row (RcWallTable *self)
{
  rc_wall_row_leave (get_row (self, self->rows->len - 1), self->grid);
  g_ptr_array_remove_index (self->rows, self->rows->len - 1);
}

static void
forget_typed (RcWallTable *self)
{
  self->focused = 0;
  for (guint i = 0; i < self->rows->len; i++)
    rc_wall_row_forget (get_row (self, i));
}

/* What is wrong, and what would mend it. */

static char *
dup_typing_fault (RcWallTable *self)
{
  char *fault = NULL;

  for (guint i = 0; fault == NULL && i < self->rows->len; i++)
    fault = rc_wall_row_dup_fault (get_row (self, i));
  return fault;
}

static void
show_mends (RcWallTable *self, const RcRoom *room, const RcClosure *closure, const RcJob *job)
{
  guint n = 0;

  if (closure->error > job->settings.closure.close_max)
    for (guint s = 0; s < closure->suspects->len && n < MEND_BUTTONS; s++)
      {
        guint wall = g_array_index (closure->suspects, guint, s);
        if (!rc_room_edit_find_closing_length (room, wall, job->settings.closure.close_max, &self->mend_length[n]))
          continue;
        g_autofree char *length = rc_length_format (self->mend_length[n], rc_job_get_length_style (job));
        g_autofree char *label = g_strdup_printf (_ ("Make wall %u %s"), wall + 1, length);
        gtk_button_set_label (self->mend_buttons[n], label);
        self->mend_wall[n++] = wall;
      }
  for (guint i = 0; i < MEND_BUTTONS; i++)
    gtk_widget_set_visible (GTK_WIDGET (self->mend_buttons[i]), i < n);
  gtk_widget_set_visible (GTK_WIDGET (self->mend_box), n > 0);
}

static char *
dup_info (const RcRoom *room, const RcClosure *closure, const RcPolygon *polygon, const RcJob *job)
{
  const RcLengthStyle *style = rc_job_get_length_style (job);
  RcAreaUnit           unit = job->units == RC_UNITS_METRIC ? RC_AREA_UNIT_M2 : RC_AREA_UNIT_SQ_FT;
  g_autofree char     *area = rc_area_format (rc_polygon_compute_area (polygon), unit, 1, TRUE);

  if (closure->error <= job->settings.closure.close_max)
    return g_strdup_printf (_ ("Floor %s; the walls close"), area);
  g_autofree char *error = rc_length_format (closure->error, style);
  return g_strdup_printf (_ ("Floor %s; walls miss closing by %s, 1 part in %.0f"), area, error, closure->ratio);
}

static void
show_verdict (RcWallTable *self, const RcRoom *as_typed, const RcRoom *room, const RcJob *job)
{
  RcClosure closure = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPolygon) polygon = rc_room_compute_polygon (as_typed, &job->settings.closure, &error);
  g_autofree char *typing = dup_typing_fault (self);

  rc_room_compute_closure (as_typed, &closure);
  show_fault (self, typing ? typing : error ? error->message : NULL);
  g_autofree char *info = polygon && !typing ? dup_info (as_typed, &closure, polygon, job) : NULL;
  gtk_label_set_text (self->info_label, info ? info : "");
  gtk_widget_set_visible (GTK_WIDGET (self->info_label), info != NULL);
  show_mends (self, room, &closure, job);
  rc_closure_clear (&closure);
}

static void
rc_wall_table_show (RcPanel *panel, gpointer part)
{
  RcWallTable  *self = RC_WALL_TABLE (panel);
  const RcRoom *as_typed = part;
  const RcJob  *job = rc_document_get_job (rc_panel_get_document (panel));
  g_autoptr (RcRoom) room = rc_room_copy (as_typed);

  rc_room_edit_make_walls (room);
  if (self->room_id != g_intern_string (room->id))
    forget_typed (self);
  self->room_id = g_intern_string (room->id);
  while (self->rows->len > room->walls->len + 1)
    remove_last_row (self);
  while (self->rows->len < room->walls->len + 1)
    add_row (self);
  for (guint i = 0; i < self->rows->len; i++)
    {
      RcWallRow *row = get_row (self, i);
      if (i < room->walls->len)
        rc_wall_row_show_wall (row, room, job);
      else
        rc_wall_row_show_blank (row, room, job);
    }
  show_verdict (self, as_typed, room, job);
}

void
rc_wall_table_focus_wall (RcWallTable *self, guint wall)
{
  RcWallRow *row = get_row (self, MIN (wall, self->rows->len ? self->rows->len - 1 : 0));
  if (row)
    focus_entry (row->length);
}

static void
mend (RcWallTable *self, guint which)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcRoom *room = rc_panel_find_chosen_room (panel, job);

  if (room && rc_room_edit_set_length (room, self->mend_wall[which], self->mend_length[which]))
    rc_panel_commit (panel, g_steal_pointer (&job), _ ("Close the room"), NULL);
  rc_wall_table_focus_wall (self, self->mend_wall[which]);
}

static void
on_mend_first (RcWallTable *self)
{
  mend (self, 0);
}

static void
on_mend_second (RcWallTable *self)
{
  mend (self, 1);
}

static void
action_insert (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkWidget *column = NULL;
  RcWallRow *row = find_focused_row (RC_WALL_TABLE (widget), &column);

  if (row == NULL || row->is_blank)
    return;
  guint index = row->index;
  apply (row, insert_wall, _ ("Put a wall in"), NULL);
  rc_wall_table_focus_wall (RC_WALL_TABLE (widget), index);
}

static void
action_remove (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkWidget *column = NULL;
  RcWallRow *row = find_focused_row (RC_WALL_TABLE (widget), &column);
  if (row)
    on_remove (row);
}

static void
action_mend (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcWallTable *self = RC_WALL_TABLE (widget);
  if (gtk_widget_get_visible (GTK_WIDGET (self->mend_box)))
    mend (self, 0);
}

static void
rc_wall_table_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_WALL_TABLE);
  G_OBJECT_CLASS (rc_wall_table_parent_class)->dispose (object);
}

static void
rc_wall_table_finalize (GObject *object)
{
  g_ptr_array_unref (RC_WALL_TABLE (object)->rows);
  G_OBJECT_CLASS (rc_wall_table_parent_class)->finalize (object);
}

static void
rc_wall_table_class_init (RcWallTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_wall_table_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_wall_table_finalize;
  RC_PANEL_CLASS (klass)->find = rc_panel_find_chosen_room;
  RC_PANEL_CLASS (klass)->show = rc_wall_table_show;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/wall-table.ui");
  gtk_widget_class_bind_template_child (widget_class, RcWallTable, grid);
  gtk_widget_class_bind_template_child (widget_class, RcWallTable, fault_label);
  gtk_widget_class_bind_template_child (widget_class, RcWallTable, info_label);
  gtk_widget_class_bind_template_child (widget_class, RcWallTable, mend_box);
  gtk_widget_class_bind_template_child_full (widget_class, "mend_first", FALSE,
                                             G_STRUCT_OFFSET (RcWallTable, mend_buttons[0]));
  gtk_widget_class_bind_template_child_full (widget_class, "mend_second", FALSE,
                                             G_STRUCT_OFFSET (RcWallTable, mend_buttons[1]));
  gtk_widget_class_bind_template_callback (widget_class, on_mend_first);
  gtk_widget_class_bind_template_callback (widget_class, on_mend_second);
  gtk_widget_class_bind_template_callback (widget_class, on_key);

  gtk_widget_class_install_action (widget_class, "walls.insert", NULL, action_insert);
  gtk_widget_class_install_action (widget_class, "walls.remove", NULL, action_remove);
  gtk_widget_class_install_action (widget_class, "walls.close", NULL, action_mend);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Insert, GDK_ALT_MASK, "walls.insert", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Delete, GDK_ALT_MASK, "walls.remove", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, GDK_CONTROL_MASK, "walls.close", NULL);
}

static void
rc_wall_table_init (RcWallTable *self)
{
  self->rows = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

guint
rc_wall_table_get_focused_wall (RcWallTable *self)
{
  return self->rows->len > 1 ? MIN (self->focused, self->rows->len - 2) : 0;
}
