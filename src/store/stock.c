#include "stock.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "stock-within.h"
#include "store-private.h"

static const char *const move_names[]
    = { "received", "reserved", "released", "cut", "corrected", "placed", "taken-out" };
G_STATIC_ASSERT (G_N_ELEMENTS (move_names) == RC_N_MOVES);

const char *
rc_move_kind_get_name (RcMoveKind kind)
{
  g_return_val_if_fail ((guint)kind < RC_N_MOVES, "");
  return move_names[kind];
}

const char *
rc_move_kind_get_label (RcMoveKind kind)
{
  static const char *const labels[] = { N_ ("Received"),  N_ ("Reserved"), N_ ("Released"), N_ ("Cut"),
                                        N_ ("Corrected"), N_ ("Moved"),    N_ ("Taken out") };

  g_return_val_if_fail ((guint)kind < RC_N_MOVES, "");
  return _ (labels[kind]);
}

/* --- each as one transaction --- */

static gboolean
finish (RcStore *store, gboolean done, const char *doing, GError **error)
{
  return done ? rc_store_commit (store, doing, error) : rc_store_rollback (store);
}

char *
rc_store_receive_roll (RcStore *store, const RcRoll *roll, const char *notes, const char *now, GError **error)
{
  const char *doing = _ ("Receiving a roll");
  char       *id;

  g_return_val_if_fail (store != NULL && roll != NULL && now != NULL, NULL);

  if (!rc_store_begin (store, doing, error))
    return NULL;
  id = rc_stock_receive (store, roll, NULL, NULL, notes, now, error);
  if (!finish (store, id != NULL, doing, error))
    g_clear_pointer (&id, g_free);
  return id;
}

gboolean
rc_store_reserve_roll (RcStore *store, const char *roll_id, const char *job_id, RcLength length, const char *now,
                       GError **error)
{
  g_autofree char *doing = g_strdup_printf (_ ("Reserving roll %s"), roll_id);

  g_return_val_if_fail (store != NULL && roll_id != NULL && job_id != NULL && now != NULL, FALSE);

  return rc_store_begin (store, doing, error)
         && finish (store, rc_stock_reserve (store, roll_id, job_id, length, now, error), doing, error);
}

gboolean
rc_store_cut_roll (RcStore *store, const char *roll_id, const char *job_id, RcLength length, const GPtrArray *pieces,
                   GPtrArray *remnants, RcLength balance, const char *now, GError **error)
{
  g_autofree char *doing = g_strdup_printf (_ ("Cutting roll %s"), roll_id);

  g_return_val_if_fail (store != NULL && roll_id != NULL && job_id != NULL && now != NULL, FALSE);

  return rc_store_begin (store, doing, error)
         && finish (store, rc_stock_cut (store, roll_id, job_id, length, pieces, remnants, balance, now, error), doing,
                    error);
}

gboolean
rc_store_correct_roll (RcStore *store, const char *roll_id, RcLength length, const char *notes, const char *now,
                       GError **error)
{
  g_autofree char *doing = g_strdup_printf (_ ("Correcting roll %s"), roll_id);

  g_return_val_if_fail (store != NULL && roll_id != NULL && now != NULL, FALSE);

  return rc_store_begin (store, doing, error)
         && finish (store, rc_stock_correct (store, roll_id, length, notes, now, error), doing, error);
}

gboolean
rc_store_mark_damage (RcStore *store, const char *roll_id, const GArray *flaws, const char *now, GError **error)
{
  g_autofree char *doing = g_strdup_printf (_ ("Correcting roll %s"), roll_id);

  g_return_val_if_fail (store != NULL && roll_id != NULL && flaws != NULL && now != NULL, FALSE);

  return rc_store_begin (store, doing, error)
         && finish (store, rc_stock_mark_damage (store, roll_id, flaws, now, error), doing, error);
}

gboolean
rc_store_place_roll (RcStore *store, const char *roll_id, const char *place, const char *now, GError **error)
{
  g_autofree char *doing = g_strdup_printf (_ ("Moving roll %s"), roll_id);

  g_return_val_if_fail (store != NULL && roll_id != NULL && now != NULL, FALSE);

  return rc_store_begin (store, doing, error)
         && finish (store, rc_stock_place (store, roll_id, place, now, error), doing, error);
}

gboolean
rc_store_amend_roll (RcStore *store, const RcRoll *roll, const char *notes, const char *now, GError **error)
{
  g_autofree char *doing = NULL;

  g_return_val_if_fail (store != NULL && roll != NULL && roll->id != NULL && now != NULL, FALSE);

  doing = g_strdup_printf (_ ("Correcting roll %s"), roll->id);
  return rc_store_begin (store, doing, error)
         && finish (store, rc_stock_amend (store, roll, notes, now, error), doing, error);
}

gboolean
rc_store_get_available (RcStore *store, const char *roll_id, const char *job_id, RcLength *length, GError **error)
{
  RcStanding standing;

  g_return_val_if_fail (store != NULL && roll_id != NULL && length != NULL, FALSE);

  if (!rc_stock_find_standing (store, roll_id, job_id, &standing, error))
    return FALSE;
  *length = standing.length - standing.others;
  return TRUE;
}
