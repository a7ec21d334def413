#include "shop-window.h"

#include <glib/gi18n-lib.h>

#include "file-dialog.h"
#include "form-field.h"
#include "job-number.h"
#include "logo.h"
#include "rowcut-error.h"
#include "shop-rows.h"

typedef enum
{
  FIELD_NAME,
  FIELD_TAX,
  FIELD_DEPOSIT,
  FIELD_VALID_DAYS,
  FIELD_JOB_NUMBERS,
  N_FIELDS
} Field;

struct _RcShopWindow
{
  GtkWindow parent_instance;

  GtkGrid       *grid;
  GtkTextBuffer *address, *terms;
  GtkPicture    *picture;
  GtkWidget     *drop_button;
  GtkLabel      *note_label;
  GtkEditable   *fields[N_FIELDS];
  RcTextRows    *tax_areas, *payments;
  RcBookKeeper  *keeper;
  RcPriceBook   *shown; /* the book whose shop is shown, nullable */
  gboolean       is_keeping;
  GBytes        *logo; /* nullable */
};

G_DEFINE_FINAL_TYPE (RcShopWindow, rc_shop_window, GTK_TYPE_WINDOW)

static void
tell (RcShopWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text != NULL ? text : "");
}

/* --- reading what is written --- */

/* NULL: nothing. (transfer full) */
static char *
dup_text (RcShopWindow *self, Field field)
{
  return rc_form_dup_text (self->fields[field]);
}

static gboolean
read_rate (RcShopWindow *self, Field field, const char *name, gint64 *ppm, GError **error)
{
  g_autofree char *text = dup_text (self, field);

  *ppm = 0;
  if (text == NULL || (rc_rate_parse (text, ppm, error) && *ppm >= 0 && *ppm <= RC_MICRO))
    return TRUE;
  if (error != NULL && *error == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s: “%s” is not between 0 and 100 %%"), name, text);
  else
    g_prefix_error (error, "%s: ", name);
  return FALSE;
}

static gboolean
read_days (RcShopWindow *self, int *days, GError **error)
{
  g_autofree char *text = dup_text (self, FIELD_VALID_DAYS);
  guint64          number = 0;

  if (text != NULL && !g_ascii_string_to_unsigned (text, 10, 0, 3660, &number, NULL))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
                   _ ("“%s” is not a number of days from 0 to 3660; blank: a quotation says nothing of it"), text);
      return FALSE;
    }
  *days = (int)number;
  return TRUE;
}

/* NULL with an error naming the field. (transfer full) */
static RcPriceBook *
read_fields (RcShopWindow *self, GError **error)
{
  g_autoptr (RcPriceBook) book = rc_price_book_copy (rc_book_keeper_get_book (self->keeper, NULL));
  g_autofree char *numbers = dup_text (self, FIELD_JOB_NUMBERS);

  if (!read_rate (self, FIELD_TAX, _ ("Tax, %"), &book->tax_ppm, error)
      || !read_rate (self, FIELD_DEPOSIT, _ ("Deposit, %"), &book->deposit_ppm, error)
      || !read_days (self, &book->valid_days, error)
      || (numbers != NULL && !rc_job_number_check_pattern (numbers, error))
      || !rc_shop_rows_read_tax_areas (self->tax_areas, book, error)
      || !rc_shop_rows_read_payments (self->payments, book, error))
    return NULL;
  g_free (book->shop_name);
  g_free (book->shop_address);
  g_free (book->terms);
  g_free (book->job_numbers);
  g_clear_pointer (&book->logo, g_bytes_unref);
  book->shop_name = dup_text (self, FIELD_NAME);
  book->shop_address = rc_form_dup_lines (self->address);
  book->terms = rc_form_dup_lines (self->terms);
  book->job_numbers = g_steal_pointer (&numbers);
  book->logo = self->logo != NULL ? g_bytes_ref (self->logo) : NULL;
  return g_steal_pointer (&book);
}

/* --- showing what is kept --- */

static void
show_logo (RcShopWindow *self)
{
  g_autoptr (GdkTexture) texture = self->logo != NULL ? gdk_texture_new_from_bytes (self->logo, NULL) : NULL;

  gtk_picture_set_paintable (self->picture, GDK_PAINTABLE (texture));
  gtk_widget_set_visible (GTK_WIDGET (self->picture), texture != NULL);
  gtk_widget_set_sensitive (self->drop_button, self->logo != NULL);
}

static void
set_text (RcShopWindow *self, Field field, const char *text)
{
  gtk_editable_set_text (self->fields[field], text != NULL ? text : "");
}

