#include "option-facts.h"

guint
rc_option_count_cross_seams (const RcOption *option)
{
  guint n = 0;

  for (guint i = 0; i < option->seams->len; i++)
    n += ((const RcSeam *)g_ptr_array_index (option->seams, i))->kind == RC_SEAM_CROSS;

  return n;
}

/* Adds quantity x what the customer pays for the item to *sum; FALSE when the book has no price for it. */
static gboolean
add_priced (const RcSheetData *data, const char *item, RcLength length, RcArea area, gint64 each, RcMoney *sum)
{
  const RcPrice *price = data->book && item ? rc_price_book_find (data->book, item, data->date) : NULL;
  gint64         quantity;
  RcMoney        amount;

  if (!price)
    return FALSE;
  switch (price->unit)
    {
    case RC_UNIT_M:
    case RC_UNIT_FT:
    case RC_UNIT_YD:
      quantity = rc_unit_from_length (length, price->unit);
      break;
    case RC_UNIT_M2:
    case RC_UNIT_SQ_FT:
    case RC_UNIT_SQ_YD:
      quantity = rc_unit_from_area (area, price->unit);
      break;
    case RC_UNIT_EACH:
      quantity = each * RC_MICRO;
      break;
    default:
      return FALSE;
    }

  return rc_money_multiply (price->sale, quantity, &amount, NULL) && rc_money_add (*sum, amount, sum);
}

gboolean
rc_option_compute_prices (const RcSheetData *data, const RcFloorArea *area, const RcOption *option, RcMoney *carpet,
                          RcMoney *seaming)
{
  guint   n_cross = rc_option_count_cross_seams (option);
  RcMoney goods = 0, work = 0;

  if (!add_priced (data, area->carpet, option->carpet_length, option->carpet_area, 0, &goods)
      || (option->side_seam > 0
          && !add_priced (data, rc_work_get_name (RC_WORK_SIDE_SEAM), option->side_seam, 0, 0, &work))
      || (n_cross > 0
          && !add_priced (data, rc_work_get_name (RC_WORK_CROSS_SEAM), option->cross_seam, 0, n_cross, &work)))
    return FALSE;
  *carpet = goods;
  *seaming = work;

  return TRUE;
}

gboolean
rc_option_compute_price (const RcSheetData *data, const RcFloorArea *area, const RcOption *option, RcMoney *price)
{
  RcMoney carpet, seaming;

  return rc_option_compute_prices (data, area, option, &carpet, &seaming) && rc_money_add (carpet, seaming, price);
}
