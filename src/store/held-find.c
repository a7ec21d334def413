/* All that a job has: pieces and lengths that were cut for it, what is on order, what was accepted. */
#include "conversion.h"
#include "purchase.h"
#include "query.h"
#include "stock-within.h"
#include "store.h"

/* --- what was cut --- */

static GPtrArray *
find_cut_goods (RcStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) pieces = rc_store_find_cut_pieces (store, job_id, error);
  GPtrArray *cut = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cut_goods_free);

  for (guint i = 0; pieces != NULL && i < pieces->len; i++)
    {
      const RcCutPiece *piece = g_ptr_array_index (pieces, i);
      RcCutGoods       *one = rc_cut_goods_new (piece->piece, piece->goods_id, piece->lot, piece->width, piece->length);

      one->roll = g_strdup (piece->roll_id);
      g_ptr_array_add (cut, one);
    }
  if (pieces == NULL)
    g_clear_pointer (&cut, g_ptr_array_unref);
  return cut;
}

/* A cut for the job, or a remnant that went back to the stock with it, as it stands in the rolls' history. */
typedef struct
{
  const char *roll, *goods, *lot;
  RcLength    width, length; /* taken off; of a remnant its length */
  gboolean    is_remnant, is_noted;
} Move;

/* What is as wide as the goods is an end of the roll like any other; what is narrower is the job's own offcut. */
static gboolean
is_whole (const RcJob *job, const Move *move)
{
  const RcGoods *carpet = rc_job_find_goods (job, move->goods);

  return move->width == 0 || (carpet != NULL && move->width >= rc_goods_get_usable_width (carpet));
}

static gboolean
has_offcut (const RcHeld *held, const char *roll)
{
  return g_ptr_array_find_with_equal_func (held->offcuts, roll, g_str_equal, NULL);
}

static void
add_spent (RcHeld *held, const RcJob *job, const Move *move)
{
  const RcGoods *carpet = rc_job_find_goods (job, move->goods);
  RcLength       length = move->is_remnant ? -move->length : move->length;

  if (carpet != NULL && (move->is_remnant || !has_offcut (held, move->roll)))
    g_ptr_array_add (held->spent, rc_spent_new (move->goods, rc_carpet_count_length (carpet, move->width, length)));
}

/* Of a cut whose pieces nobody has noted the job has the length as it is, less what went back of it. */
static void
add_unnoted (RcHeld *held, const RcJob *job, const Move *move, RcCutGoods **last)
{
  const RcGoods *carpet = rc_job_find_goods (job, move->goods);

  if (move->is_remnant && *last != NULL)
    (*last)->length -= MIN (move->length, (*last)->length);
  if (move->is_remnant)
    return;
  *last = NULL;
  if (move->is_noted || carpet == NULL || move->length <= 0)
    return;
  *last = rc_cut_goods_new (NULL, move->goods, move->lot,
                            move->width > 0 ? move->width : rc_goods_get_usable_width (carpet), move->length);
  (*last)->roll = g_strdup (move->roll);
  g_ptr_array_add (held->goods, *last);
}

static void
drop_empty (GPtrArray *goods)
{
  for (guint i = goods->len; i-- > 0;)
    if (((const RcCutGoods *)g_ptr_array_index (goods, i))->length <= 0)
      g_ptr_array_remove_index (goods, i);
}

static gboolean
add_moves (RcStore *store, const RcJob *job, RcHeld *held, GError **error)
{
  g_auto (RcQuery) query = { 0 };
  RcCutGoods *last = NULL;

  if (!rc_query_start (&query, store,
                       "SELECT m.roll, r.goods, r.lot, r.width_ticks, m.length_ticks, m.kind, EXISTS (SELECT 1 FROM"
                       " cut_pieces p WHERE p.job_id = m.job_id AND p.roll = m.roll AND p.made = m.made)"
                       " FROM roll_moves m JOIN rolls r ON r.id = m.roll WHERE m.job_id = ? AND m.kind IN ('cut',"
                       " 'received') ORDER BY m.move",
                       RC_VALUES (rc_value_text (job->id)), error))
    return FALSE;
  while (rc_query_next (&query, error))
    {
      gboolean   is_remnant = g_strcmp0 (rc_query_get_text (&query, 5), "received") == 0;
      const Move move = { .roll = rc_query_get_text (&query, 0),
                          .goods = rc_query_get_text (&query, 1),
                          .lot = rc_query_get_text (&query, 2),
                          .width = rc_query_get_integer (&query, 3),
                          .length = (is_remnant ? 1 : -1) * rc_query_get_integer (&query, 4),
                          .is_remnant = is_remnant,
                          .is_noted = rc_query_get_integer (&query, 6) != 0 };

      if (is_remnant && !is_whole (job, &move))
        {
          g_ptr_array_add (held->offcuts, g_strdup (move.roll));
          continue;
        }
      add_spent (held, job, &move);
      add_unnoted (held, job, &move, &last);
    }
  drop_empty (held->goods);
  return !query.failed;
}

