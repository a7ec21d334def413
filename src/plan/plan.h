/* The carpet plan: pile direction, drops, fills, seams, the options worth choosing between, and the cuts on the rolls.
 *
 * Coordinates are the house's. Knows no prices but the weights it is given.
 */
#pragma once

#include "house.h"
#include "nest.h"

/* What the planner weighs, in minor units of money. */
typedef struct
{
  gint64 carpet_per_m;    /* one metre of roll length of the area's carpet */
  gint64 side_seam_per_m; /* labour, tape and sealer */
  gint64 cross_seam_per_m;
  gint64 cross_seam_each; /* setting up one cross seam */
} RcPlanWeights;

typedef enum
{
  RC_PIECE_DROP, /* full roll width */
  RC_PIECE_FILL,
  RC_PIECE_STAIR,
} RcPieceKind;

typedef struct
{
  guint       number; /* 1.. over the whole plan: the same on floor, roll, lists and sheets */
  RcPieceKind kind;
  char       *area;         /* area id; NULL for a stair */
  char       *room;         /* id of the room that holds most of it, or the stair's id */
  char       *goods;        /* carpet's goods id */
  RcRegion   *outline;      /* what is seen of it on the floor, trimmed; empty for a stair */
  RcBox       cut_box;      /* where the cut lies before trimming, in the house; for a stair all zero */
  RcPoint     cut_start;    /* its corner at the roll's start and left edge, pile leaning away from the start */
  double      pile_degrees; /* the way its pile leans, counter-clockwise from east */
  RcLength    cut_width, cut_length;    /* off the roll, allowances included */
  guint       strip;                    /* which strip of the area it lies in, from 0 */
  guint       fill;                     /* pieces joined end to end share this number, from 1; 0: not joined */
  guint       stair_piece;              /* of a stair: which of rc_stair_compute_pieces */
  RcLength    repeat, phase;            /* patterned goods: place along the roll, as in RcNestCut, in the match of its
                                           area or stair */
  RcLength across_repeat, across_phase; /* likewise across it */
  char    *roll;                        /* id of the stock roll it is pinned to; NULL: any */
  guint    roll_pin;                    /* which pin of its area says so */
} RcPiece;

typedef enum
{
  RC_SEAM_SIDE,
  RC_SEAM_CROSS,
} RcSeamKind;

typedef struct
{
  RcSeamKind kind;
  RcPoint    from, to;
  RcLength   length;
  guint      piece_a, piece_b; /* numbers of the pieces it joins */
  char      *area;             /* area id */
  char      *room;             /* id of the room that holds its middle */
  guint      side_ends;        /* cross seam: at how many of its ends (0, 1, 2) it meets a side seam */
} RcSeam;

typedef struct
{
  RcRule      rule;
  RcPoint     place;
  const char *format; /* of the reason, not translated yet, and what is told in it: rc_broken_rule_dup_reason */
  char      **args;
  RcMoney     cost;
} RcBrokenRule;

/* What is good about an option among those of its area. */
typedef enum
{
  RC_MERIT_LEAST_COST = 1 << 0,
  RC_MERIT_FEWEST_SEAMS = 1 << 1, /* least length of seams */
  RC_MERIT_FEWEST_JOINS = 1 << 2,
  RC_MERIT_LEAST_CARPET = 1 << 3,
  RC_MERIT_OTHER_DIRECTION = 1 << 4, /* best by none of these, but with the pile along another axis than the cheapest */
  RC_MERIT_IN_BETWEEN = 1 << 5,
  RC_MERIT_WITH_THE_JOB = 1 << 6, /* found better beside all else cut from the carpet */
  RC_MERIT_END = 1 << 7
} RcMerit;

