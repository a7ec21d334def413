/* One area seen along one pile direction: everything the search needs, turned so that the pile leans along y.
 *
 * "Frame" coordinates are the house's turned by `turn_degrees` about the origin.
 */
#pragma once

#include "plan.h"

/* Carpet stretches by at least 1 % (CRI 2011 16.5), so a part of floor no wider than this is no piece of its own: 1 mm.
 */
#define RC_SLIVER RC_TICKS_PER_MM

typedef struct
{
  const RcPlacedRoom *placed;
  RcPolygon          *polygon; /* in the frame */
} RcSiteRoom;

/* The quarter circle that a leaf sweeps: hinged at `hinge`, as wide as the opening, from the closed door (the direction
 * `along`) to the open one (`into` the room). Lengths in ticks; both directions of length 1; `reach` 0: no leaf. */
typedef struct
{
  RcPoint hinge;
  double  along_x, along_y, into_x, into_y, reach;
} RcSweep;

typedef struct
{
  const RcOpening    *opening;
  const RcPlacedRoom *room, *other;     /* other nullable */
  RcPoint             from, to;         /* on the room's face, in the frame */
  RcPoint             far_from, far_to; /* on the other side of the wall */
  RcPoint             outward;
  gboolean            blocked; /* as in RcPlacedOpening */
  RcSweep             sweep;
} RcSiteOpening;

/* A way that people walk: between the middles of two doors of one room. */
typedef struct
{
  guint   door_a, door_b; /* indices in doors */
  RcPoint from, to;
} RcSiteWay;

typedef struct
{
  const RcSettings    *settings;
  const RcLengthStyle *style; /* how the job prints lengths */
  const RcFloorArea   *area;
  const RcHouse       *house;
  const RcGoods       *carpet;
  RcPlanWeights        weights;
  double               turn_degrees;
  RcLength             roll_width;    /* usable */
  RcLength             strip_width;   /* rc_goods_compute_matching_width */
  RcLength             repeat;        /* along the pile; 0: none */
  RcLength             across_repeat; /* rc_pattern_compute_across_repeat */
  GPtrArray           *rooms;         /* of RcSiteRoom, the area's */
  GArray              *doors;         /* of RcSiteOpening: doors and archways of the area's rooms */
  GArray              *windows;       /* of RcSiteOpening */
  GArray              *ways;          /* of RcSiteWay */
  GPtrArray           *pins;          /* of RcSitePin (site-pins.h) */
} RcSite;

/* All arguments outlive the site. */
RcSite *rc_site_new (const RcJob *job, const RcHouse *house, const RcFloorArea *area, const RcGoods *carpet,
                     const RcPlanWeights *weights, double turn_degrees);
void    rc_site_free (RcSite *site);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcSite, rc_site_free)

/* A point of the line across the opening `halves` halves of the wall's depth away from the room's face (0, 1 or 2). */
RcPoint rc_site_opening_get_from (const RcSiteOpening *opening, int halves);
RcPoint rc_site_opening_get_to (const RcSiteOpening *opening, int halves);

/* The middle of it on the room's face. */
RcPoint rc_site_opening_get_middle (const RcSiteOpening *opening);

/* TRUE if the room belongs to the site's area. */
gboolean rc_site_has_room (const RcSite *site, const RcPlacedRoom *room);

/* The room of the area that holds the point, NULL when none. */
const RcRoom *rc_site_find_room (const RcSite *site, RcPoint point);

/* TRUE if the box lies within the wall, in a door or archway. */
gboolean rc_site_is_in_doorway (const RcSite *site, RcBox box);

/* length x price a metre, rounded once. */
gint64 rc_weigh (RcLength length, gint64 per_m);

/* The remainder in 0 .. modulus - 1, for any sign of value. */
RcLength rc_wrap (RcLength value, RcLength modulus);
