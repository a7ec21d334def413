#include "check.h"

#include "rowcut-error.h"

/* Shares nothing with the solver but the public header. */

const char *
rc_nest_check_get_label (const RcNestProblem *problem, guint cut)
{
  const RcNestCut *c = problem->cuts->pdata[cut];

  return c->label != NULL ? c->label : "?";
}

gboolean
rc_nest_check_fail (GError **error, const char *format, ...)
{
  va_list          arguments;
  g_autofree char *text = NULL;

  va_start (arguments, format);
  text = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, RC_ERROR, RC_ERROR_INFEASIBLE, text);
  return FALSE;
}

const RcNestRoll *
rc_nest_check_get_roll (const RcNestProblem *problem, const RcNestUse *use)
{
  return problem->rolls->len > 0 ? problem->rolls->pdata[use->source] : NULL;
}

RcLength
rc_nest_check_get_width (const RcNestProblem *problem, const RcNestUse *use)
{
  const RcNestRoll *roll = rc_nest_check_get_roll (problem, use);

  return roll != NULL && roll->width > 0 && roll->width < problem->roll_width ? roll->width : problem->roll_width;
}

RcLength
rc_nest_check_get_trim_end (const RcNestProblem *problem, const RcNestUse *use)
{
  const RcNestRoll *roll = rc_nest_check_get_roll (problem, use);

  return roll != NULL ? roll->trim_end : 0;
}

/* Not one step less would do; without steps, not a tick less. */
static gboolean
is_least_bought (const RcNestProblem *problem, const RcNestUse *use)
{
  RcLength step = problem->buy_step > 0 ? problem->buy_step : 1, less = use->length - step;

  return use->length % step == 0
         && (less < problem->buy_least || less < use->used + rc_nest_check_get_trim_end (problem, use));
}

/* One step, and the least that is sold, can be bought whatever the most is. */
static gboolean
is_too_long (const RcNestProblem *problem, const RcNestUse *use)
{
  return problem->buy_most > 0 && use->length > problem->buy_most && use->length > MAX (problem->buy_step, 1)
         && use->length >= problem->buy_least + MAX (problem->buy_step, 1);
}

static gboolean
check_rolls (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error)
{
  for (guint r = 0; r < answer->rolls->len; r++)
    {
      const RcNestUse *use = answer->rolls->pdata[r];
      RcLength         length = 0;
      guint            count = 1;

      if (use->source >= MAX (problem->rolls->len, 1))
        return rc_nest_check_fail (error, "Roll %u comes from no roll of the problem", r);
      if (problem->rolls->len > 0)
        {
          const RcNestRoll *roll = problem->rolls->pdata[use->source];

          length = roll->length;
          count = length == 0 ? 1 : roll->count;
        }
      if (length == 0 && problem->buy_most > 0)
        count = G_MAXUINT;
      if (use->copy >= count)
        return rc_nest_check_fail (error, "Roll %u is copy %u of %u", r, use->copy + 1, count);
      for (guint s = 0; s < r; s++)
        {
          const RcNestUse *other = answer->rolls->pdata[s];
          if (other->source == use->source && other->copy == use->copy)
            return rc_nest_check_fail (error, "Rolls %u and %u are the same roll", s, r);
        }
      if (length > 0 ? use->length != length : use->length < use->used + rc_nest_check_get_trim_end (problem, use))
        return rc_nest_check_fail (error, "Roll %u has the wrong length", r);
      if (length == 0 && use->length < problem->buy_least)
        return rc_nest_check_fail (error, "Roll %u is bought shorter than is sold", r);
      if (length == 0 && is_too_long (problem, use))
        return rc_nest_check_fail (error, "Roll %u is bought longer than is sold", r);
      if (length == 0 && !is_least_bought (problem, use))
        return rc_nest_check_fail (error, "Roll %u is bought longer than it must be", r);
    }
  return TRUE;
}

/* Neither in the trimmed ends of the roll nor over a flaw. */
static gboolean
check_sound (const RcNestRoll *roll, const RcNestUse *use, const RcNestCut *cut, const RcNestPlacement *placement,
             GError **error)
{
  if (roll == NULL)
    return TRUE;
  if (placement->along < roll->trim || placement->along + placement->length > use->length - roll->trim_end)
    return rc_nest_check_fail (error, "Cut %s lies in the end that is trimmed off", cut->label);
  for (guint f = 0; roll->flaws != NULL && f < roll->flaws->len; f++)
    {
      const RcNestFlaw *flaw = &g_array_index (roll->flaws, RcNestFlaw, f);

      if (placement->along < flaw->to && flaw->from < placement->along + placement->length)
        return rc_nest_check_fail (error, "Cut %s lies over a flaw", cut->label);
    }
  return TRUE;
}