/* --- what is ordered --- */

/* What of an order's carpet has not come yet: all lines of one carpet are one length, as full rolls and the rest were
 * planned as one. */
static void
add_open_carpet (const RcPurchase *order, const RcJob *job, GPtrArray *goods)
{
  guint first = goods->len;

  for (guint i = 0; i < order->lines->len; i++)
    {
      const RcQuoteLine *line = order->lines->pdata[i];
      const RcGoods     *carpet = rc_job_find_goods (job, line->item);
      gint64             open = line->quantity_micro - g_array_index (order->received_micro, gint64, i);
      RcLength           length;
      guint              at = first;

      if (carpet == NULL || carpet->kind != RC_GOODS_CARPET || open <= 0 || !rc_purchase_is_for (order, line, job))
        continue;
      length = rc_conversion_get_length (carpet, open, line->unit);
      while (at < goods->len && g_strcmp0 (((RcCutGoods *)goods->pdata[at])->goods_id, carpet->id) != 0)
        at++;
      if (at == goods->len && length > 0)
        g_ptr_array_add (goods, rc_cut_goods_new_ordered (order->number, carpet->id, length));
      else if (length > 0)
        ((RcCutGoods *)goods->pdata[at])->length += length;
    }
}

static RcOrdered *
ordered_new (const RcPurchase *order, const RcJob *job)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);

  for (guint i = 0; i < order->lines->len; i++)
    if (rc_purchase_is_for (order, order->lines->pdata[i], job))
      g_ptr_array_add (lines, rc_quote_line_copy (order->lines->pdata[i]));
  RcOrdered *ordered = rc_ordered_new (order->number, order->supplier, lines);

  ordered->made = g_strdup (order->made);
  return ordered;
}

static gboolean
add_orders (RcStore *store, const RcJob *job, GPtrArray *goods, GPtrArray *orders, GError **error)
{
  g_autoptr (GPtrArray) found = rc_store_find_purchases (store, job->id, error);

  for (guint i = 0; found != NULL && i < found->len; i++)
    {
      const RcPurchase *head = found->pdata[i];
      g_autoptr (RcPurchase) order = NULL;

      if (head->state == RC_PURCHASE_CANCELLED)
        continue;
      order = rc_store_load_purchase (store, head->number, error);
      if (order == NULL)
        return FALSE;
      add_open_carpet (order, job, goods);
      g_ptr_array_add (orders, ordered_new (order, job));
    }
  return found != NULL;
}

/* --- what is accepted --- */

/* The latest quotation that was accepted, and the variations of it that were accepted since. */
static gboolean
add_accepted (RcStore *store, const char *job_id, RcHeld *held, GError **error)
{
  g_autoptr (GPtrArray) issued = rc_store_find_quotes (store, job_id, error);
  g_autoptr (GString) numbers = g_string_new (NULL);

  for (guint i = 0; issued != NULL && i < issued->len; i++)
    {
      const RcIssuedQuote *one = g_ptr_array_index (issued, i);
      g_autoptr (RcQuote) quote = NULL, before = held->accepted;

      if (one->state != RC_QUOTE_ACCEPTED || (one->variation && before == NULL))
        {
          g_steal_pointer (&before);
          continue;
        }
      held->accepted = NULL;
      quote = rc_store_load_quote (store, one->number, error);
      if (quote == NULL)
        return FALSE;
      if (!one->variation)
        {
          g_string_truncate (numbers, 0);
          g_clear_pointer (&held->accepted_first, rc_quote_free);
          held->accepted_first = rc_store_load_quote (store, one->number, error);
          if (held->accepted_first == NULL)
            return FALSE;
        }
      g_string_append_printf (numbers, "%s%s", numbers->len > 0 ? ", " : "", one->number);
      held->accepted = one->variation ? rc_quote_new_varied (before, quote) : g_steal_pointer (&quote);
    }
  if (held->accepted != NULL)
    held->accepted_as = g_strdup (numbers->str);
  return issued != NULL;
}

RcHeld *
rc_store_load_held (RcStore *store, const RcJob *job, GError **error)
{
  g_autoptr (GPtrArray) goods = find_cut_goods (store, job->id, error);
  g_autoptr (GPtrArray) orders = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_ordered_free);
  g_autoptr (GPtrArray) rolls = goods != NULL ? rc_stock_find_rolls (store, job->id, 0, error) : NULL;
  g_autoptr (RcHeld) held = NULL;

  if (rolls == NULL)
    return NULL;
  held = rc_held_new (g_steal_pointer (&rolls), g_steal_pointer (&goods), g_steal_pointer (&orders));
  if (!add_moves (store, job, held, error) || !add_orders (store, job, held->goods, held->orders, error)
      || !add_accepted (store, job->id, held, error))
    return NULL;
  return g_steal_pointer (&held);
}
