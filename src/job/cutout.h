/* What stands on a room's floor and is not carpeted: the carpet goes round it. */
#pragma once

#include "polygon.h"

typedef enum
{
  RC_CUTOUT_OTHER,
  RC_CUTOUT_HEARTH,
  RC_CUTOUT_ISLAND,
  RC_CUTOUT_COLUMN,
  RC_CUTOUT_STAIR_OPENING,
  RC_CUTOUT_FIXTURE, /* built in, stays where it is */
  RC_N_CUTOUT_KINDS
} RcCutoutKind;

typedef struct
{
  char        *name; /* nullable: it goes by its kind */
  RcCutoutKind kind;
  RcLength     diameter; /* of a round one; 0: it has corners */
  RcRing      *points;   /* in the room's own coordinates: the corners; of a round one its middle alone */
  gboolean     strip;    /* tack strip runs round it, where the room has any */
  gboolean     counted;  /* fitting round it is work to be charged */
} RcCutout;

/* Without points. Strip round it and counted, as is usual; but no strip at the edge of a stair opening, where the
 * carpet is turned down or meets a nosing (common practice, no source). */
RcCutout *rc_cutout_new (RcCutoutKind kind);
/* With corners; takes `points`. */
RcCutout *rc_cutout_new_take (RcCutoutKind kind, RcRing *points);
RcCutout *rc_cutout_new_round (RcCutoutKind kind, RcPoint middle, RcLength diameter);
RcCutout *rc_cutout_copy (const RcCutout *cutout);
void      rc_cutout_free (RcCutout *cutout);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcCutout, rc_cutout_free)

void rc_cutout_move (RcCutout *cutout, RcPoint by);

/* Its outline in the room's own coordinates, as a ring. A round one as chords of the circle, each at most
 * RC_WALL_ARC_MAX_OFF off it and rounded to the tick, so that none of the floor is lost: as a wall that bows into the
 * room. Empty for a round one without its middle. (transfer full) */
RcRing *rc_cutout_compute_ring (const RcCutout *cutout);

/* How much of its outline lies on the edge of `floor`, which is in the same coordinates moved by `at`: what stands at a
 * wall does not count there. */
RcLength rc_cutout_compute_edge (const RcCutout *cutout, const RcPolygon *floor, RcPoint at);

const char *rc_cutout_get_label (const RcCutout *cutout); /* its name, else its kind, translated */

const char *
rc_cutout_kind_get_name (RcCutoutKind kind); /* "other", "hearth", "island", "column", "stair-opening", ... */
const char *rc_cutout_kind_get_label (RcCutoutKind kind); /* the same, translated */
gboolean    rc_cutout_kind_parse (const char *name, RcCutoutKind *kind, GError **error);
