/* Tax areas and suppliers of the price book. */
#include "price-book.h"

RcTaxArea *
rc_tax_area_new (const char *id, const char *name, gint64 goods_ppm, gint64 work_ppm)
{
  RcTaxArea *area = g_new0 (RcTaxArea, 1);

  area->id = g_strdup (id);
  area->name = g_strdup (name);
  area->goods_ppm = goods_ppm;
  area->work_ppm = work_ppm;
  return area;
}

RcTaxArea *
rc_tax_area_copy (const RcTaxArea *area)
{
  return rc_tax_area_new (area->id, area->name, area->goods_ppm, area->work_ppm);
}

void
rc_tax_area_free (RcTaxArea *area)
{
  if (area == NULL)
    return;
  g_free (area->id);
  g_free (area->name);
  g_free (area);
}

const RcTaxArea *
rc_price_book_find_tax_area (const RcPriceBook *book, const char *id)
{
  for (guint i = 0; i < book->tax_areas->len; i++)
    {
      const RcTaxArea *area = g_ptr_array_index (book->tax_areas, i);

      if (g_strcmp0 (area->id, id) == 0)
        return area;
    }
  return NULL;
}

RcSupplier *
rc_supplier_new (const char *name)
{
  RcSupplier *supplier = g_new0 (RcSupplier, 1);

  supplier->name = g_strdup (name);
  return supplier;
}

RcSupplier *
rc_supplier_copy (const RcSupplier *supplier)
{
  RcSupplier *copy = g_memdup2 (supplier, sizeof *supplier);

  copy->name = g_strdup (supplier->name);
  copy->address = g_strdup (supplier->address);
  copy->phone = g_strdup (supplier->phone);
  copy->email = g_strdup (supplier->email);
  copy->account = g_strdup (supplier->account);
  copy->language = g_strdup (supplier->language);
  return copy;
}

void
rc_supplier_free (RcSupplier *supplier)
{
  if (supplier == NULL)
    return;
  g_free (supplier->name);
  g_free (supplier->address);
  g_free (supplier->phone);
  g_free (supplier->email);
  g_free (supplier->account);
  g_free (supplier->language);
  g_free (supplier);
}

const RcSupplier *
rc_price_book_find_supplier (const RcPriceBook *book, const char *name)
{
  for (guint i = 0; i < book->suppliers->len; i++)
    {
      const RcSupplier *supplier = g_ptr_array_index (book->suppliers, i);

      if (g_strcmp0 (supplier->name, name) == 0)
        return supplier;
    }
  return NULL;
}

const char *
rc_price_book_get_language (const RcPriceBook *book, const char *supplier)
{
  const RcSupplier *found = rc_price_book_find_supplier (book, supplier);

  return found != NULL ? found->language : NULL;
}

char *
rc_supplier_dup_freight_item (const char *name)
{
  return g_strconcat (RC_FREIGHT_PREFIX, name, NULL);
}
