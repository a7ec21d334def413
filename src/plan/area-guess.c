#include "area-guess.h"

#include "rule.h"

/* A quick guess at a grid's score: full widths by length, fills by area. */
static gint64
guess_grid (const RcAreaState *state, const RcGrid *grid)
{
  const RcSite      *site = state->site;
  const RcObjective *objective = &state->objective;
  double             length = 0;
  gint64             rules = grid->rule_cost;
  for (guint p = 0; p < grid->parts->len; p++)
    {
      const RcPart *part = g_ptr_array_index (grid->parts, p);
      RcBlock       whole = rc_part_get_whole (part, site);
      length += (double)whole.cut_length * (double)whole.cut_width / (double)site->roll_width;
      rules += rc_rules_weigh_piece (site, part->box, NULL, part->seamed && !whole.is_drop, FALSE, NULL);
    }
  return rc_weigh ((RcLength)length, site->weights.carpet_per_m) * objective->carpet + grid->seam_cost * objective->seam
         + rules * objective->rule;
}

static int
compare_ranks (gconstpointer a, gconstpointer b)
{
  const RcRank *x = a, *y = b;
  return x->score < y->score ? -1 : x->score > y->score ? 1 : (int)x->index - (int)y->index;
}

void
rc_area_guess_sort (GArray *ranks)
{
  g_array_sort (ranks, compare_ranks);
}

GArray *
rc_area_guess_rank (const RcAreaState *state, guint first, guint n)
{
  GArray *ranks = g_array_new (FALSE, FALSE, sizeof (RcRank));
  guint   n_grids = rc_area_state_get_cell (state, first)->grids->len;
  for (guint g = 0; g < n_grids; g++)
    {
      RcRank rank = { 0, g };
      for (guint c = first; c < first + n; c++)
        rank.score += guess_grid (state, g_ptr_array_index (rc_area_state_get_cell (state, c)->grids, g));
      g_array_append_val (ranks, rank);
    }
  rc_area_guess_sort (ranks);
  return ranks;
}
