#include "unit.h"

#include "decimal.h"
#include "rowcut-error.h"
#include "wide.h"

#include <glib/gi18n-lib.h>

static const struct
{
  const char *name;
  const char *unece;
} units[RC_N_UNITS] = {
  [RC_UNIT_EACH] = { "each", "C62" },   [RC_UNIT_M] = { "m", "MTR" },       [RC_UNIT_FT] = { "ft", "FOT" },
  [RC_UNIT_YD] = { "yd", "YRD" },       [RC_UNIT_M2] = { "m2", "MTK" },     [RC_UNIT_SQ_FT] = { "sq ft", "FTK" },
  [RC_UNIT_SQ_YD] = { "sq yd", "YDK" }, [RC_UNIT_LITRE] = { "L", "LTR" },   [RC_UNIT_GALLON] = { "gal", "GLL" },
  [RC_UNIT_HOUR] = { "h", "HUR" },      [RC_UNIT_ROLL] = { "roll", "XRO" }, [RC_UNIT_CARTON] = { "carton", "XCT" },
  [RC_UNIT_BOX] = { "box", "XBX" },     [RC_UNIT_TUB] = { "tub", "XTB" },
};

const char *
rc_unit_get_name (RcUnit unit)
{
  g_return_val_if_fail ((guint)unit < RC_N_UNITS, NULL);

  return units[unit].name;
}

const char *
rc_unit_get_label (RcUnit unit)
{
  switch (unit)
    {
    case RC_UNIT_EACH:
      return _ ("each");
    case RC_UNIT_M:
      return _ ("m");
    case RC_UNIT_FT:
      return _ ("ft");
    case RC_UNIT_YD:
      return _ ("yd");
    case RC_UNIT_M2:
      return _ ("m²");
    case RC_UNIT_SQ_FT:
      return _ ("sq ft");
    case RC_UNIT_SQ_YD:
      return _ ("sq yd");
    case RC_UNIT_LITRE:
      return _ ("L");
    case RC_UNIT_GALLON:
      return _ ("gal");
    case RC_UNIT_HOUR:
      return _ ("h");
    case RC_UNIT_ROLL:
      return _ ("roll");
    case RC_UNIT_CARTON:
      return _ ("carton");
    case RC_UNIT_BOX:
      return _ ("box");
    case RC_UNIT_TUB:
      return _ ("tub");
    case RC_N_UNITS:
      break;
    }

  return "";
}

const char *
rc_unit_get_unece (RcUnit unit)
{
  g_return_val_if_fail ((guint)unit < RC_N_UNITS, NULL);

  return units[unit].unece;
}

gboolean
rc_unit_parse (const char *name, RcUnit *unit, GError **error)
{
  g_autofree char *quoted = NULL;
  g_autoptr (GString) known = NULL;

  for (guint i = 0; name != NULL && i < RC_N_UNITS; i++)
    {
      if (g_strcmp0 (name, units[i].name) != 0)
        continue;
      *unit = i;
      return TRUE;
    }

  known = g_string_new (units[0].name);
  for (guint i = 1; i < RC_N_UNITS; i++)
    g_string_append_printf (known, ", %s", units[i].name);

  quoted = rc_error_quote (name);
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is not a unit. Use one of: %s."), quoted, known->str);
  return FALSE;
}

static gint64
divide_into_micro (RcWide ticks, gint64 unit_ticks)
{
  RcWide micro = rc_wide_divide_round (ticks * RC_MICRO, unit_ticks);

  g_return_val_if_fail (rc_wide_fits_int64 (micro), micro > 0 ? G_MAXINT64 : G_MININT64);

  return (gint64)micro;
}

gint64
rc_unit_from_length (RcLength length, RcUnit unit)
{
  switch (unit)
    {
    case RC_UNIT_M:
      return divide_into_micro (length, RC_TICKS_PER_M);
    case RC_UNIT_FT:
      return divide_into_micro (length, RC_TICKS_PER_FOOT);
    case RC_UNIT_YD:
      return divide_into_micro (length, RC_TICKS_PER_YARD);
    default:
      g_return_val_if_reached (0);
    }
}

gint64
rc_unit_from_area (RcArea area, RcUnit unit)
{
  switch (unit)
    {
    case RC_UNIT_M2:
      return divide_into_micro (area, rc_area_unit_get_size (RC_AREA_UNIT_M2));
    case RC_UNIT_SQ_FT:
      return divide_into_micro (area, rc_area_unit_get_size (RC_AREA_UNIT_SQ_FT));
    case RC_UNIT_SQ_YD:
      return divide_into_micro (area, rc_area_unit_get_size (RC_AREA_UNIT_SQ_YD));
    default:
      g_return_val_if_reached (0);
    }
}

char *
rc_quantity_format (gint64 quantity_micro, int decimals)
{
  g_autoptr (GString) text = NULL;

  g_return_val_if_fail (decimals >= 0 && decimals <= 6, NULL);

  text = g_string_new (NULL);
  rc_wide_append_decimal (text, rc_wide_divide_round (quantity_micro, rc_power_of_ten (6 - decimals)), decimals, FALSE);
  rc_decimal_trim (text);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

gboolean
rc_quantity_parse (const char *text, gint64 *quantity_micro, GError **error)
{
  g_autofree char *bare = NULL;
  g_autofree char *quoted = NULL;
  RcDecimalStatus  status;

  g_return_val_if_fail (text != NULL && quantity_micro != NULL, FALSE);

  bare = g_strstrip (g_strdup (text));
  status = rc_decimal_scan (bare, 6, FALSE, quantity_micro);
  if (status == RC_DECIMAL_OK)
    return TRUE;

  quoted = rc_error_quote (text);
  if (status == RC_DECIMAL_TOO_LARGE)
    g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("“%s” is more than can be handled."), quoted);
  else if (status == RC_DECIMAL_TOO_FINE)
    g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” has more than six decimals."), quoted);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is not a number. Write it like 37.5."), quoted);
  return FALSE;
}

char *
rc_rate_format (gint64 rate_ppm)
{
  return rc_quantity_format (rate_ppm * 100, 4);
}

gboolean
rc_rate_parse (const char *text, gint64 *rate_ppm, GError **error)
{
  g_autofree char *number = g_strdelimit (g_strdup (text), "%", ' ');
  gint64           percent_micro;

  if (!rc_quantity_parse (g_strstrip (number), &percent_micro, error))
    return FALSE;
  if (percent_micro % 100 != 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” has more than four digits after the point"), text);
      return FALSE;
    }
  *rate_ppm = percent_micro / 100;
  return TRUE;
}
