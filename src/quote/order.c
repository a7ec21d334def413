#include "order.h"

#include <glib/gi18n-lib.h>

#include "order-notes.h"
#include "rowcut-error.h"
#include "translation.h"

void
rc_order_free (RcOrder *order)
{
  if (order == NULL)
    return;
  g_free (order->supplier);
  g_free (order->supplements);
  g_ptr_array_unref (order->lines);
  g_ptr_array_unref (order->notes);
  g_free (order);
}

static RcOrder *
order_new (const char *supplier, const RcCurrency *currency)
{
  RcOrder *order = g_new0 (RcOrder, 1);

  order->supplier = g_strdup (supplier);
  order->currency = *currency;
  order->lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);
  order->notes = g_ptr_array_new_with_free_func (g_free);
  return order;
}

static const char *
get_supplier (const RcGoods *goods)
{
  return goods->supplier != NULL ? goods->supplier : "";
}

static RcOrder *
find_order (const GPtrArray *orders, const char *supplier)
{
  for (guint i = 0; i < orders->len; i++)
    {
      RcOrder *order = g_ptr_array_index (orders, i);

      if (g_str_equal (order->supplier, supplier))
        return order;
    }
  return NULL;
}

static RcOrder *
get_order (GPtrArray *orders, const char *supplier, const RcCurrency *currency)
{
  RcOrder *order = find_order (orders, supplier);

  if (order == NULL)
    {
      order = order_new (supplier, currency);
      g_ptr_array_add (orders, order);
    }
  return order;
}

static gboolean
order_add (RcOrder *order, const RcQuantityLine *quantity, const RcPriceBook *book, const char *date, GError **error)
{
  guint first = order->lines->len;

  if (!rc_quote_lines_add_cost (order->lines, quantity, book, date, error))
    return FALSE;
  for (guint i = first; i < order->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (order->lines, i);

      if (!rc_money_add (order->net, line->amount, &order->net))
        {
          g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The order's sum is too large, at the line %s"), line->name);
          return FALSE;
        }
    }
  order->total = order->net + order->tax;
  return TRUE;
}

static gboolean
is_bought (const RcQuantityLine *quantity)
{
  return quantity->work == RC_WORK_NONE && quantity->goods != NULL && !quantity->from_stock
         && quantity->quantity_micro > 0;
}

static void
add_notes (GPtrArray *orders, const RcPlan *plan)
{
  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);
      RcOrder         *order = find_order (orders, get_supplier (cutting->goods));

      if (order != NULL)
        rc_order_notes_add (order->notes, cutting);
    }
}

GPtrArray *
rc_order_new_all (const RcJob *job, const RcPlan *plan, const GPtrArray *quantities, const RcPriceBook *book,
                  const char *date, GError **error)
{
  g_autoptr (GPtrArray) orders = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_order_free);

  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *quantity = g_ptr_array_index (quantities, i);

      if (is_bought (quantity)
          && !order_add (get_order (orders, get_supplier (quantity->goods), &book->currency), quantity, book, date,
                         error))
        return NULL;
    }
  if (plan != NULL)
    add_notes (orders, plan);
  return g_steal_pointer (&orders);
}

/* More of a carpet must be of the dye lot that is on its way. */
static char *
dup_supplement_note (const RcOrder *order, const GPtrArray *missing)
{
  for (guint i = 0; i < missing->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (missing, i);

      if (line->goods->kind == RC_GOODS_CARPET && g_strcmp0 (get_supplier (line->goods), order->supplier) == 0)
        return g_strdup_printf (_ ("In addition to our order %s, which stands: carpet of the same dye lot"),
                                order->supplements);
    }
  return g_strdup_printf (_ ("In addition to our order %s, which stands"), order->supplements);
}

