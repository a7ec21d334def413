#include "job.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const fixing_names[] = { "stretch", "glue" };

static gpointer
copy_string (gconstpointer text, gpointer unused)
{
  return g_strdup (text);
}

RcFloorArea *
rc_floor_area_new (const char *id, const char *name)
{
  RcFloorArea *area = g_new0 (RcFloorArea, 1);

  area->id = g_strdup (id);
  area->name = g_strdup (name);
  area->rooms = g_ptr_array_new_with_free_func (g_free);
  area->pile_degrees = -1;
  area->pins = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_pin_free);
  return area;
}

RcFloorArea *
rc_floor_area_copy (const RcFloorArea *area)
{
  RcFloorArea *copy = g_memdup2 (area, sizeof *area);

  copy->id = g_strdup (area->id);
  copy->name = g_strdup (area->name);
  copy->rooms = g_ptr_array_copy (area->rooms, (GCopyFunc)copy_string, NULL);
  copy->carpet = g_strdup (area->carpet);
  copy->cushion = g_strdup (area->cushion);
  copy->option = g_strdup (area->option);
  copy->pins = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_pin_free);
  for (guint i = 0; i < area->pins->len; i++)
    g_ptr_array_add (copy->pins, rc_pin_copy (g_ptr_array_index (area->pins, i)));
  return copy;
}

void
rc_floor_area_free (RcFloorArea *area)
{
  if (area == NULL)
    return;
  g_free (area->id);
  g_free (area->name);
  g_ptr_array_unref (area->rooms);
  g_free (area->carpet);
  g_free (area->cushion);
  g_free (area->option);
  g_ptr_array_unref (area->pins);
  g_free (area);
}

guint
rc_floor_area_find_room (const RcFloorArea *area, const char *id)
{
  for (guint i = 0; id != NULL && i < area->rooms->len; i++)
    if (g_str_equal (g_ptr_array_index (area->rooms, i), id))
      return i + 1;
  return 0;
}

const char *
rc_fixing_get_name (RcFixing fixing)
{
  g_return_val_if_fail ((guint)fixing < G_N_ELEMENTS (fixing_names), "");
  return fixing_names[fixing];
}

gboolean
rc_fixing_parse (const char *name, RcFixing *fixing, GError **error)
{
  guint index;

  if (!rc_words_parse (fixing_names, G_N_ELEMENTS (fixing_names), _ ("way of fixing"), name, &index, error))
    return FALSE;
  *fixing = index;
  return TRUE;
}
