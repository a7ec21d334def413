/* Lower bounds that cost microseconds: area, widths that cannot lie side by side, dual feasible functions.
 *
 * All are bounds on the sum of used lengths and hold for free packing too, so for any number of stages. With pattern
 * repeats each length is first extended by the least gap that must follow it (all but the last piece along a line).
 */
#pragma once

#include "clock.h"
#include "layout.h"

RcLength rc_nest_bound_quick (const RcNestTask *task);

/* The same and the linear program over slices, until the clock is over; at least `known`. */
RcLength rc_nest_bound_by_slices (const RcNestTask *task, RcLength known, const RcNestClock *clock);

/* For three stages: the linear program over levels, none of them longer than `longest`; at least `known`. */
RcLength rc_nest_bound_by_levels (const RcNestTask *task, RcLength longest, RcLength known, const RcNestClock *clock);

/* The bound for rectangles w x h on a width of `width`, without repeats. Functions: f0(p) and u(k) of Fekete and
 * Schepers 2001, f2(p) of Carlier, Clautiaux and Moukrim 2007 (as set out in the packing notes; from memory). */
RcLength rc_nest_bound_rectangles (const RcLength *w, const RcLength *h, guint n, RcLength width);

/* The length of each item with the least gap that must follow it on its roll. Returns how much of these gaps may lie
 * after the last items of up to n_rolls rolls: the sum of the n_rolls largest. */
RcLength rc_nest_bound_extend (const RcNestItems *items, guint n_rolls, RcLength *extended);

/* The bound for the items that a pattern holds, extended, those of each match by themselves. */
RcLength rc_nest_bound_held (const RcNestItems *items, RcLength width, guint n_rolls);

/* Positions and ends are sums of these: every used length is a multiple of it, so bounds round up to it. At least 1. */
RcLength rc_nest_bound_grid (const RcNestTask *task);
