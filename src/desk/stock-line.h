/* A roll or a remnant as the office looks at it: what is on it, what is promised to whom, what became of it. No
 * display.
 */
#pragma once

#include "store.h"

/* Along the roll as it was received: what has gone, then what is promised, then what is free. */
typedef enum
{
  RC_STRETCH_GONE,
  RC_STRETCH_KEPT_HERE, /* promised to the open job */
  RC_STRETCH_KEPT,      /* promised to another */
  RC_STRETCH_FREE,
} RcStretchKind;

typedef struct
{
  RcStretchKind kind;
  RcLength      length;
  char          job[24]; /* id, shortened; "" where it is nobody's */
} RcStretch;

typedef struct
{
  RcRoll  *roll;
  char    *goods_name;
  RcLength width; /* usable: its own, or its goods'; 0: not known */
  RcLength kept, kept_here;
  char    *jobs;      /* that it is promised to, "J-1, J-7" */
  GArray  *stretches; /* of RcStretch: what is on the roll now, without what has gone */
} RcStockLine;

RcStockLine *rc_stock_line_copy (const RcStockLine *line);
void         rc_stock_line_free (RcStockLine *line);

/* All rolls with something on them, by goods and ticket; `job` (nullable) is the open one. (transfer full) GPtrArray of
 * RcStockLine. */
GPtrArray *rc_stock_lines_load (RcStore *store, const RcPriceBook *book, const RcJob *job, GError **error);
/* Whether ticket, goods, lot, place or jobs have words that begin so; blank: all do. */
gboolean rc_stock_line_has_words (const RcStockLine *line, const char *words);

/* What has gone of a roll, by its history (of RcRollMove), and what is on it now. (transfer full) GArray of RcStretch.
 */
GArray *rc_stock_line_list_stretches (const RcStockLine *line, const GPtrArray *moves);

/* "3' to 4' 6", 20' to 21'"; "" for a sound roll. (transfer full) */
char *rc_stock_line_dup_damage (const RcStockLine *line, const RcLengthStyle *style);
/* The roll said in one sentence, for those who do not see it drawn. (transfer full) */
char *rc_stock_line_dup_said (const RcStockLine *line, const RcLengthStyle *style);
