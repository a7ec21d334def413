#include <glib/gi18n-lib.h>

#include "file-store.h"

char *
rc_file_store_add (RcStore *store, GBytes *bytes, GError **error)
{
  g_autofree char *digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, bytes);
  gsize            size;
  gconstpointer    data = g_bytes_get_data (bytes, &size);

  if (size > RC_STORE_MAX_FILE_BYTES)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
                   _ ("The file has more than the %d MiB that the store keeps; link to it instead."),
                   RC_STORE_MAX_FILE_BYTES >> 20);
      return NULL;
    }
  if (!rc_query_run (store, "INSERT INTO files (digest, bytes) VALUES (?, ?) ON CONFLICT (digest) DO NOTHING",
                     RC_VALUES (rc_value_text (digest), rc_value_blob (size > 0 ? data : "", size)), error))
    return NULL;
  return g_steal_pointer (&digest);
}

char *
rc_store_add_file (RcStore *store, GBytes *bytes, GError **error)
{
  const char      *doing = _ ("Keeping a file");
  g_autofree char *digest = NULL;

  g_return_val_if_fail (store != NULL && bytes != NULL, NULL);

  if (!rc_store_begin (store, doing, error))
    return NULL;
  digest = rc_file_store_add (store, bytes, error);
  if (digest == NULL)
    {
      rc_store_rollback (store);
      return NULL;
    }
  return rc_store_commit (store, doing, error) ? g_steal_pointer (&digest) : NULL;
}

GBytes *
rc_store_load_file (RcStore *store, const char *digest, GError **error)
{
  g_auto (RcQuery) query = { 0 };
  RcValue value;

  g_return_val_if_fail (store != NULL && digest != NULL, NULL);

  if (!rc_query_start (&query, store, "SELECT bytes FROM files WHERE digest = ?", RC_VALUES (rc_value_text (digest)),
                       error))
    return NULL;
  if (!rc_query_next (&query, error))
    {
      if (!query.failed)
        g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no file %.12s… in the store."), digest);
      return NULL;
    }
  value = rc_query_get_value (&query, 0);
  return g_bytes_new (value.bytes, value.size);
}
