/* What one or many jobs need, ordered: one order per supplier, kept in the store. */
#pragma once

#include "outcome.h"
#include "roll-claims.h"
#include "store.h"

typedef struct
{
  RcStore      *store; /* borrowed */
  RcPriceBook  *book;
  char         *day;
  GPtrArray    *orders; /* of RcOrder */
  GPtrArray    *jobs;   /* of char*: ids of the jobs in them */
  GPtrArray    *known;  /* of char*: for each, its orders before (nullable) */
  GPtrArray    *stock;  /* of char*, translated: what is not ordered, as it is there */
  RcRollClaims *claims;
} RcOrderMaker;

/* NULL with the store's error. (transfer full) */
RcOrderMaker *rc_order_maker_new (RcStore *store, const char *day, GError **error);
void          rc_order_maker_free (RcOrderMaker *maker);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcOrderMaker, rc_order_maker_free)

/* Takes in what the job needs: as the outcome says, which is its own, or NULL: it is loaded and planned. Where the job
 * has orders already, only what is missing beside them. FALSE and RC_ERROR_CONFLICT naming the roll that another job
 * wants too; else the planner's or the price book's error. */
gboolean rc_order_maker_add_job (RcOrderMaker *maker, const char *job_id, RcOutcome *outcome, GError **error);

/* Keeps the orders. What is in stock for all is no order: then there are none. (transfer full) GPtrArray of char*:
 * their numbers; NULL with the store's error. */
GPtrArray *rc_order_maker_keep (RcOrderMaker *maker, GError **error);
