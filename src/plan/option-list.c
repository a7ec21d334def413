#include "option-list.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "option.h"

/* In the order of the bits. */
static const char *const merit_names[] = {
  "least-cost", "fewest-seams", "fewest-joins", "least-carpet", "other-direction", "in-between", "with-the-job",
};
G_STATIC_ASSERT (1 << G_N_ELEMENTS (merit_names) == RC_MERIT_END);

/* As a name begins, and as it goes on. */
static const char *const merit_labels[][2] = {
  { N_ ("Least cost"), N_ ("least cost") },
  { N_ ("Fewest seams"), N_ ("fewest seams") },
  { N_ ("Fewest joins"), N_ ("fewest joins") },
  { N_ ("Least carpet"), N_ ("least carpet") },
  { N_ ("Pile the other way"), N_ ("pile the other way") },
  { N_ ("In between"), N_ ("in between") },
  { N_ ("Best beside the rest of the job"), N_ ("best beside the rest of the job") },
};
G_STATIC_ASSERT (G_N_ELEMENTS (merit_labels) == G_N_ELEMENTS (merit_names));

static RcLength
get_seams (const RcOption *option)
{
  return option->side_seam + option->cross_seam;
}

gboolean
rc_option_beats (const RcOption *a, const RcOption *b)
{
  if (a->cost > b->cost || a->carpet_length > b->carpet_length || get_seams (a) > get_seams (b) || a->joins > b->joins)
    return FALSE;
  return a->cost < b->cost || a->carpet_length < b->carpet_length || get_seams (a) < get_seams (b)
         || a->joins < b->joins;
}

static gboolean
is_equal (const RcOption *a, const RcOption *b)
{
  return a->cost == b->cost && a->carpet_length == b->carpet_length && get_seams (a) == get_seams (b)
         && a->joins == b->joins;
}

static void
drop_beaten (GPtrArray *options)
{
  for (guint i = options->len; i-- > 0;)
    {
      gboolean beaten = FALSE;
      for (guint k = 0; k < options->len && !beaten; k++)
        beaten = rc_option_beats (g_ptr_array_index (options, k), g_ptr_array_index (options, i))
                 || (k < i && is_equal (g_ptr_array_index (options, k), g_ptr_array_index (options, i)));
      if (beaten)
        g_ptr_array_remove_index (options, i);
    }
}

/* Cheapest first; a stable order of what is as cheap, for two of a list differ in one of these. */
static int
compare_options (gconstpointer a, gconstpointer b)
{
  const RcOption *x = *(const RcOption *const *)a, *y = *(const RcOption *const *)b;
  if (x->cost != y->cost)
    return x->cost < y->cost ? -1 : 1;
  if (get_seams (x) != get_seams (y))
    return get_seams (x) < get_seams (y) ? -1 : 1;
  return x->carpet_length < y->carpet_length ? -1 : x->carpet_length > y->carpet_length;
}

/* A plan whose broken rules weigh half as much as all of the cheapest plan, and that saves nothing but carpet, is not
 * shown to anybody. Common practice, no source. */
static void
drop_not_worth_it (GPtrArray *options)
{
  const RcOption *cheapest = g_ptr_array_index (options, 0);
  for (guint i = options->len; i-- > 1;)
    {
      const RcOption *option = g_ptr_array_index (options, i);
      if (get_seams (option) >= get_seams (cheapest) && option->joins >= cheapest->joins
          && option->rule_cost - cheapest->rule_cost > cheapest->cost / 2)
        g_ptr_array_remove_index (options, i);
    }
}

static gint64
get_figure (const RcOption *option, RcMerit merit)
{
  switch (merit)
    {
    case RC_MERIT_FEWEST_SEAMS:
      return get_seams (option);
    case RC_MERIT_FEWEST_JOINS:
      return option->joins;
    case RC_MERIT_LEAST_CARPET:
      return option->carpet_length;
    default:
      return option->cost;
    }
}

/* The merit of the cheapest option that is best by it. */
static void
give_merit (GPtrArray *options, RcMerit merit)
{
  RcOption *best = g_ptr_array_index (options, 0);
  for (guint i = 1; i < options->len; i++)
    if (get_figure (g_ptr_array_index (options, i), merit) < get_figure (best, merit))
      best = g_ptr_array_index (options, i);
  best->merits |= merit;
}

static gboolean
has_same_axis (const RcOption *a, const RcOption *b)
{
  double turn = fmod (fabs (a->pile_degrees - b->pile_degrees), 180);
  return turn < 1 || turn > 179;
}

/* Of those that are best by nothing the cheapest along another axis than the cheapest of all stays, or else the
 * cheapest. */
