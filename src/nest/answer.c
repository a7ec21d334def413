#include "answer.h"

RcNestAnswer *
rc_nest_answer_new (void)
{
  RcNestAnswer *self = g_new0 (RcNestAnswer, 1);

  self->placements = g_array_new (FALSE, FALSE, sizeof (RcNestPlacement));
  self->rolls = g_ptr_array_new_with_free_func (g_free);
  self->strokes = g_array_new (FALSE, FALSE, sizeof (RcNestStroke));
  self->leftovers = g_array_new (FALSE, FALSE, sizeof (RcNestLeftover));
  return self;
}

static gpointer
copy_use (gconstpointer use, gpointer user_data)
{
  RcNestUse *copy = g_new (RcNestUse, 1);

  *copy = *(const RcNestUse *)use;
  return copy;
}

RcNestAnswer *
rc_nest_answer_copy (const RcNestAnswer *self)
{
  RcNestAnswer *copy = g_new (RcNestAnswer, 1);

  *copy = *self;
  copy->reason = g_strdup (self->reason);
  copy->placements = g_array_copy (self->placements);
  copy->rolls = g_ptr_array_copy (self->rolls, copy_use, NULL);
  g_ptr_array_set_free_func (copy->rolls, g_free);
  copy->strokes = g_array_copy (self->strokes);
  copy->leftovers = g_array_copy (self->leftovers);
  return copy;
}

void
rc_nest_answer_free (RcNestAnswer *self)
{
  if (self == NULL)
    return;
  g_free (self->reason);
  g_array_unref (self->placements);
  g_ptr_array_unref (self->rolls);
  g_array_unref (self->strokes);
  g_array_unref (self->leftovers);
  g_free (self);
}

const char *
rc_nest_status_get_name (RcNestStatus status)
{
  static const char *const names[] = { "optimal", "time-limit", "cancelled", "infeasible" };

  g_return_val_if_fail ((guint)status < G_N_ELEMENTS (names), "");
  return names[status];
}
