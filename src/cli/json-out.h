/* Writing one JSON object, the same bytes in every locale; an object or array that holds no other stands on one line.
 *
 * Members are added in order. `name` is the member's name inside an object and NULL inside an array and for the
 * outermost value. Lengths are numbers in mm, areas numbers in m2, money decimal text.
 */
#pragma once

#include "area.h"
#include "money.h"

typedef struct _RcJson RcJson;

RcJson *rc_json_new (void);
void    rc_json_free (RcJson *json);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcJson, rc_json_free)

void rc_json_begin_object (RcJson *json, const char *name);
void rc_json_end_object (RcJson *json);
void rc_json_begin_array (RcJson *json, const char *name);
void rc_json_end_array (RcJson *json);

void rc_json_add_string (RcJson *json, const char *name,
                         const char *value); /* NULL gives null; bad UTF-8 is replaced */
void rc_json_add_int (RcJson *json, const char *name, gint64 value);
void rc_json_add_bool (RcJson *json, const char *name, gboolean value);
void rc_json_add_length (RcJson *json, const char *name, RcLength length);       /* exact: 3657.6 */
void rc_json_add_area (RcJson *json, const char *name, RcArea area);             /* m2 to six decimals */
void rc_json_add_point (RcJson *json, const char *name, RcLength x, RcLength y); /* [x, y] in mm */
/* `value` millionths as a decimal with no more digits than needed: 2500000 is 2.5. */
void rc_json_add_micro (RcJson *json, const char *name, gint64 value_micro);
/* Decimal text, "1234.50"; the object that holds it says "currency" beside. */
void rc_json_add_money (RcJson *json, const char *name, RcMoney money, const RcCurrency *currency);

/* The text so far, ended by a newline; every object and array must be ended. (transfer full) */
char *rc_json_dup_text (RcJson *json);
/* The same to standard output. FALSE, with a message on standard error, when it could not be written. */
gboolean rc_json_print (RcJson *json);
