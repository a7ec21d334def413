#include "charged.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "conversion.h"
#include "cutting.h"
#include "reason.h"

/* The first of the orders it stands in; NULL: it is on none. */
static const RcOrdered *
find_order (const RcHeld *held, const char *item)
{
  for (guint i = 0; i < held->orders->len; i++)
    {
      const RcOrdered *order = g_ptr_array_index (held->orders, i);

      for (guint k = 0; k < order->lines->len; k++)
        if (g_strcmp0 (((const RcQuoteLine *)g_ptr_array_index (order->lines, k))->item, item) == 0)
          return order;
    }
  return NULL;
}

static RcLength
sum_spent (const RcHeld *held, const char *item)
{
  RcLength sum = 0;

  for (guint i = 0; i < held->spent->len; i++)
    if (g_strcmp0 (((const RcSpent *)g_ptr_array_index (held->spent, i))->goods_id, item) == 0)
      sum += ((const RcSpent *)g_ptr_array_index (held->spent, i))->length;
  return sum;
}

/* The freight of a supplier who has an order has been paid. */
static gboolean
is_paid_freight (const RcHeld *held, const char *item)
{
  for (guint i = 0; i < held->orders->len; i++)
    {
      g_autofree char *freight = rc_supplier_dup_freight_item (((const RcOrdered *)held->orders->pdata[i])->supplier);

      if (g_strcmp0 (freight, item) == 0)
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_begun (const RcHeld *held, const char *item)
{
  if (sum_spent (held, item) > 0 || find_order (held, item) != NULL || is_paid_freight (held, item))
    return TRUE;
  for (guint i = 0; i < held->goods->len; i++)
    if (g_strcmp0 (((const RcCutGoods *)g_ptr_array_index (held->goods, i))->goods_id, item) == 0)
      return TRUE;
  return FALSE;
}

static const RcQuantityLine *
find_goods_line (const GPtrArray *quantities, const char *item)
{
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (quantities, i);

      if (line->goods != NULL && g_strcmp0 (line->item, item) == 0)
        return line;
    }
  return NULL;
}

/* What was charged of the item, in `unit`; FALSE when nothing was, or that unit says nothing of it. */
static gboolean
sum_before (const RcQuote *before, const char *item, const RcGoods *goods, RcUnit unit, gint64 *sum_micro)
{
  gboolean any = FALSE;

  *sum_micro = 0;
  for (guint i = 0; i < before->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (before->lines, i);
      gint64             micro;

      if (line->optional || g_strcmp0 (line->item, item) != 0)
        continue;
      if (!rc_conversion_apply (goods, line->quantity_micro, line->unit, unit, &micro)
          || __builtin_add_overflow (*sum_micro, micro, sum_micro))
        return FALSE;
      any = TRUE;
    }
  return any;
}

/* Its lines stay as they were. */
static gboolean
stays (const RcCharged *charged, const GPtrArray *quantities, const char *item)
{
  const RcQuantityLine *now = find_goods_line (quantities, item);
  gint64                before_micro;

  return is_begun (charged->held, item)
         && (now == NULL || sum_before (charged->before, item, now->goods, now->unit, &before_micro));
}

/* --- how much of a carpet the job takes --- */

/* By the plan, from rolls in stock and goods to be bought; not what is cut or on order, nor the job's own offcuts. */
static RcLength
sum_besides (const RcCharged *charged, const RcGoods *carpet, gboolean *is_bought)
{
  RcLength sum = 0;

  *is_bought = FALSE;
  for (guint i = 0; i < charged->plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (charged->plan->cuttings, i);

      for (guint k = 0; g_strcmp0 (cutting->goods->id, carpet->id) == 0 && k < cutting->answer->rolls->len; k++)
        {
          const RcNestUse  *use = g_ptr_array_index (cutting->answer->rolls, k);
          const RcNestRoll *roll = g_ptr_array_index (cutting->problem->rolls, use->source);
          const char       *id = rc_cutting_get_roll_id (cutting, use);

          if (rc_ticket_is_cut (id) || rc_ticket_is_on_order (id)
              || (id != NULL && g_ptr_array_find_with_equal_func (charged->held->offcuts, id, g_str_equal, NULL)))
            continue;
          sum += rc_carpet_count_length (carpet, roll->width, id != NULL ? use->used : use->length);
          *is_bought |= id == NULL;
        }
    }
  return sum;
}

/* Some of it was to be bought. */
static gboolean
was_to_be_bought (const RcQuote *before, const char *item)
{
  for (guint i = 0; i < before->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (before->lines, i);

      if (!line->optional && !line->from_stock && g_strcmp0 (line->item, item) == 0)
        return TRUE;
    }
  return FALSE;
}

/* What is on its way: with the order that was made by the quotation, and with those that came after it. */
static void
sum_on_order (const RcCharged *charged, const char *item, RcLength *first, RcLength *later)
{
  const RcHeld    *held = charged->held;
  const RcOrdered *order = was_to_be_bought (charged->before, item) ? find_order (held, item) : NULL;

  *first = *later = 0;
  for (guint i = 0; i < held->goods->len; i++)
    {
      const RcCutGoods *one = g_ptr_array_index (held->goods, i);

      if (one->order != NULL && g_strcmp0 (one->goods_id, item) == 0)
        *(order != NULL && g_strcmp0 (order->number, one->order) == 0 ? first : later) += one->length;
    }
}

/* A full roll may have been bought where the customer pays for what is cut: no more than that is counted of it. */
static RcLength
sum_taken (const RcCharged *charged, const RcGoods *carpet, RcLength quoted, gboolean *is_bought)
{
  RcLength spent = sum_spent (charged->held, carpet->id), first, later;

  sum_on_order (charged, carpet->id, &first, &later);
  return spent + MIN (first, MAX (0, quoted - spent)) + later + sum_besides (charged, carpet, is_bought);
}

/* One of the pieces by which the goods were ordered, of that size, that has not been matched yet. */
static gboolean
match_laid (const RcCharged *charged, const char *goods, RcLength width, RcLength length, GArray *matched)
{
  for (guint i = 0; i < matched->len; i++)
    {
      const RcPiece *one = g_ptr_array_index (charged->laid->pieces, i);

      if (g_array_index (matched, gboolean, i) || g_strcmp0 (one->goods, goods) != 0 || one->cut_width != width
          || one->cut_length != length)
        continue;
      g_array_index (matched, gboolean, i) = TRUE;
      return TRUE;
    }
  return FALSE;
}

static GArray *
new_matched (const RcCharged *charged)
{
  GArray *matched = g_array_new (FALSE, TRUE, sizeof (gboolean));

  return g_array_set_size (matched, charged->laid != NULL ? charged->laid->pieces->len : 0);
}

/* What was ordered and cut beyond what it was quoted by. */
static RcLength
sum_new_goods (const RcCharged *charged, const RcGoods *carpet)
{
  g_autoptr (GArray) matched = new_matched (charged);
  RcLength first, sum;

  sum_on_order (charged, carpet->id, &first, &sum);
  for (guint i = 0; i < charged->held->goods->len; i++)
    {
      const RcCutGoods *one = g_ptr_array_index (charged->held->goods, i);

      if (one->order == NULL && g_strcmp0 (one->goods_id, carpet->id) == 0
          && !match_laid (charged, one->goods_id, one->width, one->length, matched))
        sum += one->length;
    }
  return sum;
}

/* All pieces of the carpet were there when it was ordered. */
static gboolean
has_no_new_piece (const RcCharged *charged, const RcGoods *carpet)
{
  g_autoptr (GArray) matched = new_matched (charged);

  for (guint i = 0; i < charged->plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (charged->plan->pieces, i);

      if (g_strcmp0 (piece->goods, carpet->id) == 0
          && !match_laid (charged, piece->goods, piece->cut_width, piece->cut_length, matched))
        return FALSE;
    }
  return TRUE;
}

/* The piece is cut already, or on its way, or there was just such a one: in an area that has not changed, or for a
 * stair. From which roll the shop cuts it is the shop's affair. */
static gboolean
is_there (const RcCharged *charged, const RcPiece *piece, GArray *matched)
{
  const RcCutting       *cutting;
  const RcNestPlacement *place = rc_plan_find_placement (charged->plan, piece->number, &cutting);
  const char            *roll = place != NULL
                                    ? rc_cutting_get_roll_id (cutting, g_ptr_array_index (cutting->answer->rolls, place->roll))
                                    : NULL;
  const RcAreaPlan      *area = piece->area != NULL ? rc_plan_find_area (charged->plan, piece->area) : NULL;

  if (rc_ticket_is_cut (roll) || rc_ticket_is_on_order (roll))
    return TRUE;
  if (area != NULL)
    return area->stays;
  return match_laid (charged, piece->goods, piece->cut_width, piece->cut_length, matched);
}

/* What the pieces that are not there take by themselves, as it is sold: no more than that can have been added. */
static RcLength
sum_new_pieces (const RcCharged *charged, const RcGoods *carpet)
{
  g_autoptr (GArray) matched = new_matched (charged);
  g_autoptr (GPtrArray) pieces = g_ptr_array_new ();
  g_autoptr (RcNestProblem) problem = NULL;
  RcLength length;

  for (guint i = 0; i < charged->plan->pieces->len; i++)
    {
      RcPiece *piece = g_ptr_array_index (charged->plan->pieces, i);

      if (g_strcmp0 (piece->goods, carpet->id) == 0 && !is_there (charged, piece, matched))
        g_ptr_array_add (pieces, piece);
    }
  if (pieces->len == 0)
    return 0;
  problem = rc_cutting_new_problem (carpet, pieces);
  length = MAX (rc_nest_compute_quick_length (problem), rc_cutting_compute_safe_length (carpet, pieces));
  if (carpet->length_step > 0)
    length = (length + carpet->length_step - 1) / carpet->length_step * carpet->length_step;
  return MAX (length, carpet->least_cut);
}

/* What was charged of the carpet before any variation. */
static RcLength
sum_first (const RcCharged *charged, const RcGoods *carpet, RcLength quoted)
{
  const RcQuote *first = charged->before == charged->held->accepted ? charged->held->accepted_first : NULL;
  gint64         micro;

  if (first == NULL || !sum_before (first, carpet->id, carpet, carpet->unit, &micro))
    return quoted;
  return rc_conversion_get_length (carpet, micro, carpet->unit);
}

static RcQuantityLine *
new_carpet_addition (const RcCharged *charged, const RcQuantityLine *now, GError **error)
{
  const RcGoods  *carpet = now->goods;
  RcQuantityLine *line;
  gboolean        is_bought;
  gint64          quoted_micro, micro;

  if (has_no_new_piece (charged, carpet) || !sum_before (charged->before, now->item, carpet, now->unit, &quoted_micro))
    return NULL;
  RcLength quoted = rc_conversion_get_length (carpet, quoted_micro, now->unit);
  RcLength taken = sum_taken (charged, carpet, quoted, &is_bought);
  RcLength most
      = sum_first (charged, carpet, quoted) + sum_new_goods (charged, carpet) + sum_new_pieces (charged, carpet);
  RcLength more = MIN (taken, most) - quoted;
  if (more <= 0 || !rc_carpet_measure_roll (carpet, more, &micro, error) || micro <= RC_CONVERSION_SLACK_MICRO)
    return NULL;
  g_autofree char *in_all = rc_reason_format_roll_length (charged->plan, carpet, taken);
  g_autofree char *before = rc_reason_format_roll_length (charged->plan, carpet, quoted);
  g_autofree char *added = rc_reason_format_roll_length (charged->plan, carpet, more);
  line = rc_quantity_line_copy (now);
  g_free (line->name);
  g_free (line->because);
  line->name = g_strdup_printf (_ ("%s, added"), carpet->name);
  line->because = more < taken - quoted
                      ? g_strdup_printf (_ ("%s of roll is charged already; what has changed takes %s by itself, which "
                                            "is added"),
                                         before, added)
                      : g_strdup_printf (_ ("The job takes %s of roll in all; %s is charged already; %s is added"),
                                         in_all, before, added);
  line->quantity_micro = line->net_micro = micro;
  line->roll_length = more;
  line->from_stock = !is_bought;
  return line;
}

/* All of the other goods as one line. */
static RcQuantityLine *
sum_now (const GPtrArray *quantities, const char *item)
{
  RcQuantityLine *sum = NULL;

  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (quantities, i);

      if (g_strcmp0 (line->item, item) != 0)
        continue;
      if (sum == NULL)
        {
          sum = rc_quantity_line_copy (line);
          continue;
        }
      sum->quantity_micro += line->quantity_micro;
      sum->net_micro += line->net_micro;
      sum->packs += line->packs;
    }
  return sum;
}

