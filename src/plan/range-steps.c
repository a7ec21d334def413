#include "range-steps.h"

#include "rule-least.h"

int
rc_range_get_slope (gboolean reaches_left, gboolean reaches_right)
{
  return (reaches_right ? 1 : 0) - (reaches_left ? 1 : 0);
}

/* The step from the left end of the chord `from` to the right end of the chord `to`. */
static RcRangeStep
make_step (const RcFloorLook *look, const RcLineRange *range, RcLength middle_x0, RcLength middle, const RcChord *from,
           const RcChord *to)
{
  RcRangeStep step = { from->y0, from->y1, 0, 0, 0 };
  RcLength    width = look->site->strip_width;
  if (!look->sloping)
    {
      /* An end may lie in a slab too low for one of its own: what is floor at both ends is floor. */
      RcInterval floor = { MAX (from->low.from, from->high.from), MIN (to->low.to, to->high.to) };
      step.slope = rc_range_get_slope (floor.from == middle_x0, floor.to == middle_x0 + width);
      step.width = floor.to - floor.from - step.slope * (middle - range->from);
      return step;
    }
  /* What of it lies between the strip's lines wherever they are; ends are rounded outwards. */
  RcLength x0 = middle_x0 + (range->to - middle), x1 = middle_x0 + (range->from - middle) + width;
  if (MIN (from->low.to, from->high.to) <= x0 || MAX (to->low.from, to->high.from) >= x1)
    return step; /* somewhere it does not reach so far */
  RcLength low = MIN (to->low.to, x1) - MAX (from->low.from, x0);
  RcLength high = MIN (to->high.to, x1) - MAX (from->high.from, x0);
  step.width = MAX (0, MIN (low, high) - 4);
  return step;
}

/* Chords of a part in one slab. */
typedef struct
{
  const RcChord *left, *right; /* the same where there is only one */
} Slab;

/* Where across the chord lies, wherever the lines are in the range. */
static RcInterval
find_reach (const RcFloorLook *look, const RcLineRange *range, RcLength middle_x0, RcLength middle,
            const RcChord *chord)
{
  RcLength   x0 = middle_x0 + (range->to - middle), x1 = middle_x0 + (range->from - middle) + look->site->strip_width;
  RcInterval reach = { MAX (chord->low.from, chord->high.from), MIN (chord->low.to, chord->high.to) };
  return (RcInterval){ MAX (reach.from, x0) + 2, MIN (reach.to, x1) - 2 };
}

static gboolean
holds (const Slab *a, const Slab *b)
{
  return a->left->low.from <= b->left->low.from && a->right->low.to >= b->right->low.to
         && a->left->high.from <= b->left->high.from && a->right->high.to >= b->right->high.to;
}

/* What a cross seam in the slab costs more than one by itself. At its end beside a narrower slab it is taken for one of
 * that. */
static RcMoney
weigh_join (const RcFloorLook *look, const RcLineRange *range, RcLength middle_x0, RcLength middle, const GArray *slabs,
            guint at)
{
  const Slab *slab = &g_array_index (slabs, Slab, at);
  RcInterval  reach = find_reach (look, range, middle_x0, middle, slab->left);
  gboolean    is_at_end = at == 0 || at + 1 == slabs->len;
  if (slab->left != slab->right)
    return 0;
  for (guint i = at > 0 ? at - 1 : at + 1; i <= at + 1 && i < slabs->len; i += 2)
    {
      const Slab *beside = &g_array_index (slabs, Slab, i);
      if (holds (slab, beside))
        continue;
      if (beside->left != beside->right)
        return 0;
      RcInterval other = find_reach (look, range, middle_x0, middle, beside->left);
      reach = (RcInterval){ MAX (reach.from, other.from), MIN (reach.to, other.to) };
    }
  if (reach.from >= reach.to)
    return 0;
  RcMoney cost = (RcMoney)((__int128)(reach.to - reach.from) * look->site->weights.cross_seam_per_m / RC_TICKS_PER_M);
  /* Between sloping walls the part may reach further elsewhere in the range. */
  if (look->sloping && range->from < range->to && is_at_end)
    return cost;
  return cost
         + rc_rules_weigh_cross_least (look->site, (RcBox){ reach.from, slab->left->y0, reach.to, slab->left->y1 });
}

