/* Rows of two lengths to type: pieces and remnants (width × length), damaged lengths (from, to). */
#pragma once

#include <gtk/gtk.h>

#include "length-entry.h"

#define RC_TYPE_LENGTH_ROWS (rc_length_rows_get_type ())
G_DECLARE_FINAL_TYPE (RcLengthRows, rc_length_rows, RC, LENGTH_ROWS, GtkBox)

typedef struct
{
  const char *name;       /* translated: of one row, for those who do not see it: "Piece" */
  const char *add;        /* translated: of the button that adds a row, with its mnemonic */
  const char *between;    /* stands between the two lengths */
  const char *labels[2];  /* translated: of the two lengths */
  gboolean    has_number; /* an entry for a number before them */
} RcLengthRowsWords;

GtkWidget *rc_length_rows_new (const RcLengthRowsWords *words);

/* Both as rc_length_entry_set_units: how rows added from now on read and show. */
void rc_length_rows_clear (RcLengthRows *self, RcLengthUnit bare_unit, const RcLengthStyle *style);
/* A row with these values (below 0: blank). */
void rc_length_rows_add (RcLengthRows *self, const char *number, RcLength first, RcLength second);

guint rc_length_rows_get_n (RcLengthRows *self);
/* Row `row`; *number (nullable) is borrowed until the row changes. FALSE and RC_ERROR_PARSE saying which row has a text
 * that is no length, or lacks one. A row that is blank as a whole is 0 and 0. */
gboolean rc_length_rows_read (RcLengthRows *self, guint row, const char **number, RcLength *first, RcLength *second,
                              GError **error);
