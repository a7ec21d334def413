/* Turns what a search has found into an option: pieces, seams, broken rules, in the house's coordinates.
 */
#pragma once

#include "area-search.h"

/* Costs, carpet length and bounds are left to the caller. `pile_degrees`: the way the pile leans. (transfer full) */
RcOption *rc_option_realize (const RcSite *site, const RcAreaSearch *search, double pile_degrees, const char *name,
                             GError **error);
