/* One priced line of a quotation or an order. */
#pragma once

#include "price-book.h"

/* Of a job that is measured again (rc_quote_new_after). */
typedef enum
{
  RC_CHARGE_PLAIN,
  RC_CHARGE_KEPT,  /* ordered or cut: charged as it was quoted */
  RC_CHARGE_ADDED, /* beyond that */
} RcCharge;

typedef struct
{
  char    *item, *name, *because;
  gint64   quantity_micro; /* in `unit`: what the price is multiplied with */
  RcUnit   unit;           /* the price's unit */
  gint64   packs;          /* 0: loose */
  RcUnit   pack_unit;
  RcMoney  price;  /* per unit */
  RcMoney  amount; /* gross less discount: what is charged */
  RcMoney  cost;   /* what the shop pays for the line, rounded once */
  gboolean is_work;
  gboolean from_stock; /* carpet taken from rolls in stock */
  RcCharge after;

  RcMoney  gross;        /* price x quantity, rounded once */
  gint64   discount_ppm; /* of the gross, rounded once */
  gint64   tax_ppm;      /* the line's rate */
  gboolean optional;     /* priced beside the total, which leaves it out */
  gboolean hidden;       /* not shown to the customer by itself */

  /* What the figures come from. */
  gint64 needed_micro; /* what the plan needs, before packs and steps; in `needed_unit` */
  RcUnit needed_unit;
  gint64 from_micro;  /* the price holds from this quantity of `unit` on; 0: any */
  char  *price_since; /* first day of the price; nullable */
} RcQuoteLine;

RcQuoteLine *rc_quote_line_copy (const RcQuoteLine *line);
void         rc_quote_line_free (RcQuoteLine *line);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcQuoteLine, rc_quote_line_free)

/* Takes `discount_ppm` off the gross: amount = gross - gross x rate, the product rounded once. */
void rc_quote_line_set_discount (RcQuoteLine *line, gint64 discount_ppm);

/* A line of which only the price is known, as freight or what the office adds: gross and cost are price x quantity.
 * RC_ERROR_RANGE. (transfer full) */
RcQuoteLine *rc_quote_line_new_plain (const char *item, const char *name, gint64 quantity_micro, RcUnit unit,
                                      RcMoney price, RcMoney cost, gboolean is_work, GError **error);

/* What the line's amount is made of, a sentence each, in the reader's language: what the plan needs and where, the
 * packs or steps it is sold in, the price and since when it holds, the product and how it was rounded, the discount,
 * the tax. (transfer full) GPtrArray of char*. */
GPtrArray *rc_quote_line_explain (const RcQuoteLine *line, const RcCurrency *currency);
/* The plan's pieces behind a line of carpet, each with its room, its width and length as cut, and the roll it comes
 * from; empty for other lines. (transfer full) GPtrArray of char*. */
GPtrArray *rc_quote_line_explain_pieces (const RcQuoteLine *line, const RcPlan *plan);

/* Appends the customer's line for quantities[index] (of RcQuantityLine), at the sale price. A price in another unit (ft
 * and m, sq yd and m2, the pack and what it holds, length and area of a roll) converts the quantity, exactly, then
 * rounded once to a millionth. Where an item has prices for several quantities, the sale price is chosen by the job's
 * whole quantity of the item, so that customers do not pay more because part of it lies in stock; the cost by the
 * line's own quantity. Goods with a price by the roll become two lines, the full rolls and the rest (roll-way.h).
 * FALSE and RC_ERROR_REFERENCE naming the item without a price and the date, or the unit that cannot be converted;
 * RC_ERROR_RANGE. */
gboolean rc_quote_lines_add_sale (GPtrArray *lines, const GPtrArray *quantities, guint index, const RcPriceBook *book,
                                  const char *date, GError **error);

/* Likewise the supplier's: price and amount are what the shop pays for the line's own quantity. */
gboolean rc_quote_lines_add_cost (GPtrArray *lines, const RcQuantityLine *quantity, const RcPriceBook *book,
                                  const char *date, GError **error);
