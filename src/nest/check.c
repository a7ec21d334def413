#include "nest.h"

#include "rowcut-error.h"

/* Shares nothing with the solver but the public header. */

typedef struct
{
  RcLength from[2], to[2]; /* [0] across, [1] along */
  guint    cut;
} Box;

static const char *
get_label (const RcNestProblem *problem, guint cut)
{
  const RcNestCut *c = problem->cuts->pdata[cut];

  return c->label != NULL ? c->label : "?";
}

G_GNUC_PRINTF (2, 3)
static gboolean
fail (GError **error, const char *format, ...)
{
  va_list          arguments;
  g_autofree char *text = NULL;

  va_start (arguments, format);
  text = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error_literal (error, RC_ERROR, RC_ERROR_INFEASIBLE, text);
  return FALSE;
}

static const RcNestRoll *
get_roll (const RcNestProblem *problem, const RcNestUse *use)
{
  return problem->rolls->len > 0 ? problem->rolls->pdata[use->source] : NULL;
}

static RcLength
get_width (const RcNestProblem *problem, const RcNestUse *use)
{
  const RcNestRoll *roll = get_roll (problem, use);

  return roll != NULL && roll->width > 0 && roll->width < problem->roll_width ? roll->width : problem->roll_width;
}

static RcLength
get_trim_end (const RcNestProblem *problem, const RcNestUse *use)
{
  const RcNestRoll *roll = get_roll (problem, use);

  return roll != NULL ? roll->trim_end : 0;
}

/* Not one step less would do; without steps, not a tick less. */
static gboolean
is_least_bought (const RcNestProblem *problem, const RcNestUse *use)
{
  RcLength step = problem->buy_step > 0 ? problem->buy_step : 1, less = use->length - step;

  return use->length % step == 0 && (less < problem->buy_least || less < use->used + get_trim_end (problem, use));
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
        return fail (error, "Roll %u comes from no roll of the problem", r);
      if (problem->rolls->len > 0)
        {
          const RcNestRoll *roll = problem->rolls->pdata[use->source];

          length = roll->length;
          count = length == 0 ? 1 : roll->count;
        }
      if (use->copy >= count)
        return fail (error, "Roll %u is copy %u of %u", r, use->copy + 1, count);
      for (guint s = 0; s < r; s++)
        {
          const RcNestUse *other = answer->rolls->pdata[s];
          if (other->source == use->source && other->copy == use->copy)
            return fail (error, "Rolls %u and %u are the same roll", s, r);
        }
      if (length > 0 ? use->length != length : use->length < use->used + get_trim_end (problem, use))
        return fail (error, "Roll %u has the wrong length", r);
      if (length == 0 && use->length < problem->buy_least)
        return fail (error, "Roll %u is bought shorter than is sold", r);
      if (length == 0 && !is_least_bought (problem, use))
        return fail (error, "Roll %u is bought longer than it must be", r);
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
    return fail (error, "Cut %s lies in the end that is trimmed off", cut->label);
  for (guint f = 0; roll->flaws != NULL && f < roll->flaws->len; f++)
    {
      const RcNestFlaw *flaw = &g_array_index (roll->flaws, RcNestFlaw, f);

      if (placement->along < flaw->to && flaw->from < placement->along + placement->length)
        return fail (error, "Cut %s lies over a flaw", cut->label);
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
    return fail (error, "A placement is of no cut of the problem");
  cut = problem->cuts->pdata[placement->cut];
  if (placement->copy >= cut->quantity)
    return fail (error, "Cut %s: copy %u of %u", cut->label, placement->copy + 1, cut->quantity);
  if (placement->width != cut->width || placement->length != cut->length)
    return fail (error, "Cut %s has not its own size", cut->label);
  if (placement->roll >= answer->rolls->len)
    return fail (error, "Cut %s lies on no roll", cut->label);
  use = answer->rolls->pdata[placement->roll];
  if (placement->across < 0 || placement->along < 0 || placement->across + placement->width > get_width (problem, use)
      || placement->along + placement->length > use->length)
    return fail (error, "Cut %s leaves roll %u", cut->label, placement->roll);
  if (!check_sound (get_roll (problem, use), use, cut, placement, error))
    return FALSE;
  if (cut->pinned_roll > 0 && use->source + 1 != cut->pinned_roll)
    return fail (error, "Cut %s is not on the roll it is pinned to", cut->label);
  if ((cut->is_along_pinned && placement->along != cut->along)
      || (cut->is_across_pinned && placement->across != cut->across))
    return fail (error, "Cut %s is not at the place it is pinned to", cut->label);
  if (cut->repeat > 0 && cut->match == NULL && (placement->along - cut->phase) % cut->repeat != 0)
    return fail (error, "Cut %s is off its pattern along the roll", cut->label);
  if (cut->across_repeat > 0 && cut->across_match == NULL
      && (placement->across - cut->across_phase) % cut->across_repeat != 0)
    return fail (error, "Cut %s is off its pattern across the roll", cut->label);
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
        return fail (error, "Cut %s is placed twice", get_label (problem, placement->cut));
    }
  if (answer->placements->len != first[problem->cuts->len])
    return fail (error, "%u cuts are placed, %u are asked", answer->placements->len, first[problem->cuts->len]);
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
        return fail (error, "The cuts of %s come from two dye lots", cut->group);
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
        return fail (error, "Cuts %s and %s do not show the pattern of %s at one height", cut->label, other->label,
                     match);
    }
  return TRUE;
}

