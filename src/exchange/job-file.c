#include "job-file.h"

#include <string.h>

#include <glib/gi18n-lib.h>
#include <libxml/SAX2.h>
#include <libxml/parser.h>

#include "job-file-parts.h"
#include "job-schema.h"
#include "translation.h"

/* --- from bytes to a document --- */

/* Why the reader stopped of its own accord. */
typedef struct
{
  gboolean has_doctype;
  gboolean too_deep;
} Refusal;

/* No document type, so no entity, is ever looked at. */
static void
refuse_doctype (void *data, const xmlChar *name, const xmlChar *external_id, const xmlChar *system_id)
{
  xmlParserCtxt *context = data;

  ((Refusal *)context->_private)->has_doctype = TRUE;
  xmlStopParser (context);
}

static void
start_element (void *data, const xmlChar *local_name, const xmlChar *prefix, const xmlChar *uri, int n_namespaces,
               const xmlChar **namespaces, int n_attributes, int n_defaulted, const xmlChar **attributes)
{
  xmlParserCtxt *context = data;

  if (context->nodeNr >= RC_JOB_FILE_MAX_DEPTH)
    {
      ((Refusal *)context->_private)->too_deep = TRUE;
      xmlStopParser (context);
      return;
    }
  xmlSAX2StartElementNs (data, local_name, prefix, uri, n_namespaces, namespaces, n_attributes, n_defaulted,
                         attributes);
}

static void
set_parse_error (xmlParserCtxt *context, const Refusal *refusal, const char *name, GError **error)
{
  const xmlError  *fault = xmlCtxtGetLastError (context);
  int              line = context->input != NULL ? context->input->line : 1;
  g_autofree char *message = NULL;

  if (refusal->has_doctype)
    g_set_error (error, RC_ERROR, RC_ERROR_FORMAT,
                 _ ("%s:%d: a job file has no document type; take the <!DOCTYPE> out"), name, line);
  else if (refusal->too_deep)
    g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s:%d: elements lie deeper than %d in each other"), name, line,
                 RC_JOB_FILE_MAX_DEPTH);
  else
    {
      /* The library quotes the bytes as they are. */
      message = g_utf8_make_valid (fault != NULL && fault->message != NULL ? fault->message : _ ("not XML"), -1);
      g_strchomp (message);
      g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s:%d: this is no XML: %s"), name,
                   fault != NULL ? fault->line : line, message);
    }
}

static xmlDoc *
read_document (const char *xml, gsize length, const char *name, GError **error)
{
  xmlParserCtxt *context;
  Refusal        refusal = { FALSE, FALSE };
  xmlDoc        *doc;

  if (length > RC_JOB_FILE_MAX_BYTES)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s: a job file has at most %d MiB; this has %lu"), name,
                   RC_JOB_FILE_MAX_BYTES >> 20, (gulong)(length >> 20) + 1);
      return NULL;
    }
  if (length == 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s: the file is empty"), name);
      return NULL;
    }
  context = xmlNewParserCtxt ();
  context->_private = &refusal;
  context->sax->internalSubset = refuse_doctype;
  context->sax->startElementNs = start_element;
  doc = xmlCtxtReadMemory (context, xml, (int)length, NULL, NULL,
                           XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_BIG_LINES);
  if (doc == NULL || refusal.has_doctype || refusal.too_deep)
    {
      set_parse_error (context, &refusal, name, error);
      g_clear_pointer (&doc, xmlFreeDoc);
    }
  xmlFreeParserCtxt (context);
  return doc;
}

/* --- from a document to a job --- */

char *
rc_job_file_dup_language (RcXmlIn *in, const xmlNode *node)
{
  g_autofree char *languages = g_strjoinv (", ", (char **)rc_translation_list ());
  char            *language = rc_xml_in_dup (node, "language");

  if (language != NULL && !rc_translation_has (language))
    rc_xml_in_fail (in, node, RC_ERROR_PARSE, _ ("language: “%s” is not a language of this program; there are %s"),
                    language, languages);
  return language;
}

