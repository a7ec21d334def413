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
/* Causes as the history keeps them, the first two with a number after them: they are worded for who reads them. */
#define RC_CAUSE_REMNANT   "remnant "
#define RC_CAUSE_ORDER     "order "
#define RC_CAUSE_DAMAGE    "damage"
#define RC_CAUSE_NO_DAMAGE "no damage"

/* `job_id` (nullable): it is left of what was cut for that job. `cause` and `notes` are nullable. */
char    *rc_stock_receive (RcStore *store, const RcRoll *roll, const char *job_id, const char *cause, const char *notes,
                           const char *now, GError **error);
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

/* The rolls with `least` or more for the job, each with as much as it has for it and what of that is kept for it.
 * (transfer full) GPtrArray of RcRoll. */
GPtrArray *rc_stock_find_rolls (RcStore *store, const char *job_id, RcLength least, GError **error);
