/* A plan picture under the floor of a storey: which file, where it lies, how strongly it shows. */
#pragma once

#include "polygon.h"

/* The bytes are kept in the store under their digest; the job only names them. */
typedef struct
{
  int      storey; /* one picture each */
  char    *name;   /* of the file; nullable */
  char    *digest; /* SHA-256 of its bytes, lower-case hex */
  guint    page;   /* of a PDF, from 1 */
  RcPoint  at;     /* of its top left corner in the house */
  RcLength ticks_per_1000px;
  gint64   turn_millidegrees; /* counter-clockwise about `at` */
  guint    strength_percent;  /* 0: hidden */
} RcPlanPicture;

RcPlanPicture *rc_plan_picture_copy (const RcPlanPicture *picture);
void           rc_plan_picture_free (RcPlanPicture *picture);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPlanPicture, rc_plan_picture_free)
