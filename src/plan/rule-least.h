/* What seams break at least of which only is known about where they lie: below rc_rules_weigh_seam of each of them, for
 * bounds. Counted are light, ways, and doors that a cross seam lies near, one of each. */
#pragma once

#include "site.h"

/* Without the price for being one. A side seam at any x of the box, from its lowest y or below to its highest or above.
 */
RcMoney rc_rules_weigh_side_least (const RcSite *site, RcBox box);
/* A cross seam at any y of the box, from its lowest x or before to its highest or beyond. */
RcMoney rc_rules_weigh_cross_least (const RcSite *site, RcBox box);
