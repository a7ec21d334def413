/* A gesture under way as drawn over the floor: what is being made, its lengths, what it lines up with.
 */
#pragma once

#include "gesture.h"
#include "floor-drawing.h"

void rc_gesture_drawing_draw (const RcSketch *sketch, const RcJob *job, const RcPalette *palette, double font_size,
                              const RcView *view, cairo_t *cr);

/* The rooms as they are, with their names, where no plan shows them. */
void rc_gesture_drawing_draw_rooms (const RcScene *scene, const RcPalette *palette, double font_size,
                                    const RcView *view, cairo_t *cr);

/* The storey below, thin and dashed. */
void rc_gesture_drawing_draw_below (const RcScene *scene, const RcPalette *palette, const RcView *view, cairo_t *cr);

/* Floor that is pinned free of seams. */
void rc_gesture_drawing_draw_zones (const RcScene *scene, const RcPalette *palette, double font_size,
                                    const RcView *view, cairo_t *cr);

/* Marks on the corners and in the middle of the walls of a room, where it can be gripped; `grip` (and `index`) is the
 * one under the pointer. */
void rc_gesture_drawing_draw_grips (const RcSceneRoom *room, RcGrip grip, guint index, RcLength reach,
                                    const RcPalette *palette, const RcView *view, cairo_t *cr);