static int
compare_across (gconstpointer a, gconstpointer b)
{
  RcLength p = ((const Box *)a)->from[0], q = ((const Box *)b)->from[0];
  return p < q ? -1 : p > q;
}

static int
compare_along (gconstpointer a, gconstpointer b)
{
  RcLength p = ((const Box *)a)->from[1], q = ((const Box *)b)->from[1];
  return p < q ? -1 : p > q;
}

/* Sorts boxes along an axis and returns where the first part ends that a straight cut separates from the rest. */
static guint
split (Box *boxes, guint n, int axis)
{
  RcLength reach;

  qsort (boxes, n, sizeof *boxes, axis == 0 ? compare_across : compare_along);
  reach = boxes[0].to[axis];
  for (guint i = 1; i < n; i++)
    {
      if (boxes[i].from[axis] >= reach)
        return i;
      reach = MAX (reach, boxes[i].to[axis]);
    }
  return n;
}

/* Whether straight cuts of `stages_left` stages (-1: any number), the first one across `axis`, part all boxes. Boxes
 * that overlap are never parted. */
static gboolean
is_cuttable (Box *boxes, guint n, int axis, int stages_left, gboolean stuck)
{
  guint first;

  if (n <= 1)
    return TRUE;
  if (stages_left == 0)
    return FALSE;
  first = split (boxes, n, axis);
  if (first == n)
    return !(stuck && stages_left < 0) && is_cuttable (boxes, n, 1 - axis, MAX (stages_left - 1, -1), TRUE);
  while (n > 0)
    {
      first = split (boxes, n, axis);
      if (!is_cuttable (boxes, first, 1 - axis, MAX (stages_left - 1, -1), TRUE))
        return FALSE;
      boxes += first;
      n -= first;
    }
  return TRUE;
}

static gboolean
overlaps (const Box *a, const Box *b)
{
  return a->from[0] < b->to[0] && b->from[0] < a->to[0] && a->from[1] < b->to[1] && b->from[1] < a->to[1];
}

