/* The one error domain for bad data. A message names the room, line, field or file and says what would be right. */
#pragma once

#include <glib.h>

#define RC_ERROR (rc_error_quark ())

typedef enum
{
  RC_ERROR_PARSE,      /* text that does not read as what it should be */
  RC_ERROR_RANGE,      /* a number outside what is handled */
  RC_ERROR_GEOMETRY,   /* walls that cross, do not close, a door wider than its wall */
  RC_ERROR_REFERENCE,  /* something named that is not there: a room, goods, a price */
  RC_ERROR_FORMAT,     /* a file that is not what it should be */
  RC_ERROR_STORE,      /* the store refuses: locked, full, damaged, newer */
  RC_ERROR_INFEASIBLE, /* no plan or cutting can exist, and why */
  RC_ERROR_CONFLICT,   /* somebody else changed the same thing in the store since it was read */
} RcErrorCode;

GQuark rc_error_quark (void);

/* Text from outside as a message repeats it: made valid UTF-8, cut to 48 characters. NULL reads as empty.
 * (transfer full) */
char *rc_error_quote (const char *text);
