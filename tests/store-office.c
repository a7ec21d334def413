#include "store-office.h"

#include "store-maker.h"

RcOrder *
store_office_new_order (void)
{
  RcOrder *order = g_new0 (RcOrder, 1);

  order->supplier = g_strdup ("Skerrow Mills");
  order->currency = (RcCurrency){ "USD", 2 };
  order->notes = g_ptr_array_new_with_free_func (g_free);
  order->lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);
  g_ptr_array_add (order->lines,
                   rc_quote_line_new_plain ("twist", "Twist", 36 * RC_MICRO, RC_UNIT_SQ_YD, 1140, 1140, FALSE, NULL));
  order->net = order->total = 36 * 1140;
  return order;
}

char *
store_office_make_order (RcStore *store, GError **error)
{
  g_autoptr (GPtrArray) jobs = g_ptr_array_new ();
  RcOrder *order = store_office_new_order ();
  char    *number;

  g_ptr_array_add (jobs, (gpointer) "J-1");
  number = rc_store_make_purchase (store, order, jobs, "2025-03-04", error);
  rc_order_free (order);
  return number;
}

void
store_office_fill (RcStore *store, const RcJob *job, GRand *rand)
{
  g_autoptr (RcQuote) quote = rc_store_maker_new_quote (rand, 3);
  g_autoptr (GBytes) bytes = g_bytes_new_static ("%PDF-1.7", 8);
  g_autoptr (RcRoll) roll = rc_roll_new (OFFICE_ROLL, "twist", 40 * RC_TICKS_PER_FOOT);
  g_autoptr (GError) error = NULL;
  g_autofree char *number = rc_store_issue_quote (store, job, quote, "2025-03-04", &error);
  g_autofree char *bare = rc_store_issue_quote (store, job, quote, "2025-03-05", &error), *order = NULL;

  g_assert_cmpstr (number, ==, OFFICE_QUOTE);
  g_assert_cmpstr (bare, ==, OFFICE_BARE);
  g_assert_true (rc_store_keep_paper (store, number, bytes, &error));
  g_free (rc_store_receive_roll (store, roll, NULL, NOW, &error));
  g_assert_true (rc_store_reserve_roll (store, OFFICE_ROLL, "J-1", 10 * RC_TICKS_PER_FOOT, NOW, &error));
  order = store_office_make_order (store, &error);
  g_assert_cmpstr (order, ==, OFFICE_ORDER);
  g_assert_true (rc_store_send_purchase (store, order, "2025-03-04", &error));
  g_free (rc_store_add_file (store, bytes, &error));
  g_assert_no_error (error);
}
