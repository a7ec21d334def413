/* The price book as CSV, in and out.
 *
 * The header row names the columns, in any order; `item` and `sale` must be there:
 *   item           id of goods or name of work: lay, side-seam, cross-seam, stair, fixed
 *   kind           carpet, cushion, tape, sealer, strip, adhesive, transition: goods of the catalogue; work; setting;
 *                  empty: a further price for the item, or one for goods that a job brings itself
 *   name           goods' name; a setting's value
 *   supplier
 *   unit           unit that cost and sale are for; goods are priced in it
 *   cost, sale     what the shop pays and what the customer pays; both empty: goods without a price
 *   from_quantity  the price holds from this quantity on
 *   valid_from, valid_to   first and last day, YYYY-MM-DD
 *   roll_width, usable_width, repeat_length, repeat_width, match, length_step, full_roll   lengths with their unit
 *   pack, pack_unit        quantity a pack, in `unit`, and what a pack is called
 *   tape_width
 *   covers         what a pack covers: adhesive an area (90 sq yd), other goods a length
 * Settings are rows of the kind `setting`, their item one of currency, tax-percent, deposit-percent, shop-name,
 * shop-address, valid-days (how long a quotation holds), terms.
 */
#pragma once

#include "price-book.h"

/* `currency` is the book's unless the table sets another. Errors (RC_ERROR_FORMAT, PARSE, RANGE) name file, line and
 * column; nothing is read halfway. (transfer full) */
RcPriceBook *rc_price_csv_parse (const char *csv, const char *name, const RcCurrency *currency, GError **error);

/* The same book always gives the same bytes, and reading them gives the same book (prices in the order of their goods).
 * (transfer full) */
char *rc_price_csv_format (const RcPriceBook *book);
