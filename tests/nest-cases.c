#include "nest-cases.h"

#include <stdlib.h>

static void
spoil (GRand *rand, const RcNestCaseStyle *style, RcNestRoll *roll)
{
  if (g_rand_boolean (rand))
    roll->width = style->width - style->grid * g_rand_int_range (rand, 0, 8);
  if (g_rand_boolean (rand))
    roll->trim = style->grid * g_rand_int_range (rand, 1, 4);
  if (g_rand_boolean (rand))
    roll->trim_end = style->grid * g_rand_int_range (rand, 1, 4);
  for (int f = g_rand_int_range (rand, 0, 3); f > 0; f--)
    {
      RcLength from = style->grid * g_rand_int_range (rand, 0, 40);

      rc_nest_roll_add_flaw (roll, from, from + style->grid * g_rand_int_range (rand, 1, 5));
    }
}

static void
add_rolls (GRand *rand, const RcNestCaseStyle *style, RcNestProblem *problem)
{
  guint n = (guint)g_rand_int_range (rand, 0, (gint32)style->most_rolls + 1);

  for (guint r = 0; r < n; r++)
    {
      char        lot[] = { (char)('a' + g_rand_int_range (rand, 0, 2)), 0 };
      RcNestRoll *roll
          = rc_nest_roll_new ("stock", style->most_groups > 0 ? lot : "one",
                              style->grid * g_rand_int_range (rand, 20, 60), (guint)g_rand_int_range (rand, 1, 3));

      roll->cost_per_m = 10;
      if (style->rough)
        spoil (rand, style, roll);
      g_ptr_array_add (problem->rolls, roll);
    }
  if (n > 0)
    {
      RcNestRoll *bought = rc_nest_roll_new (NULL, NULL, 0, 1);

      bought->cost_per_m = 20;
      if (style->rough)
        bought->trim_end = style->grid * g_rand_int_range (rand, 0, 3);
      g_ptr_array_add (problem->rolls, bought);
    }
  if (n > 0 && g_rand_boolean (rand))
    problem->buy_step = 4 * style->grid;
}

/* A place for a cut of quantity 1, as its pattern has it where that is counted from the roll itself. */
static void
pin (GRand *rand, const RcNestCaseStyle *style, RcNestCut *cut)
{
  RcLength room = style->width - cut->width, along = style->grid * g_rand_int_range (rand, 0, 50);
  RcLength across = style->grid * g_rand_int_range (rand, 0, (gint32)(room / style->grid) + 1);

  if (cut->quantity > 1)
    return;
  cut->is_along_pinned = g_rand_boolean (rand);
  cut->is_across_pinned = g_rand_boolean (rand);
  if (cut->repeat > 0 && cut->match == NULL)
    along = cut->phase % cut->repeat + cut->repeat * (along / cut->repeat);
  if (cut->across_repeat > 0)
    cut->is_across_pinned = FALSE;
  cut->along = along;
  cut->across = across;
}

static void
tie (GRand *rand, const RcNestCaseStyle *style, RcNestProblem *problem)
{
  RcLength across_repeat = style->grid * g_rand_int_range (rand, 2, 9);

  for (guint c = 0; c < problem->cuts->len; c++)
    {
      RcNestCut *cut = problem->cuts->pdata[c];

      if (cut->repeat > 0 && g_rand_boolean (rand))
        cut->match = g_strdup_printf ("match %d", g_rand_int_range (rand, 0, 2));
      if (g_rand_int_range (rand, 0, 3) == 0 && cut->width + across_repeat <= style->width)
        {
          cut->across_repeat = across_repeat;
          cut->across_phase = style->grid * g_rand_int_range (rand, 0, 9);
          cut->across_match = g_rand_boolean (rand) ? g_strdup ("match 0") : NULL;
        }
      if (g_rand_int_range (rand, 0, 4) == 0)
        pin (rand, style, cut);
    }
  problem->least_balance = style->grid * g_rand_int_range (rand, 0, 10);
  problem->least_balance_width = style->grid * g_rand_int_range (rand, 0, 20);
}

