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
  return book;
}

static void
read_shop (const xmlNode *node, RcPriceBook *book)
{
  book->shop_name = rc_xml_in_dup_text (node, "name");
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "address"))
      book->shop_address = rc_xml_in_dup_content (child);
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

void
rc_job_file_write_prices (RcXmlOut *out, const RcPriceBook *book)
{
  rc_xml_out_open (out, "prices");
  rc_xml_out_attribute (out, "currency", book->currency.code);
  rc_xml_out_percent (out, "tax-percent", book->tax_ppm);
  rc_xml_out_percent (out, "deposit-percent", book->deposit_ppm);
  if (book->shop_name != NULL || book->shop_address != NULL)
    {
      rc_xml_out_open (out, "shop");
      rc_xml_out_attribute (out, "name", book->shop_name);
      rc_xml_out_text (out, "address", book->shop_address);
      rc_xml_out_close (out);
    }
  rc_xml_out_text (out, "terms", book->terms);
  rc_job_file_write_goods (out, "catalogue", book->goods);
  for (guint i = 0; i < book->prices->len; i++)
    write_price (out, book, book->prices->pdata[i]);
  rc_xml_out_close (out);
}
