#include "price-table.h"

#include <glib/gi18n-lib.h>

#include "length-entry.h"
#include "price-cell.h"
#include "price-item.h"

struct _RcPriceTable
{
  GtkBox parent_instance;

  RcBookKeeper       *keeper;
  GPtrArray          *cells; /* of GtkListItem that show a field now; borrowed */
  GtkColumnView      *view;
  GtkSingleSelection *selection;
  char               *words; /* of the lines shown */
};

G_DEFINE_FINAL_TYPE (RcPriceTable, rc_price_table, GTK_TYPE_BOX)

enum
{
  CHOSEN,
  TOLD,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define FIELD_KEY "rowcut-field"

static const RcPriceBook *
get_book (RcPriceTable *self)
{
  return rc_book_keeper_get_book (self->keeper, NULL);
}

static GListModel *
get_model (RcPriceTable *self)
{
  return gtk_single_selection_get_model (self->selection);
}

static void
on_chosen (RcPriceTable *self)
{
  g_signal_emit (self, signals[CHOSEN], 0);
}

void
rc_price_table_show (RcPriceTable *self, const char *words)
{
  g_autoptr (GListStore) model = g_list_store_new (RC_TYPE_PRICE_ITEM);
  g_autoptr (GArray) lines = NULL;
  char *before = self->words; /* which `words` may be */

  self->words = g_strdup (words);
  g_free (before);
  if (get_book (self) == NULL)
    return;
  lines = rc_price_edit_find_lines (get_book (self), self->words);
  for (guint i = 0; i < lines->len; i++)
    {
      g_autoptr (RcPriceItem) item = rc_price_item_new (g_array_index (lines, RcPriceLine, i));
      g_list_store_append (model, item);
    }
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (model));
}

guint
rc_price_table_get_n_lines (RcPriceTable *self)
{
  return get_model (self) != NULL ? g_list_model_get_n_items (get_model (self)) : 0;
}

RcPriceLine
rc_price_table_get_chosen (RcPriceTable *self)
{
  RcPriceItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? rc_price_item_get_line (item) : (RcPriceLine){ NULL, -1 };
}

void
rc_price_table_step (RcPriceTable *self, guint by)
{
  gtk_single_selection_set_selected (self->selection, gtk_single_selection_get_selected (self->selection) + by);
}

void
rc_price_table_focus (RcPriceTable *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

/* --- cells --- */

static RcPriceField
get_field (GtkListItem *cell)
{
  return GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (cell), FIELD_KEY));
}

static void
show_cell (RcPriceTable *self, GtkListItem *cell)
{
  RcPriceItem     *item = gtk_list_item_get_item (cell);
  GtkWidget       *child = gtk_list_item_get_child (cell);
  g_autofree char *text = rc_price_edit_dup_text (get_book (self), rc_price_item_get_line (item), get_field (cell));

  if (GTK_IS_LABEL (child))
    {
      gtk_label_set_text (GTK_LABEL (child), text);
      return;
    }
  rc_entry_show_fault (child, NULL);
  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (child)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (child), text);
}

/* `typed_too`: also the one that the keyboard is in. */
static void
show_cells (RcPriceTable *self, gboolean typed_too)
{
  for (guint i = 0; i < self->cells->len; i++)
    {
      GtkListItem *cell = g_ptr_array_index (self->cells, i);

      if (typed_too || (gtk_widget_get_state_flags (gtk_list_item_get_child (cell)) & GTK_STATE_FLAG_FOCUS_WITHIN) == 0)
        show_cell (self, cell);
    }
}

/* Whether the lines of the book are those shown, which then know their prices' places. */
static gboolean
has_lines_shown (RcPriceTable *self)
{
  g_autoptr (GArray) lines = rc_price_edit_find_lines (get_book (self), self->words);
  GListModel *model = get_model (self);

  if (rc_price_table_get_n_lines (self) != lines->len)
    return FALSE;
  for (guint i = 0; i < lines->len; i++)
    {
      g_autoptr (RcPriceItem) item = g_list_model_get_item (model, i);
      const RcPriceLine *line = &g_array_index (lines, RcPriceLine, i);

      if (!g_str_equal (rc_price_item_get_line (item).item, line->item))
        return FALSE;
      rc_price_item_set_price (item, line->price);
    }
  return TRUE;
}

static void
on_changed (RcPriceTable *self, gboolean by_others)
{
  if (has_lines_shown (self))
    show_cells (self, !by_others); /* what is being typed stays */
  else
    rc_price_table_show (self, self->words);
  on_chosen (self);
}

/* --- typing --- */

static gboolean
type (RcPriceTable *self, RcPriceItem *item, RcPriceField field, const char *text, GError **error)
{
  RcPriceLine      line = rc_price_item_get_line (item);
  g_autofree char *before = rc_price_edit_dup_text (get_book (self), line, field);
  g_autofree char *name = rc_price_edit_dup_text (get_book (self), line, RC_PRICE_NAME);
  g_autofree char *doing = g_strdup_printf ("%s, %s", name, rc_price_cell_get_title (field));
  GError          *fault = NULL;
  RcPriceBook     *edited;

  if (g_str_equal (before, text))
    return TRUE;
  edited = rc_price_edit_set (get_book (self), line, field, text, &fault);
  if (edited != NULL)
    rc_book_keeper_take (self->keeper, edited, doing, &fault);
  g_signal_emit (self, signals[TOLD], 0, fault != NULL ? fault->message : NULL);
  if (fault == NULL)
    return TRUE;
  g_propagate_error (error, fault);
  return FALSE;
}

