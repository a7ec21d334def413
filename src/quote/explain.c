/* What a figure is made of, in words. */
#include <glib/gi18n-lib.h>

#include "quote.h"
#include "reason.h"
#include "ticket.h"

static void
add (GPtrArray *parts, char *part)
{
  g_ptr_array_add (parts, part);
}

/* The parts of a quantity's reason, each a sentence of its own. */
static void
add_because (GPtrArray *parts, const char *because)
{
  g_auto (GStrv) split = g_strsplit (because != NULL ? because : "", "; ", -1);

  for (guint i = 0; split[i] != NULL; i++)
    if (split[i][0] != '\0')
      add (parts, g_strdup (split[i]));
}

static void
add_quantity (GPtrArray *parts, const RcQuoteLine *line)
{
  g_autofree char *needed = rc_quantity_format (line->needed_micro, 3);
  g_autofree char *charged = rc_quantity_format (line->quantity_micro, 6);

  add_because (parts, line->because);
  add (parts, g_strdup_printf (_ ("Needed: %s %s"), needed, rc_unit_get_label (line->needed_unit)));
  if (line->packs > 0)
    add (parts, g_strdup_printf (_ ("In whole packs: %ld %s"), (long)line->packs, rc_unit_get_label (line->pack_unit)));
  add (parts, g_strdup_printf (_ ("Charged: %s %s"), charged, rc_unit_get_label (line->unit)));
}

static void
add_price (GPtrArray *parts, const RcQuoteLine *line, const RcCurrency *currency)
{
  g_autofree char *price = rc_money_format (line->price, currency);
  g_autofree char *from = rc_quantity_format (line->from_micro, 3);

  add (parts, g_strdup_printf (_ ("Price: %s for 1 %s"), price, rc_unit_get_label (line->unit)));
  if (line->from_micro > 0)
    add (parts, g_strdup_printf (_ ("The price holds from %s %s on"), from, rc_unit_get_label (line->unit)));
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
  g_autofree char *cost = rc_money_format (line->cost, currency);
  g_autofree char *discount = rc_rate_format (line->discount_ppm), *tax = rc_rate_format (line->tax_ppm);

  add_quantity (parts, line);
  add_price (parts, line, currency);
  add (parts, g_strdup_printf (_ ("%s × %s = %s, rounded once, halves away from zero"), quantity, price, gross));
  if (line->discount_ppm != 0)
    add (parts, g_strdup_printf (_ ("Less %s %%: %s"), discount, amount));
  add (parts, g_strdup_printf (_ ("Taxed at %s %%"), tax));
  add (parts, g_strdup_printf (_ ("Cost to the shop: %s"), cost));
  if (line->optional)
    add (parts, g_strdup (_ ("Optional: not in the total")));
  return parts;
}

/* --- the pieces behind a line of carpet --- */

static void
add_piece (GPtrArray *parts, const RcPlan *plan, const RcCutting *cutting, const RcNestPlacement *placement,
           const char *roll_id)
{
  guint            number = g_array_index (cutting->piece_numbers, guint, placement->cut);
  const RcPiece   *piece = rc_plan_find_piece (plan, number);
  g_autofree char *width = rc_reason_format_length (plan, piece->cut_width);
  g_autofree char *length = rc_reason_format_length (plan, piece->cut_length);
  const char      *place = rc_reason_get_place (plan, piece->room);

  g_autofree char *roll = roll_id != NULL ? rc_ticket_format (roll_id) : NULL;

  add (parts, roll != NULL ? g_strdup_printf (_ ("Piece %u, %s: %s × %s (%s)"), number, place, width, length, roll)
                           : g_strdup_printf (_ ("Piece %u, %s: %s × %s"), number, place, width, length));
}

/* What is charged as it was is charged for whatever the plan makes of it. */
static gboolean
is_behind (const RcQuoteLine *line, const char *roll_id)
{
  gboolean is_ready = rc_ticket_is_cut (roll_id) || rc_ticket_is_on_order (roll_id);

  if (line->after != RC_CHARGE_PLAIN && is_ready)
    return line->after == RC_CHARGE_KEPT;
  return line->after == RC_CHARGE_KEPT || (roll_id != NULL) == (line->from_stock != FALSE);
}