static void
read_customer (RcXmlIn *in, const xmlNode *node, RcJob *job)
{
  job->customer.name = rc_xml_in_dup_text (node, "name");
  job->customer.phone = rc_xml_in_dup_text (node, "phone");
  job->customer.email = rc_xml_in_dup_text (node, "email");
  job->customer.language = rc_job_file_dup_language (in, node);
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "address"))
      job->customer.address = rc_xml_in_dup_content (child);
}

static RcJob *
read_head (RcXmlIn *in, const xmlNode *root)
{
  g_autofree char *id = rc_xml_in_dup_or (root, "id", "J-0"), *code = rc_xml_in_dup_or (root, "currency", "USD");
  g_autofree char *units = rc_xml_in_dup (root, "units");
  RcCurrency       currency = { "USD", 2 };
  GError          *error = NULL;
  RcJob           *job;

  if (!rc_currency_parse (code != NULL ? code : "", &currency, &error))
    rc_xml_in_take_error (in, root, "currency", error);
  job = rc_job_new (id, &currency);
  job->number = rc_xml_in_dup_text (root, "number");
  job->title = rc_xml_in_dup_text (root, "title");
  job->date = rc_xml_in_dup (root, "date");
  job->units = g_strcmp0 (units, "metric") == 0 ? RC_UNITS_METRIC : RC_UNITS_IMPERIAL;
  job->tax_ppm = rc_xml_in_percent (in, root, "tax-percent", -1);
  in->bare_unit = rc_job_get_bare_unit (job);
  g_ptr_array_set_size (job->measures, 0);
  return job;
}

/* What other parts refer to, wherever it stands in the file. */
static void
read_base (RcXmlIn *in, const xmlNode *root, RcJob *job)
{
  for (const xmlNode *node = root->children; node != NULL && in->error == NULL; node = node->next)
    if (rc_xml_in_is (node, "customer"))
      read_customer (in, node, job);
    else if (rc_xml_in_is (node, "notes"))
      job->notes = rc_xml_in_dup_content (node);
    else if (rc_xml_in_is (node, "settings"))
      rc_job_file_read_settings (in, node, job);
    else if (rc_xml_in_is (node, "goods"))
      rc_job_file_read_goods (in, node, job->goods);
}

static void
give_measure_ids (RcJob *job)
{
  for (guint i = 0; i < job->measures->len; i++)
    {
      RcMeasure *measure = job->measures->pdata[i];

      for (guint n = i + 1; measure->id == NULL; n++)
        {
          g_autofree char *id = g_strdup_printf ("M%u", n);

          if (rc_job_get_measure (job, id) == NULL)
            measure->id = g_steal_pointer (&id);
        }
    }
}

static void
read_rest (RcXmlIn *in, const xmlNode *root, RcJob *job, RcPriceBook **book)
{
  for (const xmlNode *node = root->children; node != NULL && in->error == NULL; node = node->next)
    if (rc_xml_in_is (node, "rolls"))
      rc_job_file_read_rolls (in, node, job);
    else if (rc_xml_in_is (node, "measure"))
      g_ptr_array_add (job->measures, rc_job_file_read_measure (in, node, job));
    else if (rc_xml_in_is (node, "prices"))
      *book = rc_job_file_read_prices (in, node, job);
    else
      rc_job_file_read_office (in, node, job);
  give_measure_ids (job);
}

static gboolean
check_root (RcXmlIn *in, const xmlNode *root)
{
  if (!rc_xml_in_is (root, "job") || root->ns == NULL
      || strcmp ((const char *)root->ns->href, RC_JOB_FILE_NAMESPACE) != 0)
    rc_xml_in_fail (in, root, RC_ERROR_FORMAT, _ ("does not begin a job file; that would be <job xmlns=\"%s\">"),
                    RC_JOB_FILE_NAMESPACE);
  return in->error == NULL;
}

/* The document is no deeper than RC_JOB_FILE_MAX_DEPTH. */
static gboolean
check_children (RcXmlIn *in, const xmlNode *parent)
{
  guint n = 0;

  for (const xmlNode *node = parent->children; node != NULL && in->error == NULL; node = node->next)
    {
      if (node->type != XML_ELEMENT_NODE)
        continue;
      if (++n > RC_JOB_FILE_MAX_CHILDREN)
        rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("is one more than the %d elements that <%s> may have"),
                        RC_JOB_FILE_MAX_CHILDREN, (const char *)parent->name);
      else
        check_children (in, node);
    }
  return in->error == NULL;
}

