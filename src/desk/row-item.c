#include "row-item.h"

struct _RcRowItem
{
  GObject parent_instance;

  gpointer       value;
  GDestroyNotify free_value;
};

G_DEFINE_FINAL_TYPE (RcRowItem, rc_row_item, G_TYPE_OBJECT)

RcRowItem *
rc_row_item_new (gpointer value, GDestroyNotify free_value)
{
  RcRowItem *self = g_object_new (RC_TYPE_ROW_ITEM, NULL);

  self->value = value;
  self->free_value = free_value;
  return self;
}

gpointer
rc_row_item_get (RcRowItem *self)
{
  return self->value;
}

GListModel *
rc_row_item_new_list (GPtrArray *values, GDestroyNotify free_value)
{
  GListStore *list = g_list_store_new (RC_TYPE_ROW_ITEM);

  g_ptr_array_set_free_func (values, NULL);
  for (guint i = 0; i < values->len; i++)
    {
      g_autoptr (RcRowItem) item = rc_row_item_new (g_ptr_array_index (values, i), free_value);
      g_list_store_append (list, item);
    }
  g_ptr_array_unref (values);
  return G_LIST_MODEL (list);
}

void
rc_row_item_turn_round (GPtrArray *values)
{
  for (guint i = 0, k = values->len; i + 1 < k; i++)
    {
      gpointer one = values->pdata[i];

      values->pdata[i] = values->pdata[--k];
      values->pdata[k] = one;
    }
}

gpointer
rc_row_item_get_chosen (GtkSingleSelection *selection)
{
  RcRowItem *item = gtk_single_selection_get_selected_item (selection);

  return item != NULL ? item->value : NULL;
}

static void
rc_row_item_finalize (GObject *object)
{
  RcRowItem *self = RC_ROW_ITEM (object);

  if (self->free_value != NULL)
    self->free_value (self->value);
  G_OBJECT_CLASS (rc_row_item_parent_class)->finalize (object);
}

static void
rc_row_item_class_init (RcRowItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_row_item_finalize;
}

static void
rc_row_item_init (RcRowItem *self)
{
}

/* --- columns --- */

typedef struct
{
  RcColumn column;
  gpointer data;
} TextColumn;

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *cell, TextColumn *self)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), self->column.is_number ? 1 : 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), self->column.width_chars);
  if (self->column.expands) /* where room is short it gives way first */
    {
      gtk_label_set_width_chars (GTK_LABEL (label), self->column.width_chars / 2);
      gtk_label_set_max_width_chars (GTK_LABEL (label), self->column.width_chars);
    }
  gtk_widget_add_css_class (label, self->column.is_number ? "number" : "text");
  gtk_list_item_set_child (cell, label);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *cell, TextColumn *self)
{
  GtkWidget       *label = gtk_list_item_get_child (cell);
  g_autofree char *text = self->column.text (rc_row_item_get (gtk_list_item_get_item (cell)), self->data);

  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (label, text);
}

static void
free_column (gpointer column, GClosure *closure)
{
  g_free (column);
}

void
rc_row_item_add_column (GtkColumnView *view, const RcColumn *column, gpointer data)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) shown = gtk_column_view_column_new (column->title, factory);
  TextColumn *self = g_new0 (TextColumn, 1);

  self->column = *column;
  self->data = data;
  g_signal_connect_data (factory, "setup", G_CALLBACK (on_setup), self, free_column, 0);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), self);
  gtk_column_view_column_set_expand (shown, column->expands);
  gtk_column_view_column_set_resizable (shown, TRUE);
  gtk_column_view_append_column (view, shown);
}
