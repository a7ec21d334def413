/* What the accounts want to know: accepted quotations and orders that stand. */
#include <string.h>

#include "store.h"

/* The first and the last day that count; NULL: any. */
typedef struct
{
  const char *from, *to;
} Span;

static gboolean
is_within (const Span *span, const char *day)
{
  return day != NULL && (span->from == NULL || strncmp (day, span->from, strlen (span->from)) >= 0)
         && (span->to == NULL || strncmp (day, span->to, strlen (span->to)) <= 0);
}

static gboolean
add_sales (GPtrArray *accounts, RcStore *store, const Span *span, GError **error)
{
  g_autoptr (GPtrArray) quotes = rc_store_find_quotes (store, NULL, error);

  for (guint i = 0; quotes != NULL && i < quotes->len; i++)
    {
      const RcIssuedQuote *issued = quotes->pdata[i];
      RcQuote             *quote;
      RcAccount           *account;

      if (issued->state != RC_QUOTE_ACCEPTED || !is_within (span, issued->marked))
        continue;
      quote = rc_store_load_quote (store, issued->number, error);
      if (quote == NULL)
        return FALSE;
      account = g_new0 (RcAccount, 1);
      *account = (RcAccount){ .number = g_strdup (issued->number),
                              .day = g_strdup (issued->marked),
                              .party = g_strdup (issued->customer),
                              .job = g_strdup (issued->job_id),
                              .title = g_strdup (issued->title),
                              .sale = quote,
                              .currency = quote->currency,
                              .net = quote->net,
                              .tax = quote->tax,
                              .total = quote->total };
      g_ptr_array_add (accounts, account);
    }
  return quotes != NULL;
}

static gboolean
add_purchases (GPtrArray *accounts, RcStore *store, const Span *span, GError **error)
{
  g_autoptr (GPtrArray) orders = rc_store_find_purchases (store, NULL, error);

  for (guint i = 0; orders != NULL && i < orders->len; i++)
    {
      const RcPurchase *order = orders->pdata[i];
      RcAccount        *account;

      if (order->state == RC_PURCHASE_CANCELLED || !is_within (span, order->made))
        continue;
      account = g_new0 (RcAccount, 1);
      *account = (RcAccount){ .number = g_strdup (order->number),
                              .day = g_strdup (order->made),
                              .party = g_strdup (order->supplier),
                              .job = g_strdup (order->jobs),
                              .currency = order->currency,
                              .net = order->net,
                              .tax = order->tax,
                              .total = order->total };
      g_ptr_array_add (accounts, account);
    }
  return orders != NULL;
}

GPtrArray *
rc_store_find_accounts (RcStore *store, const char *from, const char *to, GError **error)
{
  const Span span = { from, to };
  g_autoptr (GPtrArray) accounts = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_account_free);

  g_return_val_if_fail (store != NULL, NULL);

  return add_sales (accounts, store, &span, error) && add_purchases (accounts, store, &span, error)
             ? g_steal_pointer (&accounts)
             : NULL;
}
