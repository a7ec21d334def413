/* The fields of one wall in the table of walls: number, direction, length, bow, and the button that takes it out.
 *
 * The row makes the fields, shows a wall in them and reads them; what follows from typing is the table's.
 */
#pragma once

#include "job.h"
#include "length-entry.h"

typedef struct
{
  gpointer   table; /* whose row it is, for the table's own callbacks; not owned */
  guint      index;
  gboolean   is_blank; /* the row for the next wall */
  gboolean   is_bad_bearing;
  char       lead[4]; /* the direction typed before the length: "NE"; "" for none */
  GtkWidget *number, *bearing, *length, *bow, *remove;
} RcWallRow;

/* Puts the fields into the grid, under its head. Free with g_free; the widgets are the grid's. (transfer full) */
RcWallRow *rc_wall_row_new (GtkGrid *grid, guint index, gpointer table);
void       rc_wall_row_leave (RcWallRow *row, GtkGrid *grid);

/* The wall of the row's number, the room given by walls; what was typed wrongly stays until it is mended. */
void rc_wall_row_show_wall (RcWallRow *row, const RcRoom *room, const RcJob *job);
/* Empty, with a guess where the next wall of the room goes. */
void rc_wall_row_show_blank (RcWallRow *row, const RcRoom *room, const RcJob *job);
/* Empties the fields whatever is in them: the walls of another room are to be shown. */
void rc_wall_row_forget (RcWallRow *row);

/* Notes whether the direction can be read. */
gboolean rc_wall_row_judge_bearing (RcWallRow *row);
/* What is wrong with the typed text, with the wall's number; NULL: nothing. (transfer full) */
char *rc_wall_row_dup_fault (RcWallRow *row);

/* The field that has the focus, NULL when it is none of the row's. */
GtkWidget *rc_wall_row_find_column (RcWallRow *row, GtkWidget *focus);

/* What is in the fields, written into a room given by walls. FALSE: nothing to write. */
typedef gboolean (*RcWallRowWrite) (RcRoom *room, const RcWallRow *row);

gboolean rc_wall_row_write_length (RcRoom *room, const RcWallRow *row); /* in the blank row, puts the wall in */
gboolean rc_wall_row_write_bearing (RcRoom *room, const RcWallRow *row);
gboolean rc_wall_row_write_bow (RcRoom *room, const RcWallRow *row);
