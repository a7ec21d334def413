/* Fuzz target of the job file's reader.
 *
 * Alone it runs mutations of the shipped demo job, the same ones at every run, as part of the suite. Built with
 * -DRC_FUZZER and a fuzzing engine (clang -fsanitize=fuzzer) the engine brings main and the inputs.
 */
#include <string.h>

#include "job-file.h"
#include "rounds.h"
#include "rowcut-error.h"
#include "shipped.h"

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

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

#ifndef RC_FUZZER
#define N_RUNS 1500

static void
mutate (GByteArray *bytes, GRand *rand)
{
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
                                       "1e300" };
  guint                    from = g_rand_int_range (rand, 0, bytes->len),
        length = MIN (bytes->len - from, (guint)g_rand_int_range (rand, 1, 40));
  const char *word = words[g_rand_int_range (rand, 0, G_N_ELEMENTS (words))];

  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      bytes->data[from] = g_rand_int_range (rand, 0, 256);
      break;
    case 1:
      g_byte_array_remove_range (bytes, from, length);
      break;
    case 2:
      g_byte_array_append (bytes, (const guint8 *)word, strlen (word));
      memmove (bytes->data + from + strlen (word), bytes->data + from, bytes->len - from - strlen (word));
      memcpy (bytes->data + from, word, strlen (word));
      break;
    default:
      /* A digit for another: stays well formed. */
      for (guint i = from; i < bytes->len; i++)
        if (g_ascii_isdigit (bytes->data[i]))
          {
            bytes->data[i] = '0' + g_rand_int_range (rand, 0, 10);
            break;
          }
      break;
    }
}

static void
test_mutations (void)
{
  g_autoptr (RcJob) demo = rc_shipped_load_demo_job (NULL);
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260302);
  g_autofree char *xml = rc_job_file_format (demo, NULL);

  for (guint run = 0; run < scale_rounds (N_RUNS); run++)
    {
      g_autoptr (GByteArray) bytes = g_byte_array_new ();

      g_byte_array_append (bytes, (const guint8 *)xml, strlen (xml));
      for (int n = g_rand_int_range (rand, 1, 4); n > 0; n--)
        mutate (bytes, rand);
      LLVMFuzzerTestOneInput (bytes->data, bytes->len);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fuzz/job-file", test_mutations);
  return g_test_run ();
}
#endif
