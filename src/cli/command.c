#include "command.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

static void
print_usage_hint (const char *command)
{
  fprintf (stderr, _ ("Try \"rowcut-cli %s --help\".\n"), command);
}

gboolean
rc_command_parse (const RcCommandUsage *usage, int argc, char **argv, GStrv *arguments, int *status)
{
  g_autoptr (GOptionContext) context = g_option_context_new (usage->parameters);
  g_autoptr (GError) error = NULL;
  g_autofree char *program = g_strconcat ("rowcut-cli ", usage->name, NULL);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) words = NULL;
  gboolean     help = FALSE;
  GOptionEntry help_entry[]
      = { { "help", 'h', 0, G_OPTION_ARG_NONE, &help, N_ ("Show this help"), NULL }, G_OPTION_ENTRY_NULL };
  int n;

  g_strv_builder_add (builder, program);
  for (int i = 1; i < argc; i++)
    g_strv_builder_add (builder, argv[i]);
  words = g_strv_builder_end (builder);

  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_summary (context, usage->summary);
  g_option_context_set_description (context, usage->description);
  g_option_context_add_main_entries (context, usage->entries, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, help_entry, GETTEXT_PACKAGE);
  g_set_prgname (program);

  if (!g_option_context_parse_strv (context, &words, &error))
    {
      fprintf (stderr, "%s: %s\n", program, error->message);
      print_usage_hint (usage->name);
      *status = RC_EXIT_USAGE;
      return FALSE;
    }
  if (help)
    {
      g_autofree char *text = g_option_context_get_help (context, TRUE, NULL);

      fputs (text, stdout);
      *status = RC_EXIT_DONE;
      return FALSE;
    }
  n = (int)g_strv_length (words) - 1;
  if (n < usage->n_least || n > usage->n_most)
    {
      if (n < usage->n_least)
        fprintf (stderr, _ ("%s: missing: %s\n"), program, usage->parameters);
      else
        fprintf (stderr, _ ("%s: one argument too many: \"%s\"\n"), program, words[usage->n_most + 1]);
      print_usage_hint (usage->name);
      *status = RC_EXIT_USAGE;
      return FALSE;
    }
  *arguments = g_strdupv (words + 1);
  return TRUE;
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
  print_usage_hint (command);
  return RC_EXIT_USAGE;
}
