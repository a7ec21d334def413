#include "job-file-parts.h"

#define MAX_JOINS 1000

static void
read_rule (RcXmlIn *in, const xmlNode *node, RcJob *job)
{
  g_autofree char *name = rc_xml_in_dup (node, "name");
  RcRule           rule;
  GError          *error = NULL;

  if (!rc_rule_parse (name, &rule, &error))
    rc_xml_in_take_error (in, node, "name", error);
  else
    job->settings.rule_cost[rule] = rc_xml_in_money (in, node, "cost", &job->currency, job->settings.rule_cost[rule]);
}

void
rc_job_file_read_settings (RcXmlIn *in, const xmlNode *node, RcJob *job)
{
  RcSettings *settings = &job->settings;

  settings->trim_length = rc_xml_in_length (in, node, "trim", settings->trim_length);
  settings->trim_width = rc_xml_in_length (in, node, "trim", settings->trim_width);
  settings->trim_length = rc_xml_in_length (in, node, "trim-length", settings->trim_length);
  settings->trim_width = rc_xml_in_length (in, node, "trim-width", settings->trim_width);
  settings->least_fill_width = rc_xml_in_length (in, node, "least-fill-width", settings->least_fill_width);
  settings->least_piece_length = rc_xml_in_length (in, node, "least-piece-length", settings->least_piece_length);
  settings->most_joins = rc_xml_in_integer (in, node, "most-joins", 0, MAX_JOINS, settings->most_joins);
  settings->door_distance = rc_xml_in_length (in, node, "door-distance", settings->door_distance);
  settings->stagger = rc_xml_in_length (in, node, "stagger", settings->stagger);
  settings->strip_double_from = rc_xml_in_length (in, node, "strip-double-from", settings->strip_double_from);
  settings->closure.error_max = rc_xml_in_length (in, node, "misclosure-limit", settings->closure.error_max);
  settings->closure.close_max = rc_xml_in_length (in, node, "misclosure-ignored", settings->closure.close_max);
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "rule"))
      read_rule (in, child, job);
}

void
rc_job_file_write_settings (RcXmlOut *out, const RcJob *job)
{
  const RcSettings *settings = &job->settings;

  rc_xml_out_open (out, "settings");
  rc_xml_out_length (out, "trim-length", settings->trim_length);
  rc_xml_out_length (out, "trim-width", settings->trim_width);
  rc_xml_out_length (out, "least-fill-width", settings->least_fill_width);
  rc_xml_out_length (out, "least-piece-length", settings->least_piece_length);
  rc_xml_out_attribute_format (out, "most-joins", "%u", settings->most_joins);
  rc_xml_out_length (out, "door-distance", settings->door_distance);
  rc_xml_out_length (out, "stagger", settings->stagger);
  rc_xml_out_length (out, "strip-double-from", settings->strip_double_from);
  rc_xml_out_length (out, "misclosure-limit", settings->closure.error_max);
  rc_xml_out_length (out, "misclosure-ignored", settings->closure.close_max);
  for (guint i = 0; i < RC_N_RULES; i++)
    {
      rc_xml_out_open (out, "rule");
      rc_xml_out_attribute (out, "name", rc_rule_get_name (i));
      rc_xml_out_money (out, "cost", settings->rule_cost[i], &job->currency);
      rc_xml_out_close (out);
    }
  rc_xml_out_close (out);
}
