#include "diagonal-list.h"

#include <glib/gi18n-lib.h>

#include "diagonal.h"
#include "room-edit.h"

/* A row of the list: two corners, the length, what the walls say. */
typedef struct
{
  GtkWidget      *box;
  GtkDropDown    *from_drop, *to_drop;
  RcLengthEntry  *entry;
  GtkLabel       *told;
  RcDiagonalList *list;
  guint           index;
} Row;

struct _RcDiagonalList
{
  RcPanel parent_instance;

  GtkBox     *rows_box;
  GtkLabel   *verdict_label;
  GtkWidget  *fit_button;
  GPtrArray  *rows;    /* of Row */
  const char *room_id; /* interned; whose rows are shown */
};

G_DEFINE_FINAL_TYPE (RcDiagonalList, rc_diagonal_list, RC_TYPE_PANEL)

static gboolean
is_users (RcDiagonalList *self)
{
  return !rc_panel_is_showing (RC_PANEL (self)) && rc_panel_get_document (RC_PANEL (self)) != NULL;
}

/* Edits. */

static void
on_row_edited (Row *row)
{
  RcDiagonalList *self = row->list;

  if (!is_users (self))
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (RC_PANEL (self)));
  RcRoom *room = rc_panel_find_chosen_room (RC_PANEL (self), job);
  if (room == NULL || row->index >= room->diagonals->len)
    return;
  RcDiagonal *diagonal = &g_array_index (room->diagonals, RcDiagonal, row->index);
  diagonal->from = gtk_drop_down_get_selected (row->from_drop);
  diagonal->to = gtk_drop_down_get_selected (row->to_drop);
  diagonal->length = rc_length_entry_get_value (row->entry);
  g_autofree char *key = g_strdup_printf ("diagonal %p", (void *)row);
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Diagonal of a room"), key);
}

static void
on_row_removed (Row *row)
{
  RcDiagonalList *self = row->list;
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (RC_PANEL (self)));
  RcRoom *room = rc_panel_find_chosen_room (RC_PANEL (self), job);

  if (room == NULL || row->index >= room->diagonals->len)
    return;
  g_array_remove_index (room->diagonals, row->index);
  gtk_widget_grab_focus (self->fit_button); /* the row's own button goes */
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Take a diagonal out"), NULL);
}

