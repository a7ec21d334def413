/* Rows of comma-separated values (RFC 4180): fields in quotation marks may hold commas, line ends and doubled marks. An
 * unquoted field may hold a mark after its first character: 12' 6" is a length.
 *
 * Text that a spreadsheet would take for a formula goes out with an apostrophe before it, and comes in without.
 */
#pragma once

#include <glib.h>

#define RC_CSV_MAX_BYTES (16 * 1024 * 1024)

typedef struct
{
  const char *name; /* of the file, for messages */
  const char *next; /* what is still to be read */
  guint       next_line;
  guint       line; /* where the row last read begins, from 1 */
} RcCsvReader;

/* `csv` must outlive the reader. A byte order mark is skipped. FALSE and RC_ERROR_FORMAT when it is too large or no
 * UTF-8. */
gboolean rc_csv_reader_init (RcCsvReader *reader, const char *csv, const char *name, GError **error);

/* The next row that is not blank: its fields as they stand, apostrophes and all (transfer full); NULL at the end, and
 * with `error` (RC_ERROR_FORMAT, naming file and line) on text behind a closing mark or a mark never closed. */
GPtrArray *rc_csv_reader_next (RcCsvReader *reader, GError **error);

/* Appends a field, quoted where it must be; `is_first` leaves out the comma before it. NULL counts as empty. */
void rc_csv_append (GString *csv, const char *field, gboolean is_first);

/* Text so that no spreadsheet runs it, and back. (transfer full) */
char *rc_csv_neutralize (const char *text);
char *rc_csv_restore (const char *field);
