/* What every command shares: how it is started, how its options are read, how it fails.
 *
 * Text options are declared G_OPTION_ARG_FILENAME, which takes the bytes as they are: UTF-8 in every locale.
 *
 * A command is `int rc_NAME_command_run (int argc, char **argv)` with argv[0] its own name. It returns RC_EXIT_DONE,
 * RC_EXIT_FAILED or RC_EXIT_USAGE. Results go to standard output, everything else to standard error.
 */
#pragma once

#include <glib.h>

enum
{
  RC_EXIT_DONE = 0,
  RC_EXIT_FAILED = 1,
  RC_EXIT_USAGE = 2,
};

typedef struct
{
  const char         *name;            /* "plan" */
  const char         *parameters;      /* "JOB.xml", printed after the options */
  const char         *summary;         /* translated, one line */
  const char         *description;     /* translated, nullable: printed after the options */
  const GOptionEntry *entries;         /* NULL-terminated */
  int                 n_least, n_most; /* how many arguments besides options */
} RcCommandUsage;

/* Reads the options of `usage->entries` out of argv. TRUE: go on, *arguments (transfer full, NULL-terminated) holds the
 * others. FALSE: return *status: after --help 0, after wrong usage (said on standard error) 2. */
gboolean rc_command_parse (const RcCommandUsage *usage, int argc, char **argv, GStrv *arguments, int *status);

/* "rowcut-cli plan: MESSAGE" on standard error; the printf form adds nothing but the prefix. */
int rc_command_fail (const char *command, const GError *error); /* returns RC_EXIT_FAILED */
int rc_command_fail_usage (const char *command, const char *format, ...) G_GNUC_PRINTF (2, 3); /* RC_EXIT_USAGE */
