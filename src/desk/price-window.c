#include "price-window.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "length-entry.h"
#include "price-csv.h"
#include "price-item.h"
#include "rowcut-error.h"

struct _RcPriceWindow
{
  GtkWindow parent_instance;

  RcStore              *store;
  RcPriceBook          *book;
  GtkFileChooserNative *chooser;
  GPtrArray            *cells; /* of GtkListItem that show a field now; borrowed */

  GtkSearchEntry     *search;
  GtkColumnView      *view;
  GtkSingleSelection *selection;
  GtkLabel           *count_label, *note_label;
  GtkWidget          *renew_button, *remove_button;
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
  gtk_label_set_text (self->count_label, lines->len > 0 ? text : _ ("Nothing in the price book has all these words."));
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

static void
show_cells (RcPriceWindow *self)
{
  for (guint i = 0; i < self->cells->len; i++)
    show_cell (self, g_ptr_array_index (self->cells, i));
}

static void
show_other_cells (RcPriceWindow *self)
{
  for (guint i = 0; i < self->cells->len; i++)
    {
      GtkWidget *child = gtk_list_item_get_child (g_ptr_array_index (self->cells, i));

      if ((gtk_widget_get_state_flags (child) & GTK_STATE_FLAG_FOCUS_WITHIN) == 0)
        show_cell (self, g_ptr_array_index (self->cells, i));
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
    show_other_cells (self);
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
  if (line.price < 0)
    show_lines (self);
  else
    show_cells (self);
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

static void
on_entry_activate (GtkWidget *entry, GtkListItem *cell)
{
  commit_cell (entry, cell);
}

static void
on_entry_leave (GtkEventController *controller, GtkListItem *cell)
{
  commit_cell (gtk_event_controller_get_widget (controller), cell);
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

static GtkWidget *
new_entry (GtkListItem *cell, RcPriceField field, const char *title)
{
  GtkWidget          *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new (), *key = gtk_event_controller_key_new ();
  gboolean            is_number = field != RC_PRICE_DAY_FROM && field != RC_PRICE_DAY_TO;

  gtk_entry_set_has_frame (GTK_ENTRY (entry), FALSE);
  gtk_entry_set_alignment (GTK_ENTRY (entry), is_number ? 1 : 0);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), is_number ? 7 : 10);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), is_number ? 7 : 10);
  if (!is_number)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), field == RC_PRICE_DAY_FROM ? _ ("always") : _ ("open"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  g_signal_connect (entry, "activate", G_CALLBACK (on_entry_activate), cell);
  g_signal_connect (focus, "leave", G_CALLBACK (on_entry_leave), cell);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_entry_key), cell);
  gtk_widget_add_controller (entry, focus);
  gtk_widget_add_controller (entry, key);
  return entry;
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *cell, GtkColumnViewColumn *column)
{
  static const int WIDTHS[RC_N_PRICE_FIELDS]
      = { [RC_PRICE_NAME] = 24, [RC_PRICE_KIND] = 18, [RC_PRICE_SUPPLIER] = 16, [RC_PRICE_UNIT] = 5 };
  RcPriceField field = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (column), FIELD_KEY));
  GtkWidget   *child;

  g_object_set_data (G_OBJECT (cell), FIELD_KEY, GUINT_TO_POINTER (field));
  if (rc_price_field_is_editable (field))
    child = new_entry (cell, field, gtk_column_view_column_get_title (column));
  else
    {
      child = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (child), 0);
      gtk_label_set_ellipsize (GTK_LABEL (child), PANGO_ELLIPSIZE_END);
      gtk_label_set_width_chars (GTK_LABEL (child), WIDTHS[field]);
    }
  gtk_list_item_set_child (cell, child);
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
  const char *const titles[RC_N_PRICE_FIELDS]
      = { _ ("Goods or work"), _ ("Kind"),   _ ("Supplier"),      _ ("Unit"),      _ ("Cost"),
          _ ("Price"),         _ ("Margin"), _ ("From quantity"), _ ("First day"), _ ("Last day") };

  for (RcPriceField field = 0; field < RC_N_PRICE_FIELDS; field++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_autoptr (GtkColumnViewColumn) column = gtk_column_view_column_new (titles[field], factory);

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

static int
get_chosen_price (RcPriceWindow *self)
{
  RcPriceItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? rc_price_item_get_line (item).price : -1;
}

static void
on_chosen (RcPriceWindow *self)
{
  gboolean has_price = get_chosen_price (self) >= 0;

  gtk_widget_set_sensitive (self->renew_button, has_price);
  gtk_widget_set_sensitive (self->remove_button, has_price);
}

static void
renew (RcPriceWindow *self)
{
  g_autofree char *today = rc_clock_dup_today ();
  guint            position = gtk_single_selection_get_selected (self->selection), price;
  GError          *error = NULL;

  RcPriceBook *edited = rc_price_edit_renew (self->book, (guint)get_chosen_price (self), today, &price, &error);
  if (!take (self, edited, error))
    return;
  show_lines (self);
  gtk_single_selection_set_selected (self->selection, position + 1);
}

static void
remove_price (RcPriceWindow *self)
{
  if (take (self, rc_price_edit_remove (self->book, (guint)get_chosen_price (self)), NULL))
    show_lines (self);
}

/* --- lists in and out --- */

static gboolean
import (RcPriceWindow *self, const char *path)
{
  g_autofree char *csv = NULL, *name = g_path_get_basename (path);
  g_autoptr (RcPriceBook) read = NULL;
  RcPriceBook *edited;
  GError      *error = NULL;

  if (!g_file_get_contents (path, &csv, NULL, &error)
      || (read = rc_price_csv_parse (csv, name, &self->book->currency, &error)) == NULL)
    return take (self, NULL, error);
  edited = rc_price_book_copy (self->book);
  rc_price_book_take_list (edited, read);
  if (!take (self, edited, NULL))
    return FALSE;
  show_lines (self);
  g_autofree char *told = g_strdup_printf (_ ("Taken from %s"), path);
  tell (self, told);
  return TRUE;
}

static void export(RcPriceWindow *self, const char *path)
{
  g_autofree char *csv = rc_price_csv_format (self->book), *told = NULL;
  g_autoptr (GError) error = NULL;

  if (g_file_set_contents (path, csv, -1, &error))
    told = g_strdup_printf (_ ("Written to %s"), path);
  tell (self, error != NULL ? error->message : told);
}

static void
on_file_chosen (GtkNativeDialog *dialog, int response, RcPriceWindow *self)
{
  GtkFileChooser *chooser = GTK_FILE_CHOOSER (dialog);
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (chooser) : NULL;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  gboolean         reads = gtk_file_chooser_get_action (chooser) == GTK_FILE_CHOOSER_ACTION_OPEN;

  g_clear_object (&self->chooser);
  if (path != NULL && reads)
    import (self, path);
  else if (path != NULL)
    export(self, path);
}

/* The dialog lives as long as the window holds it: until its response. */
static void
choose_file (RcPriceWindow *self, const char *title, GtkFileChooserAction action, const char *accept)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  if (self->chooser != NULL || self->book == NULL)
    return;
  self->chooser = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action, accept, _ ("_Cancel"));
  gtk_file_filter_set_name (filter, _ ("Price lists (CSV)"));
  gtk_file_filter_add_pattern (filter, "*.csv");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  if (action == GTK_FILE_CHOOSER_ACTION_SAVE)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), "prices.csv");
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (on_file_chosen), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
choose_import (RcPriceWindow *self)
{
  choose_file (self, _ ("Take a price list"), GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"));
}

static void
choose_export (RcPriceWindow *self)
{
  choose_file (self, _ ("Write a price list"), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"));
}

guint
rc_price_window_get_n_lines (RcPriceWindow *self)
{
  GListModel *model = gtk_single_selection_get_model (self->selection);

  return model != NULL ? g_list_model_get_n_items (model) : 0;
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
  RcPriceWindow *self = RC_PRICE_WINDOW (object);

  g_clear_object (&self->chooser);
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
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/price-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, search);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, view);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, selection);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, count_label);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, note_label);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, renew_button);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, remove_button);
  gtk_widget_class_bind_template_callback (widget_class, show_lines);
  gtk_widget_class_bind_template_callback (widget_class, on_chosen);
  gtk_widget_class_bind_template_callback (widget_class, renew);
  gtk_widget_class_bind_template_callback (widget_class, remove_price);
  gtk_widget_class_bind_template_callback (widget_class, choose_import);
  gtk_widget_class_bind_template_callback (widget_class, choose_export);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_price_window_init (RcPriceWindow *self)
{
  self->cells = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  add_columns (self);
}
