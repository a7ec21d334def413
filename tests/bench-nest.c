/* How good and how fast nesting is, as tables. Not part of the tests.
 *
 *   bench-nest [--seconds S] [--cpu] [--sets NAME,...] [--only TEXT] [--stages 3|any] [--trade]
 *
 * Beside the answer stand what first-fit decreasing height uses, and, where PACKING_LIBRARY names its module, a
 * general-purpose packing library (bench-nest-library.mjs, started once by node; it packs freely, without any rule of
 * straight cuts, and knows no repeats). Columns `ffdh x` and `library x` are their length over the answer's, `library
 * t` the library's time over that of the first answer (rc_nest_compute_quick_length).
 *
 * The published sets are read from the folder that RC_SHARED names. --cpu counts the seconds of the processor rather
 * than of the clock, for a machine that does other work. --trade runs generated jobs instead.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <sys/resource.h>

#include "nest-cases.h"
#include "nest.h"

typedef struct
{
  double gap, ffdh, excess, library, library_time; /* summed */
  guint  n_files, n_optima, n_library;
} Sums;

/* The packing library, which waits for one problem a line and answers with length and microseconds. */
typedef struct
{
  GSubprocess      *process;
  GDataInputStream *answers;
} Library;

static Library library;

static double   arg_seconds = 10;
static gboolean arg_cpu, arg_trade;
static char    *arg_sets, *arg_only, *arg_stages;
static gint64   arg_seed = 1;

static double
read_clock (clockid_t clock)
{
  struct timespec time;

  clock_gettime (clock, &time);
  return (double)time.tv_sec + 1e-9 * (double)time.tv_nsec;
}

/* Solves within arg_seconds; *seconds gets what it took of the processor. */
static RcNestAnswer *
solve (const RcNestProblem *problem, double *seconds)
{
  RcNestParams  params = { .seconds = arg_seconds, .counts_work = arg_cpu, .seed = (guint64)arg_seed };
  RcNestAnswer *answer;
  g_autoptr (GError) error = NULL;

  *seconds = read_clock (CLOCK_THREAD_CPUTIME_ID);
  answer = rc_nest_solve (problem, &params);
  *seconds = read_clock (CLOCK_THREAD_CPUTIME_ID) - *seconds;
  if (!rc_nest_check (problem, answer, &error))
    g_error ("%s", error->message);
  return answer;
}

/* Leaves library.process NULL where there is none. */
static void
start_library (void)
{
  g_autoptr (GError) error = NULL;

  if (g_getenv ("PACKING_LIBRARY") == NULL)
    {
      printf ("PACKING_LIBRARY names no module: without the columns of a packing library\n");
      return;
    }
  library.process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDIN_PIPE | G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error, "node",
                                      BENCH_LIBRARY_SCRIPT, NULL);
  if (library.process == NULL)
    printf ("%s: without the columns of a packing library\n", error->message);
  else
    library.answers = g_data_input_stream_new (g_subprocess_get_stdout_pipe (library.process));
}

/* FALSE: no library. Lengths go out in whole ticks. */
static gboolean
ask_library (const RcNestProblem *problem, double *used, double *seconds)
{
  g_autoptr (GString) line = g_string_new (NULL);
  g_autofree char *answer = NULL;

  if (library.process == NULL)
    return FALSE;
  g_string_printf (line, "%" G_GINT64_FORMAT, problem->roll_width);
  for (guint c = 0; c < problem->cuts->len; c++)
    {
      const RcNestCut *cut = problem->cuts->pdata[c];

      for (guint k = 0; k < cut->quantity; k++)
        g_string_append_printf (line, " %" G_GINT64_FORMAT " %" G_GINT64_FORMAT, cut->width, cut->length);
    }
  g_string_append_c (line, '\n');
  if (!g_output_stream_write_all (g_subprocess_get_stdin_pipe (library.process), line->str, line->len, NULL, NULL,
                                  NULL))
    return FALSE;
  answer = g_data_input_stream_read_line (library.answers, NULL, NULL, NULL);
  if (answer == NULL || sscanf (answer, "%lf %lf", used, seconds) != 2)
    g_error ("the packing library does not answer");
  *seconds *= 1e-6;
  return TRUE;
}

