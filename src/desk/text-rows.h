/* Rows of texts to type: tax areas, steps of payment. */
#pragma once

#include <gtk/gtk.h>

#define RC_TYPE_TEXT_ROWS (rc_text_rows_get_type ())
G_DECLARE_FINAL_TYPE (RcTextRows, rc_text_rows, RC, TEXT_ROWS, GtkBox)

#define RC_TEXT_ROWS_COLUMNS 3

typedef struct
{
  const char *name;                         /* translated: of one row: "Tax area" */
  const char *add;                          /* translated: of the button that adds one, with its mnemonic */
  const char *labels[RC_TEXT_ROWS_COLUMNS]; /* translated; the first column is the wide one */
} RcTextRowsWords;

GtkWidget *rc_text_rows_new (const RcTextRowsWords *words);

void rc_text_rows_clear (RcTextRows *self);
/* `key` (nullable) goes with the row and is not shown. */
void  rc_text_rows_add (RcTextRows *self, const char *key, const char *const *texts);
guint rc_text_rows_get_n (RcTextRows *self);
void  rc_text_rows_set_key (RcTextRows *self, guint row, const char *key);
/* Both borrowed until the row changes. */
const char *rc_text_rows_get_key (RcTextRows *self, guint row);
const char *rc_text_rows_get_text (RcTextRows *self, guint row, guint column);
gboolean    rc_text_rows_is_blank (RcTextRows *self, guint row);
/* Puts "Tax area 2, On goods, %: " before the error, and the keyboard where it is. */
void rc_text_rows_show_fault (RcTextRows *self, guint row, guint column, GError **error);
