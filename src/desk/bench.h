/* The bench: everything about one job at once, following every edit.
 */
#pragma once

#include "figure-bar.h"
#include "floor-view.h"
#include "option-row.h"
#include "room-panel.h"

#define RC_TYPE_BENCH (rc_bench_get_type ())
G_DECLARE_FINAL_TYPE (RcBench, rc_bench, RC, BENCH, GtkBox)

void         rc_bench_set_document (RcBench *self, RcDocument *document);
RcFloorView *rc_bench_get_floor_view (RcBench *self);
RcFigureBar *rc_bench_get_figure_bar (RcBench *self);
RcOptionRow *rc_bench_get_option_row (RcBench *self);
RcWallTable *rc_bench_get_wall_table (RcBench *self);

typedef enum
{
  RC_BENCH_FLOOR,
  RC_BENCH_ROLLS,
  RC_BENCH_THINGS,
  RC_BENCH_PIECES,
  RC_BENCH_LINES, /* of the quotation */
  RC_BENCH_WALLS,
  RC_BENCH_NAME, /* of what is chosen */
} RcBenchPart;

void rc_bench_focus (RcBench *self, RcBenchPart part);
/* What is mostly typed of what is chosen: a room's walls, else the name. */
void rc_bench_edit_chosen (RcBench *self);
/* What stands above the figures when the job cannot be planned or priced; "" when it can. */
const char *rc_bench_get_fault (RcBench *self);
