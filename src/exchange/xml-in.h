/* Reading values out of XML elements; the first fault is kept, later reads go on with defaults.
 *
 * A fault's message begins with file, line and element: JOB.xml:12: <wall> length: ...
 */
#pragma once

#include <libxml/tree.h>

#include "area.h"
#include "money.h"
#include "rowcut-error.h"
#include "unit.h"

typedef struct
{
  const char  *name;      /* of the file, for messages */
  RcLengthUnit bare_unit; /* what a number without unit counts */
  GError      *error;     /* the first fault */
} RcXmlIn;

void rc_xml_in_fail (RcXmlIn *in, const xmlNode *node, RcErrorCode code, const char *format, ...) G_GNUC_PRINTF (4, 5);

/* Takes `error` (transfer full, not NULL) as the fault of an attribute (nullable: of the element). */
void rc_xml_in_take_error (RcXmlIn *in, const xmlNode *node, const char *attribute, GError *error);

gboolean rc_xml_in_is (const xmlNode *node, const char *element);
gboolean rc_xml_in_has (const xmlNode *node, const char *attribute);

/* The attribute, without spaces around it; NULL when it is not there or empty. (transfer full) */
char *rc_xml_in_dup (const xmlNode *node, const char *attribute);
/* The same, but `fallback` when it is not there (an empty one still gives NULL). */
char *rc_xml_in_dup_or (const xmlNode *node, const char *attribute, const char *fallback);
/* The attribute as it stands, with its spaces; NULL when it is not there or empty. (transfer full) */
char *rc_xml_in_dup_text (const xmlNode *node, const char *attribute);
/* The element's own text; NULL when empty. (transfer full) */
char *rc_xml_in_dup_content (const xmlNode *node);
/* The text of the first child of that name; NULL when it is empty or not there. (transfer full) */
char *rc_xml_in_dup_child_content (const xmlNode *node, const char *name);

/* Each gives `fallback` when the attribute is not there, and after a fault. */
RcLength rc_xml_in_length (RcXmlIn *in, const xmlNode *node, const char *attribute, RcLength fallback);
RcLength rc_xml_in_signed_length (RcXmlIn *in, const xmlNode *node, const char *attribute, RcLength fallback);
gint64   rc_xml_in_integer (RcXmlIn *in, const xmlNode *node, const char *attribute, gint64 least, gint64 most,
                            gint64 fallback);
gint64   rc_xml_in_quantity (RcXmlIn *in, const xmlNode *node, const char *attribute, gint64 fallback);
/* Percent as parts per million: 7.25 is 72500. */
gint64   rc_xml_in_percent (RcXmlIn *in, const xmlNode *node, const char *attribute, gint64 fallback);
RcArea   rc_xml_in_area (RcXmlIn *in, const xmlNode *node, const char *attribute, RcArea fallback);
RcMoney  rc_xml_in_money (RcXmlIn *in, const xmlNode *node, const char *attribute, const RcCurrency *currency,
                          RcMoney fallback);
RcUnit   rc_xml_in_unit (RcXmlIn *in, const xmlNode *node, const char *attribute, RcUnit fallback);
gboolean rc_xml_in_yes (const xmlNode *node, const char *attribute);
