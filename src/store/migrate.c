#include "schema.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "backup.h"

/* The name of the first, second, ... backup of a store of that version. */
static char *
dup_backup_path (const char *path, int version, guint number)
{
  return number == 1 ? g_strdup_printf ("%s.version-%d.backup", path, version)
                     : g_strdup_printf ("%s.version-%d-%u.backup", path, version, number);
}

static gboolean
have_same_bytes (FILE *a, FILE *b)
{
  char  of_a[16384], of_b[sizeof of_a];
  gsize n;

  do
    {
      n = fread (of_a, 1, sizeof of_a, a);
      if (fread (of_b, 1, sizeof of_b, b) != n || memcmp (of_a, of_b, n) != 0)
        return FALSE;
    }
  while (n == sizeof of_a);
  return !ferror (a) && !ferror (b);
}

static gboolean
are_same (const char *path_a, const char *path_b)
{
  FILE    *a = g_fopen (path_a, "rbe"), *b = g_fopen (path_b, "rbe");
  gboolean same = a != NULL && b != NULL && have_same_bytes (a, b);

  g_clear_pointer (&a, fclose);
  g_clear_pointer (&b, fclose);
  return same;
}

/* One backup for each content: a program that starts again and again, and each time cannot bring the store up to date
 * or is killed at it, does not fill the disk. */
static gboolean
back_up (RcStore *store, int version, GError **error)
{
  g_autofree char *backup = dup_backup_path (store->path, version, 1);
  guint            number = 1;

  while (g_file_test (backup, G_FILE_TEST_EXISTS))
    {
      g_free (backup);
      backup = dup_backup_path (store->path, version, ++number);
    }
  if (!rc_backup_write (store->db, store->path, backup, error))
    {
      g_prefix_error (error, _ ("Before the store is brought up to date a backup is made: "));
      return FALSE;
    }
  for (guint i = 1; i < number; i++)
    {
      g_autofree char *earlier = dup_backup_path (store->path, version, i);

      if (are_same (earlier, backup))
        {
          rc_backup_remove (backup);
          break;
        }
    }
  return TRUE;
}

static gboolean
run_migration (RcStore *store, int from, const char *sql, GError **error)
{
  g_autofree char *doing = g_strdup_printf (_ ("bringing the store from version %d to %d"), from, from + 1);
  g_autofree char *mark = g_strdup_printf ("PRAGMA user_version = %d", from + 1);

  if (sqlite3_exec (store->db, sql, NULL, NULL, NULL) != SQLITE_OK
      || sqlite3_exec (store->db, mark, NULL, NULL, NULL) != SQLITE_OK)
    return rc_store_fail (store, doing, error);
  return TRUE;
}

/* Within the transaction, so with the version as it is now: another program may have been here first. */
static gboolean
run_migrations (RcStore *store, const RcSchema *schema, GError **error)
{
  gint64 broken = 0;
  int    version;

  if (!rc_schema_identify (store->db, store->path, schema, &version, error))
    return FALSE;
  for (; version < schema->version; version++)
    {
      const char *sql = schema->migrations[version - 1];

      if (sql == NULL)
        {
          g_set_error (error, RC_ERROR, RC_ERROR_STORE,
                       _ ("%s is a store of version %d, which this program cannot bring up to version %d"), store->path,
                       version, schema->version);
          return FALSE;
        }
      if (!run_migration (store, version, sql, error))
        return FALSE;
    }
  if (!rc_schema_get_integer (store->db, store->path, "SELECT count (*) FROM pragma_foreign_key_check", &broken, error))
    return FALSE;
  if (broken > 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_STORE,
                   _ ("%s: brought up to version %d, %d rows would point nowhere; the store is as it was"), store->path,
                   schema->version, (int)broken);
      return FALSE;
    }
  return rc_schema_check (store->db, store->path, schema, error);
}

gboolean
rc_schema_migrate (RcStore *store, const RcSchema *schema, GError **error)
{
  gboolean done;
  int      version;

  if (!rc_schema_identify (store->db, store->path, schema, &version, error))
    return FALSE;
  if (version == schema->version)
    return TRUE;
  if (!back_up (store, version, error))
    return FALSE;
  sqlite3_exec (store->db, "PRAGMA foreign_keys = OFF", NULL, NULL, NULL);
  done = rc_store_begin (store, _ ("bringing the store up to date"), error)
         && (run_migrations (store, schema, error) || rc_store_rollback (store))
         && rc_store_commit (store, _ ("bringing the store up to date"), error);
  sqlite3_exec (store->db, "PRAGMA foreign_keys = ON", NULL, NULL, NULL);
  return done;
}
