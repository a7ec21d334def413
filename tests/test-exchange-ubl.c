/* Quotation and order as UBL 2.1: the same bytes again, sums that add up, units and currency on every figure; and,
 * where $RC_SHARED/ubl is there, valid by the OASIS schema.
 */
#include <string.h>

#include <libxml/parser.h>
#include <libxml/xmlschemas.h>
#include <libxml/xpath.h>
#include <libxml/xpathInternals.h>

#include "shipped.h"
#include "ubl.h"

static RcQuoteLine *
new_line (const char *item, gint64 quantity_micro, RcUnit unit, RcMoney price)
{
  RcQuoteLine *line = g_new0 (RcQuoteLine, 1);

  line->item = g_strdup (item);
  line->name = g_strdup ("Carpet <best> & \"more\"");
  line->because = g_strdup ("Parlour: 27' × 12'");
  line->quantity_micro = quantity_micro;
  line->unit = line->pack_unit = unit;
  line->price = price;
  g_assert_true (rc_money_multiply (price, quantity_micro, &line->gross, NULL));
  line->amount = line->gross;
  return line;
}

/* 36 sq yd at 17.95 (published: hasslefreeflooring.com's yardage at the price of jiskha 1326255360) and two rolls of
 * tape. */
static GPtrArray *
new_lines (void)
{
  GPtrArray   *lines = g_ptr_array_new ();
  RcQuoteLine *tape = new_line ("tape", 132 * RC_MICRO, RC_UNIT_FT, 55);

  tape->packs = 2;
  tape->pack_unit = RC_UNIT_ROLL;
  g_ptr_array_add (lines, new_line ("twist", 36 * RC_MICRO, RC_UNIT_SQ_YD, 1795));
  g_ptr_array_add (lines, tape);
  return lines;
}

static char *
format_quote (void)
{
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (NULL);
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (NULL);
  const RcCurrency usd = { "USD", 2 };
  g_autoptr (RcQuote) quote = rc_quote_new_empty (&usd);
  RcTaxPart part = { .ppm = 72500 };

  g_ptr_array_unref (quote->lines);
  quote->lines = new_lines ();
  g_ptr_array_set_free_func (quote->lines, (GDestroyNotify)rc_quote_line_free);
  for (guint i = 0; i < quote->lines->len; i++)
    ((RcQuoteLine *)quote->lines->pdata[i])->tax_ppm = 72500;
  quote->net = quote->sum = part.net = 36 * 1795 + 132 * 55;
  quote->tax_ppm = 72500;
  quote->tax = part.tax = rc_money_part (quote->net, quote->tax_ppm);
  g_array_append_val (quote->taxes, part);
  quote->total = quote->net + quote->tax;
  return rc_ubl_format_quote (job, book, quote, "Q-1", "2026-03-20T10:00:00Z");
}

static char *
format_order (void)
{
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (NULL);
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (NULL);
  RcOrder    *order = g_new0 (RcOrder, 1);
  RcSupplier *supplier = rc_supplier_new ("Skerrow Mills");
  char       *xml;

  supplier->account = g_strdup ("4711");
  supplier->address = g_strdup ("Mill Lane\nSkerrow");
  supplier->email = g_strdup ("orders@skerrow.invalid");
  g_ptr_array_add (book->suppliers, supplier);
  order->supplier = g_strdup ("Skerrow Mills");
  order->currency = (RcCurrency){ "USD", 2 };
  order->lines = new_lines ();
  g_ptr_array_set_free_func (order->lines, (GDestroyNotify)rc_quote_line_free);
  order->notes = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (order->notes, g_strdup ("One dye lot, please"));
  order->net = order->total = 36 * 1795 + 132 * 55;
  xml = rc_ubl_format_order (job, book, order, "O-1", "2026-03-20");
  rc_order_free (order);
  return xml;
}

/* The same lines as part of an offer: discounts, two rates, an optional line, steps of payment. `hides`: the rug is not
 * shown by itself. */
