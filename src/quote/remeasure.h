/* A job measured again after goods were cut: planned anew with the pieces that lie there, at what that costs, and what
 * they no longer cover. */
#pragma once

#include "plan.h"
#include "price-book.h"

/* What the job has already: a piece that was cut for it and lies ready, or a length of roll on its way from the
 * supplier. */
typedef struct
{
  char    *piece; /* its number on the plan it was cut by; nullable */
  char    *order; /* the order it comes with; NULL: it is cut */
  char    *goods_id, *lot;
  RcLength width, length; /* width 0, on order: the goods' */
} RcCutGoods;

RcCutGoods *rc_cut_goods_new (const char *piece, const char *goods_id, const char *lot, RcLength width,
                              RcLength length);
/* A length of roll on order. */
RcCutGoods *rc_cut_goods_new_ordered (const char *order, const char *goods_id, RcLength length);
void        rc_cut_goods_free (RcCutGoods *cut);

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

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcRemeasure, rc_remeasure_free)

/* Plans `measure` (NULL: the last) of the job with what it has already (`cut`, of RcCutGoods), which costs nothing
 * more, before the job's rolls and what can be bought, once for each of the planner's goals. `before` is the plan the
 * pieces were cut by. `seconds` for each plan. NULL with the planner's or the price book's error when not one way can
 * be planned. (transfer full) */
RcRemeasure *rc_remeasure_new (const RcJob *job, const char *measure, const RcPlan *before, const GPtrArray *cut,
                               const RcPriceBook *book, const char *date, double seconds, GError **error);