/* The optimum without the rule of straight cuts, from targets.csv; 0: not known. */
static double
find_free_optimum (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("RC_SHARED"), "packing", "targets.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;

  if (!g_file_get_contents (path, &text, NULL, NULL))
    return 0;
  lines = g_strsplit (text, "\n", -1);
  for (guint l = 1; lines[l] != NULL; l++)
    {
      g_auto (GStrv) fields = g_strsplit (lines[l], ",", -1);

      if (g_strv_length (fields) > 7 && strcmp (fields[1], name) == 0)
        return atof (fields[7]);
    }
  return 0;
}

static void
print_library (const RcNestProblem *problem, const RcNestAnswer *answer, double first_seconds, Sums *sums)
{
  double used = 0, seconds = 0;

  if (!ask_library (problem, &used, &seconds))
    return;
  used /= (double)answer->used_length;
  seconds /= first_seconds;
  printf (" %9.3f %9.1f", used, seconds);
  sums->library += used;
  sums->library_time += seconds;
  sums->n_library++;
}

static void
print_library_sums (const Sums *sums)
{
  if (sums->n_library > 0)
    printf ("mean of the packing library: %.3f times the length, %.1f times the time of the first answer\n",
            sums->library / sums->n_library, sums->library_time / sums->n_library);
}

static void
run_file (const char *set, const char *name, Sums *sums)
{
  g_autoptr (RcNestProblem) problem = rc_nest_case_read (set, name);
  g_autoptr (RcNestAnswer) answer = NULL;
  double   seconds = 0, gap, ffdh, optimum = find_free_optimum (name);
  RcLength first;
  gint64   begin_us;

  if (problem == NULL)
    return;
  problem->stages = g_strcmp0 (arg_stages, "any") == 0 ? 0 : 3;
  begin_us = g_get_monotonic_time ();
  first = rc_nest_compute_quick_length (problem);
  begin_us = g_get_monotonic_time () - begin_us;
  answer = solve (problem, &seconds);
  gap = 100 * ((double)answer->used_length / (double)answer->lower_bound - 1);
  ffdh = (double)rc_nest_case_compute_ffdh (problem) / (double)answer->used_length;
  printf ("%-12s %4u %8.0f %8.0f %7.2f %6.2f %8.0f %7.2f %9.3f", name, problem->cuts->len,
          (double)answer->lower_bound / 1600, (double)answer->used_length / 1600, gap, seconds, (double)first / 1600,
          (double)begin_us / 1000, ffdh);
  print_library (problem, answer, 1e-6 * (double)MAX (begin_us, 1), sums);
  printf ("  %s\n", rc_nest_status_get_name (answer->status));
  fflush (stdout);
  sums->gap += gap;
  sums->ffdh += ffdh;
  sums->n_files++;
  if (optimum > 0)
    {
      sums->excess += 100 * ((double)answer->used_length / 1600 / optimum - 1);
      sums->n_optima++;
    }
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_strcmp0 (*(char *const *)a, *(char *const *)b);
}

