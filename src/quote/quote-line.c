#include "quote-line.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

RcQuoteLine *
rc_quote_line_copy (const RcQuoteLine *line)
{
  RcQuoteLine *copy = g_memdup2 (line, sizeof *line);

  copy->item = g_strdup (line->item);
  copy->name = g_strdup (line->name);
  copy->because = g_strdup (line->because);
  copy->price_since = g_strdup (line->price_since);
  return copy;
}

void
rc_quote_line_free (RcQuoteLine *line)
{
  if (line == NULL)
    return;
  g_free (line->item);
  g_free (line->name);
  g_free (line->because);
  g_free (line->price_since);
  g_free (line);
}

static RcQuoteLine *
quote_line_new (const RcQuantityLine *quantity)
{
  RcQuoteLine *line = g_new0 (RcQuoteLine, 1);

  line->item = g_strdup (quantity->item);
  line->name = g_strdup (quantity->name);
  line->because = g_strdup (quantity->because);
  line->packs = quantity->packs;
  line->pack_unit = quantity->pack_unit;
  line->is_work = quantity->work != RC_WORK_NONE;
  line->from_stock = quantity->from_stock;
  line->needed_micro = quantity->net_micro;
  line->needed_unit = quantity->unit;
  return line;
}

RcQuoteLine *
rc_quote_line_new_plain (const char *item, const char *name, gint64 quantity_micro, RcUnit unit, RcMoney price,
                         RcMoney cost, gboolean is_work, GError **error)
{
  g_autoptr (RcQuoteLine) line = g_new0 (RcQuoteLine, 1);

  line->item = g_strdup (item);
  line->name = g_strdup (name != NULL ? name : item);
  line->because = g_strdup ("");
  line->quantity_micro = line->needed_micro = quantity_micro;
  line->unit = line->needed_unit = line->pack_unit = unit;
  line->price = price;
  line->is_work = is_work;
  if (!rc_money_multiply (price, quantity_micro, &line->gross, error)
      || !rc_money_multiply (cost, quantity_micro, &line->cost, error))
    {
      g_prefix_error (error, "%s: ", line->name);
      return NULL;
    }
  line->amount = line->gross;
  return g_steal_pointer (&line);
}

void
rc_quote_line_set_discount (RcQuoteLine *line, gint64 discount_ppm)
{
  line->discount_ppm = discount_ppm;
  line->amount = line->gross - rc_money_part (line->gross, discount_ppm);
}

/* Takes the price and what is told of it. */
static void
set_price (RcQuoteLine *line, const RcPrice *price, RcMoney per_unit)
{
  line->unit = price->unit;
  line->price = per_unit;
  line->from_micro = price->from_micro;
  line->price_since = g_strdup (price->valid_from);
}

static void
set_no_price_error (const RcQuantityLine *quantity, const RcPriceBook *book, const char *date, gint64 wanted_micro,
                    GError **error)
{
  g_autofree char *when = date != NULL ? g_strdup_printf (_ (" on %s"), date) : g_strdup ("");
  g_autofree char *wanted = rc_quantity_format (wanted_micro, 3);

  if (rc_price_book_find (book, quantity->item, date) != NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                 _ ("The price book has no price for as little as %s %s of %s (item “%s”)%s: add one from 0"), wanted,
                 rc_unit_get_name (quantity->unit), quantity->name, quantity->item, when);
  else if (rc_price_book_find (book, quantity->item, NULL) != NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                 _ ("No price for %s (item “%s”) is valid%s: the price book has one for other days"), quantity->name,
                 quantity->item, when);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("The price book has no price for %s (item “%s”)%s"),
                 quantity->name, quantity->item, when);
}

/* The price for `wanted_micro` of the line's item, and the line's quantity in that price's unit. */
static const RcPrice *
find_price (const RcQuantityLine *quantity, gint64 wanted_micro, const RcPriceBook *book, const char *date,
            gint64 *quantity_micro, GError **error)
{
  const RcPrice *price
      = rc_price_book_find_for (book, quantity->goods, quantity->item, date, wanted_micro, quantity->unit);

  if (price == NULL)
    {
      set_no_price_error (quantity, book, date, wanted_micro, error);
      return NULL;
    }
  if (rc_conversion_apply (quantity->goods, quantity->quantity_micro, quantity->unit, price->unit, quantity_micro))
    return price;
  g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
               _ ("%s (item “%s”) is counted in %s, but its price is for 1 %s: give a price in a unit that can be "
                  "converted, or say what a pack holds"),
               quantity->name, quantity->item, rc_unit_get_name (quantity->unit), rc_unit_get_name (price->unit));
  return NULL;
}

/* What the line costs the shop. */
static gboolean
compute_cost (const RcQuantityLine *quantity, const RcPriceBook *book, const char *date, RcMoney *cost, GError **error)
{
  gint64         quantity_micro;
  const RcPrice *price = find_price (quantity, quantity->quantity_micro, book, date, &quantity_micro, error);

  return price != NULL && rc_money_multiply (price->cost, quantity_micro, cost, error);
}

RcQuoteLine *
rc_quote_line_new_sale (const RcQuantityLine *quantity, gint64 item_micro, const RcPriceBook *book, const char *date,
                        GError **error)
{
  g_autoptr (RcQuoteLine) line = quote_line_new (quantity);
  const RcPrice *price = find_price (quantity, item_micro, book, date, &line->quantity_micro, error);

  if (price == NULL)
    return NULL;
  set_price (line, price, price->sale);
  if (!rc_money_multiply (price->sale, line->quantity_micro, &line->gross, error)
      || !compute_cost (quantity, book, date, &line->cost, error))
    {
      g_prefix_error (error, "%s: ", quantity->name);
      return NULL;
    }
  line->amount = line->gross;
  return g_steal_pointer (&line);
}

RcQuoteLine *
rc_quote_line_new_cost (const RcQuantityLine *quantity, const RcPriceBook *book, const char *date, GError **error)
{
  g_autoptr (RcQuoteLine) line = quote_line_new (quantity);
  const RcPrice *price = find_price (quantity, quantity->quantity_micro, book, date, &line->quantity_micro, error);

  if (price == NULL)
    return NULL;
  set_price (line, price, price->cost);
  if (!rc_money_multiply (price->cost, line->quantity_micro, &line->gross, error))
    {
      g_prefix_error (error, "%s: ", quantity->name);
      return NULL;
    }
  line->amount = line->cost = line->gross;
  return g_steal_pointer (&line);
}
