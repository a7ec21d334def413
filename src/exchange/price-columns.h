/* The columns of a price book's table, and one row of it as typed fields; private to the folder. Every fault is
 * noted; reading goes on with defaults, so that all of them can be told at once.
 */
#pragma once

#include "csv.h"
#include "price-book.h"

#define RC_PRICE_KIND_WORK "work"

enum
{
  RC_PRICE_MOST_FAULTS = 40
};

typedef enum
{
  RC_PRICE_COLUMN_ITEM,
  RC_PRICE_COLUMN_KIND,
  RC_PRICE_COLUMN_NAME,
  RC_PRICE_COLUMN_SUPPLIER,
  RC_PRICE_COLUMN_UNIT,
  RC_PRICE_COLUMN_COST,
  RC_PRICE_COLUMN_SALE,
  RC_PRICE_COLUMN_MARGIN,
  RC_PRICE_COLUMN_FROM_QUANTITY,
  RC_PRICE_COLUMN_VALID_FROM,
  RC_PRICE_COLUMN_VALID_TO,
  /* From here on the goods' own. */
  RC_PRICE_COLUMN_ROLL_WIDTH,
  RC_PRICE_COLUMN_USABLE_WIDTH,
  RC_PRICE_COLUMN_REPEAT_LENGTH,
  RC_PRICE_COLUMN_REPEAT_WIDTH,
  RC_PRICE_COLUMN_MATCH,
  RC_PRICE_COLUMN_LENGTH_STEP,
  RC_PRICE_COLUMN_LEAST_CUT,
  RC_PRICE_COLUMN_FULL_ROLL,
  RC_PRICE_COLUMN_PACK,
  RC_PRICE_COLUMN_PACK_UNIT,
  RC_PRICE_COLUMN_TAPE_WIDTH,
  RC_PRICE_COLUMN_COVERS,
  /* And the shop's own. */
  RC_PRICE_COLUMN_GOODS_PERCENT,
  RC_PRICE_COLUMN_WORK_PERCENT,
  RC_PRICE_COLUMN_PART_PERCENT,
  RC_PRICE_COLUMN_DAYS,
  RC_PRICE_COLUMN_FREE_FROM,
  RC_PRICE_COLUMN_ADDRESS,
  RC_PRICE_COLUMN_PHONE,
  RC_PRICE_COLUMN_EMAIL,
  RC_PRICE_COLUMN_ACCOUNT,
  RC_PRICE_COLUMN_LANGUAGE,
  RC_N_PRICE_COLUMNS
} RcPriceColumn;

typedef struct
{
  RcCsvReader reader;
  guint       n_fields;
  int         field_of[RC_N_PRICE_COLUMNS]; /* -1: no such column */
  GPtrArray  *fields;                       /* of the row */
  GString    *faults;                       /* a line each; NULL: none */
  guint       n_faults;
  int         code;                       /* of the first */
  gboolean    failed[RC_N_PRICE_COLUMNS]; /* in this row, by column */
  GError     *pending;                    /* of a parser called for rc_price_row_take */
} RcPriceRow;

/* Reads the header row. */
gboolean rc_price_row_begin (RcPriceRow *row, const char *csv, const char *name, GError **error);
/* Goes on to the next row with as many fields as the header; FALSE at the end. */
gboolean rc_price_row_next (RcPriceRow *row);
/* FALSE and an error that tells the faults, a line each, the first RC_PRICE_MOST_FAULTS of them. */
gboolean rc_price_row_end (RcPriceRow *row, GError **error);
void     rc_price_row_clear (RcPriceRow *row);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcPriceRow, rc_price_row_clear)

/* Notes a fault: file, line, column and what is wrong. A column's first fault in a row is enough. */
void rc_price_row_fail (RcPriceRow *row, RcPriceColumn column, const char *format, ...) G_GNUC_PRINTF (3, 4);
/* Where a parser puts its error, and what makes it the row's fault when the parser returned FALSE. */
GError **rc_price_row_error (RcPriceRow *row);
void     rc_price_row_take (RcPriceRow *row, RcPriceColumn column, gboolean parsed);

/* The field without spaces around it; "" when empty or not there. */
const char *rc_price_row_get (RcPriceRow *row, RcPriceColumn column);
gboolean    rc_price_row_has (RcPriceRow *row, RcPriceColumn column);
/* Text for people, restored from what keeps spreadsheets from running it; NULL when empty. (transfer full) */
char    *rc_price_row_dup_text (RcPriceRow *row, RcPriceColumn column);
RcLength rc_price_row_length (RcPriceRow *row, RcPriceColumn column); /* a bare number is inches; 0 when empty */
gint64   rc_price_row_quantity (RcPriceRow *row, RcPriceColumn column);
RcMoney  rc_price_row_money (RcPriceRow *row, RcPriceColumn column, const RcCurrency *currency);
int      rc_price_row_days (RcPriceRow *row, RcPriceColumn column);    /* as many as the job file allows */
gint64   rc_price_row_percent (RcPriceRow *row, RcPriceColumn column); /* in millionths */
RcUnit   rc_price_row_unit (RcPriceRow *row, RcPriceColumn column, RcUnit fallback);

/* A row to be written; NULL fields are empty. */
typedef struct
{
  char *text[RC_N_PRICE_COLUMNS];
} RcPriceFields;

void rc_price_fields_append_header (GString *csv);
/* Appends the row and empties the fields. */
void rc_price_fields_append (GString *csv, RcPriceFields *fields);
