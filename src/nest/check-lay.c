#include "check.h"

typedef enum
{
  PIECE,
  STROKE, /* without width on one axis */
  LEFTOVER
} BoxKind;

typedef struct
{
  RcLength from[2], to[2]; /* [0] across, [1] along */
  BoxKind  kind;
  guint    index; /* of the cut, the stroke, the leftover */
  guint    freed; /* pieces: bits of the sides that are cut free, in the order from[0], to[0], from[1], to[1] */
} Box;

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

/* Where the first part of boxes sorted along an axis ends that a straight cut separates from the rest. */
static guint
find_part (const Box *boxes, guint n, int axis)
{
  RcLength reach = boxes[0].to[axis];

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
  qsort (boxes, n, sizeof *boxes, axis == 0 ? compare_across : compare_along);
  first = find_part (boxes, n, axis);
  if (first == n)
    return !(stuck && stages_left < 0) && is_cuttable (boxes, n, 1 - axis, MAX (stages_left - 1, -1), TRUE);
  for (guint at = 0; at < n; at += first)
    {
      first = find_part (boxes + at, n - at, axis);
      if (!is_cuttable (boxes + at, first, 1 - axis, MAX (stages_left - 1, -1), TRUE))
        return FALSE;
    }
  return TRUE;
}

static gboolean
overlaps (const Box *a, const Box *b)
{
  return a->from[0] < b->to[0] && b->from[0] < a->to[0] && a->from[1] < b->to[1] && b->from[1] < a->to[1];
}

static gboolean
check_stroke (const RcNestProblem *problem, const RcNestAnswer *answer, guint index, GError **error)
{
  const RcNestStroke *stroke = &g_array_index (answer->strokes, RcNestStroke, index);
  const RcNestUse    *use;
  RcLength            most[2];
  int                 axis = stroke->along_roll ? 0 : 1;

  if (stroke->roll >= answer->rolls->len)
    return rc_nest_check_fail (error, "Stroke %u is on no roll", index + 1);
  use = answer->rolls->pdata[stroke->roll];
  most[0] = rc_nest_check_get_width (problem, use);
  most[1] = use->length;
  if (stroke->at <= 0 || stroke->at >= most[axis] || stroke->from < 0 || stroke->to > most[1 - axis]
      || stroke->from >= stroke->to)
    return rc_nest_check_fail (error, "Stroke %u leaves roll %u", index + 1, stroke->roll);
  return TRUE;
}

/* Notes the sides of a piece that lie under a stroke. */
static void
note_freed (Box *piece, const Box *stroke)
{
  for (int axis = 0; axis < 2; axis++)
    if (stroke->from[axis] == stroke->to[axis] && stroke->from[1 - axis] <= piece->from[1 - axis]
        && stroke->to[1 - axis] >= piece->to[1 - axis])
      {
        if (stroke->from[axis] == piece->from[axis])
          piece->freed |= 1u << (2 * axis);
        if (stroke->from[axis] == piece->to[axis])
          piece->freed |= 2u << (2 * axis);
      }
}

/* Two boxes of one roll that touch or overlap along it, the first one's kind not after the other's. */
static gboolean
check_pair (const RcNestProblem *problem, guint roll, Box *a, const Box *b, GError **error)
{
  if (a->kind != PIECE && b->kind != a->kind)
    return TRUE;
  if (a->kind == STROKE)
    return TRUE;
  if (!overlaps (a, b))
    {
      if (b->kind == STROKE)
        note_freed (a, b);
      return TRUE;
    }
  if (a->kind == LEFTOVER)
    return rc_nest_check_fail (error, "Leftovers %u and %u overlap", a->index, b->index);
  if (b->kind == PIECE)
    return rc_nest_check_fail (error, "Cuts %s and %s overlap on roll %u", rc_nest_check_get_label (problem, a->index),
                               rc_nest_check_get_label (problem, b->index), roll);
  if (b->kind == STROKE)
    return rc_nest_check_fail (error, "Stroke %u goes through cut %s", b->index + 1,
                               rc_nest_check_get_label (problem, a->index));
  return rc_nest_check_fail (error, "Leftover %u is cut into by cut %s", b->index,
                             rc_nest_check_get_label (problem, a->index));
}

/* Goes along a roll once and compares each box with those that have not ended before it begins. */
static gboolean
sweep (const RcNestProblem *problem, guint roll, Box *boxes, guint n, GError **error)
{
  g_autofree Box **open = g_new (Box *, n + 1);
  guint            n_open = 0;

  qsort (boxes, n, sizeof *boxes, compare_along);
  for (guint i = 0; i < n; i++)
    {
      guint kept = 0;

      for (guint k = 0; k < n_open; k++)
        {
          gboolean ordered = open[k]->kind <= boxes[i].kind;

          if (open[k]->to[1] < boxes[i].from[1])
            continue;
          if (!check_pair (problem, roll, ordered ? open[k] : &boxes[i], ordered ? &boxes[i] : open[k], error))
            return FALSE;
          open[kept++] = open[k];
        }
      n_open = kept;
      open[n_open++] = &boxes[i];
    }
  return TRUE;
}

