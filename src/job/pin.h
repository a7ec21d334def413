/* Pins: what the estimator has fixed in an area's plan besides the pile's direction; the rest is planned around it.
 *
 * A pin lies in a room and its points are in the room's own coordinates, so that it goes with the room.
 */
#pragma once

#include "polygon.h"

typedef enum
{
  RC_PIN_SEAM,     /* a side seam runs along this line: two points on it; its direction is the pile's */
  RC_PIN_SPLIT,    /* how the fill is split: a point in it, then one on each of its cross seams (none: in one piece) */
  RC_PIN_NO_SEAMS, /* no seam may lie on this floor: the corners of it, in either order */
  RC_PIN_ROLL,     /* the piece comes off this roll: a point in the piece */
  RC_N_PIN_KINDS
} RcPinKind;

typedef struct
{
  RcPinKind kind;
  char     *room;   /* id */
  RcRing   *points; /* never NULL */
  char     *roll;   /* RC_PIN_ROLL: the stock roll's id; else NULL */
} RcPin;

RcPin *rc_pin_new (RcPinKind kind, const char *room);
RcPin *rc_pin_copy (const RcPin *pin);
void   rc_pin_free (RcPin *pin);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPin, rc_pin_free)

const char *rc_pin_kind_get_name (RcPinKind kind); /* stable: "seam", "split", "no-seams", "roll" */
gboolean    rc_pin_kind_parse (const char *name, RcPinKind *kind, GError **error);

/* FALSE and RC_ERROR_RANGE or RC_ERROR_GEOMETRY where a pin has too few or too many points, or its floor is none. */
gboolean rc_pin_check (const RcPin *pin, GError **error);
