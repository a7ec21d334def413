/* Printing a sheet through the desktop's print dialog.
 */
#pragma once

#include <gtk/gtk.h>

#include "sheet.h"

/* Runs the dialog and prints; returns when the pages are drawn. FALSE and an error when printing fails; a dialog closed
 * without printing is no error. */
gboolean rc_sheet_print (RcSheetKind kind, const RcSheetData *data, GtkWindow *parent, GError **error);
