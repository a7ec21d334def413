#include "order-arrival.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "conversion.h"
#include "length-entry.h"
#include "rowcut-error.h"
#include "usual-units.h"

struct _RcOrderArrival
{
  GtkBox parent_instance;

  GtkGrid   *grid;
  char      *number; /* of the order */
  GPtrArray *rows;   /* of Row */
};

G_DEFINE_FINAL_TYPE (RcOrderArrival, rc_order_arrival, GTK_TYPE_BOX)

/* Of one open line. */
typedef struct
{
  guint        line;
  char        *goods_id, *name;
  gint64       open_micro;
  RcLength     open_length; /* of carpet, as ordered; <= 0: not known */
  GtkEditable *quantity;
  GtkEditable *length, *lot, *place; /* of carpet; NULL for other goods */
  RcGoods     *carpet;
  RcUnit       unit;        /* of the quantity */
  gboolean     is_measured; /* the length has been written: it is no longer what the quantity comes to */
} Row;

static void
row_free (Row *row)
{
  rc_goods_free (row->carpet);
  g_free (row->goods_id);
  g_free (row->name);
  g_free (row);
}

static GtkEditable *
add_entry (RcOrderArrival *self, GtkWidget *entry, const char *text, const char *label, int column, int row)
{
  if (text != NULL)
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 9);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_grid_attach (self->grid, entry, column, row, 1, 1);
  return GTK_EDITABLE (entry);
}

static void
add_label (RcOrderArrival *self, const char *text, int column, int row, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (self->grid, label, column, row, 1, 1);
}

static const RcGoods *
find_carpet (const RcPriceBook *book, const RcJob *job, const char *id)
{
  const RcGoods *goods = rc_price_book_find_goods (book, id);

  if (goods == NULL && job != NULL)
    goods = rc_job_find_goods (job, id);
  return goods != NULL && goods->kind == RC_GOODS_CARPET ? goods : NULL;
}

static void
show_length (Row *row, gint64 quantity_micro)
{
  RcLength length = rc_conversion_get_length (row->carpet, quantity_micro, row->unit);

  if (length > 0)
    rc_length_entry_set_value (RC_LENGTH_ENTRY (row->length), length);
}

/* Of what has come in part the roll is as much shorter, until it is measured. */
static void
on_quantity_changed (Row *row)
{
  gint64 quantity;

  if (!row->is_measured && rc_quantity_parse (gtk_editable_get_text (row->quantity), &quantity, NULL))
    show_length (row, quantity);
}

static void
on_length_edited (Row *row)
{
  row->is_measured = TRUE;
}

static void
add_row (RcOrderArrival *self, const RcQuoteLine *line, guint index, gint64 open_micro, const RcGoods *carpet,
         const RcJob *job)
{
  Row             *row = g_new0 (Row, 1);
  int              at = (int)self->rows->len + 1;
  g_autofree char *open = rc_quantity_format (open_micro, 3);
  g_autofree char *said = g_strdup_printf (_ ("%s %s open"), open, rc_unit_get_label (line->unit));

  row->line = index;
  row->goods_id = g_strdup (line->item);
  row->name = g_strdup (line->name);
  row->open_micro = open_micro;
  add_label (self, line->name, 0, at, "text");
  add_label (self, said, 1, at, "detail");
  row->quantity = add_entry (self, gtk_entry_new (), open, _ ("Quantity that has come"), 2, at);
  if (carpet != NULL)
    {
      GtkWidget *length = rc_length_entry_new ();

      row->carpet = rc_goods_copy (carpet);
      row->unit = line->unit;
      rc_length_entry_set_units (RC_LENGTH_ENTRY (length), rc_usual_units_get_bare (job),
                                 rc_usual_units_get_style (job));
      row->open_length = rc_conversion_get_length (carpet, open_micro, line->unit);
      row->length = add_entry (self, length, NULL, _ ("Length of the roll as measured"), 3, at);
      show_length (row, open_micro);
      g_signal_connect_swapped (row->quantity, "changed", G_CALLBACK (on_quantity_changed), row);
      g_signal_connect_swapped (length, "edited", G_CALLBACK (on_length_edited), row);
      row->lot = add_entry (self, gtk_entry_new (), NULL, _ ("Dye lot"), 4, at);
      row->place = add_entry (self, gtk_entry_new (), NULL, _ ("Place"), 5, at);
    }
  g_ptr_array_add (self->rows, row);
}