/* One way to carpet an area. */
typedef struct
{
  char      *name;   /* stable: its first merit's; no two of an area share one */
  guint      merits; /* of RcMerit */
  double     pile_degrees;
  GPtrArray *pieces;                            /* of RcPiece, numbered from 1 within the option */
  GPtrArray *seams;                             /* of RcSeam */
  GPtrArray *broken;                            /* of RcBrokenRule */
  RcLength   carpet_length, length_lower_bound; /* this area's cuts alone on one roll bought to measure */
  RcLength   safe_length; /* patterned goods: the same by the trade's safe rule, a whole repeat more for each cut (CFI,
                             "The art of installing patterned carpet"), which asks no place of any; 0 for plain goods */
  RcArea   carpet_area;   /* carpet_length x roll width, doubled */
  RcLength side_seam, cross_seam;
  guint    joins;                  /* cross seams in fills */
  RcMoney  carpet_cost, seam_cost; /* by the weights */
  RcMoney  rule_cost;              /* of the rules broken, and the price of each seam beyond its making */
  RcMoney  cost, cost_lower_bound; /* the three together */
} RcOption;

/* What became of a pin. */
typedef struct
{
  char    *unmet; /* translated: why it could not be kept, naming the pin it contradicts if there is one; NULL: kept */
  gboolean cost_known; /* only in plans that are given time */
  RcMoney  cost;       /* what the cheapest plan costs more with it than without, all other pins as they are; by quick
                          searches of the area by itself */
} RcPinResult;

typedef struct
{
  const RcFloorArea *area;       /* borrowed from the job */
  char              *key;        /* all that the options depend on, but for where the area lies */
  RcPoint            origin;     /* a corner of it: where it lies */
  double             seconds;    /* the time that the whole plan was allowed when they were found */
  RcRegion          *floor;      /* as laid, in the house */
  RcArea             floor_area; /* exact, doubled */
  GPtrArray         *options;    /* of RcOption, at least one, cheapest first (last one with the job): rc_option_list */
  guint              chosen;     /* index in options */
  gboolean           stays;      /* it is laid as it was (RcPlanParams.laid) */
  RcMoney            alone_lower_bound; /* what any option costs by itself at least, where that was found out; else 0 */
  RcMoney            share_lower_bound; /* what it adds to the cost of any plan at least, bought carpet by the tick */
  GArray            *pins;              /* of RcPinResult: the area's pins in their order, then its pile direction; NULL
                                           where nothing is pinned */
} RcAreaPlan;

/* A piece that could not come off the roll it is pinned to. */
typedef struct
{
  guint piece; /* number */
  char *reason;
} RcLetGo;

/* A leftover shorter or narrower than this goes into the bin. Common practice, no source. */
#define RC_LEAST_REMNANT (2 * RC_TICKS_PER_FOOT)

/* The cuts of all areas and stairs in one carpet, on its rolls. */
typedef struct
{
  const RcGoods *goods;   /* borrowed from the job */
  RcNestProblem *problem; /* cut i is piece_numbers[i]; rolls of stock first, then one to buy */
  RcNestAnswer  *answer;
  GArray        *piece_numbers;    /* of guint */
  GPtrArray     *roll_ids;         /* of char*, per problem roll: the stock roll's id, NULL to buy */
  RcLength       safe_length;      /* as in RcOption, of all of them on one roll */
  GPtrArray     *let_go;           /* of RcLetGo */
  RcMoney        cost_lower_bound; /* what is laid in the carpet adds to the plan's cost at least, whatever the plan */
} RcCutting;

typedef struct
{
  const RcJob     *job;     /* borrowed; outlives the plan */
  const RcMeasure *measure; /* borrowed */
  RcHouse         *house;
  GPtrArray       *areas;  /* of RcAreaPlan */
  GPtrArray       *pieces; /* of RcPiece: copies of the chosen options' and the stairs', numbered over the whole plan */
  GPtrArray       *seams;  /* of RcSeam, with the plan's piece numbers */
  GPtrArray       *cuttings;      /* of RcCutting, one per carpet */
  RcLength         carpet_length; /* sum of used lengths over all rolls of all carpets */
  RcArea           carpet_area;   /* with the roll widths, doubled */
  RcArea           covered_area;  /* floors and stairs' net pieces, doubled */
  gint64           waste_ppm;     /* (carpet_area - covered_area) / carpet_area; 0 without carpet */
  RcMoney          cost;          /* what was minimised: carpet as cut, stock at its own value, seams, broken rules */
  RcMoney          cost_lower_bound; /* no plan of the options allowed costs less */
} RcPlan;

