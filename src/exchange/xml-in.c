#include "xml-in.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "exact-text.h"

void
rc_xml_in_fail (RcXmlIn *in, const xmlNode *node, RcErrorCode code, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list          args;

  if (in->error != NULL)
    return;
  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error (&in->error, RC_ERROR, code, "%s:%ld: <%s> %s", in->name, xmlGetLineNo (node), (const char *)node->name,
               message);
}

void
rc_xml_in_take_error (RcXmlIn *in, const xmlNode *node, const char *attribute, GError *error)
{
  int code = error->domain == RC_ERROR ? error->code : RC_ERROR_FORMAT;

  if (attribute != NULL)
    rc_xml_in_fail (in, node, code, "%s: %s", attribute, error->message);
  else
    rc_xml_in_fail (in, node, code, "%s", error->message);
  g_error_free (error);
}

gboolean
rc_xml_in_is (const xmlNode *node, const char *element)
{
  return node->type == XML_ELEMENT_NODE && strcmp ((const char *)node->name, element) == 0;
}

gboolean
rc_xml_in_has (const xmlNode *node, const char *attribute)
{
  return xmlHasNsProp (node, BAD_CAST attribute, NULL) != NULL;
}

char *
rc_xml_in_dup_text (const xmlNode *node, const char *attribute)
{
  xmlChar *value = xmlGetNoNsProp (node, BAD_CAST attribute);
  char    *copy = value != NULL && *value != '\0' ? g_strdup ((const char *)value) : NULL;

  xmlFree (value);
  return copy;
}

char *
rc_xml_in_dup (const xmlNode *node, const char *attribute)
{
  char *text = rc_xml_in_dup_text (node, attribute);

  if (text != NULL && *g_strstrip (text) == '\0')
    g_clear_pointer (&text, g_free);
  return text;
}

char *
rc_xml_in_dup_or (const xmlNode *node, const char *attribute, const char *fallback)
{
  return rc_xml_in_has (node, attribute) ? rc_xml_in_dup (node, attribute) : g_strdup (fallback);
}

char *
rc_xml_in_dup_content (const xmlNode *node)
{
  xmlChar *value = xmlNodeGetContent (node);
  char    *copy = value != NULL && *value != '\0' ? g_strdup ((const char *)value) : NULL;

  xmlFree (value);
  return copy;
}

char *
rc_xml_in_dup_child_content (const xmlNode *node, const char *name)
{
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, name))
      return rc_xml_in_dup_content (child);
  return NULL;
}

RcLength
rc_xml_in_length (RcXmlIn *in, const xmlNode *node, const char *attribute, RcLength fallback)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);
  RcLength         length = fallback;
  GError          *error = NULL;

  if (text != NULL && !rc_length_parse (text, in->bare_unit, &length, &error))
    rc_xml_in_take_error (in, node, attribute, error);
  return length;
}

RcLength
rc_xml_in_signed_length (RcXmlIn *in, const xmlNode *node, const char *attribute, RcLength fallback)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);
  RcLength         length = fallback;
  GError          *error = NULL;

  if (text != NULL && !rc_signed_length_parse (text, in->bare_unit, &length, &error))
    rc_xml_in_take_error (in, node, attribute, error);
  return length;
}

gint64
rc_xml_in_integer (RcXmlIn *in, const xmlNode *node, const char *attribute, gint64 least, gint64 most, gint64 fallback)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);
  gint64           value = fallback;
  GError          *error = NULL;

  if (text != NULL && !g_ascii_string_to_signed (*text == '+' ? text + 1 : text, 10, least, most, &value, &error))
    {
      rc_xml_in_fail (in, node, RC_ERROR_RANGE, _ ("%s: “%s” should be a whole number from %ld to %ld"), attribute,
                      text, (glong)least, (glong)most);
      g_error_free (error);
      return fallback;
    }
  return value;
}

gint64
rc_xml_in_quantity (RcXmlIn *in, const xmlNode *node, const char *attribute, gint64 fallback)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);
  gint64           quantity_micro = fallback;
  GError          *error = NULL;

  if (text != NULL && !rc_quantity_parse (text, &quantity_micro, &error))
    rc_xml_in_take_error (in, node, attribute, error);
  return quantity_micro;
}

gint64
rc_xml_in_percent (RcXmlIn *in, const xmlNode *node, const char *attribute, gint64 fallback)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);
  gint64           ppm = fallback;
  GError          *error = NULL;

  if (text != NULL && !rc_percent_parse (text, &ppm, &error))
    rc_xml_in_take_error (in, node, attribute, error);
  return ppm;
}

RcArea
rc_xml_in_area (RcXmlIn *in, const xmlNode *node, const char *attribute, RcArea fallback)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);
  RcArea           area = fallback;
  GError          *error = NULL;

  if (text != NULL && !rc_area_parse (text, &area, &error))
    rc_xml_in_take_error (in, node, attribute, error);
  return area;
}

RcMoney
rc_xml_in_money (RcXmlIn *in, const xmlNode *node, const char *attribute, const RcCurrency *currency, RcMoney fallback)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);
  RcMoney          money = fallback;
  GError          *error = NULL;

  if (text != NULL && !rc_money_parse (text, currency, &money, &error))
    rc_xml_in_take_error (in, node, attribute, error);
  return money;
}

RcUnit
rc_xml_in_unit (RcXmlIn *in, const xmlNode *node, const char *attribute, RcUnit fallback)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);
  RcUnit           unit = fallback;
  GError          *error = NULL;

  if (text != NULL && !rc_unit_parse (text, &unit, &error))
    rc_xml_in_take_error (in, node, attribute, error);
  return unit;
}

gboolean
rc_xml_in_yes (const xmlNode *node, const char *attribute)
{
  g_autofree char *text = rc_xml_in_dup (node, attribute);

  return g_strcmp0 (text, "yes") == 0;
}