static char *
format_offer_shown (RcDetail detail, gboolean hides)
{
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (NULL);
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (NULL);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  g_autoptr (RcQuote) quote = NULL;
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (book->tax_areas, rc_tax_area_new ("isle", "Isle tax", 70000, 0));
  g_ptr_array_add (book->payments, rc_payment_new ("With the order", 400000));
  job->offer->tax_area = g_strdup ("isle");
  job->offer->discount_ppm = 50000;
  job->offer->discount = 333;
  job->offer->valid_days = 30;
  for (guint i = 0; i < 3; i++)
    {
      g_autofree char *id = g_strdup_printf ("X%u", i + 1);
      RcExtraLine     *extra = rc_extra_line_new (id);
      RcLineTerms     *terms = rc_line_terms_new (id);

      extra->name = g_strdup (i == 0 ? "Rug" : i == 1 ? "Moving furniture" : "Mat <at the door>");
      extra->quantity_micro = (i + 1) * 1250000;
      extra->unit = RC_UNIT_M2;
      extra->price = 12345;
      extra->is_work = i == 1;
      terms->discount_ppm = i == 0 ? 125000 : 0;
      terms->optional = i == 2;
      terms->hidden = hides && i == 0;
      g_ptr_array_add (job->offer->extras, extra);
      g_ptr_array_add (job->offer->lines, terms);
    }
  job->offer->detail = detail;
  quote = rc_quote_new (job, none, book, NULL, &error);
  g_assert_no_error (error);
  return rc_ubl_format_quote (job, book, quote, "Q-1.2", "2026-03-20");
}

static char *
format_offer (void)
{
  return format_offer_shown (RC_DETAIL_FULL, FALSE);
}

/* From 36 sq yd to 30: one line off, one on, the sums those of the difference. */
static char *
format_variation (void)
{
  g_autoptr (RcJob) job = rc_shipped_load_demo_job (NULL);
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (NULL);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  RcQuote *quotes[2], *variation;
  char    *xml;

  for (int i = 0; i < 2; i++)
    {
      RcExtraLine *extra = rc_extra_line_new ("X1");

      extra->name = g_strdup ("Carpet");
      extra->quantity_micro = (i == 0 ? 36 : 30) * RC_MICRO;
      extra->unit = RC_UNIT_SQ_YD;
      extra->price = 1795;
      g_ptr_array_set_size (job->offer->extras, 0);
      g_ptr_array_add (job->offer->extras, extra);
      quotes[i] = rc_quote_new (job, none, book, NULL, NULL);
      g_assert_nonnull (quotes[i]);
    }
  variation = rc_quote_new_variation (quotes[0], quotes[1], NULL);
  g_assert_nonnull (variation);
  xml = rc_ubl_format_quote (job, book, variation, "Q-1.3", "2026-03-20");
  for (int i = 0; i < 2; i++)
    rc_quote_free (quotes[i]);
  rc_quote_free (variation);
  return xml;
}

static double
evaluate (const char *xml, const char *expression)
{
  xmlDoc          *doc = xmlReadMemory (xml, (int)strlen (xml), NULL, NULL, XML_PARSE_NONET);
  xmlXPathContext *context = xmlXPathNewContext (doc);
  xmlXPathObject  *object;
  double           value;

  g_assert_nonnull (doc);
  xmlXPathRegisterNs (context, BAD_CAST "cbc",
                      BAD_CAST "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2");
  xmlXPathRegisterNs (context, BAD_CAST "cac",
                      BAD_CAST "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2");
  object = xmlXPathEvalExpression (BAD_CAST expression, context);
  g_assert_nonnull (object);
  value = xmlXPathCastToNumber (object);
  xmlXPathFreeObject (object);
  xmlXPathFreeContext (context);
  xmlFreeDoc (doc);
  return value;
}

static void
check_sums (const char *xml)
{
  const double cent = 0.001;

  g_assert_cmpfloat (evaluate (xml, "count(//cac:LineItem)"), ==, 2);
  /* Price times quantity, the lines' sum, net and tax and total. */
  for (int i = 1; i <= 2; i++)
    {
      g_autofree char *product = g_strdup_printf (
          "(//cac:LineItem)[%d]/cac:Price/cbc:PriceAmount * (//cac:LineItem)[%d]/cbc:Quantity", i, i);
      g_autofree char *amount = g_strdup_printf ("(//cac:LineItem)[%d]/cbc:LineExtensionAmount", i);

      g_assert_cmpfloat_with_epsilon (evaluate (xml, product), evaluate (xml, amount), cent);
    }
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "sum(//cac:LineItem/cbc:LineExtensionAmount)"),
                                  evaluate (xml, "sum(//cbc:TaxExclusiveAmount)"), cent);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "//cbc:TaxExclusiveAmount + //cac:TaxTotal/cbc:TaxAmount"),
                                  evaluate (xml, "//cbc:PayableAmount"), cent);
  /* Every amount says its currency, every quantity its unit. */
  g_assert_cmpfloat (
      evaluate (xml, "count(//*[contains(local-name(), 'Amount') and not(*) and not(@currencyID = 'USD')])"), ==, 0);
  g_assert_cmpfloat (evaluate (xml, "count(//*[contains(local-name(), 'Quantity') and not(@unitCode)])"), ==, 0);
  g_assert_cmpfloat (evaluate (xml, "count(//cbc:Quantity[@unitCode = 'YDK'])"), ==, 1);
  g_assert_cmpfloat (evaluate (xml, "count(//cbc:Quantity[@unitCode = 'FOT'])"), ==, 1);
}