RcJob *
rc_job_file_parse (const char *xml, gsize length, const char *name, RcPriceBook **book, GError **error)
{
  RcXmlIn  in = { name, RC_LENGTH_UNIT_FOOT_INCH, NULL };
  xmlDoc  *doc = read_document (xml, length, name, error);
  xmlNode *root;
  g_autoptr (RcJob) job = NULL;
  g_autoptr (RcPriceBook) own_book = NULL;

  if (book != NULL)
    *book = NULL;
  if (doc == NULL)
    return NULL;
  root = xmlDocGetRootElement (doc);
  if (check_root (&in, root) && check_children (&in, root) && rc_job_schema_check (&in, doc))
    {
      job = read_head (&in, root);
      read_base (&in, root, job);
      read_rest (&in, root, job, &own_book);
    }
  xmlFreeDoc (doc);
  if (in.error != NULL)
    {
      g_propagate_error (error, in.error);
      return NULL;
    }
  if (book != NULL)
    *book = g_steal_pointer (&own_book);
  return g_steal_pointer (&job);
}

RcJob *
rc_job_file_read (const char *path, RcPriceBook **book, GError **error)
{
  g_autofree char *xml = NULL, *name = g_path_get_basename (path);
  gsize            length;

  if (book != NULL)
    *book = NULL;
  if (!g_file_get_contents (path, &xml, &length, error))
    return NULL;
  return rc_job_file_parse (xml, length, name, book, error);
}

/* --- and back --- */

static void
write_head (RcXmlOut *out, const RcJob *job)
{
  rc_xml_out_attribute (out, "xmlns", RC_JOB_FILE_NAMESPACE);
  rc_xml_out_attribute (out, "id", job->id);
  rc_xml_out_attribute (out, "number", job->number);
  rc_xml_out_attribute (out, "title", job->title);
  rc_xml_out_attribute (out, "date", job->date);
  rc_xml_out_attribute (out, "units", job->units == RC_UNITS_METRIC ? "metric" : "imperial");
  rc_xml_out_attribute (out, "currency", job->currency.code);
  if (job->tax_ppm >= 0)
    rc_xml_out_percent (out, "tax-percent", job->tax_ppm);
}

static void
write_customer (RcXmlOut *out, const RcCustomer *customer)
{
  rc_xml_out_open (out, "customer");
  rc_xml_out_attribute (out, "name", customer->name);
  rc_xml_out_attribute (out, "phone", customer->phone);
  rc_xml_out_attribute (out, "email", customer->email);
  rc_xml_out_attribute (out, "language", customer->language);
  rc_xml_out_text (out, "address", customer->address);
  rc_xml_out_close (out);
}

char *
rc_job_file_format (const RcJob *job, const RcPriceBook *book)
{
  RcXmlOut out;

  rc_xml_out_init (&out);
  out.imperial = job->units == RC_UNITS_IMPERIAL;
  rc_xml_out_open (&out, "job");
  write_head (&out, job);
  write_customer (&out, &job->customer);
  rc_xml_out_text (&out, "notes", job->notes);
  rc_job_file_write_settings (&out, job);
  rc_job_file_write_goods (&out, "goods", job->goods);
  rc_job_file_write_rolls (&out, job->rolls);
  rc_job_file_write_office (&out, job);
  for (guint i = 0; i < job->measures->len; i++)
    rc_job_file_write_measure (&out, job->measures->pdata[i]);
  if (book != NULL)
    rc_job_file_write_prices (&out, book);
  rc_xml_out_close (&out);
  return rc_xml_out_finish (&out);
}

gboolean
rc_job_file_write (const RcJob *job, const RcPriceBook *book, const char *path, GError **error)
{
  g_autofree char *xml = rc_job_file_format (job, book);

  return g_file_set_contents (path, xml, -1, error);
}
