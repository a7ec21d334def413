/* The GTK desktop. */
#pragma once

#include <gtk/gtk.h>

#include "store.h"

#define RC_TYPE_DESK (rc_desk_get_type ())
G_DECLARE_FINAL_TYPE (RcDesk, rc_desk, RC, DESK, GtkApplication)

/* Runs the desktop until its last window closes; returns the exit status. */
int rc_desk_main (int argc, char **argv);

/* Templates, style sheet and icons, once a process, before any widget of the desk is made. */
void rc_desk_load_resources (void);

/* Opens a store and, when it is new, fills in the shipped price book. */
RcStore *rc_desk_open_store (const char *path, GError **error);
