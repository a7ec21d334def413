/* Writing XML: the same calls always give the same bytes. Characters that XML cannot carry become U+FFFD.
 */
#pragma once

#include <libxml/xmlwriter.h>

#include "area.h"
#include "money.h"

typedef struct
{
  xmlBuffer     *buffer;
  xmlTextWriter *writer;
  gboolean       imperial; /* lengths in feet and inches where exact */
} RcXmlOut;

void rc_xml_out_init (RcXmlOut *out);
/* Ends the document and gives its text, with a newline at its end. (transfer full) */
char *rc_xml_out_finish (RcXmlOut *out);

void rc_xml_out_open (RcXmlOut *out, const char *element);
void rc_xml_out_close (RcXmlOut *out);
/* <element>text</element>; nothing when `text` is NULL or empty. */
void rc_xml_out_text (RcXmlOut *out, const char *element, const char *text);

/* An attribute; nothing when `text` is NULL or empty. */
void rc_xml_out_attribute (RcXmlOut *out, const char *name, const char *text);
/* An attribute, empty for NULL: none, where leaving it out would mean a default. */
void rc_xml_out_attribute_or_none (RcXmlOut *out, const char *name, const char *text);
void rc_xml_out_attribute_format (RcXmlOut *out, const char *name, const char *format, ...) G_GNUC_PRINTF (3, 4);
void rc_xml_out_length (RcXmlOut *out, const char *name, RcLength length);
void rc_xml_out_length_unless (RcXmlOut *out, const char *name, RcLength length, RcLength usual);
void rc_xml_out_area (RcXmlOut *out, const char *name, RcArea area);
void rc_xml_out_money (RcXmlOut *out, const char *name, RcMoney money, const RcCurrency *currency);
void rc_xml_out_percent (RcXmlOut *out, const char *name, gint64 ppm);
void rc_xml_out_quantity (RcXmlOut *out, const char *name, gint64 quantity_micro);
