/* The one window: the jobs at the side, the bench with the open job.
 *
 * Its actions, all named "win.…", are what menus, buttons and keys call. The windows of the office (prices, rolls, ...)
 * are made by it, each at most once.
 */
#pragma once

#include "bench.h"
#include "book-keeper.h"
#include "job-list.h"
#include "sheet-window.h"

#define RC_TYPE_WINDOW (rc_window_get_type ())
G_DECLARE_FINAL_TYPE (RcWindow, rc_window, RC, WINDOW, GtkApplicationWindow)

/* The store must outlive the window. */
RcWindow *rc_window_new (GtkApplication *application, RcStore *store);

/* Opens the job on the bench; on an error what was open stays. */
gboolean rc_window_open_job (RcWindow *self, const char *id, GError **error);
/* Opens the demo job, putting it into the store the first time. */
gboolean rc_window_open_demo (RcWindow *self, GError **error);
/* Puts a job file into the store as a job of its own and opens it. */
gboolean rc_window_import (RcWindow *self, const char *path, GError **error);

RcDocument *rc_window_get_document (RcWindow *self); /* NULL: no job is open */
RcBench    *rc_window_get_bench (RcWindow *self);
RcJobList  *rc_window_get_job_list (RcWindow *self);

RcStore *rc_window_get_store (RcWindow *self);
/* The price book is changed through it alone; the open job takes the new prices. */
RcBookKeeper *rc_window_get_book_keeper (RcWindow *self);

/* A window of the office has changed the store: all that show what is in it look again (signal "store-changed", which
 * is also emitted when another program has changed it, and when another job is opened). */
void rc_window_note_change (RcWindow *self);

/* Shows the sheets, this kind first. NULL without an open job. */
RcSheetWindow *rc_window_show_sheet (RcWindow *self, RcSheetKind kind);

/* A line of text at the foot of the window. */
void        rc_window_tell (RcWindow *self, const char *text);
void        rc_window_tell_error (RcWindow *self, const GError *error); /* nullable: says nothing */
const char *rc_window_get_told (RcWindow *self);