static void
test_sums (void)
{
  g_autofree char *quote = format_quote (), *order = format_order ();

  check_sums (quote);
  check_sums (order);
  g_assert_cmpfloat (evaluate (quote, "//cbc:Percent"), ==, 7.25);
}

/* Sums of an offer: gross less allowance is each line's amount; the lines less the allowances on the whole are the net,
 * which the rates part among them; the taxes are those rates of it. */
static void
test_offer_sums (void)
{
  const double     cent = 0.001;
  g_autofree char *xml = format_offer ();

  g_assert_cmpfloat (evaluate (xml, "count(//cac:LineItem)"), ==, 2);
  g_assert_cmpfloat_with_epsilon (
      evaluate (xml, "(//cac:LineItem)[1]/cac:Price/cbc:PriceAmount * (//cac:LineItem)[1]/cbc:Quantity"
                     " - (//cac:LineItem)[1]/cac:AllowanceCharge/cbc:Amount"),
      evaluate (xml, "(//cac:LineItem)[1]/cbc:LineExtensionAmount"), 0.006);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "sum(//cac:LineItem/cbc:LineExtensionAmount)"),
                                  evaluate (xml, "sum(//cac:QuotedMonetaryTotal/cbc:LineExtensionAmount)"), cent);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "sum(/*/cac:AllowanceCharge/cbc:Amount)"),
                                  evaluate (xml, "sum(//cbc:AllowanceTotalAmount)"), cent);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "//cac:QuotedMonetaryTotal/cbc:LineExtensionAmount"
                                                 " - //cbc:AllowanceTotalAmount"),
                                  evaluate (xml, "//cbc:TaxExclusiveAmount"), cent);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "sum(//cac:TaxSubtotal/cbc:TaxableAmount)"),
                                  evaluate (xml, "//cbc:TaxExclusiveAmount"), cent);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "sum(//cac:TaxSubtotal/cbc:TaxAmount)"),
                                  evaluate (xml, "/*/cac:TaxTotal/cbc:TaxAmount"), cent);
  g_assert_cmpfloat_with_epsilon (
      evaluate (xml, "//cac:TaxSubtotal[cac:TaxCategory/cbc:Percent = 7]/cbc:TaxableAmount * 0.07"),
      evaluate (xml, "sum(//cac:TaxSubtotal[cac:TaxCategory/cbc:Percent = 7]/cbc:TaxAmount)"), 0.006);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "//cbc:TaxExclusiveAmount + /*/cac:TaxTotal/cbc:TaxAmount"),
                                  evaluate (xml, "//cbc:PayableAmount"), cent);
  g_assert_cmpfloat (evaluate (xml, "count(//cac:TransactionConditions/cbc:Description)"), ==, 2);
  g_assert_nonnull (strstr (xml, "<cbc:EndDate>2026-04-19</cbc:EndDate>"));
  g_assert_nonnull (strstr (xml, "Optional, not in the total: Mat &lt;at the door&gt;"));
}

/* What the customer is not shown by itself is in one line a rate; every sum is the same. */
static void
test_hidden_lines (void)
{
  g_autofree char *full = format_offer (), *hidden = format_offer_shown (RC_DETAIL_FULL, TRUE);
  g_autofree char *groups = format_offer_shown (RC_DETAIL_GROUPS, FALSE);
  const char      *sums[]
      = { "sum(//cac:LineItem/cbc:LineExtensionAmount)", "//cbc:TaxExclusiveAmount", "//cbc:PayableAmount",
          "sum(/*/cac:AllowanceCharge/cbc:Amount)", "sum(//cac:TaxSubtotal/cbc:TaxAmount)" };

  g_assert_nonnull (strstr (full, "<cbc:Name>Rug</cbc:Name>"));
  g_assert_null (strstr (hidden, "Rug"));
  g_assert_nonnull (strstr (hidden, "<cbc:Name>Other goods</cbc:Name>"));
  g_assert_nonnull (strstr (hidden, "<cbc:Name>Moving furniture</cbc:Name>"));
  g_assert_null (strstr (groups, "Moving furniture"));
  for (guint i = 0; i < G_N_ELEMENTS (sums); i++)
    {
      g_assert_cmpfloat_with_epsilon (evaluate (hidden, sums[i]), evaluate (full, sums[i]), 0.001);
      g_assert_cmpfloat_with_epsilon (evaluate (groups, sums[i]), evaluate (full, sums[i]), 0.001);
    }
}