gboolean
rc_price_table_type (RcPriceTable *self, guint position, RcPriceField field, const char *text)
{
  g_autoptr (RcPriceItem) item = g_list_model_get_item (get_model (self), position);

  return type (self, item, field, text, NULL);
}

static RcPriceTable *
get_table (GtkWidget *entry)
{
  return RC_PRICE_TABLE (gtk_widget_get_ancestor (entry, RC_TYPE_PRICE_TABLE));
}

static void
commit_cell (GtkWidget *entry, GtkListItem *cell)
{
  RcPriceTable *self = get_table (entry);
  g_autoptr (GError) error = NULL;

  if (self == NULL || gtk_list_item_get_item (cell) == NULL)
    return;
  if (!type (self, gtk_list_item_get_item (cell), get_field (cell), gtk_editable_get_text (GTK_EDITABLE (entry)),
             &error))
    rc_entry_show_fault (entry, error->message);
}

static gboolean
on_entry_key (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, GtkListItem *cell)
{
  GtkWidget *entry = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));

  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  show_cell (get_table (entry), cell);
  return GDK_EVENT_STOP;
}

/* What the buttons do is done to the line that the keyboard is in. */
static void
on_entry_enter (GtkEventController *controller, GtkListItem *cell)
{
  RcPriceTable *self = get_table (gtk_event_controller_get_widget (controller));

  gtk_single_selection_set_selected (self->selection, gtk_list_item_get_position (cell));
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *cell, GtkColumnViewColumn *column)
{
  RcPriceField field = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (column), FIELD_KEY));
  GtkWidget   *child = rc_price_cell_new (field);

  g_object_set_data (G_OBJECT (cell), FIELD_KEY, GUINT_TO_POINTER (field));
  gtk_list_item_set_child (cell, child);
  if (!rc_price_field_is_editable (field))
    return;
  GtkEventController *key = gtk_event_controller_key_new (), *focus = gtk_event_controller_focus_new ();
  g_signal_connect (child, "activate", G_CALLBACK (commit_cell), cell);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_entry_key), cell);
  g_signal_connect (focus, "enter", G_CALLBACK (on_entry_enter), cell);
  gtk_widget_add_controller (child, key);
  gtk_widget_add_controller (child, focus);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *cell, RcPriceTable *self)
{
  g_ptr_array_add (self->cells, cell);
  show_cell (self, cell);
}

static void
on_unbind (GtkSignalListItemFactory *factory, GtkListItem *cell, RcPriceTable *self)
{
  g_ptr_array_remove_fast (self->cells, cell);
}

static void
add_columns (RcPriceTable *self)
{
  for (RcPriceField field = 0; field < RC_N_PRICE_FIELDS; field++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_autoptr (GtkColumnViewColumn) column = gtk_column_view_column_new (rc_price_cell_get_title (field), factory);

      g_object_set_data (G_OBJECT (column), FIELD_KEY, GUINT_TO_POINTER (field));
      g_signal_connect (factory, "setup", G_CALLBACK (on_setup), column);
      g_signal_connect (factory, "bind", G_CALLBACK (on_bind), self);
      g_signal_connect (factory, "unbind", G_CALLBACK (on_unbind), self);
      gtk_column_view_column_set_expand (column, field == RC_PRICE_NAME);
      gtk_column_view_column_set_resizable (column, TRUE);
      gtk_column_view_append_column (self->view, column);
    }
}

void
rc_price_table_set_keeper (RcPriceTable *self, RcBookKeeper *keeper)
{
  self->keeper = g_object_ref (keeper);
  g_signal_connect_object (keeper, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
}

static void
rc_price_table_finalize (GObject *object)
{
  RcPriceTable *self = RC_PRICE_TABLE (object);

  g_clear_object (&self->keeper);
  g_ptr_array_unref (self->cells);
  g_free (self->words);
  G_OBJECT_CLASS (rc_price_table_parent_class)->finalize (object);
}

static void
rc_price_table_class_init (RcPriceTableClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_price_table_finalize;
  signals[CHOSEN]
      = g_signal_new ("chosen", RC_TYPE_PRICE_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[TOLD] = g_signal_new ("told", RC_TYPE_PRICE_TABLE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
}

static void
rc_price_table_init (RcPriceTable *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->cells = g_ptr_array_new ();
  self->selection = gtk_single_selection_new (NULL);
  self->view = GTK_COLUMN_VIEW (gtk_column_view_new (GTK_SELECTION_MODEL (self->selection)));
  gtk_column_view_set_show_row_separators (self->view, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->view), "data-table");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Prices"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (self->view));
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_widget_set_hexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (self), scrolled);
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (on_chosen), self, G_CONNECT_SWAPPED);
  add_columns (self);
}