/* The slab's step; the one before goes on where it is as wide. */
static void
add_slab (const RcFloorLook *look, RcLineRange *range, RcLength middle_x0, RcLength middle, const GArray *slabs,
          guint at, guint first)
{
  const Slab  *slab = &g_array_index (slabs, Slab, at);
  RcRangeStep  made = make_step (look, range, middle_x0, middle, slab->left, slab->right);
  RcRangeStep *last
      = range->steps->len > first ? &g_array_index (range->steps, RcRangeStep, range->steps->len - 1) : NULL;
  made.join = weigh_join (look, range, middle_x0, middle, slabs, at);
  if (last == NULL || last->y1 != made.y0 || last->width != made.width || last->slope != made.slope)
    {
      g_array_append_val (range->steps, made);
      return;
    }
  last->y1 = made.y1;
  last->join = MIN (last->join, made.join);
}

/* The part of the chords that fills the box. (transfer container) GPtrArray of RcChord; empty where none does. */
static GPtrArray *
find_chords (const GArray *chords, const RcBox *box)
{
  GPtrArray *own = g_ptr_array_new ();
  RcLength   near = RC_TICKS_PER_INCH; /* of walls out of square, what reaches one end of a slab only is left out */
  for (guint i = 0; i < chords->len && own->len == 0; i++)
    {
      if (g_array_index (chords, RcChord, i).part != i)
        continue;
      RcBox of = rc_chords_compute_box (chords, i);
      if (ABS (of.x0 - box->x0) > near || ABS (of.x1 - box->x1) > near || ABS (of.y0 - box->y0) > near
          || ABS (of.y1 - box->y1) > near)
        continue;
      for (guint k = 0; k < chords->len; k++)
        if (g_array_index (chords, RcChord, k).part == i)
          g_ptr_array_add (own, &g_array_index (chords, RcChord, k));
    }
  return own;
}

void
rc_range_add_steps (const RcFloorLook *look, RcLineRange *range, RcLength middle_x0, RcLength middle,
                    const GArray *chords, RcRangePart *part)
{
  g_autoptr (GPtrArray) own = find_chords (chords, &part->box);
  g_autoptr (GArray) slabs = g_array_new (FALSE, FALSE, sizeof (Slab));
  part->first_step = range->steps->len;
  for (guint i = 0, n = 0; i < own->len; i += n)
    {
      RcLength y0 = ((RcChord *)g_ptr_array_index (own, i))->y0;
      for (n = 0; i + n < own->len && ((RcChord *)g_ptr_array_index (own, i + n))->y0 == y0;)
        n++;
      Slab slab = { g_ptr_array_index (own, i), g_ptr_array_index (own, i + n - 1) };
      g_array_append_val (slabs, slab);
    }
  for (guint i = 0; i < slabs->len; i++)
    add_slab (look, range, middle_x0, middle, slabs, i, part->first_step);
  if (slabs->len == 0)
    {
      RcRangeStep unknown = { part->box.y0, part->box.y1, 0, 0, 0 };
      g_array_append_val (range->steps, unknown);
    }
  part->n_steps = range->steps->len - part->first_step;
  part->join = G_MAXINT64;
  for (guint i = 0; i < part->n_steps; i++)
    part->join = MIN (part->join, g_array_index (range->steps, RcRangeStep, part->first_step + i).join);
  if (!look->sloping && part->n_steps == 1)
    {
      g_array_set_size (range->steps, part->first_step);
      part->n_steps = 0;
    }
}
