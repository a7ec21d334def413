#include <glib/gi18n-lib.h>

#include "job-rows.h"

#define COUNTER "price book"

static void
add_rows (const RcPriceBook *book, RcRowSet *rows)
{
  rc_row_set_add (rows, RC_TABLE_PRICE_BOOK,
                  RC_VALUES (rc_value_integer (1), rc_value_text (book->currency.code),
                             rc_value_integer (book->currency.digits), rc_value_integer (book->tax_ppm),
                             rc_value_integer (book->deposit_ppm), rc_value_text (book->shop_name),
                             rc_value_text (book->shop_address), rc_value_text (book->terms)));
  rc_goods_rows_add (book->goods, RC_TABLE_CATALOGUE, rows);
  for (guint i = 0; i < book->prices->len; i++)
    {
      const RcPrice *price = book->prices->pdata[i];

      rc_row_set_add (rows, RC_TABLE_PRICES,
                      RC_VALUES (rc_value_integer (i), rc_value_text (price->item != NULL ? price->item : ""),
                                 rc_value_text (rc_unit_get_name (price->unit)), rc_value_integer (price->cost),
                                 rc_value_integer (price->sale), rc_value_text (price->valid_from),
                                 rc_value_text (price->valid_to), rc_value_integer (price->from_micro)));
    }
}

static gboolean
build_prices (const RcRowSet *rows, GPtrArray *prices, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_PRICES); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_PRICES, i);
      const char    *item = rc_value_get_text (&row[1]);
      RcUnit         unit;
      RcPrice       *price;

      if (!rc_unit_parse (rc_value_get_text (&row[2]), &unit, error))
        {
          g_prefix_error (error, _ ("Price of %s: "), item);
          return FALSE;
        }
      price = rc_price_new (item, unit, rc_value_get_integer (&row[3]), rc_value_get_integer (&row[4]));
      price->valid_from = rc_value_dup_text (&row[5]);
      price->valid_to = rc_value_dup_text (&row[6]);
      price->from_micro = rc_value_get_integer (&row[7]);
      g_ptr_array_add (prices, price);
    }
  return TRUE;
}

static RcPriceBook *
build_book (const RcRowSet *rows, GError **error)
{
  g_autoptr (RcPriceBook) book = NULL;
  const RcValue *row;
  RcCurrency     currency = { "", 0 };

  if (rc_row_set_get_n_rows (rows, RC_TABLE_PRICE_BOOK) == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no price book in the store yet."));
      return NULL;
    }
  row = rc_row_set_get (rows, RC_TABLE_PRICE_BOOK, 0);
  if (rc_value_get_text (&row[1]) != NULL)
    g_strlcpy (currency.code, rc_value_get_text (&row[1]), sizeof currency.code);
  currency.digits = (int)rc_value_get_integer (&row[2]);
  book = rc_price_book_new (&currency);
  book->tax_ppm = rc_value_get_integer (&row[3]);
  book->deposit_ppm = rc_value_get_integer (&row[4]);
  book->shop_name = rc_value_dup_text (&row[5]);
  book->shop_address = rc_value_dup_text (&row[6]);
  book->terms = rc_value_dup_text (&row[7]);
  if (!rc_goods_rows_build (rows, RC_TABLE_CATALOGUE, book->goods, error) || !build_prices (rows, book->prices, error))
    return NULL;
  return g_steal_pointer (&book);
}

RcPriceBook *
rc_store_load_price_book (RcStore *store, GError **error)
{
  g_autoptr (RcRowSet) rows = rc_row_set_new (0);
  RcPriceBook *book = NULL;
  gint64       revision;

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_query_run (store, "BEGIN", NULL, 0, error))
    return NULL;
  if (rc_store_get_count (store, COUNTER, &revision, error)
      && rc_row_set_read (rows, store, RC_N_JOB_TABLES, RC_N_TABLES, FALSE, error))
    book = build_book (rows, error);
  rc_store_rollback (store);
  if (book != NULL)
    store->seen_prices = revision;
  return book;
}

static gboolean
save_within (RcStore *store, const RcRowSet *rows, gint64 *revision, GError **error)
{
  if (!rc_store_get_count (store, COUNTER, revision, error))
    return FALSE;
  if (store->seen_prices != 0 && store->seen_prices != *revision)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT,
                   _ ("The price book was changed by somebody else since it was opened here; nothing was changed. Load "
                      "it anew, then make the change again."));
      return FALSE;
    }
  return rc_row_set_write (rows, store, RC_N_JOB_TABLES, RC_N_TABLES, error)
         && rc_store_count (store, COUNTER, revision, error);
}

gboolean
rc_store_save_price_book (RcStore *store, const RcPriceBook *book, GError **error)
{
  g_autoptr (RcRowSet) rows = rc_row_set_new (0);
  const char *doing = _ ("Saving the price book");
  gint64      revision;

  g_return_val_if_fail (store != NULL && book != NULL, FALSE);

  add_rows (book, rows);
  if (!rc_row_set_prepare (rows, RC_N_JOB_TABLES, RC_N_TABLES, _ ("Price book"), error)
      || !rc_store_begin (store, doing, error))
    return FALSE;
  if (!save_within (store, rows, &revision, error))
    return rc_store_rollback (store);
  if (!rc_store_commit (store, doing, error))
    return FALSE;
  store->seen_prices = revision;
  return TRUE;
}
