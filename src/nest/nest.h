/* Placing rectangular cuts on rolls: the problem, the answer, the solver.
 *
 * Knows rectangles and rolls, not rooms. Every cut keeps its direction. Stage 1 cuts right across the roll, stage 2
 * along each such length, stage 3 across again; trimming one piece to size is not a stage. `across` is the offset from
 * the roll's left edge, `along` the offset from the roll's start.
 *
 * Patterned goods. A cut may be held to a pattern along the roll and to one across it, each by a repeat, a phase and
 * perhaps a match:
 *
 *   repeat 0           free;
 *   repeat, no match   place == phase (mod repeat), the place counted from the roll's start (or its left edge);
 *   repeat and match   place - phase (mod repeat) is one and the same for all cuts of that match, on whatever roll they
 *                      lie. Which one is up to the solver, or follows from a cut of the match that is pinned.
 *
 * So two pieces that must show the pattern at one height share a match and have one phase; where the second must show
 * it 300 mm further on, its phase is greater by 300 mm. Only differences of phases count within a match. Matches along
 * and across are apart: one name may be used for both. All cuts of a match have one repeat. A fill beside a full
 * width whose left edge carries on the pattern from the full width's right edge has across_repeat R and across_phase
 * `roll width mod R`, with no match.
 */
#pragma once

#include <gio/gio.h>

#include "length.h"
#include "money.h"

typedef struct
{
  char    *label;
  RcLength width;                       /* across the roll, > 0 */
  RcLength length;                      /* along the roll, > 0 */
  guint    quantity;                    /* >= 1 */
  RcLength repeat, phase;               /* of the pattern along the roll */
  RcLength across_repeat, across_phase; /* of the pattern across it */
  char    *match, *across_match;        /* NULL: counted from the roll itself */
  char    *group;                       /* NULL: any roll. Cuts of one group must come from rolls of one dye lot */
  guint    pinned_roll;                 /* 0: any roll; else only this one, counted from 1 in problem->rolls */
  gboolean is_along_pinned, is_across_pinned; /* lies at this place, if any is given: */
  RcLength along, across;
} RcNestCut;

/* A length of a roll on which nothing may be cut: damaged, soiled, or already promised. */
typedef struct
{
  RcLength from, to; /* from the roll's start */
} RcNestFlaw;

typedef struct
{
  char    *name;       /* as on the roll's ticket; NULL for goods to be bought */
  char    *lot;        /* dye lot; NULL: goods to be bought, all of one lot */
  RcLength length;     /* usable length; 0: bought to measure, as long as needed */
  guint    count;      /* how many of these */
  gint64   cost_per_m; /* what a metre taken from it counts, in minor units; lower is used first */
  RcLength width;      /* usable width where it is not the problem's; 0: as the problem says; never wider than that */
  RcLength trim;       /* off the roll's start before anything is cut */
  RcLength trim_end;   /* off its end likewise; of goods to be bought so much more is bought */
  GArray  *flaws;      /* of RcNestFlaw, in any order; NULL: none. Only on rolls of a given length */
} RcNestRoll;

typedef struct
{
  RcLength   roll_width;        /* usable width */
  GPtrArray *cuts;              /* of RcNestCut */
  GPtrArray *rolls;             /* of RcNestRoll; empty means one roll bought to measure */
  RcLength   buy_step;          /* lengths to be bought are multiples of this; 0: any */
  RcLength   buy_least;         /* and not shorter than this; 0: any */
  RcLength   buy_most;          /* nor is one roll bought longer than this, but several; 0: any. As few as a first
                                   answer finds room in, and if that is more than one, one more */
  int      stages;              /* 3, or 0 for any number of straight edge-to-edge cuts */
  RcLength least_balance;       /* a leftover shorter than this is waste and counts as none */
  RcLength least_balance_width; /* likewise narrower */
} RcNestProblem;

typedef enum
{
  RC_NEST_OPTIMAL,    /* proved: used_length == lower_bound */
  RC_NEST_TIME_LIMIT, /* valid, not proved best */
  RC_NEST_CANCELLED,  /* valid, stopped early */
  RC_NEST_INFEASIBLE, /* no answer exists, or none was found; the reason says which */
} RcNestStatus;

typedef struct
{
  guint    cut;  /* index in problem->cuts */
  guint    copy; /* 0 .. quantity - 1 */
  guint    roll; /* index in answer->rolls */
  RcLength across, along, width, length;
} RcNestPlacement;

typedef struct
{
  guint    source; /* index in problem->rolls (0 when that list is empty) */
  guint    copy;   /* which of its count, or of those bought */
  RcLength used;   /* from the roll's start to the end of the last cut */
  RcLength length; /* the stock roll's length, or the length to buy (used and trim_end, not below buy_least, rounded up
                      to buy_step) */
} RcNestUse;

