/* The sheets on the screen as they print; saved as PDF, printed, the quotation issued.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"
#include "sheet-set.h"

#define RC_TYPE_SHEET_WINDOW (rc_sheet_window_get_type ())
G_DECLARE_FINAL_TYPE (RcSheetWindow, rc_sheet_window, RC, SHEET_WINDOW, GtkWindow)

/* Follows the document while it is open. */
RcSheetWindow *rc_sheet_window_new (GtkWindow *parent, RcDocument *document, RcSheetKind kind);

void     rc_sheet_window_show_kind (RcSheetWindow *self, RcSheetKind kind);
gboolean rc_sheet_window_write_pdf (RcSheetWindow *self, const char *path, GError **error);
guint    rc_sheet_window_get_n_pages (RcSheetWindow *self);
