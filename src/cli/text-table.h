/* Text tables for people: columns as wide as their widest cell. */
#pragma once

#include <glib.h>

typedef struct _RcTextTable RcTextTable;

/* `alignment` has a letter for every column: 'l' left, 'r' right. */
RcTextTable *rc_text_table_new (const char *alignment);
void         rc_text_table_free (RcTextTable *table);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcTextTable, rc_text_table_free)

/* One cell after another, left to right; NULL is an empty cell. The first row is the heading when `with_heading`. */
void rc_text_table_add (RcTextTable *table, const char *cell);
void rc_text_table_add_take (RcTextTable *table, char *cell); /* (transfer full) */

/* (transfer full) */
char *rc_text_table_dup_text (const RcTextTable *table, gboolean with_heading);
void  rc_text_table_print (const RcTextTable *table, gboolean with_heading);
