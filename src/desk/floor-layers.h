/* What lies over each other on the floor: the painted plan, what is chosen and pointed at, the plan picture, the storey
 * below, walls as they are typed, the gesture under way.
 */
#pragma once

#include "floor-hand.h"
#include "floor-painter.h"

/* `scene` is of the document's outcome, which may be NULL. */
void rc_floor_layers_draw (RcDocument *document, RcFloorHand *hand, RcFloorPainter *painter, const RcFloorScene *scene,
                           cairo_t *cr);
