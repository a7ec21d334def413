#include "conversion.h"

#include "wide.h"

typedef unsigned __int128 Wide;

/* A positive fraction in lowest terms. */
typedef struct
{
  Wide numerator, denominator;
} Ratio;

typedef enum
{
  KIND_COUNT, /* each and packages: nothing to be had from another unit */
  KIND_LENGTH,
  KIND_AREA,
  KIND_VOLUME,
} Kind;

#define SQUARE(x) ((x) * (x))

/* One unit in ticks, square ticks, or billionths of a litre. */
static const struct
{
  Kind   kind;
  gint64 size;
} units[RC_N_UNITS] = {
  [RC_UNIT_M] = { KIND_LENGTH, RC_TICKS_PER_M },
  [RC_UNIT_FT] = { KIND_LENGTH, RC_TICKS_PER_FOOT },
  [RC_UNIT_YD] = { KIND_LENGTH, RC_TICKS_PER_YARD },
  [RC_UNIT_M2] = { KIND_AREA, SQUARE (RC_TICKS_PER_M) },
  [RC_UNIT_SQ_FT] = { KIND_AREA, SQUARE (RC_TICKS_PER_FOOT) },
  [RC_UNIT_SQ_YD] = { KIND_AREA, SQUARE (RC_TICKS_PER_YARD) },
  [RC_UNIT_LITRE] = { KIND_VOLUME, G_GINT64_CONSTANT (1000000000) },
  [RC_UNIT_GALLON] = { KIND_VOLUME, G_GINT64_CONSTANT (3785411784) },
};

static gboolean
ratio_multiply (Ratio *ratio, gint64 numerator, gint64 denominator)
{
  Wide common;

  if (numerator <= 0 || denominator <= 0)
    return FALSE;
  if (__builtin_mul_overflow (ratio->numerator, (Wide)numerator, &ratio->numerator)
      || __builtin_mul_overflow (ratio->denominator, (Wide)denominator, &ratio->denominator))
    return FALSE;
  common = rc_wide_find_divisor (ratio->numerator, ratio->denominator);
  ratio->numerator /= common;
  ratio->denominator /= common;
  return TRUE;
}

static gboolean
ratio_apply (const Ratio *ratio, gint64 n, gboolean up, gint64 *result)
{
  Wide product, sum;

  if (n < 0 || __builtin_mul_overflow ((Wide)n, ratio->numerator, &product)
      || __builtin_add_overflow (product, up ? ratio->denominator - 1 : ratio->denominator / 2, &sum))
    return FALSE;
  sum /= ratio->denominator;
  if (sum > (Wide)G_MAXINT64)
    return FALSE;
  *result = (gint64)sum;
  return TRUE;
}

/* Between units of one kind, and between length and area by the roll width. */
static gboolean
ratio_convert_measure (Ratio *ratio, RcLength roll_width, RcUnit from, RcUnit to)
{
  if (from == to)
    return TRUE;
  if (units[from].kind == KIND_COUNT || units[to].kind == KIND_COUNT)
    return FALSE;
  if (!ratio_multiply (ratio, units[from].size, units[to].size))
    return FALSE;
  if (units[from].kind == units[to].kind)
    return TRUE;
  if (units[from].kind == KIND_LENGTH && units[to].kind == KIND_AREA)
    return ratio_multiply (ratio, roll_width, 1);
  if (units[from].kind == KIND_AREA && units[to].kind == KIND_LENGTH)
    return ratio_multiply (ratio, 1, roll_width);
  return FALSE;
}

static gboolean
ratio_convert (Ratio *ratio, const RcGoods *goods, RcUnit from, RcUnit to)
{
  gboolean packed = goods != NULL && goods->pack_micro > 0 && goods->pack_unit != goods->unit;
  RcLength roll_width = goods != NULL ? goods->roll_width : 0;

  if (packed && from == goods->pack_unit && to != from)
    return ratio_multiply (ratio, goods->pack_micro, RC_MICRO)
           && ratio_convert_measure (ratio, roll_width, goods->unit, to);
  if (packed && to == goods->pack_unit && to != from)
    return ratio_convert_measure (ratio, roll_width, from, goods->unit)
           && ratio_multiply (ratio, RC_MICRO, goods->pack_micro);
  return ratio_convert_measure (ratio, roll_width, from, to);
}

gboolean
rc_conversion_apply (const RcGoods *goods, gint64 quantity_micro, RcUnit from, RcUnit to, gint64 *result)
{
  Ratio ratio = { 1, 1 };

  g_return_val_if_fail (from < RC_N_UNITS && to < RC_N_UNITS, FALSE);

  return ratio_convert (&ratio, goods, from, to) && ratio_apply (&ratio, quantity_micro, FALSE, result);
}

gboolean
rc_unit_is_length (RcUnit unit)
{
  return unit < RC_N_UNITS && units[unit].kind == KIND_LENGTH;
}

gboolean
rc_unit_is_area (RcUnit unit)
{
  return unit < RC_N_UNITS && units[unit].kind == KIND_AREA;
}

gint64
rc_unit_get_ticks (RcUnit unit)
{
  g_return_val_if_fail (rc_unit_is_length (unit), 1);

  return units[unit].size;
}

gint64
rc_unit_get_square_ticks (RcUnit unit)
{
  g_return_val_if_fail (rc_unit_is_area (unit), 1);

  return units[unit].size;
}

gboolean
rc_count_packs (gint64 amount, gint64 size, gint64 pack_micro, gint64 *packs)
{
  Ratio ratio = { 1, 1 };

  return ratio_multiply (&ratio, RC_MICRO, size) && ratio_multiply (&ratio, 1, pack_micro)
         && ratio_apply (&ratio, amount, TRUE, packs);
}

static gboolean
multiply_divide (gint64 n, gint64 numerator, gint64 denominator, gboolean up, gint64 *result)
{
  Ratio ratio = { (Wide)numerator, (Wide)denominator };

  g_return_val_if_fail (n >= 0 && numerator >= 0 && denominator > 0, FALSE);

  return ratio_apply (&ratio, n, up, result);
}

gboolean
rc_multiply_divide (gint64 n, gint64 numerator, gint64 denominator, gint64 *result)
{
  return multiply_divide (n, numerator, denominator, FALSE, result);
}

gboolean
rc_multiply_divide_up (gint64 n, gint64 numerator, gint64 denominator, gint64 *result)
{
  return multiply_divide (n, numerator, denominator, TRUE, result);
}

RcLength
rc_conversion_get_length (const RcGoods *carpet, gint64 quantity_micro, RcUnit unit)
{
  gint64   feet;
  RcLength length;

  if (!rc_conversion_apply (carpet, quantity_micro, unit, RC_UNIT_FT, &feet)
      || !rc_multiply_divide (feet, RC_TICKS_PER_FOOT, RC_MICRO, &length))
    return -1;
  return length;
}
