/* Goods: what a job is made of, as it comes from the supplier. Prices are elsewhere (quote/). */
#pragma once

#include "length.h"
#include "unit.h"

typedef enum
{
  RC_GOODS_CARPET,
  RC_GOODS_CUSHION,
  RC_GOODS_TAPE,       /* seam tape, sold by rolls of a length */
  RC_GOODS_SEALER,     /* seam sealer, coverage as length of edge a pack */
  RC_GOODS_STRIP,      /* tack strip */
  RC_GOODS_ADHESIVE,   /* coverage as area a pack */
  RC_GOODS_TRANSITION, /* moulding where two floors meet */
  RC_N_GOODS_KINDS
} RcGoodsKind;

/* How the pattern meets the next roll width: there it has dropped by a fraction of the length repeat, in lowest terms,
 * 0 <= numerator < denominator <= RC_MATCH_MOST; one number, so that matches compare as such. */
typedef guint32 RcMatch;
#define RC_MATCH_MOST                    1000
#define RC_MATCH(numerator, denominator) ((RcMatch)(numerator) << 16 | (RcMatch)(denominator))
#define RC_MATCH_SET                     ((RcMatch)0) /* level across the seam */
#define RC_MATCH_HALF_DROP               RC_MATCH (1, 2)
#define RC_MATCH_QUARTER_DROP            RC_MATCH (1, 4)

/* Fields that do not apply to a kind are zero. */
typedef struct
{
  char       *id; /* unique, stable: "harbour-twist" */
  RcGoodsKind kind;
  char       *name;     /* "Harbour Twist, slate" */
  char       *supplier; /* nullable */
  RcUnit      unit;     /* unit it is priced in: carpet sq yd, m2 or ft of roll; tape ft; ... */

  /* carpet and cushion */
  RcLength roll_width;    /* nominal */
  RcLength usable_width;  /* after trimmed selvages; 0: the roll width */
  RcLength repeat_length; /* 0: plain */
  RcLength repeat_width;  /* 0: none */
  RcMatch  match;
  RcLength length_step; /* sold in steps of this; 0: any */
  RcLength least_cut;   /* the shortest length that the supplier cuts and charges; 0: any */
  RcLength full_roll;   /* length of a supplier's full roll; 0 not known */

  /* what it is packed in */
  gint64   pack_micro;         /* quantity a pack, in millionths of `unit`; 0: loose */
  RcUnit   pack_unit;          /* RC_UNIT_ROLL, CARTON, BOX, TUB, EACH */
  RcLength tape_width;         /* tape: width, for the setback of cross seams */
  RcArea   pack_covers_area;   /* adhesive: doubled ticks^2 one pack covers */
  RcLength pack_covers_length; /* sealer: edge length one pack covers */
} RcGoods;

RcGoods *rc_goods_new (const char *id, RcGoodsKind kind, const char *name);
RcGoods *rc_goods_copy (const RcGoods *goods);
void     rc_goods_free (RcGoods *goods);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcGoods, rc_goods_free)

/* Whether every field is the same. */
gboolean rc_goods_equal (const RcGoods *a, const RcGoods *b);

/* The member of `goods` that no job could be planned with; NULL: there is none. *fault (transfer full) says what is
 * wrong with it. */
const void *rc_goods_find_fault (const RcGoods *goods, char **fault);
/* FALSE and RC_ERROR_RANGE naming the goods by their id and the field that no job could be planned with. */
gboolean rc_goods_check (const RcGoods *goods, GError **error);

/* Stable words for files: "carpet", "cushion", ... NULL-free. parse: FALSE and RC_ERROR_PARSE naming the words allowed.
 */
const char *rc_goods_kind_get_name (RcGoodsKind kind);
gboolean    rc_goods_kind_parse (const char *name, RcGoodsKind *kind, GError **error);

/* "set", "half-drop", "quarter-drop", any other fraction as "1/3-drop". NULL-free. parse: brings the fraction to lowest
 * terms; FALSE and RC_ERROR_PARSE saying what is allowed. */
const char *rc_match_get_name (RcMatch match);
gboolean    rc_match_parse (const char *name, RcMatch *match, GError **error);
guint       rc_match_get_numerator (RcMatch match);
guint       rc_match_get_denominator (RcMatch match); /* 1 for a set match */

/* usable_width, or roll_width where that is 0. */
RcLength rc_goods_get_usable_width (const RcGoods *goods);

/* The usable width in whole width repeats, by which neighbouring widths match: floor (width / repeat) x repeat (CFI,
 * "Pattern matching" parts 3 and 4); the usable width itself without a repeat or with one wider than the roll. */
RcLength rc_goods_compute_matching_width (const RcGoods *goods);

/* How far the pattern has dropped `widths` roll widths farther on (either sign), 0 <= drop < repeat_length: the match's
 * fraction of the repeat, rounded down once. 0 without a repeat. */
RcLength rc_goods_compute_drop (const RcGoods *goods, gint64 widths);

/* What is bought where `length` >= 0 is needed: not less than the shortest cut, rounded up to the step; 0 for 0. */
RcLength rc_goods_compute_bought (const RcGoods *goods, RcLength length);

/* The longest cut that surely comes in one piece: a full roll, in whole steps, less the length of a pattern's repeat,
 * as that must begin where the floor wants it. G_MAXINT64 where a full roll is not known. */
RcLength rc_goods_compute_longest (const RcGoods *goods);

/* A length of a roll on which nothing may be cut. */
typedef struct
{
  RcLength from, to; /* from the roll's start */
} RcFlaw;

/* A roll in stock. */
typedef struct
{
  char    *id; /* its ticket: "R-1041" */
  char    *goods_id;
  char    *lot;    /* dye lot */
  RcLength length; /* what is left on it, usable */
  gboolean remnant;
  char    *place; /* "rack 3"; nullable */
  gboolean cut;   /* cut for this job already: it costs nothing more, so it is used before all else */
  RcLength width; /* of a remnant that is narrower than its goods; 0: the goods' usable width */
  RcLength kept;  /* of the length, what is promised to this job: used before other rolls. Told by the stock alone */
  GArray  *flaws; /* of RcFlaw: damaged lengths, in any order; never NULL */
} RcRoll;

RcRoll *rc_roll_new (const char *id, const char *goods_id, RcLength length);
RcRoll *rc_roll_copy (const RcRoll *roll);
void    rc_roll_free (RcRoll *roll);

/* Among rolls (of RcRoll), that of this id (nullable); NULL when there is none. */
const RcRoll *rc_rolls_find (const GPtrArray *rolls, const char *id);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcRoll, rc_roll_free)
