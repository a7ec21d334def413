/* Fuzz target of the job file's reader. */
#include <string.h>

#include "fuzz-run.h"
#include "job-file.h"
#include "rowcut-error.h"
#include "shipped.h"

/* What is read is written and read again the same; what is refused says why. */
int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book = NULL;
  g_autoptr (RcJob) job = rc_job_file_parse ((const char *)data, size, "JOB.xml", &book, &error);

  if (job == NULL)
    {
      g_assert_nonnull (error);
      g_assert_true (error->domain == RC_ERROR);
      g_assert_true (g_str_has_prefix (error->message, "JOB.xml"));
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
    }
  else
    {
      g_autofree char *xml = rc_job_file_format (job, book), *again = NULL;
      g_autoptr (RcPriceBook) book_back = NULL;
      g_autoptr (RcJob) back = rc_job_file_parse (xml, strlen (xml), "JOB.xml", &book_back, &error);

      g_assert_no_error (error);
      again = rc_job_file_format (back, book_back);
      g_assert_cmpstr (xml, ==, again);
      /* Whatever the file says, checking it ends and gives an answer. */
      for (guint i = 0; i < job->measures->len; i++)
        rc_job_check (job, job->measures->pdata[i], NULL);
    }
  return 0;
}

static const char *const words[] = { "\"",
                                     "<",
                                     ">",
                                     "&",
                                     "0",
                                     "-1",
                                     "99999999999999999999",
                                     "<room id='x'/>",
                                     "&#0;",
                                     "<![CDATA[",
                                     "]]>",
                                     "<!DOCTYPE a>",
                                     "\xff",
                                     "' ",
                                     "=\"\"",
                                     "999 km",
                                     "1e300",
                                     NULL };

static void
add_samples (GPtrArray *into)
{
  g_autoptr (RcJob) demo = rc_shipped_load_demo_job (NULL);
  char *xml = rc_job_file_format (demo, NULL);

  g_ptr_array_add (into, g_bytes_new_take (xml, strlen (xml)));
}

const FuzzTarget fuzz_target = { "job-file", words, 1500, 3, add_samples };
