/* What a job has already: pieces that were cut for it, lengths on their way from a supplier, rolls in stock, of which
 * some are kept for it. What it is planned with before anything is bought. */
#pragma once

#include "plan.h"
#include "quote-line.h"
#include "ticket.h"

typedef struct _RcQuote RcQuote;

/* A piece that was cut for the job and lies ready, or a length of roll on its way from the supplier. */
typedef struct
{
  char    *piece; /* its number on the plan it was cut by; NULL: a whole length of roll, or not noted */
  char    *roll;  /* it was cut from; nullable */
  char    *order; /* the order it comes with; NULL: it is cut */
  char    *goods_id, *lot;
  RcLength width, length; /* width 0, on order: the goods' */
} RcCutGoods;

RcCutGoods *rc_cut_goods_new (const char *piece, const char *goods_id, const char *lot, RcLength width,
                              RcLength length);
/* A length of roll on order. */
RcCutGoods *rc_cut_goods_new_ordered (const char *order, const char *goods_id, RcLength length);
void        rc_cut_goods_free (RcCutGoods *cut);

/* The ticket under which the job has it as a roll. (transfer full) */
char *rc_cut_goods_dup_ticket (const RcCutGoods *one, guint index);

/* Gives the job these (of RcCutGoods) as narrow rolls of its own that cost nothing, in place of those it had so. */
void rc_job_take_cut_goods (RcJob *job, const GPtrArray *goods);
/* It has been done with just these: somebody has decided how to go on with them. */
gboolean rc_job_has_taken_cut_goods (const RcJob *job, const GPtrArray *goods);

/* An order for the job that stands, whether it has come or not. */
typedef struct
{
  char      *number, *supplier;
  char      *made;  /* day; nullable */
  GPtrArray *lines; /* of RcQuoteLine: those that are for this job */
} RcOrdered;

/* Takes the lines (transfer full). */
RcOrdered *rc_ordered_new (const char *number, const char *supplier, GPtrArray *lines);
void       rc_ordered_free (RcOrdered *ordered);

/* A length of a carpet's roll that was cut off for the job. */
typedef struct
{
  char    *goods_id;
  RcLength length; /* of the whole width; less what went back to the stock of it in the whole width */
} RcSpent;

RcSpent *rc_spent_new (const char *goods_id, RcLength length);
void     rc_spent_free (RcSpent *spent);

/* Made once, then never changed; shared by reference between threads. */
typedef struct
{
  GPtrArray      *rolls;    /* of RcRoll: the whole stock, each with what it has for this job, be it nothing */
  GPtrArray      *goods;    /* of RcCutGoods */
  GPtrArray      *orders;   /* of RcOrdered, the oldest first */
  GPtrArray      *spent;    /* of RcSpent */
  GPtrArray      *offcuts;  /* of char*: tickets of narrow remnants beside what was cut for it: `spent` holds them */
  RcQuote        *accepted; /* what the customer has accepted, variations included; NULL: nothing */
  RcQuote        *accepted_first; /* the same before any variation; nullable */
  char           *accepted_as;    /* the numbers of those quotations: "Q-1, Q-4"; NULL: none */
  gatomicrefcount refs;
} RcHeld;

/* Takes the arrays (transfer full); nothing is spent or accepted yet. */
RcHeld *rc_held_new (GPtrArray *rolls, GPtrArray *goods, GPtrArray *orders);
RcHeld *rc_held_ref (RcHeld *held);
void    rc_held_unref (RcHeld *held);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcHeld, rc_held_unref)

/* The numbers of its orders to that supplier (NULL: to any): "O-1, O-4". (transfer full) NULL when there are none. */
char *rc_held_dup_order_numbers (const RcHeld *held, const char *supplier);

/* Both nullable: a job that has nothing is as one without. */
gboolean rc_held_equal (const RcHeld *a, const RcHeld *b);

/* Something is cut for the job, ordered or kept, and `measure` (an id of the job's; NULL: the last) is not the one it
 * began with: its plan counts on that. */
gboolean rc_held_is_counted_on (const RcHeld *held, const RcJob *job, const char *measure);

/* What the customer has accepted (borrowed) where the plan of `measure` is held against it; NULL without, and where
 * that plan counts on what the job has. `held` is nullable. */
const RcQuote *rc_held_get_accepted_for (const RcHeld *held, const RcJob *job, const char *measure);

/* A piece that is cut is one of the plan's: it has the number, the goods and the size of it. */
gboolean rc_held_was_cut_by (const RcHeld *held, const RcPlan *plan);
/* The plan of an earlier measure, as it was (borrowed until the next call); NULL where there is none any more. */
typedef const RcPlan *(*RcHeldPlanFunc) (const RcMeasure *measure, gpointer data);

/* The measure before `measure` that the goods were cut by, whatever others came between. Where no cut tells it, the one
 * that they were ordered by, to judge by the days: the last that was there when the first order was made; without
 * orders the one just before. NULL: `measure` is the job's first. The plan of the one found is the last that was asked
 * for. */
const RcMeasure *rc_held_find_begun_by (const RcHeld *held, const RcJob *job, const RcMeasure *measure,
                                        RcHeldPlanFunc plan, gpointer data);

/* The job as `measure` is to be planned (transfer full).
 *
 * Measured again, it has all the stock there is of its goods, and what is cut for it or on its way at no further cost.
 * Before that and before anything is ordered or cut, its rolls are as they lie in stock now, less what others are
 * promised, and the rolls kept for it are among them; rolls that the stock does not know stay as they are. Once
 * something is ordered or cut, its first measure stays planned as it was. */
RcJob *rc_held_dup_job (const RcHeld *held, const RcJob *job, const char *measure);
/* The job planned with all that it has, whichever its measure: what is still to be bought is then the difference. */
RcJob *rc_held_dup_whole_job (const RcHeld *held, const RcJob *job);

/* Of `quantities` (of RcQuantityLine, by a plan of the whole job) what is still to be bought: carpet as it stands, as
 * the plan knows what there is of it; of all else what is ordered already is taken off, by the pack. What is in stock
 * or work is left out. RC_ERROR_REFERENCE naming goods that were ordered in a unit that cannot be converted. (transfer
 * full) GPtrArray of RcQuantityLine, which borrow goods as these do. */
GPtrArray *rc_held_list_missing (const RcHeld *held, const GPtrArray *quantities, GError **error);
