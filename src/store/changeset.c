#include "changeset.h"

#include <string.h>

#include "query.h"
#include "row-table.h"

typedef struct
{
  const guint8     *at, *end;
  const RcRowTable *table; /* whose rows follow; NULL before the first */
  guint             n_columns;
  gint64            job; /* 0: none yet */

  /* For completing; `store` is NULL when it is only looked at. */
  RcStore      *store;
  GByteArray   *completed;
  const guint8 *kept; /* what comes from here on is not copied yet */
  GError      **error;
} Walk;

static gboolean
take (Walk *walk, gsize size, const guint8 **bytes)
{
  if ((gsize)(walk->end - walk->at) < size)
    return FALSE;
  *bytes = walk->at;
  walk->at += size;
  return TRUE;
}

/* Seven bits to a byte, the highest first; the top bit says that more follow. */
static gboolean
take_number (Walk *walk, guint32 *number)
{
  *number = 0;
  for (guint i = 0; i < 5; i++)
    {
      const guint8 *byte;

      if (!take (walk, 1, &byte))
        return FALSE;
      *number = *number << 7 | (*byte & 0x7f);
      if ((*byte & 0x80) == 0)
        return TRUE;
    }
  return FALSE;
}

static const RcRowTable *
find_table (const guint8 *name, gsize length)
{
  for (RcTableId id = 0; id < RC_N_JOB_TABLES; id++)
    {
      const RcRowTable *table = rc_row_table_get (id);

      if (strlen (table->name) == length && memcmp (table->name, name, length) == 0)
        return table;
    }
  return NULL;
}

/* Number of columns, a byte for each that is not 0 for the key's, the name. The job comes first in every table. */
static gboolean
walk_table (Walk *walk)
{
  const guint8 *keys, *name_end;

  if (!take_number (walk, &walk->n_columns) || walk->n_columns == 0 || !take (walk, walk->n_columns, &keys))
    return FALSE;
  name_end = memchr (walk->at, 0, (gsize)(walk->end - walk->at));
  walk->table = name_end != NULL ? find_table (walk->at, (gsize)(name_end - walk->at)) : NULL;
  if (walk->table == NULL || walk->n_columns < walk->table->n_key + 1)
    return FALSE;
  for (guint i = 0; i < walk->n_columns; i++)
    if ((keys[i] != 0) != (i <= walk->table->n_key))
      return FALSE;
  walk->at = name_end + 1;
  return TRUE;
}

/* A value left out (0), whole number, real, text, blob, NULL. */
static gboolean
walk_value (Walk *walk, guint8 *kind, gint64 *integer)
{
  const guint8 *bytes;
  guint32       size;
  guint64       number;

  if (!take (walk, 1, &bytes))
    return FALSE;
  *kind = *bytes;
  switch (*kind)
    {
    case 0:
    case SQLITE_NULL:
      return TRUE;
    case SQLITE_INTEGER:
    case SQLITE_FLOAT:
      if (!take (walk, sizeof number, &bytes))
        return FALSE;
      memcpy (&number, bytes, sizeof number);
      *integer = (gint64)GUINT64_FROM_BE (number);
      return TRUE;
    case SQLITE_TEXT:
    case SQLITE_BLOB:
      return take_number (walk, &size) && take (walk, size, &bytes);
    default:
      return FALSE;
    }
}

/* The default of a column that must have a value, as the schema writes it; NULL for any other. */
static gboolean
find_default (const Walk *walk, guint column, char **text)
{
  g_auto (RcQuery) query = { 0 };
  const char *sql = "SELECT dflt_value FROM pragma_table_info (?) WHERE cid = ? AND \"notnull\" = 1";

  if (!rc_query_start (&query, walk->store, sql,
                       RC_VALUES (rc_value_text (walk->table->name), rc_value_integer (column)), walk->error))
    return FALSE;
  if (rc_query_next (&query, walk->error))
    *text = rc_query_dup_text (&query, 0);
  return !query.failed;
}

