#include <glib/gi18n-lib.h>

#include "file-store.h"
#include "job-rows.h"

#define COUNTER "price book"

static void
add_suppliers (const RcPriceBook *book, RcRowSet *rows)
{
  for (guint i = 0; i < book->tax_areas->len; i++)
    {
      const RcTaxArea *area = book->tax_areas->pdata[i];

      rc_row_set_add (rows, RC_TABLE_TAX_AREAS,
                      RC_VALUES (rc_value_text (area->id), rc_value_integer (i), rc_value_text (area->name),
                                 rc_value_integer (area->goods_ppm), rc_value_integer (area->work_ppm)));
    }
  for (guint i = 0; i < book->suppliers->len; i++)
    {
      const RcSupplier *one = book->suppliers->pdata[i];

      rc_row_set_add (rows, RC_TABLE_SUPPLIERS,
                      RC_VALUES (rc_value_text (one->name), rc_value_integer (i), rc_value_text (one->address),
                                 rc_value_text (one->phone), rc_value_text (one->email), rc_value_text (one->account),
                                 rc_value_integer (one->freight_cost), rc_value_integer (one->freight_sale),
                                 rc_value_integer (one->freight_free_from), rc_value_integer (one->lead_days),
                                 rc_value_text (one->language)));
    }
}

static void
add_rows (const RcPriceBook *book, RcRowSet *rows)
{
  char *logo = book->logo != NULL ? g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, book->logo) : NULL;

  rc_row_set_add (rows, RC_TABLE_PRICE_BOOK,
                  RC_VALUES (rc_value_integer (1), rc_value_text (book->currency.code),
                             rc_value_integer (book->currency.digits), rc_value_integer (book->tax_ppm),
                             rc_value_integer (book->deposit_ppm), rc_value_text (book->shop_name),
                             rc_value_text (book->shop_address), rc_value_text (book->terms),
                             rc_value_integer (book->valid_days), rc_value_text (rc_row_set_keep (rows, logo)),
                             rc_value_text (book->job_numbers)));
  rc_payment_rows_add (book->payments, RC_TABLE_BOOK_PAYMENTS, rows);
  add_suppliers (book, rows);
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

static void
build_suppliers (const RcRowSet *rows, RcPriceBook *book)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_TAX_AREAS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_TAX_AREAS, i);

      g_ptr_array_add (book->tax_areas,
                       rc_tax_area_new (rc_value_get_text (&row[0]), rc_value_get_text (&row[2]),
                                        rc_value_get_integer (&row[3]), rc_value_get_integer (&row[4])));
    }
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_SUPPLIERS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_SUPPLIERS, i);
      RcSupplier    *one = rc_supplier_new (rc_value_get_text (&row[0]));

      one->address = rc_value_dup_text (&row[2]);
      one->phone = rc_value_dup_text (&row[3]);
      one->email = rc_value_dup_text (&row[4]);
      one->account = rc_value_dup_text (&row[5]);
      one->freight_cost = rc_value_get_integer (&row[6]);
      one->freight_sale = rc_value_get_integer (&row[7]);
      one->freight_free_from = rc_value_get_integer (&row[8]);
      one->lead_days = (int)rc_value_get_integer (&row[9]);
      one->language = rc_value_dup_text (&row[10]);
      g_ptr_array_add (book->suppliers, one);
    }
}

static RcPriceBook *
build_book (RcStore *store, const RcRowSet *rows, GError **error)
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
  book->valid_days = (int)rc_value_get_integer (&row[8]);
  book->job_numbers = rc_value_dup_text (&row[10]);
  if (rc_value_get_text (&row[9]) != NULL
      && (book->logo = rc_store_load_file (store, rc_value_get_text (&row[9]), error)) == NULL)
    return NULL;
  rc_payment_rows_build (rows, RC_TABLE_BOOK_PAYMENTS, book->payments);
  build_suppliers (rows, book);
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
    book = build_book (store, rows, error);
  rc_store_rollback (store);
  if (book != NULL)
    book->revision = revision;
  return book;
}

static gboolean
save_logo (RcStore *store, GBytes *logo, GError **error)
{
  g_autofree char *digest = logo != NULL ? rc_file_store_add (store, logo, error) : NULL;

  return logo == NULL || digest != NULL;
}

static gboolean
save_within (RcStore *store, const RcRowSet *rows, const RcPriceBook *book, gint64 *revision, GError **error)
{
  if (!rc_store_get_count (store, COUNTER, revision, error))
    return FALSE;
  if (book->revision != 0 && book->revision != *revision)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT,
                   _ ("The price book was changed by somebody else since it was opened here; nothing was changed. Load "
                      "it anew, then make the change again."));
      return FALSE;
    }
  return save_logo (store, book->logo, error) && rc_row_set_write (rows, store, RC_N_JOB_TABLES, RC_N_TABLES, error)
         && rc_store_count (store, COUNTER, revision, error);
}

gboolean
rc_store_save_price_book (RcStore *store, RcPriceBook *book, GError **error)
{
  g_autoptr (RcRowSet) rows = rc_row_set_new (0);
  const char *doing = _ ("Saving the price book");
  gint64      revision;

  g_return_val_if_fail (store != NULL && book != NULL, FALSE);

  add_rows (book, rows);
  if (!rc_row_set_prepare (rows, RC_N_JOB_TABLES, RC_N_TABLES, _ ("Price book"), error)
      || !rc_store_begin (store, doing, error))
    return FALSE;
  if (!save_within (store, rows, book, &revision, error))
    return rc_store_rollback (store);
  if (!rc_store_commit (store, doing, error))
    return FALSE;
  book->revision = revision;
  return TRUE;
}