/* Every edge of a piece is the roll's own or under one stroke. */
static gboolean
check_freed (const RcNestProblem *problem, const RcNestUse *use, const Box *piece, GError **error)
{
  RcLength most[2] = { rc_nest_check_get_width (problem, use), use->length };

  for (int side = 0; side < 4; side++)
    {
      RcLength at = side % 2 == 0 ? piece->from[side / 2] : piece->to[side / 2];

      if (at != 0 && at != most[side / 2] && (piece->freed >> side & 1) == 0)
        return rc_nest_check_fail (error, "Cut %s is not cut free by any stroke",
                                   rc_nest_check_get_label (problem, piece->index));
    }
  return TRUE;
}

/* `boxes` are all that lies on the roll. */
static gboolean
check_roll (const RcNestProblem *problem, const RcNestAnswer *answer, guint roll, GArray *boxes, GError **error)
{
  const RcNestUse *use = answer->rolls->pdata[roll];
  Box             *all = (Box *)(gpointer)boxes->data;
  RcLength         end = 0;
  guint            n = 0;

  if (!sweep (problem, roll, all, boxes->len, error))
    return FALSE;
  for (guint i = 0; i < boxes->len; i++)
    if (all[i].kind == PIECE)
      {
        if (!check_freed (problem, use, &all[i], error))
          return FALSE;
        end = MAX (end, all[i].to[1]);
        all[n++] = all[i];
      }
  if (n == 0)
    return rc_nest_check_fail (error, "Roll %u is used for nothing", roll);
  if (end != use->used)
    return rc_nest_check_fail (error, "The used length of roll %u is not where its last cut ends", roll);
  if (!is_cuttable (all, n, 1, problem->stages > 0 ? problem->stages : -1, FALSE))
    return rc_nest_check_fail (error, "Roll %u cannot be cut edge to edge in the stages allowed", roll);
  return TRUE;
}

/* A leftover is on its roll, of use and sound. */
static gboolean
check_leftover (const RcNestProblem *problem, const RcNestAnswer *answer, guint index, GError **error)
{
  const RcNestLeftover *rest = &g_array_index (answer->leftovers, RcNestLeftover, index);
  RcLength              to[2] = { rest->across + rest->width, rest->along + rest->length };
  const RcNestUse      *use;
  const RcNestRoll     *roll;

  if (rest->roll >= answer->rolls->len || rest->width <= 0 || rest->length <= 0)
    return rc_nest_check_fail (error, "Leftover %u is nowhere", index);
  use = answer->rolls->pdata[rest->roll];
  roll = rc_nest_check_get_roll (problem, use);
  if (rest->across < 0 || to[0] > rc_nest_check_get_width (problem, use)
      || rest->along < (roll != NULL ? roll->trim : 0)
      || to[1] > use->length - rc_nest_check_get_trim_end (problem, use))
    return rc_nest_check_fail (error, "Leftover %u leaves roll %u", index, rest->roll);
  if (rest->length < problem->least_balance || rest->width < problem->least_balance_width)
    return rc_nest_check_fail (error, "Leftover %u is too small to be of use", index);
  for (guint f = 0; roll != NULL && roll->flaws != NULL && f < roll->flaws->len; f++)
    {
      const RcNestFlaw *flaw = &g_array_index (roll->flaws, RcNestFlaw, f);

      if (rest->along < flaw->to && flaw->from < to[1])
        return rc_nest_check_fail (error, "Leftover %u lies over a flaw", index);
    }
  return TRUE;
}

static void
add_box (GPtrArray *rolls, guint roll, Box box)
{
  g_array_append_val ((GArray *)rolls->pdata[roll], box);
}

/* What lies on each roll: GArrays of Box. NULL: a stroke or a leftover is wrong by itself. */
static GPtrArray *
list_boxes (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error)
{
  g_autoptr (GPtrArray) rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);

  for (guint r = 0; r < answer->rolls->len; r++)
    g_ptr_array_add (rolls, g_array_new (FALSE, FALSE, sizeof (Box)));
  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *q = &g_array_index (answer->placements, RcNestPlacement, p);

      add_box (rolls, q->roll,
               (Box){ { q->across, q->along }, { q->across + q->width, q->along + q->length }, PIECE, q->cut, 0 });
    }
  for (guint s = 0; s < answer->strokes->len; s++)
    {
      const RcNestStroke *q = &g_array_index (answer->strokes, RcNestStroke, s);
      int                 axis = q->along_roll ? 0 : 1;
      Box                 box = { { q->at, q->at }, { q->at, q->at }, STROKE, s, 0 };

      if (!check_stroke (problem, answer, s, error))
        return NULL;
      box.from[1 - axis] = q->from;
      box.to[1 - axis] = q->to;
      add_box (rolls, q->roll, box);
    }
  for (guint k = 0; k < answer->leftovers->len; k++)
    {
      const RcNestLeftover *q = &g_array_index (answer->leftovers, RcNestLeftover, k);

      if (!check_leftover (problem, answer, k, error))
        return NULL;
      add_box (rolls, q->roll,
               (Box){ { q->across, q->along }, { q->across + q->width, q->along + q->length }, LEFTOVER, k, 0 });
    }
  return g_steal_pointer (&rolls);
}

gboolean
rc_nest_check_lay (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error)
{
  g_autoptr (GPtrArray) boxes = list_boxes (problem, answer, error);

  if (boxes == NULL)
    return FALSE;
  for (guint r = 0; r < answer->rolls->len; r++)
    if (!check_roll (problem, answer, r, boxes->pdata[r], error))
      return FALSE;
  return TRUE;
}
