#include "job.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

static void
replace (char **text, const char *with)
{
  if (with == NULL)
    return;
  g_free (*text);
  *text = g_strdup (with);
}

static gboolean
is_as_wide (const RcJob *job, const char *carpet, const char *other)
{
  const RcGoods *one = rc_job_find_goods (job, carpet), *two = rc_job_find_goods (job, other);
  return one != NULL && rc_goods_compute_matching_width (one) == rc_goods_compute_matching_width (two);
}

/* A seam pinned for one width of carpet means nothing in another. */
static void
drop_seams (RcFloorArea *area)
{
  for (guint i = area->pins->len; i-- > 0;)
    if (((const RcPin *)g_ptr_array_index (area->pins, i))->kind == RC_PIN_SEAM)
      g_ptr_array_remove_index (area->pins, i);
}

static gboolean
apply_swap (const RcJob *job, RcMeasure *measure, const RcSwap *swap, const char *name, GError **error)
{
  RcFloorArea *area = rc_measure_find_area (measure, swap->place);
  RcStair     *stair = area == NULL ? rc_measure_find_stair (measure, swap->place) : NULL;

  if (area == NULL && stair == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("Alternative %s: measure %s has no area or stair “%s”"),
                   name, measure->id, swap->place);
      return FALSE;
    }
  if (swap->carpet != NULL && rc_job_find_goods (job, swap->carpet) == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("Alternative %s: the job has no carpet “%s”"), name,
                   swap->carpet);
      return FALSE;
    }
  if (area != NULL && swap->carpet != NULL && !is_as_wide (job, area->carpet, swap->carpet))
    drop_seams (area);
  replace (area != NULL ? &area->carpet : &stair->carpet, swap->carpet);
  if (area == NULL)
    return TRUE;
  replace (&area->option, swap->option);
  return TRUE;
}

RcJob *
rc_job_new_alternative (const RcJob *job, const char *measure, const RcAlternative *alternative, GError **error)
{
  g_autoptr (RcJob) copy = rc_job_copy (job);
  RcMeasure *changed = rc_job_get_measure (copy, measure);

  g_return_val_if_fail (changed != NULL, NULL);

  g_ptr_array_set_size (copy->offer->alternatives, 0);
  for (guint i = 0; i < alternative->swaps->len; i++)
    if (!apply_swap (copy, changed, alternative->swaps->pdata[i], alternative->name, error))
      return NULL;
  return g_steal_pointer (&copy);
}
