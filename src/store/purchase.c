#include "purchase.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "query.h"
#include "stock-within.h"

static const char *const state_names[] = { "made", "sent", "confirmed", "partly", "received", "cancelled" };
G_STATIC_ASSERT (G_N_ELEMENTS (state_names) == RC_N_PURCHASE_STATES);

const char *
rc_purchase_state_get_label (RcPurchaseState state)
{
  static const char *const labels[]
      = { N_ ("To be sent"), N_ ("Sent"), N_ ("Confirmed"), N_ ("Partly received"), N_ ("Received"), N_ ("Cancelled") };

  g_return_val_if_fail ((guint)state < RC_N_PURCHASE_STATES, "");
  return _ (labels[state]);
}

void
rc_purchase_free (RcPurchase *purchase)
{
  if (purchase == NULL)
    return;
  g_free (purchase->number);
  g_free (purchase->supplier);
  g_free (purchase->made);
  g_free (purchase->sent);
  g_free (purchase->confirmed);
  g_free (purchase->received);
  g_free (purchase->reference);
  g_free (purchase->due);
  g_free (purchase->notes);
  g_free (purchase->jobs);
  g_ptr_array_unref (purchase->lines);
  g_array_unref (purchase->received_micro);
  g_free (purchase);
}

/* Lines of an order for many jobs begin with the job's number (rc_orders_add). */
gboolean
rc_purchase_is_for (const RcPurchase *order, const RcQuoteLine *line, const RcJob *job)
{
  const char *number = job->number != NULL && *job->number != '\0' ? job->number : job->id;

  return strstr (order->jobs, ", ") == NULL
         || (g_str_has_prefix (line->name, number) && g_str_has_prefix (line->name + strlen (number), ": "));
}

/* --- making one --- */

static char *
dup_notes (const RcOrder *order)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < order->notes->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", (const char *)order->notes->pdata[i]);
  return g_string_free (text, FALSE);
}

static gboolean
insert_head (RcStore *store, const RcOrder *order, const char *number, gint64 serial, const char *day, GError **error)
{
  g_autofree char *notes = dup_notes (order);

  return rc_query_run (store,
                       "INSERT INTO orders (number, serial, supplier, state, made, notes, currency, currency_digits,"
                       " net_minor, tax_minor, total_minor) VALUES (?, ?, ?, 'made', ?, ?, ?, ?, ?, ?, ?)",
                       RC_VALUES (rc_value_text (number), rc_value_integer (serial), rc_value_text (order->supplier),
                                  rc_value_text (day), rc_value_text (notes), rc_value_text (order->currency.code),
                                  rc_value_integer (order->currency.digits), rc_value_integer (order->net),
                                  rc_value_integer (order->tax), rc_value_integer (order->total)),
                       error);
}

static gboolean
insert_line (RcStore *store, const char *number, guint position, const RcQuoteLine *line, GError **error)
{
  return rc_query_run (store,
                       "INSERT INTO order_lines (number, position, item, name, because, quantity_micro, unit, packs,"
                       " pack_unit, price_minor, amount_minor) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                       RC_VALUES (rc_value_text (number), rc_value_integer (position), rc_value_text (line->item),
                                  rc_value_text (line->name), rc_value_text (line->because),
                                  rc_value_integer (line->quantity_micro),
                                  rc_value_text (rc_unit_get_name (line->unit)), rc_value_integer (line->packs),
                                  rc_value_text (rc_unit_get_name (line->pack_unit)), rc_value_integer (line->price),
                                  rc_value_integer (line->amount)),
                       error);
}

static char *
make_within (RcStore *store, const RcOrder *order, const GPtrArray *job_ids, const char *day, GError **error)
{
  g_autofree char *number = NULL;
  gint64           serial;

  if (!rc_store_count (store, "order", &serial, error))
    return NULL;
  number = g_strdup_printf ("O-%" G_GINT64_FORMAT, serial);
  if (!insert_head (store, order, number, serial, day, error))
    return NULL;
  for (guint i = 0; i < order->lines->len; i++)
    if (!insert_line (store, number, i, order->lines->pdata[i], error))
      return NULL;
  for (guint i = 0; i < job_ids->len; i++)
    if (!rc_query_run (store, "INSERT INTO order_jobs (number, job_id) VALUES (?, ?) ON CONFLICT DO NOTHING",
                       RC_VALUES (rc_value_text (number), rc_value_text (job_ids->pdata[i])), error))
      return NULL;
  return g_steal_pointer (&number);
}

