#include "price-window.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "goods-form.h"
#include "price-csv.h"
#include "price-list-dialog.h"
#include "price-table.h"
#include "rowcut-error.h"
#include "supplier-page.h"

struct _RcPriceWindow
{
  GtkWindow parent_instance;

  RcBookKeeper *keeper;

  GtkSearchEntry *search;
  RcPriceTable   *table;
  GtkLabel       *count_label, *note_label;
  GtkWidget      *renew_button, *remove_button, *form_box, *note_box, *undo_button;
  RcGoodsForm    *form;
  GtkStack       *pages;
  RcSupplierPage *suppliers;
};

G_DEFINE_FINAL_TYPE (RcPriceWindow, rc_price_window, GTK_TYPE_WINDOW)

/* What was done can be taken back with the button beside. */
static void
tell_done (RcPriceWindow *self, const char *text, gboolean can_undo)
{
  gtk_label_set_text (self->note_label, text != NULL ? text : "");
  gtk_widget_set_visible (self->undo_button, can_undo);
  gtk_widget_set_visible (self->note_box, text != NULL);
}

static void
tell (RcPriceWindow *self, const char *text)
{
  tell_done (self, text, FALSE);
}

/* NULL: it cannot be read. */
static const RcPriceBook *
get_book (RcPriceWindow *self)
{
  return rc_book_keeper_get_book (self->keeper, NULL);
}

/* --- the list --- */

static void
show_count (RcPriceWindow *self)
{
  const RcPriceBook *book = get_book (self);
  guint              n = rc_price_table_get_n_lines (self->table);

  if (book == NULL)
    return;
  g_autofree char *count = g_strdup_printf (ngettext ("%u price", "%u prices", n), n);
  g_autofree char *text = g_strdup_printf ("%s, %s", count, book->currency.code);
  gtk_label_set_text (self->count_label, n > 0 ? text
                                         : book->goods->len + book->prices->len == 0
                                             ? _ ("The price book is empty: add goods, or take a list.")
                                             : _ ("Nothing in the price book has all these words."));
}

static void
show_lines (RcPriceWindow *self)
{
  rc_price_table_show (self->table, gtk_editable_get_text (GTK_EDITABLE (self->search)));
  show_count (self);
}

/* Takes the edited book (transfer full; NULL: refused, `error` (transfer full) says why). */
static gboolean
take (RcPriceWindow *self, RcPriceBook *edited, GError *error, const char *doing)
{
  g_autoptr (GError) fault = error;
  gboolean is_taken = edited != NULL && rc_book_keeper_take (self->keeper, edited, doing, &fault);

  g_assert (is_taken || fault != NULL); /* each of the two that may refuse says why */
  tell (self, is_taken ? NULL : fault->message);
  return is_taken;
}

/* --- what is chosen --- */

static const RcGoods *
get_chosen_goods (RcPriceWindow *self)
{
  const char *item = rc_price_table_get_chosen (self->table).item;

  return item != NULL ? rc_price_book_find_goods (get_book (self), item) : NULL;
}

static void
on_chosen (RcPriceWindow *self)
{
  RcPriceLine line = rc_price_table_get_chosen (self->table);

  gtk_widget_set_sensitive (self->renew_button, line.price >= 0);
  gtk_widget_set_sensitive (self->remove_button, line.item != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "price.goods", get_chosen_goods (self) != NULL);
}

static void
on_changed (RcPriceWindow *self, gboolean by_others)
{
  show_count (self);
  if (by_others)
    tell (self, _ ("Another program has changed the prices; they are shown as they are now."));
}

/* --- what the buttons do --- */

static void
renew (RcPriceWindow *self)
{
  g_autofree char *today = rc_clock_dup_today ();
  guint            price;
  GError          *error = NULL;

  RcPriceBook *edited = rc_price_edit_renew (get_book (self), (guint)rc_price_table_get_chosen (self->table).price,
                                             today, &price, &error);
  if (take (self, edited, error, _ ("New price from today")))
    rc_price_table_step (self->table, 1);
}

/* The last price first, then the goods themselves. */
static void
remove_line (RcPriceWindow *self)
{
  RcPriceLine      line = rc_price_table_get_chosen (self->table);
  g_autofree char *name = rc_price_edit_dup_text (get_book (self), line, RC_PRICE_NAME);
  g_autofree char *done = line.price >= 0 ? g_strdup_printf (_ ("A price of “%s” is taken away."), name)
                                          : g_strdup_printf (_ ("“%s” is taken away."), name);
  RcPriceBook     *edited = line.price >= 0 ? rc_price_edit_remove (get_book (self), (guint)line.price)
                                            : rc_price_edit_remove_goods (get_book (self), line.item);

  if (take (self, edited, NULL, name))
    tell_done (self, done, TRUE);
}

static void
step_over (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcPriceWindow *self = RC_PRICE_WINDOW (widget);
  gboolean       is_undo = g_str_equal (name, "price.undo");
  g_autoptr (GError) error = NULL;
  g_autofree char *doing
      = is_undo ? rc_book_keeper_undo (self->keeper, &error) : rc_book_keeper_redo (self->keeper, &error);
  g_autofree char *told
      = doing != NULL ? g_strdup_printf (is_undo ? _ ("Undone: %s") : _ ("Done again: %s"), doing) : NULL;

  if (told != NULL)
    tell (self, told);
  else if (error != NULL)
    tell (self, error->message);
  else
    tell (self, is_undo ? _ ("There is nothing to undo.") : _ ("There is nothing to do again."));
}

