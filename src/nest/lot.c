#include "lot.h"

#include "build.h"
#include "reason.h"

enum
{
  MOST_COMBINATIONS = 64
};

typedef struct
{
  RcNestTask *task;
  GArray    **choices; /* per group, of int: lots it can come from, cheapest first */
  RcNestSpot *spots, *tried;
  RcNestScore best;
  int        *best_lots;
} Search;

static gboolean
lot_takes_group (const RcNestTask *task, int lot, guint group)
{
  for (guint i = 0; i < task->items->n; i++)
    {
      const RcNestItem *item = &task->items->items[i];
      gboolean          fits = item->group != (int)group;

      for (guint b = 0; b < task->bins->n && !fits; b++)
        {
          const RcNestBin *bin = &task->bins->bins[b];
          fits = bin->lot == lot && rc_nest_item_may_lie (item, bin)
                 && rc_nest_item_place (item, bin->start) + item->h <= bin->end;
        }
      if (!fits)
        return FALSE;
    }
  return TRUE;
}

static GArray *
list_choices (const RcNestTask *task, guint group)
{
  GArray *choices = g_array_new (FALSE, FALSE, sizeof (int));

  for (guint b = 0; b < task->bins->n; b++)
    {
      int      lot = task->bins->bins[b].lot;
      gboolean known = FALSE;

      for (guint k = 0; k < choices->len; k++)
        known |= g_array_index (choices, int, k) == lot;
      if (!known && rc_nest_reason_find_shortage (task, lot, group) <= 0 && lot_takes_group (task, lot, group))
        g_array_append_val (choices, lot);
    }
  return choices;
}

static void
try_combination (Search *search)
{
  guint       n_groups = search->task->items->groups->len;
  RcNestScore score;

  rc_nest_build_best (search->task, search->tried);
  score = rc_nest_score (search->task, search->tried);
  if (rc_nest_score_compare (&score, &search->best) >= 0)
    return;
  search->best = score;
  memcpy (search->spots, search->tried, sizeof (RcNestSpot) * search->task->items->n);
  memcpy (search->best_lots, search->task->lot_of_group, sizeof (int) * n_groups);
}

static void
try_all (Search *search, guint group)
{
  if (group == search->task->items->groups->len)
    {
      try_combination (search);
      return;
    }
  for (guint k = 0; k < search->choices[group]->len; k++)
    {
      search->task->lot_of_group[group] = g_array_index (search->choices[group], int, k);
      try_all (search, group + 1);
    }
}

/* From the cheapest lots, one group after the other goes to its best lot while the others stay. */
static void
descend (Search *search)
{
  guint n_groups = search->task->items->groups->len;

  for (guint g = 0; g < n_groups; g++)
    search->task->lot_of_group[g] = g_array_index (search->choices[g], int, 0);
  try_combination (search);
  for (guint g = 0; g < n_groups; g++)
    {
      for (guint k = 0; k < search->choices[g]->len; k++)
        {
          search->task->lot_of_group[g] = g_array_index (search->choices[g], int, k);
          try_combination (search);
        }
      memcpy (search->task->lot_of_group, search->best_lots, sizeof (int) * n_groups);
    }
}

char *
rc_nest_lot_choose (RcNestTask *task, RcNestSpot *spots)
{
  guint                  n_groups = task->items->groups->len;
  guint64                combinations = 1;
  g_autofree GArray    **choices = g_new0 (GArray *, n_groups + 1);
  g_autofree int        *best_lots = g_new0 (int, n_groups + 1);
  g_autofree RcNestSpot *tried = g_new (RcNestSpot, task->items->n + 1);
  Search                 search = { task, choices, spots, tried, { .unplaced = G_MAXUINT }, best_lots };
  char                  *reason = NULL;

  for (guint g = 0; g < n_groups; g++)
    {
      choices[g] = list_choices (task, g);
      combinations = MIN (combinations * choices[g]->len, MOST_COMBINATIONS + 1);
      if (choices[g]->len == 0 && reason == NULL)
        reason = rc_nest_reason_for_group (task, g);
    }
  if (reason == NULL)
    {
      if (combinations <= MOST_COMBINATIONS)
        try_all (&search, 0);
      else
        descend (&search);
      memcpy (task->lot_of_group, best_lots, sizeof (int) * n_groups);
    }
  for (guint g = 0; g < n_groups; g++)
    g_array_unref (choices[g]);
  return reason;
}
