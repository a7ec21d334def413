#include "roll-way.h"

#include <glib/gi18n-lib.h>

RcMoney
rc_price_get (const RcPrice *price, RcPriceSide side)
{
  return side == RC_PRICE_SIDE_COST ? price->cost : price->sale;
}

/* A full roll in a unit of area or of running length. */
static gboolean
measure_full_roll (const RcGoods *goods, RcUnit unit, gint64 *roll_micro)
{
  RcArea area;

  *roll_micro = 0;
  if (goods == NULL || goods->full_roll <= 0)
    return FALSE;
  if (rc_unit_is_length (unit))
    *roll_micro = rc_unit_from_length (goods->full_roll, unit);
  else if (rc_unit_is_area (unit))
    {
      area = rc_area_from_rectangle (goods->roll_width, goods->full_roll);
      *roll_micro = area > 0 ? rc_unit_from_area (area, unit) : 0;
    }
  return *roll_micro > 0;
}

/* What a side of the price book is asked. */
typedef struct
{
  const RcQuantityLine *quantity;
  RcPriceSide           side;
  const RcPriceBook    *book;
  const char           *date;
} Question;

/* FALSE when there is no price for so much, or the sum is too large. */
static gboolean
price_amount (const Question *question, gint64 micro, const RcPrice **price, RcMoney *sum)
{
  const RcQuantityLine *quantity = question->quantity;
  gint64                priced_micro;

  *price
      = rc_price_book_find_for (question->book, quantity->goods, quantity->item, question->date, micro, quantity->unit);
  return *price != NULL && rc_conversion_apply (quantity->goods, micro, quantity->unit, (*price)->unit, &priced_micro)
         && rc_money_multiply (rc_price_get (*price, question->side), priced_micro, sum, NULL);
}

static gboolean
has_price_by_roll (const Question *question, gint64 roll_micro)
{
  const RcGoods *goods = question->quantity->goods;
  const RcPrice *price;
  RcMoney        sum;
  gint64         full_micro;

  return price_amount (question, roll_micro, &price, &sum) && measure_full_roll (goods, price->unit, &full_micro)
         && price->from_micro > 0 && price->from_micro > full_micro - RC_MICRO;
}

/* Full rolls and the rest by the cut. */
static gboolean
try_cut (const Question *question, gint64 rolls_micro, gint64 rest_micro, RcRollWay *way, RcMoney *sum)
{
  *sum = 0;
  if (rolls_micro > 0 && !price_amount (question, rolls_micro, &way->by_roll, &way->rolls_sum))
    return FALSE;
  if (rest_micro > 0 && !price_amount (question, rest_micro, &way->by_cut, &way->cut_sum))
    return FALSE;
  way->rolls_micro = rolls_micro;
  way->cut_micro = rest_micro;
  return rc_money_add (way->rolls_sum, way->cut_sum, sum);
}

gboolean
rc_roll_way_find (RcRollWay *way, const RcQuantityLine *quantity, gint64 quantity_micro, gboolean may_add_roll,
                  RcPriceSide side, const RcPriceBook *book, const char *date)
{
  const Question question = { quantity, side, book, date };
  RcRollWay      more = { .adds_roll = TRUE };
  RcMoney        cut_sum;
  gboolean       can_cut, can_add;
  gint64         roll_micro;

  *way = (RcRollWay){ 0 };
  if (quantity->packs > 0 || quantity_micro <= 0 || !measure_full_roll (quantity->goods, quantity->unit, &roll_micro)
      || !has_price_by_roll (&question, roll_micro))
    return FALSE;
  way->n_rolls = quantity_micro / roll_micro;
  more.n_rolls = way->n_rolls + 1;
  can_cut = try_cut (&question, way->n_rolls * roll_micro, quantity_micro % roll_micro, way, &cut_sum);
  can_add = may_add_roll && quantity_micro % roll_micro > 0
            && !__builtin_mul_overflow (more.n_rolls, roll_micro, &more.rolls_micro)
            && price_amount (&question, more.rolls_micro, &more.by_roll, &more.rolls_sum);
  if (can_add && (!can_cut || more.rolls_sum < cut_sum))
    {
      more.other_sum = can_cut ? cut_sum : 0;
      *way = more;
      return TRUE;
    }
  way->other_sum = can_add ? more.rolls_sum : 0;
  return can_cut && way->n_rolls > 0;
}

char *
rc_roll_way_explain (const RcRollWay *way, const RcCurrency *currency)
{
  g_autofree char *rolls
      = g_strdup_printf (ngettext ("%ld full roll", "%ld full rolls", (gulong)way->n_rolls), (long)way->n_rolls);
  g_autofree char *rolls_sum = rc_money_format_plain (way->rolls_sum, currency);
  g_autofree char *cut_sum = rc_money_format_plain (way->cut_sum, currency);
  g_autofree char *other = rc_money_format_plain (way->other_sum, currency);

  if (way->adds_roll && way->other_sum > 0)
    return g_strdup_printf (_ ("%s for %s: less than with the rest by the cut, %s"), rolls, rolls_sum, other);
  if (way->adds_roll)
    return g_strdup_printf (_ ("%s for %s: sold by whole rolls only"), rolls, rolls_sum);
  if (way->cut_micro == 0)
    return g_strdup_printf (_ ("%s for %s"), rolls, rolls_sum);
  if (way->other_sum == 0)
    return g_strdup_printf (_ ("%s for %s, the rest by the cut for %s"), rolls, rolls_sum, cut_sum);
  return g_strdup_printf (_ ("%s for %s, the rest by the cut for %s: less than with one roll more, %s"), rolls,
                          rolls_sum, cut_sum, other);
}
