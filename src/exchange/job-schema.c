#include "job-schema.h"

#include <string.h>

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <libxml/relaxng.h>

#include "rowcut-data.h"

#define RNG_NAMESPACE "http://relaxng.org/ns/structure/1.0"
#define SCHEMA_PATH   "/org/rowcut/Rowcut/data/rowcut-job.rng"

/* What the schema allows in one element. */
typedef struct
{
  GPtrArray *attributes; /* of xmlNode: the schema's <attribute>s */
  GPtrArray *required;   /* of xmlNode: those of them that must be there */
  GPtrArray *children;   /* of xmlNode: the schema's <element>s */
  GPtrArray *once;       /* of xmlNode: those of them that may stand once */
  GPtrArray *needed;     /* of xmlNode: those of them that must stand */
  gboolean   text;
} Content;

static void
content_clear (Content *content)
{
  g_ptr_array_unref (content->attributes);
  g_ptr_array_unref (content->required);
  g_ptr_array_unref (content->children);
  g_ptr_array_unref (content->once);
  g_ptr_array_unref (content->needed);
}

static xmlDoc *
parse_schema (void)
{
  g_autoptr (GBytes) bytes = NULL;
  gsize       size;
  const char *data;

  rowcut_data_get_resource ();
  bytes = g_resources_lookup_data (SCHEMA_PATH, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  g_assert (bytes != NULL);
  data = g_bytes_get_data (bytes, &size);
  return xmlReadMemory (data, (int)size, "rowcut-job.rng", NULL, XML_PARSE_NONET | XML_PARSE_NOBLANKS);
}

/* --- finding one's way in the schema --- */

static gboolean
is_rng (const xmlNode *node, const char *name)
{
  return node->type == XML_ELEMENT_NODE && node->ns != NULL && strcmp ((const char *)node->ns->href, RNG_NAMESPACE) == 0
         && strcmp ((const char *)node->name, name) == 0;
}

static gboolean
has_name (const xmlNode *node, const char *name)
{
  xmlChar *value = xmlGetNoNsProp (node, BAD_CAST "name");
  gboolean same = value != NULL && strcmp ((const char *)value, name) == 0;

  xmlFree (value);
  return same;
}

static char *
dup_name (const xmlNode *node)
{
  xmlChar *value = xmlGetNoNsProp (node, BAD_CAST "name");
  char    *name = g_strdup ((const char *)value);

  xmlFree (value);
  return name;
}

static xmlNode *
find_define (const xmlNode *grammar, const char *name)
{
  for (xmlNode *node = grammar->children; node != NULL; node = node->next)
    if (is_rng (node, "define") && has_name (node, name))
      return node;
  return NULL;
}

/* How what is found under a pattern may stand. */
typedef struct
{
  gboolean required, many;
} Standing;

static void
collect_one (const xmlNode *node, Standing standing, Content *content)
{
  if (is_rng (node, "attribute"))
    {
      g_ptr_array_add (content->attributes, (gpointer)node);
      if (standing.required)
        g_ptr_array_add (content->required, (gpointer)node);
    }
  else if (is_rng (node, "element"))
    {
      g_ptr_array_add (content->children, (gpointer)node);
      if (!standing.many)
        g_ptr_array_add (content->once, (gpointer)node);
      if (standing.required)
        g_ptr_array_add (content->needed, (gpointer)node);
    }
  else if (is_rng (node, "text"))
    content->text = TRUE;
}

static void
collect (const xmlNode *grammar, const xmlNode *pattern, Standing standing, Content *content)
{
  for (xmlNode *node = pattern->children; node != NULL; node = node->next)
    {
      Standing within = standing;

      if (is_rng (node, "optional") || is_rng (node, "zeroOrMore") || is_rng (node, "choice"))
        within.required = FALSE;
      if (is_rng (node, "oneOrMore") || is_rng (node, "zeroOrMore"))
        within.many = TRUE;
      if (is_rng (node, "attribute") || is_rng (node, "element") || is_rng (node, "text"))
        collect_one (node, standing, content);
      else if (is_rng (node, "ref"))
        {
          g_autofree char *name = dup_name (node);
          const xmlNode   *define = find_define (grammar, name);

          if (define != NULL)
            collect (grammar, define, standing, content);
        }
      else if (node->type == XML_ELEMENT_NODE)
        collect (grammar, node, within, content);
    }
}

static xmlNode *
find_by_name (const GPtrArray *patterns, const char *name)
{
  for (guint i = 0; i < patterns->len; i++)
    if (has_name (patterns->pdata[i], name))
      return patterns->pdata[i];
  return NULL;
}

/* "wall, outline, door"; (transfer full) */
static char *
list_names (const GPtrArray *patterns)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < patterns->len; i++)
    {
      g_autofree char *name = dup_name (patterns->pdata[i]);

      g_string_append_printf (list, "%s%s", i == 0 ? "" : ", ", name);
    }
  return g_string_free (list, FALSE);
}

