/* What the tables of rolls (rows of RcStockLine) and of a roll's history (rows of RcRollMove) say. */
#pragma once

#include "window.h"

/* Lengths are written as the window's open job writes them; the window outlives the views. */
void rc_roll_columns_add (GtkColumnView *rolls, GtkColumnView *moves, RcWindow *window);
