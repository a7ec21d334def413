#include "known-bound.h"

/* Those laid in the carpet. (transfer container) GPtrArray of RcAreaPlan. */
static GPtrArray *
list_areas (const RcPlan *plan, const RcGoods *carpet)
{
  GPtrArray *areas = g_ptr_array_new ();
  for (guint i = 0; i < plan->areas->len; i++)
    {
      RcAreaPlan *area_plan = g_ptr_array_index (plan->areas, i);
      if (g_strcmp0 (area_plan->area->carpet, carpet->id) == 0)
        g_ptr_array_add (areas, area_plan);
    }
  return areas;
}

/* An area's key tells the carpet too; where there is none nothing is known. */
static gboolean
has_same_areas (const RcPlan *a, const RcPlan *b, const RcGoods *carpet)
{
  g_autoptr (GPtrArray) of_a = list_areas (a, carpet), of_b = list_areas (b, carpet);
  gboolean same = of_a->len > 0 && of_a->len == of_b->len;
  for (guint i = 0; i < of_a->len && same; i++)
    same
        = g_strcmp0 (((RcAreaPlan *)g_ptr_array_index (of_a, i))->key, ((RcAreaPlan *)g_ptr_array_index (of_b, i))->key)
          == 0;
  return same;
}

/* A line for each, in order. (transfer full) */
static char *
tell_stairs (const RcPlan *plan, const RcGoods *carpet)
{
  GString *told = g_string_new (NULL);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (plan->pieces, i);
      if (piece->kind == RC_PIECE_STAIR && g_strcmp0 (piece->goods, carpet->id) == 0)
        g_string_append_printf (told, "%s %" G_GINT64_FORMAT " %" G_GINT64_FORMAT "\n", piece->room, piece->cut_width,
                                piece->cut_length);
    }
  return g_string_free (told, FALSE);
}

static gboolean
has_same_stairs (const RcPlan *a, const RcPlan *b, const RcGoods *carpet)
{
  g_autofree char *of_a = tell_stairs (a, carpet), *of_b = tell_stairs (b, carpet);
  return strcmp (of_a, of_b) == 0;
}

static gboolean
has_same_rolls (const GPtrArray *a, const GPtrArray *b)
{
  gboolean same = a->len == b->len;
  for (guint i = 0; i < a->len && same; i++)
    {
      const RcNestRoll *p = g_ptr_array_index (a, i), *q = g_ptr_array_index (b, i);
      same = p->length == q->length && p->width == q->width && p->count == q->count && p->cost_per_m == q->cost_per_m
             && g_strcmp0 (p->lot, q->lot) == 0;
    }
  return same;
}

/* Nothing else has been taken of an area by the estimator. */
static gboolean
has_same_options (const RcPlan *a, const RcPlan *b, const RcGoods *carpet)
{
  g_autoptr (GPtrArray) of_a = list_areas (a, carpet), of_b = list_areas (b, carpet);
  gboolean same = of_a->len == of_b->len;
  for (guint i = 0; i < of_a->len && same; i++)
    same = g_strcmp0 (((RcAreaPlan *)g_ptr_array_index (of_a, i))->area->option,
                      ((RcAreaPlan *)g_ptr_array_index (of_b, i))->area->option)
           == 0;
  return same;
}

gboolean
rc_known_choice_stands (const RcPlan *plan, const RcGoods *carpet, const GPtrArray *rolls, const RcPlan *previous)
{
  for (guint i = 0; previous != NULL && i < previous->cuttings->len; i++)
    {
      const RcCutting *before = g_ptr_array_index (previous->cuttings, i);
      if (g_strcmp0 (before->goods->id, carpet->id) == 0)
        return has_same_areas (plan, previous, carpet) && has_same_options (plan, previous, carpet)
               && has_same_rolls (before->problem->rolls, rolls);
    }
  return FALSE;
}

RcMoney
rc_known_bound_find (const RcPlan *plan, const RcCutting *cutting, const RcPlan *previous)
{
  for (guint i = 0; previous != NULL && i < previous->cuttings->len; i++)
    {
      const RcCutting *before = g_ptr_array_index (previous->cuttings, i);
      if (g_strcmp0 (before->goods->id, cutting->goods->id) == 0 && has_same_areas (plan, previous, cutting->goods)
          && has_same_stairs (plan, previous, cutting->goods)
          && has_same_rolls (before->problem->rolls, cutting->problem->rolls))
        return before->cost_lower_bound;
    }
  return 0;
}