/* What is shown here of two books. */
static gboolean
is_same_shop (const RcPriceBook *a, const RcPriceBook *b)
{
  gboolean same = g_strcmp0 (a->shop_name, b->shop_name) == 0 && g_strcmp0 (a->shop_address, b->shop_address) == 0
                  && g_strcmp0 (a->terms, b->terms) == 0 && g_strcmp0 (a->job_numbers, b->job_numbers) == 0
                  && a->tax_ppm == b->tax_ppm && a->deposit_ppm == b->deposit_ppm && a->valid_days == b->valid_days
                  && (a->logo == b->logo || (a->logo != NULL && b->logo != NULL && g_bytes_equal (a->logo, b->logo)))
                  && a->tax_areas->len == b->tax_areas->len && a->payments->len == b->payments->len;

  for (guint i = 0; same && i < a->tax_areas->len; i++)
    {
      const RcTaxArea *one = a->tax_areas->pdata[i], *other = b->tax_areas->pdata[i];

      same = g_strcmp0 (one->id, other->id) == 0 && g_strcmp0 (one->name, other->name) == 0
             && one->goods_ppm == other->goods_ppm && one->work_ppm == other->work_ppm;
    }
  for (guint i = 0; same && i < a->payments->len; i++)
    {
      const RcPayment *one = a->payments->pdata[i], *other = b->payments->pdata[i];

      same = g_strcmp0 (one->name, other->name) == 0 && one->part_ppm == other->part_ppm && one->days == other->days;
    }
  return same;
}

static void
show_book (RcShopWindow *self, const RcPriceBook *book)
{
  g_autofree char *tax = rc_rate_format (book->tax_ppm), *deposit = rc_rate_format (book->deposit_ppm);
  g_autofree char *days = book->valid_days > 0 ? g_strdup_printf ("%d", book->valid_days) : NULL;

  set_text (self, FIELD_NAME, book->shop_name);
  set_text (self, FIELD_TAX, tax);
  set_text (self, FIELD_DEPOSIT, deposit);
  set_text (self, FIELD_VALID_DAYS, days);
  set_text (self, FIELD_JOB_NUMBERS, book->job_numbers);
  gtk_text_buffer_set_text (self->address, book->shop_address != NULL ? book->shop_address : "", -1);
  gtk_text_buffer_set_text (self->terms, book->terms != NULL ? book->terms : "", -1);
  rc_shop_rows_show_tax_areas (self->tax_areas, book);
  rc_shop_rows_show_payments (self->payments, book);
  g_clear_pointer (&self->logo, g_bytes_unref);
  self->logo = book->logo != NULL ? g_bytes_ref (book->logo) : NULL;
  show_logo (self);
  rc_price_book_free (self->shown);
  self->shown = rc_price_book_copy (book);
}

/* A change of prices leaves what is being written here as it is. */
static void
on_changed (RcShopWindow *self, gboolean by_others)
{
  const RcPriceBook *book = rc_book_keeper_get_book (self->keeper, NULL);

  if (by_others || (!self->is_keeping && (self->shown == NULL || !is_same_shop (self->shown, book))))
    show_book (self, book);
  if (by_others)
    tell (self, _ ("Another program has changed the price book; it is shown as it is now."));
}

static gboolean
take (RcShopWindow *self, RcPriceBook *book, GError **error)
{
  gboolean taken;

  self->is_keeping = TRUE;
  taken = rc_book_keeper_take (self->keeper, book, _ ("The shop"), error);
  self->is_keeping = FALSE;
  if (!taken)
    return FALSE;
  rc_price_book_free (self->shown);
  self->shown = rc_price_book_copy (rc_book_keeper_get_book (self->keeper, NULL));
  return TRUE;
}

gboolean
rc_shop_window_keep (RcShopWindow *self)
{
  g_autoptr (GError) error = NULL;
  RcPriceBook *book = rc_book_keeper_get_book (self->keeper, &error) != NULL ? read_fields (self, &error) : NULL;

  if (book != NULL && take (self, book, &error))
    {
      tell (self, _ ("Kept; papers made from now on say so."));
      return TRUE;
    }
  tell (self, error->message);
  return FALSE;
}

/* --- the logo --- */

gboolean
rc_shop_window_take_logo (RcShopWindow *self, const char *path, GError **error)
{
  g_autoptr (GBytes) png = NULL;
  char *bytes;
  gsize size;

  if (!g_file_get_contents (path, &bytes, &size, error))
    return FALSE;
  png = g_bytes_new_take (bytes, size);
  if (size > RC_STORE_MAX_FILE_BYTES || !rc_logo_is_sound (png))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("%s is no PNG picture, or too large: 16 million points at most"),
                   path);
      return FALSE;
    }
  g_clear_pointer (&self->logo, g_bytes_unref);
  self->logo = g_steal_pointer (&png);
  show_logo (self);
  return TRUE;
}

static void
take_logo (gpointer window, GFile *file)
{
  RcShopWindow    *self = window;
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;

  if (path != NULL)
    tell (self, rc_shop_window_take_logo (self, path, &error) ? NULL : error->message);
}

