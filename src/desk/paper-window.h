/* A kept paper (PDF) on the screen, as the customer or the supplier got it; or a picture.
 */
#pragma once

#include "sheet-mail.h"

#include <gtk/gtk.h>

/* `title` is translated. The file is read by a process of its own. */
GtkWidget *rc_paper_window_new (GtkWindow *parent, const char *title, GBytes *pdf);

/* Lets it be saved under that name (no path in it), opened in the desktop's own viewer, where it is printed, and
 * mailed. `letter` is copied. */
void rc_paper_window_add_ways (GtkWidget *window, const char *file_name, const RcSheetLetter *letter);

const char *rc_paper_window_get_told (GtkWidget *window);