static void
on_fit (RcDiagonalList *self)
{
  RcDocument *document = rc_panel_get_document (RC_PANEL (self));
  g_autoptr (GError) error = NULL;

  if (document == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcRoom *room = rc_panel_find_chosen_room (RC_PANEL (self), job);
  if (room == NULL)
    return;
  rc_room_edit_make_walls (room);
  if (rc_room_fit_diagonals (room, &error))
    rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Shape by diagonals"), NULL);
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", error->message);
}

static gboolean
has_diagonal (const RcRoom *room, guint a, guint b)
{
  for (guint i = 0; i < room->diagonals->len; i++)
    {
      const RcDiagonal *d = &g_array_index (room->diagonals, RcDiagonal, i);
      if ((d->from == a && d->to == b) || (d->from == b && d->to == a))
        return TRUE;
    }
  return FALSE;
}

/* The first two corners that no wall and no diagonal joins. */
static RcDiagonal
find_free (const RcRoom *room)
{
  guint n = rc_room_get_n_walls (room);

  for (guint a = 0; a < n; a++)
    for (guint b = a + 2; b < n; b++)
      if ((b + 1) % n != a && !has_diagonal (room, a, b))
        return (RcDiagonal){ a, b, 0 };
  return (RcDiagonal){ 0, n > 2 ? 2 : n - 1, 0 };
}

void
rc_diagonal_list_add (RcDiagonalList *self)
{
  RcDocument *document = rc_panel_get_document (RC_PANEL (self));

  if (document == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcRoom *room = rc_panel_find_chosen_room (RC_PANEL (self), job);
  if (room == NULL || rc_room_get_n_walls (room) < 3)
    return;
  RcDiagonal diagonal = find_free (room);
  g_array_append_val (room->diagonals, diagonal);
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Check a room by a diagonal"), NULL);
  if (self->rows->len > 0)
    gtk_widget_grab_focus (GTK_WIDGET (((Row *)g_ptr_array_index (self->rows, self->rows->len - 1))->entry));
}

/* What is shown. */

static GtkDropDown *
new_corners (Row *row, const char *label)
{
  GtkWidget *drop = gtk_drop_down_new (G_LIST_MODEL (gtk_string_list_new (NULL)), NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (drop), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_signal_connect_swapped (drop, "notify::selected", G_CALLBACK (on_row_edited), row);
  gtk_box_append (GTK_BOX (row->box), drop);
  return GTK_DROP_DOWN (drop);
}

static Row *
row_new (RcDiagonalList *list, guint index)
{
  Row       *row = g_new0 (Row, 1);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");

  row->list = list;
  row->index = index;
  row->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  row->from_drop = new_corners (row, _ ("From corner"));
  row->to_drop = new_corners (row, _ ("To corner"));
  row->entry = RC_LENGTH_ENTRY (rc_length_entry_new ());
  rc_length_entry_set_optional (row->entry, TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (row->entry), 8);
  gtk_widget_set_hexpand (GTK_WIDGET (row->entry), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Measured"), -1);
  g_signal_connect_swapped (row->entry, "edited", G_CALLBACK (on_row_edited), row);
  gtk_box_append (GTK_BOX (row->box), GTK_WIDGET (row->entry));
  gtk_widget_add_css_class (remove, "flat");
  gtk_widget_set_tooltip_text (remove, _ ("Take this diagonal out"));
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (on_row_removed), row);
  gtk_box_append (GTK_BOX (row->box), remove);
  row->told = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (row->told, 0);
  gtk_label_set_wrap (row->told, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (row->told), "field-label");
  gtk_box_append (list->rows_box, row->box);
  gtk_box_append (list->rows_box, GTK_WIDGET (row->told));
  return row;
}

static void
clear_rows (RcDiagonalList *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->rows_box))) != NULL)
    gtk_box_remove (self->rows_box, child);
  g_ptr_array_set_size (self->rows, 0);
}

static void
show_corners (GtkDropDown *drop, guint n, guint selected)
{
  GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (drop));

  for (guint i = g_list_model_get_n_items (G_LIST_MODEL (list)); i > n; i--)
    gtk_string_list_remove (list, i - 1);
  for (guint i = g_list_model_get_n_items (G_LIST_MODEL (list)); i < n; i++)
    {
      g_autofree char *number = g_strdup_printf ("%u", i + 1);
      gtk_string_list_append (list, number);
    }
  gtk_drop_down_set_selected (drop, selected < n ? selected : GTK_INVALID_LIST_POSITION);
}

static void
show_row (Row *row, const RcRoom *room, const RcJob *job)
{
  const RcDiagonal    *diagonal = &g_array_index (room->diagonals, RcDiagonal, row->index);
  const RcLengthStyle *style = rc_job_get_length_style (job);
  RcLength             computed = 0;

  show_corners (row->from_drop, rc_room_get_n_walls (room), diagonal->from);
  show_corners (row->to_drop, rc_room_get_n_walls (room), diagonal->to);
  rc_length_entry_set_units (row->entry, rc_job_get_bare_unit (job), style);
  rc_length_entry_set_value (row->entry, diagonal->length);
  if (!rc_diagonal_compute (room, diagonal, &computed))
    {
      gtk_label_set_text (row->told, _ ("Choose two corners."));
      return;
    }
  g_autofree char *by_walls = rc_length_format (computed, style);
  g_autofree char *off = rc_length_format (ABS (diagonal->length - computed), style);
  g_autofree char *text = diagonal->length == 0          ? g_strdup_printf (_ ("By the walls: %s"), by_walls)
                          : diagonal->length == computed ? g_strdup_printf (_ ("By the walls: %s, the same"), by_walls)
                          : diagonal->length > computed
                              ? g_strdup_printf (_ ("By the walls: %s; measured %s longer"), by_walls, off)
                              : g_strdup_printf (_ ("By the walls: %s; measured %s shorter"), by_walls, off);
  gtk_label_set_text (row->told, text);
}

