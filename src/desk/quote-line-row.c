#include "quote-line-row.h"

#include <glib/gi18n-lib.h>

#include "offer-entry.h"

struct _RcQuoteLineRow
{
  GtkBox parent_instance;

  GtkExpander *expander;
  GtkLabel    *name_label, *quantity_label, *price_label, *amount_label, *said_label;
  GtkBox      *terms_box;
  RcDocument  *document; /* nullable: nothing can be settled */
  char        *item;
  GPtrArray   *said; /* of char* */
  gboolean     is_showing;

  /* Made when it is opened for the first time. */
  GtkCheckButton *optional_check, *hidden_check;
  GtkWidget      *discount_entry, *tax_entry, *extra_box;
};

G_DEFINE_FINAL_TYPE (RcQuoteLineRow, rc_quote_line_row, GTK_TYPE_BOX)

/* --- what is settled about the line --- */

static void
on_check (RcQuoteLineRow *self, GtkCheckButton *check)
{
  gboolean is_on = gtk_check_button_get_active (check);
  g_autoptr (RcJob) job = NULL;

  if (self->is_showing)
    return;
  job = rc_document_dup_job (self->document);
  if (check == self->optional_check)
    rc_offer_edit_set_optional (job->offer, self->item, is_on);
  else
    rc_offer_edit_set_hidden (job->offer, self->item, is_on);
  rc_offer_commit (GTK_WIDGET (self), self->document, g_steal_pointer (&job), _ ("Terms of a line"), NULL);
}

static void
on_remove (RcQuoteLineRow *self)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self->document);

  rc_offer_edit_remove_extra (job->offer, self->item);
  rc_offer_commit (GTK_WIDGET (self), self->document, g_steal_pointer (&job), _ ("Take away a line"), NULL);
}

static GtkCheckButton *
add_check (RcQuoteLineRow *self, const char *label)
{
  GtkWidget *check = gtk_check_button_new_with_label (label);

  g_signal_connect_swapped (check, "toggled", G_CALLBACK (on_check), self);
  gtk_box_append (self->terms_box, check);
  return GTK_CHECK_BUTTON (check);
}

static GtkWidget *
add_entry (RcQuoteLineRow *self, GtkBox *box, const char *label, RcOfferField field, int width)
{
  const RcOfferSpot spot = { field, self->item, 0 };
  GtkWidget        *part = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2), *name = gtk_label_new (label);
  GtkWidget        *entry = rc_offer_entry_new (self->document, &spot, label, _ ("Terms of a line"));

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_widget_add_css_class (name, "field-label");
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), width);
  gtk_box_append (GTK_BOX (part), name);
  gtk_box_append (GTK_BOX (part), entry);
  gtk_box_append (box, part);
  return entry;
}

/* A line of its own can be given another name, quantity and price, and can be taken away. */
static void
show_extra (RcQuoteLineRow *self)
{
  const RcExtraLine *extra = rc_offer_edit_find_extra (rc_document_get_job (self->document)->offer, self->item);

  if (extra == NULL || self->extra_box != NULL)
    return;
  self->extra_box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  add_entry (self, GTK_BOX (self->extra_box), _ ("Name"), RC_OFFER_EXTRA_NAME, 18);
  add_entry (self, GTK_BOX (self->extra_box), _ ("Quantity"), RC_OFFER_EXTRA_QUANTITY, 6);
  if (extra->item == NULL)
    {
      add_entry (self, GTK_BOX (self->extra_box), _ ("Price"), RC_OFFER_EXTRA_PRICE, 8);
      add_entry (self, GTK_BOX (self->extra_box), _ ("Cost"), RC_OFFER_EXTRA_COST, 8);
    }
  GtkWidget *remove = gtk_button_new_with_label (_ ("Take away"));
  gtk_widget_set_valign (remove, GTK_ALIGN_END);
  g_signal_connect_swapped (remove, "clicked", G_CALLBACK (on_remove), self);
  gtk_box_append (GTK_BOX (self->extra_box), remove);
  gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->terms_box))), self->extra_box,
                              GTK_WIDGET (self->said_label));
}

static void
make_terms (RcQuoteLineRow *self)
{
  self->optional_check = add_check (self, _ ("Optional"));
  self->hidden_check = add_check (self, _ ("Not shown by itself"));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->optional_check), _ ("Offered beside the total, which leaves it out"));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->hidden_check), _ ("In the sum of other goods and work on paper"));
  self->discount_entry = add_entry (self, self->terms_box, _ ("Discount, %"), RC_OFFER_LINE_DISCOUNT, 6);
  self->tax_entry = add_entry (self, self->terms_box, _ ("Tax, %"), RC_OFFER_LINE_TAX, 6);
}

static void
show_terms (RcQuoteLineRow *self)
{
  const RcLineTerms *terms;

  if (self->document == NULL || self->item == NULL || !gtk_expander_get_expanded (self->expander))
    return;
  if (self->optional_check == NULL)
    make_terms (self);
  terms = rc_offer_find_line (rc_document_get_job (self->document)->offer, self->item);
  self->is_showing = TRUE;
  gtk_check_button_set_active (self->optional_check, terms != NULL && terms->optional);
  gtk_check_button_set_active (self->hidden_check, terms != NULL && terms->hidden);
  self->is_showing = FALSE;
  show_extra (self);
}

/* --- what it says --- */

char *
rc_quote_line_row_dup_said (RcQuoteLineRow *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->said->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", (const char *)self->said->pdata[i]);
  return g_string_free (text, FALSE);
}

