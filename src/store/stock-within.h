/* What can be done with rolls, each within a transaction that is open: stock.h says what of each. Used inside this
 * folder only.
 */
#pragma once

#include "stock.h"

/* The roll's length, what is promised to the job, and what to others. */
typedef struct
{
  gint64 length, own, others;
} RcStanding;

gboolean rc_stock_find_standing (RcStore *store, const char *roll_id, const char *job_id, RcStanding *standing,
                                 GError **error);
char    *rc_stock_receive (RcStore *store, const RcRoll *roll, const char *notes, const char *now, GError **error);
gboolean rc_stock_reserve (RcStore *store, const char *roll_id, const char *job_id, RcLength length, const char *now,
                           GError **error);
gboolean rc_stock_cut (RcStore *store, const char *roll_id, const char *job_id, RcLength length,
                       const GPtrArray *pieces, GPtrArray *remnants, RcLength balance, const char *now, GError **error);
gboolean rc_stock_correct (RcStore *store, const char *roll_id, RcLength length, const char *notes, const char *now,
                           GError **error);
gboolean rc_stock_mark_damage (RcStore *store, const char *roll_id, const GArray *flaws, const char *now,
                               GError **error);
gboolean rc_stock_place (RcStore *store, const char *roll_id, const char *place, const char *now, GError **error);
gboolean rc_stock_amend (RcStore *store, const RcRoll *roll, const char *notes, const char *now, GError **error);
