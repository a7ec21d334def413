#include "job.h"

RcMeasure *
rc_measure_new (const char *id)
{
  RcMeasure *measure = g_new0 (RcMeasure, 1);

  measure->id = g_strdup (id);
  measure->rooms = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_room_free);
  measure->stairs = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_stair_free);
  measure->areas = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_floor_area_free);
  return measure;
}

RcMeasure *
rc_measure_copy (const RcMeasure *measure)
{
  RcMeasure *copy = rc_measure_new (measure->id);

  copy->date = g_strdup (measure->date);
  copy->taken_by = g_strdup (measure->taken_by);
  copy->notes = g_strdup (measure->notes);
  for (guint i = 0; i < measure->rooms->len; i++)
    g_ptr_array_add (copy->rooms, rc_room_copy (measure->rooms->pdata[i]));
  for (guint i = 0; i < measure->stairs->len; i++)
    g_ptr_array_add (copy->stairs, rc_stair_copy (measure->stairs->pdata[i]));
  for (guint i = 0; i < measure->areas->len; i++)
    g_ptr_array_add (copy->areas, rc_floor_area_copy (measure->areas->pdata[i]));
  return copy;
}

void
rc_measure_free (RcMeasure *measure)
{
  if (measure == NULL)
    return;
  g_free (measure->id);
  g_free (measure->date);
  g_free (measure->taken_by);
  g_free (measure->notes);
  g_ptr_array_unref (measure->rooms);
  g_ptr_array_unref (measure->stairs);
  g_ptr_array_unref (measure->areas);
  g_free (measure);
}

RcRoom *
rc_measure_find_room (const RcMeasure *measure, const char *id)
{
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      RcRoom *room = measure->rooms->pdata[i];

      if (g_strcmp0 (room->id, id) == 0)
        return room;
    }
  return NULL;
}

RcStair *
rc_measure_find_stair (const RcMeasure *measure, const char *id)
{
  for (guint i = 0; i < measure->stairs->len; i++)
    {
      RcStair *stair = measure->stairs->pdata[i];

      if (g_strcmp0 (stair->id, id) == 0)
        return stair;
    }
  return NULL;
}

RcFloorArea *
rc_measure_find_area (const RcMeasure *measure, const char *id)
{
  for (guint i = 0; i < measure->areas->len; i++)
    {
      RcFloorArea *area = measure->areas->pdata[i];

      if (g_strcmp0 (area->id, id) == 0)
        return area;
    }
  return NULL;
}
