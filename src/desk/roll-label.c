#include "roll-label.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "paper-window.h"

GBytes *
rc_roll_label_make_pdf (const RcPriceBook *book, const RcRoll *roll, const RcLengthStyle *lengths, RcPaper paper,
                        GError **error)
{
  g_autoptr (GPtrArray) stock = g_ptr_array_new ();
  g_autofree char  *today = rc_clock_dup_today ();
  const RcSheetData data = { .stock = stock, .lengths = lengths, .book = book, .date = today, .paper = paper };

  g_ptr_array_add (stock, (gpointer)roll);
  return rc_sheet_make_pdf (RC_SHEET_ROLL_LABELS, &data, error);
}

GtkWidget *
rc_roll_label_new (GtkWindow *parent, RcStore *store, const RcRoll *roll, const RcLengthStyle *lengths, RcPaper paper,
                   GError **error)
{
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, error);
  g_autoptr (GBytes) pdf = book != NULL ? rc_roll_label_make_pdf (book, roll, lengths, paper, error) : NULL;
  g_auto (RcSheetLetter) letter = { 0 };
  g_autofree char *title = NULL, *name = NULL;
  GtkWidget       *window;

  if (pdf == NULL)
    return NULL;
  title = g_strdup_printf (_ ("Label of roll %s"), roll->id);
  name = g_strdup_printf ("%s.pdf", roll->id);
  g_strdelimit (name, "/\\", '-');
  window = rc_paper_window_new (parent, title, pdf);
  rc_sheet_letter_init (&letter, &(RcSheetLetterOf){ RC_SHEET_ROLL_LABELS, NULL, roll->id, NULL, book, NULL });
  rc_paper_window_add_ways (window, name, &letter);
  return window;
}