static void
show_open (RcQuoteLineRow *self)
{
  g_autofree char *text = NULL;

  if (!gtk_expander_get_expanded (self->expander))
    return;
  text = rc_quote_line_row_dup_said (self);
  gtk_label_set_text (self->said_label, text);
  show_terms (self);
}

static void
show_head (RcQuoteLineRow *self, const char *name, const char *quantity, const char *price, const char *amount)
{
  g_autofree char *said = g_strdup_printf ("%s, %s", name, amount);

  gtk_label_set_text (self->name_label, name);
  gtk_label_set_text (self->quantity_label, quantity);
  gtk_label_set_text (self->price_label, price);
  gtk_label_set_text (self->amount_label, amount);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
}

static void
take_said (RcQuoteLineRow *self, GPtrArray *said)
{
  g_ptr_array_unref (self->said);
  self->said = said;
  show_open (self);
}

/* "Tape (optional, not shown by itself)". */
static char *
dup_name (const RcQuoteLine *line)
{
  if (line->optional && line->hidden)
    return g_strdup_printf (_ ("%s (optional, not shown by itself)"), line->name);
  if (line->optional)
    return g_strdup_printf (_ ("%s (optional)"), line->name);
  return line->hidden ? g_strdup_printf (_ ("%s (not shown by itself)"), line->name) : g_strdup (line->name);
}

void
rc_quote_line_row_show_line (RcQuoteLineRow *self, const RcQuoteLine *line, const RcCurrency *currency,
                             const RcPlan *plan, RcDocument *document)
{
  g_autofree char *number = rc_quantity_format (line->quantity_micro, 3);
  g_autofree char *quantity = g_strdup_printf ("%s %s", number, rc_unit_get_label (line->unit));
  g_autofree char *price = rc_money_format_plain (line->price, currency);
  g_autofree char *amount = rc_money_format (line->amount, currency), *name = dup_name (line);
  GPtrArray       *said = rc_quote_line_explain (line, currency);

  g_set_object (&self->document, document);
  if (self->item == NULL)
    self->item = g_strdup (line->item);
  if (plan != NULL)
    {
      GPtrArray *pieces = rc_quote_line_explain_pieces (line, plan);

      g_ptr_array_extend_and_steal (pieces, said);
      said = pieces;
    }
  show_head (self, name, quantity, price, amount);
  take_said (self, said);
}

void
rc_quote_line_row_show_total (RcQuoteLineRow *self, const RcQuote *quote)
{
  g_autofree char *total = rc_money_format (quote->total, &quote->currency);

  gtk_widget_add_css_class (GTK_WIDGET (self), "total");
  show_head (self, _ ("Total with tax"), "", "", total);
  take_said (self, rc_quote_explain_total (quote));
}

void
rc_quote_line_row_set_open (RcQuoteLineRow *self, gboolean is_open)
{
  gtk_expander_set_expanded (self->expander, is_open);
}

gboolean
rc_quote_line_row_is_open (RcQuoteLineRow *self)
{
  return gtk_expander_get_expanded (self->expander);
}

/* --- made --- */

static GtkLabel *
add_number (GtkBox *box, int width)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_label_set_width_chars (GTK_LABEL (label), width);
  gtk_widget_add_css_class (label, "number");
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

static GtkLabel *
new_text (void)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_hexpand (label, TRUE);
  return GTK_LABEL (label);
}

static void
rc_quote_line_row_init (RcQuoteLineRow *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *inside = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  self->said = g_ptr_array_new_with_free_func (g_free);
  self->expander = GTK_EXPANDER (gtk_expander_new (NULL));
  self->name_label = new_text ();
  self->said_label = new_text ();
  gtk_label_set_width_chars (self->name_label, RC_QUOTE_NAME_CHARS);
  self->terms_box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->name_label));
  self->quantity_label = add_number (GTK_BOX (head), RC_QUOTE_QUANTITY_CHARS);
  self->price_label = add_number (GTK_BOX (head), RC_QUOTE_PRICE_CHARS);
  self->amount_label = add_number (GTK_BOX (head), RC_QUOTE_AMOUNT_CHARS);
  gtk_widget_set_hexpand (head, TRUE);
  gtk_box_append (GTK_BOX (inside), GTK_WIDGET (self->said_label));
  gtk_box_append (GTK_BOX (inside), GTK_WIDGET (self->terms_box));
  gtk_widget_add_css_class (inside, "opened");
  gtk_label_set_selectable (self->said_label, TRUE);
  gtk_widget_set_focusable (GTK_WIDGET (self->said_label), FALSE);
  gtk_expander_set_label_widget (self->expander, head);
  gtk_expander_set_child (self->expander, inside);
  gtk_widget_set_hexpand (GTK_WIDGET (self->expander), TRUE);
  g_signal_connect_swapped (self->expander, "notify::expanded", G_CALLBACK (show_open), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->expander));
  gtk_widget_add_css_class (GTK_WIDGET (self), "quote-line");
}

static void
rc_quote_line_row_finalize (GObject *object)
{
  RcQuoteLineRow *self = RC_QUOTE_LINE_ROW (object);

  g_clear_object (&self->document);
  g_ptr_array_unref (self->said);
  g_free (self->item);
  G_OBJECT_CLASS (rc_quote_line_row_parent_class)->finalize (object);
}

static void
rc_quote_line_row_class_init (RcQuoteLineRowClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_quote_line_row_finalize;
}

GtkWidget *
rc_quote_line_row_new (void)
{
  return g_object_new (RC_TYPE_QUOTE_LINE_ROW, NULL);
}
