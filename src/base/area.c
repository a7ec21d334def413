#include "area.h"

#include "wide.h"

RcArea
rc_area_from_rectangle (RcLength width, RcLength length)
{
  RcArea area;

  g_return_val_if_fail (width >= 0 && length >= 0, -1);

  if (__builtin_mul_overflow (width, length, &area) || __builtin_mul_overflow (area, 2, &area))
    return -1;

  return area;
}

RcArea
rc_area_unit_get_size (RcAreaUnit unit)
{
  switch (unit)
    {
    case RC_AREA_UNIT_M2:
      return 2 * RC_TICKS_PER_M * RC_TICKS_PER_M;
    case RC_AREA_UNIT_SQ_FT:
      return 2 * RC_TICKS_PER_FOOT * RC_TICKS_PER_FOOT;
    case RC_AREA_UNIT_SQ_YD:
      return 2 * RC_TICKS_PER_YARD * RC_TICKS_PER_YARD;
    }

  g_assert_not_reached ();
}

static const char *
unit_get_symbol (RcAreaUnit unit)
{
  switch (unit)
    {
    case RC_AREA_UNIT_M2:
      return "m²";
    case RC_AREA_UNIT_SQ_FT:
      return "sq ft";
    case RC_AREA_UNIT_SQ_YD:
      return "sq yd";
    }

  g_assert_not_reached ();
}

char *
rc_area_format (RcArea area, RcAreaUnit unit, int decimals, gboolean with_unit)
{
  g_autoptr (GString) text = NULL;
  RcWide scaled;

  g_return_val_if_fail (decimals >= 0 && decimals <= RC_AREA_MAX_DECIMALS, NULL);

  text = g_string_new (NULL);
  scaled = rc_wide_divide_round ((RcWide)area * rc_power_of_ten (decimals), rc_area_unit_get_size (unit));
  rc_wide_append_decimal (text, scaled, decimals, FALSE);
  if (with_unit)
    g_string_append_printf (text, " %s", unit_get_symbol (unit));

  return g_string_free (g_steal_pointer (&text), FALSE);
}

double
rc_area_to_m2 (RcArea area)
{
  return (double)area / (double)rc_area_unit_get_size (RC_AREA_UNIT_M2);
}
