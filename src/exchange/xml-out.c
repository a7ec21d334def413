#include "xml-out.h"

#include "exact-text.h"
#include "unit.h"

void
rc_xml_out_init (RcXmlOut *out)
{
  out->buffer = xmlBufferCreate ();
  out->writer = xmlNewTextWriterMemory (out->buffer, 0);
  out->imperial = FALSE;
  /* The library's only failure here is want of memory, in which GLib stops the program too. */
  g_assert (out->buffer != NULL && out->writer != NULL);
  xmlTextWriterSetIndent (out->writer, 1);
  xmlTextWriterSetIndentString (out->writer, BAD_CAST "  ");
  xmlTextWriterStartDocument (out->writer, NULL, "UTF-8", NULL);
}

char *
rc_xml_out_finish (RcXmlOut *out)
{
  char *text;

  xmlTextWriterEndDocument (out->writer);
  xmlFreeTextWriter (out->writer);
  text = g_strndup ((const char *)xmlBufferContent (out->buffer), xmlBufferLength (out->buffer));
  xmlBufferFree (out->buffer);
  return text;
}

/* XML 1.0, production 2. */
static gboolean
is_xml_char (gunichar c)
{
  return c == 0x9 || c == 0xA || c == 0xD || (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD)
         || (c >= 0x10000 && c <= 0x10FFFF);
}

/* (transfer full) */
static xmlChar *
dup_clean (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString         *clean = g_string_new (NULL);

  for (const char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    g_string_append_unichar (clean, is_xml_char (g_utf8_get_char (p)) ? g_utf8_get_char (p) : 0xFFFD);
  return (xmlChar *)g_string_free (clean, FALSE);
}

void
rc_xml_out_open (RcXmlOut *out, const char *element)
{
  xmlTextWriterStartElement (out->writer, BAD_CAST element);
}

void
rc_xml_out_close (RcXmlOut *out)
{
  xmlTextWriterEndElement (out->writer);
}

void
rc_xml_out_text (RcXmlOut *out, const char *element, const char *text)
{
  g_autofree xmlChar *clean = NULL;

  if (text == NULL || *text == '\0')
    return;
  clean = dup_clean (text);
  xmlTextWriterWriteElement (out->writer, BAD_CAST element, clean);
}

void
rc_xml_out_attribute_or_none (RcXmlOut *out, const char *name, const char *text)
{
  g_autofree xmlChar *clean = dup_clean (text != NULL ? text : "");

  xmlTextWriterWriteAttribute (out->writer, BAD_CAST name, clean);
}

void
rc_xml_out_attribute (RcXmlOut *out, const char *name, const char *text)
{
  if (text != NULL && *text != '\0')
    rc_xml_out_attribute_or_none (out, name, text);
}

void
rc_xml_out_attribute_format (RcXmlOut *out, const char *name, const char *format, ...)
{
  g_autofree char *text = NULL;
  va_list          args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  rc_xml_out_attribute (out, name, text);
}

void
rc_xml_out_length (RcXmlOut *out, const char *name, RcLength length)
{
  g_autofree char *text = rc_exact_length_format (length, out->imperial);

  rc_xml_out_attribute (out, name, text);
}

void
rc_xml_out_length_unless (RcXmlOut *out, const char *name, RcLength length, RcLength usual)
{
  if (length != usual)
    rc_xml_out_length (out, name, length);
}

void
rc_xml_out_area (RcXmlOut *out, const char *name, RcArea area)
{
  g_autofree char *text = rc_exact_area_format (area);

  rc_xml_out_attribute (out, name, text);
}

void
rc_xml_out_money (RcXmlOut *out, const char *name, RcMoney money, const RcCurrency *currency)
{
  g_autofree char *text = rc_money_format_plain (money, currency);

  rc_xml_out_attribute (out, name, text);
}

void
rc_xml_out_percent (RcXmlOut *out, const char *name, gint64 ppm)
{
  g_autofree char *text = rc_percent_format (ppm);

  rc_xml_out_attribute (out, name, text);
}

void
rc_xml_out_quantity (RcXmlOut *out, const char *name, gint64 quantity_micro)
{
  g_autofree char *text = rc_quantity_format (quantity_micro, 6);

  rc_xml_out_attribute (out, name, text);
}
