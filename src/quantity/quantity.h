/* Quantities: everything a plan implies, rounded up once to the packs it is sold in.
 *
 * The rules, each with its source:
 *   carpet       length taken from stock, and length bought, times the roll's width
 *   tape         side seams full length; cross seams less half the tape's width at each end that meets a side seam
 *                (common practice, no source). None under carpet glued straight to the floor (common practice, no
 *                source); double glue has it (CRI 2015 13.8)
 *   sealer       both edges of every seam (CRI 2015 13.7)
 *   strip        stretched rooms: walls and cut-outs less doors and archways (CRI 2015 11.1), twice in rooms longer
 *                than the setting (30 ft, CRI 2015 11.1); stairs: one on each tread, for waterfall one on each riser
 *                too (CRI 2011 17.2), less 1 1/2 in than the width where the edges are turned
 *   cushion      net floor area (one source says the carpet's yardage, another net and 5 %: offcuts are used as fills,
 *                so the net is ordered, up to the pack); stairs: tread, riser and nose of each step, with the same
 *                1 1/2 in less
 *   adhesive     floor area of stuck-down areas by coverage (area / coverage = volume: Workspace Training); two coats
 * where there is a cushion between transitions  one length for each opening that names one, in one piece where the bars
 * are long enough labour       floor area laid, side seams by length, cross seams each, stairs by step, the fixed
 * charge once
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
  gboolean       from_stock;  /* carpet taken from rolls in stock: charged, not ordered */
  RcLength       roll_length; /* carpet: length of roll taken or bought; else 0 */
  char          *because;     /* translated: rooms, seams, pieces it comes from, with the sums */
} RcQuantityLine;

RcQuantityLine *rc_quantity_line_copy (const RcQuantityLine *line);
void            rc_quantity_line_free (RcQuantityLine *line);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcQuantityLine, rc_quantity_line_free)

/* Lines in the order of work: carpet (what comes from stock, then what is bought), cushion, strip, tape, sealer,
 * adhesive, transitions, labour. `catalogue` (of RcGoods, nullable; e.g. the price book's) supplies goods that the job
 * does not carry itself; the job's own win, by kind: the first of that kind. A plan without floors and stairs has no
 * lines. Errors: RC_ERROR_REFERENCE when goods that are needed are nowhere, naming them; RC_ERROR_RANGE when goods do
 * not say what a pack holds or covers, or a quantity is too large. (transfer full) GPtrArray of RcQuantityLine, which
 * borrow goods of the job and the catalogue. */
GPtrArray *rc_quantity_compute (const RcPlan *plan, const GPtrArray *catalogue, GError **error);

/* The parts that tests and sheets want by themselves. */

/* Tape under one seam: its length, a cross seam's less half the tape's width at each of its side_ends; never below 0.
 */
RcLength rc_seam_compute_tape (const RcSeam *seam, RcLength tape_width);

/* Tape under all seams that are taped. */
RcLength rc_quantity_compute_tape (const RcPlan *plan, RcLength tape_width);

/* TRUE if an area's seams lie on tape: all but those of carpet glued straight to the floor. */
gboolean rc_floor_area_is_taped (const RcFloorArea *area);

/* Length of edge to seal: twice all seams. */
RcLength rc_quantity_compute_seam_edges (const RcPlan *plan);

/* Tack strip of all stretched rooms and all stairs. */
RcLength rc_quantity_compute_strip (const RcPlan *plan);

/* Tack strip of one room of the house: `boundary` (nullable) gets walls and cut-outs, `openings` (nullable) what doors
 * and archways take off, `doubled` (nullable) whether the room is longer than `double_from` (0: never). The length of
 * a room is the longer side of the least rectangle along one of its walls. */
RcLength rc_room_compute_strip (const RcHouse *house, const RcPlacedRoom *room, RcLength double_from,
                                RcLength *boundary, RcLength *openings, gboolean *doubled);

/* Tack strip of a flight, and the width its strip and cushion run to. */
RcLength rc_stair_compute_strip (const RcStair *stair);
RcLength rc_stair_get_inner_width (const RcStair *stair, guint step);

/* Cushion under a flight (doubled area). */
RcArea rc_stair_compute_cushion (const RcStair *stair);

/* `length` of the carpet's roll in the unit it is counted in: times the roll's whole width where that is an area.
 * Exact, one rounding. RC_ERROR_RANGE when it is counted by the piece, or too large. */
gboolean rc_carpet_measure_roll (const RcGoods *carpet, RcLength length, gint64 *quantity_micro, GError **error);
/* The length of the whole width that is as much carpet as `length` of a roll so wide (0: as the goods). */
RcLength rc_carpet_count_length (const RcGoods *carpet, RcLength width, RcLength length);
