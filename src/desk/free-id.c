#include "free-id.h"

#include "id-stem.h"

char *
rc_free_id_new (const char *name, const char *blank, gboolean (*is_taken) (const char *id, gconstpointer data),
                gconstpointer data)
{
  g_autofree char *made = rc_id_stem_new (name);
  const char      *stem = *made != '\0' ? made : blank;

  if (!is_taken (stem, data))
    return g_strdup (stem);
  for (guint n = 2;; n++)
    {
      g_autofree char *id = g_strdup_printf ("%s-%u", stem, n);

      if (!is_taken (id, data))
        return g_steal_pointer (&id);
    }
}
