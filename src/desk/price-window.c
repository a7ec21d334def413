#include "price-window.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "goods-form.h"
#include "length-entry.h"
#include "price-cell.h"
#include "price-csv.h"
#include "price-item.h"
#include "price-list-dialog.h"
#include "rowcut-error.h"

struct _RcPriceWindow
{
  GtkWindow parent_instance;

  RcStore     *store;
  RcPriceBook *book;
  GPtrArray   *cells; /* of GtkListItem that show a field now; borrowed */

  GtkSearchEntry     *search;
  GtkColumnView      *view;
  GtkSingleSelection *selection;
  GtkLabel           *count_label, *note_label;
  GtkWidget          *renew_button, *remove_button, *form_box;
  RcGoodsForm        *form;
};

G_DEFINE_FINAL_TYPE (RcPriceWindow, rc_price_window, GTK_TYPE_WINDOW)

static guint changed_signal;

#define FIELD_KEY "rowcut-field"

static void
tell (RcPriceWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

/* --- the list --- */

static void
show_lines (RcPriceWindow *self)
{
  g_autoptr (GListStore) model = g_list_store_new (RC_TYPE_PRICE_ITEM);
  g_autoptr (GArray) lines = NULL;

  if (self->book == NULL)
    return;
  lines = rc_price_edit_find_lines (self->book, gtk_editable_get_text (GTK_EDITABLE (self->search)));
  for (guint i = 0; i < lines->len; i++)
    {
      g_autoptr (RcPriceItem) item = rc_price_item_new (g_array_index (lines, RcPriceLine, i));
      g_list_store_append (model, item);
    }
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (model));
  g_autofree char *count = g_strdup_printf (ngettext ("%u price", "%u prices", lines->len), lines->len);
  g_autofree char *text = g_strdup_printf ("%s, %s", count, self->book->currency.code);
  gtk_label_set_text (self->count_label, lines->len > 0 ? text
                                         : self->book->goods->len + self->book->prices->len == 0
                                             ? _ ("The price book is empty: add goods, or take a list.")
                                             : _ ("Nothing in the price book has all these words."));
}

/* What the store holds now. FALSE, told, when it cannot be read. */
static gboolean
load (RcPriceWindow *self)
{
  g_autoptr (GError) error = NULL;
  RcPriceBook *book = rc_store_load_price_book (self->store, &error);

  if (book == NULL)
    {
      tell (self, error->message);
      return FALSE;
    }
  g_clear_pointer (&self->book, rc_price_book_free);
  self->book = book;
  return TRUE;
}

/* Takes the edited book (transfer full; NULL: refused, `error` says why). */
static gboolean
take (RcPriceWindow *self, RcPriceBook *edited, GError *error)
{
  g_autoptr (RcPriceBook) book = edited;
  g_autoptr (GError) fault = error;

  if (book != NULL && rc_store_save_price_book (self->store, book, &fault))
    {
      g_clear_pointer (&self->book, rc_price_book_free);
      self->book = g_steal_pointer (&book);
      tell (self, NULL);
      g_signal_emit (self, changed_signal, 0);
      return TRUE;
    }
  g_assert (fault != NULL); /* a book that was not made, or not saved, comes with the reason */
  tell (self, fault->message);
  /* Somebody else was faster: their prices are shown, to be changed again. */
  if (g_error_matches (fault, RC_ERROR, RC_ERROR_CONFLICT) && load (self))
    show_lines (self);
  return FALSE;
}

/* --- what is chosen --- */

/* Its item is borrowed from the list; NULL: none is chosen. */
static RcPriceLine
get_chosen (RcPriceWindow *self)
{
  RcPriceItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? rc_price_item_get_line (item) : (RcPriceLine){ NULL, -1 };
}

static const RcGoods *
get_chosen_goods (RcPriceWindow *self)
{
  const char *item = get_chosen (self).item;

  return item != NULL ? rc_price_book_find_goods (self->book, item) : NULL;
}

static void
on_chosen (RcPriceWindow *self)
{
  RcPriceLine line = get_chosen (self);

  gtk_widget_set_sensitive (self->renew_button, line.price >= 0);
  gtk_widget_set_sensitive (self->remove_button, line.item != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "price.goods", get_chosen_goods (self) != NULL);
}

/* --- cells --- */

static RcPriceField
get_field (GtkListItem *cell)
{
  return GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (cell), FIELD_KEY));
}

