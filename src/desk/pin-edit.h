/* What is pinned in an area, in words, and taking pins out or putting them on a piece of the plan: changes in place on
 * a copy that the caller owns. No screen, no store.
 */
#pragma once

#include "plan.h"

/* How many entries a list of the area's pins may have: as in RcAreaPlan.pins, its pins, the pile direction; an entry
 * without label is not there. */
guint rc_pin_edit_get_n (const RcFloorArea *area);

/* "Pin 1 (seam line in Hall): costs $12.00", or why it is not kept; NULL for an entry that is not there. `result` NULL:
 * not planned yet. */
char *rc_pin_edit_dup_words (const RcMeasure *measure, const RcFloorArea *area, guint index, const RcPinResult *result,
                             const RcCurrency *currency);

/* FALSE where there is no such entry. */
gboolean rc_pin_edit_remove (RcFloorArea *area, guint index);

/* Pins a piece of the plan as it lies: the cross seams of its fill and, when it comes off a roll of stock, that roll.
 * What was pinned of it before goes. `roll` (nullable) gets the roll's id, borrowed from the plan, NULL for none. FALSE
 * where the plan has no such piece of a floor, or the area is not the piece's. */
gboolean rc_pin_edit_pin_piece (const RcPlan *plan, guint number, RcFloorArea *area, const char **roll);
/* FALSE where nothing was pinned. */
gboolean rc_pin_edit_unpin_piece (const RcPlan *plan, guint number, RcFloorArea *area);
