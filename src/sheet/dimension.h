/* Dimension lines: a length written along what it measures. */
#pragma once

#include "pen.h"

/* Draws `text` along the way from `from` to `to`, on a thin line with a tick at each end, moved aside by `offset` to
 * the left of that way as it is seen on the page (negative: to the right). Left out, FALSE, where the text does not fit
 * between the ends or something stands there already. Text reads from the bottom or the right of the page. */
gboolean rc_dimension_draw (RcPen *pen, RcSpot from, RcSpot to, double offset, const char *text, double size);
