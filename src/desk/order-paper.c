#include "order-paper.h"

#include <glib/gi18n-lib.h>

#include "paper-window.h"

/* The jobs as the office writes their numbers: their ids where they are gone. (transfer full) */
static char *
dup_job_numbers (RcStore *store, const char *ids)
{
  g_auto (GStrv) parts = g_strsplit (ids != NULL ? ids : "", ", ", -1);
  g_autoptr (GStrvBuilder) numbers = g_strv_builder_new ();
  g_auto (GStrv) list = NULL;

  for (guint i = 0; parts[i] != NULL; i++)
    {
      g_autoptr (RcJob) job = rc_store_read_job (store, parts[i], NULL);

      g_strv_builder_add (numbers, job != NULL && job->number != NULL && *job->number != '\0' ? job->number : parts[i]);
    }
  list = g_strv_builder_end (numbers);
  return g_strjoinv (", ", list);
}

static GBytes *
make_pdf (const RcPurchase *purchase, const RcPriceBook *book, const char *jobs, RcPaper paper, GError **error)
{
  g_auto (GStrv) lines = g_strsplit (purchase->notes != NULL ? purchase->notes : "", "\n", -1);
  g_autoptr (GPtrArray) notes = g_ptr_array_new ();
  const RcOrder     order = { .supplier = purchase->supplier,
                              .currency = purchase->currency,
                              .lines = purchase->lines,
                              .notes = notes,
                              .net = purchase->net,
                              .tax = purchase->tax,
                              .total = purchase->total };
  const RcSheetData data = { .order = &order,
                             .jobs = jobs,
                             .book = book,
                             .number = purchase->number,
                             .date = purchase->made,
                             .paper = paper,
                             .language = rc_price_book_get_language (book, order.supplier) };

  for (guint i = 0; lines[i] != NULL; i++)
    if (*lines[i] != '\0')
      g_ptr_array_add (notes, lines[i]);
  return rc_sheet_make_pdf (RC_SHEET_ORDER, &data, error);
}

GtkWidget *
rc_order_paper_new (GtkWindow *parent, RcStore *store, const char *number, RcPaper paper, GError **error)
{
  g_autoptr (RcPurchase) purchase = rc_store_load_purchase (store, number, error);
  g_autoptr (RcPriceBook) book = purchase != NULL ? rc_store_load_price_book (store, error) : NULL;
  g_autofree char *jobs = book != NULL ? dup_job_numbers (store, purchase->jobs) : NULL;
  g_autoptr (GBytes) pdf = book != NULL ? make_pdf (purchase, book, jobs, paper, error) : NULL;
  g_auto (RcSheetLetter) letter = { 0 };
  g_autofree char *title = NULL, *name = NULL;
  GtkWidget       *window;

  if (pdf == NULL)
    return NULL;
  title = g_strdup_printf (_ ("Order %s to %s"), purchase->number,
                           *purchase->supplier ? purchase->supplier : _ ("supplier not named"));
  name = g_strdup_printf ("%s.pdf", purchase->number);
  window = rc_paper_window_new (parent, title, pdf);
  rc_sheet_letter_init (&letter,
                        &(RcSheetLetterOf){ RC_SHEET_ORDER, rc_price_book_get_language (book, purchase->supplier),
                                            purchase->number, NULL, book, purchase->supplier });
  rc_paper_window_add_ways (window, name, &letter);
  return window;
}
