#include "supplier-page.h"

#include <glib/gi18n-lib.h>

#include "row-item.h"
#include "rowcut-error.h"
#include "supplier-edit.h"
#include "supplier-form.h"

struct _RcSupplierPage
{
  GtkBox parent_instance;

  RcBookKeeper *keeper;

  GtkSearchEntry     *search;
  GtkColumnView      *view;
  GtkSingleSelection *selection;
  GtkLabel           *count_label;
  GtkWidget          *change_button, *remove_button, *form_box;
  RcSupplierForm     *form;
};

G_DEFINE_FINAL_TYPE (RcSupplierPage, rc_supplier_page, GTK_TYPE_BOX)

static guint told_signal;

static void
tell (RcSupplierPage *self, const char *text, gboolean can_undo)
{
  g_signal_emit (self, told_signal, 0, text, can_undo);
}

static const RcPriceBook *
get_book (RcSupplierPage *self)
{
  return rc_book_keeper_get_book (self->keeper, NULL);
}

/* NULL: none is chosen. */
static const RcSupplier *
get_chosen (RcSupplierPage *self)
{
  return rc_row_item_get_chosen (self->selection);
}

static void
on_chosen (RcSupplierPage *self)
{
  const RcSupplier *chosen = get_chosen (self);

  gtk_widget_set_sensitive (self->change_button, chosen != NULL);
  gtk_widget_set_sensitive (self->remove_button, chosen != NULL);
}

/* --- the list --- */

static void
show_suppliers (RcSupplierPage *self)
{
  const RcPriceBook *book = get_book (self);
  const RcSupplier  *chosen = get_chosen (self);
  g_autofree char   *name = chosen != NULL ? g_strdup (chosen->name) : NULL;
  GPtrArray         *found;
  guint              place = 0;

  if (book == NULL)
    return;
  found = rc_supplier_edit_find (book, gtk_editable_get_text (GTK_EDITABLE (self->search)));
  for (guint i = 0; i < found->len; i++)
    if (g_strcmp0 (((const RcSupplier *)g_ptr_array_index (found, i))->name, name) == 0)
      place = i;
  g_autofree char *count = g_strdup_printf (ngettext ("%u supplier", "%u suppliers", found->len), found->len);
  gtk_label_set_text (self->count_label, found->len > 0 ? count
                                         : *gtk_editable_get_text (GTK_EDITABLE (self->search)) == '\0'
                                             ? _ ("No supplier yet: add one.")
                                             : _ ("No supplier has all these words."));
  g_autoptr (GListModel) model = rc_row_item_new_list (found, (GDestroyNotify)rc_supplier_free);
  gtk_single_selection_set_model (self->selection, model);
  gtk_single_selection_set_selected (self->selection, place);
}

static char *
say_name (gconstpointer value, gpointer data)
{
  return g_strdup (((const RcSupplier *)value)->name);
}

static char *
say_phone (gconstpointer value, gpointer data)
{
  const RcSupplier *supplier = value;

  return g_strdup (supplier->phone != NULL ? supplier->phone : "");
}

static char *
say_email (gconstpointer value, gpointer data)
{
  const RcSupplier *supplier = value;

  return g_strdup (supplier->email != NULL ? supplier->email : "");
}

static char *
say_freight (gconstpointer value, gpointer data)
{
  const RcSupplier *supplier = value;
  const RcCurrency *currency = &get_book (data)->currency;
  g_autofree char  *sum = rc_money_format (supplier->freight_sale, currency);
  g_autofree char  *free_from = rc_money_format (supplier->freight_free_from, currency);

  if (supplier->freight_cost == 0 && supplier->freight_sale == 0)
    return g_strdup ("");
  return supplier->freight_free_from > 0 ? g_strdup_printf (_ ("%s, free from %s"), sum, free_from)
                                         : g_steal_pointer (&sum);
}

static char *
say_lead (gconstpointer value, gpointer data)
{
  int days = ((const RcSupplier *)value)->lead_days;

  return days > 0 ? g_strdup_printf (ngettext ("%d day", "%d days", (gulong)days), days) : g_strdup ("");
}

static char *
say_goods (gconstpointer value, gpointer data)
{
  return g_strdup_printf ("%u",
                          rc_supplier_edit_count_goods (get_book (data), ((const RcSupplier *)value)->name, NULL));
}

