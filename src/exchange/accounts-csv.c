#include "accounts-csv.h"

#include "csv.h"
#include "exact-text.h"

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
append_line (GString *csv, const RcAccount *account, RcMoney net, const char *percent, RcMoney tax, RcMoney total)
{
  rc_csv_append (csv, account->sale != NULL ? "sale" : "purchase", TRUE);
  append_text (csv, account->number);
  append_text (csv, account->day);
  append_text (csv, account->party);
  append_text (csv, account->job);
  append_text (csv, account->title);
  append_text (csv, account->currency.code);
  append_money (csv, net, &account->currency);
  rc_csv_append (csv, percent, FALSE);
  append_money (csv, tax, &account->currency);
  append_money (csv, total, &account->currency);
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

static void
append_account (GString *csv, const RcAccount *account)
{
  if (account->sale == NULL || !is_whole (account->sale))
    {
      append_line (csv, account, account->net, NULL, account->tax, account->total);
      return;
    }
  for (guint i = 0; i < account->sale->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (account->sale->taxes, RcTaxPart, i);
      g_autofree char *percent = rc_percent_format (part->ppm);

      append_line (csv, account, part->net, percent, part->tax, part->net + part->tax);
    }
}

char *
rc_accounts_csv_format (const GPtrArray *accounts)
{
  GString *csv = g_string_new ("kind,number,day,party,job,title,currency,net,tax_percent,tax,total\n");

  for (guint i = 0; i < accounts->len; i++)
    append_account (csv, g_ptr_array_index (accounts, i));
  return g_string_free (csv, FALSE);
}