GPtrArray *
rc_quote_line_explain_pieces (const RcQuoteLine *line, const RcPlan *plan)
{
  GPtrArray *parts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);

      for (guint k = 0; g_strcmp0 (cutting->goods->id, line->item) == 0 && k < cutting->answer->placements->len; k++)
        {
          const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, k);
          const RcNestUse       *use = g_ptr_array_index (cutting->answer->rolls, placement->roll);
          const char            *roll_id = rc_cutting_get_roll_id (cutting, use);

          if (is_behind (line, roll_id) && placement->cut < cutting->piece_numbers->len)
            add_piece (parts, plan, cutting, placement, roll_id);
        }
    }
  return parts;
}

/* --- the sums --- */

static void
add_sum (GPtrArray *parts, const RcQuote *quote)
{
  g_autofree char *sum = rc_money_format (quote->sum, &quote->currency);
  RcMoney          optional = 0;

  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);

      if (line->optional && !rc_money_add (optional, line->amount, &optional))
        optional = G_MAXINT64;
    }
  add (parts, g_strdup_printf (_ ("Sum of the lines: %s"), sum));
  if (optional != 0)
    {
      g_autofree char *left_out = rc_money_format (optional, &quote->currency);

      add (parts, g_strdup_printf (_ ("Optional lines, left out: %s"), left_out));
    }
}

static void
add_discount (GPtrArray *parts, const RcQuote *quote)
{
  g_autofree char *discount = rc_money_format (quote->discount, &quote->currency);
  g_autofree char *rate = rc_rate_format (quote->discount_ppm);
  RcMoney          by_rate = rc_money_part (quote->sum, quote->discount_ppm);
  g_autofree char *part = rc_money_format (by_rate, &quote->currency);
  g_autofree char *rest = rc_money_format (quote->discount - by_rate, &quote->currency);

  if (quote->discount == 0)
    return;
  if (quote->discount_ppm == 0 || quote->variation)
    add (parts, g_strdup_printf (_ ("Discount: %s"), discount));
  else if (by_rate == quote->discount)
    add (parts, g_strdup_printf (_ ("Discount: %s %% of the sum, %s"), rate, discount));
  else
    add (parts, g_strdup_printf (_ ("Discount: %s %% of the sum, %s, and %s besides"), rate, part, rest));
}

static void
add_taxes (GPtrArray *parts, const RcQuote *quote)
{
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);
      g_autofree char *rate = rc_rate_format (part->ppm), *of = rc_money_format (part->net, &quote->currency);
      g_autofree char *tax = rc_money_format (part->tax, &quote->currency);

      add (parts, g_strdup_printf (quote->variation ? _ ("Tax of %s %% on %s: %s, the difference of two quotations")
                                                    : _ ("Tax of %s %% on %s: %s, rounded once"),
                                   rate, of, tax));
    }
}

static void
add_payments (GPtrArray *parts, const RcQuote *quote)
{
  for (guint i = 0; i < quote->payments->len; i++)
    {
      const RcPaymentStep *step = g_ptr_array_index (quote->payments, i);
      g_autofree char     *amount = rc_money_format (step->amount, &quote->currency);
      g_autofree char     *part = rc_rate_format (step->part_ppm);

      add (parts,
           g_strdup_printf (_ ("To be paid: %s, %s %%: %s"), step->name != NULL ? step->name : "–", part, amount));
    }
}

GPtrArray *
rc_quote_explain_total (const RcQuote *quote)
{
  GPtrArray       *parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *net = rc_money_format (quote->net, &quote->currency);
  g_autofree char *total = rc_money_format (quote->total, &quote->currency);
  g_autofree char *cost = rc_money_format (quote->cost, &quote->currency);
  g_autofree char *margin = rc_money_format (quote->margin, &quote->currency);
  g_autofree char *rate = rc_rate_format (rc_price_get_margin_ppm (quote->cost, quote->net) / 1000 * 1000);

  add_sum (parts, quote);
  add_discount (parts, quote);
  add (parts, g_strdup_printf (_ ("Net: %s"), net));
  add_taxes (parts, quote);
  add (parts, g_strdup_printf (_ ("Total: %s"), total));
  add_payments (parts, quote);
  add (parts, g_strdup_printf (_ ("Cost to the shop: %s"), cost));
  add (parts, g_strdup_printf (_ ("Margin: %s, %s %% of the net"), margin, rate));
  return parts;
}
