/* The hand on the floor view: takes the pointer's and the keyboard's events for the gesture under way, commits what it
 * makes, and draws it over the floor.
 *
 * All work is in gesture.c; this only forwards and shows.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"
#include "floor-drawing.h"
#include "gesture.h"

typedef struct _RcFloorHand RcFloorHand;

/* `floor` is the widget it belongs to: borrowed, must outlive it. */
RcFloorHand *rc_floor_hand_new (GtkWidget *floor);
void         rc_floor_hand_free (RcFloorHand *hand);

void   rc_floor_hand_set_document (RcFloorHand *hand, RcDocument *document);
void   rc_floor_hand_set_floor (RcFloorHand *hand, int floor);
RcTool rc_floor_hand_get_tool (RcFloorHand *hand);
void   rc_floor_hand_set_tool (RcFloorHand *hand, RcTool tool);
/* Rooms may lie elsewhere: the plan is another. */
void rc_floor_hand_forget_scene (RcFloorHand *hand);
/* The job is another: a gesture under way ends. */
void rc_floor_hand_forget (RcFloorHand *hand);
/* Something else is chosen; a gesture under way goes on, as a better plan may choose, too. */
void rc_floor_hand_follow_choice (RcFloorHand *hand);

/* At a place of the drawing. press: TRUE when the hand takes the drag, else it is a pan or a pick. release: TRUE when
 * nothing was dragged and the place is to be picked. */
gboolean rc_floor_hand_press (RcFloorHand *hand, const RcView *view, double x, double y, GdkModifierType state);
void     rc_floor_hand_move (RcFloorHand *hand, const RcView *view, double x, double y, GdkModifierType state);
gboolean rc_floor_hand_release (RcFloorHand *hand, const RcView *view, double x, double y, GdkModifierType state);

/* The chosen room mirrored, or turned by degrees; nothing without one. */
void rc_floor_hand_mirror (RcFloorHand *hand);
void rc_floor_hand_turn (RcFloorHand *hand, double degrees);

/* TRUE when the key belongs to the gesture. */
gboolean rc_floor_hand_key (RcFloorHand *hand, guint keyval, GdkModifierType state);

/* The rooms as they are now, where no plan shows them. */
void rc_floor_hand_draw_rooms (RcFloorHand *hand, const RcPalette *palette, double font_size, const RcView *view,
                               cairo_t *cr);
/* The plan picture of the storey. */
typedef enum
{
  RC_HAND_PICTURE_LIGHTEN,
  RC_HAND_PICTURE_TURN, /* a quarter left about the middle of the view */
  RC_HAND_PICTURE_PAGE, /* the next of a PDF */
  RC_HAND_PICTURE_REMOVE,
} RcHandPicture;
void rc_floor_hand_add_picture (RcFloorHand *hand, GFile *file);
void rc_floor_hand_change_picture (RcFloorHand *hand, RcHandPicture change, const RcView *view);
void rc_floor_hand_draw_picture (RcFloorHand *hand, const RcPalette *palette, const RcView *view, cairo_t *cr);
/* The storey below, faint: walls stand over walls. */
void rc_floor_hand_draw_below (RcFloorHand *hand, const RcPalette *palette, const RcView *view, cairo_t *cr);
/* What the rooms of the storey cover; on an empty one, room enough to draw a house. */
RcBox rc_floor_hand_get_box (RcFloorHand *hand);
void  rc_floor_hand_draw (RcFloorHand *hand, const RcPalette *palette, double font_size, const RcView *view,
                          cairo_t *cr);
