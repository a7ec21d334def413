#include "quote-view.h"

#include <glib/gi18n-lib.h>

#include "quote-line-row.h"

struct _RcQuoteView
{
  GtkBox parent_instance;

  GtkBox         *lines_box;
  RcQuoteLineRow *total_row;
  GPtrArray      *keys;     /* of char*: what the rows are about, in order */
  RcDocument     *document; /* that they can be settled in; for comparing only */
};

G_DEFINE_FINAL_TYPE (RcQuoteView, rc_quote_view, GTK_TYPE_BOX)

static RcQuoteLineRow *
get_row (RcQuoteView *self, guint line)
{
  GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->lines_box));

  for (guint i = 0; row != NULL && i < line; i++)
    row = gtk_widget_get_next_sibling (row);
  return row != NULL ? RC_QUOTE_LINE_ROW (row) : self->total_row;
}

guint
rc_quote_view_get_n_lines (RcQuoteView *self)
{
  return self->keys->len;
}

void
rc_quote_view_open (RcQuoteView *self, guint line)
{
  rc_quote_line_row_set_open (get_row (self, line), TRUE);
}

char *
rc_quote_view_dup_said (RcQuoteView *self, guint line)
{
  RcQuoteLineRow *row = get_row (self, line);

  return rc_quote_line_row_is_open (row) ? rc_quote_line_row_dup_said (row) : NULL;
}

/* A line of one item, from stock or not, is the same line after an edit. */
static char *
dup_key (const RcQuoteLine *line)
{
  return g_strdup_printf ("%s%s", line->item, line->from_stock ? "/stock" : "");
}

static gboolean
has_lines (RcQuoteView *self, const RcQuote *quote)
{
  gboolean is_same = self->keys->len == quote->lines->len;

  for (guint i = 0; is_same && i < quote->lines->len; i++)
    {
      g_autofree char *key = dup_key (g_ptr_array_index (quote->lines, i));

      is_same = g_str_equal (key, g_ptr_array_index (self->keys, i));
    }
  return is_same;
}

/* Rows for the lines; those open stay so. */
static void
make_rows (RcQuoteView *self, const RcQuote *quote)
{
  g_autoptr (GHashTable) open = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  GtkWidget *child;

  for (guint i = 0; i < self->keys->len; i++)
    if (rc_quote_line_row_is_open (get_row (self, i)))
      g_hash_table_add (open, g_strdup (g_ptr_array_index (self->keys, i)));
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->lines_box))) != NULL)
    gtk_box_remove (self->lines_box, child);
  g_ptr_array_set_size (self->keys, 0);
  for (guint i = 0; i < quote->lines->len; i++)
    {
      char *key = dup_key (g_ptr_array_index (quote->lines, i));

      child = rc_quote_line_row_new ();
      gtk_box_append (self->lines_box, child);
      g_ptr_array_add (self->keys, key);
      if (g_hash_table_contains (open, key))
        rc_quote_line_row_set_open (RC_QUOTE_LINE_ROW (child), TRUE);
    }
}

void
rc_quote_view_show (RcQuoteView *self, const RcQuote *quote, const RcPlan *plan, RcDocument *document)
{
  if (self->document != document || !has_lines (self, quote))
    make_rows (self, quote);
  self->document = document;
  for (guint i = 0; i < quote->lines->len; i++)
    rc_quote_line_row_show_line (get_row (self, i), g_ptr_array_index (quote->lines, i), &quote->currency, plan,
                                 document);
  rc_quote_line_row_show_total (self->total_row, quote);
}

static void
add_head (GtkBox *box, const char *text, int width)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), width > 0 ? 1 : 0);
  gtk_label_set_width_chars (GTK_LABEL (label), width);
  gtk_widget_set_hexpand (label, width == 0);
  gtk_widget_add_css_class (label, "column-head");
  gtk_box_append (box, label);
}

static void
rc_quote_view_init (RcQuoteView *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->keys = g_ptr_array_new_with_free_func (g_free);
  self->lines_box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  self->total_row = RC_QUOTE_LINE_ROW (rc_quote_line_row_new ());
  add_head (GTK_BOX (head), _ ("Goods and work"), 0);
  add_head (GTK_BOX (head), _ ("Quantity"), RC_QUOTE_QUANTITY_CHARS);
  add_head (GTK_BOX (head), _ ("Price"), RC_QUOTE_PRICE_CHARS);
  add_head (GTK_BOX (head), _ ("Amount"), RC_QUOTE_AMOUNT_CHARS);
  gtk_box_append (GTK_BOX (self), head);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->lines_box));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->total_row));
  gtk_widget_add_css_class (GTK_WIDGET (self), "quote-view");
}

static void
rc_quote_view_finalize (GObject *object)
{
  g_ptr_array_unref (RC_QUOTE_VIEW (object)->keys);
  G_OBJECT_CLASS (rc_quote_view_parent_class)->finalize (object);
}

static void
rc_quote_view_class_init (RcQuoteViewClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_quote_view_finalize;
}

GtkWidget *
rc_quote_view_new (void)
{
  return g_object_new (RC_TYPE_QUOTE_VIEW, NULL);
}
