#include "bin.h"

static int
find_lot (GPtrArray *lots, const char *name)
{
  if (name == NULL)
    return 0;
  for (guint i = 1; i < lots->len; i++)
    if (g_str_equal (lots->pdata[i], name))
      return (int)i;
  g_ptr_array_add (lots, (gpointer)name);
  return (int)lots->len - 1;
}

static int
compare_bins (gconstpointer a, gconstpointer b)
{
  const RcNestBin *p = a, *q = b;

  if (p->cost_per_m != q->cost_per_m)
    return p->cost_per_m < q->cost_per_m ? -1 : 1;
  if ((p->roll_length == 0) != (q->roll_length == 0))
    return p->roll_length == 0 ? 1 : -1;
  if (p->roll_length != q->roll_length)
    return p->roll_length < q->roll_length ? -1 : 1;
  if (p->source != q->source)
    return p->source < q->source ? -1 : 1;
  if (p->copy != q->copy)
    return p->copy < q->copy ? -1 : 1;
  return p->start < q->start ? -1 : p->start > q->start;
}

static int
compare_flaws (gconstpointer a, gconstpointer b)
{
  const RcNestFlaw *p = a, *q = b;
  return p->from < q->from ? -1 : p->from > q->from;
}

/* The sound stretches of one roll. */
static void
add_stretches (GArray *bins, const RcNestRoll *roll, RcNestBin bin)
{
  g_autoptr (GArray) flaws = roll->flaws != NULL ? g_array_copy (roll->flaws) : NULL;
  RcLength end = bin.end;

  if (flaws != NULL)
    g_array_sort (flaws, compare_flaws);
  for (guint f = 0; flaws != NULL && f < flaws->len; f++)
    {
      const RcNestFlaw *flaw = &g_array_index (flaws, RcNestFlaw, f);

      bin.end = MIN (flaw->from, end);
      if (bin.end > bin.start)
        g_array_append_val (bins, bin);
      bin.start = MAX (bin.start, flaw->to);
    }
  bin.end = end;
  if (bin.end > bin.start)
    g_array_append_val (bins, bin);
}

/* The longest roll that is bought, in whole steps; at least one step and the least that is sold. RC_NEST_ENDLESS: any.
 */
static RcLength
compute_most_bought (const RcNestProblem *problem)
{
  RcLength step = MAX (problem->buy_step, 1), least = rc_length_round_up (MAX (problem->buy_least, 1), step);

  return problem->buy_most > 0 ? MAX (problem->buy_most / step * step, least) : RC_NEST_ENDLESS;
}

guint
rc_nest_bins_count_enough (const RcNestProblem *problem)
{
  RcLength most = compute_most_bought (problem), trim = 0;
  guint64  n_cuts = 0, n_alone = 0;
  __int128 sum = 0;

  if (most == RC_NEST_ENDLESS)
    return 1;
  for (guint r = 0; r < problem->rolls->len; r++)
    {
      const RcNestRoll *roll = problem->rolls->pdata[r];

      trim = MAX (trim, roll->length == 0 ? roll->trim + roll->trim_end : 0);
    }
  most = MAX (most - trim, 1);
  for (guint c = 0; c < problem->cuts->len; c++)
    {
      const RcNestCut *cut = problem->cuts->pdata[c];
      RcLength         held = cut->length + cut->repeat;

      n_cuts += cut->quantity;
      if (held > most || cut->is_along_pinned)
        n_alone += cut->quantity;
      else
        sum += (__int128)held * cut->quantity;
    }
  /* Two rolls one after the other hold more than one of them could. */
  return (guint)CLAMP (sum <= most ? n_alone + 1 : n_alone + (guint64)(2 * sum / most) + 1, 1, MAX (n_cuts, 1));
}

static void
add_roll (GArray *bins, const RcNestProblem *problem, guint source, int lot, guint n_bought)
{
  const RcNestRoll *roll = problem->rolls->pdata[source];
  guint             count = roll->length == 0 ? n_bought : roll->count;
  RcNestBin         bin
      = { source,         0,   roll->trim,      roll->length - roll->trim_end, problem->roll_width, roll->length,
          roll->trim_end, lot, roll->cost_per_m };

  if (roll->width > 0)
    bin.width = MIN (bin.width, roll->width);
  if (roll->length == 0)
    {
      bin.end = compute_most_bought (problem);
      bin.end -= bin.end < RC_NEST_ENDLESS ? roll->trim_end : 0;
      bin.cost_per_m = MAX (bin.cost_per_m, 1);
    }
  for (bin.copy = 0; bin.copy < count; bin.copy++)
    add_stretches (bins, roll, bin);
}

RcNestBins *
rc_nest_bins_new_endless (RcLength width)
{
  RcNestBins *self = g_new0 (RcNestBins, 1);

  self->bins = g_new0 (RcNestBin, 1);
  self->bins[0] = (RcNestBin){ 0, 0, 0, RC_NEST_ENDLESS, width, 0, 0, 0, 1 };
  self->n = 1;
  self->n_lots = 1;
  self->lots = g_ptr_array_new ();
  g_ptr_array_add (self->lots, NULL);
  return self;
}

RcNestBins *
rc_nest_bins_new (const RcNestProblem *problem, guint n_bought)
{
  RcNestBins *self;
  GArray     *bins;

  if (problem->buy_most == 0)
    n_bought = 1;
  if (problem->rolls->len == 0 && problem->buy_most == 0)
    return rc_nest_bins_new_endless (problem->roll_width);
  self = g_new0 (RcNestBins, 1);
  bins = g_array_new (FALSE, FALSE, sizeof (RcNestBin));
  self->lots = g_ptr_array_new ();
  g_ptr_array_add (self->lots, NULL);
  for (guint r = 0; r < problem->rolls->len; r++)
    {
      const RcNestRoll *roll = problem->rolls->pdata[r];
      add_roll (bins, problem, r, find_lot (self->lots, roll->lot), n_bought);
    }
  for (guint copy = 0; copy < n_bought && problem->rolls->len == 0; copy++)
    {
      RcNestBin bin = { 0, copy, 0, compute_most_bought (problem), problem->roll_width, 0, 0, 0, 1 };

      g_array_append_val (bins, bin);
    }
  g_array_sort (bins, compare_bins);
  self->n_lots = (int)self->lots->len;
  self->n = bins->len;
  self->bins = (RcNestBin *)(gpointer)g_array_free (bins, FALSE);
  return self;
}

void
rc_nest_bins_free (RcNestBins *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->lots);
  g_free (self->bins);
  g_free (self);
}

RcLength
rc_nest_bin_compute_taken (const RcNestBin *bin, RcLength used, const RcNestProblem *problem)
{
  if (bin->roll_length > 0)
    return used;
  return rc_length_round_up (MAX (used + bin->trim_end, problem->buy_least), problem->buy_step);
}
