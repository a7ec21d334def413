/* A kept paper (PDF) on the screen, as the customer got it. */
#pragma once

#include <gtk/gtk.h>

/* `title` is translated. The file is read by a process of its own. */
GtkWidget *rc_paper_window_new (GtkWindow *parent, const char *title, GBytes *pdf);
