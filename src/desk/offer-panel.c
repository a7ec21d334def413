#include "offer-panel.h"

#include <glib/gi18n-lib.h>

#include "offer-entry.h"
#include "pick.h"

struct _RcOfferPanel
{
  GtkBox parent_instance;

  RcDocument  *document;
  GtkGrid     *grid;
  GtkDropDown *detail_drop, *tax_drop;
  GtkBox      *payments_box;
  GtkLabel    *payments_label;
  GtkTextView *terms_view;
  guint        n_payments; /* shown */
  gboolean     is_showing;
};

G_DEFINE_FINAL_TYPE (RcOfferPanel, rc_offer_panel, GTK_TYPE_BOX)

static RcJob *
begin (RcOfferPanel *self)
{
  return self->is_showing ? NULL : rc_document_dup_job (self->document);
}

static void
commit (RcOfferPanel *self, RcJob *job, const char *step, const char *key)
{
  rc_offer_commit (GTK_WIDGET (self), self->document, job, step, key);
}

/* --- what changes it --- */

static void
on_detail (RcOfferPanel *self)
{
  RcJob *job = begin (self);

  if (job == NULL)
    return;
  job->offer->detail = gtk_drop_down_get_selected (self->detail_drop);
  commit (self, job, _ ("Detail of the quotation"), NULL);
}

static void
on_tax_area (RcOfferPanel *self)
{
  RcJob *job = begin (self);

  if (job == NULL)
    return;
  g_free (job->offer->tax_area);
  job->offer->tax_area = g_strdup (rc_pick_get_selected (self->tax_drop));
  commit (self, job, _ ("Tax area"), NULL);
}

static char *
dup_terms (RcOfferPanel *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (self->terms_view);
  GtkTextIter    start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
on_terms (RcOfferPanel *self)
{
  const RcOfferSpot spot = { RC_OFFER_TERMS, NULL, 0 };
  g_autofree char  *text = dup_terms (self);
  RcJob            *job = begin (self);

  if (job == NULL)
    return;
  rc_offer_edit_set_text (job->offer, &spot, text, &job->currency, NULL);
  commit (self, job, _ ("Terms of the quotation"), "offer terms");
}

static void
on_add_payment (RcOfferPanel *self)
{
  RcJob *job = rc_document_dup_job (self->document);

  rc_offer_edit_add_payment (job->offer, rc_document_get_price_book (self->document)->payments);
  commit (self, job, _ ("Steps of payment"), NULL);
}

static void
on_remove_payment (GtkWidget *button, RcOfferPanel *self)
{
  RcJob *job = rc_document_dup_job (self->document);

  rc_offer_edit_remove_payment (job->offer, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "rowcut-index")));
  commit (self, job, _ ("Steps of payment"), NULL);
}

/* --- showing --- */

static void
show_tax_areas (RcOfferPanel *self, const RcOffer *offer)
{
  const GPtrArray *areas = rc_document_get_price_book (self->document)->tax_areas;
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  rc_pick_add (&pick, NULL, _ ("the job's rate"));
  for (guint i = 0; i < areas->len; i++)
    {
      const RcTaxArea *area = g_ptr_array_index (areas, i);

      rc_pick_add (&pick, area->id, area->name != NULL ? area->name : area->id);
    }
  rc_pick_show (&pick, self->tax_drop, offer->tax_area);
}

static GtkWidget *
new_entry (RcOfferPanel *self, RcOfferField field, guint index, int width, const char *label, const char *step)
{
  const RcOfferSpot spot = { field, NULL, index };
  GtkWidget        *entry = rc_offer_entry_new (self->document, &spot, label, step);

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), width);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), label);
  gtk_widget_set_tooltip_text (entry, label);
  return entry;
}

static void
add_payment (RcOfferPanel *self, guint index)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  GtkWidget *name = new_entry (self, RC_OFFER_PAYMENT_NAME, index, 12, _ ("When"), _ ("Steps of payment"));

  gtk_widget_set_hexpand (name, TRUE);
  gtk_box_append (GTK_BOX (row), name);
  gtk_box_append (GTK_BOX (row),
                  new_entry (self, RC_OFFER_PAYMENT_PART, index, 4, _ ("Part, %"), _ ("Steps of payment")));
  gtk_box_append (GTK_BOX (row),
                  new_entry (self, RC_OFFER_PAYMENT_DAYS, index, 4, _ ("Days later"), _ ("Steps of payment")));
  gtk_widget_set_tooltip_text (remove, _ ("Take away this step of payment"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Take away this step of payment"), -1);
  g_object_set_data (G_OBJECT (remove), "rowcut-index", GUINT_TO_POINTER (index));
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove_payment), self);
  gtk_box_append (GTK_BOX (row), remove);
  gtk_box_append (self->payments_box, row);
}

