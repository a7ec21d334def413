#include "rota.h"

#include <errno.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "backup.h"
#include "day.h"

#define SUFFIX     ".db"
#define DAY_LENGTH 10 /* YYYY-MM-DD */

static int
compare_latest_first (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *)b, *(const char *const *)a);
}

GPtrArray *
rc_rota_find_superseded (const GPtrArray *days)
{
  g_autoptr (GPtrArray) sorted = g_ptr_array_new ();
  GPtrArray  *superseded = g_ptr_array_new_with_free_func (g_free);
  const char *month = "";
  guint       n_months = 0;

  for (guint i = 0; i < days->len; i++)
    g_ptr_array_add (sorted, days->pdata[i]);
  g_ptr_array_sort (sorted, compare_latest_first);
  for (guint i = RC_ROTA_N_DAYS; i < sorted->len; i++)
    {
      const char *day = sorted->pdata[i];

      if (strncmp (day, month, strlen ("YYYY-MM")) != 0 && n_months < RC_ROTA_N_MONTHS)
        {
          month = day;
          n_months++;
        }
      else
        g_ptr_array_insert (superseded, 0, g_strdup (day));
    }
  return superseded;
}

static gboolean
begins_with_day (const char *name)
{
  g_autofree char *day = g_strndup (name, DAY_LENGTH);

  return rc_day_is_valid (day);
}

char *
rc_store_dup_backup_folder (const char *path)
{
  return g_strconcat (path, ".backups", NULL);
}

static char *
dup_backup_path (const char *folder, const char *day)
{
  g_autofree char *name = g_strconcat (day, SUFFIX, NULL);

  return g_build_filename (folder, name, NULL);
}

/* Nothing but the rota's own files: whatever else lies in the folder is somebody's. */
static GPtrArray *
find_days (const char *folder)
{
  GPtrArray *days = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (strlen (name) == DAY_LENGTH + strlen (SUFFIX) && begins_with_day (name) && g_str_has_suffix (name, SUFFIX))
      g_ptr_array_add (days, g_strndup (name, DAY_LENGTH));
  return days;
}

GPtrArray *
rc_store_find_backups (const char *path)
{
  g_autofree char *folder = rc_store_dup_backup_folder (path);
  g_autoptr (GPtrArray) days = find_days (folder);
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_sort (days, compare_latest_first);
  for (guint i = 0; i < days->len; i++)
    g_ptr_array_add (paths, dup_backup_path (folder, days->pdata[i]));
  return paths;
}

/* What a program that was killed left of an earlier day's backup ("2026-03-01.db.A1b2C3"). */
static void
remove_unfinished (const char *folder, const char *day)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (strlen (name) > DAY_LENGTH && begins_with_day (name) && !g_str_has_prefix (name, day)
        && g_str_has_prefix (name + DAY_LENGTH, SUFFIX "."))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);

        g_unlink (path);
      }
}

static void
remove_superseded (const char *folder)
{
  g_autoptr (GPtrArray) days = find_days (folder);
  g_autoptr (GPtrArray) superseded = rc_rota_find_superseded (days);

  for (guint i = 0; i < superseded->len; i++)
    {
      g_autofree char *path = dup_backup_path (folder, superseded->pdata[i]);

      g_unlink (path);
    }
}

gboolean
rc_store_is_backed_up (const char *path, const char *day)
{
  g_autofree char *folder = rc_store_dup_backup_folder (path), *backup = dup_backup_path (folder, day);

  return g_file_test (backup, G_FILE_TEST_EXISTS);
}

gboolean
rc_store_back_up_daily (RcStore *store, const char *day, GError **error)
{
  g_autofree char *folder = NULL, *path = NULL;

  g_return_val_if_fail (store != NULL && rc_day_is_valid (day), FALSE);

  if (g_str_equal (store->path, ":memory:") || rc_store_is_backed_up (store->path, day))
    return TRUE;
  folder = rc_store_dup_backup_folder (store->path);
  path = dup_backup_path (folder, day);
  remove_unfinished (folder, day);
  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("The folder %s for backups cannot be made: %s"), folder,
                   g_strerror (errno));
      return FALSE;
    }
  /* Another window may have come first; its backup serves. */
  if (!rc_store_backup (store, path, error))
    {
      if (!g_file_test (path, G_FILE_TEST_EXISTS))
        return FALSE;
      g_clear_error (error);
    }
  remove_superseded (folder);
  return TRUE;
}
