/* Whether a way to lay an area keeps what the estimator has pinned. */
#pragma once

#include "option.h"
#include "site-pins.h"

/* The pin of that index in the area, its points where they lie in the frame of an option's pile, for which the site is
 * made; NULL where there is none. */
const RcSitePin *rc_pin_find_in_site (const RcSite *site, guint index);
gboolean         rc_pin_is_kept (const RcSite *site, const RcOption *option, const RcSitePin *pin);
/* How many of the area's pins it keeps. */
guint rc_pins_count_kept (const RcSite *site, const RcOption *option);
/* Likewise, by that of the sites (of RcSite, one for each direction) that is turned as the option's pile is. */
guint rc_pins_count_kept_among (const GPtrArray *sites, const RcOption *option);