/* The packs, or the loose quantity, beyond what is charged. */
static RcQuantityLine *
new_addition (const RcCharged *charged, const GPtrArray *quantities, const RcQuantityLine *now)
{
  g_autoptr (RcQuantityLine) line = sum_now (quantities, now->item);
  gint64 quoted_micro, pack_micro = line->packs > 0 ? line->quantity_micro / line->packs : 0;

  if (!sum_before (charged->before, now->item, now->goods, now->unit, &quoted_micro)
      || line->quantity_micro - quoted_micro <= RC_CONVERSION_SLACK_MICRO)
    return NULL;
  line->quantity_micro -= quoted_micro;
  if (pack_micro > 0)
    {
      line->packs = (line->quantity_micro - RC_CONVERSION_SLACK_MICRO + pack_micro - 1) / pack_micro;
      line->quantity_micro = line->packs * pack_micro;
    }
  line->net_micro = CLAMP (line->net_micro - quoted_micro, 0, line->quantity_micro);
  g_autofree char *name = line->name;
  line->name = g_strdup_printf (_ ("%s, added"), name);
  return g_steal_pointer (&line);
}

/* --- the lines --- */

static char *
dup_name (const RcQuoteLine *line, const RcGoods *goods)
{
  if (goods == NULL && g_str_has_prefix (line->item, RC_FREIGHT_PREFIX))
    return g_strdup_printf (_ ("Freight, %s"), line->item + strlen (RC_FREIGHT_PREFIX));
  if (goods == NULL || goods->kind != RC_GOODS_CARPET)
    return g_strdup (goods != NULL ? goods->name : line->name);
  if (line->packs > 0 && line->pack_unit == RC_UNIT_ROLL)
    return g_strdup_printf (_ ("%s, by the roll"), goods->name);
  return line->from_stock ? g_strdup_printf (_ ("%s, from stock"), goods->name) : g_strdup (goods->name);
}

