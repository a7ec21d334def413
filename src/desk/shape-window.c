#include "shape-window.h"

#include <glib/gi18n-lib.h>

#include "document-things.h"
#include "length-entry.h"
#include "palette.h"
#include "viewport.h"

#define PICTURE_MARGIN 12

struct _RcShapeWindow
{
  GtkWindow parent_instance;

  RcDocument     *document;
  int             floor;
  RcShape         shape;
  GtkBox         *shapes_box;
  GtkGrid        *sizes_grid;
  GtkLabel       *fault_label;
  GtkDrawingArea *picture;
  GtkButton      *add_button;
  GtkWidget      *labels[RC_SHAPE_MAX_SIZES], *entries[RC_SHAPE_MAX_SIZES];
};

G_DEFINE_FINAL_TYPE (RcShapeWindow, rc_shape_window, GTK_TYPE_WINDOW)

enum
{
  ADDED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* The room as typed so far, NULL with an error where it cannot be. (transfer full) */
static RcRoom *
build (RcShapeWindow *self, GError **error)
{
  g_autoptr (RcRoom) room = rc_room_new ("shape", NULL);
  RcLength sizes[RC_SHAPE_MAX_SIZES] = { 0 };

  for (guint i = 0; i < rc_shape_get_n_sizes (self->shape); i++)
    {
      RcLengthEntry *entry = RC_LENGTH_ENTRY (self->entries[i]);
      sizes[i] = rc_length_entry_get_fault (entry) ? 0 : rc_length_entry_get_value (entry);
    }
  if (!rc_shape_build (self->shape, sizes, room, error))
    return NULL;
  return g_steal_pointer (&room);
}

static void
draw_picture (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  g_autoptr (RcRoom) room = build (data, NULL);
  const RcPalette *palette = rc_palette_for_widget (GTK_WIDGET (area));

  if (room == NULL)
    return;
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  RcView view = rc_view_fit_box (rc_ring_compute_box (corners), 0, 0, width, height, PICTURE_MARGIN);
  for (guint i = 0; i < corners->len; i++)
    {
      double x = 0, y = 0;
      rc_viewport_from_house (view, *rc_ring_get (corners, i), &x, &y);
      cairo_line_to (cr, x, y);
    }
  cairo_close_path (cr);
  cairo_set_source_rgba (cr, palette->accent[0], palette->accent[1], palette->accent[2], 0.12);
  cairo_fill_preserve (cr);
  cairo_set_source_rgb (cr, palette->ink[0], palette->ink[1], palette->ink[2]);
  cairo_set_line_width (cr, 2);
  cairo_stroke (cr);
}

static char *
dup_fault (RcShapeWindow *self)
{
  for (guint i = 0; i < rc_shape_get_n_sizes (self->shape); i++)
    if (rc_length_entry_get_fault (RC_LENGTH_ENTRY (self->entries[i])))
      return g_strdup (rc_length_entry_get_fault (RC_LENGTH_ENTRY (self->entries[i])));
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRoom) room = build (self, &error);
  return room ? NULL : g_strdup (error->message);
}

static void
show (RcShapeWindow *self)
{
  if (self->fault_label == NULL) /* going away: the entries let go of their texts */
    return;
  g_autofree char *fault = dup_fault (self);
  gtk_label_set_text (self->fault_label, fault ? fault : "");
  gtk_widget_set_sensitive (GTK_WIDGET (self->add_button), fault == NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self->picture));
}

static void
choose_shape (RcShapeWindow *self, RcShape shape)
{
  self->shape = shape;
  for (guint i = 0; i < RC_SHAPE_MAX_SIZES; i++)
    {
      gboolean    is_used = i < rc_shape_get_n_sizes (shape);
      const char *label = is_used ? rc_shape_get_size_label (shape, i) : "";
      gtk_widget_set_visible (self->labels[i], is_used);
      gtk_widget_set_visible (self->entries[i], is_used);
      gtk_label_set_text (GTK_LABEL (self->labels[i]), label);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->entries[i]), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
    }
  show (self);
}

static void
on_shape_toggled (GtkToggleButton *button, RcShapeWindow *self)
{
  if (!gtk_toggle_button_get_active (button))
    return;
  choose_shape (self, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "rowcut-shape")));
  gtk_widget_grab_focus (self->entries[0]);
}

