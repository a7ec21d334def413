#include "supplier-form.h"

#include <glib/gi18n-lib.h>

#include "form-field.h"
#include "pick.h"
#include "price-edit.h"

typedef enum
{
  FIELD_NAME,
  FIELD_ACCOUNT,
  FIELD_PHONE,
  FIELD_EMAIL,
  FIELD_FREIGHT_COST,
  FIELD_FREIGHT_SALE,
  FIELD_FREE_FROM,
  FIELD_LEAD_DAYS,
  N_FIELDS
} Field;

struct _RcSupplierForm
{
  GtkBox parent_instance;

  GtkLabel      *title_label;
  GtkBox        *first_row, *second_row;
  GtkTextBuffer *address;
  GtkDropDown   *language_drop;
  GtkWidget     *fields[N_FIELDS];
  GtkLabel      *labels[N_FIELDS];
  RcSupplier    *before; /* nullable */
  RcCurrency     currency;
};

G_DEFINE_FINAL_TYPE (RcSupplierForm, rc_supplier_form, GTK_TYPE_BOX)

/* --- reading the fields --- */

/* NULL: blank. (transfer full) */
static char *
dup_text (RcSupplierForm *self, Field field)
{
  return rc_form_dup_text (GTK_EDITABLE (self->fields[field]));
}

static gboolean
read_money (RcSupplierForm *self, Field field, RcMoney *money, GError **error)
{
  g_autofree char *text = dup_text (self, field);

  *money = 0;
  return text == NULL || rc_price_edit_read_money (text, &self->currency, money, error);
}

static gboolean
read_days (RcSupplierForm *self, int *days, GError **error)
{
  g_autofree char *text = dup_text (self, FIELD_LEAD_DAYS);

  return rc_form_read_days (text, days, error);
}

static gboolean
read_field (RcSupplierForm *self, Field field, RcSupplier *supplier, GError **error)
{
  switch (field)
    {
    case FIELD_FREIGHT_COST:
      return read_money (self, field, &supplier->freight_cost, error);
    case FIELD_FREIGHT_SALE:
      return read_money (self, field, &supplier->freight_sale, error);
    case FIELD_FREE_FROM:
      return read_money (self, field, &supplier->freight_free_from, error);
    case FIELD_LEAD_DAYS:
      return read_days (self, &supplier->lead_days, error);
    default:
      return TRUE;
    }
}

RcSupplier *
rc_supplier_form_read (RcSupplierForm *self, GError **error)
{
  g_autofree char *name = dup_text (self, FIELD_NAME);
  RcSupplier      *supplier = rc_supplier_new (name != NULL ? name : "");

  for (Field field = FIELD_FREIGHT_COST; field < N_FIELDS; field++)
    if (!read_field (self, field, supplier, error))
      {
        g_prefix_error (error, "%s: ", gtk_label_get_text (self->labels[field]));
        gtk_widget_grab_focus (self->fields[field]);
        rc_supplier_free (supplier);
        return NULL;
      }
  supplier->account = dup_text (self, FIELD_ACCOUNT);
  supplier->phone = dup_text (self, FIELD_PHONE);
  supplier->email = dup_text (self, FIELD_EMAIL);
  supplier->address = rc_form_dup_lines (self->address);
  supplier->language = g_strdup (rc_pick_get_selected (self->language_drop));
  return supplier;
}

void
rc_supplier_form_focus_name (RcSupplierForm *self)
{
  gtk_widget_grab_focus (self->fields[FIELD_NAME]);
}

const RcSupplier *
rc_supplier_form_get_before (RcSupplierForm *self)
{
  return self->before;
}

/* --- showing them --- */

static void
show_text (RcSupplierForm *self, Field field, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (self->fields[field]), text != NULL ? text : "");
}

static void
show_money (RcSupplierForm *self, Field field, const char *name, RcMoney money)
{
  g_autofree char *label = g_strdup_printf ("%s, %s", name, self->currency.code);
  g_autofree char *text = money > 0 ? rc_money_format_plain (money, &self->currency) : NULL;

  rc_form_field_set_name (self->labels[field], self->fields[field], label);
  show_text (self, field, text);
}