/* A whole number or 'words', short and with no quote within: what the columns' defaults are. */
static void
append_default (GByteArray *bytes, const char *text)
{
  gsize  size = strlen (text);
  gint64 number = GINT64_TO_BE (g_ascii_strtoll (text, NULL, 10));

  if (text[0] == '\'')
    {
      g_assert (size >= 2 && size - 2 < 0x80);
      g_byte_array_append (bytes, (const guint8[]){ SQLITE_TEXT, (guint8)(size - 2) }, 2);
      g_byte_array_append (bytes, (const guint8 *)text + 1, (guint)(size - 2));
      return;
    }
  g_byte_array_append (bytes, (const guint8[]){ SQLITE_INTEGER }, 1);
  g_byte_array_append (bytes, (const guint8 *)&number, sizeof number);
}

/* The NULL just walked over. */
static gboolean
complete_value (Walk *walk, guint column)
{
  g_autofree char *text = NULL;

  if (!find_default (walk, column, &text))
    return FALSE;
  if (text == NULL)
    return TRUE;
  g_byte_array_append (walk->completed, walk->kept, (guint)(walk->at - 1 - walk->kept));
  append_default (walk->completed, text);
  walk->kept = walk->at;
  return TRUE;
}

/* With `whole`, every value is there; else those of the key, and for the rest what was changed. `keyed`: the record has
 * the key. */
static gboolean
walk_record (Walk *walk, gboolean whole, gboolean keyed)
{
  for (guint i = 0; i < walk->n_columns; i++)
    {
      const gboolean is_key = i <= walk->table->n_key;
      guint8         kind;
      gint64         integer = 0;

      if (!walk_value (walk, &kind, &integer) || (kind == 0 && (whole || (keyed && is_key))))
        return FALSE;
      if (kind == SQLITE_NULL && walk->store != NULL && !complete_value (walk, i))
        return FALSE;
      if (i > 0 || !keyed)
        continue;
      if (kind != SQLITE_INTEGER || integer == 0 || (walk->job != 0 && walk->job != integer))
        return FALSE;
      walk->job = integer;
    }
  return TRUE;
}

static gboolean
walk_change (Walk *walk, int operation)
{
  const guint8 *indirect;

  if (walk->table == NULL || !take (walk, 1, &indirect))
    return FALSE;
  if (operation == SQLITE_INSERT || operation == SQLITE_DELETE)
    return walk_record (walk, TRUE, TRUE);
  return operation == SQLITE_UPDATE && walk_record (walk, FALSE, TRUE) && walk_record (walk, FALSE, FALSE);
}

static gboolean
walk_all (Walk *walk)
{
  while (walk->at < walk->end)
    {
      const guint8 *mark;

      if (!take (walk, 1, &mark) || !(*mark == 'T' ? walk_table (walk) : walk_change (walk, *mark)))
        return FALSE;
    }
  return TRUE;
}

gboolean
rc_changeset_find_job (gconstpointer bytes, gsize size, gint64 *job)
{
  Walk walk = { .at = bytes, .end = (const guint8 *)bytes + size };

  if (!walk_all (&walk))
    return FALSE;
  *job = walk.job;
  return walk.job != 0;
}

gboolean
rc_changeset_complete (RcStore *store, gconstpointer bytes, gsize size, GBytes **completed, GError **error)
{
  g_autoptr (GByteArray) copy = g_byte_array_new ();
  Walk walk = {
    .at = bytes, .end = (const guint8 *)bytes + size, .store = store, .completed = copy, .kept = bytes, .error = error
  };

  *completed = NULL;
  if (!walk_all (&walk))
    return FALSE;
  if (walk.kept == bytes)
    return TRUE;
  g_byte_array_append (copy, walk.kept, (guint)(walk.end - walk.kept));
  *completed = g_byte_array_free_to_bytes (g_steal_pointer (&copy));
  return TRUE;
}
