/* What was accepted and ordered from one day to another, as CSV for the accounts: the days are chosen here, and what is
 * between them is counted before it is written. */
#pragma once

#include "window.h"

#define RC_TYPE_ACCOUNTS_WINDOW (rc_accounts_window_get_type ())
G_DECLARE_FINAL_TYPE (RcAccountsWindow, rc_accounts_window, RC, ACCOUNTS_WINDOW, GtkWindow)

/* Opens on the month before today. */
GtkWidget *rc_accounts_window_new (RcWindow *parent);

const char *rc_accounts_window_get_told (RcAccountsWindow *self);
/* Writes what stands between the days that are chosen. */
gboolean rc_accounts_window_write (RcAccountsWindow *self, const char *path, GError **error);
