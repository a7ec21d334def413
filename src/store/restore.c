/* A backup takes the place of the store. */
#include "store-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "backup.h"
#include "query.h"
#include "schema.h"

/* The first name of the kind "rowcut.db.before-restore" that is free, for what was there. */
static char *
dup_kept_path (const char *path)
{
  char *name = g_strconcat (path, ".before-restore", NULL);

  for (guint i = 2; g_file_test (name, G_FILE_TEST_EXISTS); i++)
    {
      g_free (name);
      name = g_strdup_printf ("%s.before-restore-%u", path, i);
    }
  return name;
}

/* An empty file would be made a new store of. */
static gboolean
is_store (sqlite3 *db, const char *path, GError **error)
{
  RcSchema schema;
  int      version;

  rc_schema_init_current (&schema);
  if (!rc_schema_identify (db, path, &schema, &version, error))
    return FALSE;
  if (version == 0)
    g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("%s is empty; name a backup of a store"), path);
  return version != 0;
}

/* A copy of the backup beside the store, opened, checked and brought up to date: the backup itself is only read. */
static RcStore *
open_copy (const char *backup, const char *part, GError **error)
{
  g_autofree char *report = NULL;
  g_autoptr (RcStore) copy = NULL;
  sqlite3 *db = NULL;
  gboolean done;
  int      code = sqlite3_open_v2 (backup, &db, SQLITE_OPEN_READONLY, NULL);

  if (code != SQLITE_OK)
    done = rc_store_fail_with (db, code, backup, _ ("reading the backup"), error);
  else
    done = is_store (db, backup, error) && rc_backup_write (db, backup, part, error);
  sqlite3_close (db);
  if (!done || (copy = rc_store_open (part, NULL, error)) == NULL)
    {
      g_prefix_error (error, _ ("%s is not restored: "), backup);
      return NULL;
    }
  if (!rc_store_check (copy, &report, error))
    {
      if (report != NULL)
        g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("%s is not restored, as it is not sound: %s"), backup, report);
      return NULL;
    }
  return g_steal_pointer (&copy);
}

/* Numbers once given out are not given out again, and a window that has a job open sees that it has changed. */
static gboolean
keep_counters (RcStore *store, RcStore *copy, GError **error)
{
  g_auto (RcQuery) query = { 0 };

  if (!rc_query_start (&query, store, "SELECT name, value FROM counters", NULL, 0, error))
    return FALSE;
  while (rc_query_next (&query, error))
    if (!rc_store_count_at_least (copy, rc_query_get_text (&query, 0), rc_query_get_integer (&query, 1), error))
      return FALSE;
  return !query.failed;
}

/* Whether it is damaged, or only in use at the moment, is not for a program to say. */
static void
refuse_unkept (GError **error)
{
  g_prefix_error (error,
                  _ ("Nothing was restored, as the store that is there cannot be kept. If it is damaged, move it "
                     "to another place and restore again. "));
}

/* The store can be opened: what it holds is copied, and replaced in one transaction, so that programs that have it open
 * go on with what was restored. */
static gboolean
replace_contents (RcStore *store, RcStore *copy, const char *kept, GError **error)
{
  if (!rc_store_backup (store, kept, error))
    {
      refuse_unkept (error);
      return FALSE;
    }
  if (keep_counters (store, copy, error) && rc_backup_replace (copy->db, store->db, store->path, error))
    return TRUE;
  rc_backup_remove (kept); /* all is as it was: there is nothing to keep */
  return FALSE;
}

/* There is no store. A log without one would be taken for that of the copy: it is put aside. */
static gboolean
put_in_place (const char *path, const char *part, const char *kept, GError **error)
{
  static const char *const ends[] = { "-wal", "-shm", "-journal" };

  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      g_autofree char *from = g_strconcat (path, ends[i], NULL), *to = g_strconcat (kept, ends[i], NULL);

      g_rename (from, to);
    }
  if (g_rename (part, path) == 0)
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_STORE, _ ("%s cannot be put in place: %s"), path, g_strerror (errno));
  return FALSE;
}

static gboolean
restore (const char *path, const char *backup, const char *part, const char *kept, GError **error)
{
  g_autoptr (RcStore) copy = open_copy (backup, part, error);
  g_autoptr (RcStore) store = NULL;

  if (copy == NULL)
    return FALSE;
  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    {
      rc_store_close (g_steal_pointer (&copy));
      return put_in_place (path, part, kept, error);
    }
  store = rc_store_open (path, NULL, error);
  if (store == NULL)
    {
      refuse_unkept (error);
      return FALSE;
    }
  return replace_contents (store, copy, kept, error);
}

char *
rc_store_restore (const char *path, const char *backup, GError **error)
{
  g_autofree char *target = NULL, *part = NULL, *kept = NULL;
  gboolean         done;

  g_return_val_if_fail (path != NULL && backup != NULL, NULL);

  target = g_canonicalize_filename (path, NULL);
  kept = dup_kept_path (target);
  part = g_strconcat (kept, ".part", NULL);
  rc_backup_remove (part); /* of a restore that was killed */
  done = restore (target, backup, part, kept, error);
  rc_backup_remove (part);
  return done ? g_steal_pointer (&kept) : NULL;
}