static RcQuoteLine *
new_kept (const RcCharged *charged, const RcQuoteLine *line, const RcGoods *goods)
{
  RcQuoteLine *copy = rc_quote_line_copy (line);
  const char  *numbers = charged->before == charged->held->accepted ? charged->held->accepted_as : NULL;

  copy->after = RC_CHARGE_KEPT;
  g_free (copy->name);
  g_free (copy->because);
  copy->name = dup_name (line, goods);
  copy->because = numbers != NULL
                      ? g_strdup_printf (_ ("Ordered or cut for the job: charged as accepted with quotation %s, "
                                            "however much of it is taken now"),
                                         numbers)
                      : g_strdup (_ ("Ordered or cut for the job: charged as it was quoted, however much of it is "
                                     "taken now"));
  return copy;
}

GPtrArray *
rc_charged_add_lines (const RcCharged *charged, GPtrArray *lines, const GPtrArray *quantities, GError **error)
{
  g_autoptr (GPtrArray) rest = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quantity_line_free);

  for (guint i = 0; i < charged->before->lines->len; i++)
    {
      const RcQuoteLine    *line = g_ptr_array_index (charged->before->lines, i);
      const RcQuantityLine *now = find_goods_line (quantities, line->item);

      if (!line->optional && stays (charged, quantities, line->item))
        g_ptr_array_add (lines, new_kept (charged, line, now != NULL ? now->goods : NULL));
    }
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (quantities, i);
      RcQuantityLine       *addition = NULL;
      GError               *fault = NULL;

      if (line->goods == NULL || !stays (charged, quantities, line->item))
        addition = rc_quantity_line_copy (line);
      else if (line == find_goods_line (quantities, line->item))
        addition = line->goods->kind == RC_GOODS_CARPET ? new_carpet_addition (charged, line, &fault)
                                                        : new_addition (charged, quantities, line);
      if (fault != NULL)
        {
          g_propagate_error (error, fault);
          return NULL;
        }
      if (addition != NULL)
        g_ptr_array_add (rest, addition);
    }
  return g_steal_pointer (&rest);
}