RcNestProblem *
rc_nest_case_new (GRand *rand, const RcNestCaseStyle *style)
{
  RcNestProblem *problem = rc_nest_problem_new (style->width);
  guint          n = (guint)g_rand_int_range (rand, (gint32)style->n_least, (gint32)style->n_most + 1);
  gint32         most_w = (gint32)(style->width / style->grid);
  RcLength       repeat = style->grid * g_rand_int_range (rand, 2, 9);
  gboolean       with_repeats = style->repeats && g_rand_int_range (rand, 0, 3) == 0;
  gboolean       mixed = g_rand_boolean (rand);

  problem->stages = style->stages;
  while (n > 0)
    {
      guint      wanted = (guint)g_rand_int_range (rand, 1, 3), quantity = MIN (n, wanted);
      gboolean   full = g_rand_int_range (rand, 0, 5) == 0;
      RcNestCut *cut
          = rc_nest_cut_new ("cut", full ? style->width : style->grid * g_rand_int_range (rand, 1, most_w + 1),
                             style->grid * g_rand_int_range (rand, 1, 20), quantity);

      if (with_repeats)
        {
          cut->repeat = mixed && g_rand_int_range (rand, 0, 4) == 0 ? 0 : repeat;
          cut->phase = cut->repeat > 0 && mixed ? style->grid * g_rand_int_range (rand, 0, 9) : 0;
        }
      if (style->most_groups > 0 && g_rand_boolean (rand))
        cut->group = g_strdup_printf ("room %d", g_rand_int_range (rand, 0, (gint32)style->most_groups));
      g_ptr_array_add (problem->cuts, cut);
      n -= quantity;
    }
  if (style->most_rolls > 0)
    add_rolls (rand, style, problem);
  if (style->rough && problem->rolls->len > 1)
    for (guint c = 0; c < problem->cuts->len; c++)
      if (g_rand_int_range (rand, 0, 6) == 0)
        ((RcNestCut *)problem->cuts->pdata[c])->pinned_roll
            = (guint)g_rand_int_range (rand, 1, (gint32)problem->rolls->len + 1);
  if (style->tied)
    tie (rand, style, problem);
  return problem;
}

RcNestProblem *
rc_nest_case_read (const char *set, const char *name)
{
  g_autofree char *file_name = g_strconcat (name, ".txt", NULL);
  g_autofree char *path = NULL, *text = NULL;
  g_auto (GStrv) words = NULL;
  RcNestProblem *problem;
  guint          k = 0;

  if (g_getenv ("RC_SHARED") == NULL)
    return NULL;
  path = g_build_filename (g_getenv ("RC_SHARED"), "packing", set, file_name, NULL);
  if (!g_file_get_contents (path, &text, NULL, NULL))
    return NULL;
  words = g_strsplit_set (text, " \t\r\n", -1);
  problem = rc_nest_problem_new (0);
  for (guint i = 0; words[i] != NULL; i++)
    {
      RcLength value = 1600 * atol (words[i]);

      if (*words[i] == '\0')
        continue;
      if (k == 1)
        problem->roll_width = value;
      else if (k > 1 && k % 2 == 0)
        g_ptr_array_add (problem->cuts, rc_nest_cut_new ("cut", value, 1, 1));
      else if (k > 1)
        ((RcNestCut *)problem->cuts->pdata[problem->cuts->len - 1])->length = value;
      k++;
    }
  return problem;
}

static RcNestCut *
make_trade_cut (GRand *rand, RcLength width)
{
  RcLength cm = RC_TICKS_PER_CM;

  switch (g_rand_int_range (rand, 0, 8))
    {
    case 0: /* a long fill */
      return rc_nest_cut_new ("fill", cm * g_rand_int_range (rand, 30, 250), cm * g_rand_int_range (rand, 250, 700), 1);
    case 1:
    case 2: /* a piece of a joined fill */
      return rc_nest_cut_new ("piece", cm * g_rand_int_range (rand, 30, 150), cm * g_rand_int_range (rand, 90, 250), 1);
    case 3: /* a stair piece */
      return rc_nest_cut_new ("stair", cm * g_rand_int_range (rand, 70, 110), cm * g_rand_int_range (rand, 45, 60), 1);
    default:
      return rc_nest_cut_new ("drop", width, cm * g_rand_int_range (rand, 200, 900), 1);
    }
}

