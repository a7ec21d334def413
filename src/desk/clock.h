/* The one place where the desk reads the clock. */
#pragma once

#include <glib.h>

char *rc_clock_dup_now (void);   /* ISO 8601 date and time, UTC. (transfer full) */
char *rc_clock_dup_today (void); /* ISO 8601 date, as it is here. (transfer full) */
