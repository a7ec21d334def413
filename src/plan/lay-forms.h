/* The forms in which the parts of cells may be cut: each whole, or joined of pieces with seams anywhere. What a form
 * needs is no more than anything cut so, wherever in a stretch the strip lines lie.
 */
#pragma once

#include "choice-lp.h"
#include "line-range.h"
#include "slice-few.h"

enum
{
  RC_LAY_FEW_JOINS = 4, /* with more a part is taken to lie beside itself as often as it fits */
  RC_LAY_MANY = G_MAXUINT8
};

/* Positions of a cell's strip lines: so far from the range's first, both ends among them. */
typedef struct
{
  const RcSite      *site;
  const RcLineRange *range;
  RcLength           from, to;
} RcLineStretch;

/* An area that changes as the strip lines move on: no less in between than between what it is at the stretch's ends. So
 * is the sum of such areas, though what one strip gains its neighbour loses. */
typedef struct
{
  __int128 from, to;
} RcLayArea;

/* One way to cut a part: its pieces in fills, what they share out among them, and all else that is to be known. */
typedef struct
{
  gint64    cost; /* by the prices: nothing in which the part is cut so costs less */
  gint64    beside;
  guint     joins;
  RcLength  drops; /* of pieces that take the whole width */
  RcLength  longest;
  RcLayArea area;                /* of the pieces in fills */
  guint     first_item, n_items; /* in RcLayForms.items */
  guint     first_pool, n_pools; /* in RcLayForms.pools; their items are counted from the form's first */
} RcLayForm;

typedef struct
{
  GArray   *forms; /* of RcLayForm, the cheapest first */
  guint     cell;
  RcLayForm relaxed; /* below any of them: without joins, and beside itself as often as it fits */
} RcLayPart;

typedef struct
{
  const RcSite       *site;
  const RcNestPrices *prices;
  GArray             *cells; /* of RcLayArea: by cell, of parts that are not there everywhere in the stretch */
  GArray             *parts; /* of RcLayPart, cell after cell */
  GArray             *items; /* of RcNestSliceItem: of all forms */
  GArray             *pools; /* of RcNestSlicePool: likewise */
  RcLayForm           cuts;  /* those that are what they are */
} RcLayForms;

/* The least width over the stretch, or the most, of what is so wide at the range's first position. */
RcLength rc_line_stretch_get_width (const RcLineStretch *stretch, RcLength width, int slope, gboolean least);
/* TRUE if the part is there wherever the lines lie. */
gboolean rc_line_stretch_has_part (const RcLineStretch *stretch, guint index);

/* `cuts` of RcNestChoiceCut; site and prices outlive the forms. */
void rc_lay_forms_init (RcLayForms *forms, const RcSite *site, const RcNestPrices *prices, const GArray *cuts);
void rc_lay_forms_clear (RcLayForms *forms);
/* Its parts, with their forms. */
void rc_lay_forms_add_cell (RcLayForms *forms, const RcLineStretch *stretch);
