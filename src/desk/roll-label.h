/* The label of a roll in stock, to be printed and tied to it. */
#pragma once

#include "sheet.h"
#include "store.h"

#include <gtk/gtk.h>

/* A window that shows it and lets it be printed, saved and mailed. NULL with the store's error. */
GtkWidget *rc_roll_label_new (GtkWindow *parent, RcStore *store, const RcRoll *roll, const RcLengthStyle *lengths,
                              RcPaper paper, GError **error);
/* What it shows. (transfer full) */
GBytes *rc_roll_label_make_pdf (const RcPriceBook *book, const RcRoll *roll, const RcLengthStyle *lengths,
                                RcPaper paper, GError **error);
