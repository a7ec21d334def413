#include "stock-commands.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#include "command.h"
#include "json-out.h"
#include "rowcut-error.h"
#include "text-table.h"

/* --- rolls --- */

static void
add_roll_json (RcJson *json, RcStore *store, const RcRoll *roll)
{
  RcLength free_length = 0;

  rc_store_get_available (store, roll->id, NULL, &free_length, NULL);
  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "id", roll->id);
  rc_json_add_string (json, "goods", roll->goods_id);
  rc_json_add_string (json, "lot", roll->lot);
  rc_json_add_length (json, "length", roll->length);
  rc_json_add_length (json, "free", free_length);
  rc_json_add_length (json, "width", roll->width);
  rc_json_add_bool (json, "remnant", roll->remnant);
  rc_json_add_string (json, "place", roll->place);
  rc_json_end_object (json);
}

static void
add_roll_row (RcTextTable *table, RcStore *store, const RcRoll *roll)
{
  RcLength         free_length = 0;
  g_autofree char *length = rc_length_format (roll->length, &RC_LENGTH_STYLE_IMPERIAL), *left = NULL;

  rc_store_get_available (store, roll->id, NULL, &free_length, NULL);
  left = rc_length_format (free_length, &RC_LENGTH_STYLE_IMPERIAL);
  rc_text_table_add (table, roll->id);
  rc_text_table_add (table, roll->goods_id);
  rc_text_table_add (table, roll->lot);
  rc_text_table_add (table, length);
  rc_text_table_add (table, left);
  rc_text_table_add (table, roll->place);
}

int
rc_store_run_stock (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rolls = rc_store_load_rolls (store, &error);
  g_autoptr (RcTextTable) table = rc_text_table_new ("lllrrl");

  if (rolls == NULL)
    return rc_store_run_fail ("stock", error);
  if (options->json)
    {
      g_autoptr (RcJson) json = rc_json_new ();

      rc_json_begin_object (json, NULL);
      rc_json_begin_array (json, "rolls");
      for (guint i = 0; i < rolls->len; i++)
        add_roll_json (json, store, g_ptr_array_index (rolls, i));
      rc_json_end_array (json);
      rc_json_end_object (json);
      return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
    }
  rc_text_table_add (table, _ ("Roll"));
  rc_text_table_add (table, _ ("Goods"));
  rc_text_table_add (table, _ ("Lot"));
  rc_text_table_add (table, _ ("Length"));
  rc_text_table_add (table, _ ("Free"));
  rc_text_table_add (table, _ ("Place"));
  for (guint i = 0; i < rolls->len; i++)
    add_roll_row (table, store, g_ptr_array_index (rolls, i));
  rc_text_table_print (table, TRUE);
  return RC_EXIT_DONE;
}

static gboolean
parse_length (const char *text, RcLength *length, GError **error)
{
  return rc_length_parse (text, RC_LENGTH_UNIT_FOOT_INCH, length, error);
}

/* ROLL GOODS LENGTH [LOT [PLACE]] */
int
rc_store_run_receive (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcRoll) roll = rc_roll_new (arguments[0], arguments[1], 0);
  g_autofree char *now = rc_command_dup_now (), *id = NULL;

  if (!parse_length (arguments[2], &roll->length, &error))
    return rc_store_run_fail ("receive", error);
  roll->lot = g_strdup (arguments[3]);
  roll->place = arguments[3] != NULL ? g_strdup (arguments[4]) : NULL;
  id = rc_store_receive_roll (store, roll, NULL, now, &error);
  if (id == NULL)
    return rc_store_run_fail ("receive", error);
  printf (_ ("Roll %s is in stock.\n"), id);
  return RC_EXIT_DONE;
}

/* ROLL JOB LENGTH */
int
rc_store_run_reserve (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *now = rc_command_dup_now ();
  RcLength         length;

  if (!parse_length (arguments[2], &length, &error)
      || !rc_store_reserve_roll (store, arguments[0], arguments[1], length, now, &error))
    return rc_store_run_fail ("reserve", error);
  printf (_ ("%s of roll %s is kept for job %s.\n"), arguments[2], arguments[0], arguments[1]);
  return RC_EXIT_DONE;
}

/* "3:12'x14' 2\"" is piece 3, "remnant:4'x9'" what is kept. */
static gboolean
read_piece (const char *text, GPtrArray *pieces, GPtrArray *remnants, GError **error)
{
  const char      *colon = strchr (text, ':'), *by = colon != NULL ? strchr (colon, 'x') : NULL;
  g_autofree char *name = NULL, *across = NULL;
  RcLength         width, length;

  if (by == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is no piece: as 3:12'x14'2\", or remnant:4'x9'"), text);
      return FALSE;
    }
  name = g_strndup (text, (gsize)(colon - text));
  across = g_strndup (colon + 1, (gsize)(by - colon - 1));
  if (!parse_length (across, &width, error) || !parse_length (by + 1, &length, error))
    return FALSE;
  if (g_str_equal (name, "remnant"))
    {
      RcRoll *remnant = rc_roll_new (NULL, NULL, length);

      remnant->width = width;
      g_ptr_array_add (remnants, remnant);
    }
  else
    g_ptr_array_add (pieces, rc_cut_piece_new (name, width, length));
  return TRUE;
}

