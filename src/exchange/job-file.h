/* JOB.xml: Rowcut's own job file, described by data/rowcut-job.rng.
 *
 * Reading never touches the network, loads no external entity, and refuses files above RC_JOB_FILE_MAX_BYTES, nested
 * deeper than RC_JOB_FILE_MAX_DEPTH, with more than RC_JOB_FILE_MAX_CHILDREN elements in one, or with a document type
 * (so no entity is ever defined). Reading does not judge rooms and references: rc_job_check does. Errors
 * (RC_ERROR_FORMAT, PARSE, REFERENCE) name file, line and element.
 */
#pragma once

#include "quote.h"

#define RC_JOB_FILE_MAX_BYTES (16 * 1024 * 1024)
#define RC_JOB_FILE_MAX_DEPTH 32
#define RC_JOB_FILE_MAX_ROOMS 5000
/* In one element: checking against the schema takes the square of it. */
#define RC_JOB_FILE_MAX_CHILDREN 10000

/* What a file leaves out: id, name and number of things follow from each other or from their place; a measure without
 * areas, in a job with one carpet, gets one for each set of rooms joined by doors; the only carpet is meant where none
 * is named. A file may carry prices; then *book (nullable) gets them, else NULL. (transfer full) */
RcJob *rc_job_file_read (const char *path, RcPriceBook **book, GError **error);
RcJob *rc_job_file_parse (const char *xml, gsize length, const char *name, RcPriceBook **book, GError **error);

/* The same job always gives the same bytes, and reading them gives the same job. Text that is empty reads back as NULL.
 * book nullable. (transfer full) */
char *rc_job_file_format (const RcJob *job, const RcPriceBook *book);
/* Whole or not at all (g_file_set_contents). */
gboolean rc_job_file_write (const RcJob *job, const RcPriceBook *book, const char *path, GError **error);