static gboolean
check_apart (const RcNestProblem *problem, guint roll, Box *boxes, guint n, GError **error)
{
  qsort (boxes, n, sizeof *boxes, compare_along);
  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; j < n && boxes[j].from[1] < boxes[i].to[1]; j++)
      if (overlaps (&boxes[i], &boxes[j]))
        return fail (error, "Cuts %s and %s overlap on roll %u", get_label (problem, boxes[i].cut),
                     get_label (problem, boxes[j].cut), roll);
  return TRUE;
}

/* No stroke goes through a piece of its roll, and each is on the roll. */
static gboolean
check_strokes (const RcNestProblem *problem, const RcNestAnswer *answer, guint roll, const Box *boxes, guint n,
               GError **error)
{
  const RcNestUse *use = answer->rolls->pdata[roll];

  for (guint s = 0; s < answer->strokes->len; s++)
    {
      const RcNestStroke *stroke = &g_array_index (answer->strokes, RcNestStroke, s);
      int                 axis = stroke->along_roll ? 0 : 1;
      RcLength            most[2] = { get_width (problem, use), use->length };

      if (stroke->roll != roll)
        continue;
      if (stroke->at <= 0 || stroke->at >= most[axis] || stroke->from < 0 || stroke->to > most[1 - axis]
          || stroke->from >= stroke->to)
        return fail (error, "Stroke %u leaves roll %u", s + 1, roll);
      for (guint i = 0; i < n; i++)
        if (boxes[i].from[axis] < stroke->at && stroke->at < boxes[i].to[axis] && boxes[i].from[1 - axis] < stroke->to
            && stroke->from < boxes[i].to[1 - axis])
          return fail (error, "Stroke %u goes through cut %s", s + 1, get_label (problem, boxes[i].cut));
    }
  return TRUE;
}

/* Every edge of every piece is the roll's own or under one stroke. */
static gboolean
check_edges (const RcNestProblem *problem, const RcNestAnswer *answer, guint roll, const Box *boxes, guint n,
             GError **error)
{
  const RcNestUse *use = answer->rolls->pdata[roll];
  RcLength         most[2] = { get_width (problem, use), use->length };

  for (guint i = 0; i < n; i++)
    for (int side = 0; side < 4; side++)
      {
        int      axis = side / 2;
        RcLength at = side % 2 == 0 ? boxes[i].from[axis] : boxes[i].to[axis];
        gboolean free = at == 0 || at == most[axis];

        for (guint s = 0; s < answer->strokes->len && !free; s++)
          {
            const RcNestStroke *stroke = &g_array_index (answer->strokes, RcNestStroke, s);

            free = stroke->roll == roll && stroke->along_roll == (axis == 0) && stroke->at == at
                   && stroke->from <= boxes[i].from[1 - axis] && stroke->to >= boxes[i].to[1 - axis];
          }
        if (!free)
          return fail (error, "Cut %s is not cut free by any stroke", get_label (problem, boxes[i].cut));
      }
  return TRUE;
}

static gboolean
check_roll (const RcNestProblem *problem, const RcNestAnswer *answer, guint roll, GError **error)
{
  const RcNestUse *use = answer->rolls->pdata[roll];
  g_autofree Box  *boxes = g_new (Box, answer->placements->len + 1);
  RcLength         end = 0;
  guint            n = 0;

  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *q = &g_array_index (answer->placements, RcNestPlacement, p);

      if (q->roll != roll)
        continue;
      boxes[n++] = (Box){ { q->across, q->along }, { q->across + q->width, q->along + q->length }, q->cut };
      end = MAX (end, q->along + q->length);
    }
  if (n == 0)
    return fail (error, "Roll %u is used for nothing", roll);
  if (end != use->used)
    return fail (error, "The used length of roll %u is not where its last cut ends", roll);
  if (!check_apart (problem, roll, boxes, n, error) || !check_strokes (problem, answer, roll, boxes, n, error)
      || !check_edges (problem, answer, roll, boxes, n, error))
    return FALSE;
  if (!is_cuttable (boxes, n, 1, problem->stages > 0 ? problem->stages : -1, FALSE))
    return fail (error, "Roll %u cannot be cut edge to edge in the stages allowed", roll);
  return TRUE;
}

