#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "quote-table.h"
#include "words.h"

static void
add_notes (RcSheetWork *work, const RcOrder *order)
{
  rc_flow_heading (&work->flow, _ ("Please note"), 30);
  for (guint i = 0; i < order->notes->len; i++)
    {
      g_autofree char *number = g_strdup_printf ("%u", i + 1);

      rc_flow_numbered (&work->flow, number, g_ptr_array_index (order->notes, i));
    }
}

/* Name, address and how to reach them, and what number the shop has there. */
static char *
dup_supplier (const RcSheetWork *work)
{
  const RcOrder     *order = work->data->order;
  const RcPriceBook *book = work->data->book;
  const RcSupplier  *supplier = book ? rc_price_book_find_supplier (book, order->supplier) : NULL;
  RcCustomer         party = { order->supplier && *order->supplier ? order->supplier : _ ("Supplier not named") };
  g_autofree char   *lines = NULL;

  if (supplier)
    {
      party.address = supplier->address;
      party.phone = supplier->phone;
      party.email = supplier->email;
    }
  lines = rc_words_dup_customer (&party);
  if (!supplier || !supplier->account || !*supplier->account)
    return g_steal_pointer (&lines);

  return g_strdup_printf (_ ("%s\nOur number with you: %s"), lines, supplier->account);
}

void
rc_order_sheet_lay_out (RcSheetWork *work)
{
  const RcOrder     *order = work->data->order;
  RcFlow            *flow = &work->flow;
  double             column;
  const RcPriceBook *book = work->data->book;
  g_autofree char   *deliver_to = book && book->shop_name ? g_strdup_printf ("%s\n%s", book->shop_name,
                                                                           book->shop_address ? book->shop_address : "")
                                                          : NULL;
  g_autofree char   *to = dup_supplier (work);

  rc_flow_start (flow, work->pages, FALSE);
  rc_sheet_add_letter_head (work, _ ("TO"), to, deliver_to);
  rc_flow_skip (flow, 4);
  /* Which rooms it is for is not the supplier's business. */
  rc_quote_table_flow (work, order->lines, &(RcLinesShown){ RC_DETAIL_FULL, FALSE }, &order->currency);
  rc_order_sums_flow (work, order);
  if (order->notes && order->notes->len > 0)
    add_notes (work, order);
  rc_flow_heading (flow, _ ("Confirmation"), 80);
  /* Notes are about carpet. */
  rc_flow_text (flow, RC_TEXT_BODY,
                order->notes && order->notes->len > 0 ? _ (
                    "Please confirm the goods, dye lot, delivery date and price. Send carpet rolled, pile in, with "
                    "this order’s number on each roll.")
                                                      : _ ("Please confirm the goods, delivery date and price."));
  column = (flow->width - 20) / 2;
  flow->y += 34;
  rc_sheet_add_signature (work, flow->x, column, _ ("Ordered by"));
  rc_sheet_add_signature (work, flow->x + column + 20, column, _ ("Delivery date confirmed"));
  flow->y += 14;
}