RcNestProblem *
rc_nest_case_new_trade (GRand *rand, guint n)
{
  RcLength       width = g_rand_boolean (rand) ? 12 * RC_TICKS_PER_FOOT : 4 * RC_TICKS_PER_M;
  RcNestProblem *problem = rc_nest_problem_new (width);
  RcLength       repeat = g_rand_int_range (rand, 0, 3) == 0 ? RC_TICKS_PER_CM * g_rand_int_range (rand, 20, 100) : 0;
  guint          n_rolls = (guint)g_rand_int_range (rand, 1, (gint32)MIN (41, 2 + n / 20));
  RcNestRoll    *bought = rc_nest_roll_new (NULL, NULL, 0, 1);

  for (guint i = 0; i < n; i++)
    {
      RcNestCut *cut = make_trade_cut (rand, width);

      cut->repeat = repeat;
      g_ptr_array_add (problem->cuts, cut);
    }
  for (guint r = 0; r + 1 < n_rolls; r++)
    {
      RcNestRoll *roll = rc_nest_roll_new ("stock", "one", RC_TICKS_PER_CM * g_rand_int_range (rand, 1000, 4000), 1);

      roll->cost_per_m = 10;
      g_ptr_array_add (problem->rolls, roll);
    }
  bought->cost_per_m = 11;
  g_ptr_array_add (problem->rolls, bought);
  return problem;
}

typedef struct
{
  RcLength start, end, across;
} Level;

static int
compare_lengths (gconstpointer a, gconstpointer b)
{
  RcLength p = (*(RcNestCut *const *)a)->length, q = (*(RcNestCut *const *)b)->length;
  return p > q ? -1 : p < q;
}

static RcLength
reach_phase (const RcNestCut *cut, RcLength along)
{
  RcLength over = cut->repeat > 0 ? (along - cut->phase) % cut->repeat : 0;

  return over == 0 ? along : along - over + (over > 0 ? cut->repeat : 0);
}

/* Opens a level on the first roll that has room. */
static gboolean
open_level (const RcNestProblem *problem, const RcNestCut *cut, RcLength *used, GArray *levels)
{
  for (guint r = 0; r < MAX (problem->rolls->len, 1); r++)
    {
      RcLength length = problem->rolls->len > 0 ? ((RcNestRoll *)problem->rolls->pdata[r])->length : 0;
      Level    level = { reach_phase (cut, used[r]), 0, cut->width };

      level.end = level.start + cut->length;
      if (length > 0 && level.end > length)
        continue;
      used[r] = level.end;
      g_array_append_val (levels, level);
      return TRUE;
    }
  return FALSE;
}

RcLength
rc_nest_case_compute_ffdh (const RcNestProblem *problem)
{
  g_autoptr (GPtrArray) cuts = g_ptr_array_new ();
  g_autoptr (GArray) levels = g_array_new (FALSE, FALSE, sizeof (Level));
  g_autofree RcLength *used = g_new0 (RcLength, problem->rolls->len + 1);
  RcLength             sum = 0;

  for (guint c = 0; c < problem->cuts->len; c++)
    for (guint k = 0; k < ((RcNestCut *)problem->cuts->pdata[c])->quantity; k++)
      g_ptr_array_add (cuts, problem->cuts->pdata[c]);
  g_ptr_array_sort (cuts, compare_lengths);
  for (guint c = 0; c < cuts->len; c++)
    {
      const RcNestCut *cut = cuts->pdata[c];
      gboolean         placed = FALSE;

      for (guint l = 0; l < levels->len && !placed; l++)
        {
          Level *level = &g_array_index (levels, Level, l);

          placed = level->across + cut->width <= problem->roll_width
                   && reach_phase (cut, level->start) + cut->length <= level->end;
          if (placed)
            level->across += cut->width;
        }
      if (!placed && !open_level (problem, cut, used, levels))
        return -1;
    }
  for (guint r = 0; r < MAX (problem->rolls->len, 1); r++)
    sum += used[r];
  return sum;
}
