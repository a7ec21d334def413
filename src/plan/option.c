#include "option.h"

#include <string.h>

#include "cutting.h"

RcPiece *
rc_piece_new (RcPieceKind kind)
{
  RcPiece *piece = g_new0 (RcPiece, 1);
  piece->kind = kind;
  piece->outline = rc_region_new ();
  return piece;
}

RcPiece *
rc_piece_copy (const RcPiece *piece)
{
  RcPiece *copy = g_new (RcPiece, 1);
  *copy = *piece;
  copy->area = g_strdup (piece->area);
  copy->room = g_strdup (piece->room);
  copy->goods = g_strdup (piece->goods);
  copy->roll = g_strdup (piece->roll);
  copy->outline = rc_region_copy (piece->outline);
  return copy;
}

void
rc_piece_free (RcPiece *piece)
{
  if (piece == NULL)
    return;
  g_free (piece->area);
  g_free (piece->room);
  g_free (piece->goods);
  g_free (piece->roll);
  g_clear_pointer (&piece->outline, g_ptr_array_unref);
  g_free (piece);
}

RcNestCut
rc_piece_get_cut (const RcPiece *piece)
{
  char *group = (char *)g_intern_string (piece->area != NULL ? piece->area : piece->room);
  return (RcNestCut){
    .width = piece->cut_width,
    .length = piece->cut_length,
    .quantity = 1,
    .repeat = piece->repeat,
    .phase = piece->phase,
    .match = piece->repeat > 0 ? group : NULL,
    .across_repeat = piece->across_repeat,
    .across_phase = piece->across_phase,
    .across_match = piece->kind == RC_PIECE_STAIR && piece->across_repeat > 0 ? group : NULL,
    .group = group,
  };
}

RcSeam *
rc_seam_new (RcSeamKind kind, RcPoint from, RcPoint to)
{
  RcSeam *seam = g_new0 (RcSeam, 1);
  seam->kind = kind;
  seam->from = from;
  seam->to = to;
  seam->length = rc_point_distance (from, to);
  return seam;
}

RcSeam *
rc_seam_copy (const RcSeam *seam)
{
  RcSeam *copy = g_new (RcSeam, 1);
  *copy = *seam;
  copy->area = g_strdup (seam->area);
  copy->room = g_strdup (seam->room);
  return copy;
}

void
rc_seam_free (RcSeam *seam)
{
  if (seam == NULL)
    return;
  g_free (seam->area);
  g_free (seam->room);
  g_free (seam);
}

RcBrokenRule *
rc_broken_rule_copy (const RcBrokenRule *broken)
{
  RcBrokenRule *copy = g_new (RcBrokenRule, 1);
  *copy = *broken;
  copy->args = g_strdupv (broken->args);
  return copy;
}

void
rc_broken_rule_free (RcBrokenRule *broken)
{
  if (broken == NULL)
    return;
  g_strfreev (broken->args);
  g_free (broken);
}

#define MOST_ARGS 4

char *
rc_broken_rule_dup_reason (const RcBrokenRule *broken)
{
  const char *args[MOST_ARGS] = { "", "", "", "" };

  for (guint i = 0; i < MOST_ARGS && broken->args[i] != NULL; i++)
    args[i] = broken->args[i];
  return g_strdup_printf (g_dgettext (GETTEXT_PACKAGE, broken->format), args[0], args[1], args[2], args[3]);
}

RcOption *
rc_option_new (const char *name)
{
  RcOption *option = g_new0 (RcOption, 1);
  option->name = g_strdup (name);
  option->pieces = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_piece_free);
  option->seams = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_seam_free);
  option->broken = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_broken_rule_free);
  return option;
}

static GPtrArray *
copy_all (const GPtrArray *from, gpointer (*copy) (gconstpointer), GDestroyNotify free_func)
{
  GPtrArray *to = g_ptr_array_new_with_free_func (free_func);
  for (guint i = 0; i < from->len; i++)
    g_ptr_array_add (to, copy (g_ptr_array_index (from, i)));
  return to;
}