/* --- goods --- */

static void
open_form (RcPriceWindow *self, const RcGoods *goods)
{
  if (get_book (self) == NULL)
    return;
  tell (self, NULL);
  gtk_widget_set_visible (self->form_box, TRUE);
  rc_goods_form_open (self->form, get_book (self), goods);
}

static void
close_form (RcPriceWindow *self)
{
  gtk_widget_set_visible (self->form_box, FALSE);
  tell (self, NULL);
  rc_price_table_focus (self->table);
}

static gboolean
is_at_suppliers (RcPriceWindow *self)
{
  return gtk_stack_get_visible_child (self->pages) == GTK_WIDGET (self->suppliers);
}

static void
act_on_goods (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcPriceWindow *self = RC_PRICE_WINDOW (widget);

  if (is_at_suppliers (self))
    rc_supplier_page_add (self->suppliers);
  else
    open_form (self, g_str_equal (name, "price.goods") ? get_chosen_goods (self) : NULL);
}

static void
find (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcPriceWindow *self = RC_PRICE_WINDOW (widget);

  if (is_at_suppliers (self))
    rc_supplier_page_find (self->suppliers);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

/* New goods are looked for by their name, so that their line is there to be priced. */
static void
keep_goods (RcPriceWindow *self)
{
  const RcGoods   *before = rc_goods_form_get_before (self->form);
  GError          *error = NULL;
  g_autofree char *id = NULL;
  g_autoptr (RcGoods) goods = rc_goods_form_read (self->form, &error);
  RcPriceBook *edited = goods != NULL ? rc_price_edit_put_goods (get_book (self), before, goods, &id, &error) : NULL;

  if (goods != NULL && g_error_matches (error, RC_ERROR, RC_ERROR_RANGE))
    rc_goods_form_focus_fault (self->form, goods);
  if (!take (self, edited, error, goods != NULL ? goods->name : NULL))
    return;
  close_form (self);
  if (before == NULL)
    gtk_editable_set_text (GTK_EDITABLE (self->search), rc_price_book_find_goods (get_book (self), id)->name);
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
  edited = rc_price_list_read (get_book (self), path, &error);
  told = g_strdup_printf (_ ("Taken from %s"), path);
  if (take (self, edited, error, told))
    tell_done (self, told, TRUE);
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
  tell (self, rc_price_list_write (get_book (self), path, &error) ? told : error->message);
}

static void
choose_import (RcPriceWindow *self)
{
  if (get_book (self) != NULL)
    rc_price_list_dialog_open (GTK_WINDOW (self), FALSE, take_list);
}

static void
choose_export (RcPriceWindow *self)
{
  if (get_book (self) != NULL)
    rc_price_list_dialog_open (GTK_WINDOW (self), TRUE, write_list);
}

guint
rc_price_window_get_n_lines (RcPriceWindow *self)
{
  return rc_price_table_get_n_lines (self->table);
}

const char *
rc_price_window_get_told (RcPriceWindow *self)
{
  return gtk_label_get_text (self->note_label);
}

gboolean
rc_price_window_type (RcPriceWindow *self, guint position, RcPriceField field, const char *text)
{
  return rc_price_table_type (self->table, position, field, text);
}

GtkWidget *
rc_price_window_new (RcWindow *parent)
{
  RcPriceWindow *self = g_object_new (RC_TYPE_PRICE_WINDOW, "transient-for", parent, NULL);
  g_autoptr (GError) error = NULL;

  self->keeper = g_object_ref (rc_window_get_book_keeper (parent));
  rc_price_table_set_keeper (self->table, self->keeper);
  g_signal_connect_object (self->keeper, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  if (rc_book_keeper_get_book (self->keeper, &error) == NULL)
    tell (self, error->message);
  show_lines (self);
  rc_supplier_page_set_keeper (self->suppliers, self->keeper);
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

  g_clear_object (&self->keeper);
  G_OBJECT_CLASS (rc_price_window_parent_class)->finalize (object);
}

static void
rc_price_window_class_init (RcPriceWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_price_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_price_window_finalize;
  g_type_ensure (RC_TYPE_GOODS_FORM);
  g_type_ensure (RC_TYPE_PRICE_TABLE);
  g_type_ensure (RC_TYPE_SUPPLIER_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/price-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, search);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, table);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, count_label);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, note_label);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, renew_button);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, remove_button);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, form_box);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, note_box);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, suppliers);
  gtk_widget_class_bind_template_child (widget_class, RcPriceWindow, form);
  gtk_widget_class_bind_template_callback (widget_class, show_lines);
  gtk_widget_class_bind_template_callback (widget_class, tell);
  gtk_widget_class_bind_template_callback (widget_class, tell_done);
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
  gtk_widget_class_install_action (widget_class, "price.undo", NULL, step_over);
  gtk_widget_class_install_action (widget_class, "price.redo", NULL, step_over);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_n, GDK_CONTROL_MASK, "price.add-goods", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F2, 0, "price.goods", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_f, GDK_CONTROL_MASK, "price.find", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK, "price.undo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "price.redo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_price_window_init (RcPriceWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  on_chosen (self); /* nothing, which no signal tells */
}
