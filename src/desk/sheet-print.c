#include "sheet-print.h"

typedef struct
{
  RcSheetKind        kind;
  const RcSheetData *data;
} Printing;

static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page, Printing *printing)
{
  rc_sheet_draw_page (printing->kind, printing->data, (guint)page, gtk_print_context_get_cairo_context (context));
}

gboolean
rc_sheet_print (RcSheetKind kind, const RcSheetData *data, GtkWindow *parent, GError **error)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (data->paper == RC_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);
  Printing      printing = { kind, data };

  gtk_page_setup_set_paper_size_and_default_margins (setup, size);
  gtk_paper_size_free (size);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_n_pages (operation, (int)rc_sheet_count_pages (kind, data));
  gtk_print_operation_set_job_name (operation, rc_sheet_kind_get_label (kind));
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page), &printing);
  return gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, parent, error)
         != GTK_PRINT_OPERATION_RESULT_ERROR;
}
