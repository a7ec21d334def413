/* One statement on its way: prepared once for each store, its parameters always bound.
 *
 *   g_auto (RcQuery) query = { 0 };
 *
 *   if (!rc_query_start (&query, store, "SELECT id FROM jobs WHERE job = ?", RC_VALUES (rc_value_integer (7)), error))
 *     return FALSE;
 *   while (rc_query_next (&query, error))
 *     ...
 *   return !query.failed;
 */
#pragma once

#include "store-private.h"
#include "value.h"

typedef struct
{
  RcStore      *store;
  sqlite3_stmt *statement;
  gboolean      failed;
} RcQuery;

/* `sql` has as many parameters as there are values. A statement may be on its way only once at a time. */
gboolean rc_query_start (RcQuery *query, RcStore *store, const char *sql, const RcValue *values, guint n_values,
                         GError **error);

/* TRUE with a row; FALSE at the end, or with query->failed and an error. */
gboolean rc_query_next (RcQuery *query, GError **error);
void     rc_query_clear (RcQuery *query);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcQuery, rc_query_clear)

gint64 rc_query_get_integer (const RcQuery *query, int column);
/* Valid until the next row. NULL for NULL. */
const char *rc_query_get_text (const RcQuery *query, int column);
/* (transfer full) NULL for NULL */
char *rc_query_dup_text (const RcQuery *query, int column);
/* Valid until the next row. */
RcValue rc_query_get_value (const RcQuery *query, int column);

/* Runs a statement that gives no rows. */
gboolean rc_query_run (RcStore *store, const char *sql, const RcValue *values, guint n_values, GError **error);

/* The first column of the first row; `otherwise` when there is no row or it is NULL. */
gboolean rc_query_find_integer (RcStore *store, const char *sql, const RcValue *values, guint n_values,
                                gint64 otherwise, gint64 *found, GError **error);