static gboolean
check_placement (const RcNestProblem *problem, const RcNestAnswer *answer, const RcNestPlacement *placement,
                 GError **error)
{
  const RcNestCut *cut;
  const RcNestUse *use;

  if (placement->cut >= problem->cuts->len)
    return rc_nest_check_fail (error, "A placement is of no cut of the problem");
  cut = problem->cuts->pdata[placement->cut];
  if (placement->copy >= cut->quantity)
    return rc_nest_check_fail (error, "Cut %s: copy %u of %u", cut->label, placement->copy + 1, cut->quantity);
  if (placement->width != cut->width || placement->length != cut->length)
    return rc_nest_check_fail (error, "Cut %s has not its own size", cut->label);
  if (placement->roll >= answer->rolls->len)
    return rc_nest_check_fail (error, "Cut %s lies on no roll", cut->label);
  use = answer->rolls->pdata[placement->roll];
  if (placement->across < 0 || placement->along < 0
      || placement->across + placement->width > rc_nest_check_get_width (problem, use)
      || placement->along + placement->length > use->length)
    return rc_nest_check_fail (error, "Cut %s leaves roll %u", cut->label, placement->roll);
  if (!check_sound (rc_nest_check_get_roll (problem, use), use, cut, placement, error))
    return FALSE;
  if (cut->pinned_roll > 0 && use->source + 1 != cut->pinned_roll)
    return rc_nest_check_fail (error, "Cut %s is not on the roll it is pinned to", cut->label);
  if ((cut->is_along_pinned && placement->along != cut->along)
      || (cut->is_across_pinned && placement->across != cut->across))
    return rc_nest_check_fail (error, "Cut %s is not at the place it is pinned to", cut->label);
  if (cut->repeat > 0 && cut->match == NULL && (placement->along - cut->phase) % cut->repeat != 0)
    return rc_nest_check_fail (error, "Cut %s is off its pattern along the roll", cut->label);
  if (cut->across_repeat > 0 && cut->across_match == NULL
      && (placement->across - cut->across_phase) % cut->across_repeat != 0)
    return rc_nest_check_fail (error, "Cut %s is off its pattern across the roll", cut->label);
  return TRUE;
}

static gboolean
check_each_once (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error)
{
  g_autofree guint  *first = g_new (guint, problem->cuts->len + 1);
  g_autofree guint8 *seen = NULL;

  first[0] = 0;
  for (guint c = 0; c < problem->cuts->len; c++)
    first[c + 1] = first[c] + ((RcNestCut *)problem->cuts->pdata[c])->quantity;
  seen = g_new0 (guint8, first[problem->cuts->len] + 1);
  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, p);

      if (!check_placement (problem, answer, placement, error))
        return FALSE;
      if (seen[first[placement->cut] + placement->copy]++)
        return rc_nest_check_fail (error, "Cut %s is placed twice", rc_nest_check_get_label (problem, placement->cut));
    }
  if (answer->placements->len != first[problem->cuts->len])
    return rc_nest_check_fail (error, "%u cuts are placed, %u are asked", answer->placements->len,
                               first[problem->cuts->len]);
  return TRUE;
}

static gboolean
check_lots (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error)
{
  g_autoptr (GHashTable) lots = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint p = 0; p < answer->placements->len && problem->rolls->len > 0; p++)
    {
      const RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, p);
      const RcNestCut       *cut = problem->cuts->pdata[placement->cut];
      const RcNestUse       *use = answer->rolls->pdata[placement->roll];
      const RcNestRoll      *roll = problem->rolls->pdata[use->source];
      gpointer               known = NULL;

      if (cut->group == NULL)
        continue;
      if (!g_hash_table_lookup_extended (lots, cut->group, NULL, &known))
        g_hash_table_insert (lots, cut->group, roll->lot);
      else if (g_strcmp0 (known, roll->lot) != 0)
        return rc_nest_check_fail (error, "The cuts of %s come from two dye lots", cut->group);
    }
  return TRUE;
}

/* Two cuts of one match show one pattern: every cut is compared with the one placed before it. */
static gboolean
check_matches (const RcNestProblem *problem, const RcNestAnswer *answer, gboolean along, GError **error)
{
  g_autoptr (GHashTable) placed = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *here = &g_array_index (answer->placements, RcNestPlacement, p), *before;
      const RcNestCut       *cut = problem->cuts->pdata[here->cut], *other;
      char                  *match = along ? cut->match : cut->across_match;
      RcLength               repeat = along ? cut->repeat : cut->across_repeat, shift;

      if (match == NULL || repeat == 0)
        continue;
      before = g_hash_table_lookup (placed, match);
      g_hash_table_insert (placed, match, (gpointer)here);
      if (before == NULL)
        continue;
      other = problem->cuts->pdata[before->cut];
      shift = along ? (here->along - cut->phase) - (before->along - other->phase)
                    : (here->across - cut->across_phase) - (before->across - other->across_phase);
      if (repeat != (along ? other->repeat : other->across_repeat) || shift % repeat != 0)
        return rc_nest_check_fail (error, "Cuts %s and %s do not show the pattern of %s at one height", cut->label,
                                   other->label, match);
    }
  return TRUE;
}

gboolean
rc_nest_check (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error)
{
  RcLength used = 0;

  if (answer->status == RC_NEST_INFEASIBLE)
    {
      if (answer->reason == NULL || answer->placements->len > 0)
        return rc_nest_check_fail (error, "An answer that is infeasible must give its reason and place nothing");
      return TRUE;
    }
  if (!check_rolls (problem, answer, error) || !check_each_once (problem, answer, error)
      || !check_lots (problem, answer, error))
    return FALSE;
  if (!check_matches (problem, answer, TRUE, error) || !check_matches (problem, answer, FALSE, error)
      || !rc_nest_check_lay (problem, answer, error))
    return FALSE;
  for (guint r = 0; r < answer->rolls->len; r++)
    used += ((RcNestUse *)answer->rolls->pdata[r])->used;
  if (used != answer->used_length)
    return rc_nest_check_fail (error, "The used length is not the sum over the rolls");
  if (answer->lower_bound > answer->used_length)
    return rc_nest_check_fail (error, "The lower bound is above the used length");
  if (answer->status == RC_NEST_OPTIMAL && answer->lower_bound != answer->used_length)
    return rc_nest_check_fail (error, "The answer is called best, but its bound does not prove it");
  return TRUE;
}
