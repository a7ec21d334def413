/* A job measured again after goods were cut: planned anew with the pieces that lie there, at what that costs, and what
 * they no longer cover. */
#pragma once

#include "held.h"
#include "plan.h"
#include "price-book.h"

/* A way to go on with what was cut. */
typedef struct
{
  char      *name;  /* translated: "Least cost", ... */
  RcJob     *job;   /* with the cut goods among its rolls and this way's options taken; to be saved when it is taken */
  RcPlan    *plan;  /* of that job's measure */
  RcMoney    cost;  /* to the shop, from here on: goods beside those cut, seams, other goods and work, broken rules */
  GPtrArray *extra; /* of char*, translated: each piece to be cut besides, its size and the roll it comes from */
} RcCure;

typedef struct
{
  GPtrArray *cures;      /* of RcCure, the cheapest first; never empty */
  GPtrArray *shortfalls; /* of char*, translated: what the cut goods no longer cover, room by room; and which pieces the
                            cheapest cure has no use for */
} RcRemeasure;

void rc_remeasure_free (RcRemeasure *remeasure);

/* What `cut` (of RcCutGoods) no longer covers, by `plan`, which was made with it among its job's rolls
 * (rc_job_take_cut_goods), room by room; what the plan has no use for; what of an order is too much. `before` is the
 * plan the pieces were cut by. In the reader's language. (transfer full) GPtrArray of char*. */
GPtrArray *rc_remeasure_list_shortfalls (const RcPlan *plan, const RcPlan *before, const GPtrArray *cut);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcRemeasure, rc_remeasure_free)

/* Plans `measure` (NULL: the last) of the job with what it has already (`cut`, of RcCutGoods), which costs nothing
 * more, before the job's rolls and what can be bought, once for each of the planner's goals. `before` is the plan the
 * pieces were cut by. `seconds` for each plan. NULL with the planner's or the price book's error when not one way can
 * be planned. (transfer full) */
RcRemeasure *rc_remeasure_new (const RcJob *job, const char *measure, const RcPlan *before, const GPtrArray *cut,
                               const RcPriceBook *book, const char *date, double seconds, GError **error);
