/* Doors and archways as the floor sees them: passages, measured from one side or from both. Used inside this folder. */
#pragma once

#include "house.h"

/* TRUE for doors and archways, which interrupt the strip; FALSE for windows. */
gboolean rc_opening_is_passage (const RcOpening *opening);

/* The same opening as measured in the other room; NULL when it was measured from one side only, or leads out. */
const RcOpening *rc_placed_opening_find_other_side (const RcPlacedOpening *placed);
