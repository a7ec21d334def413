#include "length-rows.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

struct _RcLengthRows
{
  GtkBox parent_instance;

  RcLengthRowsWords    words;
  GtkBox              *rows;
  RcLengthUnit         bare_unit;
  const RcLengthStyle *style;
};

G_DEFINE_FINAL_TYPE (RcLengthRows, rc_length_rows, GTK_TYPE_BOX)

/* Of one row. */
typedef struct
{
  GtkWidget *number, *lengths[2];
} Row;

#define ROW_KEY "rowcut-row"

static void
on_remove (GtkButton *button, GtkWidget *box)
{
  gtk_box_remove (GTK_BOX (gtk_widget_get_parent (box)), box);
}

static GtkWidget *
new_length (RcLengthRows *self, guint which, RcLength value)
{
  GtkWidget       *entry = rc_length_entry_new ();
  g_autofree char *label = g_strdup_printf ("%s: %s", self->words.name, self->words.labels[which]);

  rc_length_entry_set_units (RC_LENGTH_ENTRY (entry), self->bare_unit, self->style);
  if (value >= 0)
    rc_length_entry_set_value (RC_LENGTH_ENTRY (entry), value);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), self->words.labels[which]);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  return entry;
}

static GtkWidget *
new_number (RcLengthRows *self, const char *number)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_text (GTK_EDITABLE (entry), number != NULL ? number : "");
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 4);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 4);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ ("No."));
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, self->words.name, -1);
  return entry;
}

void
rc_length_rows_add (RcLengthRows *self, const char *number, RcLength first, RcLength second)
{
  GtkWidget       *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget       *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *label = g_strdup_printf (_ ("Take away: %s"), self->words.name);
  Row             *row = g_new0 (Row, 1);

  if (self->words.has_number)
    gtk_box_append (GTK_BOX (box), row->number = new_number (self, number));
  gtk_box_append (GTK_BOX (box), row->lengths[0] = new_length (self, 0, first));
  gtk_box_append (GTK_BOX (box), gtk_label_new (self->words.between));
  gtk_box_append (GTK_BOX (box), row->lengths[1] = new_length (self, 1, second));
  gtk_widget_set_tooltip_text (remove, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove), box);
  gtk_box_append (GTK_BOX (box), remove);
  g_object_set_data_full (G_OBJECT (box), ROW_KEY, row, g_free);
  gtk_box_append (self->rows, box);
}

void
rc_length_rows_clear (RcLengthRows *self, RcLengthUnit bare_unit, const RcLengthStyle *style)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->rows))) != NULL)
    gtk_box_remove (self->rows, child);
  self->bare_unit = bare_unit;
  self->style = style;
}

static GtkWidget *
get_row (RcLengthRows *self, guint row)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->rows));

  while (child != NULL && row-- > 0)
    child = gtk_widget_get_next_sibling (child);
  return child;
}

guint
rc_length_rows_get_n (RcLengthRows *self)
{
  guint n = 0;

  while (get_row (self, n) != NULL)
    n++;
  return n;
}

gboolean
rc_length_rows_read (RcLengthRows *self, guint row, const char **number, RcLength *first, RcLength *second,
                     GError **error)
{
  const Row *widgets = g_object_get_data (G_OBJECT (get_row (self, row)), ROW_KEY);
  RcLength  *lengths[2] = { first, second };
  gboolean   is_blank = TRUE;

  for (guint i = 0; i < 2; i++)
    is_blank = is_blank && *gtk_editable_get_text (GTK_EDITABLE (widgets->lengths[i])) == '\0';
  for (guint i = 0; i < 2; i++)
    {
      RcLengthEntry *entry = RC_LENGTH_ENTRY (widgets->lengths[i]);
      const char    *fault = rc_length_entry_get_fault (entry);

      *lengths[i] = is_blank ? 0 : rc_length_entry_get_value (entry);
      if (!is_blank && (fault != NULL || *gtk_editable_get_text (GTK_EDITABLE (entry)) == '\0'))
        {
          g_set_error (error, RC_ERROR, RC_ERROR_PARSE, "%s %u, %s: %s", self->words.name, row + 1,
                       self->words.labels[i], fault != NULL ? fault : _ ("nothing is written"));
          gtk_widget_grab_focus (GTK_WIDGET (entry));
          return FALSE;
        }
    }
  if (number != NULL)
    *number = widgets->number != NULL ? gtk_editable_get_text (GTK_EDITABLE (widgets->number)) : "";
  return TRUE;
}

static void
on_add (RcLengthRows *self)
{
  rc_length_rows_add (self, NULL, -1, -1);
  const Row *row = g_object_get_data (G_OBJECT (get_row (self, rc_length_rows_get_n (self) - 1)), ROW_KEY);
  gtk_widget_grab_focus (row->number != NULL ? row->number : row->lengths[0]);
}

static void
rc_length_rows_class_init (RcLengthRowsClass *klass)
{
}

static void
rc_length_rows_init (RcLengthRows *self)
{
  self->style = &RC_LENGTH_STYLE_IMPERIAL;
  self->rows = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
}

GtkWidget *
rc_length_rows_new (const RcLengthRowsWords *words)
{
  RcLengthRows *self = g_object_new (RC_TYPE_LENGTH_ROWS, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 4, NULL);
  GtkWidget    *add = gtk_button_new_with_mnemonic (words->add);

  self->words = *words;
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (on_add), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->rows));
  gtk_box_append (GTK_BOX (self), add);
  return GTK_WIDGET (self);
}
