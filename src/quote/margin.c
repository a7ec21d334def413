#include "price-book.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

gboolean
rc_price_sale_from_margin (RcMoney cost, gint64 margin_ppm, RcMoney *sale, GError **error)
{
  if (cost >= 0 && margin_ppm > -RC_MICRO && margin_ppm < RC_MICRO
      && rc_multiply_divide_up (cost, RC_MICRO, RC_MICRO - margin_ppm, sale))
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
               _ ("A margin is a part of the sale price: it must be above -100 %% and below 100 %%"));
  return FALSE;
}

gint64
rc_price_get_margin_ppm (RcMoney cost, RcMoney sale)
{
  gint64 ppm;

  if (sale <= 0 || !rc_multiply_divide (ABS (sale - cost), RC_MICRO, sale, &ppm))
    return 0;
  return sale >= cost ? ppm : -ppm;
}
