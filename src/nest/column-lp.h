/* Column generation: the least cost of patterns that together meet all demands, bounded from below at every step.
 *
 * GLPK finds prices of the rows, the caller the pattern that is worth most for its cost at these prices. Prices are
 * rounded to whole numbers and the bound formed from them exactly (Farley 1990), so it holds whenever the search ends.
 * To converge sooner, patterns are looked for at prices between the program's and the best ones known (Wentges 1997).
 */
#pragma once

#include "clock.h"

enum
{
  RC_NEST_PRICE_BITS = 30 /* no price is larger */
};

typedef struct
{
  guint           n;      /* rows */
  const RcLength *demand; /* of each row, > 0 */
  RcLength        grid;   /* bounds are rounded up to multiples of it */

  /* The pattern of most value for its cost, both of which are set: at these prices no pattern is worth more than value
   * for each cost. */
  void (*find) (gpointer user_data, const gint64 *price, guint *pattern, gint64 *value, RcLength *cost);

  /* A pattern that meets some of row i, and its cost. */
  void (*start) (gpointer user_data, guint i, guint *pattern, RcLength *cost);

  /* Nullable: called where no pattern found would lower the program's value. From the first call on a pattern meets a
   * row at most once. FALSE: patterns cannot be found more exactly, or the last one is exact. */
  gboolean (*refine) (gpointer user_data);
  gpointer user_data;
} RcNestColumns;

/* The bound; at least `known`, and the search ends where it cannot be raised above. */
RcLength rc_nest_columns_bound (const RcNestColumns *columns, RcLength known, const RcNestClock *clock);