static void
show_cell (RcPriceWindow *self, GtkListItem *cell)
{
  RcPriceItem     *item = gtk_list_item_get_item (cell);
  GtkWidget       *child = gtk_list_item_get_child (cell);
  g_autofree char *text = rc_price_edit_dup_text (self->book, rc_price_item_get_line (item), get_field (cell));

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
show_cells (RcPriceWindow *self, gboolean typed_too)
{
  for (guint i = 0; i < self->cells->len; i++)
    {
      GtkListItem *cell = g_ptr_array_index (self->cells, i);

      if (typed_too || (gtk_widget_get_state_flags (gtk_list_item_get_child (cell)) & GTK_STATE_FLAG_FOCUS_WITHIN) == 0)
        show_cell (self, cell);
    }
}

void
rc_price_window_follow (RcPriceWindow *self)
{
  g_autoptr (RcPriceBook) before = self->book != NULL ? rc_price_book_copy (self->book) : NULL;
  g_autofree char *csv = before != NULL ? rc_price_csv_format (before) : NULL, *now = NULL;

  if (!load (self))
    return;
  now = rc_price_csv_format (self->book);
  if (g_strcmp0 (csv, now) == 0)
    return;
  if (before != NULL && rc_price_edit_have_same_lines (before, self->book))
    show_cells (self, FALSE);
  else
    show_lines (self);
  tell (self, _ ("Another program has changed the prices; they are shown as they are now."));
  g_signal_emit (self, changed_signal, 0);
}

static gboolean
type (RcPriceWindow *self, RcPriceItem *item, RcPriceField field, const char *text)
{
  RcPriceLine      line = rc_price_item_get_line (item);
  g_autofree char *before = rc_price_edit_dup_text (self->book, line, field);
  GError          *error = NULL;

  if (g_str_equal (before, text))
    return TRUE;
  RcPriceBook *edited = rc_price_edit_set (self->book, line, field, text, &error);
  if (!take (self, edited, error))
    return FALSE;
  rc_price_item_set_price (item, line.price >= 0 ? line.price : (int)self->book->prices->len - 1);
  on_chosen (self);
  show_cells (self, TRUE);
  return TRUE;
}

static void
commit_cell (GtkWidget *entry, GtkListItem *cell)
{
  RcPriceWindow *self = RC_PRICE_WINDOW (gtk_widget_get_root (entry));

  if (self == NULL || gtk_list_item_get_item (cell) == NULL)
    return;
  if (!type (self, gtk_list_item_get_item (cell), get_field (cell), gtk_editable_get_text (GTK_EDITABLE (entry))))
    rc_entry_show_fault (entry, gtk_label_get_text (self->note_label));
}

static gboolean
on_entry_key (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, GtkListItem *cell)
{
  GtkWidget *entry = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));

  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  show_cell (RC_PRICE_WINDOW (gtk_widget_get_root (entry)), cell);
  return GDK_EVENT_STOP;
}

