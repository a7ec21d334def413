/* A large building for tests and measurements: a hotel's floor of many rooms, doors between neighbours.
 */
#pragma once

#include "job.h"

/* `n_rooms` rooms of some 12 by 15 ft in rows of 20, each row an area with the carpet `carpet`; some have an alcove.
 * (transfer full) */
RcJob *make_large_job (const char *id, guint n_rooms, const char *carpet);
