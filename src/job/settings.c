#include "job.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const rule_names[] = {
  "seam-across-light",  "seam-across-traffic", "seam-square-to-door", "fill-too-narrow",
  "piece-too-short",    "too-many-joins",      "cross-seam-at-door",  "cross-seams-not-staggered",
  "seam-in-door-swing", "seam-on-kept-floor",  "each-seam",
};
G_STATIC_ASSERT (G_N_ELEMENTS (rule_names) == RC_N_RULES);

/* What a broken rule weighs against carpet and seams, in minor units. The trade publishes the rules and puts no money
 * on them: CRI 2011 6.2 (seams to a minimum, along the light and the traffic, away from pivoting traffic, none
 * perpendicular to a doorway); least sizes by job specifications. The prices are common practice, no source; how they
 * were found: what carpet, at some 50 a metre of roll, an experienced estimator buys sooner than break the rule.
 *
 * - Three metres for a seam square into a doorway and for a fill too narrow to hold at the wall: they come loose and
 *   the shop goes back. Not for a piece in a doorway, which is as narrow as the wall is thick. Two metres for what
 * wears early: a seam across the way between doors or under a door's sweep, a cross seam at a door; and for joining a
 * fill more often than the settings say.
 * - One metre and a bit for what shows: across the light, joined pieces too short, cross seams in line.
 * - Out of all proportion for a seam on floor that the estimator has pinned free of seams: only where there is no other
 *   way.
 * - The price of one cross seam's labour for each seam more: with it no seam is worth less than a foot of carpet, so
 *   none of an inch is made to save one.
 *
 * A minor unit, not a major one, is what is of like worth from currency to currency, so the same numbers serve yen (no
 * digits) and dinars (three). */
static const RcMoney rule_costs[] = { 6000, 10000, 15000, 15000, 6000, 10000, 10000, 6000, 10000, 1000000, 1000 };
G_STATIC_ASSERT (G_N_ELEMENTS (rule_costs) == RC_N_RULES);

void
rc_settings_init (RcSettings *settings, const RcCurrency *currency)
{
  memset (settings, 0, sizeof *settings);
  /* CRI 2011 6.1: cut 3 to 4 in longer than the area measures. */
  settings->trim_length = 3 * RC_TICKS_PER_INCH;
  settings->trim_width = 3 * RC_TICKS_PER_INCH;
  /* No standard has a figure; job specifications ask for 6 to 18 in and for pieces of 3 to 4 ft: common practice. */
  settings->least_fill_width = 9 * RC_TICKS_PER_INCH;
  settings->least_piece_length = 3 * RC_TICKS_PER_FOOT;
  /* Common practice, no source. */
  settings->most_joins = 4;
  settings->door_distance = 24 * RC_TICKS_PER_INCH;
  settings->stagger = 12 * RC_TICKS_PER_INCH;
  /* CRI 105 (2015) 11.1: wider or doubled tack strip where the stretch is over 30 ft. */
  settings->strip_double_from = 30 * RC_TICKS_PER_FOOT;
  /* Common practice, no source: a tape read to 1/8 in at both ends; more than 3 in is a wall misread. */
  settings->closure.error_max = 3 * RC_TICKS_PER_INCH;
  settings->closure.close_max = RC_TICKS_PER_INCH / 4;
  for (guint i = 0; i < RC_N_RULES; i++)
    settings->rule_cost[i] = rule_costs[i];
}

const char *
rc_rule_get_name (RcRule rule)
{
  g_return_val_if_fail ((guint)rule < RC_N_RULES, "");
  return rule_names[rule];
}

gboolean
rc_rule_parse (const char *name, RcRule *rule, GError **error)
{
  guint index;

  if (!rc_words_parse (rule_names, G_N_ELEMENTS (rule_names), _ ("placement rule"), name, &index, error))
    return FALSE;
  *rule = index;
  return TRUE;
}

const char *
rc_rule_get_label (RcRule rule)
{
  switch (rule)
    {
    case RC_RULE_SEAM_ACROSS_LIGHT:
      return _ ("Seam across the light");
    case RC_RULE_SEAM_ACROSS_TRAFFIC:
      return _ ("Seam across the traffic");
    case RC_RULE_SEAM_SQUARE_TO_DOOR:
      return _ ("Seam square into a doorway");
    case RC_RULE_FILL_TOO_NARROW:
      return _ ("Fill too narrow");
    case RC_RULE_PIECE_TOO_SHORT:
      return _ ("Joined piece too short");
    case RC_RULE_TOO_MANY_JOINS:
      return _ ("Too many joins in a fill");
    case RC_RULE_CROSS_SEAM_AT_DOOR:
      return _ ("Cross seam too near a door");
    case RC_RULE_CROSS_SEAMS_NOT_STAGGERED:
      return _ ("Cross seams not staggered");
    case RC_RULE_SEAM_IN_DOOR_SWING:
      return _ ("Seam under a door's sweep");
    case RC_RULE_SEAM_ON_KEPT_FLOOR:
      return _ ("Seam on floor kept free of seams");
    case RC_RULE_EACH_SEAM:
      return _ ("Every seam, however short");
    case RC_N_RULES:
    default:
      g_return_val_if_reached ("");
    }
}
