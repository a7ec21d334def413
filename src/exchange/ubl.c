#include "ubl.h"

#include <stdio.h>
#include <string.h>

#include "day.h"
#include "exact-text.h"
#include "xml-out.h"

#define NAMESPACE "urn:oasis:names:specification:ubl:schema:xsd:"

static void
open_document (RcXmlOut *out, const char *kind, const char *number, const char *date)
{
  g_autofree char *own = g_strconcat (NAMESPACE, kind, "-2", NULL), *day = g_strndup (date, strlen ("2026-03-31"));

  rc_xml_out_init (out);
  rc_xml_out_open (out, kind);
  rc_xml_out_attribute (out, "xmlns", own);
  rc_xml_out_attribute (out, "xmlns:cac", NAMESPACE "CommonAggregateComponents-2");
  rc_xml_out_attribute (out, "xmlns:cbc", NAMESPACE "CommonBasicComponents-2");
  rc_xml_out_text (out, "cbc:UBLVersionID", "2.1");
  rc_xml_out_text (out, "cbc:ID", number);
  rc_xml_out_text (out, "cbc:IssueDate", day);
}

/* <element attribute="value">content</element> */
static void
write_typed (RcXmlOut *out, const char *element, const char *content, const char *attribute, const char *value)
{
  rc_xml_out_open (out, element);
  rc_xml_out_attribute (out, attribute, value);
  xmlTextWriterWriteString (out->writer, BAD_CAST content);
  rc_xml_out_close (out);
}

static void
write_amount (RcXmlOut *out, const char *element, RcMoney amount, const RcCurrency *currency)
{
  g_autofree char *text = rc_money_format_plain (amount, currency);

  write_typed (out, element, text, "currencyID", currency->code);
}

static void
write_quantity (RcXmlOut *out, const char *element, gint64 quantity_micro, RcUnit unit)
{
  g_autofree char *text = rc_quantity_format (quantity_micro, 6);

  write_typed (out, element, text, "unitCode", rc_unit_get_unece (unit));
}

/* --- parties --- */

static void
write_address (RcXmlOut *out, const char *address)
{
  g_auto (GStrv) lines = NULL;

  if (address == NULL || *address == '\0')
    return;
  lines = g_strsplit (address, "\n", -1);
  rc_xml_out_open (out, "cac:PostalAddress");
  for (guint i = 0; lines[i] != NULL; i++)
    if (*g_strstrip (lines[i]) != '\0')
      {
        rc_xml_out_open (out, "cac:AddressLine");
        rc_xml_out_text (out, "cbc:Line", lines[i]);
        rc_xml_out_close (out);
      }
  rc_xml_out_close (out);
}

/* `account`: the party's number with the supplier. All nullable. */
static void
write_party (RcXmlOut *out, const char *role, const char *account, const char *name, const char *address,
             const char *phone, const char *email)
{
  rc_xml_out_open (out, role);
  rc_xml_out_text (out, "cbc:SupplierAssignedAccountID", account);
  rc_xml_out_open (out, "cac:Party");
  if (name != NULL && *name != '\0')
    {
      rc_xml_out_open (out, "cac:PartyName");
      rc_xml_out_text (out, "cbc:Name", name);
      rc_xml_out_close (out);
    }
  write_address (out, address);
  if (phone != NULL || email != NULL)
    {
      rc_xml_out_open (out, "cac:Contact");
      rc_xml_out_text (out, "cbc:Telephone", phone);
      rc_xml_out_text (out, "cbc:ElectronicMail", email);
      rc_xml_out_close (out);
    }
  rc_xml_out_close (out);
  rc_xml_out_close (out);
}

static void
write_customer (RcXmlOut *out, const RcCustomer *customer)
{
  write_party (out, "cac:BuyerCustomerParty", NULL, customer->name, customer->address, customer->phone,
               customer->email);
}

static void
write_shop (RcXmlOut *out, const char *role, const char *account, const RcPriceBook *book)
{
  write_party (out, role, account, book != NULL ? book->shop_name : NULL, book != NULL ? book->shop_address : NULL,
               NULL, NULL);
}

/* --- sums --- */

