/* What no plan of an area can beat along one pile direction, however its strip lines fall and its fills are split.
 */
#pragma once

#include "site.h"

typedef struct
{
  RcLength carpet_length;
  RcLength side_seam;
  guint    n_seams; /* side seams, each counted once along its whole length */
} RcAreaBound;

/* `floor` is the area's whole floor in the site's frame.
 *
 * Carpet: every line along the pile that crosses the floor is covered by at least one piece, each cut with the trim
 * allowance; so (floor area + trim x width of all such lines) / roll width; and a stretch of floor across the pile that
 * is no multiple of the strip width has a fill with its own allowance. Side seams: a stretch of floor c across the pile
 * needs at least ceil (c / strip width) - 1 side seams beside each other. */
RcAreaBound rc_area_bound_compute (const RcSite *site, const RcRegion *floor);

/* What it costs at least with so much carpet, in minor units. */
RcMoney rc_area_bound_weigh (const RcAreaBound *bound, const RcSite *site, RcLength carpet_length);
