/* Edits of what the office settles for a quotation: what stands in a field, and what a text typed there makes of it. No
 * display.
 */
#pragma once

#include "job.h"

typedef enum
{
  /* Of the whole. */
  RC_OFFER_DISCOUNT_RATE,
  RC_OFFER_DISCOUNT_SUM,
  RC_OFFER_VALID_DAYS,
  RC_OFFER_TERMS,
  /* Of the lines of an item. */
  RC_OFFER_LINE_DISCOUNT,
  RC_OFFER_LINE_TAX,
  /* Of a further line: `item` is its id. */
  RC_OFFER_EXTRA_NAME,
  RC_OFFER_EXTRA_QUANTITY,
  RC_OFFER_EXTRA_PRICE,
  RC_OFFER_EXTRA_COST,
  /* Of a step of payment: `index`. */
  RC_OFFER_PAYMENT_NAME,
  RC_OFFER_PAYMENT_PART,
  RC_OFFER_PAYMENT_DAYS,
  /* Of an alternative: `item` is its id. */
  RC_OFFER_OPTION_NAME,
} RcOfferField;

/* Which field. */
typedef struct
{
  RcOfferField field;
  const char  *item;
  guint        index;
} RcOfferSpot;

/* "" where nothing is said and the price book's or the tax area's holds. (transfer full) */
char *rc_offer_edit_dup_text (const RcOffer *offer, const RcOfferSpot *spot, const RcCurrency *currency);
/* FALSE and an error that says what would be right: the offer is as it was. A field left blank says nothing. */
gboolean rc_offer_edit_set_text (RcOffer *offer, const RcOfferSpot *spot, const char *text, const RcCurrency *currency,
                                 GError **error);

/* Lines of the item are only offered (not shown by themselves), or not. */
void rc_offer_edit_set_optional (RcOffer *offer, const char *item, gboolean optional);
void rc_offer_edit_set_hidden (RcOffer *offer, const char *item, gboolean hidden);

RcExtraLine *rc_offer_edit_find_extra (const RcOffer *offer, const char *id); /* NULL: none */
/* One more line: of the price book's item, or of its own where that is NULL. (transfer none) */
RcExtraLine *rc_offer_edit_add_extra (RcOffer *offer, const char *item, RcUnit unit);
void         rc_offer_edit_remove_extra (RcOffer *offer, const char *id);

/* The steps of payment become the job's own, as the price book's are, with one more. */
void rc_offer_edit_add_payment (RcOffer *offer, const GPtrArray *book_payments);
void rc_offer_edit_remove_payment (RcOffer *offer, guint index);

RcAlternative *rc_offer_edit_find_option (const RcOffer *offer, const char *id); /* NULL: none */
/* One more way to do the job, as it stands until something is swapped. (transfer none) */
RcAlternative *rc_offer_edit_add_option (RcOffer *offer, const char *name);
void           rc_offer_edit_remove_option (RcOffer *offer, const char *id);
/* What the alternative has in an area or stair; NULL: as it is. */
RcSwap *rc_offer_edit_find_swap (const RcAlternative *alternative, const char *place);
void    rc_offer_edit_swap (RcAlternative *alternative, const char *place, const char *carpet, const char *option);
