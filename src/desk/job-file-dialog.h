/* Choosing a job file to read or to write.
 */
#pragma once

#include "window.h"

void rc_job_file_dialog_open (RcWindow *window);
void rc_job_file_dialog_save (RcWindow *window);

/* What was accepted and what was ordered, as CSV for the accounts. */
void rc_accounts_dialog_save (RcWindow *window);
/* What the dialog does once the file is named. */
gboolean rc_accounts_write (RcStore *store, const char *path, GError **error);