/* The values an attribute may have, where the schema lists them: under `pattern` or a definition it refers to. */
static void
collect_values (const xmlNode *grammar, const xmlNode *pattern, GPtrArray *values)
{
  for (xmlNode *node = pattern->children; node != NULL; node = node->next)
    {
      if (is_rng (node, "value"))
        g_ptr_array_add (values, rc_xml_in_dup_content (node));
      else if (is_rng (node, "ref"))
        {
          g_autofree char *name = dup_name (node);
          const xmlNode   *define = find_define (grammar, name);

          if (define != NULL)
            collect_values (grammar, define, values);
        }
      else if (node->type == XML_ELEMENT_NODE)
        collect_values (grammar, node, values);
    }
}

/* --- finding the fault --- */

static void
explain_value (RcXmlIn *in, const xmlNode *grammar, const xmlNode *node, const xmlNode *pattern)
{
  g_autoptr (GPtrArray) values = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *name = dup_name (pattern), *value = rc_xml_in_dup (node, name), *list = NULL;

  collect_values (grammar, pattern, values);
  if (values->len == 0)
    return;
  for (guint i = 0; i < values->len; i++)
    if (g_strcmp0 (values->pdata[i], value) == 0)
      return;
  g_ptr_array_add (values, NULL);
  list = g_strjoinv (", ", (char **)values->pdata);
  rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("%s: “%s” should be one of: %s"), name, value != NULL ? value : "",
                  list);
}

static void
explain_attributes (RcXmlIn *in, const xmlNode *grammar, const xmlNode *node, const Content *content)
{
  g_autofree char *allowed = list_names (content->attributes);

  for (const xmlAttr *attribute = node->properties; attribute != NULL; attribute = attribute->next)
    {
      const char    *name = (const char *)attribute->name;
      const xmlNode *pattern = attribute->ns == NULL ? find_by_name (content->attributes, name) : NULL;

      if (pattern == NULL)
        rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("has no attribute “%s”; it may have: %s"), name, allowed);
      else
        explain_value (in, grammar, node, pattern);
    }
  for (guint i = 0; i < content->required->len; i++)
    {
      g_autofree char *name = dup_name (content->required->pdata[i]);

      if (!rc_xml_in_has (node, name))
        rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("lacks its attribute “%s”"), name);
    }
}

static gboolean
is_blank (const xmlNode *text)
{
  for (const xmlChar *p = text->content; p != NULL && *p != '\0'; p++)
    if (!g_ascii_isspace (*p))
      return FALSE;
  return TRUE;
}

/* Elements that stand twice, and those that lack. */
static void
explain_counts (RcXmlIn *in, const xmlNode *node, const Content *content)
{
  for (guint i = 0; i < content->once->len; i++)
    {
      g_autofree char *name = dup_name (content->once->pdata[i]);
      guint            n = 0;

      for (const xmlNode *child = node->children; child != NULL; child = child->next)
        if (rc_xml_in_is (child, name) && ++n == 2)
          rc_xml_in_fail (in, child, RC_ERROR_FORMAT, _ ("stands twice in <%s>; once is right"),
                          (const char *)node->name);
    }
  for (guint i = 0; i < content->needed->len; i++)
    {
      g_autofree char *name = dup_name (content->needed->pdata[i]);
      gboolean         found = FALSE;

      for (const xmlNode *child = node->children; child != NULL && !found; child = child->next)
        found = rc_xml_in_is (child, name);
      if (!found)
        rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("lacks its element <%s>"), name);
    }
}

static void explain (RcXmlIn *in, const xmlNode *grammar, const xmlNode *node, const xmlNode *pattern);

static void
explain_children (RcXmlIn *in, const xmlNode *grammar, const xmlNode *node, const Content *content)
{
  g_autofree char *allowed = list_names (content->children);

  for (const xmlNode *child = node->children; child != NULL && in->error == NULL; child = child->next)
    {
      if (child->type == XML_ELEMENT_NODE)
        {
          const xmlNode *pattern = find_by_name (content->children, (const char *)child->name);

          if (child->ns == NULL || strcmp ((const char *)child->ns->href, RC_JOB_FILE_NAMESPACE) != 0)
            rc_xml_in_fail (in, child, RC_ERROR_FORMAT, _ ("is not in the namespace %s"), RC_JOB_FILE_NAMESPACE);
          else if (pattern != NULL)
            explain (in, grammar, child, pattern);
          else if (*allowed == '\0')
            rc_xml_in_fail (in, child, RC_ERROR_FORMAT, _ ("must not stand in <%s>, which holds no elements"),
                            (const char *)node->name);
          else
            rc_xml_in_fail (in, child, RC_ERROR_FORMAT, _ ("is not known in <%s>; there may stand: %s"),
                            (const char *)node->name, allowed);
        }
      else if ((child->type == XML_TEXT_NODE || child->type == XML_CDATA_SECTION_NODE) && !content->text
               && !is_blank (child))
        rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("must not hold text"));
    }
}

