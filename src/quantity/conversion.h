/* Quantities from one unit to another, exactly: one whole fraction, one rounding.
 *
 * 1 in = 25.4 mm (agreement of 1959), so ft, yd, sq ft and sq yd are whole fractions of m and m2; the US liquid gallon
 * is 3.785411784 L (Handbook 44, appendix C, recalled).
 */
#pragma once

#include "goods.h"

/* A quantity of `goods` (nullable: nothing known of it) counted in `from`, counted in `to` instead. Besides units of
 * one kind (m, ft, yd; m2, sq ft, sq yd; L, gal) it goes between running length and area by the goods' roll width, and
 * between the goods' unit and its packs by what a pack holds. Rounded half up to a millionth, once. FALSE when no
 * such way is known or the number would not fit; *result is then untouched. quantity_micro >= 0. */
gboolean rc_conversion_apply (const RcGoods *goods, gint64 quantity_micro, RcUnit from, RcUnit to, gint64 *result);

/* Millionths by which quantities may differ that were rounded on their way from one unit to another. */
#define RC_CONVERSION_SLACK_MICRO 1000

/* TRUE for m, ft, yd (m2, sq ft, sq yd). */
gboolean rc_unit_is_length (RcUnit unit);
gboolean rc_unit_is_area (RcUnit unit);

/* Ticks in one unit of length; a programmer's error for other units. */
gint64 rc_unit_get_ticks (RcUnit unit);

/* Square ticks (not doubled) in one unit of area. */
gint64 rc_unit_get_square_ticks (RcUnit unit);

/* How many packs of pack_micro millionths of a unit hold `amount`, where one unit is `size` of the same measure as the
 * amount: rounded up from the exact fraction. All > 0 but amount, >= 0. FALSE when it does not fit an int64. */
gboolean rc_count_packs (gint64 amount, gint64 size, gint64 pack_micro, gint64 *packs);

/* n x numerator / denominator, rounded half up (up: to the next whole), all >= 0 and denominator > 0. FALSE when the
 * result does not fit an int64. */
gboolean rc_multiply_divide (gint64 n, gint64 numerator, gint64 denominator, gint64 *result);
gboolean rc_multiply_divide_up (gint64 n, gint64 numerator, gint64 denominator, gint64 *result);

/* The length of roll that so much of the carpet is, rounded to the tick; -1 where its unit is of no such kind. */
RcLength rc_conversion_get_length (const RcGoods *carpet, gint64 quantity_micro, RcUnit unit);