void
rc_order_arrival_open (RcOrderArrival *self, const RcPurchase *order, const RcPriceBook *book, const RcJob *job)
{
  const char *const heads[]
      = { _ ("Goods"), _ ("Ordered"), _ ("Has come"), _ ("Roll measured"), _ ("Dye lot"), _ ("Place") };
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->grid))) != NULL)
    gtk_grid_remove (self->grid, child);
  g_ptr_array_set_size (self->rows, 0);
  g_free (self->number);
  self->number = g_strdup (order->number);
  for (guint i = 0; i < G_N_ELEMENTS (heads); i++)
    add_label (self, heads[i], (int)i, 0, "column-head");
  for (guint i = 0; i < order->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (order->lines, i);
      gint64             open = line->quantity_micro - g_array_index (order->received_micro, gint64, i);

      if (open > 0)
        add_row (self, line, i, open, find_carpet (book, job, line->item), job);
    }
  if (self->rows->len > 0)
    gtk_widget_grab_focus (GTK_WIDGET (((const Row *)g_ptr_array_index (self->rows, 0))->quantity));
}

/* Of the roll that has come, what was ordered: more than that is the shop's own. */
static RcLength
compute_kept (const Row *row, gint64 quantity, const RcRoll *roll)
{
  RcLength ordered;

  return row->open_length > 0 && rc_multiply_divide (row->open_length, quantity, row->open_micro, &ordered)
             ? MIN (ordered, roll->length)
             : roll->length;
}

/* *roll (transfer full) is the roll that has come; NULL for other goods. */
static gboolean
read_row (const Row *row, gint64 *quantity, RcRoll **roll, GError **error)
{
  const char *text = gtk_editable_get_text (row->quantity);
  GError     *fault = NULL;

  *quantity = 0;
  *roll = NULL;
  if (*text != '\0' && !rc_quantity_parse (text, quantity, &fault))
    {
      g_propagate_prefixed_error (error, fault, "%s: ", row->name);
      return FALSE;
    }
  if (row->length == NULL || *quantity == 0)
    return TRUE;
  if (rc_length_entry_get_fault (RC_LENGTH_ENTRY (row->length)) != NULL
      || rc_length_entry_get_value (RC_LENGTH_ENTRY (row->length)) <= 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("%s: write the length of the roll as it is measured"),
                   row->name);
      return FALSE;
    }
  *roll = rc_roll_new (NULL, row->goods_id, rc_length_entry_get_value (RC_LENGTH_ENTRY (row->length)));
  (*roll)->lot = g_strdup (gtk_editable_get_text (row->lot));
  (*roll)->place = g_strdup (gtk_editable_get_text (row->place));
  return TRUE;
}

/* The rows that something is written in, and their rolls (of RcRoll), to which they point. */
static gboolean
read_rows (RcOrderArrival *self, GArray *arrivals, GPtrArray *rolls, GError **error)
{
  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = g_ptr_array_index (self->rows, i);
      RcArrival  arrival = { .line = row->line };

      if (!read_row (row, &arrival.quantity_micro, &arrival.roll, error))
        return FALSE;
      if (arrival.roll != NULL)
        {
          g_ptr_array_add (rolls, arrival.roll);
          arrival.kept = compute_kept (row, arrival.quantity_micro, arrival.roll);
        }
      if (arrival.quantity_micro != 0)
        g_array_append_val (arrivals, arrival);
    }
  return TRUE;
}

char *
rc_order_arrival_do (RcOrderArrival *self, RcStore *store, GError **error)
{
  g_autoptr (GArray) arrivals = g_array_new (FALSE, FALSE, sizeof (RcArrival));
  g_autoptr (GPtrArray) rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  g_autofree char *today = rc_clock_dup_today (), *now = rc_clock_dup_now ();
  g_autoptr (GString) told = g_string_new (NULL);

  if (!read_rows (self, arrivals, rolls, error)
      || !rc_store_receive_order (store, self->number, arrivals, today, now, error))
    return NULL;
  g_string_printf (told, _ ("Noted what came in of order %s."), self->number);
  for (guint i = 0; i < rolls->len; i++)
    g_string_append_printf (told, _ (" Roll %s is in stock, kept for its job."),
                            ((const RcRoll *)g_ptr_array_index (rolls, i))->id);
  return g_string_free (g_steal_pointer (&told), FALSE);
}

static void
rc_order_arrival_finalize (GObject *object)
{
  RcOrderArrival *self = RC_ORDER_ARRIVAL (object);

  g_ptr_array_unref (self->rows);
  g_free (self->number);
  G_OBJECT_CLASS (rc_order_arrival_parent_class)->finalize (object);
}

static void
rc_order_arrival_class_init (RcOrderArrivalClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_order_arrival_finalize;
}

static void
rc_order_arrival_init (RcOrderArrival *self)
{
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify)row_free);
  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_column_spacing (self->grid, 12);
  gtk_grid_set_row_spacing (self->grid, 4);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->grid));
}
