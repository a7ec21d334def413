#include "nest.h"

RcNestCut *
rc_nest_cut_new (const char *label, RcLength width, RcLength length, guint quantity)
{
  RcNestCut *cut = g_new0 (RcNestCut, 1);

  cut->label = g_strdup (label);
  cut->width = width;
  cut->length = length;
  cut->quantity = quantity;
  return cut;
}

void
rc_nest_cut_free (RcNestCut *cut)
{
  if (cut == NULL)
    return;
  g_free (cut->label);
  g_free (cut->match);
  g_free (cut->across_match);
  g_free (cut->group);
  g_free (cut);
}

RcNestRoll *
rc_nest_roll_new (const char *name, const char *lot, RcLength length, guint count)
{
  RcNestRoll *roll = g_new0 (RcNestRoll, 1);

  roll->name = g_strdup (name);
  roll->lot = g_strdup (lot);
  roll->length = length;
  roll->count = count;
  return roll;
}

void
rc_nest_roll_free (RcNestRoll *roll)
{
  if (roll == NULL)
    return;
  g_free (roll->name);
  g_free (roll->lot);
  g_clear_pointer (&roll->flaws, g_array_unref);
  g_free (roll);
}

void
rc_nest_roll_add_flaw (RcNestRoll *roll, RcLength from, RcLength to)
{
  RcNestFlaw flaw = { from, to };

  if (roll->flaws == NULL)
    roll->flaws = g_array_new (FALSE, FALSE, sizeof (RcNestFlaw));
  g_array_append_val (roll->flaws, flaw);
}

RcNestProblem *
rc_nest_problem_new (RcLength roll_width)
{
  RcNestProblem *problem = g_new0 (RcNestProblem, 1);

  problem->roll_width = roll_width;
  problem->cuts = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_nest_cut_free);
  problem->rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_nest_roll_free);
  problem->stages = 3;
  return problem;
}

void
rc_nest_problem_free (RcNestProblem *problem)
{
  if (problem == NULL)
    return;
  g_ptr_array_unref (problem->cuts);
  g_ptr_array_unref (problem->rolls);
  g_free (problem);
}
