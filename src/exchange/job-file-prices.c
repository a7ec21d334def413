#include "job-file-parts.h"

/* The unit that goes without saying: the goods' own, or the work's in the job's units. */
static RcUnit
find_usual_unit (const RcPriceBook *book, const RcJob *job, const char *item)
{
  const RcGoods *goods = rc_price_book_find_goods (book, item);
  RcWork         work;

  if (goods == NULL)
    goods = rc_job_find_goods (job, item);
  if (goods != NULL)
    return goods->unit;
  if (rc_work_parse (item, &work, NULL) && work != RC_WORK_NONE)
    return rc_work_get_unit (work, job->units);
  return RC_UNIT_EACH;
}

static void
read_price (RcXmlIn *in, const xmlNode *node, const RcJob *job, RcPriceBook *book)
{
  g_autofree char *item = rc_xml_in_dup (node, "item");
  RcUnit           unit = rc_xml_in_unit (in, node, "unit", find_usual_unit (book, job, item));
  RcPrice         *price = rc_price_new (item, unit, rc_xml_in_money (in, node, "cost", &book->currency, 0),
                                         rc_xml_in_money (in, node, "sale", &book->currency, 0));

  price->from_micro = rc_xml_in_quantity (in, node, "from-quantity", 0);
  price->valid_from = rc_xml_in_dup (node, "valid-from");
  price->valid_to = rc_xml_in_dup (node, "valid-to");
  g_ptr_array_add (book->prices, price);
}

static RcPriceBook *
read_head (RcXmlIn *in, const xmlNode *node, const RcJob *job)
{
  g_autofree char *code = rc_xml_in_dup (node, "currency");
  RcCurrency       currency = job->currency;
  GError          *error = NULL;
  RcPriceBook     *book;

  if (code != NULL && !rc_currency_parse (code, &currency, &error))
    rc_xml_in_take_error (in, node, "currency", error);
  book = rc_price_book_new (&currency);
  book->tax_ppm = rc_xml_in_percent (in, node, "tax-percent", 0);
  book->deposit_ppm = rc_xml_in_percent (in, node, "deposit-percent", 0);
  book->valid_days = (int)rc_xml_in_integer (in, node, "valid-days", 0, 36500, 0);
  book->job_numbers = rc_xml_in_dup (node, "job-numbers");
  return book;
}

static void
read_shop (const xmlNode *node, RcPriceBook *book)
{
  g_autofree char *logo = rc_xml_in_dup_child_content (node, "logo");

  book->shop_name = rc_xml_in_dup_text (node, "name");
  book->shop_address = rc_xml_in_dup_child_content (node, "address");
  if (logo != NULL)
    {
      gsize   size;
      guchar *bytes = g_base64_decode (logo, &size);

      book->logo = g_bytes_new_take (bytes, size);
    }
}

static RcTaxArea *
read_tax_area (RcXmlIn *in, const xmlNode *node)
{
  g_autofree char *id = rc_xml_in_dup (node, "id"), *name = rc_xml_in_dup_text (node, "name");

  return rc_tax_area_new (id, name, rc_xml_in_percent (in, node, "goods-percent", 0),
                          rc_xml_in_percent (in, node, "work-percent", 0));
}

static RcSupplier *
read_supplier (RcXmlIn *in, const xmlNode *node, const RcCurrency *currency)
{
  g_autofree char *name = rc_xml_in_dup_text (node, "name");
  RcSupplier      *supplier = rc_supplier_new (name);

  supplier->address = rc_xml_in_dup_child_content (node, "address");
  supplier->phone = rc_xml_in_dup_text (node, "phone");
  supplier->email = rc_xml_in_dup_text (node, "email");
  supplier->account = rc_xml_in_dup_text (node, "account");
  supplier->language = rc_job_file_dup_language (in, node);
  supplier->freight_cost = rc_xml_in_money (in, node, "freight-cost", currency, 0);
  supplier->freight_sale = rc_xml_in_money (in, node, "freight-sale", currency, 0);
  supplier->freight_free_from = rc_xml_in_money (in, node, "freight-free-from", currency, 0);
  supplier->lead_days = (int)rc_xml_in_integer (in, node, "lead-days", 0, 36500, 0);
  return supplier;
}

