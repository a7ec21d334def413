/* Text tables for people: columns as wide as their widest cell. */
#pragma once

#include <glib.h>

typedef struct _RcTable RcTable;

/* `alignment` has a letter for every column: 'l' left, 'r' right. */
RcTable *rc_table_new (const char *alignment);
void     rc_table_free (RcTable *table);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcTable, rc_table_free)

/* One cell after another, left to right; NULL is an empty cell. The first row is the heading when `with_heading`. */
void rc_table_add (RcTable *table, const char *cell);
void rc_table_add_take (RcTable *table, char *cell); /* (transfer full) */

/* (transfer full) */
char *rc_table_dup_text (const RcTable *table, gboolean with_heading);
void  rc_table_print (const RcTable *table, gboolean with_heading);
