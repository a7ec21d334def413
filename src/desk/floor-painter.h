/* Pictures of the floor, painted in a thread and larger than what is seen, so that moving the floor costs no more than
 * copying pixels however many rooms there are. Until a new picture is there the last one is shown, moved and scaled to
 * where its floor lies now.
 */
#pragma once

#include <gtk/gtk.h>

#include "floor-drawing.h"
#include "outcome.h"

#define RC_TYPE_FLOOR_PAINTER (rc_floor_painter_get_type ())
G_DECLARE_FINAL_TYPE (RcFloorPainter, rc_floor_painter, RC, FLOOR_PAINTER, GObject)

/* What is to be seen. */
typedef struct
{
  RcOutcome       *outcome; /* borrowed; the painter takes a reference */
  int              floor;
  const RcPalette *palette;
  double           font_size;
  RcView           view;
  int              width, height; /* seen, in units of the view */
  int              scale_factor;  /* pixels for a unit */
} RcFloorScene;

/* `painted` is called in the main thread when another picture is there. */
RcFloorPainter *rc_floor_painter_new (void (*painted) (gpointer data), gpointer data);
/* Nothing is called any more. */
void rc_floor_painter_stop (RcFloorPainter *self);

/* Sees to it that there will be a picture of the scene; costs nothing when the one at hand will do. */
void rc_floor_painter_want (RcFloorPainter *self, const RcFloorScene *scene);
/* Draws the picture at hand as it lies in the scene, `alpha` 0 to 1; nothing when there is none of that storey in those
 * colours. */
void rc_floor_painter_draw (RcFloorPainter *self, const RcFloorScene *scene, double alpha, cairo_t *cr);
