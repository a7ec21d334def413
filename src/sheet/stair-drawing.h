/* A stair laid flat, its steps one after another from the bottom at the left, with its pieces numbered.
 */
#pragma once

#include "page.h"
#include "plan.h"

/* How high it is drawn over `width` points. */
double rc_stair_drawing_get_height (const RcStair *stair, double width);

/* Adds it to the page. Plan and stair outlive the page. */
void rc_stair_drawing_add (RcPage *page, double x, double y, double width, const RcPlan *plan, const RcStair *stair);
