/* What the window can be told to do: the "win.…" actions and the keys that call them.
 */
#pragma once

#include "window.h"

void rc_window_actions_install (GtkWidgetClass *klass);
/* Which of them can be used now. */
void rc_window_actions_update (RcWindow *self);
/* Whether one of them, or one of the bench's, can be used now. */
gboolean rc_window_actions_is_enabled (RcWindow *self, const char *detailed_name);
/* Gives the application the keys. */
void rc_window_actions_set_keys (GtkApplication *application);

/* Parts of the window that only its actions use. */
void     rc_window_close_job (RcWindow *self);
gboolean rc_window_save_and_open (RcWindow *self, RcJob *job, const char *step, GError **error);
void     rc_window_show_action_list (RcWindow *self);
void     rc_window_show_jobs (RcWindow *self, gboolean shown);
gboolean rc_window_are_jobs_shown (RcWindow *self);
