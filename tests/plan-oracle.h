/* The cheapest plan of one small room by trying everything; shares no code with the planner. */
#pragma once

#include "plan.h"

/* A floor of two columns side by side over one base or under one top: a rectangle when they are alike,
 * x[1] being x[2]. Pile along y. */
typedef struct
{
  RcLength x[3]; /* where the columns begin and end */
  RcLength low[2], high[2];
} OracleFloor;

/* The cheapest way to lay the floor with the pile along y: every position of the strip lines at a corner or a least
 * fill from an end, every set of cross seams at a step, at the least piece from an end or as far from the door as
 * wished, or splitting what lies between one of these and an end equally, every sharing of the cuts on a roll bought to
 * measure. `door_from`, `door_to`: ends of a door without a leaf in a wall of no depth, or both the same point for
 * none.
 */
RcMoney oracle_find_least_cost (const OracleFloor *floor, const RcSettings *settings, const RcGoods *carpet,
                                const RcPlanWeights *weights, RcPoint door_from, RcPoint door_to);
