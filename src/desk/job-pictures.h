/* The floors of jobs as small drawings, for lists that are looked through. Each is read from the store when there is
 * nothing else to do, those in view first, and kept as long as the job stays as it is: nobody waits for them.
 */
#pragma once

#include <gtk/gtk.h>

#include "store.h"

#define RC_TYPE_JOB_PICTURES (rc_job_pictures_get_type ())
G_DECLARE_FINAL_TYPE (RcJobPictures, rc_job_pictures, RC, JOB_PICTURES, GObject)

/* Borrows the store until rc_job_pictures_stop: after that none is read any more. */
RcJobPictures *rc_job_pictures_new (RcStore *store);
void           rc_job_pictures_stop (RcJobPictures *self);

/* How many are waited for. */
guint rc_job_pictures_get_n_waiting (RcJobPictures *self);

/* The lowest storey with rooms of a job's last measure; blank until it is known. Properties "pictures" (RcJobPictures)
 * and "job" (its id). */
#define RC_TYPE_JOB_PICTURE (rc_job_picture_get_type ())
G_DECLARE_FINAL_TYPE (RcJobPicture, rc_job_picture, RC, JOB_PICTURE, GtkDrawingArea)

GtkWidget *rc_job_picture_new (RcJobPictures *pictures, const char *job);
