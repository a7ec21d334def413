/* Numbers of jobs, as the office writes them: a pattern of the day and a running number. */
#pragma once

#include <glib.h>

#define RC_JOB_NUMBERS_USUAL "YYYY-###" /* 2026-014 */

/* A pattern has YYYY or YY, MM, DD of the day where they stand, and one run of #: the running number with at least so
 * many digits; all else is taken as it is. FALSE and RC_ERROR_PARSE without a #, with two runs of them, or with more
 * than 60 bytes. */
gboolean rc_job_number_check_pattern (const char *pattern, GError **error);

/* The number; `date` is ISO 8601. (transfer full) */
char *rc_job_number_format (const char *pattern, const char *date, gint64 number);

/* What the running number is counted in: the pattern with the day filled in and one #, so that it begins anew with
 * each year, month or day that the pattern names. (transfer full) */
char *rc_job_number_dup_series (const char *pattern, const char *date);
