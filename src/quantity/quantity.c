#include "quantity.h"

#include "take-off.h"

void
rc_quantity_line_free (RcQuantityLine *line)
{
  if (line == NULL)
    return;
  g_free (line->item);
  g_free (line->name);
  g_free (line->because);
  g_free (line);
}

RcQuantityLine *
rc_quantity_line_copy (const RcQuantityLine *line)
{
  RcQuantityLine *copy = g_memdup2 (line, sizeof *line);

  copy->item = g_strdup (line->item);
  copy->name = g_strdup (line->name);
  copy->because = g_strdup (line->because);
  return copy;
}

GPtrArray *
rc_quantity_compute (const RcPlan *plan, const GPtrArray *catalogue, GError **error)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quantity_line_free);
  RcTakeOff take_off = { plan, catalogue, lines };

  g_return_val_if_fail (plan != NULL, NULL);

  if (!rc_take_off_add_carpet (&take_off, error) || !rc_take_off_add_cushion (&take_off, error)
      || !rc_take_off_add_strip (&take_off, error) || !rc_take_off_add_tape (&take_off, error)
      || !rc_take_off_add_sealer (&take_off, error) || !rc_take_off_add_adhesive (&take_off, error)
      || !rc_take_off_add_transitions (&take_off, error) || !rc_take_off_add_laying (&take_off, error)
      || !rc_take_off_add_seaming (&take_off, error) || !rc_take_off_add_other_labour (&take_off, error))
    return NULL;
  return g_steal_pointer (&lines);
}
