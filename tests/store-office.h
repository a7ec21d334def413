/* What an office has in its store, for tests: a quotation with its paper, one without, a roll that promises a length to
 * the job J-1, an order sent, and a file. */
#pragma once

#include "store.h"

#define OFFICE_QUOTE "Q-1"
#define OFFICE_BARE  "Q-2" /* its paper was not kept yet */
#define OFFICE_ROLL  "R-7" /* 40 ft, 10 ft of them promised to J-1 */
#define OFFICE_ORDER "O-1" /* of one line, 36 sq yd; sent */

/* The quotations are of `job`. */
void store_office_fill (RcStore *store, const RcJob *job, GRand *rand);

/* Of 36 sq yd of twist, for 410.40 USD. (transfer full) */
RcOrder *store_office_new_order (void);
/* (transfer full) The number of a new order for J-1. */
char *store_office_make_order (RcStore *store, GError **error);