static void
keep_one_more (GPtrArray *options)
{
  RcOption *first = g_ptr_array_index (options, 0), *kept = NULL;
  gboolean  other_axis = FALSE;
  for (guint i = 0; i < options->len; i++)
    {
      RcOption *option = g_ptr_array_index (options, i);
      gboolean  other = !has_same_axis (option, first);
      if (option->merits == 0 && (kept == NULL || (other && !other_axis)))
        {
          kept = option;
          other_axis = other;
        }
    }
  if (kept != NULL)
    kept->merits = other_axis ? RC_MERIT_OTHER_DIRECTION : RC_MERIT_IN_BETWEEN;
  for (guint i = options->len; i-- > 0;)
    if (((RcOption *)g_ptr_array_index (options, i))->merits == 0)
      g_ptr_array_remove_index (options, i);
}

void
rc_option_set_merits (RcOption *option, guint merits)
{
  option->merits = merits;
  for (guint m = 0; m < G_N_ELEMENTS (merit_names); m++)
    if (merits & (1u << m))
      {
        g_free (option->name);
        option->name = g_strdup (merit_names[m]);
        return;
      }
}

void
rc_option_list_settle (GPtrArray *options)
{
  drop_beaten (options);
  g_ptr_array_sort (options, compare_options);
  drop_not_worth_it (options);
  for (guint i = 0; i < options->len; i++)
    ((RcOption *)g_ptr_array_index (options, i))->merits = 0;
  give_merit (options, RC_MERIT_LEAST_COST);
  give_merit (options, RC_MERIT_FEWEST_SEAMS);
  give_merit (options, RC_MERIT_FEWEST_JOINS);
  give_merit (options, RC_MERIT_LEAST_CARPET);
  keep_one_more (options);
  for (guint i = 0; i < options->len; i++)
    rc_option_set_merits (g_ptr_array_index (options, i), ((RcOption *)g_ptr_array_index (options, i))->merits);
}

gboolean
rc_option_list_has_like (const GPtrArray *options, const RcOption *option)
{
  for (guint i = 0; i < options->len; i++)
    if (rc_option_is_same (g_ptr_array_index (options, i), option))
      return TRUE;
  return FALSE;
}

const char *
rc_merit_get_name (RcMerit merit)
{
  g_return_val_if_fail (merit > 0 && merit < RC_MERIT_END, "");
  return merit_names[g_bit_nth_lsf (merit, -1)];
}

char *
rc_option_dup_label (const RcOption *option)
{
  const guint all = RC_MERIT_LEAST_COST | RC_MERIT_FEWEST_SEAMS | RC_MERIT_FEWEST_JOINS | RC_MERIT_LEAST_CARPET;
  guint       said = option->merits;
  GString    *label;
  if ((said & all) == all)
    return g_strdup (_ ("Best in every way"));
  if (said & RC_MERIT_FEWEST_SEAMS)
    said &= ~(guint)RC_MERIT_FEWEST_JOINS; /* goes without saying */
  label = g_string_new (NULL);
  for (guint m = 0; m < G_N_ELEMENTS (merit_labels); m++)
    if (said & (1u << m))
      g_string_append_printf (label, "%s%s", label->len > 0 ? ", " : "", _ (merit_labels[m][label->len > 0]));
  return g_string_free (label, FALSE);
}

gboolean
rc_area_plan_find_option (const RcAreaPlan *area_plan, const char *name, guint *index)
{
  for (guint i = 0; name != NULL && i < area_plan->options->len; i++)
    {
      const RcOption *option = g_ptr_array_index (area_plan->options, i);
      for (guint m = 0; m < G_N_ELEMENTS (merit_names); m++)
        if ((option->merits & (1u << m)) && g_str_equal (merit_names[m], name))
          {
            *index = i;
            return TRUE;
          }
    }
  return FALSE;
}

static gboolean
can_be_bought (const RcOption *option, const RcGoods *carpet)
{
  for (guint i = 0; i < option->pieces->len; i++)
    if (((RcPiece *)g_ptr_array_index (option->pieces, i))->cut_length > rc_goods_compute_longest (carpet))
      return FALSE;
  return TRUE;
}

void
rc_option_list_drop_unbought (GPtrArray *options, const RcGoods *carpet)
{
  guint n = 0;
  for (guint i = 0; i < options->len; i++)
    n += can_be_bought (g_ptr_array_index (options, i), carpet);
  for (guint i = options->len; i-- > 0 && n > 0;)
    if (!can_be_bought (g_ptr_array_index (options, i), carpet))
      g_ptr_array_remove_index (options, i);
}

void
rc_area_plan_choose (RcAreaPlan *area_plan)
{
  if (!rc_area_plan_find_option (area_plan, area_plan->area->option, &area_plan->chosen))
    area_plan->chosen = 0;
}

const RcOption *
rc_area_plan_get_chosen (const RcAreaPlan *area_plan)
{
  return g_ptr_array_index (area_plan->options, area_plan->chosen);
}
