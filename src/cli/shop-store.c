#include "shop-store.h"

#include "shipped.h"

#include <glib/gi18n-lib.h>

static char *
dup_store_path (const char *path)
{
  return path != NULL ? g_strdup (path) : rc_store_dup_default_path ();
}

static gboolean
make_folder_of (const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (g_mkdir_with_parents (folder, 0700) == 0)
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("Cannot make the folder “%s” for the store"), folder);
  return FALSE;
}

RcStore *
rc_shop_store_open (const char *path, GError **error)
{
  g_autofree char *file = dup_store_path (path);
  g_autoptr (RcStore) store = NULL;
  gboolean created = FALSE;

  if (path == NULL && !make_folder_of (file, error))
    return NULL;
  store = rc_store_open (file, &created, error);
  if (store == NULL)
    return NULL;
  if (created)
    {
      g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (error);

      if (book == NULL || !rc_store_save_price_book (store, book, error))
        return NULL;
    }
  return g_steal_pointer (&store);
}

gboolean
rc_shop_store_is_there (const char *path)
{
  g_autofree char *file = dup_store_path (path);

  return g_file_test (file, G_FILE_TEST_EXISTS);
}

RcStore *
rc_shop_store_open_existing (const char *path, GError **error)
{
  g_autofree char *file = dup_store_path (path);

  if (!rc_shop_store_is_there (file))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("There is no store “%s”"), file);
      return NULL;
    }
  return rc_shop_store_open (file, error);
}
