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

typedef struct
{
  const char *csv, *said;
} Fault;

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
  { "label,width,length,quantity\n\"a,1 m,1 m,1\n", "not closed" },
  { "label,width,length,quantity\n\"a\"b,1 m,1 m,1\n", "comma" },
  { "label,width,length,quantity,phase\na,1 m,1 m,1,1 m\n", "needs a repeat" },
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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/cuts/a list of cuts is read as people write it", test_reads);
  g_test_add_func ("/exchange/cuts/a fault is named by line and column", test_names_the_fault);
  return g_test_run ();
}
