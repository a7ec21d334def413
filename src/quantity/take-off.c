#include "take-off.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

static const RcGoods *
find_in_catalogue (const RcTakeOff *take_off, const char *id)
{
  for (guint i = 0; take_off->catalogue != NULL && i < take_off->catalogue->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (take_off->catalogue, i);

      if (g_strcmp0 (goods->id, id) == 0)
        return goods;
    }
  return NULL;
}

const RcGoods *
rc_take_off_find_goods (const RcTakeOff *take_off, const char *id, const char *needed_for, GError **error)
{
  const RcGoods *goods = rc_job_find_goods (take_off->plan->job, id);

  if (goods == NULL)
    goods = find_in_catalogue (take_off, id);
  if (goods == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                 _ ("%s names the goods “%s”, which neither the job nor the price book has"), needed_for, id);
  return goods;
}

static const RcGoods *
find_kind_in (const GPtrArray *all, RcGoodsKind kind)
{
  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (all, i);

      if (goods->kind == kind)
        return goods;
    }
  return NULL;
}

const RcGoods *
rc_take_off_find_kind (const RcTakeOff *take_off, RcGoodsKind kind, GError **error)
{
  const RcGoods *goods = find_kind_in (take_off->plan->job->goods, kind);

  if (goods == NULL)
    goods = find_kind_in (take_off->catalogue, kind);
  if (goods == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                 _ ("The plan needs goods of the kind “%s”, and neither the job nor the price book has any"),
                 rc_goods_kind_get_name (kind));
  return goods;
}

RcQuantityLine *
rc_take_off_add_goods (RcTakeOff *take_off, const RcGoods *goods, const RcPacking *packing, char *because)
{
  RcQuantityLine *line = g_new0 (RcQuantityLine, 1);

  line->work = RC_WORK_NONE;
  line->goods = goods;
  line->item = g_strdup (goods->id);
  line->name = g_strdup (goods->name);
  line->quantity_micro = packing->quantity_micro;
  line->unit = goods->unit;
  line->net_micro = packing->net_micro;
  line->packs = packing->packs;
  line->pack_unit = packing->pack_unit;
  line->because = because;
  g_ptr_array_add (take_off->lines, line);
  return line;
}

RcQuantityLine *
rc_take_off_add_work (RcTakeOff *take_off, RcWork work, gint64 quantity_micro, char *because)
{
  RcQuantityLine *line = g_new0 (RcQuantityLine, 1);

  line->work = work;
  line->item = g_strdup (rc_work_get_name (work));
  line->name = g_strdup (rc_work_get_label (work));
  line->quantity_micro = line->net_micro = quantity_micro;
  line->unit = line->pack_unit = rc_work_get_unit (work, take_off->plan->job->units);
  line->because = because;
  g_ptr_array_add (take_off->lines, line);
  return line;
}

gboolean
rc_take_off_sum (gint64 *sum, gint64 addend, const char *what, GError **error)
{
  if (addend >= 0 && !__builtin_add_overflow (*sum, addend, sum))
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s comes to more than can be counted"), what);
  return FALSE;
}
