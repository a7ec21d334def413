#include "value.h"

#include <string.h>

RcValue
rc_value_integer (gint64 integer)
{
  return (RcValue){ .kind = RC_VALUE_INTEGER, .integer = integer };
}

RcValue
rc_value_real (double real)
{
  return (RcValue){ .kind = RC_VALUE_REAL, .real = real };
}

RcValue
rc_value_text (const char *text)
{
  if (text == NULL)
    return (RcValue){ .kind = RC_VALUE_NULL };
  return (RcValue){ .kind = RC_VALUE_TEXT, .text = text, .size = strlen (text) };
}

RcValue
rc_value_blob (gconstpointer bytes, gsize size)
{
  return (RcValue){ .kind = RC_VALUE_BLOB, .bytes = bytes, .size = size };
}

gint64
rc_value_get_integer (const RcValue *value)
{
  return value->kind == RC_VALUE_INTEGER ? value->integer : 0;
}

double
rc_value_get_real (const RcValue *value)
{
  return value->kind == RC_VALUE_REAL ? value->real : 0;
}

const char *
rc_value_get_text (const RcValue *value)
{
  return value->kind == RC_VALUE_TEXT ? value->text : NULL;
}

char *
rc_value_dup_text (const RcValue *value)
{
  return g_strdup (rc_value_get_text (value));
}

static int
compare_bytes (const RcValue *a, const RcValue *b)
{
  int order = memcmp (a->bytes, b->bytes, MIN (a->size, b->size));

  if (order != 0)
    return order;
  return (a->size > b->size) - (a->size < b->size);
}

int
rc_value_compare (const RcValue *a, const RcValue *b)
{
  if (a->kind != b->kind)
    return (int)a->kind - (int)b->kind;
  switch (a->kind)
    {
    case RC_VALUE_INTEGER:
      return (a->integer > b->integer) - (a->integer < b->integer);
    case RC_VALUE_REAL:
      return (a->real > b->real) - (a->real < b->real);
    case RC_VALUE_TEXT:
    case RC_VALUE_BLOB:
      return compare_bytes (a, b);
    case RC_VALUE_NULL:
    default:
      return 0;
    }
}

char *
rc_value_format (const RcValue *value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  switch (value->kind)
    {
    case RC_VALUE_INTEGER:
      return g_strdup_printf ("%" G_GINT64_FORMAT, value->integer);
    case RC_VALUE_REAL:
      return g_strdup (g_ascii_dtostr (digits, sizeof digits, value->real));
    case RC_VALUE_TEXT:
      return g_strndup (value->text, value->size);
    case RC_VALUE_BLOB:
      return g_strdup_printf ("%" G_GSIZE_FORMAT " bytes", value->size);
    case RC_VALUE_NULL:
    default:
      return g_strdup ("");
    }
}
