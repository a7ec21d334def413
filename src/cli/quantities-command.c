#include "quantities-command.h"

#include "job-work.h"
#include "lines.h"

#include <glib/gi18n-lib.h>

static int
print_json (const RcJobWork *work)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "job", rc_job_work_get_number (work));
  rc_json_add_string (json, "measure", work->measure->id);
  rc_lines_add_quantities_json (json, work->quantities);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

int
rc_quantities_command_run (int argc, char **argv)
{
  g_auto (RcJobOptions) options = { 0 };
  const RcCommandUsage usage = {
    .name = "quantities",
    .parameters = "JOB.xml",
    .summary
    = _ ("Says what the plan of a job takes: carpet, cushion, tack strip, seam tape, sealer, adhesive, mouldings "
         "and labour, rounded up once to the packs they are sold in, and why."),
    .job_options = &options,
    .n_least = 1,
    .n_most = 1,
  };
  g_auto (GStrv) arguments = NULL;
  g_autoptr (RcJobWork) work = NULL;
  g_autoptr (GError) error = NULL;
  int status;

  rc_job_options_init (&options);
  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  work = rc_job_work_new (arguments[0], &options, &error);
  if (work == NULL || !rc_job_work_measure_out (work, &error))
    return rc_command_fail (usage.name, error);
  if (options.json)
    return print_json (work);
  rc_lines_print_quantities (work->quantities);
  return RC_EXIT_DONE;
}
