/* A state of the search of one area: the cells, the grid taken in each, the layout picked for each part; and its score.
 */
#pragma once

#include "grid.h"
#include "taking.h"

/* What is minimised: factors on the parts of the cost. */
typedef struct
{
  gint64 carpet, seam, rule; /* factors */
  gint64 each_join;          /* added for every cross seam of a fill, before `seam` */
} RcObjective;

typedef struct
{
  gint64   score;  /* by the objective */
  RcLength length; /* roll length, to part equals */
} RcScore;

/* A cell with all its grids. */
typedef struct
{
  RcCell    *cell;
  GPtrArray *grids; /* of RcGrid, by offset */
} RcCellGrids;

/* What else is cut from the same carpet, and the rolls of one dye lot that all of it comes from. */
typedef struct
{
  const GPtrArray *cuts;  /* of RcNestCut */
  const GPtrArray *rolls; /* of RcNestRoll; empty: one roll bought to measure */
} RcBeside;

typedef struct
{
  const RcSite *site;
  RcObjective   objective;
  GCancellable *cancellable;                  /* nullable, borrowed: stops what stops at a deadline */
  gboolean      counts_work;                  /* deadlines are of the work done so far, not of the time */
  GPtrArray    *cells;                        /* of RcCellGrids, borrowed */
  GArray       *chosen;                       /* of guint: the grid taken in each cell */
  gint64        doorway_seams, doorway_rules; /* costs of the seams in the doorways */
  RcTaking      taking;                       /* the cuts of the state, made again for each that is weighed */
  RcCutSet     *beside_set;                   /* what lies on the rolls besides the area; NULL: nothing */
  RcCutsSum     beside;                       /* its sum */
  gint64        seam, rule;                   /* costs of the state being weighed */
} RcAreaState;

void rc_area_state_init (RcAreaState *state, const RcSite *site);
void rc_area_state_clear (RcAreaState *state);

/* Scores are from now on those of the area's cuts together with the others (NULL: by themselves, on a roll bought to
 * measure). Rolls and cuts are copied or read at once; the rolls outlive the state or the next call. */
void rc_area_state_set_beside (RcAreaState *state, const RcBeside *beside);

/* The time as deadlines count it. */
gint64 rc_area_state_get_us (const RcAreaState *state);

RcCellGrids *rc_area_state_get_cell (const RcAreaState *state, guint cell);
RcGrid      *rc_area_state_get_grid (const RcAreaState *state, guint cell);

gboolean rc_score_is_better (RcScore a, RcScore b);

/* Score of the cells first .. first + n - 1 as they are chosen and picked. */
RcScore rc_area_state_compute_score (RcAreaState *state, guint first, guint n);

/* Takes for each part of the cell the layout that does best while all else stands; until none does better. The score is
 * of the cells first .. first + n - 1, the cell among them. */
RcScore rc_area_state_improve_picks (RcAreaState *state, guint cell, guint first, guint n);

/* The same with two parts of the cell at a time; stops at the deadline (rc_area_state_get_us). */
RcScore rc_area_state_improve_pairs (RcAreaState *state, guint cell, guint first, guint n, gint64 deadline_us);

/* Tries every combination of picks of the cells first .. first + n - 1, where they are few enough, and takes the best.
 * `best` is the score of the picks as they are, then of those taken. FALSE, and nothing is changed, where there are too
 * many, or the goods have a pattern. Stops at the deadline. */
gboolean rc_area_state_try_all_picks (RcAreaState *state, guint first, guint n, gint64 deadline_us, RcScore *best);

/* Picks for all the cells first .. first + n - 1 from several starts: fills whole, and split alike into 2, 3, ..
 * pieces; with `keep` also as they are picked now. */
RcScore rc_area_state_start_picks (RcAreaState *state, guint first, guint n, gboolean keep);

/* Every part of the cell whole. */
void rc_area_state_start_whole (RcAreaState *state, guint cell);

/* Picks for one cell from the same starts, scored over the cells first .. first + n - 1, whose own picks stand. */
RcScore rc_area_state_start_cell (RcAreaState *state, guint cell, guint first, guint n);

/* The picks of the cells first .. first + n - 1, one after another: read into `picks` (of guint), or set from them. */
void rc_area_state_exchange_picks (RcAreaState *state, guint first, guint n, GArray *picks, gboolean set);