RcOption *
rc_option_copy (const RcOption *option)
{
  RcOption *copy = g_new (RcOption, 1);
  *copy = *option;
  copy->name = g_strdup (option->name);
  copy->pieces = copy_all (option->pieces, (gpointer (*) (gconstpointer))rc_piece_copy, (GDestroyNotify)rc_piece_free);
  copy->seams = copy_all (option->seams, (gpointer (*) (gconstpointer))rc_seam_copy, (GDestroyNotify)rc_seam_free);
  copy->broken = copy_all (option->broken, (gpointer (*) (gconstpointer))rc_broken_rule_copy,
                           (GDestroyNotify)rc_broken_rule_free);
  return copy;
}

void
rc_option_free (RcOption *option)
{
  if (option == NULL)
    return;
  g_free (option->name);
  g_clear_pointer (&option->pieces, g_ptr_array_unref);
  g_clear_pointer (&option->seams, g_ptr_array_unref);
  g_clear_pointer (&option->broken, g_ptr_array_unref);
  g_free (option);
}

static void
move_point (RcPoint *point, RcLength dx, RcLength dy)
{
  point->x += dx;
  point->y += dy;
}

void
rc_option_move (RcOption *option, RcLength dx, RcLength dy)
{
  for (guint i = 0; i < option->pieces->len; i++)
    {
      RcPiece  *piece = g_ptr_array_index (option->pieces, i);
      RcRegion *outline = rc_region_move (piece->outline, dx, dy);
      g_ptr_array_unref (piece->outline);
      piece->outline = outline;
      piece->cut_box
          = (RcBox){ piece->cut_box.x0 + dx, piece->cut_box.y0 + dy, piece->cut_box.x1 + dx, piece->cut_box.y1 + dy };
      move_point (&piece->cut_start, dx, dy);
    }
  for (guint i = 0; i < option->seams->len; i++)
    {
      RcSeam *seam = g_ptr_array_index (option->seams, i);
      move_point (&seam->from, dx, dy);
      move_point (&seam->to, dx, dy);
    }
  for (guint i = 0; i < option->broken->len; i++)
    move_point (&((RcBrokenRule *)g_ptr_array_index (option->broken, i))->place, dx, dy);
}

gboolean
rc_option_is_same (const RcOption *a, const RcOption *b)
{
  if (a->pieces->len != b->pieces->len || a->cost != b->cost || a->carpet_length != b->carpet_length
      || a->pile_degrees != b->pile_degrees)
    return FALSE;
  for (guint i = 0; i < a->pieces->len; i++)
    {
      const RcPiece *p = g_ptr_array_index (a->pieces, i), *q = g_ptr_array_index (b->pieces, i);
      if (memcmp (&p->cut_box, &q->cut_box, sizeof (RcBox)) != 0)
        return FALSE;
    }
  return TRUE;
}

const char *
rc_piece_kind_get_name (RcPieceKind kind)
{
  static const char *const names[] = { "drop", "fill", "stair" };
  return names[kind];
}

const char *
rc_seam_kind_get_name (RcSeamKind kind)
{
  return kind == RC_SEAM_SIDE ? "side" : "cross";
}

void
rc_option_weigh (RcOption *option, const RcSite *site, const RcNestParams *params)
{
  const RcPlanWeights *weights = &site->weights;
  g_autoptr (RcNestProblem) problem = rc_cutting_new_problem (site->carpet, option->pieces);
  g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, params);
  option->carpet_length = answer->used_length;
  option->safe_length = rc_cutting_compute_safe_length (site->carpet, option->pieces);
  option->carpet_area = rc_area_from_rectangle (site->roll_width, option->carpet_length);
  option->carpet_cost = rc_weigh (rc_goods_compute_bought (site->carpet, option->carpet_length), weights->carpet_per_m);
  option->seam_cost = rc_weigh (option->side_seam, weights->side_seam_per_m)
                      + rc_weigh (option->cross_seam, weights->cross_seam_per_m);
  for (guint i = 0; i < option->seams->len; i++)
    if (((RcSeam *)g_ptr_array_index (option->seams, i))->kind == RC_SEAM_CROSS)
      option->seam_cost += weights->cross_seam_each;
  option->cost = option->carpet_cost + option->seam_cost + option->rule_cost;
}