/* What a planner at work tells. */
typedef struct
{
  const char *what; /* the name of the area or the carpet that is looked at next */
  RcMoney     cost; /* of the best plan so far, stairs and stock left out until they are chosen; 0: there is none yet */
  RcMoney     cost_lower_bound; /* likewise; no plan of the options allowed costs less */
  double      share;            /* of the time that has passed, 0 to 1 */
} RcPlanProgress;

typedef void (*RcPlanProgressFunc) (const RcPlanProgress *progress, gpointer user_data);

typedef struct
{
  double   seconds; /* for the whole plan; 0: the first answer only */
  gboolean steady;  /* take the nester's first answers, so that the same input gives the same plan on any machine as
                       long as `seconds` suffice for the planner's own search */
  guint64 effort; /* 0: by time. Else in place of `seconds`, and steady: work counted, about a thousandth of a second of
                     a usual machine each, so that the same effort gives the same plan on any */
  guint64       seed;
  GCancellable *cancellable; /* nullable */
  const RcPlan *previous; /* nullable: areas that are still the same keep its options, found in as much time at least */
  const RcPlan *laid;     /* nullable: what goods are cut by. Areas that are still the same stay as it lays them */
  RcPlanProgressFunc progress; /* nullable: called in the thread that asked for the plan, some times for each
                                  area; not for a first answer */
  gpointer progress_data;
} RcPlanParams;

/* Gives the weights for a carpet. */
typedef void (*RcPlanWeightsFunc) (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data);

/* Plans one measure of a job. The job is checked first. NULL and an error when it cannot be planned (RC_ERROR_GEOMETRY,
 * REFERENCE or INFEASIBLE, naming room or area). `job` and `measure` must outlive the plan: keep a copy for a thread.
 */
RcPlan *rc_plan_new (const RcJob *job, const RcMeasure *measure, RcPlanWeightsFunc weights, gpointer user_data,
                     const RcPlanParams *params, GError **error);
void    rc_plan_free (RcPlan *plan);

/* The pile of what is cut cannot be turned: areas of `measure` (one of the job's) that have changed since `before`, and
 * leave their pile to the planner, get that of `before`. */
void rc_plan_hold_pile (const RcJob *job, RcMeasure *measure, const RcPlan *before, RcPlanWeightsFunc weights,
                        gpointer user_data);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcPlan, rc_plan_free)

/* "Pin 2 (seam line in Living room)", "Pile direction": what entry `index`, as in RcAreaPlan.pins, is
 * about, translated; NULL where the area has no such pin. */
char *rc_pin_dup_label (const RcMeasure *measure, const RcFloorArea *area, guint index);

const RcPiece *rc_plan_find_piece (const RcPlan *plan, guint number);

/* Where the piece lies, and in which cutting; NULL where it is in none. */
const RcNestPlacement *rc_plan_find_placement (const RcPlan *plan, guint number, const RcCutting **cutting);

/* The id of the stock roll that is used; NULL for one that is bought. */
const char *rc_cutting_get_roll_id (const RcCutting *cutting, const RcNestUse *use);

const RcOption   *rc_area_plan_get_chosen (const RcAreaPlan *area_plan);
const RcAreaPlan *rc_plan_find_area (const RcPlan *plan, const char *area_id);

const char *rc_piece_kind_get_name (RcPieceKind kind); /* "drop", "fill", "stair" */
const char *rc_seam_kind_get_name (RcSeamKind kind);   /* "side", "cross" */

const char *rc_merit_get_name (RcMerit merit);            /* "least-cost", "fewest-seams", ... */
char       *rc_option_dup_label (const RcOption *option); /* translated, from its merits: "Least cost, fewest seams" */

/* Why, in the language of the moment: "A seam runs square into D2 of Hall". (transfer full) */
char *rc_broken_rule_dup_reason (const RcBrokenRule *broken);

/* The option with the merit of that name. FALSE when none has it, or `name` is NULL. */
gboolean rc_area_plan_find_option (const RcAreaPlan *area_plan, const char *name, guint *index);
