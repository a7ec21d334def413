#include "fault-calls.h"

#include <execinfo.h>
#define SQLITE_ENABLE_SESSION
#define SQLITE_ENABLE_PREUPDATE_HOOK
#include <sqlite3.h>

#include "fault-layer.h"

/* Where the code of the program begins and ends, its own and none of the libraries'. From the linker. */
extern const char __executable_start, etext;

/* The callers that make one place in the program another than the next, two of them in this file. */
#define PLACE_DEPTH 8

/* What a call that is made to fail says, and SQLite when it is asked about it. */
#define FAULT_CODE SQLITE_IOERR

static struct
{
  gboolean    failed; /* the last call */
  GHashTable *places; /* all met so far */
  GArray     *new_places;
} calls;

GArray *
fault_calls_take_new_places (void)
{
  GArray *taken = calls.new_places != NULL ? calls.new_places : g_array_new (FALSE, FALSE, sizeof (guint));

  calls.new_places = g_array_new (FALSE, FALSE, sizeof (guint));
  return taken;
}

/* Notes the call if the innermost lines of the program that led to it have not led to one before. */
static void
note_place (guint call)
{
  void   *frames[64];
  int     n_frames = backtrace (frames, G_N_ELEMENTS (frames));
  guint64 place = 0;

  for (int i = 0, depth = 0; i < n_frames && depth < PLACE_DEPTH; i++)
    if ((const char *)frames[i] >= &__executable_start && (const char *)frames[i] < &etext)
      {
        depth++;
        place = (place + (guint64)((const char *)frames[i] - &__executable_start)) * 0x9e3779b97f4a7c15u;
      }
  if (calls.places == NULL)
    calls.places = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  if (g_hash_table_add (calls.places, g_memdup2 (&place, sizeof place)))
    g_array_append_val (calls.new_places, call);
}

static gboolean
take_fault (void)
{
  guint call = fault_layer_get_n_calls ();

  calls.failed = fault_layer_take (FAULT_CALL);
  if (fault_layer_is_counting () && fault_layer_get_n_calls () > call)
    note_place (call);
  return calls.failed;
}

/* `NAME` takes the arguments of SQLite's function. When it is to fail, `FAIL` stands in for what that would do. */
#define WRAP(TYPE, NAME, PARAMETERS, ARGUMENTS, FAIL)                                                                  \
  TYPE __real_##NAME PARAMETERS;                                                                                       \
  TYPE __wrap_##NAME PARAMETERS;                                                                                       \
  TYPE __wrap_##NAME PARAMETERS                                                                                        \
  {                                                                                                                    \
    if (take_fault ())                                                                                                 \
      return FAIL;                                                                                                     \
    return __real_##NAME ARGUMENTS;                                                                                    \
  }

WRAP (int, sqlite3_open_v2, (const char *path, sqlite3 **db, int flags, const char *vfs), (path, db, flags, vfs),
      (*db = NULL, FAULT_CODE))
WRAP (int, sqlite3_exec, (sqlite3 * db, const char *sql, sqlite3_callback each, void *data, char **message),
      (db, sql, each, data, message), FAULT_CODE)
WRAP (int, sqlite3_prepare_v2, (sqlite3 * db, const char *sql, int size, sqlite3_stmt **statement, const char **tail),
      (db, sql, size, statement, tail), (*statement = NULL, FAULT_CODE))
WRAP (int, sqlite3_prepare_v3,
      (sqlite3 * db, const char *sql, int size, unsigned int flags, sqlite3_stmt **statement, const char **tail),
      (db, sql, size, flags, statement, tail), (*statement = NULL, FAULT_CODE))
WRAP (int, sqlite3_step, (sqlite3_stmt * statement), (statement), FAULT_CODE)
WRAP (int, sqlite3_bind_int64, (sqlite3_stmt * statement, int place, sqlite3_int64 value), (statement, place, value),
      FAULT_CODE)
WRAP (int, sqlite3_bind_double, (sqlite3_stmt * statement, int place, double value), (statement, place, value),
      FAULT_CODE)
WRAP (int, sqlite3_bind_null, (sqlite3_stmt * statement, int place), (statement, place), FAULT_CODE)
WRAP (int, sqlite3_bind_text64,
      (sqlite3_stmt * statement, int place, const char *text, sqlite3_uint64 size, void (*free_text) (void *),
       unsigned char encoding),
      (statement, place, text, size, free_text, encoding), FAULT_CODE)
WRAP (int, sqlite3_bind_blob64,
      (sqlite3_stmt * statement, int place, const void *bytes, sqlite3_uint64 size, void (*free_bytes) (void *)),
      (statement, place, bytes, size, free_bytes), FAULT_CODE)
WRAP (sqlite3_backup *, sqlite3_backup_init, (sqlite3 * to, const char *to_name, sqlite3 *from, const char *from_name),
      (to, to_name, from, from_name), NULL)
WRAP (int, sqlite3_backup_step, (sqlite3_backup * backup, int n_pages), (backup, n_pages), FAULT_CODE)
WRAP (int, sqlite3session_create, (sqlite3 * db, const char *name, sqlite3_session **session), (db, name, session),
      (*session = NULL, FAULT_CODE))
WRAP (int, sqlite3session_attach, (sqlite3_session * session, const char *table), (session, table), FAULT_CODE)
WRAP (int, sqlite3session_changeset, (sqlite3_session * session, int *size, void **bytes), (session, size, bytes),
      (*size = 0, *bytes = NULL, FAULT_CODE))
WRAP (int, sqlite3changeset_apply_v2,
      (sqlite3 * db, int size, void *bytes, int (*filter) (void *, const char *),
       int (*conflict) (void *, int, sqlite3_changeset_iter *), void *data, void **rebase, int *rebase_size, int flags),
      (db, size, bytes, filter, conflict, data, rebase, rebase_size, flags), FAULT_CODE)

int __real_sqlite3_errcode (sqlite3 *db);
int __wrap_sqlite3_errcode (sqlite3 *db);
int __real_sqlite3_extended_errcode (sqlite3 *db);
int __wrap_sqlite3_extended_errcode (sqlite3 *db);

int
__wrap_sqlite3_errcode (sqlite3 *db)
{
  return calls.failed ? FAULT_CODE : __real_sqlite3_errcode (db);
}

int
__wrap_sqlite3_extended_errcode (sqlite3 *db)
{
  return calls.failed ? FAULT_CODE : __real_sqlite3_extended_errcode (db);
}
