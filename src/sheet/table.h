/* Tables that run over pages: heads repeated, rows never torn, figures aligned on the decimal point.
 */
#pragma once

#include "page.h"

typedef enum
{
  RC_COLUMN_TEXT,    /* left, wrapped where it must be */
  RC_COLUMN_RIGHT,   /* right */
  RC_COLUMN_DECIMAL, /* the decimal points one under the other */
} RcColumnKind;

typedef enum
{
  RC_ROW_BODY,
  RC_ROW_GROUP,  /* the first cell alone, as a head over the rows that follow */
  RC_ROW_STRONG, /* bold, a rule above: sums */
} RcRowKind;

typedef struct _RcTable RcTable;

RcTable *rc_table_new (void);
void     rc_table_free (RcTable *table);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcTable, rc_table_free)

/* weight 0: as wide as its widest cell; > 0: shares the width that is left. All columns before the first row. */
void rc_table_add_column (RcTable *table, const char *title, RcColumnKind kind, double weight);

/* One string per column (NULL: empty), copied. */
void rc_table_add_row (RcTable *table, RcRowKind kind, const char *first, ...);
void rc_table_add_cells (RcTable *table, RcRowKind kind, const char *const *cells);

/* A smaller second line under a cell of the row added last; "" or NULL: none. */
void rc_table_set_note (RcTable *table, guint column, const char *note);

/* A note under the table, on the page of its last row; without rows there is none. */
void rc_table_set_foot (RcTable *table, const char *note);

guint rc_table_get_n_rows (const RcTable *table);

/* Lays the table out from the cursor on. A group's head stays with its first row, the heads with the first row. */
void rc_table_flow (RcTable *table, RcFlow *flow);
