#include "plan-command.h"

#include "job-work.h"
#include "plan-json.h"
#include "plan-text.h"

#include <glib/gi18n-lib.h>

static int
print_json (const RcJobWork *work)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "job", rc_job_work_get_number (work));
  rc_json_add_string (json, "measure", work->measure->id);
  rc_plan_json_add (json, work->plan);
  rc_json_add_string (json, "currency", work->job->currency.code);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

int
rc_plan_command_run (int argc, char **argv)
{
  g_auto (RcJobOptions) options = { 0 };
  const RcCommandUsage usage = {
    .name = "plan",
    .parameters = "JOB.xml",
    .summary = _ ("Plans the carpet of a job: pile direction, drops and fills, seams, the cuts on the rolls, and the "
                  "options to choose from with the least that each could possibly take."),
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
  if (work == NULL || !rc_job_work_plan (work, &error))
    return rc_command_fail (usage.name, error);
  if (options.json)
    return print_json (work);
  rc_plan_text_print (work->plan);
  return RC_EXIT_DONE;
}