static void
show_payments (RcOfferPanel *self, const RcOffer *offer)
{
  GtkWidget *child;

  gtk_widget_set_visible (GTK_WIDGET (self->payments_label), offer->payments->len == 0);
  if (self->n_payments == offer->payments->len)
    return;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->payments_box))) != NULL)
    gtk_box_remove (self->payments_box, child);
  for (guint i = 0; i < offer->payments->len; i++)
    add_payment (self, i);
  self->n_payments = offer->payments->len;
}

static void
show (RcOfferPanel *self)
{
  const RcOffer   *offer = rc_document_get_job (self->document)->offer;
  g_autofree char *shown = dup_terms (self);

  self->is_showing = TRUE;
  gtk_drop_down_set_selected (self->detail_drop, offer->detail);
  show_tax_areas (self, offer);
  show_payments (self, offer);
  if (!g_str_equal (shown, offer->terms != NULL ? offer->terms : ""))
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->terms_view), offer->terms != NULL ? offer->terms : "",
                              -1);
  self->is_showing = FALSE;
}

/* --- made --- */

static GtkWidget *
new_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
add_row (RcOfferPanel *self, const char *label, GtkWidget *field, int row)
{
  gtk_widget_set_hexpand (field, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_grid_attach (self->grid, new_label (label, "field-label"), 0, 2 * row, 1, 1);
  gtk_grid_attach (self->grid, field, 0, 2 * row + 1, 1, 1);
}

static void
add_fields (RcOfferPanel *self)
{
  const char *const discount = _ ("Discount"), *const valid = _ ("Validity");
  g_autofree char *code = g_strdup_printf (_ ("%s off besides"), rc_document_get_job (self->document)->currency.code);
  g_autoptr (GtkStringList) details = gtk_string_list_new (NULL);

  for (RcDetail detail = 0; detail < RC_N_DETAILS; detail++)
    gtk_string_list_append (details, rc_detail_get_label (detail));
  self->detail_drop = GTK_DROP_DOWN (gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&details)), NULL));
  self->tax_drop = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  add_row (self, _ ("Customer sees"), GTK_WIDGET (self->detail_drop), 0);
  add_row (self, _ ("Discount, %"), new_entry (self, RC_OFFER_DISCOUNT_RATE, 0, 8, "0", discount), 1);
  add_row (self, code, new_entry (self, RC_OFFER_DISCOUNT_SUM, 0, 8, "0", discount), 2);
  add_row (self, _ ("Tax area"), GTK_WIDGET (self->tax_drop), 3);
  add_row (self, _ ("Valid, days"), new_entry (self, RC_OFFER_VALID_DAYS, 0, 8, _ ("as the price book"), valid), 4);
}

static void
add_payments_part (RcOfferPanel *self)
{
  GtkWidget *add = gtk_button_new_with_mnemonic (_ ("Add a step of _payment"));

  self->payments_box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  self->payments_label = GTK_LABEL (new_label (_ ("As the price book says."), "detail"));
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (on_add_payment), self);
  gtk_box_append (GTK_BOX (self), new_label (_ ("Payment"), "section-head"));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->payments_label));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->payments_box));
  gtk_box_append (GTK_BOX (self), add);
}

static void
add_terms_part (RcOfferPanel *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->terms_view = GTK_TEXT_VIEW (gtk_text_view_new ());
  gtk_text_view_set_wrap_mode (self->terms_view, GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (self->terms_view, FALSE);
  gtk_text_buffer_set_enable_undo (gtk_text_view_get_buffer (self->terms_view), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->terms_view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Terms"), -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (self->terms_view));
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), 70);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_box_append (GTK_BOX (self), new_label (_ ("Terms"), "section-head"));
  gtk_box_append (GTK_BOX (self), new_label (_ ("Left blank: the price book's."), "detail"));
  gtk_box_append (GTK_BOX (self), scrolled);
}

GtkWidget *
rc_offer_panel_new (RcDocument *document)
{
  RcOfferPanel *self = g_object_new (RC_TYPE_OFFER_PANEL, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 6, NULL);

  self->document = g_object_ref (document);
  self->n_payments = G_MAXUINT;
  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_column_spacing (self->grid, 6);
  gtk_grid_set_row_spacing (self->grid, 4);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->grid));
  add_fields (self);
  add_payments_part (self);
  add_terms_part (self);
  show (self);
  g_signal_connect_swapped (self->detail_drop, "notify::selected", G_CALLBACK (on_detail), self);
  g_signal_connect_swapped (self->tax_drop, "notify::selected", G_CALLBACK (on_tax_area), self);
  g_signal_connect_swapped (gtk_text_view_get_buffer (self->terms_view), "changed", G_CALLBACK (on_terms), self);
  g_signal_connect_object (document, "edited", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

static void
rc_offer_panel_finalize (GObject *object)
{
  g_clear_object (&RC_OFFER_PANEL (object)->document);
  G_OBJECT_CLASS (rc_offer_panel_parent_class)->finalize (object);
}

static void
rc_offer_panel_class_init (RcOfferPanelClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_offer_panel_finalize;
}

static void
rc_offer_panel_init (RcOfferPanel *self)
{
  gtk_widget_add_css_class (GTK_WIDGET (self), "panel");
}
