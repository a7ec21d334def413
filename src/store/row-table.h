/* The tables that a model is kept in: their names, columns and keys, as data/schema.sql makes them. */
#pragma once

#include <glib.h>

typedef enum
{
  /* a job's, from here */
  RC_TABLE_JOBS,
  RC_TABLE_CUSTOMERS,
  RC_TABLE_SETTINGS,
  RC_TABLE_RULE_COSTS,
  RC_TABLE_JOB_GOODS,
  RC_TABLE_JOB_ROLLS,
  RC_TABLE_MEASURES,
  RC_TABLE_ROOMS,
  RC_TABLE_WALLS,
  RC_TABLE_OUTLINE_POINTS,
  RC_TABLE_CUTOUTS,
  RC_TABLE_CUTOUT_POINTS,
  RC_TABLE_OPENINGS,
  RC_TABLE_DIAGONALS,
  RC_TABLE_STAIRS,
  RC_TABLE_STAIR_TURNS,
  RC_TABLE_AREAS,
  RC_TABLE_AREA_ROOMS,
  RC_TABLE_JOB_STATES,
  RC_TABLE_ATTACHMENTS,
  RC_TABLE_PICTURES,
  RC_TABLE_OFFERS,
  RC_TABLE_OFFER_LINES,
  RC_TABLE_OFFER_EXTRAS,
  RC_TABLE_OFFER_PAYMENTS,
  RC_TABLE_ALTERNATIVES,
  RC_TABLE_SWAPS,
  RC_TABLE_PINS,
  RC_TABLE_PIN_POINTS,
  RC_N_JOB_TABLES,
  /* the shop's, from here */
  RC_TABLE_PRICE_BOOK = RC_N_JOB_TABLES,
  RC_TABLE_CATALOGUE,
  RC_TABLE_BOOK_PAYMENTS,
  RC_TABLE_TAX_AREAS,
  RC_TABLE_SUPPLIERS,
  RC_TABLE_PRICES,
  RC_N_TABLES
} RcTableId;

typedef struct
{
  const char *name;
  const char *columns; /* parted by ", "; without `job`, which comes first in every table of a job */
  guint       n_columns;
  guint       n_key; /* of the columns, the first so many are the key (after `job`) */
  const char *order; /* the model's order, so that rows come as they are to be built */
} RcRowTable;

const RcRowTable *rc_row_table_get (RcTableId table);
gboolean          rc_row_table_is_of_job (RcTableId table);

/* "room", translated: what a row stands for, in messages. */
const char *rc_row_table_get_label (RcTableId table);

/* SQL over one job's rows (?1 the job) or over the whole table of the shop's. (transfer full) */
char *rc_row_table_dup_select (RcTableId table, gboolean by_key);
/* Parameters: the job, then all columns. */
char *rc_row_table_dup_insert (RcTableId table);
/* Parameters: the columns after the key, then the job, then the key. */
char *rc_row_table_dup_update (RcTableId table);
/* Parameters: the job, then the key. */
char *rc_row_table_dup_delete (RcTableId table);
