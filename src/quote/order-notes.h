/* What a supplier must know about carpet on order. Used inside this folder only. */
#pragma once

#include "plan.h"

/* Adds (char*) for the cutting's bought lengths: each length in one piece with its width, the cuts to be had from it,
 * one dye lot, pile, pattern. Lengths are in the measure that the carpet is sold in. What comes from stock is not the
 * supplier's business; nothing when all of it does. */
void rc_order_notes_add (GPtrArray *notes, const RcCutting *cutting);