static void
write_tax_category (RcXmlOut *out, const char *element, gint64 tax_ppm, const char *tax_name)
{
  g_autofree char *percent = rc_percent_format (tax_ppm);

  rc_xml_out_open (out, element);
  rc_xml_out_text (out, "cbc:Percent", percent);
  rc_xml_out_open (out, "cac:TaxScheme");
  rc_xml_out_text (out, "cbc:Name", tax_name != NULL && *tax_name != '\0' ? tax_name : "Sales tax");
  rc_xml_out_close (out);
  rc_xml_out_close (out);
}

static void
write_taxes (RcXmlOut *out, const RcQuote *quote)
{
  rc_xml_out_open (out, "cac:TaxTotal");
  write_amount (out, "cbc:TaxAmount", quote->tax, &quote->currency);
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);

      rc_xml_out_open (out, "cac:TaxSubtotal");
      write_amount (out, "cbc:TaxableAmount", part->net, &quote->currency);
      write_amount (out, "cbc:TaxAmount", part->tax, &quote->currency);
      write_tax_category (out, "cac:TaxCategory", part->ppm, quote->tax_name);
      rc_xml_out_close (out);
    }
  rc_xml_out_close (out);
}

/* Goods for resale: what the supplier charges comes with the invoice. */
static void
write_order_tax (RcXmlOut *out, const RcOrder *order)
{
  rc_xml_out_open (out, "cac:TaxTotal");
  write_amount (out, "cbc:TaxAmount", order->tax, &order->currency);
  rc_xml_out_close (out);
}

static void
write_total (RcXmlOut *out, const char *element, RcMoney sum, RcMoney discount, RcMoney total,
             const RcCurrency *currency, RcMoney tax)
{
  rc_xml_out_open (out, element);
  write_amount (out, "cbc:LineExtensionAmount", sum, currency);
  write_amount (out, "cbc:TaxExclusiveAmount", sum - discount, currency);
  write_amount (out, "cbc:TaxInclusiveAmount", sum - discount + tax, currency);
  if (discount != 0)
    write_amount (out, "cbc:AllowanceTotalAmount", discount, currency);
  write_amount (out, "cbc:PayableAmount", total, currency);
  rc_xml_out_close (out);
}

static void
write_allowance (RcXmlOut *out, RcMoney amount, RcMoney base, const RcCurrency *currency)
{
  rc_xml_out_open (out, "cac:AllowanceCharge");
  rc_xml_out_text (out, "cbc:ChargeIndicator", "false");
  rc_xml_out_text (out, "cbc:AllowanceChargeReason", "Discount");
  write_amount (out, "cbc:Amount", amount, currency);
  write_amount (out, "cbc:BaseAmount", base, currency);
}

/* The discount on the whole, parted by the rates of tax that it lessens. */
static void
write_discounts (RcXmlOut *out, const RcQuote *quote)
{
  for (guint i = 0; i < quote->taxes->len && quote->discount != 0; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);
      RcMoney          sum = 0;

      for (guint k = 0; k < quote->lines->len; k++)
        {
          const RcQuoteLine *line = quote->lines->pdata[k];

          if (!line->optional && line->tax_ppm == part->ppm)
            sum += line->amount;
        }
      if (sum == part->net)
        continue;
      write_allowance (out, sum - part->net, sum, &quote->currency);
      write_tax_category (out, "cac:TaxCategory", part->ppm, quote->tax_name);
      rc_xml_out_close (out);
    }
}

/* --- terms --- */

static void
write_validity (RcXmlOut *out, const RcQuote *quote, const char *date)
{
  g_autofree char *end = rc_day_add (date, quote->valid_days);

  if (quote->valid_days <= 0 || end == NULL)
    return;
  rc_xml_out_open (out, "cac:ValidityPeriod");
  rc_xml_out_text (out, "cbc:StartDate", date);
  rc_xml_out_text (out, "cbc:EndDate", end);
  rc_xml_out_close (out);
}

