#include "command.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#include "day.h"

#define MOST_SECONDS 86400.0

void
rc_job_options_init (RcJobOptions *options)
{
  *options = (RcJobOptions){ .seconds = 0, .seed = 1 };
}

void
rc_job_options_clear (RcJobOptions *options)
{
  g_clear_pointer (&options->store, g_free);
  g_clear_pointer (&options->measure, g_free);
  g_clear_pointer (&options->option, g_free);
  g_clear_pointer (&options->date, g_free);
}

static void
add_job_entries (GOptionContext *context, RcJobOptions *options)
{
  const GOptionEntry entries[] = {
    { "json", 0, 0, G_OPTION_ARG_NONE, &options->json, N_ ("Print one JSON object"), NULL },
    { "store", 0, 0, G_OPTION_ARG_FILENAME, &options->store,
      N_ ("Take what the job leaves out from this store (default: the user's own)"), "FILE" },
    { "measure", 0, 0, G_OPTION_ARG_FILENAME, &options->measure, N_ ("Plan this measure (default: the last)"), "M" },
    { "option", 0, 0, G_OPTION_ARG_FILENAME, &options->option,
      N_ ("Take this option in every area: least-cost, fewest-seams or least-carpet"), "NAME" },
    { "date", 0, 0, G_OPTION_ARG_FILENAME, &options->date, N_ ("Use the prices of this day (default: today)"),
      "YYYY-MM-DD" },
    { "seconds", 0, 0, G_OPTION_ARG_DOUBLE, &options->seconds, N_ ("Search this long for better plans"), "S" },
    { "effort", 0, 0, G_OPTION_ARG_INT64, &options->effort,
      N_ ("Search so much instead, the same on every machine: about 1000 for a second"), "N" },
    { "seed", 0, 0, G_OPTION_ARG_INT64, &options->seed, N_ ("Start the search from this number"), "N" },
    G_OPTION_ENTRY_NULL,
  };

  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
}

/* Checks what was given and fills in today. */
static gboolean
complete_job_options (RcJobOptions *options, GError **error)
{
  if (!(options->seconds >= 0 && options->seconds <= MOST_SECONDS))
    {
      g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, _ ("--seconds must be between 0 and %.0f"),
                   MOST_SECONDS);
      return FALSE;
    }
  if (options->effort < 0 || (double)options->effort > MOST_SECONDS * 1000)
    {
      g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, _ ("--effort must be between 0 and %.0f"),
                   MOST_SECONDS * 1000);
      return FALSE;
    }
  if (options->effort > 0 && options->seconds > 0)
    {
      g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, _ ("give either --seconds or --effort, not both"));
      return FALSE;
    }
  if (options->seed < 0)
    {
      g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, _ ("--seed must not be negative"));
      return FALSE;
    }
  if (options->date == NULL)
    options->date = rc_command_dup_today ();
  if (!rc_day_is_valid (options->date))
    {
      g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE,
                   _ ("--date: “%s” is not a date; a date is written like 2026-03-31"), options->date);
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_count (const RcCommandUsage *usage, const GStrv words, GError **error)
{
  int n = (int)g_strv_length (words) - 1;

  if (n < usage->n_least)
    g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, _ ("something is missing; wanted: %s"),
                 usage->parameters);
  else if (n > usage->n_most)
    g_set_error (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE, _ ("“%s” is one argument too many"),
                 words[usage->n_most + 1]);
  else
    return TRUE;
  return FALSE;
}

static GOptionContext *
make_context (const RcCommandUsage *usage, const GOptionEntry *help_entry)
{
  GOptionContext *context = g_option_context_new (usage->parameters);

  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_summary (context, usage->summary);
  g_option_context_set_description (context, usage->description);
  g_option_context_set_translation_domain (context, GETTEXT_PACKAGE);
  if (usage->entries != NULL)
    g_option_context_add_main_entries (context, usage->entries, GETTEXT_PACKAGE);
  if (usage->job_options != NULL)
    add_job_entries (context, usage->job_options);
  g_option_context_add_main_entries (context, help_entry, GETTEXT_PACKAGE);
  return context;
}

gboolean
rc_command_parse (const RcCommandUsage *usage, int argc, char **argv, GStrv *arguments, int *status)
{
  gboolean           help = FALSE;
  const GOptionEntry help_entry[] = {
    { "help", 'h', 0, G_OPTION_ARG_NONE, &help, N_ ("Show this help"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_autoptr (GOptionContext) context = make_context (usage, help_entry);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *program = g_strconcat ("rowcut-cli ", usage->name, NULL);
  g_auto (GStrv) words = NULL;

  g_set_prgname (program);
  g_strv_builder_add (builder, program);
  for (int i = 1; i < argc; i++)
    g_strv_builder_add (builder, argv[i]);
  words = g_strv_builder_end (builder);

  if (g_option_context_parse_strv (context, &words, &error) && help)
    {
      g_autofree char *text = g_option_context_get_help (context, TRUE, NULL);

      fputs (text, stdout);
      *status = RC_EXIT_DONE;
      return FALSE;
    }
  if (error != NULL || !check_count (usage, words, &error)
      || (usage->job_options != NULL && !complete_job_options (usage->job_options, &error)))
    {
      *status = rc_command_fail_usage (usage->name, "%s", error->message);
      return FALSE;
    }
  *arguments = g_strdupv (words + 1);
  return TRUE;
}

char *
rc_command_dup_now (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();

  return g_date_time_format (now, "%Y-%m-%dT%H:%M:%SZ");
}

char *
rc_command_dup_today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%Y-%m-%d");
}

int
rc_command_fail (const char *command, const GError *error)
{
  fprintf (stderr, "rowcut-cli %s: %s\n", command, error->message);
  return RC_EXIT_FAILED;
}

int
rc_command_fail_usage (const char *command, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list          arguments;

  va_start (arguments, format);
  message = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  fprintf (stderr, "rowcut-cli %s: %s\n", command, message);
  fprintf (stderr, _ ("Try: rowcut-cli %s --help\n"), command);
  return RC_EXIT_USAGE;
}
