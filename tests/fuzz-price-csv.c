/* Fuzz target of the reader of price lists. */
#include <string.h>

#include "fuzz-run.h"
#include "price-csv.h"
#include "rowcut-error.h"
#include "shipped.h"

/* What is read is written and read again the same; what is refused says why. */
int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  const RcCurrency currency = { "USD", 2 };
  g_autofree char *csv = g_strndup ((const char *)data, size);
  g_autofree char *written = NULL, *again = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book = rc_price_csv_parse (csv, "PRICES.csv", &currency, &error);
  g_autoptr (RcPriceBook) back = NULL;

  if (book == NULL)
    {
      g_assert_nonnull (error);
      g_assert_true (error->domain == RC_ERROR);
      g_assert_true (g_str_has_prefix (error->message, "PRICES.csv"));
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      return 0;
    }
  written = rc_price_csv_format (book);
  back = rc_price_csv_parse (written, "PRICES.csv", &currency, &error);
  g_assert_no_error (error);
  again = rc_price_csv_format (back);
  g_assert_cmpstr (written, ==, again);
  return 0;
}

static const char *const words[] = { "\"",
                                     ",",
                                     "\n",
                                     "\r\n",
                                     "=",
                                     "@",
                                     "+",
                                     "-",
                                     "x",
                                     "0",
                                     "99999999999999999999",
                                     "-1",
                                     "0.005",
                                     "2026-02-30",
                                     "2026-01-01",
                                     "\xff",
                                     "\xe2\x80\xb2",
                                     "1e9",
                                     " ",
                                     "\t",
                                     NULL };

static void
add_samples (GPtrArray *into)
{
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (NULL);
  char *csv = rc_price_csv_format (book);

  g_ptr_array_add (into, g_bytes_new_take (csv, strlen (csv)));
}

const FuzzTarget fuzz_target = { "price-csv", words, 3000, 4, add_samples };