/* "With the order: 40 %, 123.00 USD". */
static void
write_payments (RcXmlOut *out, const RcQuote *quote)
{
  if (quote->payments->len == 0)
    return;
  rc_xml_out_open (out, "cac:TransactionConditions");
  for (guint i = 0; i < quote->payments->len; i++)
    {
      const RcPaymentStep *step = quote->payments->pdata[i];
      g_autofree char     *percent = rc_percent_format (step->part_ppm);
      g_autofree char     *amount = rc_money_format_plain (step->amount, &quote->currency);
      g_autofree char     *days = step->days != 0 ? g_strdup_printf (" (%d d)", step->days) : g_strdup ("");
      g_autofree char     *text = g_strdup_printf ("%s%s: %s %%, %s %s", step->name != NULL ? step->name : "", days,
                                                   percent, amount, quote->currency.code);

      rc_xml_out_text (out, "cbc:Description", text);
    }
  rc_xml_out_close (out);
}

/* --- lines --- */

/* "2 carton"; nothing for goods that come loose. */
static void
write_packs (RcXmlOut *out, const RcQuoteLine *line)
{
  g_autofree char *note = NULL;

  if (line->packs <= 0)
    return;
  note = g_strdup_printf ("%" G_GINT64_FORMAT " %s", line->packs, rc_unit_get_name (line->pack_unit));
  rc_xml_out_text (out, "cbc:Note", note);
}

/* A customer's line has a tax and its reason; what a supplier's is for stays in the house. */
static void
write_line (RcXmlOut *out, const char *element, guint number, const RcQuoteLine *line, const RcCurrency *currency,
            gboolean is_customers, const char *tax_name)
{
  g_autofree char *id = g_strdup_printf ("%u", number);

  rc_xml_out_open (out, element);
  rc_xml_out_open (out, "cac:LineItem");
  rc_xml_out_text (out, "cbc:ID", id);
  write_packs (out, line);
  write_quantity (out, "cbc:Quantity", line->quantity_micro, line->unit);
  write_amount (out, "cbc:LineExtensionAmount", line->amount, currency);
  if (line->gross != line->amount)
    {
      write_allowance (out, line->gross - line->amount, line->gross, currency);
      rc_xml_out_close (out);
    }
  rc_xml_out_open (out, "cac:Price");
  write_amount (out, "cbc:PriceAmount", line->price, currency);
  write_quantity (out, "cbc:BaseQuantity", RC_MICRO, line->unit);
  rc_xml_out_close (out);
  rc_xml_out_open (out, "cac:Item");
  rc_xml_out_text (out, "cbc:Description", is_customers ? line->because : NULL);
  rc_xml_out_text (out, "cbc:Name", line->name);
  if (line->item != NULL && *line->item != '\0')
    {
      rc_xml_out_open (out, "cac:SellersItemIdentification");
      rc_xml_out_text (out, "cbc:ID", line->item);
      rc_xml_out_close (out);
    }
  if (is_customers)
    write_tax_category (out, "cac:ClassifiedTaxCategory", line->tax_ppm, tax_name);
  rc_xml_out_close (out);
  rc_xml_out_close (out);
  rc_xml_out_close (out);
}

/* --- what the customer sees --- */

static gboolean
is_shown (const RcQuote *quote, const RcQuoteLine *line)
{
  return quote->detail != RC_DETAIL_GROUPS && !line->hidden;
}

/* The sum of the lines that are not shown by themselves, of one tax rate; NULL when there are none. */
static RcQuoteLine *
new_rest (const RcQuote *quote, gboolean work, gint64 tax_ppm)
{
  RcQuoteLine *rest = NULL;

  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = quote->lines->pdata[i];

      if (line->optional || is_shown (quote, line) || line->is_work != work || line->tax_ppm != tax_ppm)
        continue;
      if (rest == NULL)
        {
          rest = g_new0 (RcQuoteLine, 1);
          rest->name = g_strdup (work ? "Other work" : "Other goods");
          rest->quantity_micro = RC_MICRO;
          rest->unit = rest->pack_unit = RC_UNIT_EACH;
          rest->is_work = work;
          rest->tax_ppm = tax_ppm;
        }
      rest->amount += line->amount;
      rest->gross = rest->price = rest->amount;
    }
  return rest;
}

