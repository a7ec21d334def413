#include "order-columns.h"

#include <glib/gi18n-lib.h>

#include "row-item.h"

static char *
say_number (gconstpointer value, gpointer data)
{
  return g_strdup (((const RcPurchase *)value)->number);
}

static char *
say_supplier (gconstpointer value, gpointer data)
{
  const char *supplier = ((const RcPurchase *)value)->supplier;

  return g_strdup (*supplier != '\0' ? supplier : _ ("supplier not named"));
}

/* With the day of the state. */
static char *
say_state (gconstpointer value, gpointer data)
{
  const RcPurchase *order = value;
  const char       *days[RC_N_PURCHASE_STATES] = { [RC_PURCHASE_MADE] = order->made,
                                                   [RC_PURCHASE_SENT] = order->sent,
                                                   [RC_PURCHASE_CONFIRMED] = order->confirmed,
                                                   [RC_PURCHASE_PARTLY] = order->received,
                                                   [RC_PURCHASE_RECEIVED] = order->received };

  return g_strdup_printf ("%s %s", rc_purchase_state_get_label (order->state),
                          days[order->state] != NULL ? days[order->state] : "");
}

static char *
say_due (gconstpointer value, gpointer data)
{
  return g_strdup (((const RcPurchase *)value)->due);
}

static char *
say_jobs (gconstpointer value, gpointer data)
{
  return g_strdup (((const RcPurchase *)value)->jobs);
}

static char *
say_open (gconstpointer value, gpointer data)
{
  guint n = ((const RcPurchase *)value)->n_open;

  return g_strdup_printf (ngettext ("%u line", "%u lines", n), n);
}

static char *
say_total (gconstpointer value, gpointer data)
{
  const RcPurchase *order = value;

  return rc_money_format (order->total, &order->currency);
}

/* A line of an order, with what has come of it. */
typedef struct
{
  RcQuoteLine *line;
  gint64       received_micro;
  RcCurrency   currency;
} Line;

static void
line_free (gpointer data)
{
  rc_quote_line_free (((Line *)data)->line);
  g_free (data);
}

static char *
dup_quantity (gint64 quantity_micro, RcUnit unit)
{
  g_autofree char *text = rc_quantity_format (quantity_micro, 3);

  return g_strdup_printf ("%s %s", text, rc_unit_get_label (unit));
}

static char *
say_line (gconstpointer value, gpointer data)
{
  return g_strdup (((const Line *)value)->line->name);
}

static char *
say_ordered (gconstpointer value, gpointer data)
{
  const Line *line = value;

  return dup_quantity (line->line->quantity_micro, line->line->unit);
}

static char *
say_come (gconstpointer value, gpointer data)
{
  const Line *line = value;

  return line->received_micro > 0 ? dup_quantity (line->received_micro, line->line->unit) : g_strdup ("");
}

static char *
say_price (gconstpointer value, gpointer data)
{
  const Line *line = value;

  return rc_money_format (line->line->price, &line->currency);
}

static char *
say_amount (gconstpointer value, gpointer data)
{
  const Line *line = value;

  return rc_money_format (line->line->amount, &line->currency);
}

void
rc_order_columns_add (GtkColumnView *orders, GtkColumnView *order_lines)
{
  const RcColumn columns[]
      = { { _ ("Order"), say_number, 7, FALSE, FALSE }, { _ ("Supplier"), say_supplier, 18, FALSE, TRUE },
          { _ ("State"), say_state, 20, FALSE, FALSE }, { _ ("Due on"), say_due, 11, FALSE, FALSE },
          { _ ("Jobs"), say_jobs, 16, FALSE, TRUE },    { _ ("Still open"), say_open, 9, FALSE, FALSE },
          { _ ("Total"), say_total, 14, TRUE, FALSE } };
  const RcColumn lines[] = { { _ ("Goods"), say_line, 24, FALSE, TRUE },
                             { _ ("Ordered"), say_ordered, 12, TRUE, FALSE },
                             { _ ("Has come"), say_come, 12, TRUE, FALSE },
                             { _ ("Price"), say_price, 10, TRUE, FALSE },
                             { _ ("Amount"), say_amount, 12, TRUE, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    rc_row_item_add_column (orders, &columns[i], NULL);
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    rc_row_item_add_column (order_lines, &lines[i], NULL);
}

GListModel *
rc_order_columns_new_lines (const RcPurchase *order)
{
  GPtrArray *lines = g_ptr_array_new ();
  for (guint i = 0; i < order->lines->len; i++)
    {
      Line *line = g_new0 (Line, 1);

      line->line = rc_quote_line_copy (g_ptr_array_index (order->lines, i));
      line->received_micro = g_array_index (order->received_micro, gint64, i);
      line->currency = order->currency;
      g_ptr_array_add (lines, line);
    }
  return rc_row_item_new_list (lines, line_free);
}
