#include "price-book.h"

#include <string.h>

RcPriceBook *
rc_price_book_new (const RcCurrency *currency)
{
  RcPriceBook *book = g_new0 (RcPriceBook, 1);

  book->currency = *currency;
  book->goods = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_goods_free);
  book->prices = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_price_free);
  book->payments = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_payment_free);
  book->tax_areas = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_tax_area_free);
  book->suppliers = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_supplier_free);
  return book;
}

RcPriceBook *
rc_price_book_copy (const RcPriceBook *book)
{
  RcPriceBook *copy = rc_price_book_new (&book->currency);

  copy->tax_ppm = book->tax_ppm;
  copy->deposit_ppm = book->deposit_ppm;
  copy->revision = book->revision;
  for (guint i = 0; i < book->goods->len; i++)
    g_ptr_array_add (copy->goods, rc_goods_copy (g_ptr_array_index (book->goods, i)));
  for (guint i = 0; i < book->prices->len; i++)
    g_ptr_array_add (copy->prices, rc_price_copy (g_ptr_array_index (book->prices, i)));
  copy->shop_name = g_strdup (book->shop_name);
  copy->shop_address = g_strdup (book->shop_address);
  copy->terms = g_strdup (book->terms);
  copy->job_numbers = g_strdup (book->job_numbers);
  copy->logo = book->logo != NULL ? g_bytes_ref (book->logo) : NULL;
  copy->valid_days = book->valid_days;
  for (guint i = 0; i < book->payments->len; i++)
    g_ptr_array_add (copy->payments, rc_payment_copy (g_ptr_array_index (book->payments, i)));
  for (guint i = 0; i < book->tax_areas->len; i++)
    g_ptr_array_add (copy->tax_areas, rc_tax_area_copy (g_ptr_array_index (book->tax_areas, i)));
  for (guint i = 0; i < book->suppliers->len; i++)
    g_ptr_array_add (copy->suppliers, rc_supplier_copy (g_ptr_array_index (book->suppliers, i)));
  return copy;
}

void
rc_price_book_free (RcPriceBook *book)
{
  if (book == NULL)
    return;
  g_ptr_array_unref (book->goods);
  g_ptr_array_unref (book->prices);
  g_free (book->shop_name);
  g_free (book->shop_address);
  g_free (book->terms);
  g_free (book->job_numbers);
  g_clear_pointer (&book->logo, g_bytes_unref);
  g_ptr_array_unref (book->payments);
  g_ptr_array_unref (book->tax_areas);
  g_ptr_array_unref (book->suppliers);
  g_free (book);
}

RcPrice *
rc_price_new (const char *item, RcUnit unit, RcMoney cost, RcMoney sale)
{
  RcPrice *price = g_new0 (RcPrice, 1);

  price->item = g_strdup (item);
  price->unit = unit;
  price->cost = cost;
  price->sale = sale;
  return price;
}

RcPrice *
rc_price_copy (const RcPrice *price)
{
  RcPrice *copy = rc_price_new (price->item, price->unit, price->cost, price->sale);

  copy->valid_from = g_strdup (price->valid_from);
  copy->valid_to = g_strdup (price->valid_to);
  copy->from_micro = price->from_micro;
  return copy;
}

void
rc_price_free (RcPrice *price)
{
  if (price == NULL)
    return;
  g_free (price->item);
  g_free (price->valid_from);
  g_free (price->valid_to);
  g_free (price);
}

static void
take (GPtrArray **mine, GPtrArray *theirs)
{
  g_ptr_array_ref (theirs);
  g_ptr_array_unref (*mine);
  *mine = theirs;
}

void
rc_price_book_take_list (RcPriceBook *book, const RcPriceBook *list)
{
  take (&book->goods, list->goods);
  take (&book->prices, list->prices);
  if (list->suppliers->len > 0)
    take (&book->suppliers, list->suppliers);
  if (list->tax_areas->len > 0)
    take (&book->tax_areas, list->tax_areas);
  if (list->payments->len > 0)
    take (&book->payments, list->payments);
}

const RcGoods *
rc_price_book_find_goods (const RcPriceBook *book, const char *id)
{
  for (guint i = 0; i < book->goods->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (book->goods, i);

      if (g_strcmp0 (goods->id, id) == 0)
        return goods;
    }
  return NULL;
}

/* Compares two days; NULL comes before every day. A time after the day does not count. */
static int
compare_days (const char *a, const char *b)
{
  const size_t day_length = strlen ("YYYY-MM-DD");

  if (a == NULL || b == NULL)
    return (a != NULL) - (b != NULL);
  return strncmp (a, b, day_length);
}

static gboolean
price_is_valid (const RcPrice *price, const char *date)
{
  if (date == NULL)
    return TRUE;
  return compare_days (price->valid_from, date) <= 0
         && (price->valid_to == NULL || compare_days (date, price->valid_to) <= 0);
}

/* What a price is chosen by: the quantity it begins at, in the unit asked for. */
typedef struct
{
  const RcPrice *price;
  gint64         from_micro;
} Candidate;

static gboolean
candidate_init (Candidate *candidate, const RcPrice *price, const RcGoods *goods, RcUnit unit)
{
  candidate->price = price;
  candidate->from_micro = 0;
  return price->from_micro == 0
         || rc_conversion_apply (goods, price->from_micro, price->unit, unit, &candidate->from_micro);
}

const RcPrice *
rc_price_book_find_for (const RcPriceBook *book, const RcGoods *goods, const char *item, const char *date,
                        gint64 quantity_micro, RcUnit unit)
{
  Candidate best = { NULL, 0 };

  for (guint i = 0; i < book->prices->len; i++)
    {
      const RcPrice *price = g_ptr_array_index (book->prices, i);
      Candidate      candidate;

      if (g_strcmp0 (price->item, item) != 0 || !price_is_valid (price, date)
          || !candidate_init (&candidate, price, goods, unit) || candidate.from_micro > quantity_micro)
        continue;
      if (best.price == NULL || candidate.from_micro > best.from_micro
          || (candidate.from_micro == best.from_micro && date != NULL
              && compare_days (price->valid_from, best.price->valid_from) > 0))
        best = candidate;
    }
  return best.price;
}

const RcPrice *
rc_price_book_find (const RcPriceBook *book, const char *item, const char *date)
{
  const RcPrice *best = NULL;

  for (guint i = 0; i < book->prices->len; i++)
    {
      const RcPrice *price = g_ptr_array_index (book->prices, i);

      if (g_strcmp0 (price->item, item) != 0 || !price_is_valid (price, date))
        continue;
      if (best == NULL || price->from_micro < best->from_micro
          || (price->from_micro == best->from_micro && date != NULL
              && compare_days (price->valid_from, best->valid_from) > 0))
        best = price;
    }
  return best;
}
