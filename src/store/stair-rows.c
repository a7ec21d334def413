#include "stair-rows.h"

#include <glib/gi18n-lib.h>

#include "job-rows.h"

/* Columns of a stair's row: see rc_stair_rows_drop_turns. They stay, for steps recorded before have them. */
enum
{
  TURN_KIND = 18,
  TURN_AFTER,
  TURN_WINDERS,
  TURN_GOING,
  TURN_WIDTH,
  TURN_BEND = 24
};

#define NO_TURN "straight"
#define NO_BEND "left"

static void
add_turns (const RcMeasure *measure, const RcStair *stair, RcRowSet *rows)
{
  for (guint i = 0; i < stair->turns->len; i++)
    {
      const RcStairTurn *turn = rc_stair_get_turn (stair, i);

      rc_row_set_add (rows, RC_TABLE_STAIR_TURNS,
                      RC_VALUES (rc_value_text (measure->id), rc_value_text (stair->id), rc_value_integer (i),
                                 rc_value_text (rc_turn_kind_get_name (turn->kind)),
                                 rc_value_text (rc_bend_get_name (turn->bend)), rc_value_integer (turn->after),
                                 rc_value_integer (turn->winders), rc_value_integer (turn->going),
                                 rc_value_integer (turn->width)));
    }
}

void
rc_stair_rows_add (const RcMeasure *measure, RcRowSet *rows)
{
  for (guint i = 0; i < measure->stairs->len; i++)
    {
      const RcStair *stair = measure->stairs->pdata[i];

      rc_row_set_add (
          rows, RC_TABLE_STAIRS,
          RC_VALUES (
              rc_value_text (measure->id), rc_value_text (stair->id), rc_value_integer (i), rc_value_text (stair->name),
              rc_value_integer (stair->steps), rc_value_integer (stair->rise), rc_value_integer (stair->going),
              rc_value_integer (stair->width), rc_value_text (rc_stair_style_get_name (stair->style)),
              rc_value_integer (stair->nose_extra), rc_value_integer (stair->end_extra),
              rc_value_integer (stair->width_extra), rc_value_text (stair->carpet), rc_value_text (stair->cushion),
              rc_value_text (stair->notes), rc_value_text (rc_stair_cutting_get_name (stair->cutting)),
              rc_value_integer (stair->runner_width), rc_value_integer (stair->curved_width), rc_value_text (NO_TURN),
              rc_value_integer (0), rc_value_integer (0), rc_value_integer (0), rc_value_integer (0),
              rc_value_integer (stair->piece_extra), rc_value_text (NO_BEND), rc_value_integer (stair->placed != FALSE),
              rc_value_integer (stair->floor), rc_value_integer (stair->at.x), rc_value_integer (stair->at.y),
              rc_value_integer (stair->bearing_degrees)));
      add_turns (measure, stair, rows);
    }
}

/* `figures`: four columns in a row, the steps below, the winders, the going and the width. */
static gboolean
build_turn (RcStair *stair, const RcValue *kind, const RcValue *bend, const RcValue *figures, GError **error)
{
  RcStairTurn turn = { .after = (guint)rc_value_get_integer (&figures[0]),
                       .winders = (guint)rc_value_get_integer (&figures[1]),
                       .going = rc_value_get_integer (&figures[2]),
                       .width = rc_value_get_integer (&figures[3]) };

  if (!rc_turn_kind_parse (rc_value_get_text (kind), &turn.kind, error)
      || !rc_bend_parse (rc_value_get_text (bend), &turn.bend, error))
    return FALSE;
  g_array_append_val (stair->turns, turn);
  return TRUE;
}

static gboolean
has_old_turn (const RcValue *row)
{
  return g_strcmp0 (rc_value_get_text (&row[TURN_KIND]), NO_TURN) != 0;
}

