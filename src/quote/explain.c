/* What a figure is made of, in words. */
#include <glib/gi18n-lib.h>

#include "quote.h"

static void
add (GPtrArray *parts, char *part)
{
  g_ptr_array_add (parts, part);
}

static char *
format_rate (gint64 ppm)
{
  return rc_quantity_format (ppm * 100, 4);
}

static void
add_quantity (GPtrArray *parts, const RcQuoteLine *line)
{
  g_autofree char *needed = rc_quantity_format (line->needed_micro, 3);
  g_autofree char *charged = rc_quantity_format (line->quantity_micro, 6);

  if (line->because != NULL && line->because[0] != '\0')
    add (parts, g_strdup (line->because));
  add (parts, g_strdup_printf (_ ("Needed: %s %s"), needed, rc_unit_get_name (line->needed_unit)));
  if (line->packs > 0)
    add (parts, g_strdup_printf (_ ("In whole packs: %ld %s"), (long)line->packs, rc_unit_get_name (line->pack_unit)));
  add (parts, g_strdup_printf (_ ("Charged: %s %s"), charged, rc_unit_get_name (line->unit)));
}

static void
add_price (GPtrArray *parts, const RcQuoteLine *line, const RcCurrency *currency)
{
  g_autofree char *price = rc_money_format (line->price, currency);
  g_autofree char *from = rc_quantity_format (line->from_micro, 3);

  add (parts, g_strdup_printf (_ ("Price: %s for 1 %s"), price, rc_unit_get_name (line->unit)));
  if (line->from_micro > 0)
    add (parts, g_strdup_printf (_ ("The price holds from %s %s on"), from, rc_unit_get_name (line->unit)));
  if (line->price_since != NULL)
    add (parts, g_strdup_printf (_ ("The price holds since %s"), line->price_since));
}

GPtrArray *
rc_quote_line_explain (const RcQuoteLine *line, const RcCurrency *currency)
{
  GPtrArray       *parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *quantity = rc_quantity_format (line->quantity_micro, 6);
  g_autofree char *price = rc_money_format_plain (line->price, currency);
  g_autofree char *gross = rc_money_format (line->gross, currency);
  g_autofree char *amount = rc_money_format (line->amount, currency);
  g_autofree char *discount = format_rate (line->discount_ppm), *tax = format_rate (line->tax_ppm);

  add_quantity (parts, line);
  add_price (parts, line, currency);
  add (parts, g_strdup_printf (_ ("%s × %s = %s, rounded once"), quantity, price, gross));
  if (line->discount_ppm != 0)
    add (parts, g_strdup_printf (_ ("Less %s %%: %s"), discount, amount));
  add (parts, g_strdup_printf (_ ("Taxed at %s %%"), tax));
  if (line->optional)
    add (parts, g_strdup (_ ("Optional: not in the total")));
  return parts;
}

GPtrArray *
rc_quote_explain_total (const RcQuote *quote)
{
  GPtrArray       *parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *sum = rc_money_format (quote->sum, &quote->currency);
  g_autofree char *discount = rc_money_format (quote->discount, &quote->currency);
  g_autofree char *net = rc_money_format (quote->net, &quote->currency);
  g_autofree char *total = rc_money_format (quote->total, &quote->currency);

  add (parts, g_strdup_printf (_ ("Sum of the lines: %s"), sum));
  if (quote->discount != 0)
    add (parts, g_strdup_printf (_ ("Discount: %s"), discount));
  add (parts, g_strdup_printf (_ ("Net: %s"), net));
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);
      g_autofree char *rate = format_rate (part->ppm), *of = rc_money_format (part->net, &quote->currency);
      g_autofree char *tax = rc_money_format (part->tax, &quote->currency);

      add (parts, g_strdup_printf (_ ("Tax of %s %% on %s: %s, rounded once"), rate, of, tax));
    }
  add (parts, g_strdup_printf (_ ("Total: %s"), total));
  return parts;
}