/* The job's orders are those that are known. */
static gboolean
check_known (RcStore *store, const char *job_id, const char *known, GError **error)
{
  g_autoptr (GPtrArray) found = rc_store_find_purchases (store, job_id, error);
  g_autoptr (GString) numbers = g_string_new (NULL);

  if (found == NULL)
    return FALSE;
  for (guint i = 0; i < found->len; i++)
    {
      const RcPurchase *order = g_ptr_array_index (found, i);

      if (order->state != RC_PURCHASE_CANCELLED)
        g_string_append_printf (numbers, "%s%s", numbers->len > 0 ? ", " : "", order->number);
    }
  if (g_str_equal (numbers->str, known != NULL ? known : ""))
    return TRUE;
  if (numbers->len > 0)
    g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT,
                 _ ("Job %s has been ordered already: %s. Order only what is missing, or cancel that order first."),
                 job_id, numbers->str);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT, _ ("Job %s: order %s has been cancelled meanwhile; order anew."),
                 job_id, known);
  return FALSE;
}

static GPtrArray *
make_all (RcStore *store, const GPtrArray *orders, const GPtrArray *job_ids, const GPtrArray *known, const char *day,
          GError **error)
{
  g_autoptr (GPtrArray) numbers = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; known != NULL && i < job_ids->len; i++)
    if (!check_known (store, job_ids->pdata[i], known->pdata[i], error))
      return NULL;
  for (guint i = 0; i < orders->len; i++)
    {
      char *number = make_within (store, orders->pdata[i], job_ids, day, error);

      if (number == NULL)
        return NULL;
      g_ptr_array_add (numbers, number);
    }
  return g_steal_pointer (&numbers);
}

GPtrArray *
rc_store_make_purchases (RcStore *store, const GPtrArray *orders, const GPtrArray *job_ids, const GPtrArray *known,
                         const char *day, GError **error)
{
  g_autofree char *doing = NULL;
  GPtrArray       *numbers;

  g_return_val_if_fail (store != NULL && orders != NULL && day != NULL, NULL);

  doing = g_strdup_printf (_ ("Making an order to %s"),
                           orders->len > 0 ? ((const RcOrder *)orders->pdata[0])->supplier : "");
  if (!rc_store_begin (store, doing, error))
    return NULL;
  numbers = make_all (store, orders, job_ids, known, day, error);
  if (numbers == NULL)
    rc_store_rollback (store);
  else if (!rc_store_commit (store, doing, error))
    g_clear_pointer (&numbers, g_ptr_array_unref);
  return numbers;
}

char *
rc_store_make_purchase (RcStore *store, const RcOrder *order, const GPtrArray *job_ids, const char *day, GError **error)
{
  g_autoptr (GPtrArray) orders = g_ptr_array_new ();
  g_autoptr (GPtrArray) numbers = NULL;

  g_ptr_array_add (orders, (gpointer)order);
  numbers = rc_store_make_purchases (store, orders, job_ids, NULL, day, error);
  return numbers != NULL ? g_strdup (numbers->pdata[0]) : NULL;
}

/* --- reading --- */

#define HEAD                                                                                                           \
  "SELECT number, supplier, CASE WHEN state IN ('made', 'sent', 'confirmed') AND EXISTS (SELECT 1 FROM order_lines l"  \
  " WHERE l.number = orders.number AND received_micro > 0) THEN 'partly' ELSE state END, made, sent, confirmed, "      \
  "received, reference, due, notes, currency, currency_digits,"                                                        \
  " net_minor, tax_minor, total_minor, (SELECT group_concat (job_id, ', ') FROM order_jobs j WHERE j.number ="         \
  " orders.number), (SELECT count (*) FROM order_lines l WHERE l.number = orders.number AND received_micro"            \
  " < quantity_micro) FROM orders "