/* What the buttons do is done to the line that the keyboard is in. */
static void
on_entry_enter (GtkEventController *controller, GtkListItem *cell)
{
  RcPriceWindow *self = RC_PRICE_WINDOW (gtk_widget_get_root (gtk_event_controller_get_widget (controller)));

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
on_bind (GtkSignalListItemFactory *factory, GtkListItem *cell, RcPriceWindow *self)
{
  g_ptr_array_add (self->cells, cell);
  show_cell (self, cell);
}

static void
on_unbind (GtkSignalListItemFactory *factory, GtkListItem *cell, RcPriceWindow *self)
{
  g_ptr_array_remove_fast (self->cells, cell);
}

static void
add_columns (RcPriceWindow *self)
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

/* --- what the buttons do --- */

static void
renew (RcPriceWindow *self)
{
  g_autofree char *today = rc_clock_dup_today ();
  guint            position = gtk_single_selection_get_selected (self->selection), price;
  GError          *error = NULL;

  RcPriceBook *edited = rc_price_edit_renew (self->book, (guint)get_chosen (self).price, today, &price, &error);
  if (!take (self, edited, error))
    return;
  show_lines (self);
  gtk_single_selection_set_selected (self->selection, position + 1);
}

/* The last price first, then the goods themselves. */
static void
remove_line (RcPriceWindow *self)
{
  RcPriceLine  line = get_chosen (self);
  RcPriceBook *edited = line.price >= 0 ? rc_price_edit_remove (self->book, (guint)line.price)
                                        : rc_price_edit_remove_goods (self->book, line.item);

  if (take (self, edited, NULL))
    show_lines (self);
}

/* --- goods --- */

static void
open_form (RcPriceWindow *self, const RcGoods *goods)
{
  if (self->book == NULL)
    return;
  tell (self, NULL);
  gtk_widget_set_visible (self->form_box, TRUE);
  rc_goods_form_open (self->form, self->book, goods);
}

static void
close_form (RcPriceWindow *self)
{
  gtk_widget_set_visible (self->form_box, FALSE);
  tell (self, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static void
act_on_goods (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcPriceWindow *self = RC_PRICE_WINDOW (widget);

  open_form (self, g_str_equal (name, "price.goods") ? get_chosen_goods (self) : NULL);
}

static void
find (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_widget_grab_focus (GTK_WIDGET (RC_PRICE_WINDOW (widget)->search));
}

/* New goods are looked for by their name, so that their line is there to be priced. */
static void
keep_goods (RcPriceWindow *self)
{
  const RcGoods   *before = rc_goods_form_get_before (self->form);
  GError          *error = NULL;
  g_autofree char *id = NULL;
  g_autoptr (RcGoods) goods = rc_goods_form_read (self->form, &error);
  RcPriceBook *edited = goods != NULL ? rc_price_edit_put_goods (self->book, before, goods, &id, &error) : NULL;

  if (!take (self, edited, error))
    return;
  close_form (self);
  if (before != NULL)
    show_cells (self, TRUE);
  else
    gtk_editable_set_text (GTK_EDITABLE (self->search), rc_price_book_find_goods (self->book, id)->name);
}

/* --- lists in and out --- */

static void
take_list (gpointer window, GFile *file)
{
  RcPriceWindow   *self = window;
  g_autofree char *path = g_file_get_path (file), *told = NULL;
  GError          *error = NULL;
  RcPriceBook     *edited;

  if (path == NULL)
    return;
  edited = rc_price_list_read (self->book, path, &error);
  if (!take (self, edited, error))
    return;
  told = g_strdup_printf (_ ("Taken from %s"), path);
  show_lines (self);
  tell (self, told);
}

static void
write_list (gpointer window, GFile *file)
{
  RcPriceWindow   *self = window;
  g_autofree char *path = g_file_get_path (file), *told = NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return;
  told = g_strdup_printf (_ ("Written to %s"), path);
  tell (self, rc_price_list_write (self->book, path, &error) ? told : error->message);
}

static void
choose_import (RcPriceWindow *self)
{
  if (self->book != NULL)
    rc_price_list_dialog_open (GTK_WINDOW (self), FALSE, take_list);
}

static void
choose_export (RcPriceWindow *self)
{
  if (self->book != NULL)
    rc_price_list_dialog_open (GTK_WINDOW (self), TRUE, write_list);
}

guint
rc_price_window_get_n_lines (RcPriceWindow *self)
{
  GListModel *model = gtk_single_selection_get_model (self->selection);

  return model != NULL ? g_list_model_get_n_items (model) : 0;
}

const char *
rc_price_window_get_told (RcPriceWindow *self)
{
  return gtk_label_get_text (self->note_label);
}

gboolean
rc_price_window_type (RcPriceWindow *self, guint position, RcPriceField field, const char *text)
{
  g_autoptr (RcPriceItem) item = g_list_model_get_item (gtk_single_selection_get_model (self->selection), position);

  return type (self, item, field, text);
}

GtkWidget *
rc_price_window_new (GtkWindow *parent, RcStore *store)
{
  RcPriceWindow *self = g_object_new (RC_TYPE_PRICE_WINDOW, "transient-for", parent, NULL);

  self->store = store;
  if (load (self))
    show_lines (self);
  return GTK_WIDGET (self);
}

static void
rc_price_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_PRICE_WINDOW);
  G_OBJECT_CLASS (rc_price_window_parent_class)->dispose (object);
}

static void
rc_price_window_finalize (GObject *object)
{
  RcPriceWindow *self = RC_PRICE_WINDOW (object);

  g_clear_pointer (&self->book, rc_price_book_free);
  g_ptr_array_unref (self->cells);
  G_OBJECT_CLASS (rc_price_window_parent_class)->finalize (object);
}

static void
rc_price_window_class_init (RcPriceWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_price_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_price_window_finalize;
  changed_signal
      = g_signal_new ("changed", RC_TYPE_PRICE_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (RC_TYPE_GOODS_FORM);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/price-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, search);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, view);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, selection);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, count_label);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, note_label);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, renew_button);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, remove_button);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, form_box);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, form);
  gtk_widget_class_bind_template_callback (widget_class, show_lines);
  gtk_widget_class_bind_template_callback (widget_class, on_chosen);
  gtk_widget_class_bind_template_callback (widget_class, renew);
  gtk_widget_class_bind_template_callback (widget_class, remove_line);
  gtk_widget_class_bind_template_callback (widget_class, keep_goods);
  gtk_widget_class_bind_template_callback (widget_class, close_form);
  gtk_widget_class_bind_template_callback (widget_class, choose_import);
  gtk_widget_class_bind_template_callback (widget_class, choose_export);
  gtk_widget_class_install_action (widget_class, "price.add-goods", NULL, act_on_goods);
  gtk_widget_class_install_action (widget_class, "price.goods", NULL, act_on_goods);
  gtk_widget_class_install_action (widget_class, "price.find", NULL, find);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_n, GDK_CONTROL_MASK, "price.add-goods", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F2, 0, "price.goods", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_f, GDK_CONTROL_MASK, "price.find", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_price_window_init (RcPriceWindow *self)
{
  self->cells = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  on_chosen (self); /* nothing, which no signal tells */
  add_columns (self);
}
