#include "nest.h"

#include "answer.h"
#include "bound.h"
#include "build.h"
#include "improve.h"
#include "lot.h"
#include "reason.h"
#include "strokes.h"

/* The widths of group and lot are settled here; returns why there is no answer, or NULL. */
static char *
find_first (RcNestTask *task, RcNestSpot *spots)
{
  char *reason = rc_nest_reason_find (task);

  if (reason != NULL)
    return reason;
  if (task->bins->n_lots > 1 && task->items->groups->len > 0)
    reason = rc_nest_lot_choose (task, spots);
  else
    rc_nest_build_best (task, spots);
  for (guint i = 0; i < task->items->n && reason == NULL; i++)
    if (spots[i].bin < 0)
      reason = rc_nest_reason_for_left_over (task, spots);
  return reason;
}

static void
improve (const RcNestTask *task, const RcNestParams *params, RcLength bound, RcNestSpot *spots)
{
  RcNestClock  clock;
  RcNestSearch search = { &clock, params->seed, bound, NULL, NULL };

  rc_nest_clock_start (&clock, params);
  if (rc_nest_can_improve (task))
    rc_nest_improve (task, &search, spots);
}

RcNestAnswer *
rc_nest_solve (const RcNestProblem *problem, const RcNestParams *params)
{
  g_autoptr (RcNestTask) task = rc_nest_task_new (problem);
  RcNestAnswer          *answer = rc_nest_answer_new ();
  g_autofree RcNestSpot *spots = g_new (RcNestSpot, task->items->n + 1);

  answer->reason = find_first (task, spots);
  if (answer->reason != NULL)
    {
      answer->status = RC_NEST_INFEASIBLE;
      return answer;
    }
  answer->lower_bound = rc_nest_bound_quick (task);
  if (params != NULL && params->seconds > 0)
    improve (task, params, answer->lower_bound, spots);
  rc_nest_layout_to_answer (task, spots, answer);
  rc_nest_strokes_fill (problem, answer);
  answer->status = RC_NEST_TIME_LIMIT;
  if (answer->used_length == answer->lower_bound)
    answer->status = RC_NEST_OPTIMAL;
  else if (params != NULL && g_cancellable_is_cancelled (params->cancellable))
    answer->status = RC_NEST_CANCELLED;
  return answer;
}

RcLength
rc_nest_compute_quick_bound (const RcNestProblem *problem)
{
  g_autoptr (RcNestTask) task = rc_nest_task_new_endless (problem);

  return rc_nest_bound_quick (task);
}

RcLength
rc_nest_compute_quick_length (const RcNestProblem *problem)
{
  g_autoptr (RcNestTask) task = rc_nest_task_new_endless (problem);

  return rc_nest_build_quickly (task);
}
