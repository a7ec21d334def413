#include "work.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

static const struct
{
  const char *name, *label;
  RcUnit      imperial, metric;
} works[RC_N_WORKS] = {
  [RC_WORK_NONE] = { "", "", RC_UNIT_EACH, RC_UNIT_EACH },
  [RC_WORK_LAY] = { "lay", N_ ("Laying"), RC_UNIT_SQ_YD, RC_UNIT_M2 },
  [RC_WORK_SIDE_SEAM] = { "side-seam", N_ ("Side seams"), RC_UNIT_FT, RC_UNIT_M },
  [RC_WORK_CROSS_SEAM] = { "cross-seam", N_ ("Cross seams"), RC_UNIT_EACH, RC_UNIT_EACH },
  [RC_WORK_STAIR] = { "stair", N_ ("Stairs, each step"), RC_UNIT_EACH, RC_UNIT_EACH },
  [RC_WORK_FITTING] = { "fitting", N_ ("Fitting round things"), RC_UNIT_EACH, RC_UNIT_EACH },
  [RC_WORK_FIXED] = { "fixed", N_ ("Fixed charge"), RC_UNIT_EACH, RC_UNIT_EACH },
};

const char *
rc_work_get_name (RcWork work)
{
  g_return_val_if_fail (work < RC_N_WORKS, "");

  return works[work].name;
}

const char *
rc_work_get_label (RcWork work)
{
  g_return_val_if_fail (work < RC_N_WORKS, "");

  /* The empty string's translation is the catalogue's head. */
  return work == RC_WORK_NONE ? "" : _ (works[work].label);
}

gboolean
rc_work_parse (const char *name, RcWork *work, GError **error)
{
  g_return_val_if_fail (name != NULL, FALSE);

  for (int i = 0; i < RC_N_WORKS; i++)
    if (g_str_equal (name, works[i].name))
      {
        *work = i;
        return TRUE;
      }
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
               _ ("There is no work “%s”; it is one of: lay, side-seam, cross-seam, stair, fitting, fixed"), name);
  return FALSE;
}

RcUnit
rc_work_get_unit (RcWork work, RcUnitSystem units)
{
  g_return_val_if_fail (work < RC_N_WORKS, RC_UNIT_EACH);

  return units == RC_UNITS_METRIC ? works[work].metric : works[work].imperial;
}