static void
add_columns (RcSupplierPage *self)
{
  const RcColumn columns[] = {
    { _ ("Supplier"), say_name, 20, FALSE, FALSE },  { _ ("Phone"), say_phone, 13, FALSE, FALSE },
    { _ ("E-mail"), say_email, 18, FALSE, TRUE },    { _ ("Freight charged"), say_freight, 18, FALSE, TRUE },
    { _ ("Delivers in"), say_lead, 8, TRUE, FALSE }, { _ ("Goods"), say_goods, 5, TRUE, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    rc_row_item_add_column (self->view, &columns[i], self);
}

/* --- what the buttons do --- */

/* `edited` (transfer full; NULL: refused, `error` (transfer full) says why). `done` is told, to be taken back. */
static gboolean
take (RcSupplierPage *self, RcPriceBook *edited, GError *error, const char *doing, const char *done)
{
  g_autoptr (GError) fault = error;

  if (edited == NULL || !rc_book_keeper_take (self->keeper, edited, doing, &fault))
    {
      tell (self, fault->message, FALSE);
      return FALSE;
    }
  tell (self, done, done != NULL);
  return TRUE;
}

static gboolean
is_kept (RcSupplierPage *self, const RcSupplier *supplier)
{
  return rc_price_book_find_supplier (get_book (self), supplier->name) != NULL;
}

static void
open_form (RcSupplierPage *self, const RcSupplier *supplier)
{
  tell (self, NULL, FALSE);
  gtk_widget_set_visible (self->form_box, TRUE);
  rc_supplier_form_open (self->form, supplier, !is_kept (self, supplier), &get_book (self)->currency);
}

void
rc_supplier_page_add (RcSupplierPage *self)
{
  RcSupplier *new = rc_supplier_new ("");

  if (get_book (self) != NULL)
    open_form (self, new);
  rc_supplier_free (new);
}

static void
change (RcSupplierPage *self)
{
  if (get_chosen (self) != NULL)
    open_form (self, get_chosen (self));
}

static void
close_form (RcSupplierPage *self)
{
  gtk_widget_set_visible (self->form_box, FALSE);
  tell (self, NULL, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static void
keep (RcSupplierPage *self)
{
  GError      *error = NULL;
  RcSupplier  *supplier = rc_supplier_form_read (self->form, &error);
  RcPriceBook *edited = NULL;

  if (supplier != NULL)
    edited = rc_supplier_edit_put (get_book (self), rc_supplier_form_get_before (self->form), supplier, &error);
  if (g_error_matches (error, RC_ERROR, RC_ERROR_RANGE) && supplier != NULL)
    rc_supplier_form_focus_name (self->form);
  if (take (self, edited, error, supplier != NULL ? supplier->name : NULL, NULL))
    close_form (self);
  rc_supplier_free (supplier);
}

static void
remove_chosen (RcSupplierPage *self)
{
  const RcSupplier *chosen = get_chosen (self);
  GError           *error = NULL;
  g_autofree char  *done = g_strdup_printf (_ ("“%s” is taken away."), chosen->name);

  RcPriceBook *edited = rc_supplier_edit_remove (get_book (self), chosen->name, &error);

  take (self, edited, error, chosen->name, done);
}

void
rc_supplier_page_find (RcSupplierPage *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

guint
rc_supplier_page_get_n (RcSupplierPage *self)
{
  GListModel *model = gtk_single_selection_get_model (self->selection);

  return model != NULL ? g_list_model_get_n_items (model) : 0;
}

/* --- made --- */

void
rc_supplier_page_set_keeper (RcSupplierPage *self, RcBookKeeper *keeper)
{
  self->keeper = g_object_ref (keeper);
  g_signal_connect_object (keeper, "changed", G_CALLBACK (show_suppliers), self, G_CONNECT_SWAPPED);
  show_suppliers (self);
}

static void
rc_supplier_page_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_SUPPLIER_PAGE);
  G_OBJECT_CLASS (rc_supplier_page_parent_class)->dispose (object);
}

static void
rc_supplier_page_finalize (GObject *object)
{
  g_clear_object (&RC_SUPPLIER_PAGE (object)->keeper);
  G_OBJECT_CLASS (rc_supplier_page_parent_class)->finalize (object);
}

static void
rc_supplier_page_class_init (RcSupplierPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_supplier_page_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_supplier_page_finalize;
  told_signal = g_signal_new ("told", RC_TYPE_SUPPLIER_PAGE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                              G_TYPE_STRING, G_TYPE_BOOLEAN);
  g_type_ensure (RC_TYPE_SUPPLIER_FORM);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/supplier-page.ui");
  gtk_widget_class_bind_template_child (widget_class, RcSupplierPage, search);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierPage, view);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierPage, selection);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierPage, count_label);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierPage, change_button);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierPage, remove_button);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierPage, form_box);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierPage, form);
  gtk_widget_class_bind_template_callback (widget_class, show_suppliers);
  gtk_widget_class_bind_template_callback (widget_class, on_chosen);
  gtk_widget_class_bind_template_callback (widget_class, rc_supplier_page_add);
  gtk_widget_class_bind_template_callback (widget_class, change);
  gtk_widget_class_bind_template_callback (widget_class, remove_chosen);
  gtk_widget_class_bind_template_callback (widget_class, keep);
  gtk_widget_class_bind_template_callback (widget_class, close_form);
}

static void
rc_supplier_page_init (RcSupplierPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_columns (self);
}
