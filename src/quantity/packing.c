#include "packing.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

static gboolean
fail_too_large (const RcGoods *goods, GError **error)
{
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The quantity of %s is too large to be counted"), goods->name);
  return FALSE;
}

static gint64
get_pack_content (const RcGoods *goods)
{
  return goods->pack_micro > 0 ? goods->pack_micro : RC_MICRO;
}

static RcUnit
get_pack_unit (const RcGoods *goods)
{
  return goods->pack_micro > 0 ? goods->pack_unit : goods->unit;
}

static gboolean
pack (const RcGoods *goods, gint64 packs, RcPacking *packing, GError **error)
{
  packing->packs = packs;
  packing->pack_unit = get_pack_unit (goods);
  if (__builtin_mul_overflow (packs, get_pack_content (goods), &packing->quantity_micro))
    return fail_too_large (goods, error);
  return TRUE;
}

/* `covers` of the same measure as `amount` is covered by one pack. */
static gboolean
pack_by_coverage (const RcGoods *goods, gint64 amount, gint64 covers, RcPacking *packing, GError **error)
{
  gint64 packs;

  if (!rc_multiply_divide (amount, get_pack_content (goods), covers, &packing->net_micro)
      || !rc_multiply_divide_up (amount, 1, covers, &packs))
    return fail_too_large (goods, error);
  return pack (goods, packs, packing, error);
}

/* `size` of the same measure as `amount` is one unit of the goods. */
static gboolean
pack_by_unit (const RcGoods *goods, gint64 amount, gint64 size, gint64 step, RcPacking *packing, GError **error)
{
  gint64 packs;

  if (!rc_multiply_divide (amount, RC_MICRO, size, &packing->net_micro))
    return fail_too_large (goods, error);
  if (goods->pack_micro > 0)
    {
      if (!rc_count_packs (amount, size, goods->pack_micro, &packs))
        return fail_too_large (goods, error);
      return pack (goods, packs, packing, error);
    }
  packing->packs = 0;
  packing->pack_unit = goods->unit;
  packing->quantity_micro = packing->net_micro;
  if (step > 0 && !rc_multiply_divide (rc_length_round_up (amount, step), RC_MICRO, size, &packing->quantity_micro))
    return fail_too_large (goods, error);
  return TRUE;
}

static gboolean
fail_without_measure (const RcGoods *goods, const char *measure, GError **error)
{
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
               _ ("%s is counted in %s and nothing says what %s one covers: give what a pack covers"), goods->name,
               rc_unit_get_name (goods->unit), measure);
  return FALSE;
}

gboolean
rc_packing_from_length (const RcGoods *goods, RcLength length, RcPacking *packing, GError **error)
{
  g_return_val_if_fail (goods != NULL && length >= 0, FALSE);

  if (goods->pack_covers_length > 0)
    return pack_by_coverage (goods, length, goods->pack_covers_length, packing, error);
  if (rc_unit_is_length (goods->unit))
    return pack_by_unit (goods, length, rc_unit_get_ticks (goods->unit), goods->length_step, packing, error);
  return fail_without_measure (goods, _ ("length"), error);
}

gboolean
rc_packing_from_area (const RcGoods *goods, RcArea area, RcPacking *packing, GError **error)
{
  g_return_val_if_fail (goods != NULL && area >= 0, FALSE);

  if (goods->pack_covers_area > 0)
    return pack_by_coverage (goods, area, goods->pack_covers_area, packing, error);
  if (rc_unit_is_area (goods->unit))
    return pack_by_unit (goods, area, 2 * rc_unit_get_square_ticks (goods->unit), 0, packing, error);
  if (rc_unit_is_length (goods->unit) && goods->roll_width > 0)
    return pack_by_unit (goods, area, 2 * goods->roll_width * rc_unit_get_ticks (goods->unit), 0, packing, error);
  return fail_without_measure (goods, _ ("area"), error);
}

gboolean
rc_packing_from_packs (const RcGoods *goods, gint64 packs, RcLength net, RcPacking *packing, GError **error)
{
  g_return_val_if_fail (goods != NULL && packs >= 0 && net >= 0, FALSE);

  if (!rc_packing_from_length (goods, net, packing, error))
    return FALSE;
  return packing->packs == 0 || pack (goods, packs, packing, error);
}
