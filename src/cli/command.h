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

/* Options of every command that plans a job. */
typedef struct
{
  char    *store;   /* file to take from what the job leaves out; NULL: the user's own */
  char    *measure; /* id; NULL: the last */
  char    *option;  /* taken in every area; NULL: as the job says */
  char    *date;    /* ISO 8601; today once parsed, when not given */
  double   seconds; /* to search for better plans */
  gint64   effort;  /* likewise, counted in work: the same on every machine; 0: by time */
  gint64   seed;
  gboolean json;
} RcJobOptions;

void rc_job_options_init (RcJobOptions *options); /* seconds 0, seed 1 */
void rc_job_options_clear (RcJobOptions *options);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcJobOptions, rc_job_options_clear)

typedef struct
{
  const char         *name;            /* "plan" */
  const char         *parameters;      /* "JOB.xml", printed after the options */
  const char         *summary;         /* translated, one line */
  const char         *description;     /* translated, nullable: printed after the options */
  const GOptionEntry *entries;         /* nullable, NULL-terminated; not translated yet */
  RcJobOptions       *job_options;     /* nullable; initialised */
  int                 n_least, n_most; /* how many arguments besides options */
} RcCommandUsage;

/* Reads the options of `usage` out of argv. TRUE: go on, *arguments (transfer full, NULL-terminated) holds the others.
 * FALSE: return *status: after --help 0, after wrong usage (said on standard error) 2. */
gboolean rc_command_parse (const RcCommandUsage *usage, int argc, char **argv, GStrv *arguments, int *status);

/* "rowcut-cli plan: MESSAGE" on standard error. */
/* The clock is read here and nowhere else on the command line. (transfer full) */
char *rc_command_dup_now (void);   /* ISO 8601 date and time, UTC */
char *rc_command_dup_today (void); /* ISO 8601 date, as it is here */

int rc_command_fail (const char *command, const GError *error);                                /* RC_EXIT_FAILED */
int rc_command_fail_usage (const char *command, const char *format, ...) G_GNUC_PRINTF (2, 3); /* RC_EXIT_USAGE */
