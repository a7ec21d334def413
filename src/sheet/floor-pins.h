/* What the estimator has pinned in the plan, as a floor drawing shows it. */
#pragma once

#include "pen.h"

/* A pin with its point at `tip`: full where it is kept, hollow where it could not be. For legends too. */
void rc_pin_draw_mark (RcPen *pen, RcSpot tip, gboolean is_kept);
/* Floor to be kept free of seams: level lines far apart, so that the hatch of the pieces shows through, in a dashed
 * outline. For legends too. */
void rc_pin_draw_kept_floor (RcPen *pen, const GPtrArray *rings);

/* Floors free of seams lie over the pieces and under the seams, their words where there is room; marks on the seams. */
void rc_floor_draw_kept_floors (RcPen *pen, const RcPlan *plan, int floor);
void rc_floor_draw_kept_floor_words (RcPen *pen, const RcPlan *plan, int floor);
void rc_floor_draw_pins (RcPen *pen, const RcPlan *plan, int floor);

/* TRUE if anything of these is drawn on the storey. */
gboolean rc_floor_has_pins (const RcPlan *plan, int floor);
