/* What no plan of a whole job can beat. */
#pragma once

#include "area-choice.h"

/* The least that any plan of what is laid in the carpet costs: its areas, by the ways of `choices` (of RcAreaChoice,
 * one for each area in the carpet), and its stairs' `pieces` (of RcPiece, all of them in the carpet), out of `rolls`
 * (of RcNestRoll, as rc_cutting_new_rolls makes them). In minor units, rounded down.
 *
 * `ways` (of RcAreaWay) gets one for each choice, which all together would come near the bound if slices were cuttings:
 * worth trying. `alone` (of RcMoney) gets what each area costs
 * at least by itself, its carpet bought to measure; 0 where that is not known. */
RcMoney rc_cost_bound_compute (const RcGoods *carpet, const GPtrArray *rolls, const GPtrArray *choices,
                               const GPtrArray *pieces, const RcNestClock *clock, GPtrArray *ways, GArray *alone);
