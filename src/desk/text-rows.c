#include "text-rows.h"

#include <glib/gi18n-lib.h>

#include "form-field.h"

struct _RcTextRows
{
  GtkBox parent_instance;

  RcTextRowsWords words;
  GtkBox         *rows;
};

G_DEFINE_FINAL_TYPE (RcTextRows, rc_text_rows, GTK_TYPE_BOX)

typedef struct
{
  char      *key; /* nullable */
  GtkWidget *entries[RC_TEXT_ROWS_COLUMNS];
} Row;

#define ROW_KEY "rowcut-row"

static void
row_free (gpointer row)
{
  g_free (((Row *)row)->key);
  g_free (row);
}

static void
on_remove (GtkButton *button, GtkWidget *box)
{
  gtk_box_remove (GTK_BOX (gtk_widget_get_parent (box)), box);
}

static GtkWidget *
new_entry (RcTextRows *self, guint column, const char *text)
{
  const char *label = self->words.labels[column];
  GtkWidget  *entry = rc_form_entry_new (label, column == 0 ? 20 : MAX (5, (int)g_utf8_strlen (label, -1)));

  gtk_editable_set_text (GTK_EDITABLE (entry), text != NULL ? text : "");
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 12);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_widget_set_hexpand (entry, column == 0);
  gtk_widget_set_tooltip_text (entry, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  return entry;
}

void
rc_text_rows_add (RcTextRows *self, const char *key, const char *const *texts)
{
  GtkWidget       *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget       *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *label = g_strdup_printf (_ ("Take away: %s"), self->words.name);
  Row             *row = g_new0 (Row, 1);

  row->key = g_strdup (key);
  for (guint i = 0; i < RC_TEXT_ROWS_COLUMNS; i++)
    gtk_box_append (GTK_BOX (box), row->entries[i] = new_entry (self, i, texts != NULL ? texts[i] : NULL));
  gtk_widget_set_tooltip_text (remove, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove), box);
  gtk_box_append (GTK_BOX (box), remove);
  g_object_set_data_full (G_OBJECT (box), ROW_KEY, row, row_free);
  gtk_box_append (self->rows, box);
}

void
rc_text_rows_clear (RcTextRows *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->rows))) != NULL)
    gtk_box_remove (self->rows, child);
}

/* NULL: there is none. */
static Row *
get_row (RcTextRows *self, guint row)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->rows));

  while (child != NULL && row-- > 0)
    child = gtk_widget_get_next_sibling (child);
  return child != NULL ? g_object_get_data (G_OBJECT (child), ROW_KEY) : NULL;
}

guint
rc_text_rows_get_n (RcTextRows *self)
{
  guint n = 0;

  while (get_row (self, n) != NULL)
    n++;
  return n;
}

void
rc_text_rows_set_key (RcTextRows *self, guint row, const char *key)
{
  char *copy = g_strdup (key); /* it may be the row's own */

  g_free (get_row (self, row)->key);
  get_row (self, row)->key = copy;
}

const char *
rc_text_rows_get_key (RcTextRows *self, guint row)
{
  return get_row (self, row)->key;
}

const char *
rc_text_rows_get_text (RcTextRows *self, guint row, guint column)
{
  return gtk_editable_get_text (GTK_EDITABLE (get_row (self, row)->entries[column]));
}

gboolean
rc_text_rows_is_blank (RcTextRows *self, guint row)
{
  for (guint i = 0; i < RC_TEXT_ROWS_COLUMNS; i++)
    if (*rc_text_rows_get_text (self, row, i) != '\0')
      return FALSE;
  return TRUE;
}

void
rc_text_rows_show_fault (RcTextRows *self, guint row, guint column, GError **error)
{
  g_prefix_error (error, "%s %u, %s: ", self->words.name, row + 1, self->words.labels[column]);
  gtk_widget_grab_focus (get_row (self, row)->entries[column]);
}

static void
on_add (RcTextRows *self)
{
  guint n = rc_text_rows_get_n (self);

  rc_text_rows_add (self, NULL, NULL);
  gtk_widget_grab_focus (get_row (self, n)->entries[0]);
}

GtkWidget *
rc_text_rows_new (const RcTextRowsWords *words)
{
  RcTextRows *self = g_object_new (RC_TYPE_TEXT_ROWS, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 4, NULL);
  GtkWidget  *add = gtk_button_new_with_mnemonic (words->add);

  self->words = *words;
  self->rows = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (on_add), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->rows));
  gtk_box_append (GTK_BOX (self), add);
  return GTK_WIDGET (self);
}

static void
rc_text_rows_class_init (RcTextRowsClass *klass)
{
}

static void
rc_text_rows_init (RcTextRows *self)
{
}
