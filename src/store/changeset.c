#include "changeset.h"

#include <sqlite3.h>
#include <string.h>

#include "row-table.h"

typedef struct
{
  const guint8     *at, *end;
  const RcRowTable *table; /* whose rows follow; NULL before the first */
  guint             n_columns;
  gint64            job; /* 0: none yet */
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

gboolean
rc_changeset_find_job (gconstpointer bytes, gsize size, gint64 *job)
{
  Walk walk = { .at = bytes, .end = (const guint8 *)bytes + size };

  while (walk.at < walk.end)
    {
      const guint8 *mark;

      if (!take (&walk, 1, &mark) || !(*mark == 'T' ? walk_table (&walk) : walk_change (&walk, *mark)))
        return FALSE;
    }
  *job = walk.job;
  return walk.job != 0;
}