static void
choose_logo (RcShopWindow *self)
{
  static const char *const PATTERNS[] = { "*.png", "*.PNG", NULL };
  const RcFileDialog       dialog = { .title = _ ("Logo"), .kind = _ ("Pictures (PNG)"), .patterns = PATTERNS };

  rc_file_dialog_open (self, &dialog, take_logo);
}

static void
drop_logo (RcShopWindow *self)
{
  g_clear_pointer (&self->logo, g_bytes_unref);
  show_logo (self);
}

static void
keep (RcShopWindow *self)
{
  rc_shop_window_keep (self);
}

const char *
rc_shop_window_get_told (RcShopWindow *self)
{
  return gtk_label_get_text (self->note_label);
}

/* --- made --- */

static void
add_row (RcShopWindow *self, Field field, const char *name, const char *blank)
{
  GtkWidget *label = gtk_label_new (name), *entry = gtk_entry_new ();
  int        row = field == FIELD_NAME ? 0 : (int)field + 2;

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "field-label");
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), blank);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_grid_attach (self->grid, label, 0, row, 1, 1);
  gtk_grid_attach (self->grid, entry, 1, row, 1, 1);
  self->fields[field] = GTK_EDITABLE (entry);
}

/* Below the terms. */
static RcTextRows *
add_rows (RcShopWindow *self, GtkWidget *rows, const char *name, const char *hint, int row)
{
  GtkWidget *label = gtk_label_new (name), *about = gtk_label_new (hint);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_widget_add_css_class (label, "field-label");
  gtk_label_set_xalign (GTK_LABEL (about), 0);
  gtk_label_set_wrap (GTK_LABEL (about), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (about), 48);
  gtk_widget_add_css_class (about, "detail");
  gtk_box_append (GTK_BOX (box), about);
  gtk_box_append (GTK_BOX (box), rows);
  gtk_grid_attach (self->grid, label, 0, row, 1, 1);
  gtk_grid_attach (self->grid, box, 1, row, 1, 1);
  return RC_TEXT_ROWS (rows);
}

static void
rc_shop_window_dispose (GObject *object)
{
  RcShopWindow *self = RC_SHOP_WINDOW (object);

  g_clear_object (&self->keeper);
  g_clear_pointer (&self->shown, rc_price_book_free);
  g_clear_pointer (&self->logo, g_bytes_unref);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_SHOP_WINDOW);
  G_OBJECT_CLASS (rc_shop_window_parent_class)->dispose (object);
}

static void
rc_shop_window_class_init (RcShopWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_shop_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/shop-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcShopWindow, grid);
  gtk_widget_class_bind_template_child (widget_class, RcShopWindow, address);
  gtk_widget_class_bind_template_child (widget_class, RcShopWindow, terms);
  gtk_widget_class_bind_template_child (widget_class, RcShopWindow, picture);
  gtk_widget_class_bind_template_child (widget_class, RcShopWindow, drop_button);
  gtk_widget_class_bind_template_child (widget_class, RcShopWindow, note_label);
  gtk_widget_class_bind_template_callback (widget_class, choose_logo);
  gtk_widget_class_bind_template_callback (widget_class, drop_logo);
  gtk_widget_class_bind_template_callback (widget_class, keep);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_shop_window_init (RcShopWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_row (self, FIELD_NAME, _ ("Name"), NULL);
  add_row (self, FIELD_TAX, _ ("Tax, %"), "0");
  add_row (self, FIELD_DEPOSIT, _ ("Deposit, %"), "0");
  add_row (self, FIELD_VALID_DAYS, _ ("Quotations hold, days"), _ ("not said"));
  add_row (self, FIELD_JOB_NUMBERS, _ ("Job numbers"), RC_JOB_NUMBERS_USUAL);
  self->tax_areas = add_rows (self, rc_shop_rows_new_tax_areas (), _ ("Tax areas"),
                              _ ("A job's quotation takes one of these in place of the shop's tax."), 8);
  self->payments = add_rows (self, rc_shop_rows_new_payments (), _ ("Payment"),
                             _ ("In place of the deposit, where a quotation says nothing else."), 9);
}

GtkWidget *
rc_shop_window_new (RcWindow *parent)
{
  RcShopWindow *self = g_object_new (RC_TYPE_SHOP_WINDOW, "transient-for", parent, NULL);
  g_autoptr (GError) error = NULL;

  self->keeper = g_object_ref (rc_window_get_book_keeper (parent));
  g_signal_connect_object (self->keeper, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  if (rc_book_keeper_get_book (self->keeper, &error) != NULL)
    show_book (self, rc_book_keeper_get_book (self->keeper, NULL));
  else
    tell (self, error->message);
  gtk_widget_grab_focus (GTK_WIDGET (self->fields[FIELD_NAME]));
  return GTK_WIDGET (self);
}
