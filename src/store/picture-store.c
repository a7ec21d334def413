#include <glib/gi18n-lib.h>

#include "query.h"

void
rc_plan_picture_free (RcPlanPicture *picture)
{
  if (picture == NULL)
    return;
  g_free (picture->name);
  g_free (picture->digest);
  g_free (picture);
}

GPtrArray *
rc_store_load_pictures (RcStore *store, const char *job_id, GError **error)
{
  g_autoptr (GPtrArray) pictures = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_plan_picture_free);
  g_auto (RcQuery) query = { 0 };

  g_return_val_if_fail (store != NULL && job_id != NULL, NULL);

  if (!rc_query_start (&query, store,
                       "SELECT storey, name, digest, page, x_ticks, y_ticks, ticks_per_1000px, turn_millidegrees,"
                       " strength_percent FROM pictures WHERE job_id = ? ORDER BY storey",
                       RC_VALUES (rc_value_text (job_id)), error))
    return NULL;
  while (rc_query_next (&query, error))
    {
      RcPlanPicture *picture = g_new0 (RcPlanPicture, 1);
      picture->storey = (int)rc_query_get_integer (&query, 0);
      picture->name = rc_query_dup_text (&query, 1);
      picture->digest = rc_query_dup_text (&query, 2);
      picture->page = (guint)rc_query_get_integer (&query, 3);
      picture->at = (RcPoint){ rc_query_get_integer (&query, 4), rc_query_get_integer (&query, 5) };
      picture->ticks_per_1000px = rc_query_get_integer (&query, 6);
      picture->turn_millidegrees = rc_query_get_integer (&query, 7);
      picture->strength_percent = (guint)rc_query_get_integer (&query, 8);
      g_ptr_array_add (pictures, picture);
    }
  return query.failed ? NULL : g_steal_pointer (&pictures);
}

static gboolean
change (RcStore *store, const char *sql, const RcValue *values, guint n_values, GError **error)
{
  const char *doing = _ ("Keeping a plan picture");

  if (!rc_store_begin (store, doing, error))
    return FALSE;
  if (!rc_query_run (store, sql, values, n_values, error))
    return rc_store_rollback (store);
  return rc_store_commit (store, doing, error);
}

gboolean
rc_store_save_picture (RcStore *store, const char *job_id, const RcPlanPicture *picture, GError **error)
{
  g_return_val_if_fail (store != NULL && job_id != NULL && picture != NULL && picture->digest != NULL, FALSE);

  return change (store,
                 "INSERT INTO pictures (job_id, storey, name, digest, page, x_ticks, y_ticks, ticks_per_1000px,"
                 " turn_millidegrees, strength_percent) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"
                 " ON CONFLICT (job_id, storey) DO UPDATE SET name = excluded.name, digest = excluded.digest,"
                 " page = excluded.page, x_ticks = excluded.x_ticks, y_ticks = excluded.y_ticks,"
                 " ticks_per_1000px = excluded.ticks_per_1000px, turn_millidegrees = excluded.turn_millidegrees,"
                 " strength_percent = excluded.strength_percent",
                 RC_VALUES (rc_value_text (job_id), rc_value_integer (picture->storey), rc_value_text (picture->name),
                            rc_value_text (picture->digest), rc_value_integer (picture->page),
                            rc_value_integer (picture->at.x), rc_value_integer (picture->at.y),
                            rc_value_integer (picture->ticks_per_1000px), rc_value_integer (picture->turn_millidegrees),
                            rc_value_integer (picture->strength_percent)),
                 error);
}

gboolean
rc_store_delete_picture (RcStore *store, const char *job_id, int storey, GError **error)
{
  g_return_val_if_fail (store != NULL && job_id != NULL, FALSE);

  return change (store, "DELETE FROM pictures WHERE job_id = ? AND storey = ?",
                 RC_VALUES (rc_value_text (job_id), rc_value_integer (storey)), error);
}
