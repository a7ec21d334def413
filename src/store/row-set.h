/* The rows of a model, table by table: what it is written as, read from, and compared by. */
#pragma once

#include "query.h"
#include "row-table.h"

typedef struct _RcRowSet RcRowSet;

/* `job` is the number that the rows belong to; any for the shop's tables. */
RcRowSet *rc_row_set_new (gint64 job);
void      rc_row_set_free (RcRowSet *rows);
void      rc_row_set_set_job (RcRowSet *rows, gint64 job);
gint64    rc_row_set_get_job (const RcRowSet *rows);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcRowSet, rc_row_set_free)

/* Adds a row, with one value for every column. Text is borrowed and must outlive the set. */
void rc_row_set_add (RcRowSet *rows, RcTableId table, const RcValue *values, guint n_values);

/* Keeps text (taken, nullable) as long as the set, to be added to it. */
const char *rc_row_set_keep (RcRowSet *rows, char *text);

guint rc_row_set_get_n_rows (const RcRowSet *rows, RcTableId table);
/* The values of a row; valid until a row is added. */
const RcValue *rc_row_set_get (const RcRowSet *rows, RcTableId table, guint row);

/* Puts another value into a row; text is borrowed and must outlive the set. */
void rc_row_set_put (RcRowSet *rows, RcTableId table, guint row, guint column, RcValue value);

/* Reads the tables from `first` on, before `end`, in the order of the keys or of the model. */
gboolean rc_row_set_read (RcRowSet *rows, RcStore *store, RcTableId first, RcTableId end, gboolean by_key,
                          GError **error);

/* Sorts by key and looks at what the store could not hold: two rows with one key, a key left open, text that is not
 * UTF-8, a number that is none. The error names `owner` ("Job J-1") and the thing. */
gboolean rc_row_set_prepare (RcRowSet *rows, RcTableId first, RcTableId end, const char *owner, GError **error);

/* Turns what is stored into `rows` (prepared) by the fewest inserts, updates and deletes, within a transaction. */
gboolean rc_row_set_write (const RcRowSet *rows, RcStore *store, RcTableId first, RcTableId end, GError **error);

/* Takes out of a table (both sets prepared or read by key) the rows whose key `other` has not. */
void rc_row_set_drop_unknown (RcRowSet *rows, const RcRowSet *other, RcTableId table);

/* The first difference between two sets read or prepared by key, in words, NULL when there is none. (transfer full) */
char *rc_row_set_compare (const RcRowSet *a, const RcRowSet *b, RcTableId first, RcTableId end);