static RcPurchase *
build_head (const RcQuery *query)
{
  RcPurchase *purchase = g_new0 (RcPurchase, 1);
  const char *state = rc_query_get_text (query, 2);

  while (purchase->state + 1 < RC_N_PURCHASE_STATES && g_strcmp0 (state_names[purchase->state], state) != 0)
    purchase->state++;
  purchase->number = rc_query_dup_text (query, 0);
  purchase->supplier = rc_query_dup_text (query, 1);
  purchase->made = rc_query_dup_text (query, 3);
  purchase->sent = rc_query_dup_text (query, 4);
  purchase->confirmed = rc_query_dup_text (query, 5);
  purchase->received = rc_query_dup_text (query, 6);
  purchase->reference = rc_query_dup_text (query, 7);
  purchase->due = rc_query_dup_text (query, 8);
  purchase->notes = rc_query_dup_text (query, 9);
  g_strlcpy (purchase->currency.code, rc_query_get_text (query, 10), sizeof purchase->currency.code);
  purchase->currency.digits = (int)rc_query_get_integer (query, 11);
  purchase->net = rc_query_get_integer (query, 12);
  purchase->tax = rc_query_get_integer (query, 13);
  purchase->total = rc_query_get_integer (query, 14);
  purchase->jobs = rc_query_dup_text (query, 15);
  purchase->n_open = (guint)rc_query_get_integer (query, 16);
  purchase->lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);
  purchase->received_micro = g_array_new (FALSE, FALSE, sizeof (gint64));
  return purchase;
}

GPtrArray *
rc_store_find_purchases (RcStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_purchase_free);
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_query_start (&query, store,
                       HEAD "WHERE ?1 IS NULL OR number IN (SELECT number FROM order_jobs WHERE job_id = ?1)"
                            " ORDER BY serial",
                       RC_VALUES (rc_value_text (job_id)), error))
    return NULL;
  while (rc_query_next (&query, error))
    g_ptr_array_add (found, build_head (&query));
  return query.failed ? NULL : g_steal_pointer (&found);
}

static gboolean
load_lines (RcStore *store, RcPurchase *purchase, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store,
                       "SELECT item, name, because, quantity_micro, unit, packs, pack_unit, price_minor, amount_minor,"
                       " received_micro FROM order_lines WHERE number = ? ORDER BY position",
                       RC_VALUES (rc_value_text (purchase->number)), error))
    return FALSE;
  while (rc_query_next (&query, error))
    {
      RcQuoteLine *line = g_new0 (RcQuoteLine, 1);
      gint64       received_micro = rc_query_get_integer (&query, 9);

      g_ptr_array_add (purchase->lines, line);
      g_array_append_val (purchase->received_micro, received_micro);
      line->item = rc_query_dup_text (&query, 0);
      line->name = rc_query_dup_text (&query, 1);
      line->because = rc_query_dup_text (&query, 2);
      line->quantity_micro = line->needed_micro = rc_query_get_integer (&query, 3);
      line->packs = rc_query_get_integer (&query, 5);
      line->price = rc_query_get_integer (&query, 7);
      line->amount = line->gross = line->cost = rc_query_get_integer (&query, 8);
      if (!rc_unit_parse (rc_query_get_text (&query, 4), &line->unit, error)
          || !rc_unit_parse (rc_query_get_text (&query, 6), &line->pack_unit, error))
        {
          g_prefix_error (error, _ ("Order %s, line %u: "), purchase->number, purchase->lines->len);
          return FALSE;
        }
      line->needed_unit = line->unit;
    }
  return !query.failed;
}

