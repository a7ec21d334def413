#include "wall-row.h"

#include <glib/gi18n-lib.h>

#include "bearing.h"
#include "room-edit.h"
#include "typing.h"

static GtkWidget *
put_cell (RcWallRow *row, GtkGrid *grid, GtkWidget *cell, const char *label_format, int column)
{
  g_autofree char *label = g_strdup_printf (label_format, row->index + 1);

  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_grid_attach (grid, cell, column, (int)row->index + 1, 1, 1);
  return cell;
}

static GtkWidget *
new_bearing_entry (void)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 5);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 6);
  rc_typing_prepare (GTK_EDITABLE (entry));
  return entry;
}

static GtkWidget *
new_number (guint index)
{
  g_autofree char *text = g_strdup_printf ("%u", index + 1);
  GtkWidget       *number = gtk_label_new (text);

  gtk_widget_add_css_class (number, "numeric");
  gtk_label_set_xalign (GTK_LABEL (number), 1);
  return number;
}

static GtkWidget *
new_remove_button (void)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, _ ("Take this wall out (Alt+Delete)"));
  return button;
}

/* "ne 3'": the way and the length in one. */
static gsize
take_lead (const char *text, gpointer data)
{
  RcWallRow *row = data;
  gsize      n = strspn (text, "NESWORLneswrlo");
  double     degrees = 0;

  g_strlcpy (row->lead, text, MIN (n + 1, sizeof row->lead));
  if (n == 0 || n >= sizeof row->lead || !rc_bearing_parse (row->lead, 0, &degrees, NULL))
    {
      row->lead[0] = '\0';
      return 0;
    }
  return n + strspn (text + n, " ");
}

RcWallRow *
rc_wall_row_new (GtkGrid *grid, guint index, gpointer table)
{
  RcWallRow *row = g_new0 (RcWallRow, 1);

  row->table = table;
  row->index = index;
  row->number = new_number (index);
  gtk_grid_attach (grid, row->number, 0, (int)index + 1, 1, 1);
  row->bearing = put_cell (row, grid, new_bearing_entry (), _ ("Direction of wall %u"), 1);
  row->length = put_cell (row, grid, rc_length_entry_new (), _ ("Length of wall %u"), 2);
  gtk_widget_set_hexpand (row->length, TRUE);
  rc_length_entry_set_lead (RC_LENGTH_ENTRY (row->length), take_lead, row);
  row->bow = put_cell (row, grid, rc_length_entry_new (), _ ("Bow of wall %u"), 3);
  rc_length_entry_set_optional (RC_LENGTH_ENTRY (row->bow), TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (row->bow), 4);
  row->remove = put_cell (row, grid, new_remove_button (), _ ("Take wall %u out"), 4);
  return row;
}

void
rc_wall_row_leave (RcWallRow *row, GtkGrid *grid)
{
  GtkWidget *cells[] = { row->number, row->bearing, row->length, row->bow, row->remove };

  for (guint c = 0; c < G_N_ELEMENTS (cells); c++)
    gtk_grid_remove (grid, cells[c]);
}

/* Showing. */

static double
get_bearing_before (const RcRoom *room, guint wall)
{
  return wall > 0 && wall <= room->walls->len ? g_array_index (room->walls, RcWall, wall - 1).bearing_degrees : 0;
}

static void
show_bearing (RcWallRow *row, double before, double degrees)
{
  const char      *text = gtk_editable_get_text (GTK_EDITABLE (row->bearing));
  double           typed = 0;
  g_autofree char *now = rc_bearing_format (degrees);

  if (row->is_bad_bearing)
    return;
  if (rc_bearing_parse (text, before, &typed, NULL) && typed == degrees)
    return;
  gtk_editable_set_text (GTK_EDITABLE (row->bearing), now);
}

static void
set_units (RcWallRow *row, const RcJob *job)
{
  rc_length_entry_set_units (RC_LENGTH_ENTRY (row->length), rc_job_get_bare_unit (job), rc_job_get_length_style (job));
  rc_length_entry_set_units (RC_LENGTH_ENTRY (row->bow), rc_job_get_bare_unit (job), rc_job_get_length_style (job));
}

void
rc_wall_row_show_wall (RcWallRow *row, const RcRoom *room, const RcJob *job)
{
  const RcWall *wall = &g_array_index (room->walls, RcWall, row->index);

  set_units (row, job);
  row->is_blank = FALSE;
  show_bearing (row, get_bearing_before (room, row->index), wall->bearing_degrees);
  rc_length_entry_set_value (RC_LENGTH_ENTRY (row->length), wall->length);
  rc_length_entry_set_value (RC_LENGTH_ENTRY (row->bow), wall->bow);
  gtk_widget_set_sensitive (row->bow, TRUE);
  gtk_widget_set_sensitive (row->remove, TRUE);
}