/* ROLL JOB LENGTH [PIECE:WIDTHxLENGTH...] */
int
rc_store_run_cut (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_piece_free);
  g_autoptr (GPtrArray) remnants = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  g_autofree char *now = rc_command_dup_now ();
  RcLength         length;

  for (guint i = 3; arguments[i] != NULL; i++)
    if (!read_piece (arguments[i], pieces, remnants, &error))
      return rc_store_run_fail ("cut", error);
  if (!parse_length (arguments[2], &length, &error)
      || !rc_store_cut_roll (store, arguments[0], arguments[1], length, pieces, remnants, -1, now, &error))
    return rc_store_run_fail ("cut", error);
  printf (_ ("%s is cut off roll %s for job %s.\n"), arguments[2], arguments[0], arguments[1]);
  for (guint i = 0; i < remnants->len; i++)
    printf (_ ("Remnant %s is in stock.\n"), ((const RcRoll *)g_ptr_array_index (remnants, i))->id);
  return RC_EXIT_DONE;
}

/* [ROLL] */
int
rc_store_run_history (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) moves = rc_store_find_moves (store, arguments[0], &error);
  g_autoptr (RcTextTable) table = rc_text_table_new ("lllrrl");

  if (moves == NULL)
    return rc_store_run_fail ("history", error);
  for (guint i = 0; i < moves->len; i++)
    {
      const RcRollMove *move = g_ptr_array_index (moves, i);
      g_autofree char  *length = rc_length_format (ABS (move->length), &RC_LENGTH_STYLE_IMPERIAL);
      g_autofree char  *balance = rc_length_format (move->balance, &RC_LENGTH_STYLE_IMPERIAL);

      rc_text_table_add (table, move->made);
      rc_text_table_add (table, move->roll_id);
      rc_text_table_add (table, rc_move_kind_get_label (move->kind));
      rc_text_table_add_take (table, g_strdup_printf ("%s%s", move->length < 0 ? "−" : "", length));
      rc_text_table_add (table, balance);
      rc_text_table_add (table, move->notes != NULL ? move->notes : "");
    }
  rc_text_table_print (table, FALSE);
  return RC_EXIT_DONE;
}

/* --- quotations --- */

int
rc_store_run_quotations (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) quotes = rc_store_find_quotes (store, arguments[0], &error);
  g_autoptr (RcTextTable) table = rc_text_table_new ("lllllr");

  if (quotes == NULL)
    return rc_store_run_fail ("quotations", error);
  for (guint i = 0; i < quotes->len; i++)
    {
      const RcIssuedQuote *quote = g_ptr_array_index (quotes, i);
      g_autofree char     *total = rc_money_format (quote->total, &quote->currency);

      rc_text_table_add (table, quote->number);
      rc_text_table_add (table, quote->job_id);
      rc_text_table_add (table, quote->date);
      rc_text_table_add (table, quote->customer);
      rc_text_table_add (table, rc_quote_state_get_label (quote->state));
      rc_text_table_add (table, total);
    }
  rc_text_table_print (table, FALSE);
  return RC_EXIT_DONE;
}

/* NUMBER */
int
rc_store_run_accept (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *today = rc_command_dup_today ();

  if (!rc_store_mark_quote (store, arguments[0], RC_QUOTE_ACCEPTED, today, NULL, &error))
    return rc_store_run_fail ("accept", error);
  printf (_ ("Quotation %s is accepted.\n"), arguments[0]);
  return RC_EXIT_DONE;
}

/* --- orders --- */

int
rc_store_run_orders (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) orders = rc_store_find_purchases (store, arguments[0], &error);
  g_autoptr (RcTextTable) table = rc_text_table_new ("lllllr");

  if (orders == NULL)
    return rc_store_run_fail ("orders", error);
  for (guint i = 0; i < orders->len; i++)
    {
      const RcPurchase *order = g_ptr_array_index (orders, i);
      g_autofree char  *total = rc_money_format (order->total, &order->currency);

      rc_text_table_add (table, order->number);
      rc_text_table_add (table, order->supplier);
      rc_text_table_add (table, order->made);
      rc_text_table_add (table, order->jobs);
      rc_text_table_add (table, rc_purchase_state_get_label (order->state));
      rc_text_table_add (table, total);
    }
  rc_text_table_print (table, FALSE);
  return RC_EXIT_DONE;
}

/* ORDER */
int
rc_store_run_cancel (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *today = rc_command_dup_today ();

  if (!rc_store_cancel_purchase (store, arguments[0], today, &error))
    return rc_store_run_fail ("cancel", error);
  printf (_ ("Order %s is cancelled.\n"), arguments[0]);
  return RC_EXIT_DONE;
}

/* ORDER [LINE [QUANTITY]]: all that is open, of the order or of a line. */
int
rc_store_run_arrived (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPurchase) order = rc_store_load_purchase (store, arguments[0], &error);
  g_autoptr (GArray) arrivals = g_array_new (FALSE, FALSE, sizeof (RcArrival));
  g_autofree char *today = rc_command_dup_today ();
  guint64          only = 0;

  if (order == NULL)
    return rc_store_run_fail ("arrived", error);
  if (arguments[1] != NULL && !g_ascii_string_to_unsigned (arguments[1], 10, 1, order->lines->len, &only, &error))
    return rc_store_run_fail ("arrived", error);
  for (guint i = 0; i < order->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (order->lines, i);
      gint64             quantity = line->quantity_micro - g_array_index (order->received_micro, gint64, i);

      if ((only != 0 && only != i + 1) || (quantity == 0 && only == 0))
        continue;
      if (only != 0 && arguments[2] != NULL && !rc_quantity_parse (arguments[2], &quantity, &error))
        return rc_store_run_fail ("arrived", error);
      RcArrival arrival = { i, quantity, NULL };
      g_array_append_val (arrivals, arrival);
    }
  if (!rc_store_receive_order (store, arguments[0], arrivals, today, today, &error))
    return rc_store_run_fail ("arrived", error);
  printf (_ ("Noted what came in of order %s.\n"), arguments[0]);
  return RC_EXIT_DONE;
}