RcPurchase *
rc_store_load_purchase (RcStore *store, const char *number, GError **error)
{
  g_autoptr (RcPurchase) purchase = NULL;

  g_return_val_if_fail (store != NULL && number != NULL, NULL);

  {
    g_auto (RcQuery) query = { 0 };

    if (!rc_query_start (&query, store, HEAD "WHERE number = ?", RC_VALUES (rc_value_text (number)), error))
      return NULL;
    if (rc_query_next (&query, error))
      purchase = build_head (&query);
    else if (query.failed)
      return NULL;
  }
  if (purchase == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no order %s in the store."), number);
      return NULL;
    }
  return load_lines (store, purchase, error) ? g_steal_pointer (&purchase) : NULL;
}

/* --- what becomes of it --- */

static gboolean
change (RcStore *store, const char *number, const char *sql, const RcValue *values, guint n_values, GError **error)
{
  g_autofree char *doing = g_strdup_printf (_ ("Changing order %s"), number);
  g_autoptr (RcPurchase) purchase = rc_store_load_purchase (store, number, error);

  if (purchase == NULL || !rc_store_begin (store, doing, error))
    return FALSE;
  if (!rc_query_run (store, sql, values, n_values, error))
    return rc_store_rollback (store);
  return rc_store_commit (store, doing, error);
}

gboolean
rc_store_send_purchase (RcStore *store, const char *number, const char *day, GError **error)
{
  g_return_val_if_fail (store != NULL && number != NULL && day != NULL, FALSE);

  return change (store, number,
                 "UPDATE orders SET sent = ?1, state = CASE state WHEN 'made' THEN 'sent' ELSE state END"
                 " WHERE number = ?2",
                 RC_VALUES (rc_value_text (day), rc_value_text (number)), error);
}

gboolean
rc_store_confirm_purchase (RcStore *store, const char *number, const char *reference, const char *due, const char *day,
                           GError **error)
{
  g_return_val_if_fail (store != NULL && number != NULL && day != NULL, FALSE);

  return change (
      store, number,
      "UPDATE orders SET confirmed = ?1, reference = ?2, due = ?3,"
      " state = CASE state WHEN 'made' THEN 'confirmed' WHEN 'sent' THEN 'confirmed' ELSE state END"
      " WHERE number = ?4",
      RC_VALUES (rc_value_text (day), rc_value_text (reference), rc_value_text (due), rc_value_text (number)), error);
}

gboolean
rc_store_cancel_purchase (RcStore *store, const char *number, const char *day, GError **error)
{
  gint64 received;

  g_return_val_if_fail (store != NULL && number != NULL && day != NULL, FALSE);

  if (!rc_query_find_integer (store, "SELECT sum (received_micro) FROM order_lines WHERE number = ?",
                              RC_VALUES (rc_value_text (number)), 0, &received, error))
    return FALSE;
  if (received > 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("Order %s has come in in part; it cannot be cancelled."),
                   number);
      return FALSE;
    }
  return change (store, number, "UPDATE orders SET state = 'cancelled', received = ?1 WHERE number = ?2",
                 RC_VALUES (rc_value_text (day), rc_value_text (number)), error);
}

static gboolean
receive_line (RcStore *store, const char *number, guint line, gint64 quantity_micro, const char *day, GError **error)
{
  gint64 open_micro;

  if (!rc_query_find_integer (
          store, "SELECT quantity_micro - received_micro FROM order_lines WHERE number = ? AND position = ?",
          RC_VALUES (rc_value_text (number), rc_value_integer (line)), -1, &open_micro, error))
    return FALSE;
  if (open_micro < 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no line %u in order %s."), line + 1, number);
      return FALSE;
    }
  /* Shown and typed to a thousandth: 42.667 of 42.666667 is all of it. */
  if (quantity_micro > 0 && ABS (quantity_micro - open_micro) < RC_MICRO / 1000)
    quantity_micro = open_micro;
  if (quantity_micro <= 0 || quantity_micro > open_micro)
    {
      g_autofree char *quantity = rc_quantity_format (quantity_micro, 3), *open = rc_quantity_format (open_micro, 3);

      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("Order %s, line %u: %s cannot come in, %s are open."), number,
                   line + 1, quantity, open);
      return FALSE;
    }
  return rc_query_run (
             store, "UPDATE order_lines SET received_micro = received_micro + ? WHERE number = ? AND position = ?",
             RC_VALUES (rc_value_integer (quantity_micro), rc_value_text (number), rc_value_integer (line)), error)
         && rc_query_run (store,
                          "UPDATE orders SET received = ?1, state = CASE WHEN EXISTS (SELECT 1 FROM order_lines l"
                          " WHERE l.number = ?2 AND received_micro < quantity_micro) THEN state ELSE 'received' END"
                          " WHERE number = ?2",
                          RC_VALUES (rc_value_text (day), rc_value_text (number)), error);
}

