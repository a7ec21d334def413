/* The paper of an order that is kept in the store, for one job or many.
 */
#pragma once

#include "sheet.h"
#include "store.h"

#include <gtk/gtk.h>

/* A window that shows it and lets it be printed, saved and mailed to the supplier. NULL with the store's error. */
GtkWidget *rc_order_paper_new (GtkWindow *parent, RcStore *store, const char *number, RcPaper paper, GError **error);
