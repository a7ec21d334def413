#include "job-edit.h"

#include <glib/gi18n-lib.h>

#include "job-file.h"
#include "measure-edit.h"

static const RcGoods *
find_goods (const GPtrArray *catalogue, const char *id)
{
  for (guint i = 0; i < catalogue->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (catalogue, i);
      if (g_strcmp0 (goods->id, id) == 0)
        return goods;
    }
  return NULL;
}

gboolean
rc_job_edit_take_goods (RcJob *job, const RcPriceBook *book, const GPtrArray *stock, const char *id)
{
  if (rc_job_find_goods (job, id) != NULL)
    return TRUE;
  const RcGoods *goods = book ? find_goods (book->goods, id) : NULL;
  if (goods == NULL)
    return FALSE;

  g_ptr_array_add (job->goods, rc_goods_copy (goods));
  for (guint i = 0; stock != NULL && i < stock->len; i++)
    {
      const RcRoll *roll = g_ptr_array_index (stock, i);
      if (g_strcmp0 (roll->goods_id, id) == 0 && rc_rolls_find (job->rolls, roll->id) == NULL)
        g_ptr_array_add (job->rolls, rc_roll_copy (roll));
    }
  return TRUE;
}

void
rc_job_edit_follow_stock (RcJob *job, const GPtrArray *stock, const char *taken)
{
  g_autoptr (GPtrArray) was = job->rolls;

  job->rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  for (guint i = 0; i < was->len; i++)
    {
      const RcRoll *roll = g_ptr_array_index (was, i), *now = roll->cut ? roll : rc_rolls_find (stock, roll->id);

      if (now != NULL)
        g_ptr_array_add (job->rolls, rc_roll_copy (now));
    }
  const RcRoll *roll = rc_rolls_find (stock, taken);
  if (roll != NULL && rc_rolls_find (was, taken) == NULL && rc_job_find_goods (job, roll->goods_id) != NULL)
    g_ptr_array_add (job->rolls, rc_roll_copy (roll));
}

RcMeasure *
rc_job_edit_add_measure (RcJob *job, const char *from, const char *date)
{
  const RcMeasure *old = rc_job_get_measure (job, from);

  if (old == NULL)
    return NULL;
  g_autofree char *id = NULL;
  for (guint n = job->measures->len + 1; id == NULL || rc_job_get_measure (job, id); n++)
    {
      g_free (id);
      id = g_strdup_printf ("M%u", n);
    }
  RcMeasure *measure = rc_measure_copy (old);
  g_free (measure->id);
  g_free (measure->date);
  measure->id = g_steal_pointer (&id);
  measure->date = g_strdup (date);
  g_ptr_array_add (job->measures, measure);
  return measure;
}

gboolean
rc_job_edit_remove_measure (RcJob *job, const char *id)
{
  RcMeasure *measure = rc_job_get_measure (job, id);
  return job->measures->len > 1 && measure != NULL && g_ptr_array_remove (job->measures, measure);
}

const RcGoods *
rc_job_edit_find_first_goods (const RcJob *job, const RcPriceBook *book, RcGoodsKind kind)
{
  const GPtrArray *lists[] = { job->goods, book ? book->goods : NULL };

  for (guint l = 0; l < G_N_ELEMENTS (lists); l++)
    for (guint i = 0; lists[l] != NULL && i < lists[l]->len; i++)
      {
        const RcGoods *goods = g_ptr_array_index (lists[l], i);
        if (goods->kind == kind)
          return goods;
      }
  return NULL;
}

RcJob *
rc_job_edit_new_job (const char *id, const char *title, const char *date, const RcPriceBook *book,
                     const GPtrArray *stock, RcUnitSystem units)
{
  RcCurrency     usd = { "USD", 2 };
  RcJob         *job = rc_job_new (id, book ? &book->currency : &usd);
  RcFloorArea   *area = rc_measure_edit_add_area (rc_job_get_measure (job, NULL), _ ("Carpet"));
  const RcGoods *carpet = rc_job_edit_find_first_goods (job, book, RC_GOODS_CARPET);
  const RcGoods *cushion = rc_job_edit_find_first_goods (job, book, RC_GOODS_CUSHION);

  g_free (job->title);
  g_free (job->date);
  job->title = g_strdup (title);
  job->date = g_strdup (date);
  job->units = units;
  job->tax_ppm = -1;
  if (carpet)
    {
      area->carpet = g_strdup (carpet->id);
      rc_job_edit_take_goods (job, book, stock, carpet->id);
    }
  if (cushion)
    {
      area->cushion = g_strdup (cushion->id);
      rc_job_edit_take_goods (job, book, stock, cushion->id);
    }
  return job;
}

static char *
format_planned (const RcJob *job)
{
  g_autoptr (RcJob) copy = rc_job_copy (job);

  g_ptr_array_set_size (copy->pictures, 0);
  return rc_job_file_format (copy, NULL);
}

gboolean
rc_job_edit_plans_alike (const RcJob *a, const RcJob *b)
{
  g_autofree char *text_a = format_planned (a), *text_b = format_planned (b);

  return g_str_equal (text_a, text_b);
}