/* The job that a line of the order is for; NULL without error: none that is known. (transfer full) */
static char *
dup_job_of_line (RcStore *store, const char *number, guint line, GError **error)
{
  g_auto (RcQuery) query = { 0 };
  char *job_id = NULL;

  if (rc_query_start (
          &query, store,
          "SELECT o.job_id, coalesce (nullif (jobs.number, ''), o.job_id) || ': ' AS begin"
          " FROM order_jobs o JOIN order_lines l ON l.number = o.number LEFT JOIN jobs ON jobs.id = o.job_id"
          " WHERE o.number = ?1 AND l.position = ?2 AND (substr (l.name, 1, length (begin)) = begin"
          " OR (SELECT count (*) FROM order_jobs WHERE number = ?1) = 1)",
          RC_VALUES (rc_value_text (number), rc_value_integer (line)), error)
      && rc_query_next (&query, error))
    job_id = rc_query_dup_text (&query, 0);
  return job_id;
}

/* What was ordered for a job is kept for it as it comes in. */
static gboolean
keep_for_job (RcStore *store, const char *number, const RcArrival *arrival, const char *now, GError **error)
{
  GError          *fault = NULL;
  g_autofree char *job_id = arrival->kept > 0 ? dup_job_of_line (store, number, arrival->line, &fault) : NULL;

  if (fault != NULL)
    g_propagate_error (error, fault);
  return fault == NULL
         && (job_id == NULL
             || rc_stock_reserve (store, arrival->roll->id, job_id, MIN (arrival->kept, arrival->roll->length), now,
                                  error));
}

static gboolean
receive_all (RcStore *store, const char *number, GArray *arrivals, const char *day, const char *now, GError **error)
{
  g_autofree char *cause = g_strconcat (RC_CAUSE_ORDER, number, NULL);

  for (guint i = 0; i < arrivals->len; i++)
    {
      const RcArrival *arrival = &g_array_index (arrivals, RcArrival, i);
      char            *id;

      if (!receive_line (store, number, arrival->line, arrival->quantity_micro, day, error))
        return FALSE;
      if (arrival->roll == NULL)
        continue;
      id = rc_stock_receive (store, arrival->roll, NULL, cause, NULL, now, error);
      if (id == NULL)
        return FALSE;
      g_free (arrival->roll->id);
      arrival->roll->id = id;
      if (!keep_for_job (store, number, arrival, now, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
rc_store_receive_order (RcStore *store, const char *number, GArray *arrivals, const char *day, const char *now,
                        GError **error)
{
  g_autofree char *doing = g_strdup_printf (_ ("Receiving order %s"), number);

  g_return_val_if_fail (store != NULL && number != NULL && arrivals != NULL && day != NULL && now != NULL, FALSE);

  if (!rc_store_begin (store, doing, error))
    return FALSE;
  if (!receive_all (store, number, arrivals, day, now, error))
    return rc_store_rollback (store);
  return rc_store_commit (store, doing, error);
}

gboolean
rc_store_receive_line (RcStore *store, const char *number, guint line, gint64 quantity_micro, const char *day,
                       GError **error)
{
  const RcArrival arrival = { .line = line, .quantity_micro = quantity_micro };
  g_autoptr (GArray) arrivals = g_array_new (FALSE, FALSE, sizeof (RcArrival));

  g_return_val_if_fail (day != NULL, FALSE);

  g_array_append_val (arrivals, arrival);
  return rc_store_receive_order (store, number, arrivals, day, day, error);
}