GPtrArray *
rc_order_new_supplement (const RcJob *job, const RcPlan *plan, const GPtrArray *quantities, const RcHeld *held,
                         const RcPriceBook *book, const char *date, GError **error)
{
  g_autoptr (GPtrArray) missing = rc_held_list_missing (held, quantities, error);
  GPtrArray *orders = missing != NULL ? rc_order_new_all (job, plan, missing, book, date, error) : NULL;

  for (guint i = 0; orders != NULL && i < orders->len; i++)
    {
      RcOrder *order = g_ptr_array_index (orders, i);

      order->supplements = rc_held_dup_order_numbers (held, order->supplier);
      if (order->supplements != NULL)
        g_ptr_array_insert (order->notes, 0, dup_supplement_note (order, missing));
    }
  return orders;
}

/* The orders that either supplements. */
static void
add_supplements (RcOrder *order, const RcOrder *more)
{
  g_autofree char *before = order->supplements;

  if (more->supplements == NULL)
    order->supplements = g_steal_pointer (&before);
  else
    order->supplements
        = before != NULL ? g_strdup_printf ("%s, %s", before, more->supplements) : g_strdup (more->supplements);
}

static gboolean
add_order (RcOrder *order, const RcOrder *more, const char *job, GError **error)
{
  for (guint i = 0; i < more->lines->len; i++)
    {
      RcQuoteLine     *line = rc_quote_line_copy (g_ptr_array_index (more->lines, i));
      g_autofree char *name = line->name;

      line->name = g_strdup_printf ("%s: %s", job, name);
      g_ptr_array_add (order->lines, line);
    }
  for (guint i = 0; i < more->notes->len; i++)
    g_ptr_array_add (order->notes, g_strdup_printf ("%s: %s", job, (const char *)g_ptr_array_index (more->notes, i)));
  add_supplements (order, more);
  if (!g_str_equal (order->currency.code, more->currency.code))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("Job %s is in %s and others in %s: order it by itself"), job,
                   more->currency.code, order->currency.code);
      return FALSE;
    }
  if (rc_money_add (order->net, more->net, &order->net) && rc_money_add (order->tax, more->tax, &order->tax)
      && rc_money_add (order->net, order->tax, &order->total))
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The order's sum is too large, at job %s"), job);
  return FALSE;
}

gboolean
rc_orders_add (GPtrArray *orders, const GPtrArray *more, const char *job, GError **error)
{
  g_return_val_if_fail (orders != NULL && more != NULL && job != NULL, FALSE);

  for (guint i = 0; i < more->len; i++)
    {
      const RcOrder *one = g_ptr_array_index (more, i);

      if (!add_order (get_order (orders, one->supplier, &one->currency), one, job, error))
        return FALSE;
    }
  return TRUE;
}

/* --- each in its supplier's language --- */

static gboolean
is_written_in (const RcOrder *order, const RcPriceBook *book, const char *language)
{
  return g_strcmp0 (rc_price_book_get_language (book, order->supplier), language) == 0;
}

/* Takes those that are for suppliers of that language. */
static void
take_worded (GPtrArray *orders, GPtrArray *worded, const RcPriceBook *book, const char *language)
{
  for (guint i = 0; i < MIN (orders->len, worded->len); i++)
    if (is_written_in (orders->pdata[i], book, language))
      {
        RcOrder *other = orders->pdata[i];

        orders->pdata[i] = worded->pdata[i];
        worded->pdata[i] = other;
      }
}

GPtrArray *
rc_orders_new_worded (const RcPriceBook *book, RcOrdersFunc make, gpointer data, GError **error)
{
  g_autoptr (GPtrArray) orders = make (data, error);

  for (const char *const *code = rc_translation_list (); orders != NULL && *code != NULL; code++)
    {
      g_autoptr (GPtrArray) worded = NULL;
      guint i = 0;

      while (i < orders->len && !is_written_in (orders->pdata[i], book, *code))
        i++;
      if (i == orders->len)
        continue;
      rc_translation_begin (*code);
      worded = make (data, error);
      rc_translation_end ();
      if (worded == NULL)
        return NULL;
      take_worded (orders, worded, book, *code);
    }
  return g_steal_pointer (&orders);
}
