/* Orders to suppliers as they are kept: made from an RcOrder, sent, confirmed, received in parts. Public like store.h,
 * which includes it. Days are ISO 8601. RC_ERROR_REFERENCE when there is no order of that number. */
#pragma once

#include "quote.h"
#include "remeasure.h"

typedef struct _RcStore RcStore;

typedef enum
{
  RC_PURCHASE_MADE, /* not sent yet */
  RC_PURCHASE_SENT,
  RC_PURCHASE_CONFIRMED,
  RC_PURCHASE_PARTLY, /* something of it has come, whether it was noted as sent or not; found of its lines, not kept */
  RC_PURCHASE_RECEIVED, /* all of it */
  RC_PURCHASE_CANCELLED,
  RC_N_PURCHASE_STATES
} RcPurchaseState;

const char *rc_purchase_state_get_label (RcPurchaseState state); /* translated */

typedef struct
{
  char           *number, *supplier;
  RcPurchaseState state;
  char      *made, *sent, *confirmed, *received; /* days; all but `made` nullable; `received`: of the last that came */
  char      *reference;                          /* the supplier's number; nullable */
  char      *due;                                /* nullable */
  char      *notes;                              /* lines parted by \n */
  char      *jobs;                               /* ids, parted by ", " */
  RcCurrency currency;
  RcMoney    net, tax, total;
  GPtrArray *lines;          /* of RcQuoteLine at cost; empty in a list */
  GArray    *received_micro; /* of gint64: what has come in of each line */
  guint      n_open;         /* lines that have not come in whole */
} RcPurchase;

void rc_purchase_free (RcPurchase *purchase);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPurchase, rc_purchase_free)

/* Which of its jobs a line is for. */
gboolean rc_purchase_is_for (const RcPurchase *order, const RcQuoteLine *line, const RcJob *job);

/* Keeps orders (of RcOrder) for the jobs (char*, ids), numbered O-n, all of them or none. `known` (nullable) has for
 * each job the numbers of its orders that these reckon with (char*, as rc_held_dup_order_numbers; NULL: none): where it
 * has others, nothing is made, and RC_ERROR_CONFLICT names them, so that goods are not ordered twice. (transfer full)
 * GPtrArray of their numbers. */
GPtrArray *rc_store_make_purchases (RcStore *store, const GPtrArray *orders, const GPtrArray *job_ids,
                                    const GPtrArray *known, const char *day, GError **error);
/* The same of one order. (transfer full) its number. */
char *rc_store_make_purchase (RcStore *store, const RcOrder *order, const GPtrArray *job_ids, const char *day,
                              GError **error);

/* Latest last; of one job, or of all (NULL). Without lines. (transfer full) GPtrArray of RcPurchase. */
GPtrArray *rc_store_find_purchases (RcStore *store, const char *job_id, GError **error);
/* With lines. (transfer full) */
RcPurchase *rc_store_load_purchase (RcStore *store, const char *number, GError **error);

gboolean rc_store_send_purchase (RcStore *store, const char *number, const char *day, GError **error);
/* The supplier has confirmed it: their number and the day it is due (each nullable). */
gboolean rc_store_confirm_purchase (RcStore *store, const char *number, const char *reference, const char *due,
                                    const char *day, GError **error);
/* RC_ERROR_RANGE once something has come in. */
gboolean rc_store_cancel_purchase (RcStore *store, const char *number, const char *day, GError **error);

/* What has come in of one line of an order. */
typedef struct
{
  guint    line;           /* from 0 */
  gint64   quantity_micro; /* in the line's unit; less than a thousandth beside what is open is all of that */
  RcRoll  *roll; /* the carpet put into stock, borrowed; its id, where NULL, is filled in. NULL for other goods */
  RcLength kept; /* of the roll, for the job that the line was ordered for */
} RcArrival;

/* All that came in at once: the lines noted and the rolls in stock, kept for their jobs, or nothing of it.
 * RC_ERROR_RANGE when more comes in of a line than was ordered and has not come yet. When nothing is open any more the
 * order is received. `arrivals` is of RcArrival; `day` is noted in the order, `now` in the rolls'
 * histories. */
gboolean rc_store_receive_order (RcStore *store, const char *number, GArray *arrivals, const char *day, const char *now,
                                 GError **error);

/* The same of one line of goods that are no rolls. */
gboolean rc_store_receive_line (RcStore *store, const char *number, guint line, gint64 quantity_micro, const char *day,
                                GError **error);
