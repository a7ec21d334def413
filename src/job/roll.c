#include "goods.h"

RcRoll *
rc_roll_new (const char *id, const char *goods_id, RcLength length)
{
  RcRoll *roll = g_new0 (RcRoll, 1);

  roll->id = g_strdup (id);
  roll->goods_id = g_strdup (goods_id);
  roll->length = length;
  roll->flaws = g_array_new (FALSE, FALSE, sizeof (RcFlaw));
  return roll;
}

RcRoll *
rc_roll_copy (const RcRoll *roll)
{
  RcRoll *copy = g_memdup2 (roll, sizeof *roll);

  copy->id = g_strdup (roll->id);
  copy->goods_id = g_strdup (roll->goods_id);
  copy->lot = g_strdup (roll->lot);
  copy->place = g_strdup (roll->place);
  copy->flaws = g_array_copy (roll->flaws);
  return copy;
}

void
rc_roll_free (RcRoll *roll)
{
  if (roll == NULL)
    return;
  g_free (roll->id);
  g_free (roll->goods_id);
  g_free (roll->lot);
  g_free (roll->place);
  g_array_unref (roll->flaws);
  g_free (roll);
}

const RcRoll *
rc_rolls_find (const GPtrArray *rolls, const char *id)
{
  g_return_val_if_fail (rolls != NULL, NULL);

  for (guint i = 0; i < rolls->len; i++)
    if (g_strcmp0 (((const RcRoll *)g_ptr_array_index (rolls, i))->id, id) == 0)
      return g_ptr_array_index (rolls, i);
  return NULL;
}
