#include "job.h"

static const RcGoods *
find_in (const GPtrArray *catalogue, const char *id)
{
  for (guint i = 0; i < catalogue->len; i++)
    if (g_strcmp0 (((const RcGoods *)catalogue->pdata[i])->id, id) == 0)
      return catalogue->pdata[i];
  return NULL;
}

/* FALSE when the goods are named and nobody has them. */
static gboolean
adopt (RcJob *job, const GPtrArray *catalogue, const char *id)
{
  const RcGoods *goods;

  if (id == NULL || rc_job_find_goods (job, id) != NULL)
    return TRUE;
  goods = find_in (catalogue, id);
  if (goods != NULL)
    g_ptr_array_add (job->goods, rc_goods_copy (goods));
  return goods != NULL;
}

static gboolean
adopt_for_measure (RcJob *job, const GPtrArray *catalogue, const RcMeasure *measure)
{
  gboolean complete = TRUE;

  for (guint i = 0; i < measure->areas->len; i++)
    {
      const RcFloorArea *area = measure->areas->pdata[i];

      complete &= adopt (job, catalogue, area->carpet);
      complete &= adopt (job, catalogue, area->cushion);
    }
  for (guint i = 0; i < measure->stairs->len; i++)
    {
      const RcStair *stair = measure->stairs->pdata[i];

      complete &= adopt (job, catalogue, stair->carpet);
      complete &= adopt (job, catalogue, stair->cushion);
    }
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *room = measure->rooms->pdata[i];

      for (guint k = 0; k < room->openings->len; k++)
        complete &= adopt (job, catalogue, ((const RcOpening *)room->openings->pdata[k])->transition);
    }
  return complete;
}

gboolean
rc_job_adopt_goods (RcJob *job, const GPtrArray *catalogue)
{
  gboolean complete = TRUE;

  for (guint i = 0; i < job->measures->len; i++)
    complete &= adopt_for_measure (job, catalogue, job->measures->pdata[i]);
  for (guint i = 0; i < job->offer->alternatives->len; i++)
    {
      const RcAlternative *alternative = job->offer->alternatives->pdata[i];

      for (guint k = 0; k < alternative->swaps->len; k++)
        complete &= adopt (job, catalogue, ((const RcSwap *)alternative->swaps->pdata[k])->carpet);
    }
  for (guint i = 0; i < job->rolls->len; i++)
    complete &= adopt (job, catalogue, ((const RcRoll *)job->rolls->pdata[i])->goods_id);
  return complete;
}

void
rc_job_use_rolls (RcJob *job, const GPtrArray *rolls)
{
  g_ptr_array_set_size (job->rolls, 0);
  for (guint i = 0; i < rolls->len; i++)
    {
      const RcRoll *roll = g_ptr_array_index (rolls, i);

      if (roll->length > 0 && rc_job_find_goods (job, roll->goods_id) != NULL)
        g_ptr_array_add (job->rolls, rc_roll_copy (roll));
    }
}
