/* Rooms as rows, and rows as rooms. */
#pragma once

#include "job-rows.h"

void     rc_room_rows_add (const char *measure, const RcRoom *room, guint position, RcRowSet *rows);
gboolean rc_room_rows_build (const RcRowSet *rows, RcJob *job, GError **error);