void
rc_wall_row_show_blank (RcWallRow *row, const RcRoom *room, const RcJob *job)
{
  g_autofree char *guess = rc_bearing_format (rc_room_edit_guess_bearing (room));

  set_units (row, job);
  if (!row->is_blank)
    {
      gtk_editable_set_text (GTK_EDITABLE (row->bearing), "");
      rc_length_entry_clear (RC_LENGTH_ENTRY (row->length));
      rc_length_entry_clear (RC_LENGTH_ENTRY (row->bow));
    }
  row->is_blank = TRUE;
  gtk_entry_set_placeholder_text (GTK_ENTRY (row->bearing), guess);
  gtk_widget_set_sensitive (row->bow, FALSE);
  gtk_widget_set_sensitive (row->remove, FALSE);
}

void
rc_wall_row_forget (RcWallRow *row)
{
  row->is_bad_bearing = FALSE;
  row->is_blank = FALSE;
  rc_entry_show_fault (row->bearing, NULL);
  gtk_editable_set_text (GTK_EDITABLE (row->bearing), "");
  rc_length_entry_clear (RC_LENGTH_ENTRY (row->length));
  rc_length_entry_clear (RC_LENGTH_ENTRY (row->bow));
}

/* Judging. */

gboolean
rc_wall_row_judge_bearing (RcWallRow *row)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (row->bearing));
  double      degrees = 0;
  g_autoptr (GError) error = NULL;

  row->is_bad_bearing = !(row->is_blank && *text == '\0') && !rc_bearing_parse (text, 0, &degrees, &error);
  rc_entry_show_fault (row->bearing, row->is_bad_bearing ? error->message : NULL);
  return !row->is_bad_bearing;
}

char *
rc_wall_row_dup_fault (RcWallRow *row)
{
  const char *fault = rc_length_entry_get_fault (RC_LENGTH_ENTRY (row->length));
  g_autoptr (GError) error = NULL;
  double degrees = 0;

  if (fault == NULL)
    fault = rc_length_entry_get_fault (RC_LENGTH_ENTRY (row->bow));
  if (fault == NULL && row->is_bad_bearing
      && !rc_bearing_parse (gtk_editable_get_text (GTK_EDITABLE (row->bearing)), 0, &degrees, &error))
    fault = error->message;
  return fault ? g_strdup_printf (_ ("Wall %u: %s"), row->index + 1, fault) : NULL;
}

GtkWidget *
rc_wall_row_find_column (RcWallRow *row, GtkWidget *focus)
{
  GtkWidget *cells[] = { row->bearing, row->length, row->bow, row->remove };

  for (guint c = 0; c < G_N_ELEMENTS (cells); c++)
    if (focus == cells[c] || gtk_widget_is_ancestor (focus, cells[c]))
      return cells[c];
  return NULL;
}

/* Reading. */

gboolean
rc_wall_row_write_length (RcRoom *room, const RcWallRow *row)
{
  RcLength length = rc_length_entry_get_value (RC_LENGTH_ENTRY (row->length));

  const char *text = *row->lead ? row->lead : gtk_editable_get_text (GTK_EDITABLE (row->bearing));
  double      degrees = rc_room_edit_guess_bearing (room);
  gboolean    is_way = rc_bearing_parse (text, get_bearing_before (room, row->index), &degrees, NULL);

  if (!row->is_blank)
    return (*row->lead == '\0' || (is_way && rc_room_edit_set_bearing (room, row->index, degrees)))
           && rc_room_edit_set_length (room, row->index, length);
  return rc_room_edit_insert_wall (room, row->index, degrees, length);
}

gboolean
rc_wall_row_write_bearing (RcRoom *room, const RcWallRow *row)
{
  double degrees = 0;

  return rc_bearing_parse (gtk_editable_get_text (GTK_EDITABLE (row->bearing)), get_bearing_before (room, row->index),
                           &degrees, NULL)
         && rc_room_edit_set_bearing (room, row->index, degrees);
}

gboolean
rc_wall_row_write_bow (RcRoom *room, const RcWallRow *row)
{
  return rc_room_edit_set_bow (room, row->index, rc_length_entry_get_value (RC_LENGTH_ENTRY (row->bow)));
}
