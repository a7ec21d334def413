/* The schema of JOB.xml and what is wrong with a file that does not follow it.
 */
#pragma once

#include "xml-in.h"

#define RC_JOB_FILE_NAMESPACE "urn:rowcut:job:1"

/* FALSE, with the first fault in in->error, unless the document follows data/rowcut-job.rng. The message names file,
 * line and element, and what may stand there. */
gboolean rc_job_schema_check (RcXmlIn *in, xmlDoc *doc);
