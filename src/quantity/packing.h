/* What goods a length or an area takes: the net quantity, and the whole packs it is sold in.
 *
 * Call once with the sum over the whole job: packs are rounded up here.
 */
#pragma once

#include "conversion.h"

typedef struct
{
  gint64 net_micro;      /* what is needed, in millionths of the goods' unit, rounded half up */
  gint64 quantity_micro; /* what is charged: the packs' content; loose goods: the net, up to the step it is sold in */
  gint64 packs;          /* 0: loose */
  RcUnit pack_unit;      /* of the packs; the goods' own unit when loose */
} RcPacking;

/* By what a pack covers (pack_covers_length) when the goods say it, else by their unit, which must then be one of
 * length. Packs are counted from the exact length, not from the rounded net. A length of 0 takes nothing. Errors:
 * RC_ERROR_RANGE naming the goods and what is missing or too large. length >= 0. */
gboolean rc_packing_from_length (const RcGoods *goods, RcLength length, RcPacking *packing, GError **error);

/* By pack_covers_area when the goods say it, else by their unit: of area, or of length along a roll of roll_width.
 * area (doubled ticks^2) >= 0. Adhesive: area / coverage = volume (Workspace Training, estimating quantities). */
gboolean rc_packing_from_area (const RcGoods *goods, RcArea area, RcPacking *packing, GError **error);

/* As many whole packs (loose: quantity) as said, for goods whose packs are counted elsewhere. */
gboolean rc_packing_from_packs (const RcGoods *goods, gint64 packs, RcLength net, RcPacking *packing, GError **error);
