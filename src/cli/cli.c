#include "cli.h"

#include "command.h"
#include "compare-command.h"
#include "nest-command.h"
#include "order-command.h"
#include "plan-command.h"
#include "quantities-command.h"
#include "quote-command.h"
#include "sheets-command.h"
#include "store-command.h"
#include "text-table.h"
#include "translation.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <stdio.h>

typedef struct
{
  const char *name;
  int (*run) (int argc, char **argv);
  const char *summary;
} Command;

static const Command commands[] = {
  { "plan", rc_plan_command_run, N_ ("Plan a job's carpet: pieces, seams, cuts, and the options to choose from") },
  { "quantities", rc_quantities_command_run, N_ ("Everything else the plan takes, in the packs it is sold in") },
  { "quote", rc_quote_command_run, N_ ("Price a job for the customer") },
  { "order", rc_order_command_run, N_ ("What to order, supplier by supplier") },
  { "sheets", rc_sheets_command_run, N_ ("Write a job's sheets as PDF and PNG") },
  { "compare", rc_compare_command_run, N_ ("What changes from one measure of a job to another") },
  { "nest", rc_nest_command_run, N_ ("Place a list of cuts on rolls") },
  { "store", rc_store_command_run, N_ ("Check, back up, fill or read the shop's store") },
};

static const Command *
find_command (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (commands[i].name, name))
      return &commands[i];
  return NULL;
}

static void
print_commands (FILE *file)
{
  g_autoptr (RcTextTable) table = rc_text_table_new ("lll");
  g_autofree char *text = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      rc_text_table_add (table, "");
      rc_text_table_add (table, commands[i].name);
      rc_text_table_add (table, _ (commands[i].summary));
    }
  text = rc_text_table_dup_text (table, FALSE);
  fprintf (file, _ ("Usage: rowcut-cli COMMAND ...\n\n"));
  fputs (text, file);
  fprintf (file, _ ("\nrowcut-cli COMMAND --help tells more of one, rowcut-cli --version prints the version.\n"
                    "Exit status: 0 done, 1 could not be done, 2 wrong usage.\n"));
}

static int
run_help (int argc, char **argv)
{
  const Command *command = argc > 1 ? find_command (argv[1]) : NULL;
  char          *help_argv[] = { argc > 1 ? argv[1] : NULL, (char *)"--help", NULL };

  if (argc <= 1)
    {
      print_commands (stdout);
      return RC_EXIT_DONE;
    }
  if (command == NULL || argc > 2)
    {
      fprintf (stderr, _ ("rowcut-cli help: there is no command “%s”\n"), argv[command == NULL ? 1 : 2]);
      return RC_EXIT_USAGE;
    }
  return command->run (2, help_argv);
}

static int
run_command (int argc, char **argv)
{
  const Command *command = find_command (argv[0]);

  if (command != NULL)
    return command->run (argc, argv);
  if (g_str_equal (argv[0], "help") || g_str_equal (argv[0], "--help") || g_str_equal (argv[0], "-h"))
    return run_help (argc, argv);
  if (g_str_equal (argv[0], "--version"))
    {
      printf ("rowcut-cli %s\n", PACKAGE_VERSION);
      return RC_EXIT_DONE;
    }
  fprintf (stderr, _ ("rowcut-cli: there is no command “%s”\nTry: rowcut-cli help\n"), argv[0]);
  return RC_EXIT_USAGE;
}

static gboolean
is_json_wanted (int argc, char **argv)
{
  for (int i = 1; i < argc && !g_str_equal (argv[i], "--"); i++)
    if (g_str_equal (argv[i], "--json"))
      return TRUE;
  return FALSE;
}

int
rc_cli_main (int argc, char **argv)
{
  int status;

  rc_translation_init ();
  /* The answer for machines is the same in every locale. */
  if (is_json_wanted (argc, argv))
    setlocale (LC_MESSAGES, "C");
  if (argc < 2)
    {
      print_commands (stderr);
      return RC_EXIT_USAGE;
    }
  status = run_command (argc - 1, argv + 1);
  if (fflush (stdout) != 0 && status == RC_EXIT_DONE)
    {
      fprintf (stderr, _ ("rowcut-cli: standard output could not be written\n"));
      status = RC_EXIT_FAILED;
    }
  return status;
}
