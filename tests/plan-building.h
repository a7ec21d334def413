/* A building of flats for tests and measurements of the planner. */
#pragma once

#include "plan.h"

/* Flats of three rooms off one another, `n_rooms` in all, in six carpets; two flats in three repeat one of eight kinds,
 * the others are odd. (transfer full) */
RcJob *make_building (guint n_rooms);

/* What its carpets are weighed by. */
void building_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data);
