/* The difference between two quotations, as one. */
#include <glib/gi18n-lib.h>

#include "quote.h"
#include "rowcut-error.h"

static gboolean
is_same (const RcQuoteLine *a, const RcQuoteLine *b)
{
  return g_strcmp0 (a->item, b->item) == 0 && a->from_stock == b->from_stock && a->amount == b->amount
         && a->quantity_micro == b->quantity_micro && a->unit == b->unit && a->tax_ppm == b->tax_ppm
         && a->cost == b->cost;
}

/* The lines that count, less those that stand in the other quotation too: each is paired once. */
static GPtrArray *
find_changed (const RcQuote *quote, const RcQuote *other)
{
  GPtrArray *changed = g_ptr_array_new ();
  g_autoptr (GPtrArray) rest = g_ptr_array_new ();

  for (guint i = 0; i < other->lines->len; i++)
    if (!((const RcQuoteLine *)g_ptr_array_index (other->lines, i))->optional)
      g_ptr_array_add (rest, g_ptr_array_index (other->lines, i));
  for (guint i = 0; i < quote->lines->len; i++)
    {
      RcQuoteLine *line = g_ptr_array_index (quote->lines, i);
      guint        k = 0;

      if (line->optional)
        continue;
      while (k < rest->len && !is_same (line, g_ptr_array_index (rest, k)))
        k++;
      if (k < rest->len)
        g_ptr_array_remove_index (rest, k);
      else
        g_ptr_array_add (changed, line);
    }
  return changed;
}

/* A line taken off again. Rounding halves away from zero makes each negative figure that of the positive. */
static RcQuoteLine *
taken_off (const RcQuoteLine *line)
{
  RcQuoteLine *copy = rc_quote_line_copy (line);

  g_free (copy->name);
  copy->name = g_strdup_printf (_ ("Less, as quoted: %s"), line->name);
  copy->quantity_micro = -line->quantity_micro;
  copy->needed_micro = -line->needed_micro;
  copy->packs = 0;
  copy->gross = -line->gross;
  copy->amount = -line->amount;
  copy->cost = -line->cost;
  return copy;
}

static void
add_taxes (RcQuote *variation, const RcQuote *quote, int sign)
{
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *from = &g_array_index (quote->taxes, RcTaxPart, i);
      RcTaxPart        part = { .ppm = from->ppm };
      guint            k = 0;

      while (k < variation->taxes->len && g_array_index (variation->taxes, RcTaxPart, k).ppm < from->ppm)
        k++;
      if (k == variation->taxes->len || g_array_index (variation->taxes, RcTaxPart, k).ppm != from->ppm)
        g_array_insert_val (variation->taxes, k, part);
      g_array_index (variation->taxes, RcTaxPart, k).net += sign * from->net;
      g_array_index (variation->taxes, RcTaxPart, k).tax += sign * from->tax;
    }
}

RcQuote *
rc_quote_new_variation (const RcQuote *before, const RcQuote *after, GError **error)
{
  g_autoptr (RcQuote) variation = rc_quote_new_empty (&after->currency);
  g_autoptr (GPtrArray) gone = find_changed (before, after), come = find_changed (after, before);

  if (!g_str_equal (before->currency.code, after->currency.code))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                   _ ("The one quotation is in %s and the other in %s: there is no difference to quote"),
                   before->currency.code, after->currency.code);
      return NULL;
    }
  variation->variation = TRUE;
  for (guint i = 0; i < gone->len; i++)
    g_ptr_array_add (variation->lines, taken_off (g_ptr_array_index (gone, i)));
  for (guint i = 0; i < come->len; i++)
    g_ptr_array_add (variation->lines, rc_quote_line_copy (g_ptr_array_index (come, i)));
  add_taxes (variation, before, -1);
  add_taxes (variation, after, 1);
  variation->tax_ppm = after->tax_ppm;
  variation->tax_name = g_strdup (after->tax_name);
  variation->terms = g_strdup (after->terms);
  variation->valid_days = after->valid_days;
  variation->detail = after->detail;
  variation->sum = after->sum - before->sum;
  variation->discount = after->discount - before->discount;
  variation->net = after->net - before->net;
  variation->tax = after->tax - before->tax;
  variation->total = after->total - before->total;
  variation->cost = after->cost - before->cost;
  variation->margin = after->margin - before->margin;
  return g_steal_pointer (&variation);
}

/* --- and back --- */

/* The line that this one takes off. */
static gboolean
find_taken_off (const GPtrArray *lines, const RcQuoteLine *off, guint *index)
{
  for (*index = 0; *index < lines->len; (*index)++)
    {
      const RcQuoteLine *line = g_ptr_array_index (lines, *index);

      if (!line->optional && g_strcmp0 (line->item, off->item) == 0 && line->unit == off->unit
          && line->quantity_micro == -off->quantity_micro && line->amount == -off->amount
          && line->tax_ppm == off->tax_ppm && line->from_stock == off->from_stock)
        return TRUE;
    }
  return FALSE;
}

RcQuote *
rc_quote_new_varied (const RcQuote *quote, const RcQuote *variation)
{
  RcQuote *varied = rc_quote_new_empty (&quote->currency);

  for (guint i = 0; i < quote->lines->len; i++)
    g_ptr_array_add (varied->lines, rc_quote_line_copy (g_ptr_array_index (quote->lines, i)));
  for (guint i = 0; i < variation->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (variation->lines, i);
      guint              at;

      if (line->quantity_micro < 0 && find_taken_off (varied->lines, line, &at))
        g_ptr_array_remove_index (varied->lines, at);
      else
        g_ptr_array_add (varied->lines, rc_quote_line_copy (line));
    }
  add_taxes (varied, quote, 1);
  add_taxes (varied, variation, 1);
  varied->tax_ppm = variation->tax_ppm;
  varied->tax_name = g_strdup (variation->tax_name);
  varied->terms = g_strdup (variation->terms);
  varied->valid_days = variation->valid_days;
  varied->detail = variation->detail;
  varied->sum = quote->sum + variation->sum;
  varied->discount = quote->discount + variation->discount;
  varied->net = quote->net + variation->net;
  varied->tax = quote->tax + variation->tax;
  varied->total = quote->total + variation->total;
  varied->cost = quote->cost + variation->cost;
  varied->margin = quote->margin + variation->margin;
  return varied;
}