void
rc_supplier_form_open (RcSupplierForm *self, const RcSupplier *supplier, gboolean is_new, const RcCurrency *currency)
{
  g_autofree char *days = supplier->lead_days > 0 ? g_strdup_printf ("%d", supplier->lead_days) : NULL;

  g_clear_pointer (&self->before, rc_supplier_free);
  self->before = is_new ? NULL : rc_supplier_copy (supplier);
  self->currency = *currency;
  gtk_label_set_text (self->title_label, is_new ? _ ("New supplier") : supplier->name);
  show_text (self, FIELD_NAME, supplier->name);
  show_text (self, FIELD_ACCOUNT, supplier->account);
  show_text (self, FIELD_PHONE, supplier->phone);
  show_text (self, FIELD_EMAIL, supplier->email);
  show_text (self, FIELD_LEAD_DAYS, days);
  show_money (self, FIELD_FREIGHT_COST, _ ("Freight of an order"), supplier->freight_cost);
  show_money (self, FIELD_FREIGHT_SALE, _ ("Freight charged"), supplier->freight_sale);
  show_money (self, FIELD_FREE_FROM, _ ("Free from"), supplier->freight_free_from);
  rc_pick_show_languages (self->language_drop, supplier->language);
  gtk_text_buffer_set_text (self->address, supplier->address != NULL ? supplier->address : "", -1);
  gtk_widget_grab_focus (self->fields[FIELD_NAME]);
}

/* --- made --- */

static void
add_field (RcSupplierForm *self, Field field, const char *name, GtkWidget *entry)
{
  gtk_box_append (field < FIELD_FREIGHT_COST ? self->first_row : self->second_row,
                  rc_form_field_new (name, entry, &self->labels[field]));
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (rc_form_keep), self);
  self->fields[field] = entry;
}

static void
add_language (RcSupplierForm *self)
{
  GtkWidget *drop = gtk_drop_down_new (NULL, NULL);

  gtk_widget_set_tooltip_text (drop, _ ("The language of orders and mail to this supplier"));
  gtk_box_append (self->second_row, rc_form_field_new (_ ("Language"), drop, NULL));
  self->language_drop = GTK_DROP_DOWN (drop);
}

static void
rc_supplier_form_init (RcSupplierForm *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_field (self, FIELD_NAME, _ ("Name"), rc_form_entry_new (NULL, 20));
  add_field (self, FIELD_ACCOUNT, _ ("Our number there"), rc_form_entry_new (NULL, 9));
  add_field (self, FIELD_PHONE, _ ("Phone"), rc_form_entry_new (NULL, 12));
  add_field (self, FIELD_EMAIL, _ ("E-mail"), rc_form_entry_new (NULL, 18));
  add_field (self, FIELD_FREIGHT_COST, _ ("Freight of an order"), rc_form_entry_new (_ ("none"), 9));
  add_field (self, FIELD_FREIGHT_SALE, _ ("Freight charged"), rc_form_entry_new (_ ("none"), 9));
  add_field (self, FIELD_FREE_FROM, _ ("Free from"), rc_form_entry_new (_ ("never"), 9));
  add_field (self, FIELD_LEAD_DAYS, _ ("Delivers in, days"), rc_form_entry_new (_ ("not known"), 9));
  add_language (self);
}

static void
rc_supplier_form_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_SUPPLIER_FORM);
  G_OBJECT_CLASS (rc_supplier_form_parent_class)->dispose (object);
}

static void
rc_supplier_form_finalize (GObject *object)
{
  rc_supplier_free (RC_SUPPLIER_FORM (object)->before);
  G_OBJECT_CLASS (rc_supplier_form_parent_class)->finalize (object);
}

static void
rc_supplier_form_class_init (RcSupplierFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_supplier_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_supplier_form_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/supplier-form.ui");
  gtk_widget_class_bind_template_child (widget_class, RcSupplierForm, title_label);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierForm, first_row);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierForm, second_row);
  gtk_widget_class_bind_template_child (widget_class, RcSupplierForm, address);
  rc_form_class_add_leave (widget_class);
  rc_form_class_add_keep (widget_class);
}