static gboolean
build_stairs (const RcRowSet *rows, RcJob *job, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_STAIRS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_STAIRS, i);
      RcMeasure     *measure = rc_measure_rows_find (job, RC_TABLE_STAIRS, row, error);
      RcStair       *stair;

      if (measure == NULL)
        return FALSE;
      stair = rc_stair_new (rc_value_get_text (&row[1]), rc_value_get_text (&row[3]));
      g_ptr_array_add (measure->stairs, stair);
      stair->steps = (guint)rc_value_get_integer (&row[4]);
      stair->rise = rc_value_get_integer (&row[5]);
      stair->going = rc_value_get_integer (&row[6]);
      stair->width = rc_value_get_integer (&row[7]);
      stair->nose_extra = rc_value_get_integer (&row[9]);
      stair->end_extra = rc_value_get_integer (&row[10]);
      stair->width_extra = rc_value_get_integer (&row[11]);
      stair->carpet = rc_value_dup_text (&row[12]);
      stair->cushion = rc_value_dup_text (&row[13]);
      stair->notes = rc_value_dup_text (&row[14]);
      stair->runner_width = rc_value_get_integer (&row[16]);
      stair->curved_width = rc_value_get_integer (&row[17]);
      stair->piece_extra = rc_value_get_integer (&row[23]);
      stair->placed = rc_value_get_integer (&row[25]) != 0;
      stair->floor = (int)rc_value_get_integer (&row[26]);
      stair->at = (RcPoint){ rc_value_get_integer (&row[27]), rc_value_get_integer (&row[28]) };
      stair->bearing_degrees = (int)rc_value_get_integer (&row[29]);
      if (!rc_stair_style_parse (rc_value_get_text (&row[8]), &stair->style, error)
          || !rc_stair_cutting_parse (rc_value_get_text (&row[15]), &stair->cutting, error)
          || (has_old_turn (row) && !build_turn (stair, &row[TURN_KIND], &row[TURN_BEND], &row[TURN_AFTER], error)))
        {
          g_prefix_error (error, _ ("stair %s: "), stair->id);
          return FALSE;
        }
    }
  return TRUE;
}

static gboolean
build_turns (const RcRowSet *rows, RcJob *job, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_STAIR_TURNS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_STAIR_TURNS, i);
      RcMeasure     *measure = rc_measure_rows_find (job, RC_TABLE_STAIR_TURNS, row, error);
      RcStair       *stair = measure != NULL ? rc_measure_find_stair (measure, rc_value_get_text (&row[1])) : NULL;

      if (measure == NULL)
        return FALSE;
      if (stair == NULL)
        {
          g_set_error (error, RC_ERROR, RC_ERROR_STORE,
                       _ ("a row of stair_turns belongs to no stair (%s of measure %s)"), rc_value_get_text (&row[1]),
                       measure->id);
          return FALSE;
        }
      if (!build_turn (stair, &row[3], &row[4], &row[5], error))
        {
          g_prefix_error (error, _ ("stair %s: "), stair->id);
          return FALSE;
        }
    }
  return TRUE;
}

gboolean
rc_stair_rows_build (const RcRowSet *rows, RcJob *job, GError **error)
{
  return build_stairs (rows, job, error) && build_turns (rows, job, error);
}

gboolean
rc_stair_rows_drop_turns (RcRowSet *rows)
{
  gboolean found = FALSE;

  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_STAIRS); i++)
    {
      found |= has_old_turn (rc_row_set_get (rows, RC_TABLE_STAIRS, i));
      rc_row_set_put (rows, RC_TABLE_STAIRS, i, TURN_KIND, rc_value_text (NO_TURN));
      for (guint column = TURN_AFTER; column <= TURN_WIDTH; column++)
        rc_row_set_put (rows, RC_TABLE_STAIRS, i, column, rc_value_integer (0));
      rc_row_set_put (rows, RC_TABLE_STAIRS, i, TURN_BEND, rc_value_text (NO_BEND));
    }
  return found;
}
