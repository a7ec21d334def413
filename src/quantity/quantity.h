/* Quantities: everything a plan implies, rounded up once to the packs it is sold in.
 */
#pragma once

#include "packing.h"
#include "plan.h"
#include "work.h"

typedef struct
{
  RcWork         work;
  const RcGoods *goods;          /* NULL for work; borrowed from the job or catalogue */
  char          *item;           /* goods id or work name */
  char          *name;           /* what to print: the goods' name, the work's label */
  gint64         quantity_micro; /* what is charged: in `unit`; for goods in packs the packs' content */
  RcUnit         unit;
  gint64         net_micro; /* what the plan needs before rounding to packs or steps */
  gint64         packs;     /* 0: loose */
  RcUnit         pack_unit;
  char          *because; /* translated: rooms, seams, pieces it comes from, with the sums */
} RcQuantityLine;

void rc_quantity_line_free (RcQuantityLine *line);

/* Lines in the order of work: carpet, cushion, strip, tape, sealer, adhesive, transitions, labour. `catalogue` (of
 * RcGoods, e.g. the store's) supplies sundries that the job does not carry itself; the job's own win by kind: the first
 * of that kind. Carpet: from the cuttings, rolls of stock and lengths to buy apart. Tape: side seams full length, cross
 * seams less half the tape's width at each end that meets a side seam (common practice, no source: J6). Sealer: both
 * edges of every seam (CRI 2015 13.7; A7). Strip: perimeter less doors and archways (CRI 2015 11.1), doubled in rooms
 * longer than the setting (30 ft). Cushion: floor area, stairs' steps. Adhesive: area by coverage for stuck-down areas.
 * Transitions: one length per opening that names one. Errors: RC_ERROR_REFERENCE when a kind that is needed is nowhere;
 * names it. (transfer full) GPtrArray of RcQuantityLine. */
GPtrArray *rc_quantity_compute (const RcPlan *plan, const GPtrArray *catalogue, GError **error);

/* The parts that tests and sheets want by themselves. */
RcLength rc_quantity_compute_tape (const RcPlan *plan, RcLength tape_width);
RcLength rc_quantity_compute_seam_edges (const RcPlan *plan);
RcLength rc_quantity_compute_strip (const RcPlan *plan);
RcLength rc_seam_compute_tape (const RcSeam *seam, RcLength tape_width);
