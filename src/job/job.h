/* A job: customer, measures (revisions), goods, rolls, settings. The model that every later step reads. */
#pragma once

#include "attachment.h"
#include "goods.h"
#include "job-state.h"
#include "money.h"
#include "offer.h"
#include "pin.h"
#include "plan-picture.h"
#include "room.h"
#include "stair.h"

/* Placement rules that the planner prices. Defaults with their sources in settings.c. A money value of 0 switches a
 * rule off. A rule about a size costs its price at the limit, more the less there is, and twice the price at nothing.
 */
typedef enum
{
  RC_RULE_SEAM_ACROSS_LIGHT,   /* a side seam across the light of a window */
  RC_RULE_SEAM_ACROSS_TRAFFIC, /* a seam crossed on the way between two doors */
  RC_RULE_SEAM_SQUARE_TO_DOOR, /* a seam that runs into an opening at right angles */
  RC_RULE_FILL_TOO_NARROW,
  RC_RULE_PIECE_TOO_SHORT,    /* a joined piece shorter than the least length */
  RC_RULE_TOO_MANY_JOINS,     /* more cross seams in a fill than allowed */
  RC_RULE_CROSS_SEAM_AT_DOOR, /* a cross seam nearer a door than allowed */
  RC_RULE_CROSS_SEAMS_NOT_STAGGERED,
  RC_RULE_SEAM_IN_DOOR_SWING, /* a seam under the sweep of a door's leaf, where people turn on it */
  RC_RULE_SEAM_ON_KEPT_FLOOR, /* a seam on floor that is pinned free of seams */
  RC_RULE_EACH_SEAM,          /* fewest seams: for every seam there is, however short, beyond what it costs to make */
  RC_N_RULES
} RcRule;

typedef struct
{
  RcLength        trim_length; /* added to the length of every cut, in all */
  RcLength        trim_width;  /* added to the width of a fill, in all, at its wall edge */
  RcLength        least_fill_width;
  RcLength        least_piece_length;
  guint           most_joins;    /* cross seams in one fill */
  RcLength        door_distance; /* of a cross seam from a door */
  RcLength        stagger;       /* between cross seams of neighbouring fills */
  RcMoney         rule_cost[RC_N_RULES];
  RcLength        strip_double_from; /* a room longer than this gets doubled tack strip (CRI 105: 30 ft) */
  RcClosureLimits closure;
} RcSettings;

void        rc_settings_init (RcSettings *settings, const RcCurrency *currency);
const char *rc_rule_get_name (RcRule rule); /* stable: "seam-across-light", ... */
gboolean    rc_rule_parse (const char *name, RcRule *rule, GError **error);
const char *rc_rule_get_label (RcRule rule); /* translated, for people */

typedef enum
{
  RC_FIXING_STRETCH, /* over cushion, on tack strip */
  RC_FIXING_GLUE,    /* stuck down */
} RcFixing;

/* An area: rooms laid with one carpet and open to each other. */
typedef struct
{
  char      *id;
  char      *name;
  GPtrArray *rooms;   /* of char*, room ids */
  char      *carpet;  /* goods id */
  char      *cushion; /* goods id, nullable */
  RcFixing   fixing;
  int        pile_degrees; /* pinned pile direction, the way the pile leans, counter-clockwise from east in the house:
                              0, 90, 180, 270; -1: the planner chooses */
  char *option;    /* name of a merit of the option taken: "least-cost", "fewest-seams", "least-carpet", ...; NULL, or
                      where no option has it: the cheapest in the job */
  GPtrArray *pins; /* of RcPin */
} RcFloorArea;

RcFloorArea *rc_floor_area_new (const char *id, const char *name);
RcFloorArea *rc_floor_area_copy (const RcFloorArea *area);
void         rc_floor_area_free (RcFloorArea *area);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcFloorArea, rc_floor_area_free)

/* Which of its rooms has that id (nullable), counted from 1; 0: none. */
guint rc_floor_area_find_room (const RcFloorArea *area, const char *id);

const char *rc_fixing_get_name (RcFixing fixing); /* "stretch", "glue" */
gboolean    rc_fixing_parse (const char *name, RcFixing *fixing, GError **error);

/* One visit to the house: a revision of what was measured. */
typedef struct
{
  char      *id;       /* "M1", "M2" */
  char      *date;     /* ISO 8601, nullable */
  char      *taken_by; /* nullable */
  char      *notes;
  GPtrArray *rooms;  /* of RcRoom */
  GPtrArray *stairs; /* of RcStair */
  GPtrArray *areas;  /* of RcFloorArea */
} RcMeasure;

