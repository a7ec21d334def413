#include "id-stem.h"
#include "job-file-parts.h"

void
rc_id_giver_init (RcIdGiver *giver)
{
  giver->taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  giver->numbers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

void
rc_id_giver_clear (RcIdGiver *giver)
{
  g_clear_pointer (&giver->taken, g_hash_table_unref);
  g_clear_pointer (&giver->numbers, g_hash_table_unref);
}

void
rc_id_giver_take (RcIdGiver *giver, const char *id)
{
  if (id != NULL)
    g_hash_table_add (giver->taken, g_strdup (id));
}

char *
rc_id_giver_give (RcIdGiver *giver, const char *name, const char *kind)
{
  g_autofree char *stem = name != NULL ? rc_id_stem_new (name) : g_strdup ("");
  char            *id;
  guint            n;

  if (*stem == '\0')
    {
      g_free (stem);
      stem = g_strdup (kind);
    }
  id = g_strdup (stem);
  n = GPOINTER_TO_UINT (g_hash_table_lookup (giver->numbers, stem));
  while (g_hash_table_contains (giver->taken, id))
    {
      n = MAX (n, 1) + 1;
      g_free (id);
      id = g_strdup_printf ("%s-%u", stem, n);
    }
  g_hash_table_insert (giver->numbers, g_strdup (stem), GUINT_TO_POINTER (n));
  rc_id_giver_take (giver, id);
  return id;
}
