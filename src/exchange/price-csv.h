/* The price book as CSV, in and out.
 *
 * The header row names the columns, in any order; `item` and one of `sale` and `margin` must be there:
 *   item           id of goods or name of work: lay, side-seam, cross-seam, stair, fixed
 *   kind           carpet, cushion, tape, sealer, strip, adhesive, transition: goods of the catalogue; work; supplier,
 *                  tax-area, payment, setting: see below; empty: a further price for the item, or one for goods that a
 *                  job brings itself
 *   name           goods' name; a setting's value
 *   supplier
 *   unit           unit that cost and sale are for; goods are priced in it
 *   cost, sale     what the shop pays and what the customer pays; both empty: goods without a price
 *   margin         per cent of the sale price, which is then the least that leaves it; beside a sale price it must
 * agree from_quantity  the price holds from this quantity on valid_from, valid_to   first and last day, YYYY-MM-DD
 *   roll_width, usable_width, repeat_length, repeat_width, match, length_step, least_cut, full_roll   lengths with
 * their unit pack, pack_unit        quantity a pack, in `unit`, and what a pack is called tape_width covers what a pack
 * covers: adhesive an area (90 sq yd), other goods a length A supplier is a row with its name as item, cost and sale
 * the freight of an order, free_from the order's worth from which there is none, days from order to delivery, address,
 * phone, email, account. A tax area has its id as item, name, goods_percent and work_percent. A payment, a step of it,
 * has any item, name, part_percent of the total and days. Settings are rows of the kind `setting`, their item one of
 * currency, tax-percent, deposit-percent, shop-name, shop-address, valid-days (how long a quotation holds), terms,
 * job-numbers (their pattern).
 */
#pragma once

#include "price-book.h"

/* `currency` is the book's unless the table sets another. The error (RC_ERROR_FORMAT, PARSE, RANGE) tells every fault
 * in a line of its own (the first 40, and how many more): file, line, column, and what would be right; nothing is read
 * halfway. (transfer full) */
RcPriceBook *rc_price_csv_parse (const char *csv, const char *name, const RcCurrency *currency, GError **error);

/* The same book always gives the same bytes, and reading them gives the same book (prices in the order of their
 * goods), but for the logo and for spaces at the ends of texts.
 * (transfer full) */
char *rc_price_csv_format (const RcPriceBook *book);
