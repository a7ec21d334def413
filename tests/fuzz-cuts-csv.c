/* Fuzz target of the reader of lists of cuts.
 *
 * Alone it runs mutations of a small list, the same ones at every run, as part of the suite. Built with -DRC_FUZZER and
 * a fuzzing engine (clang -fsanitize=fuzzer) the engine brings main and the inputs.
 */
#include <string.h>

#include "cuts-csv.h"
#include "rounds.h"
#include "rowcut-error.h"

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

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

#ifndef RC_FUZZER
#define N_RUNS 20000

static const char SAMPLE[] = "label,width,length,quantity,repeat,phase,lot,match,across_repeat,along,across\n"
                             "\"Hall, 1\",12'6 1/2\",3.66 m,2,36 in,0,A,hall,,,\n"
                             "b,\"12' 6\"\"\",366 cm,1,,,,,2 ft,,\n"
                             "d,1 m,366 cm,1,,,,,,3 m,1 m\n"
                             "c,3660,1 m,3,,,B\n";

static void
mutate (GString *text, GRand *rand)
{
  static const char *const words[] = { "\"", ",", "\n",   "\r\n",         "'",   "x", "0", "99999999999999999999",
                                       "-1", "m", "\xff", "\xe2\x80\xb2", "1e9", " " };
  guint                    at = (guint)g_rand_int_range (rand, 0, (gint32)text->len + 1);

  switch (g_rand_int_range (rand, 0, 3))
    {
    case 0:
      g_string_insert (text, at, words[g_rand_int_range (rand, 0, G_N_ELEMENTS (words))]);
      break;
    case 1:
      g_string_erase (text, at, MIN (1, (gssize)(text->len - at)));
      break;
    default:
      if (at < text->len)
        text->str[at] = (char)g_rand_int_range (rand, 1, 256);
    }
}

static void
test_mutations (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20);

  for (guint run = 0; run < scale_rounds (N_RUNS); run++)
    {
      g_autoptr (GString) text = g_string_new (SAMPLE);

      for (gint32 changes = g_rand_int_range (rand, 0, 6); changes > 0; changes--)
        mutate (text, rand);
      LLVMFuzzerTestOneInput ((const guint8 *)text->str, text->len);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fuzz/cuts-csv/mutated lists are read or refused", test_mutations);
  return g_test_run ();
}
#endif
