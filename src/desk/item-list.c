#include "item-list.h"

#include "item-row.h"
#include "stop.h"

struct _RcItemList
{
  GtkBox parent_instance;

  GtkListView        *view;
  GtkSingleSelection *selection;
  GListStore         *rows;
  RcItemFill          fill;
  RcDocument         *document;
  gboolean            is_showing;
  guint               scroll_source; /* 0: none waits */
  gboolean            is_behind;     /* it was not on the screen when its rows changed */
};

G_DEFINE_FINAL_TYPE (RcItemList, rc_item_list, GTK_TYPE_BOX)

static gboolean
scroll_to_chosen (gpointer data)
{
  RcItemList *self = data;
  guint       at = gtk_single_selection_get_selected (self->selection);

  self->scroll_source = 0;
  if (at != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (GTK_WIDGET (self->view), "list.scroll-to-item", "u", at);
  return G_SOURCE_REMOVE;
}

/* A row that is new has its place only once the list has been laid out. */
static void
scroll_later (RcItemList *self)
{
  if (self->scroll_source == 0)
    self->scroll_source = g_idle_add_full (G_PRIORITY_LOW, scroll_to_chosen, self, NULL);
}

static void
show_choice (RcItemList *self)
{
  RcChoice choice = rc_document_get_choice (self->document);
  guint    at = GTK_INVALID_LIST_POSITION;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->rows)); i++)
    {
      g_autoptr (RcItem) row = g_list_model_get_item (G_LIST_MODEL (self->rows), i);
      if (rc_item_is_chosen (row, choice))
        {
          at = i;
          break;
        }
    }
  if (gtk_single_selection_get_selected (self->selection) == at)
    return;
  self->is_showing = TRUE;
  gtk_single_selection_set_selected (self->selection, at);
  self->is_showing = FALSE;
  if (at != GTK_INVALID_LIST_POSITION)
    scroll_later (self);
}

/* What the pointer is over on the floor or the rolls. */
static void
show_pointed (RcItemList *self)
{
  const GArray *pointed = rc_document_get_pointed (self->document);

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->rows)); i++)
    {
      g_autoptr (RcItem) row = g_list_model_get_item (G_LIST_MODEL (self->rows), i);
      rc_item_show_pointed (row, pointed);
    }
}

/* And the other way: the pieces of the row under the pointer are lit there. */
static void
action_point (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcItemList    *self = RC_ITEM_LIST (widget);
  gsize          n = 0;
  const guint32 *numbers = g_variant_get_fixed_array (parameter, &n, sizeof (guint32));
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (guint));

  if (n > 0)
    g_array_append_vals (pieces, numbers, (guint)n);
  if (self->document)
    rc_document_point_all (self->document, pieces);
}

/* Where it cannot be seen the rows can wait: with many rooms they hold up the hand. */
static void
show_rows (RcItemList *self)
{
  self->is_behind = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (self->is_behind)
    return;
  self->is_showing = TRUE;
  self->fill (self->rows, self->document);
  self->is_showing = FALSE;
  show_choice (self);
}

static void
on_selected (RcItemList *self)
{
  RcItem *row = gtk_single_selection_get_selected_item (self->selection);

  if (self->is_showing || row == NULL || self->document == NULL)
    return;
  if (rc_item_is_thing (row))
    rc_document_choose (self->document, rc_item_get_choice (row));
  else
    rc_document_point_all (self->document, rc_item_get_pieces (row));
}

static void
on_activate (RcItemList *self)
{
  RcItem *row = gtk_single_selection_get_selected_item (self->selection);

  on_selected (self);
  if (row && rc_item_is_thing (row))
    gtk_widget_activate_action (GTK_WIDGET (self), "bench.edit-chosen", NULL);
  else if (row)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.offer", NULL);
}

void
rc_item_list_set_fill (RcItemList *self, RcItemFill fill, const char *accessible_label)
{
  self->fill = fill;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, accessible_label, -1);
}

void
rc_item_list_set_document (RcItemList *self, RcDocument *document)
{
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "edited", G_CALLBACK (show_rows), self);
  g_signal_connect_swapped (document, "planned", G_CALLBACK (show_rows), self);
  g_signal_connect_swapped (document, "chosen", G_CALLBACK (show_choice), self);
  g_signal_connect_swapped (document, "pointed", G_CALLBACK (show_pointed), self);
  show_rows (self);
}

void
rc_item_list_focus (RcItemList *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static void
rc_item_list_map (GtkWidget *widget)
{
  RcItemList *self = RC_ITEM_LIST (widget);

  GTK_WIDGET_CLASS (rc_item_list_parent_class)->map (widget);
  if (self->is_behind && self->document)
    show_rows (self);
}

static void
rc_item_list_dispose (GObject *object)
{
  g_clear_handle_id (&RC_ITEM_LIST (object)->scroll_source, g_source_remove);
  rc_item_list_set_document (RC_ITEM_LIST (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_ITEM_LIST);
  G_OBJECT_CLASS (rc_item_list_parent_class)->dispose (object);
}

static void
rc_item_list_class_init (RcItemListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_item_list_dispose;
  widget_class->map = rc_item_list_map;
  g_type_ensure (RC_TYPE_ITEM);
  g_type_ensure (RC_TYPE_ITEM_ROW);
  g_type_ensure (RC_TYPE_STOP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/item-list.ui");
  gtk_widget_class_bind_template_child (widget_class, RcItemList, view);
  gtk_widget_class_bind_template_child (widget_class, RcItemList, selection);
  gtk_widget_class_bind_template_child (widget_class, RcItemList, rows);
  gtk_widget_class_bind_template_callback (widget_class, on_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
  gtk_widget_class_install_action (widget_class, "items.point", "au", action_point);
}

static void
rc_item_list_init (RcItemList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
