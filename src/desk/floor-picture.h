/* The plan pictures of a job, one a storey, under the floor that is drawn.
 */
#pragma once

#include <gtk/gtk.h>

#include "floor-drawing.h"
#include "gesture.h"
#include "document.h"

typedef struct _RcFloorPicture RcFloorPicture;

/* `floor` is redrawn when a picture has been read, and tells faults by its actions: borrowed. */
RcFloorPicture *rc_floor_picture_new (GtkWidget *floor);
void            rc_floor_picture_free (RcFloorPicture *self);

/* The open job's pictures; NULL: none. Borrowed. follow: the job is another, perhaps with other pictures. */
void     rc_floor_picture_set_document (RcFloorPicture *self, RcDocument *document);
void     rc_floor_picture_follow (RcFloorPicture *self);
gboolean rc_floor_picture_has (RcFloorPicture *self, int storey);

/* Each change of a picture is a step of the job. */
/* Keeps the file in the store as the storey's picture, in place of one it has, as wide as `box`. */
void rc_floor_picture_add (RcFloorPicture *self, int storey, GFile *file, RcBox box);
/* The next page of its PDF, fitted anew. */
void rc_floor_picture_turn_page (RcFloorPicture *self, int storey, RcBox box);
void rc_floor_picture_remove (RcFloorPicture *self, int storey);
void rc_floor_picture_lighten (RcFloorPicture *self, int storey);
void rc_floor_picture_turn (RcFloorPicture *self, int storey, RcPoint about, gint64 millidegrees);
void rc_floor_picture_change (RcFloorPicture *self, int storey, const RcPictureChange *change);

void rc_floor_picture_draw (RcFloorPicture *self, int storey, gboolean is_dark, const RcView *view, cairo_t *cr);