static void
add_shapes (RcShapeWindow *self)
{
  GtkToggleButton *group = NULL;

  for (guint i = 0; i < RC_N_SHAPES; i++)
    {
      g_autofree char *text = g_strdup_printf ("_%u %s", i + 1, rc_shape_get_label (i));
      GtkWidget       *button = gtk_toggle_button_new_with_mnemonic (text);
      gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), group);
      group = GTK_TOGGLE_BUTTON (button);
      gtk_toggle_button_set_active (group, i == 0);
      g_object_set_data (G_OBJECT (button), "rowcut-shape", GUINT_TO_POINTER (i));
      g_signal_connect (button, "toggled", G_CALLBACK (on_shape_toggled), self);
      gtk_box_append (self->shapes_box, button);
    }
}

static void
add_sizes (RcShapeWindow *self)
{
  for (guint i = 0; i < RC_SHAPE_MAX_SIZES; i++)
    {
      self->labels[i] = gtk_label_new (NULL);
      self->entries[i] = rc_length_entry_new ();
      gtk_label_set_xalign (GTK_LABEL (self->labels[i]), 0);
      gtk_widget_set_hexpand (self->entries[i], TRUE);
      gtk_entry_set_activates_default (GTK_ENTRY (self->entries[i]), TRUE);
      gtk_grid_attach (self->sizes_grid, self->labels[i], 0, (int)i, 1, 1);
      gtk_grid_attach (self->sizes_grid, self->entries[i], 1, (int)i, 1, 1);
      g_signal_connect_swapped (self->entries[i], "edited", G_CALLBACK (show), self);
      g_signal_connect_swapped (self->entries[i], "changed", G_CALLBACK (show), self);
    }
}

static void
on_add (RcShapeWindow *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRoom) room = build (self, &error);

  if (room == NULL || !rc_document_add_room_like (self->document, self->floor, room, &error))
    {
      gtk_label_set_text (self->fault_label, error->message);
      return;
    }
  g_signal_emit (self, signals[ADDED], 0);
  gtk_window_destroy (GTK_WINDOW (self));
}

static void
rc_shape_window_dispose (GObject *object)
{
  g_clear_object (&RC_SHAPE_WINDOW (object)->document);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_SHAPE_WINDOW);
  G_OBJECT_CLASS (rc_shape_window_parent_class)->dispose (object);
}

static void
rc_shape_window_class_init (RcShapeWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_shape_window_dispose;
  signals[ADDED] = g_signal_new ("added", RC_TYPE_SHAPE_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/shape-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcShapeWindow, shapes_box);
  gtk_widget_class_bind_template_child (widget_class, RcShapeWindow, sizes_grid);
  gtk_widget_class_bind_template_child (widget_class, RcShapeWindow, fault_label);
  gtk_widget_class_bind_template_child (widget_class, RcShapeWindow, picture);
  gtk_widget_class_bind_template_child (widget_class, RcShapeWindow, add_button);
  gtk_widget_class_bind_template_callback (widget_class, on_add);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rc_shape_window_init (RcShapeWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_shapes (self);
  add_sizes (self);
  gtk_drawing_area_set_draw_func (self->picture, draw_picture, self, NULL);
}

GtkWidget *
rc_shape_window_new (GtkWindow *parent, RcDocument *document, int floor)
{
  RcShapeWindow *self = g_object_new (RC_TYPE_SHAPE_WINDOW, "transient-for", parent, NULL);
  const RcJob   *job = rc_document_get_job (document);

  self->document = g_object_ref (document);
  self->floor = floor;
  for (guint i = 0; i < RC_SHAPE_MAX_SIZES; i++)
    {
      rc_length_entry_set_units (RC_LENGTH_ENTRY (self->entries[i]), rc_job_get_bare_unit (job),
                                 rc_job_get_length_style (job));
      rc_length_entry_clear (RC_LENGTH_ENTRY (self->entries[i]));
    }
  choose_shape (self, RC_SHAPE_RECTANGLE);
  gtk_widget_grab_focus (self->entries[0]);
  return GTK_WIDGET (self);
}
