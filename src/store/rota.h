/* Which backups are kept. */
#pragma once

#include <glib.h>

/* How many of the latest days' backups stay, and, of those before, of how many months the last one. */
#define RC_ROTA_N_DAYS   7
#define RC_ROTA_N_MONTHS 24

/* The days among `days` (ISO 8601 dates, in any order, of each one backup) whose backup can go. (transfer full) of
 * char *, in order. */
GPtrArray *rc_rota_find_superseded (const GPtrArray *days);