static void
run_set (const char *set)
{
  g_autofree char *path = g_build_filename (g_getenv ("RC_SHARED"), "packing", set, NULL);
  g_autoptr (GDir) folder = g_dir_open (path, 0, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const char *name;
  Sums        sums = { 0 };

  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    if (g_str_has_suffix (name, ".txt") && (arg_only == NULL || strstr (name, arg_only) != NULL))
      g_ptr_array_add (names, g_strndup (name, strlen (name) - 4));
  g_ptr_array_sort (names, compare_names);
  printf ("\n%s, %s stages\n%-12s %4s %8s %8s %7s %6s %8s %7s %9s%s\n", set, arg_stages != NULL ? arg_stages : "3",
          "instance", "n", "bound", "answer", "gap %", "s", "first", "ms", "ffdh x",
          library.process != NULL ? " library x library t" : "");
  for (guint i = 0; i < names->len; i++)
    run_file (set, names->pdata[i], &sums);
  if (sums.n_files > 0)
    printf ("mean gap to the bound %.2f %%, first-fit decreasing height uses %.3f times as much\n",
            sums.gap / sums.n_files, sums.ffdh / sums.n_files);
  print_library_sums (&sums);
  if (sums.n_optima > 0)
    printf ("mean excess over the free optimum %.2f %% (%u instances where it is known)\n", sums.excess / sums.n_optima,
            sums.n_optima);
}

static void
run_trade (void)
{
  static const guint sizes[] = { 20, 50, 100, 200, 500, 1000, 3000, 10000, 20000 };
  struct rusage      usage;
  Sums               sums = { 0 };

  printf ("%5s %6s %7s %10s %10s %7s %7s %9s %9s%s\n", "cuts", "rolls", "repeat", "bound m", "answer m", "gap %", "s",
          "first ms", "ffdh x", library.process != NULL ? " library x library t" : "");
  for (guint k = 0; k < G_N_ELEMENTS (sizes); k++)
    for (guint32 job = 0; job < 4; job++)
      {
        g_autoptr (GRand) rand = g_rand_new_with_seed (100 * k + job);
        g_autoptr (RcNestProblem) problem = rc_nest_case_new_trade (rand, sizes[k]);
        g_autoptr (RcNestAnswer) first = NULL;
        g_autoptr (RcNestAnswer) answer = NULL;
        double first_seconds, seconds = 0;

        if (arg_only != NULL && sizes[k] != (guint)atoi (arg_only))
          continue;
        first_seconds = read_clock (CLOCK_THREAD_CPUTIME_ID);
        first = rc_nest_solve (problem, NULL);
        first_seconds = read_clock (CLOCK_THREAD_CPUTIME_ID) - first_seconds;
        answer = solve (problem, &seconds);
        printf ("%5u %6u %7.2f %10.2f %10.2f %7.2f %7.2f %9.2f %9.3f", sizes[k], problem->rolls->len,
                rc_length_to_mm (((RcNestCut *)problem->cuts->pdata[0])->repeat) / 1000,
                rc_length_to_mm (answer->lower_bound) / 1000, rc_length_to_mm (answer->used_length) / 1000,
                100 * ((double)answer->used_length / (double)answer->lower_bound - 1), seconds, 1000 * first_seconds,
                (double)rc_nest_case_compute_ffdh (problem) / (double)answer->used_length);
        print_library (problem, answer, first_seconds, &sums);
        printf ("\n");
        fflush (stdout);
      }
  print_library_sums (&sums);
  getrusage (RUSAGE_SELF, &usage);
  printf ("most memory %ld MB\n", usage.ru_maxrss / 1024);
}

int
main (int argc, char **argv)
{
  const GOptionEntry entries[] = {
    { "seconds", 0, 0, G_OPTION_ARG_DOUBLE, &arg_seconds, "Seconds an instance", "S" },
    { "seed", 0, 0, G_OPTION_ARG_INT64, &arg_seed, "Seed", "N" },
    { "cpu", 0, 0, G_OPTION_ARG_NONE, &arg_cpu, "Count the processor's seconds", NULL },
    { "trade", 0, 0, G_OPTION_ARG_NONE, &arg_trade, "Generated jobs of the trade", NULL },
    { "sets", 0, 0, G_OPTION_ARG_STRING, &arg_sets, "Published sets to run", "NAME,..." },
    { "only", 0, 0, G_OPTION_ARG_STRING, &arg_only, "Only instances whose name holds this, or jobs of so many cuts",
      "TEXT" },
    { "stages", 0, 0, G_OPTION_ARG_STRING, &arg_stages, "3 or any", "N" },
    G_OPTION_ENTRY_NULL,
  };
  g_autoptr (GOptionContext) context = g_option_context_new (NULL);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) sets = NULL;

  g_option_context_add_main_entries (context, entries, NULL);
  if (!g_option_context_parse (context, &argc, &argv, &error))
    {
      fprintf (stderr, "%s\n", error->message);
      return 2;
    }
  start_library ();
  if (arg_trade)
    run_trade ();
  else if (g_getenv ("RC_SHARED") == NULL)
    printf ("RC_SHARED names no folder with the published sets: nothing is run\n");
  else
    {
      sets = g_strsplit (arg_sets != NULL ? arg_sets : "hopper_turton_C,hopper_T_guillotine,beng,cgcut,gcut", ",", -1);
      for (guint i = 0; sets[i] != NULL; i++)
        run_set (sets[i]);
    }
  return 0;
}
