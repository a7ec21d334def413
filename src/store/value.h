/* A value on its way to or from a column. Text and bytes are borrowed. */
#pragma once

#include <glib.h>

typedef enum
{
  RC_VALUE_NULL,
  RC_VALUE_INTEGER,
  RC_VALUE_REAL,
  RC_VALUE_TEXT,
  RC_VALUE_BLOB,
} RcValueKind;

typedef struct
{
  RcValueKind kind;
  gsize       size; /* of text and blob, in bytes */
  union
  {
    gint64        integer;
    double        real;
    const char   *text;
    gconstpointer bytes;
  };
} RcValue;

RcValue rc_value_integer (gint64 integer);
RcValue rc_value_real (double real);
RcValue rc_value_text (const char *text); /* NULL stays NULL */
RcValue rc_value_blob (gconstpointer bytes, gsize size);

/* What a value holds; 0 or NULL for one of another kind, as only a damaged file has. */
gint64      rc_value_get_integer (const RcValue *value);
double      rc_value_get_real (const RcValue *value);
const char *rc_value_get_text (const RcValue *value);
char       *rc_value_dup_text (const RcValue *value);

/* Order of SQLite's BINARY collation for values of one kind; kinds are ordered as they are listed above. */
int rc_value_compare (const RcValue *a, const RcValue *b);

/* As people read it in a message. (transfer full) */
char *rc_value_format (const RcValue *value);

/* An array of values and their number, as two arguments: RC_VALUES (rc_value_text ("a"), rc_value_integer (1)). */
#define RC_VALUES(...) (const RcValue[]){ __VA_ARGS__ }, G_N_ELEMENTS (((const RcValue[]){ __VA_ARGS__ }))
