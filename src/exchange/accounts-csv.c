#include "accounts-csv.h"

#include "csv.h"
#include "exact-text.h"

void
rc_accounts_csv_begin (GString *csv)
{
  g_string_append (csv, "kind,number,day,party,job,title,currency,net,tax_percent,tax,total\n");
}

static void
append_text (GString *csv, const char *text)
{
  g_autofree char *safe = rc_csv_neutralize (text != NULL ? text : "");

  rc_csv_append (csv, safe, FALSE);
}

static void
append_money (GString *csv, RcMoney money, const RcCurrency *currency)
{
  g_autofree char *text = rc_money_format_plain (money, currency);

  rc_csv_append (csv, text, FALSE);
}

/* `percent` NULL: not of one rate. */
static void
append_line (GString *csv, const char *kind, const RcAccountsHead *head, const RcCurrency *currency, RcMoney net,
             const char *percent, RcMoney tax, RcMoney total)
{
  rc_csv_append (csv, kind, TRUE);
  append_text (csv, head->number);
  append_text (csv, head->day);
  append_text (csv, head->party);
  append_text (csv, head->job);
  append_text (csv, head->title);
  append_text (csv, currency->code);
  append_money (csv, net, currency);
  rc_csv_append (csv, percent, FALSE);
  append_money (csv, tax, currency);
  append_money (csv, total, currency);
  g_string_append_c (csv, '\n');
}

/* Whether the rates' parts are the whole: they are not where a quotation has no line that is in the total. */
static gboolean
is_whole (const RcQuote *quote)
{
  RcMoney net = 0, tax = 0;

  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);

      if (!rc_money_add (net, part->net, &net) || !rc_money_add (tax, part->tax, &tax))
        return FALSE;
    }
  return quote->taxes->len > 0 && net == quote->net && tax == quote->tax;
}

void
rc_accounts_csv_add_sale (GString *csv, const RcAccountsHead *head, const RcQuote *quote)
{
  if (!is_whole (quote))
    {
      append_line (csv, "sale", head, &quote->currency, quote->net, NULL, quote->tax, quote->total);
      return;
    }
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);
      g_autofree char *percent = rc_percent_format (part->ppm);

      append_line (csv, "sale", head, &quote->currency, part->net, percent, part->tax, part->net + part->tax);
    }
}

void
rc_accounts_csv_add_purchase (GString *csv, const RcAccountsHead *head, const RcCurrency *currency, RcMoney net,
                              RcMoney tax, RcMoney total)
{
  append_line (csv, "purchase", head, currency, net, NULL, tax, total);
}
