/* An area's pins seen in a site's frame, and what of a plan they settle. */
#pragma once

#include "site.h"

typedef struct
{
  guint         index; /* in the area's pins */
  const RcPin  *pin;
  const RcRoom *room;
  RcRing       *points; /* in the frame */
  RcRegion     *floor;  /* RC_PIN_NO_SEAMS; else NULL */
} RcSitePin;

/* The pins of the area whose rooms are there. (transfer full) GPtrArray of RcSitePin. */
GPtrArray *rc_site_pins_new (const RcSite *site);

/* The first pinned seam that runs along the frame's y inside `floor` (NULL: anywhere). FALSE when there is none. */
gboolean rc_site_find_pinned_line (const RcSite *site, const RcRegion *floor, RcLength *x);

/* The first pinned split of a fill that lies in the box, its lower sides among it, so that no seam laid through a pin
 * does away with it; NULL when there is none. */
const RcSitePin *rc_site_find_pinned_split (const RcSite *site, const RcBox *box);

/* The first pin of a piece to a roll whose point lies in the outline (in the frame) or on it; NULL when there is none.
 */
const RcSitePin *rc_site_find_pinned_roll (const RcSite *site, const RcRegion *outline);

/* The first floor kept free of seams that a seam from a to b (along x or y) runs through; NULL when there is none.
 * *place (nullable) is the middle of the stretch on it. */
const RcSitePin *rc_site_find_kept_floor (const RcSite *site, RcPoint a, RcPoint b, RcPoint *place);
