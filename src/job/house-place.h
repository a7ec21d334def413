/* The two steps of rc_house_new after the rooms' shapes are known; private to the folder.
 */
#pragma once

#include "house.h"

/* Sets `at` of every placed room; the polygons still lie about their own origins. Needs house->links. */
gboolean rc_house_place_rooms (RcHouse *house, GError **error);

/* Fills house->openings; the polygons lie in the house. Two openings that are one may miss each other by `miss_max`. */
gboolean rc_house_place_openings (RcHouse *house, RcLength miss_max, GError **error);