/* The first fault in `node` by the schema's element `pattern`, in the order of the file. */
static void
explain (RcXmlIn *in, const xmlNode *grammar, const xmlNode *node, const xmlNode *pattern)
{
  Content content
      = { g_ptr_array_new (), g_ptr_array_new (), g_ptr_array_new (), g_ptr_array_new (), g_ptr_array_new (), FALSE };
  Standing standing = { TRUE, FALSE };

  collect (grammar, pattern, standing, &content);
  explain_attributes (in, grammar, node, &content);
  if (in->error == NULL)
    explain_children (in, grammar, node, &content);
  if (in->error == NULL)
    explain_counts (in, node, &content);
  content_clear (&content);
}

/* --- the check itself --- */

/* Keeps the first message, with its node, for faults that the walk above does not find. */
static void
note_fault (void *data, xmlError *fault)
{
  RcXmlIn         *in = data;
  g_autofree char *message = NULL;

  if (in->error != NULL || fault->node == NULL)
    return;
  message = g_strchomp (g_utf8_make_valid (fault->message, -1));
  rc_xml_in_fail (in, fault->node, RC_ERROR_FORMAT, "%s", message);
}

static gboolean
is_valid (RcXmlIn *in, xmlRelaxNG *schema, xmlDoc *doc)
{
  xmlRelaxNGValidCtxt *context = xmlRelaxNGNewValidCtxt (schema);
  int                  result;

  xmlRelaxNGSetValidStructuredErrors (context, (xmlStructuredErrorFunc)note_fault, in);
  result = xmlRelaxNGValidateDoc (context, doc);
  xmlRelaxNGFreeValidCtxt (context);
  return result == 0;
}

/* The schema's pattern of the root element. */
static const xmlNode *
find_root_pattern (const xmlNode *grammar)
{
  for (const xmlNode *node = grammar->children; node != NULL; node = node->next)
    if (is_rng (node, "start"))
      return xmlFirstElementChild ((xmlNode *)node);
  g_return_val_if_reached (NULL);
}

/* libxml2 (2.9) follows every subset of an element's optional attributes: two to the power of their number. The walk
 * above has found all of them allowed; leaves so many that the rest can be judged at once. */
#define MAX_OPTIONAL_ATTRIBUTES 6

static void
prune (const xmlNode *grammar, xmlNode *node, const xmlNode *pattern)
{
  Content content
      = { g_ptr_array_new (), g_ptr_array_new (), g_ptr_array_new (), g_ptr_array_new (), g_ptr_array_new (), FALSE };
  Standing standing = { TRUE, FALSE };
  guint    n_optional = 0;

  collect (grammar, pattern, standing, &content);
  for (xmlAttr *attribute = node->properties, *next; attribute != NULL; attribute = next)
    {
      next = attribute->next;
      if (find_by_name (content.required, (const char *)attribute->name) == NULL
          && ++n_optional > MAX_OPTIONAL_ATTRIBUTES)
        xmlRemoveProp (attribute);
    }
  for (xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE)
      prune (grammar, child, find_by_name (content.children, (const char *)child->name));
  content_clear (&content);
}

/* The walk first, for its messages and because it takes no longer for a bad file than for a good one; then the library,
 * for all that the walk does not look at. */
gboolean
rc_job_schema_check (RcXmlIn *in, xmlDoc *doc)
{
  xmlDoc               *grammar_doc = parse_schema (), *pruned;
  xmlRelaxNGParserCtxt *parser;
  xmlRelaxNG           *schema;
  const xmlNode        *grammar = xmlDocGetRootElement (grammar_doc), *root_pattern = find_root_pattern (grammar);

  explain (in, grammar, xmlDocGetRootElement (doc), root_pattern);
  if (in->error != NULL)
    {
      xmlFreeDoc (grammar_doc);
      return FALSE;
    }
  parser = xmlRelaxNGNewDocParserCtxt (grammar_doc);
  schema = xmlRelaxNGParse (parser);
  g_assert (schema != NULL);
  pruned = xmlCopyDoc (doc, 1);
  prune (grammar, xmlDocGetRootElement (pruned), root_pattern);
  if (!is_valid (in, schema, pruned) && in->error == NULL)
    rc_xml_in_fail (in, xmlDocGetRootElement (doc), RC_ERROR_FORMAT, _ ("does not follow the schema"));
  xmlFreeDoc (pruned);
  xmlRelaxNGFree (schema);
  xmlRelaxNGFreeParserCtxt (parser);
  xmlFreeDoc (grammar_doc);
  return in->error == NULL;
}