/* The lines as the customer sees them, with the same sums. (transfer full) GPtrArray of RcQuoteLine. */
static GPtrArray *
dup_shown_lines (const RcQuote *quote)
{
  GPtrArray *shown = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);

  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = quote->lines->pdata[i];

      if (!line->optional && is_shown (quote, line))
        g_ptr_array_add (shown, rc_quote_line_copy (line));
    }
  for (int work = FALSE; work <= TRUE; work++)
    for (guint i = 0; i < quote->taxes->len; i++)
      {
        RcQuoteLine *rest = new_rest (quote, work, g_array_index (quote->taxes, RcTaxPart, i).ppm);

        if (rest != NULL)
          g_ptr_array_add (shown, rest);
      }
  return shown;
}

/* --- documents --- */

/* Optional lines are in no sum, so they are told in words. */
static void
write_optional (RcXmlOut *out, const RcQuote *quote)
{
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = quote->lines->pdata[i];
      g_autofree char   *amount = rc_money_format_plain (line->amount, &quote->currency);
      g_autofree char   *note
          = g_strdup_printf ("Optional, not in the total: %s, %s %s", line->name, amount, quote->currency.code);

      if (line->optional)
        rc_xml_out_text (out, "cbc:Note", note);
    }
}

char *
rc_ubl_format_quote (const RcJob *job, const RcPriceBook *book, const RcQuote *quote, const char *number,
                     const char *date)
{
  g_autoptr (GPtrArray) lines = dup_shown_lines (quote);
  RcXmlOut out;

  g_return_val_if_fail (date != NULL, NULL);
  open_document (&out, "Quotation", number, date);
  rc_xml_out_text (&out, "cbc:Note", job->title);
  rc_xml_out_text (&out, "cbc:Note", quote->option);
  rc_xml_out_text (&out, "cbc:Note", quote->terms);
  write_optional (&out, quote);
  rc_xml_out_text (&out, "cbc:PricingCurrencyCode", quote->currency.code);
  write_validity (&out, quote, date);
  write_shop (&out, "cac:SellerSupplierParty", NULL, book);
  write_customer (&out, &job->customer);
  write_payments (&out, quote);
  write_discounts (&out, quote);
  write_taxes (&out, quote);
  write_total (&out, "cac:QuotedMonetaryTotal", quote->sum, quote->discount, quote->total, &quote->currency,
               quote->tax);
  for (guint i = 0; i < lines->len; i++)
    write_line (&out, "cac:QuotationLine", i + 1, lines->pdata[i], &quote->currency, TRUE, quote->tax_name);
  rc_xml_out_close (&out);
  return rc_xml_out_finish (&out);
}

char *
rc_ubl_format_order (const RcJob *job, const RcPriceBook *book, const RcOrder *order, const char *number,
                     const char *date)
{
  const RcSupplier *supplier = book != NULL ? rc_price_book_find_supplier (book, order->supplier) : NULL;
  RcXmlOut          out;

  g_return_val_if_fail (date != NULL && number != NULL, NULL);
  open_document (&out, "Order", number, date);
  for (guint i = 0; i < order->notes->len; i++)
    rc_xml_out_text (&out, "cbc:Note", order->notes->pdata[i]);
  rc_xml_out_text (&out, "cbc:DocumentCurrencyCode", order->currency.code);
  rc_xml_out_text (&out, "cbc:CustomerReference", job->number);
  write_shop (&out, "cac:BuyerCustomerParty", supplier != NULL ? supplier->account : NULL, book);
  write_party (&out, "cac:SellerSupplierParty", NULL, order->supplier, supplier != NULL ? supplier->address : NULL,
               supplier != NULL ? supplier->phone : NULL, supplier != NULL ? supplier->email : NULL);
  write_order_tax (&out, order);
  write_total (&out, "cac:AnticipatedMonetaryTotal", order->net, 0, order->total, &order->currency, order->tax);
  for (guint i = 0; i < order->lines->len; i++)
    write_line (&out, "cac:OrderLine", i + 1, order->lines->pdata[i], &order->currency, FALSE, NULL);
  rc_xml_out_close (&out);
  return rc_xml_out_finish (&out);
}
