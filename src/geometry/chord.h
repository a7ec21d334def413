/* The part of a region inside a strip that runs in y, in slabs: from each height at which a corner lies to the next,
 * where the region runs across, and which of these stretches are one connected part.
 */
#pragma once

#include "strip.h"

/* A stretch across over a slab. Between walls in y it is the same at both ends. */
typedef struct
{
  RcLength   y0, y1;
  RcInterval low, high; /* just inside either end of the slab */
  guint      part;      /* the same for connected chords: the index of one of them */
} RcChord;

/* The chords of the region between x0 and x1, by height, then from left to right; slabs lower than 4 ticks are left
 * out, and of sloping walls what reaches only one end of a slab. (transfer full) GArray of RcChord. */
GArray *rc_chords_new (const RcRegion *region, RcLength x0, RcLength x1);

/* The box of the part, of those chords. Sloping walls may lie outside it by a little. */
RcBox rc_chords_compute_box (const GArray *chords, guint part);