/* By the cut where there is also a price by the roll. */
static const RcQuoteLine *
find_price (const RcQuote *before, const RcQuoteLine *line)
{
  const RcQuoteLine *found = NULL;

  for (guint i = 0; i < before->lines->len; i++)
    {
      const RcQuoteLine *one = g_ptr_array_index (before->lines, i);

      if (!one->optional && one->unit == line->unit && g_strcmp0 (one->item, line->item) == 0
          && (found == NULL || one->pack_unit != RC_UNIT_ROLL))
        found = one;
    }
  return found;
}

static gboolean
has_kept (const GPtrArray *lines, guint n_kept, const char *item)
{
  for (guint i = 0; i < n_kept; i++)
    if (g_strcmp0 (((const RcQuoteLine *)g_ptr_array_index (lines, i))->item, item) == 0)
      return TRUE;
  return FALSE;
}

gboolean
rc_charged_hold_prices (const RcCharged *charged, const GPtrArray *lines, guint first, GError **error)
{
  for (guint i = first; i < lines->len; i++)
    {
      RcQuoteLine       *line = g_ptr_array_index (lines, i);
      const RcQuoteLine *was = find_price (charged->before, line);

      line->after = has_kept (lines, first, line->item) ? RC_CHARGE_ADDED : RC_CHARGE_PLAIN;
      if (was == NULL)
        continue;
      g_free (line->price_since);
      line->price = was->price;
      line->price_since = g_strdup (was->price_since);
      line->from_micro = 0;
      if (!rc_money_multiply (line->price, line->quantity_micro, &line->gross, error))
        {
          g_prefix_error (error, "%s: ", line->name);
          return FALSE;
        }
      line->amount = line->gross;
      if (line->quantity_micro == was->quantity_micro && line->is_work)
        line->cost = was->cost;
    }
  return TRUE;
}
