/* Small pictures for a glance: a bar parted by what a whole is made of, and a row of steps. In black and white: parts
 * are told apart by hatch, steps by being filled.
 */
#pragma once

#include "page.h"

typedef enum
{
  RC_SHARE_FULL,
  RC_SHARE_LINES,
  RC_SHARE_CROSSED,
  RC_SHARE_OPEN,
} RcShareFill;

typedef struct
{
  double      amount; /* of anything; below 0 counts as nothing */
  RcShareFill fill;
} RcShare;

#define RC_MOST_SHARES 4

/* At most RC_MOST_SHARES parts. A whole of nothing is an empty frame. */
void rc_share_bar_add (RcPage *page, double x, double y, double width, double height, const RcShare *shares, guint n);

/* A dot for each step, filled up to the one that is reached, on a line through their middles: a band `height` high. */
void rc_step_row_add (RcPage *page, double x, double y, double width, double height, guint n_steps, guint reached);
