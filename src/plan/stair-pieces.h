/* The pieces that stairs are cut in. */
#pragma once

#include "plan.h"

/* Adds the stair's pieces to `pieces` (of RcPiece), numbered on from what it has. FALSE and an error naming the stair
 * where its sizes are too large. */
gboolean rc_stair_add_pieces (const RcJob *job, const RcStair *stair, GPtrArray *pieces, GError **error);

/* Those of all the plan's stairs in the carpet. (transfer full) GPtrArray of RcPiece; NULL and an error naming a stair.
 */
GPtrArray *rc_stairs_list_pieces (const RcPlan *plan, const RcGoods *carpet, GError **error);