/* One stroke of the knife, in the order a person makes them. */
typedef struct
{
  guint    roll;
  int      stage;      /* 1 across the roll, 2 along, 3 across again, 4 and up trims or further stages */
  gboolean along_roll; /* TRUE: runs along the roll at `at` across; FALSE: across it at `at` along */
  RcLength at, from, to;
} RcNestStroke;

/* A rectangle that is left over and of use: beyond the last cut of a roll, a whole width between cuts, or beside the
 * cuts of a length at the roll's left or right edge. The trimmed ends are not part of it. */
typedef struct
{
  guint    roll; /* index in answer->rolls */
  RcLength across, along, width, length;
} RcNestLeftover;

typedef struct
{
  RcNestStatus status;
  char        *reason;      /* why infeasible, naming cut and size; else NULL */
  RcLength     used_length; /* sum of `used` over the rolls */
  RcLength     lower_bound; /* no valid cutting uses less */
  GArray      *placements;  /* of RcNestPlacement, by roll, along, across */
  GPtrArray   *rolls;       /* of RcNestUse (g_free), those used */
  GArray      *strokes;     /* of RcNestStroke */
  GArray      *leftovers;   /* of RcNestLeftover, by roll, along, across: those not shorter than the problem's
                               least_balance nor narrower than its least_balance_width */
} RcNestAnswer;

typedef struct
{
  double        seconds;     /* 0: first answer only (no search), at most a few ms for a house */
  gboolean      counts_work; /* seconds that the calling thread is at work, rather than those that pass */
  guint64       seed;
  guint64       effort;      /* search steps, for reproducible runs; 0: by time alone */
  GCancellable *cancellable; /* nullable */
  void (*progress) (RcLength used, RcLength bound, gpointer user_data); /* nullable */
  gpointer user_data;
} RcNestParams;

RcNestCut  *rc_nest_cut_new (const char *label, RcLength width, RcLength length, guint quantity);
void        rc_nest_cut_free (RcNestCut *cut);
RcNestRoll *rc_nest_roll_new (const char *name, const char *lot, RcLength length, guint count);
void        rc_nest_roll_free (RcNestRoll *roll);

/* Marks a damaged length. */
void rc_nest_roll_add_flaw (RcNestRoll *roll, RcLength from, RcLength to);

/* A problem owns its cuts and rolls: add them with g_ptr_array_add. Three stages unless changed. */
RcNestProblem *rc_nest_problem_new (RcLength roll_width);
void           rc_nest_problem_free (RcNestProblem *problem);
RcNestAnswer  *rc_nest_answer_copy (const RcNestAnswer *answer);
void           rc_nest_answer_free (RcNestAnswer *answer);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestProblem, rc_nest_problem_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcNestAnswer, rc_nest_answer_free)

/* Always returns an answer; never NULL. params NULL: first answer only. (transfer full)
 *
 * In this order an answer is better that costs less (a metre of stock at its own value, goods to be bought by the
 * length bought), leaves the larger single leftover of use (by area; stock that is not cut into counts too), cuts right
 * across the rolls less often, uses less length. */
RcNestAnswer *rc_nest_solve (const RcNestProblem *problem, const RcNestParams *params);

/* For each placement the stroke after which it is cut free: an index in answer->strokes; G_MAXUINT: it is the whole
 * roll. (transfer full) */
guint *rc_nest_answer_list_freeing (const RcNestAnswer *answer);

/* "optimal", "time-limit", "cancelled", "infeasible". */
const char *rc_nest_status_get_name (RcNestStatus status);

/* A lower bound on the roll length of any cutting of these cuts on one roll bought to measure, cheap (microseconds):
 * area, widths that cannot lie side by side, dual feasible functions. */
RcLength rc_nest_compute_quick_bound (const RcNestProblem *problem);

/* The quickest constructive cutting: the used length only, for planners that compare many sets of cuts. */
RcLength rc_nest_compute_quick_length (const RcNestProblem *problem);

/* The least length of any cutting of at most `most_cuts` cuts (in the problem's stages); of more cuts the quick length.
 * Takes 3^n x 15 ns for n cuts. */
RcLength rc_nest_compute_exact_length (const RcNestProblem *problem, guint most_cuts);

/* The same as the quick length on the problem's rolls, all of one dye lot, groups left aside: the number of cuts that
 * find no place. `cost` is the sum of ticks x cost_per_m, `used` that of the lengths used; both of the cuts that are
 * placed. */
guint rc_nest_compute_quick_cost (const RcNestProblem *problem, gint64 *cost, RcLength *used);

/* Checks an answer against its problem: every cut once, inside the rolls, apart, cuttable in the stages allowed,
 * phases, sums. On FALSE the error names the first fault. Shares no code with the solver. */
gboolean rc_nest_check (const RcNestProblem *problem, const RcNestAnswer *answer, GError **error);
