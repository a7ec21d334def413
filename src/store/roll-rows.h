/* Rolls as rows: what the rolls of a job and those in stock share. */
#pragma once

#include "query.h"

/* "1600-3200 9000-9640": the damaged lengths in ticks; NULL for none. (transfer full) */
char *rc_roll_rows_format_flaws (const GArray *flaws);
/* Adds what the text says; nothing for NULL or what this program has not written. */
void rc_roll_rows_parse_flaws (const char *text, GArray *flaws);

/* Of a query for id, goods, lot, length, remnant, place, width and flaws, in this order. (transfer full) */
RcRoll *rc_roll_rows_read (const RcQuery *query);
