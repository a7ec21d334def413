#include <string.h>

#include "cuts-csv.h"
#include "rowcut-error.h"

static void
test_reads (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
  g_autoptr (GError) error = NULL;
  const RcNestCut *cut;

  rc_cuts_csv_parse ("\xef\xbb\xbfLabel, width ,length,quantity,repeat,phase,lot\r\n"
                     "\"Hall, 1\",12'6 1/2\",3.66 m,2,36 in,0,A\r\n"
                     "\r\n"
                     "b,\"12' 6\"\"\",366 cm,1,,,\r\n"
                     "c,3660,1,1\r\n",
                     "CUTS.csv", RC_LENGTH_UNIT_MM, problem, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (problem->cuts->len, ==, 3);
  cut = problem->cuts->pdata[0];
  g_assert_cmpstr (cut->label, ==, "Hall, 1");
  g_assert_cmpint (cut->width, ==, 150 * RC_TICKS_PER_INCH + RC_TICKS_PER_INCH / 2);
  g_assert_cmpint (cut->length, ==, 366 * RC_TICKS_PER_CM);
  g_assert_cmpuint (cut->quantity, ==, 2);
  g_assert_cmpint (cut->repeat, ==, 36 * RC_TICKS_PER_INCH);
  g_assert_cmpstr (cut->group, ==, "A");
  cut = problem->cuts->pdata[1];
  g_assert_cmpint (cut->width, ==, 150 * RC_TICKS_PER_INCH);
  g_assert_null (cut->group);
  cut = problem->cuts->pdata[2];
  g_assert_cmpint (cut->width, ==, 3660 * RC_TICKS_PER_MM);
}

static void
test_reads_ties (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
  g_autoptr (GError) error = NULL;
  const RcNestCut *cut;

  rc_cuts_csv_parse (
      "label,width,length,quantity,repeat,match,across_repeat,across_phase,across_match,roll,along,across\n"
      "a,1 m,1 m,1,60 cm,hall,50 cm,10 cm,left,2,1.5 m,\n"
      "b,1 m,1 m,1,,,,,,,,0\n",
      "CUTS.csv", RC_LENGTH_UNIT_MM, problem, &error);
  g_assert_no_error (error);
  cut = problem->cuts->pdata[0];
  g_assert_cmpstr (cut->match, ==, "hall");
  g_assert_cmpstr (cut->across_match, ==, "left");
  g_assert_cmpint (cut->across_repeat, ==, 50 * RC_TICKS_PER_CM);
  g_assert_cmpint (cut->across_phase, ==, 10 * RC_TICKS_PER_CM);
  g_assert_cmpuint (cut->pinned_roll, ==, 2);
  g_assert_true (cut->is_along_pinned && !cut->is_across_pinned);
  g_assert_cmpint (cut->along, ==, 150 * RC_TICKS_PER_CM);
  cut = problem->cuts->pdata[1];
  g_assert_true (!cut->is_along_pinned && cut->is_across_pinned && cut->across == 0);
}

static void
test_reads_rolls (void)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
  g_autoptr (GError) error = NULL;
  const RcNestRoll *roll;

  rc_rolls_csv_parse ("name,length,count,width,lot,value,trim,trim_end,damaged\n"
                      "R7,30 m,2,366 cm,A,12.50,5 cm,10 cm,2 m to 2.5 m; 7 m to 720 cm\n"
                      ",,,,,,,20 cm,\n",
                      "ROLLS.csv", RC_LENGTH_UNIT_MM, problem, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (problem->rolls->len, ==, 2);
  roll = problem->rolls->pdata[0];
  g_assert_cmpstr (roll->name, ==, "R7");
  g_assert_cmpstr (roll->lot, ==, "A");
  g_assert_cmpuint (roll->count, ==, 2);
  g_assert_cmpint (roll->width, ==, 366 * RC_TICKS_PER_CM);
  g_assert_cmpint (roll->cost_per_m, ==, 1250);
  g_assert_cmpint (roll->trim, ==, 5 * RC_TICKS_PER_CM);
  g_assert_cmpint (roll->trim_end, ==, 10 * RC_TICKS_PER_CM);
  g_assert_cmpuint (roll->flaws->len, ==, 2);
  g_assert_cmpint (g_array_index (roll->flaws, RcNestFlaw, 1).from, ==, 7 * RC_TICKS_PER_M);
  g_assert_cmpint (g_array_index (roll->flaws, RcNestFlaw, 1).to, ==, 720 * RC_TICKS_PER_CM);
  roll = problem->rolls->pdata[1];
  g_assert_null (roll->name);
  g_assert_cmpint (roll->length, ==, 0);
  g_assert_cmpint (roll->cost_per_m, ==, RC_CSV_BUY_VALUE);
  g_assert_cmpint (roll->trim_end, ==, 20 * RC_TICKS_PER_CM);
}

typedef struct
{
  const char *csv, *said;
} Fault;

static const Fault ROLL_FAULTS[] = {
  { "name\nR\n", "length is missing" },
  { "length\n", "no roll follows" },
  { "length,colour\n30 m,red\n", "colour" },
  { "length,width\n30 m,5 m\n", "line 2, column width" },
  { "length,count\n30 m,0\n", "column count" },
  { "length,count\n30 m,9000\n30 m,9000\n", "line 3, column count: more than 10000" },
  { "length,value\n30 m,cheap\n", "column value" },
  { "length,value\n30 m,-1\n", "column value" },
  { "length,damaged\n30 m,2 m\n", "like 2 m to 2.5 m" },
  { "length,damaged\n30 m,3 m to 2 m\n", "end behind its beginning" },
  { "length,damaged\n,2 m to 3 m\n", "given length" },
  { "length,trim_end\n30 m,2 parsecs\n", "column trim_end" },
};

static const Fault FAULTS[] = {
  { "", "CUTS.csv, line 1" },
  { "label,width,length\na,1 m,1 m\n", "quantity is missing" },
  { "label,width,length,quantity\n", "no cut follows" },
  { "label,width,length,quantity,colour\n", "colour" },
  { "label,width,length,quantity,width\n", "twice" },
  { "label,width,length,quantity\na,1 m,1 m,1\nb,1 q,1 m,1\n", "line 3, column width" },
  { "label,width,length,quantity\na,0,1 m,1\n", "column width: must be more than zero" },
  { "label,width,length,quantity\na,1 m,-1 m,1\n", "line 2, column length" },
  { "label,width,length,quantity\na,1 m,1 m,0\n", "column quantity" },
  { "label,width,length,quantity\na,1 m,1 m,1.5\n", "column quantity" },
  { "label,width,length,quantity\na,1 m,1 m,100001\n", "column quantity" },
  { "label,width,length,quantity\na,1 m,1 m,60000\nb,1 m,1 m,60000\n", "more than 100000" },
  { "label,width,length,quantity\n,1 m,1 m,1\n", "no label" },
  { "label,width,length,quantity\n\"a,1 m,1 m,1\n", "never closed" },
  { "label,width,length,quantity\n\"a\"b,1 m,1 m,1\n", "comma" },
  { "label,width,length,quantity,phase\na,1 m,1 m,1,1 m\n", "needs a repeat" },
  { "label,width,length,quantity,match\na,1 m,1 m,1,hall\n", "a match needs a repeat" },
  { "label,width,length,quantity,across_phase\na,1 m,1 m,1,1 m\n", "column across_phase: a phase needs" },
  { "label,width,length,quantity,roll\na,1 m,1 m,1,R7\n", "column roll" },
  { "label,width,length,quantity,along\na,1 m,1 m,1,far\n", "column along" },
  { "label,width,length,quantity\n\xff,1 m,1 m,1\n", "UTF-8" },
  { "label,width,length,quantity\na,1 m,1 m,1,2,3,4,5\n", "more than there are columns" },
};

static void
test_names_the_fault (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (FAULTS); k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
      g_autoptr (GError) error = NULL;

      g_assert_false (rc_cuts_csv_parse (FAULTS[k].csv, "CUTS.csv", RC_LENGTH_UNIT_MM, problem, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_FORMAT);
      if (strstr (error->message, FAULTS[k].said) == NULL)
        g_error ("case %u: “%s” does not say “%s”", k, error->message, FAULTS[k].said);
    }
}

static void
test_names_the_fault_of_rolls (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (ROLL_FAULTS); k++)
    {
      g_autoptr (RcNestProblem) problem = rc_nest_problem_new (4 * RC_TICKS_PER_M);
      g_autoptr (GError) error = NULL;

      g_assert_false (rc_rolls_csv_parse (ROLL_FAULTS[k].csv, "ROLLS.csv", RC_LENGTH_UNIT_MM, problem, &error));
      g_assert_error (error, RC_ERROR, RC_ERROR_FORMAT);
      if (strstr (error->message, ROLL_FAULTS[k].said) == NULL)
        g_error ("case %u: “%s” does not say “%s”", k, error->message, ROLL_FAULTS[k].said);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/cuts/a list of cuts is read as people write it", test_reads);
  g_test_add_func ("/exchange/cuts/patterns, matches and pins are read", test_reads_ties);
  g_test_add_func ("/exchange/cuts/a list of rolls is read", test_reads_rolls);
  g_test_add_func ("/exchange/cuts/a fault in a list of rolls is named", test_names_the_fault_of_rolls);
  g_test_add_func ("/exchange/cuts/a fault is named by line and column", test_names_the_fault);
  return g_test_run ();
}
