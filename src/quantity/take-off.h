/* Making the quantity lines of one plan: what the parts of the take-off share. Used inside this folder only. */
#pragma once

#include "quantity.h"

typedef struct
{
  const RcPlan    *plan;
  const GPtrArray *catalogue; /* of RcGoods; nullable */
  GPtrArray       *lines;     /* of RcQuantityLine */
} RcTakeOff;

/* Each adds the lines of its kind, none where nothing is needed. */
gboolean rc_take_off_add_carpet (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_cushion (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_strip (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_tape (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_sealer (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_adhesive (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_transitions (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_laying (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_seaming (RcTakeOff *take_off, GError **error);
gboolean rc_take_off_add_other_labour (RcTakeOff *take_off, GError **error); /* stairs, the fixed charge */

/* Goods by id, or the first of a kind: the job's, else the catalogue's. NULL and RC_ERROR_REFERENCE when there are
 * none; `needed_for` (translated) says in the message what for. */
const RcGoods *rc_take_off_find_goods (const RcTakeOff *take_off, const char *id, const char *needed_for,
                                       GError **error);
const RcGoods *rc_take_off_find_kind (const RcTakeOff *take_off, RcGoodsKind kind, GError **error);

/* Adds a line; `because` is taken. */
RcQuantityLine *rc_take_off_add_goods (RcTakeOff *take_off, const RcGoods *goods, const RcPacking *packing,
                                       char *because);
RcQuantityLine *rc_take_off_add_work (RcTakeOff *take_off, RcWork work, gint64 quantity_micro, char *because);

/* Sums that stop instead of wrapping: FALSE and RC_ERROR_RANGE naming `what` (translated). */
gboolean rc_take_off_sum (gint64 *sum, gint64 addend, const char *what, GError **error);
