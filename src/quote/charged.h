/* What a job pays that was measured again after goods were ordered or cut for it. Used inside this folder only.
 *
 * The rule: goods that are ordered or cut for the job stay charged as they were quoted: the same quantity, in the
 * supplier's steps and packs, at the same price, however much of them the new plan takes, for what is cut cannot be put
 * together again and what is ordered comes. What the job takes beyond that is added. Nothing is given back unless the
 * shop says so, by a discount. Of a carpet the job takes the lengths of roll that were cut off for it, what is on its
 * way to it, and what its plan takes of rolls in stock and of goods to be bought besides; offcuts of its own cost
 * nothing more. Added is no more than what the pieces of areas that have changed take by themselves: from which rolls
 * the shop cuts the others is its own affair. What was quoted keeps its price also where there is more of it now
 * (common practice, no source).
 */
#pragma once

#include "plan.h"
#include "quote.h"

/* Adds to `lines` those of charged->before that stay, worded in the reader's language. (transfer full) GPtrArray of
 * RcQuantityLine: what of `quantities` is still to be priced. RC_ERROR_RANGE. */
GPtrArray *rc_charged_add_lines (const RcCharged *charged, GPtrArray *lines, const GPtrArray *quantities,
                                 GError **error);

/* Gives the lines from `first` on the prices that their items have in charged->before. RC_ERROR_RANGE. */
gboolean rc_charged_hold_prices (const RcCharged *charged, const GPtrArray *lines, guint first, GError **error);
