#include "plan-picture.h"

RcPlanPicture *
rc_plan_picture_copy (const RcPlanPicture *picture)
{
  RcPlanPicture *copy = g_memdup2 (picture, sizeof *picture);

  copy->name = g_strdup (picture->name);
  copy->digest = g_strdup (picture->digest);
  return copy;
}

void
rc_plan_picture_free (RcPlanPicture *picture)
{
  if (picture == NULL)
    return;
  g_free (picture->name);
  g_free (picture->digest);
  g_free (picture);
}
