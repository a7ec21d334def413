#include "accounts-command.h"

#include <glib/gi18n-lib.h>

#include "accounts-csv.h"
#include "command.h"
#include "day.h"

const char *
rc_store_find_accounts_fault (const RcStoreOptions *options, GStrv arguments)
{
  for (guint i = 1; arguments[i] != NULL; i++)
    if (!rc_day_is_valid (arguments[i]))
      return _ ("FROM and TO are days, as 2026-04-30");
  if (!options->replace && g_file_test (arguments[0], G_FILE_TEST_EXISTS))
    return _ ("FILE is there already; --replace writes over it");
  return NULL;
}

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
add_sales (GString *csv, RcStore *store, const Span *span, GError **error)
{
  g_autoptr (GPtrArray) quotes = rc_store_find_quotes (store, NULL, error);

  for (guint i = 0; quotes != NULL && i < quotes->len; i++)
    {
      const RcIssuedQuote *issued = g_ptr_array_index (quotes, i);
      g_autoptr (RcQuote) quote = NULL;

      if (issued->state != RC_QUOTE_ACCEPTED || !is_within (span, issued->marked))
        continue;
      quote = rc_store_load_quote (store, issued->number, error);
      if (quote == NULL)
        return FALSE;
      const RcAccountsHead head = { issued->number, issued->marked, issued->customer, issued->job_id, issued->title };
      rc_accounts_csv_add_sale (csv, &head, quote);
    }
  return quotes != NULL;
}

static gboolean
add_purchases (GString *csv, RcStore *store, const Span *span, GError **error)
{
  g_autoptr (GPtrArray) orders = rc_store_find_purchases (store, NULL, error);

  for (guint i = 0; orders != NULL && i < orders->len; i++)
    {
      const RcPurchase    *order = g_ptr_array_index (orders, i);
      const RcAccountsHead head = { order->number, order->made, order->supplier, order->jobs, NULL };

      if (order->state != RC_PURCHASE_CANCELLED && is_within (span, order->made))
        rc_accounts_csv_add_purchase (csv, &head, &order->currency, order->net, order->tax, order->total);
    }
  return orders != NULL;
}

int
rc_store_run_accounts (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  Span span = { arguments[1], arguments[1] != NULL ? arguments[2] : NULL };
  g_autoptr (GString) csv = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  rc_accounts_csv_begin (csv);
  if (!add_sales (csv, store, &span, &error) || !add_purchases (csv, store, &span, &error)
      || !g_file_set_contents (arguments[0], csv->str, (gssize)csv->len, &error))
    return rc_store_run_fail ("accounts", error);
  return RC_EXIT_DONE;
}
