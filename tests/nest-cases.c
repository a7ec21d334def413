#include "nest-cases.h"

#include <stdlib.h>

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
      g_ptr_array_add (problem->rolls, roll);
    }
  if (n > 0)
    {
      RcNestRoll *bought = rc_nest_roll_new (NULL, NULL, 0, 1);

      bought->cost_per_m = 20;
      g_ptr_array_add (problem->rolls, bought);
    }
  if (n > 0 && g_rand_boolean (rand))
    problem->buy_step = 4 * style->grid;
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
