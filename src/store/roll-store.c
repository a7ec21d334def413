#include <glib/gi18n-lib.h>

#include "query.h"
#include "roll-rows.h"

GPtrArray *
rc_store_load_rolls (RcStore *store, GError **error)
{
  g_autoptr (GPtrArray) rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL, NULL);

  if (!rc_query_start (
          &query, store,
          "SELECT id, goods, lot, length_ticks, remnant, place, width_ticks, flaws FROM rolls ORDER BY goods, id", NULL,
          0, error))
    return NULL;
  while (rc_query_next (&query, error))
    g_ptr_array_add (rolls, rc_roll_rows_read (&query));
  return query.failed ? NULL : g_steal_pointer (&rolls);
}

static gboolean
change (RcStore *store, const char *doing, const char *sql, const RcValue *values, guint n_values, GError **error)
{
  if (!rc_store_begin (store, doing, error))
    return FALSE;
  if (!rc_query_run (store, sql, values, n_values, error))
    return rc_store_rollback (store);
  return rc_store_commit (store, doing, error);
}

gboolean
rc_store_save_roll (RcStore *store, const RcRoll *roll, GError **error)
{
  g_autofree char *doing = NULL, *flaws = NULL;

  g_return_val_if_fail (store != NULL && roll != NULL && roll->id != NULL, FALSE);

  if (roll->length < 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("Roll %s: its length cannot be below nothing."), roll->id);
      return FALSE;
    }
  doing = g_strdup_printf (_ ("Saving roll %s"), roll->id);
  flaws = rc_roll_rows_format_flaws (roll->flaws);
  return change (store, doing,
                 "INSERT INTO rolls (id, goods, lot, length_ticks, remnant, place, width_ticks, flaws)"
                 " VALUES (?, ?, ?, ?, ?, ?, ?, ?)"
                 " ON CONFLICT (id) DO UPDATE SET goods = excluded.goods, lot = excluded.lot,"
                 " length_ticks = excluded.length_ticks, remnant = excluded.remnant, place = excluded.place,"
                 " width_ticks = excluded.width_ticks, flaws = excluded.flaws",
                 RC_VALUES (rc_value_text (roll->id), rc_value_text (roll->goods_id), rc_value_text (roll->lot),
                            rc_value_integer (roll->length), rc_value_integer (roll->remnant != FALSE),
                            rc_value_text (roll->place), rc_value_integer (roll->width), rc_value_text (flaws)),
                 error);
}

gboolean
rc_store_delete_roll (RcStore *store, const char *id, GError **error)
{
  g_autofree char *doing = NULL;
  gint64           n_rolls;

  g_return_val_if_fail (store != NULL && id != NULL, FALSE);

  if (!rc_query_find_integer (store, "SELECT count (*) FROM rolls WHERE id = ?", RC_VALUES (rc_value_text (id)), 0,
                              &n_rolls, error))
    return FALSE;
  if (n_rolls == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no roll %s in stock."), id);
      return FALSE;
    }
  doing = g_strdup_printf (_ ("Deleting roll %s"), id);
  return change (store, doing, "DELETE FROM rolls WHERE id = ?", RC_VALUES (rc_value_text (id)), error);
}
