/* Days as ISO 8601 text, YYYY-MM-DD, which sorts as it reads. */
#pragma once

#include <glib.h>

/* Whether the text is a day of the calendar and nothing else. NULL is none. */
gboolean rc_day_is_valid (const char *text);

/* The day so many days later; earlier when negative. NULL when `day` is no day, or the years run out (1 to 9999).
 * (transfer full) */
char *rc_day_add (const char *day, int n_days);

/* How many days `to` is after `from`, negative when before. FALSE when one of them is no day; *n_days is then
 * untouched. */
gboolean rc_day_count (const char *from, const char *to, int *n_days);
