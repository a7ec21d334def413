/* A table of comma-separated values whose first line names its columns, in any order; some of them may be left out. */
#pragma once

#include "csv.h"
#include "length.h"

enum
{
  RC_CSV_MOST_COLUMNS = 16
};

typedef struct
{
  RcCsvReader        reader;
  const char *const *columns;                       /* borrowed */
  guint              n_columns, n_titles;           /* known; in the first line */
  int                field_of[RC_CSV_MOST_COLUMNS]; /* by column; -1: left out */
  GPtrArray         *fields;                        /* of the row at hand, stripped; NULL: none */
  RcLengthUnit       bare_unit;
} RcCsvTable;

/* Reads the line that names the columns: the first n_needed of `columns` must be there, others than these must not.
 * `csv`, `name` (of the file, for messages) and `columns` must outlive the table. Errors: RC_ERROR_FORMAT. Clear the
 * table also after an error. */
gboolean rc_csv_table_init (RcCsvTable *table, const char *csv, const char *name, const char *const *columns,
                            guint n_columns, guint n_needed, RcLengthUnit bare_unit, GError **error);
void     rc_csv_table_clear (RcCsvTable *table);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcCsvTable, rc_csv_table_clear)

/* Goes to the next row. FALSE at the end and on a fault. */
gboolean rc_csv_table_next (RcCsvTable *table, GError **error);

/* The field of the row at hand; "" where it is left out. (borrowed until the next row) */
const char *rc_csv_table_get (const RcCsvTable *table, guint column);

/* Sets the error: file, line, column (-1: the whole line) and what is wrong. Returns FALSE. */
gboolean rc_csv_table_fail (const RcCsvTable *table, int column, GError **error, const char *format, ...)
    G_GNUC_PRINTF (4, 5);

/* Lengths must not be negative. An empty field leaves *length as it is where that is allowed; where it is not, the
 * length must be more than zero. */
gboolean rc_csv_table_read_length (const RcCsvTable *table, guint column, gboolean may_be_empty, RcLength *length,
                                   GError **error);

/* A whole number from 1 to most. */
gboolean rc_csv_table_read_count (const RcCsvTable *table, guint column, guint most, guint *count, GError **error);
