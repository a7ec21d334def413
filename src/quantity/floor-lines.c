/* What floors and stairs take by area: cushion, adhesive, laying. */
#include <glib/gi18n-lib.h>

#include "reason.h"
#include "rowcut-error.h"
#include "take-off.h"

/* A sum of areas and the words for it. */
typedef struct
{
  RcArea   area;
  GString *reason;
} AreaSum;

static void
area_sum_init (AreaSum *sum)
{
  *sum = (AreaSum){ 0, g_string_new (NULL) };
}

static void
area_sum_clear (AreaSum *sum)
{
  g_string_free (sum->reason, TRUE);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (AreaSum, area_sum_clear)

/* "Living room, Hall 345 sq ft", "× 2 coats" when n_coats > 1. */
static gboolean
area_sum_add_floor (AreaSum *sum, const RcPlan *plan, const RcAreaPlan *area_plan, guint n_coats, GError **error)
{
  g_autofree char *rooms = rc_reason_format_rooms (plan, area_plan->area);
  g_autofree char *printed = rc_reason_format_area (plan, area_plan->floor_area);
  RcArea           coated;

  if (__builtin_mul_overflow (area_plan->floor_area, (RcArea)n_coats, &coated))
    coated = -1;
  rc_reason_add_part (sum->reason, n_coats > 1 ? g_strdup_printf (_ ("%s %s × %u coats"), rooms, printed, n_coats)
                                               : g_strdup_printf ("%s %s", rooms, printed));
  return rc_take_off_sum (&sum->area, coated, rooms, error);
}

/* Tread, riser and nose of a step: the cushion is carried over the nose (CRI 2011 17.1, p. 19). */
static RcLength
get_step_length (const RcStair *stair, guint step)
{
  return rc_stair_get_step (stair, step).going + stair->rise + stair->nose_extra;
}

RcArea
rc_stair_compute_cushion (const RcStair *stair)
{
  RcArea sum = 0;

  for (guint i = 1; i <= rc_stair_count_steps (stair); i++)
    sum += rc_area_from_rectangle (rc_stair_get_inner_width (stair, i), get_step_length (stair, i));
  return sum;
}

static gboolean
area_sum_add_stair (AreaSum *sum, const RcPlan *plan, const RcStair *stair, GError **error)
{
  guint            plain = rc_stair_get_plain_step (stair), n_steps = rc_stair_count_steps (stair);
  g_autofree char *step = rc_reason_format_length (plan, get_step_length (stair, plain));
  g_autofree char *width = rc_reason_format_length (plan, rc_stair_get_inner_width (stair, plain));
  g_autofree char *all
      = g_strdup_printf (ngettext ("%s: %u step × %s × %s wide", "%s: %u steps × %s × %s wide", n_steps), stair->name,
                         n_steps, step, width);
  RcArea area = rc_stair_compute_cushion (stair);
  RcArea of_plain
      = rc_area_from_rectangle (rc_stair_get_inner_width (stair, plain), get_step_length (stair, plain) * n_steps);

  rc_reason_add_part (sum->reason, area == of_plain ? g_steal_pointer (&all)
                                                    : g_strdup_printf (_ ("%s, more at turns and wider steps"), all));
  return rc_take_off_sum (&sum->area, area, stair->name, error);
}

/* Cushion of one kind under all floors and stairs that name it. */
static gboolean
add_cushion (RcTakeOff *take_off, const char *id, const char *needed_for, GError **error)
{
  const RcPlan    *plan = take_off->plan;
  const GPtrArray *stairs = plan->measure->stairs;
  const RcGoods   *goods = rc_take_off_find_goods (take_off, id, needed_for, error);
  RcPacking        packing;
  g_auto (AreaSum) sum;

  area_sum_init (&sum);
  if (goods == NULL)
    return FALSE;
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);

      if (g_strcmp0 (area_plan->area->cushion, id) == 0 && !area_sum_add_floor (&sum, plan, area_plan, 1, error))
        return FALSE;
    }
  for (guint i = 0; i < stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (stairs, i);

      if (g_strcmp0 (stair->cushion, id) == 0 && !area_sum_add_stair (&sum, plan, stair, error))
        return FALSE;
    }
  if (!rc_packing_from_area (goods, sum.area, &packing, error))
    return FALSE;
  rc_take_off_add_goods (take_off, goods, &packing, g_strdup (sum.reason->str));
  return TRUE;
}

gboolean
rc_take_off_add_cushion (RcTakeOff *take_off, GError **error)
{
  const RcPlan    *plan = take_off->plan;
  const GPtrArray *stairs = plan->measure->stairs;
  g_autoptr (GHashTable) done = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcFloorArea *area = ((const RcAreaPlan *)g_ptr_array_index (plan->areas, i))->area;

      if (area->cushion != NULL && g_hash_table_add (done, area->cushion)
          && !add_cushion (take_off, area->cushion, area->name, error))
        return FALSE;
    }
  for (guint i = 0; i < stairs->len; i++)
    {
      const RcStair *stair = g_ptr_array_index (stairs, i);

      if (stair->cushion != NULL && g_hash_table_add (done, stair->cushion)
          && !add_cushion (take_off, stair->cushion, stair->name, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
rc_take_off_add_adhesive (RcTakeOff *take_off, GError **error)
{
  const RcPlan  *plan = take_off->plan;
  const RcGoods *goods;
  RcPacking      packing;
  g_auto (AreaSum) sum;

  area_sum_init (&sum);
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      guint             n_coats = area_plan->area->cushion != NULL ? 2 : 1;

      if (area_plan->area->fixing == RC_FIXING_GLUE && !area_sum_add_floor (&sum, plan, area_plan, n_coats, error))
        return FALSE;
    }
  if (sum.area == 0)
    return TRUE;
  goods = rc_take_off_find_kind (take_off, RC_GOODS_ADHESIVE, error);
  if (goods == NULL || !rc_packing_from_area (goods, sum.area, &packing, error))
    return FALSE;
  rc_take_off_add_goods (take_off, goods, &packing, g_strdup (sum.reason->str));
  return TRUE;
}

gboolean
rc_take_off_add_laying (RcTakeOff *take_off, GError **error)
{
  const RcPlan *plan = take_off->plan;
  RcUnit        unit = rc_work_get_unit (RC_WORK_LAY, plan->job->units);
  g_auto (AreaSum) sum;

  area_sum_init (&sum);
  for (guint i = 0; i < plan->areas->len; i++)
    if (!area_sum_add_floor (&sum, plan, g_ptr_array_index (plan->areas, i), 1, error))
      return FALSE;
  if (sum.area > 0)
    rc_take_off_add_work (take_off, RC_WORK_LAY, rc_unit_from_area (sum.area, unit), g_strdup (sum.reason->str));
  return TRUE;
}
