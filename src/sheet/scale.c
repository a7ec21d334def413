#include "scale.h"

static const guint imperial_ratios[] = { 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768 };
static const guint metric_ratios[] = { 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 500, 1000 };

static const struct
{
  guint       ratio;
  const char *text;
} imperial_names[] = {
  { 12, "1\" = 1'" },     { 16, "3/4\" = 1'" },   { 24, "1/2\" = 1'" },   { 32, "3/8\" = 1'" },
  { 48, "1/4\" = 1'" },   { 64, "3/16\" = 1'" },  { 96, "1/8\" = 1'" },   { 128, "3/32\" = 1'" },
  { 192, "1/16\" = 1'" }, { 384, "1/32\" = 1'" }, { 768, "1/64\" = 1'" },
};

double
rc_scale_to_points_per_tick (guint ratio)
{
  /* An inch is 4064 ticks and 72 points. */
  return 72.0 / ((double)RC_TICKS_PER_INCH * ratio);
}

static gboolean
fits (guint ratio, RcLength width, RcLength height, double width_pt, double height_pt)
{
  double scale = rc_scale_to_points_per_tick (ratio);

  return (double)width * scale <= width_pt && (double)height * scale <= height_pt;
}

guint
rc_scale_choose (RcUnitSystem units, RcLength width, RcLength height, double width_pt, double height_pt)
{
  const guint *ratios = units == RC_UNITS_METRIC ? metric_ratios : imperial_ratios;
  guint        n = units == RC_UNITS_METRIC ? G_N_ELEMENTS (metric_ratios) : G_N_ELEMENTS (imperial_ratios);
  guint        last = ratios[n - 1], ratio = last;

  for (guint i = 0; i < n; i++)
    if (fits (ratios[i], width, height, width_pt, height_pt))
      return ratios[i];
  while (ratio < G_MAXUINT / 2 - last && !fits (ratio, width, height, width_pt, height_pt))
    ratio += ratio < 100 * last ? last : ratio / 2;

  return ratio;
}

char *
rc_scale_format (RcUnitSystem units, guint ratio)
{
  for (guint i = 0; units == RC_UNITS_IMPERIAL && i < G_N_ELEMENTS (imperial_names); i++)
    if (imperial_names[i].ratio == ratio)
      return g_strdup_printf ("%s (1:%u)", imperial_names[i].text, ratio);

  return g_strdup_printf ("1:%u", ratio);
}

RcLength
rc_scale_choose_step (RcUnitSystem units, RcLength least)
{
  static const int factors[] = { 1, 2, 5 };
  RcLength         unit = units == RC_UNITS_METRIC ? RC_TICKS_PER_M / 10 : RC_TICKS_PER_FOOT;

  for (; unit < RC_LENGTH_MAX; unit *= 10)
    for (guint i = 0; i < G_N_ELEMENTS (factors); i++)
      if (factors[i] * unit >= least)
        return factors[i] * unit;

  return unit;
}