static void
show_verdict (RcDiagonalList *self, const RcRoom *room, const RcJob *job)
{
  g_autoptr (RcRoom) walked = rc_room_copy (room);
  g_autofree char *text = NULL;

  rc_room_edit_make_walls (walked);
  RcDiagonalsFinding finding = rc_room_judge_diagonals (walked, job->settings.closure.close_max);
  g_autofree char   *length = rc_length_format (finding.length, rc_job_get_length_style (job));
  if (finding.verdict == RC_DIAGONALS_ANGLES)
    text = g_strdup (
        _ ("No single wall explains it: the corners are not as drawn. Shape by diagonals turns the walls."));
  else if (finding.verdict == RC_DIAGONALS_WALL && finding.partner != finding.wall)
    text = g_strdup_printf (_ ("Measure wall %u again, and wall %u over against it: %s would agree."), finding.wall + 1,
                            finding.partner + 1, length);
  else if (finding.verdict == RC_DIAGONALS_WALL)
    text = g_strdup_printf (_ ("Measure wall %u again: %s would agree."), finding.wall + 1, length);
  gtk_label_set_text (self->verdict_label, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->verdict_label), text != NULL);
}

static void
rc_diagonal_list_show (RcPanel *panel, gpointer part)
{
  RcDiagonalList *self = RC_DIAGONAL_LIST (panel);
  const RcRoom   *room = part;
  const RcJob    *job = rc_document_get_job (rc_panel_get_document (panel));

  if (self->room_id != g_intern_string (room->id) || self->rows->len != room->diagonals->len)
    {
      clear_rows (self);
      self->room_id = g_intern_string (room->id);
      for (guint i = 0; i < room->diagonals->len; i++)
        g_ptr_array_add (self->rows, row_new (self, i));
    }
  for (guint i = 0; i < self->rows->len; i++)
    show_row (g_ptr_array_index (self->rows, i), room, job);
  gtk_widget_set_sensitive (self->fit_button, room->diagonals->len > 0);
  show_verdict (self, room, job);
}

static void
rc_diagonal_list_dispose (GObject *object)
{
  if (RC_DIAGONAL_LIST (object)->rows_box)
    clear_rows (RC_DIAGONAL_LIST (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_DIAGONAL_LIST);
  G_OBJECT_CLASS (rc_diagonal_list_parent_class)->dispose (object);
}

static void
rc_diagonal_list_finalize (GObject *object)
{
  g_ptr_array_unref (RC_DIAGONAL_LIST (object)->rows);
  G_OBJECT_CLASS (rc_diagonal_list_parent_class)->finalize (object);
}

static void
rc_diagonal_list_class_init (RcDiagonalListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_diagonal_list_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_diagonal_list_finalize;
  RC_PANEL_CLASS (klass)->find = rc_panel_find_chosen_room;
  RC_PANEL_CLASS (klass)->show = rc_diagonal_list_show;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/diagonal-list.ui");
  gtk_widget_class_bind_template_child (widget_class, RcDiagonalList, rows_box);
  gtk_widget_class_bind_template_child (widget_class, RcDiagonalList, verdict_label);
  gtk_widget_class_bind_template_child (widget_class, RcDiagonalList, fit_button);
  gtk_widget_class_bind_template_callback (widget_class, on_fit);
}

static void
rc_diagonal_list_init (RcDiagonalList *self)
{
  self->rows = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}
