/* Any plain value as an item of GTK's lists, and columns that show such values as text. */
#pragma once

#include <gtk/gtk.h>

#define RC_TYPE_ROW_ITEM (rc_row_item_get_type ())
G_DECLARE_FINAL_TYPE (RcRowItem, rc_row_item, RC, ROW_ITEM, GObject)

/* Takes `value` (transfer full). */
RcRowItem *rc_row_item_new (gpointer value, GDestroyNotify free_value);
gpointer   rc_row_item_get (RcRowItem *self); /* (transfer none) */

/* A list of the values of `values` (transfer full, with its values, which `free_value` frees). */
GListModel *rc_row_item_new_list (GPtrArray *values, GDestroyNotify free_value);
/* The last first. */
void rc_row_item_turn_round (GPtrArray *values);
/* The value chosen; NULL: none. */
gpointer rc_row_item_get_chosen (GtkSingleSelection *selection);

/* What a cell says of a value. (transfer full) */
typedef char *(*RcColumnText) (gconstpointer value, gpointer data);

typedef struct
{
  const char  *title; /* translated */
  RcColumnText text;
  int          width_chars;
  gboolean     is_number, expands; /* what expands also gives way, down to half its width */
} RcColumn;

/* Appends a column that shows text; `data` outlives the view. */
void rc_row_item_add_column (GtkColumnView *view, const RcColumn *column, gpointer data);
