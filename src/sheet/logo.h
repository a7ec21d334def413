/* The shop's logo in a letterhead.
 */
#pragma once

#include "page.h"

/* Adds the picture, a PNG, with its top left corner at x, y, as large as fits `width` by `height` points; *drawn_width
 * and *drawn_height say what it took. FALSE when there is none (NULL), when it is no sound PNG, or larger than
 * RC_LOGO_MOST_PIXELS: nothing is added then. */
gboolean rc_logo_add (RcPage *page, double x, double y, double width, double height, GBytes *png, double *drawn_width,
                      double *drawn_height);

/* A PNG that can be drawn. */
gboolean rc_logo_is_sound (GBytes *png);

/* A small file can claim to be a picture of gigabytes, and the price book may come from elsewhere. */
#define RC_LOGO_MOST_PIXELS (4000 * 4000)
