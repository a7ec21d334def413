/* JOB.xml: Rowcut's own job file, described by data/rowcut-job.rng.
 *
 * Reading never touches the network, loads no external entity, and refuses files above RC_JOB_FILE_MAX_BYTES or nested
 * deeper than 32. Errors (RC_ERROR_FORMAT, PARSE, REFERENCE) name file, line and element.
 */
#pragma once

#include "quote.h"

#define RC_JOB_FILE_MAX_BYTES (64 * 1024 * 1024)

/* A file may carry prices; then *book (nullable) gets them, else NULL. (transfer full) */
RcJob *rc_job_file_read (const char *path, RcPriceBook **book, GError **error);
RcJob *rc_job_file_parse (const char *xml, gsize length, const char *name, RcPriceBook **book, GError **error);

/* The same job always gives the same bytes. book nullable. (transfer full) */
char *rc_job_file_format (const RcJob *job, const RcPriceBook *book);
/* Whole or not at all (g_file_set_contents). */
gboolean rc_job_file_write (const RcJob *job, const RcPriceBook *book, const char *path, GError **error);
