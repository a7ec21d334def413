/* Fuzz target of the reader of lists of cuts. */
#include <string.h>

#include "cuts-csv.h"
#include "fuzz-run.h"
#include "rowcut-error.h"

/* What is read can be nested with a reason or an answer; what is refused says why. */
int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *csv = g_strndup ((const char *)data, size);
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
  g_autoptr (GError) error = NULL;
  guint64 n = 0;

  if (!rc_cuts_csv_parse (csv, "CUTS.csv", RC_LENGTH_UNIT_MM, problem, &error))
    {
      g_assert_error (error, RC_ERROR, RC_ERROR_FORMAT);
      g_assert_true (g_str_has_prefix (error->message, "CUTS.csv"));
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      return 0;
    }
  for (guint c = 0; c < problem->cuts->len; c++)
    {
      const RcNestCut *cut = problem->cuts->pdata[c];

      g_assert_true (cut->width > 0 && cut->length > 0 && cut->quantity > 0 && *cut->label != '\0');
      n += cut->quantity;
    }
  if (n <= 200)
    {
      g_autoptr (RcNestAnswer) answer = rc_nest_solve (problem, NULL);

      rc_nest_check (problem, answer, &error);
      g_assert_no_error (error);
    }
  return 0;
}

static const char sample[] = "label,width,length,quantity,repeat,phase,lot,match,across_repeat,along,across\n"
                             "\"Hall, 1\",12'6 1/2\",3.66 m,2,36 in,0,A,hall,,,\n"
                             "b,\"12' 6\"\"\",366 cm,1,,,,,2 ft,,\n"
                             "d,1 m,366 cm,1,,,,,,3 m,1 m\n"
                             "c,3660,1 m,3,,,B\n";

static const char *const words[] = { "\"", ",", "\n",   "\r\n",         "'",   "x", "0", "99999999999999999999",
                                     "-1", "m", "\xff", "\xe2\x80\xb2", "1e9", " ", NULL };

static void
add_samples (GPtrArray *into)
{
  g_ptr_array_add (into, g_bytes_new_static (sample, strlen (sample)));
}

const FuzzTarget fuzz_target = { "cuts-csv", words, 20000, 5, add_samples };
