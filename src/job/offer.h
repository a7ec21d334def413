/* What the office settles for a job's quotation, beside what is measured: discounts, optional lines, further goods and
 * work, steps of payment, and other ways to do the job that the customer may choose from. Rates are parts per million.
 */
#pragma once

#include "money.h"
#include "unit.h"

/* How much of the figures the customer sees; the sums are the same. */
typedef enum
{
  RC_DETAIL_FULL,    /* quantity, price and amount of each line */
  RC_DETAIL_AMOUNTS, /* the amount of each line */
  RC_DETAIL_GROUPS,  /* one sum for goods, one for work */
  RC_N_DETAILS
} RcDetail;

const char *rc_detail_get_name (RcDetail detail); /* stable: "full", "amounts", "groups" */
gboolean    rc_detail_parse (const char *name, RcDetail *detail, GError **error);
const char *rc_detail_get_label (RcDetail detail); /* translated */

/* What is special about the lines of one item. */
typedef struct
{
  char    *item;         /* goods id, name of work, or id of a further line */
  gboolean optional;     /* priced beside the total, which leaves it out */
  gboolean hidden;       /* not shown by itself: in the sum "other goods and work" */
  gint64   discount_ppm; /* of the line's amount */
  gint64   tax_ppm;      /* the line's own rate; -1: that of the tax area */
} RcLineTerms;

/* Goods or work that no plan implies: moving furniture, taking up and disposing of the old floor, a rug. */
typedef struct
{
  char    *id;   /* unique in the job: "X1" */
  char    *item; /* of the price book, whose name, price and cost it has; NULL: a line of its own */
  char    *name; /* NULL: the price book's */
  gint64   quantity_micro;
  RcUnit   unit;
  RcMoney  price, cost; /* per unit, of a line of its own */
  gboolean is_work;     /* of a line of its own */
} RcExtraLine;

/* A step of payment: a part of the total. */
typedef struct
{
  char  *name; /* "With the order", "When fitted" */
  gint64 part_ppm;
  int    days; /* after the step's event; 0: at once */
} RcPayment;

/* Another carpet or another plan for one area (or another carpet for one stair). */
typedef struct
{
  char *place;  /* id of the area or stair */
  char *carpet; /* goods id; NULL: as it is */
  char *option; /* name of the plan's option; NULL: as it is */
} RcSwap;

/* Another way to do the job, quoted beside the first. */
typedef struct
{
  char      *id;    /* unique in the job: "B" */
  char      *name;  /* "Quillstone Saxony throughout" */
  GPtrArray *swaps; /* of RcSwap */
} RcAlternative;

typedef struct
{
  gint64     discount_ppm; /* of the sum of the lines */
  RcMoney    discount;     /* a sum off besides, in the job's currency */
  RcDetail   detail;
  int        valid_days;   /* 0: the price book's */
  char      *terms;        /* NULL: the price book's */
  char      *tax_area;     /* id of the price book's; NULL: the job's rate, or the book's */
  GPtrArray *lines;        /* of RcLineTerms, one an item at most */
  GPtrArray *extras;       /* of RcExtraLine */
  GPtrArray *payments;     /* of RcPayment; empty: the price book's */
  GPtrArray *alternatives; /* of RcAlternative */
} RcOffer;

RcOffer *rc_offer_new (void); /* nothing special */
RcOffer *rc_offer_copy (const RcOffer *offer);
void     rc_offer_free (RcOffer *offer);

RcLineTerms   *rc_line_terms_new (const char *item);
RcLineTerms   *rc_line_terms_copy (const RcLineTerms *terms);
void           rc_line_terms_free (RcLineTerms *terms);
RcExtraLine   *rc_extra_line_new (const char *id);
RcExtraLine   *rc_extra_line_copy (const RcExtraLine *extra);
void           rc_extra_line_free (RcExtraLine *extra);
RcPayment     *rc_payment_new (const char *name, gint64 part_ppm);
RcPayment     *rc_payment_copy (const RcPayment *payment);
void           rc_payment_free (RcPayment *payment);
RcSwap        *rc_swap_new (const char *place, const char *carpet, const char *option);
void           rc_swap_free (RcSwap *swap);
RcAlternative *rc_alternative_new (const char *id, const char *name);
RcAlternative *rc_alternative_copy (const RcAlternative *alternative);
void           rc_alternative_free (RcAlternative *alternative);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcOffer, rc_offer_free)

/* What is special about the item's lines; NULL: nothing. */
RcLineTerms *rc_offer_find_line (const RcOffer *offer, const char *item);