/* Each leftover is on its roll, of use, sound, and free of cuts and of other leftovers. */
static gboolean
check_leftover (const RcNestProblem *problem, const RcNestAnswer *answer, guint index, GError **error)
{
  const RcNestLeftover *rest = &g_array_index (answer->leftovers, RcNestLeftover, index);
  Box box = { { rest->across, rest->along }, { rest->across + rest->width, rest->along + rest->length }, 0 };
  const RcNestUse  *use;
  const RcNestRoll *roll;

  if (rest->roll >= answer->rolls->len || rest->width <= 0 || rest->length <= 0)
    return fail (error, "Leftover %u is nowhere", index);
  use = answer->rolls->pdata[rest->roll];
  roll = get_roll (problem, use);
  if (rest->across < 0 || box.to[0] > get_width (problem, use) || rest->along < (roll != NULL ? roll->trim : 0)
      || box.to[1] > use->length - get_trim_end (problem, use))
    return fail (error, "Leftover %u leaves roll %u", index, rest->roll);
  if (rest->length < problem->least_balance || rest->width < problem->least_balance_width)
    return fail (error, "Leftover %u is too small to be of use", index);
  for (guint f = 0; roll != NULL && roll->flaws != NULL && f < roll->flaws->len; f++)
    {
      const RcNestFlaw *flaw = &g_array_index (roll->flaws, RcNestFlaw, f);

      if (rest->along < flaw->to && flaw->from < box.to[1])
        return fail (error, "Leftover %u lies over a flaw", index);
    }
  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *q = &g_array_index (answer->placements, RcNestPlacement, p);
      Box piece = { { q->across, q->along }, { q->across + q->width, q->along + q->length }, q->cut };

      if (q->roll == rest->roll && overlaps (&box, &piece))
        return fail (error, "Leftover %u is cut into by cut %s", index, get_label (problem, q->cut));
    }
  for (guint k = 0; k < index; k++)
    {
      const RcNestLeftover *q = &g_array_index (answer->leftovers, RcNestLeftover, k);
      Box                   other = { { q->across, q->along }, { q->across + q->width, q->along + q->length }, 0 };

      if (q->roll == rest->roll && overlaps (&box, &other))
        return fail (error, "Leftovers %u and %u overlap", k, index);
    }
  return TRUE;
}

static gboolean
check_leftovers (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error)
{
  for (guint k = 0; k < answer->leftovers->len; k++)
    if (!check_leftover (problem, answer, k, error))
      return FALSE;
  return TRUE;
}

gboolean
rc_nest_check (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error)
{
  RcLength used = 0;

  if (answer->status == RC_NEST_INFEASIBLE)
    {
      if (answer->reason == NULL || answer->placements->len > 0)
        return fail (error, "An answer that is infeasible must give its reason and place nothing");
      return TRUE;
    }
  if (!check_rolls (problem, answer, error) || !check_each_once (problem, answer, error)
      || !check_lots (problem, answer, error))
    return FALSE;
  if (!check_matches (problem, answer, TRUE, error) || !check_matches (problem, answer, FALSE, error)
      || !check_leftovers (problem, answer, error))
    return FALSE;
  for (guint r = 0; r < answer->rolls->len; r++)
    {
      if (!check_roll (problem, answer, r, error))
        return FALSE;
      used += ((RcNestUse *)answer->rolls->pdata[r])->used;
    }
  if (used != answer->used_length)
    return fail (error, "The used length is not the sum over the rolls");
  if (answer->lower_bound > answer->used_length)
    return fail (error, "The lower bound is above the used length");
  if (answer->status == RC_NEST_OPTIMAL && answer->lower_bound != answer->used_length)
    return fail (error, "The answer is called best, but its bound does not prove it");
  return TRUE;
}