/* 6 sq yd less at 17.95: 107.70 off. */
static void
test_variation (void)
{
  g_autofree char *xml = format_variation ();

  g_assert_cmpfloat_with_epsilon (evaluate (xml, "sum(//cac:LineItem/cbc:LineExtensionAmount)"), -107.70, 0.001);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "//cbc:TaxExclusiveAmount"), -107.70, 0.001);
  g_assert_cmpfloat_with_epsilon (evaluate (xml, "//cbc:TaxExclusiveAmount + /*/cac:TaxTotal/cbc:TaxAmount"),
                                  evaluate (xml, "//cbc:PayableAmount"), 0.001);
}

/* The supplier is told who it is, what number the shop has there, and no room of anybody's. */
static void
test_order_parties (void)
{
  g_autofree char *xml = format_order ();

  g_assert_null (strstr (xml, "Parlour"));
  g_assert_nonnull (strstr (xml, "<cbc:SupplierAssignedAccountID>4711</cbc:SupplierAssignedAccountID>"));
  g_assert_nonnull (strstr (xml, "<cbc:Line>Mill Lane</cbc:Line>"));
  g_assert_nonnull (strstr (xml, "<cbc:ElectronicMail>orders@skerrow.invalid</cbc:ElectronicMail>"));
}

static void
test_same_bytes (void)
{
  g_autofree char *quote = format_quote (), *again = format_quote ();

  g_assert_cmpstr (quote, ==, again);
  g_assert_nonnull (strstr (quote, "Carpet &lt;best&gt; &amp; "));
  g_assert_nonnull (strstr (quote, "<cbc:IssueDate>2026-03-20</cbc:IssueDate>"));
}

static void
validate (const char *xml, const char *schema_path)
{
  xmlSchemaParserCtxt *parser = xmlSchemaNewParserCtxt (schema_path);
  xmlSchema           *schema = xmlSchemaParse (parser);
  xmlSchemaValidCtxt  *context;
  xmlDoc              *doc = xmlReadMemory (xml, (int)strlen (xml), NULL, NULL, XML_PARSE_NONET);

  g_assert_nonnull (schema);
  context = xmlSchemaNewValidCtxt (schema);
  g_assert_cmpint (xmlSchemaValidateDoc (context, doc), ==, 0);
  xmlSchemaFreeValidCtxt (context);
  xmlSchemaFree (schema);
  xmlSchemaFreeParserCtxt (parser);
  xmlFreeDoc (doc);
}

static void
test_valid (void)
{
  const char      *shared = g_getenv ("RC_SHARED");
  g_autofree char *folder = g_build_filename (shared != NULL ? shared : "", "ubl", "xsdrt", "maindoc", NULL);
  g_autofree char *quote = format_quote (), *order = format_order (), *offer = format_offer ();
  g_autofree char *groups = format_offer_shown (RC_DETAIL_GROUPS, FALSE), *variation = format_variation ();
  g_autofree char *quote_schema = g_build_filename (folder, "UBL-Quotation-2.1.xsd", NULL);
  g_autofree char *order_schema = g_build_filename (folder, "UBL-Order-2.1.xsd", NULL);

  if (shared == NULL || !g_file_test (quote_schema, G_FILE_TEST_EXISTS))
    {
      g_test_skip ("RC_SHARED does not name a folder with the UBL 2.1 schema");
      return;
    }
  validate (quote, quote_schema);
  validate (offer, quote_schema);
  validate (groups, quote_schema);
  validate (variation, quote_schema);
  validate (order, order_schema);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/ubl/sums", test_sums);
  g_test_add_func ("/exchange/ubl/sums of an offer", test_offer_sums);
  g_test_add_func ("/exchange/ubl/hidden lines", test_hidden_lines);
  g_test_add_func ("/exchange/ubl/variation", test_variation);
  g_test_add_func ("/exchange/ubl/order parties", test_order_parties);
  g_test_add_func ("/exchange/ubl/same bytes", test_same_bytes);
  g_test_add_func ("/exchange/ubl/valid", test_valid);
  return g_test_run ();
}