RcPriceBook *
rc_job_file_read_prices (RcXmlIn *in, const xmlNode *node, const RcJob *job)
{
  RcPriceBook *book = read_head (in, node, job);

  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "shop"))
      read_shop (child, book);
    else if (rc_xml_in_is (child, "terms"))
      book->terms = rc_xml_in_dup_content (child);
    else if (rc_xml_in_is (child, "catalogue"))
      rc_job_file_read_goods (in, child, book->goods);
    else if (rc_xml_in_is (child, "price"))
      read_price (in, child, job, book);
    else if (rc_xml_in_is (child, "payment"))
      g_ptr_array_add (book->payments, rc_job_file_read_payment (in, child));
    else if (rc_xml_in_is (child, "tax-area"))
      g_ptr_array_add (book->tax_areas, read_tax_area (in, child));
    else if (rc_xml_in_is (child, "supplier"))
      g_ptr_array_add (book->suppliers, read_supplier (in, child, &book->currency));
  return book;
}

static void
write_price (RcXmlOut *out, const RcPriceBook *book, const RcPrice *price)
{
  rc_xml_out_open (out, "price");
  rc_xml_out_attribute (out, "item", price->item);
  rc_xml_out_attribute (out, "unit", rc_unit_get_name (price->unit));
  rc_xml_out_money (out, "cost", price->cost, &book->currency);
  rc_xml_out_money (out, "sale", price->sale, &book->currency);
  if (price->from_micro != 0)
    rc_xml_out_quantity (out, "from-quantity", price->from_micro);
  rc_xml_out_attribute (out, "valid-from", price->valid_from);
  rc_xml_out_attribute (out, "valid-to", price->valid_to);
  rc_xml_out_close (out);
}

static void
write_shop (RcXmlOut *out, const RcPriceBook *book)
{
  rc_xml_out_open (out, "shop");
  rc_xml_out_attribute (out, "name", book->shop_name);
  rc_xml_out_text (out, "address", book->shop_address);
  if (book->logo != NULL)
    {
      gsize            size;
      const guchar    *bytes = g_bytes_get_data (book->logo, &size);
      g_autofree char *text = g_base64_encode (bytes, size);

      rc_xml_out_text (out, "logo", text);
    }
  rc_xml_out_close (out);
}

static void
write_supplier (RcXmlOut *out, const RcSupplier *supplier, const RcCurrency *currency)
{
  rc_xml_out_open (out, "supplier");
  rc_xml_out_attribute (out, "name", supplier->name);
  rc_xml_out_attribute (out, "phone", supplier->phone);
  rc_xml_out_attribute (out, "email", supplier->email);
  rc_xml_out_attribute (out, "account", supplier->account);
  rc_xml_out_attribute (out, "language", supplier->language);
  if (supplier->freight_cost != 0)
    rc_xml_out_money (out, "freight-cost", supplier->freight_cost, currency);
  if (supplier->freight_sale != 0)
    rc_xml_out_money (out, "freight-sale", supplier->freight_sale, currency);
  if (supplier->freight_free_from != 0)
    rc_xml_out_money (out, "freight-free-from", supplier->freight_free_from, currency);
  if (supplier->lead_days != 0)
    rc_xml_out_attribute_format (out, "lead-days", "%d", supplier->lead_days);
  rc_xml_out_text (out, "address", supplier->address);
  rc_xml_out_close (out);
}

static void
write_terms (RcXmlOut *out, const RcPriceBook *book)
{
  rc_xml_out_text (out, "terms", book->terms);
  for (guint i = 0; i < book->payments->len; i++)
    rc_job_file_write_payment (out, book->payments->pdata[i]);
  for (guint i = 0; i < book->tax_areas->len; i++)
    {
      const RcTaxArea *area = book->tax_areas->pdata[i];

      rc_xml_out_open (out, "tax-area");
      rc_xml_out_attribute (out, "id", area->id);
      rc_xml_out_attribute (out, "name", area->name);
      rc_xml_out_percent (out, "goods-percent", area->goods_ppm);
      rc_xml_out_percent (out, "work-percent", area->work_ppm);
      rc_xml_out_close (out);
    }
  for (guint i = 0; i < book->suppliers->len; i++)
    write_supplier (out, book->suppliers->pdata[i], &book->currency);
}

void
rc_job_file_write_prices (RcXmlOut *out, const RcPriceBook *book)
{
  rc_xml_out_open (out, "prices");
  rc_xml_out_attribute (out, "currency", book->currency.code);
  rc_xml_out_percent (out, "tax-percent", book->tax_ppm);
  rc_xml_out_percent (out, "deposit-percent", book->deposit_ppm);
  if (book->valid_days != 0)
    rc_xml_out_attribute_format (out, "valid-days", "%d", book->valid_days);
  rc_xml_out_attribute (out, "job-numbers", book->job_numbers);
  if (book->shop_name != NULL || book->shop_address != NULL || book->logo != NULL)
    write_shop (out, book);
  write_terms (out, book);
  rc_job_file_write_goods (out, "catalogue", book->goods);
  for (guint i = 0; i < book->prices->len; i++)
    write_price (out, book, book->prices->pdata[i]);
  rc_xml_out_close (out);
}
