/* The floor on the screen: the plan drawn by the sheets' own drawing code, to be moved, scaled and picked from.
 *
 * Keys when it has the focus: arrows move, plus and minus scale, 0 or Home fits, Page Up and Page Down change the
 * storey, Tab-less stepping through the pieces with n and p (or . and ,), Return goes to what is chosen.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"
#include "floor-hand.h"
#include "viewport.h"

#define RC_TYPE_FLOOR_VIEW (rc_floor_view_get_type ())
G_DECLARE_FINAL_TYPE (RcFloorView, rc_floor_view, RC, FLOOR_VIEW, GtkWidget)

void   rc_floor_view_set_document (RcFloorView *self, RcDocument *document);
void   rc_floor_view_fit (RcFloorView *self);
void   rc_floor_view_pan (RcFloorView *self, double dx, double dy); /* pixels */
void   rc_floor_view_zoom (RcFloorView *self, double factor);
int    rc_floor_view_get_floor (RcFloorView *self);
void   rc_floor_view_set_floor (RcFloorView *self, int floor);
RcTool rc_floor_view_get_tool (RcFloorView *self);
void   rc_floor_view_set_tool (RcFloorView *self, RcTool tool); /* activates "bench.tool-changed" */
/* The chosen room mirrored, or turned counter-clockwise. */
void   rc_floor_view_mirror_room (RcFloorView *self);
void   rc_floor_view_turn_room (RcFloorView *self, double degrees);
void   rc_floor_view_add_picture (RcFloorView *self, GFile *file);
void   rc_floor_view_change_picture (RcFloorView *self, RcHandPicture change);
RcView rc_floor_view_get_view (RcFloorView *self);
