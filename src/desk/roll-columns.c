#include "roll-columns.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "row-item.h"
#include "stock-line.h"
#include "usual-units.h"

/* --- what a cell says --- */

/* Lengths as the open job writes them, else as is usual here. */
static const RcLengthStyle *
get_style (gpointer window)
{
  RcDocument *document = rc_window_get_document (window);

  return rc_usual_units_get_style (document != NULL ? rc_document_get_job (document) : NULL);
}

static char *
dup_length (gpointer window, RcLength length)
{
  return length > 0 ? rc_length_format (length, get_style (window)) : g_strdup ("");
}

static char *
say_ticket (gconstpointer value, gpointer data)
{
  const RcStockLine *line = value;

  return line->roll->remnant ? g_strdup_printf (_ ("%s, remnant"), line->roll->id) : g_strdup (line->roll->id);
}

static char *
say_goods (gconstpointer value, gpointer data)
{
  return g_strdup (((const RcStockLine *)value)->goods_name);
}

static char *
say_lot (gconstpointer value, gpointer data)
{
  const char *lot = ((const RcStockLine *)value)->roll->lot;

  return g_strdup (lot != NULL ? lot : "");
}

static char *
say_width (gconstpointer value, gpointer data)
{
  return dup_length (data, ((const RcStockLine *)value)->width);
}

static char *
say_length (gconstpointer value, gpointer data)
{
  return dup_length (data, ((const RcStockLine *)value)->roll->length);
}

static char *
say_kept (gconstpointer value, gpointer data)
{
  const RcStockLine *line = value;
  g_autofree char   *length = dup_length (data, line->kept);

  return line->kept > 0 ? g_strdup_printf ("%s, %s", length, line->jobs) : g_strdup ("");
}

static char *
say_free (gconstpointer value, gpointer data)
{
  const RcStockLine *line = value;

  return rc_length_format (line->roll->length - line->kept, get_style (data));
}

static char *
say_place (gconstpointer value, gpointer data)
{
  const char *place = ((const RcStockLine *)value)->roll->place;

  return g_strdup (place != NULL ? place : "");
}

/* --- history --- */

static char *
say_day (gconstpointer value, gpointer data)
{
  g_autofree char *text = g_strndup (((const RcRollMove *)value)->made, strlen ("2026-11-26T10:30"));

  return g_strdelimit (g_steal_pointer (&text), "T", ' ');
}

static char *
say_move (gconstpointer value, gpointer data)
{
  return g_strdup (rc_move_kind_get_label (((const RcRollMove *)value)->kind));
}

static char *
say_move_job (gconstpointer value, gpointer data)
{
  return g_strdup (((const RcRollMove *)value)->job_id);
}

static char *
say_move_length (gconstpointer value, gpointer data)
{
  const RcRollMove *move = value;
  g_autofree char  *length = dup_length (data, ABS (move->length));

  return g_strdup_printf ("%s%s", move->length < 0 ? "−" : "", length);
}

static char *
say_balance (gconstpointer value, gpointer data)
{
  return rc_length_format (((const RcRollMove *)value)->balance, get_style (data));
}

static char *
say_notes (gconstpointer value, gpointer data)
{
  return g_strdup (((const RcRollMove *)value)->notes);
}

void
rc_roll_columns_add (GtkColumnView *rolls, GtkColumnView *moves, RcWindow *window)
{
  const RcColumn columns[]
      = { { _ ("Ticket"), say_ticket, 13, FALSE, FALSE }, { _ ("Goods"), say_goods, 20, FALSE, TRUE },
          { _ ("Lot"), say_lot, 7, FALSE, FALSE },        { _ ("Width"), say_width, 7, TRUE, FALSE },
          { _ ("Length"), say_length, 9, TRUE, FALSE },   { _ ("Promised"), say_kept, 14, FALSE, FALSE },
          { _ ("Free"), say_free, 9, TRUE, FALSE },       { _ ("Place"), say_place, 9, FALSE, FALSE } };
  const RcColumn move_columns[] = { { _ ("When (UTC)"), say_day, 16, FALSE, FALSE },
                                    { _ ("What"), say_move, 12, FALSE, FALSE },
                                    { _ ("Job"), say_move_job, 8, FALSE, FALSE },
                                    { _ ("Length"), say_move_length, 10, TRUE, FALSE },
                                    { _ ("Left on the roll"), say_balance, 10, TRUE, FALSE },
                                    { _ ("Notes"), say_notes, 20, FALSE, TRUE } };

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    rc_row_item_add_column (rolls, &columns[i], window);
  for (guint i = 0; i < G_N_ELEMENTS (move_columns); i++)
    rc_row_item_add_column (moves, &move_columns[i], window);
}