RcMeasure *rc_measure_new (const char *id);
RcMeasure *rc_measure_copy (const RcMeasure *measure);
void       rc_measure_free (RcMeasure *measure);

RcRoom      *rc_measure_find_room (const RcMeasure *measure, const char *id);
RcStair     *rc_measure_find_stair (const RcMeasure *measure, const char *id);
RcFloorArea *rc_measure_find_area (const RcMeasure *measure, const char *id);

typedef struct
{
  char *name;
  char *address; /* lines parted by \n */
  char *phone;
  char *email;
  char *language; /* of what is written to them, a code of rc_translation_list; NULL: the program's own */
} RcCustomer;

typedef enum
{
  RC_UNITS_IMPERIAL,
  RC_UNITS_METRIC,
} RcUnitSystem;

typedef struct
{
  char        *id;                       /* unique in a store; "J-1" */
  char        *number;                   /* as the office writes it */
  char        *title;                    /* "Gull Cottage, ground floor" */
  char        *date;                     /* ISO 8601 date of the job's opening */
  char        *reached[RC_N_JOB_STATES]; /* ISO 8601 date on which it came to each state; NULL: not (yet) */
  char        *notes;
  RcCustomer   customer;
  RcUnitSystem units;
  RcCurrency   currency;
  gint64       tax_ppm; /* 8.25 % = 82500; -1: the price book's */
  RcSettings   settings;
  RcOffer     *offer;
  GPtrArray   *goods;       /* of RcGoods used by the job */
  GPtrArray   *rolls;       /* of RcRoll in stock that the job may use */
  GPtrArray   *measures;    /* of RcMeasure, oldest first; never empty */
  GPtrArray   *attachments; /* of RcAttachment */
  GPtrArray   *pictures;    /* of RcPlanPicture, by storey, lowest first */
} RcJob;

RcJob *rc_job_new (const char *id, const RcCurrency *currency); /* default settings and one empty measure "M1" */
RcJob *rc_job_copy (const RcJob *job);
void   rc_job_free (RcJob *job);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcMeasure, rc_measure_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcJob, rc_job_free)

/* The same rooms, goods, settings and offer as a job of its own: an enquiry of `date`, for `customer` (NULL: the same)
 * and then without the other's attachments. What was cut for the job stays its own, and so does what was issued or
 * ordered for it, which the store keeps by the id. (transfer full) */
RcJob *rc_job_new_duplicate (const RcJob *job, const char *id, const char *number, const char *date,
                             const RcCustomer *customer);

/* The last state that has a date; an enquiry while none has. */
RcJobState rc_job_get_state (const RcJob *job);
/* The job comes to `state` on `date` (NULL: takes the state's own date back); what would come after it has not been
 * reached then. */
void rc_job_set_state (RcJob *job, RcJobState state, const char *date);

/* The job as the alternative of its offer would have it: its carpets and plan options swapped in the last measure (or
 * `measure`), its offer without alternatives. NULL and RC_ERROR_REFERENCE naming the swap whose area, stair or carpet
 * is not there. (transfer full) */
RcJob *rc_job_new_alternative (const RcJob *job, const char *measure, const RcAlternative *alternative, GError **error);

/* The last measure, or the one with that id (NULL: the last; NULL returned when there is none such). */
RcMeasure *rc_job_get_measure (const RcJob *job, const char *id);
/* The plan picture of a storey; NULL when it has none. take: in place of the one that its storey has; the picture is
 * the job's then. */
RcPlanPicture *rc_job_find_picture (const RcJob *job, int storey);
void           rc_job_take_picture (RcJob *job, RcPlanPicture *picture);

const RcGoods *rc_job_find_goods (const RcJob *job, const char *id);

/* Copies into the job the goods that its areas, stairs, openings, alternatives and rolls name and that it lacks, where
 * `catalogue` (of RcGoods, e.g. a price book's) has them. What nobody has stays missing: then FALSE, and rc_job_check
 * names it. */
gboolean rc_job_adopt_goods (RcJob *job, const GPtrArray *catalogue);

/* The job may use these rolls (of RcRoll) that are of its goods, and no others; pieces cut for it before go, too. */
void rc_job_use_rolls (RcJob *job, const GPtrArray *rolls);

const RcLengthStyle *rc_job_get_length_style (const RcJob *job);
RcLengthUnit         rc_job_get_bare_unit (const RcJob *job);

/* `measure` NULL: the last. Checks everything a later step relies on and names the first fault: rooms' shapes,
 * openings, areas naming rooms and goods that exist, no room in two areas, stairs, goods' widths above 0, a roll
 * narrower than the trim, rolls, doors that meet and rooms that do not overlap (rc_house_new). */
gboolean rc_job_check (const RcJob *job, const RcMeasure *measure, GError **error);
