#include "nest-command.h"

#include <string.h>

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "command.h"
#include "cuts-csv.h"
#include "nest-print.h"
#include "rowcut-error.h"

typedef struct
{
  char    *roll_width, *stages, *step, *full_roll, *rolls, *least_balance, *least_balance_width;
  char   **stock;
  gboolean buy, json;
  double   seconds;
  gint64   seed, effort;
} Options;

static void
options_clear (Options *options)
{
  g_free (options->roll_width);
  g_free (options->stages);
  g_free (options->step);
  g_free (options->rolls);
  g_free (options->least_balance);
  g_free (options->least_balance_width);
  g_strfreev (options->stock);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

static gboolean
parse_length (const char *option, const char *text, RcLength *length, GError **error)
{
  if (!rc_length_parse (text, RC_LENGTH_UNIT_MM, length, error))
    {
      g_prefix_error (error, "%s: ", option);
      return FALSE;
    }
  if (*length > 0)
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s: “%s” must be more than zero"), option, text);
  return FALSE;
}

/* LENGTH[xCOUNT][@LOT] */
static gboolean
add_stock (RcNestProblem *problem, const char *text, guint64 *n_rolls, GError **error)
{
  const char      *at = strrchr (text, '@');
  g_autofree char *size = at != NULL ? g_strndup (text, (gsize)(at - text)) : g_strdup (text);
  char            *x = strrchr (size, 'x');
  guint64          count = 1;
  RcLength         length = 0;
  RcNestRoll      *roll;

  if (x != NULL)
    {
      if (!g_ascii_string_to_unsigned (x + 1, 10, 1, RC_CSV_MOST_ROLLS, &count, NULL))
        {
          g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
                       _ ("--stock: “%s” must be a length and how many of it, like \"30 mx2\""), text);
          return FALSE;
        }
      *x = '\0';
    }
  if (!parse_length ("--stock", size, &length, error))
    return FALSE;
  if ((*n_rolls += count) > RC_CSV_MOST_ROLLS)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("--stock: more than %d rolls"), RC_CSV_MOST_ROLLS);
      return FALSE;
    }
  roll = rc_nest_roll_new (size, at != NULL ? at + 1 : "", length, (guint)count);
  roll->cost_per_m = RC_CSV_STOCK_VALUE;
  g_ptr_array_add (problem->rolls, roll);
  return TRUE;
}

static RcNestProblem *
make_problem (const Options *options, GError **error)
{
  g_autoptr (RcNestProblem) problem = rc_nest_problem_new (0);
  guint64 n_rolls = 0;

  if (options->roll_width == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
                   _ ("--roll-width is missing; say for example --roll-width \"3.66 m\""));
      return NULL;
    }
  if (!parse_length ("--roll-width", options->roll_width, &problem->roll_width, error))
    return NULL;
  if ((options->step != NULL && !parse_length ("--step", options->step, &problem->buy_step, error))
      || (options->full_roll != NULL && !parse_length ("--full-roll", options->full_roll, &problem->buy_most, error))
      || (options->least_balance != NULL
          && !parse_length ("--least-balance", options->least_balance, &problem->least_balance, error))
      || (options->least_balance_width != NULL
          && !parse_length ("--least-balance-width", options->least_balance_width, &problem->least_balance_width,
                            error)))
    return NULL;
  if (g_strcmp0 (options->stages, "any") == 0)
    problem->stages = 0;
  else if (options->stages != NULL && strcmp (options->stages, "3") != 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("--stages: “%s” must be 3 or any"), options->stages);
      return NULL;
    }
  for (guint i = 0; options->stock != NULL && options->stock[i] != NULL; i++)
    if (!add_stock (problem, options->stock[i], &n_rolls, error))
      return NULL;
  if (!(options->seconds >= 0 && options->seconds <= 86400) || options->seed < 0 || options->effort < 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
                   _ ("--seconds must be between 0 and 86400, --seed and --effort must not be negative"));
      return NULL;
    }
  return g_steal_pointer (&problem);
}

/* (transfer full), NULL on error */
static char *
read_text (const char *file, GError **error)
{
  g_autofree char *text = NULL;
  gsize            length = 0;

  if (!g_file_get_contents (file, &text, &length, error))
    return NULL;
  if (strlen (text) == length)
    return g_steal_pointer (&text);
  g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s is not a text file"), file);
  return NULL;
}

static gboolean
read_files (const Options *options, const char *file, RcNestProblem *problem, GError **error)
{
  g_autofree char *rolls = NULL, *cuts = NULL;

  if (options->rolls != NULL)
    {
      rolls = read_text (options->rolls, error);
      if (rolls == NULL || !rc_rolls_csv_parse (rolls, options->rolls, RC_LENGTH_UNIT_MM, problem, error))
        return FALSE;
    }
  if (options->buy && problem->rolls->len > 0)
    {
      RcNestRoll *bought = rc_nest_roll_new (NULL, NULL, 0, 1);

      bought->cost_per_m = RC_CSV_BUY_VALUE;
      g_ptr_array_add (problem->rolls, bought);
    }
  cuts = read_text (file, error);
  return cuts != NULL && rc_cuts_csv_parse (cuts, file, RC_LENGTH_UNIT_MM, problem, error);
}

static int
solve (const Options *options, const char *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcNestProblem) problem = make_problem (options, &error);
  g_autoptr (RcNestAnswer) answer = NULL;
  RcNestParams params = { 0 };

  if (problem == NULL)
    return rc_command_fail_usage ("nest", "%s", error->message);
  if (!read_files (options, file, problem, &error))
    return rc_command_fail ("nest", error);
  params.seconds = options->seconds;
  params.seed = (guint64)options->seed;
  params.effort = (guint64)options->effort;
  answer = rc_nest_solve (problem, &params);
  if (answer->status == RC_NEST_INFEASIBLE)
    {
      g_set_error_literal (&error, RC_ERROR, RC_ERROR_INFEASIBLE, answer->reason);
      return rc_command_fail ("nest", error);
    }
  if (!rc_nest_check (problem, answer, &error))
    {
      g_prefix_error (&error, "%s: ", _ ("the cutting found does not hold"));
      return rc_command_fail ("nest", error);
    }
  if (!options->json)
    rc_nest_print_text (problem, answer);
  else if (!rc_nest_print_json (problem, answer))
    return RC_EXIT_FAILED;
  return RC_EXIT_DONE;
}

int
rc_nest_command_run (int argc, char **argv)
{
  g_auto (Options) options = { .seed = 1 };
  g_auto (GStrv) arguments = NULL;
  int                status = RC_EXIT_DONE;
  const GOptionEntry entries[] = {
    { "roll-width", 0, 0, G_OPTION_ARG_FILENAME, &options.roll_width, N_ ("Usable width of the rolls"), N_ ("WIDTH") },
    { "stock", 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options.stock,
      N_ ("Rolls in stock, of one dye lot; may be repeated"), N_ ("LENGTH[xCOUNT][@LOT]") },
    { "rolls", 0, 0, G_OPTION_ARG_FILENAME, &options.rolls,
      N_ ("Rolls in stock and to be bought, with their lots, values, trims and damage"), "ROLLS.csv" },
    { "buy", 0, 0, G_OPTION_ARG_NONE, &options.buy, N_ ("Buy what the stock does not hold"), NULL },
    { "step", 0, 0, G_OPTION_ARG_FILENAME, &options.step, N_ ("Lengths are bought in steps of this"), N_ ("LENGTH") },
    { "full-roll", 0, 0, G_OPTION_ARG_FILENAME, &options.full_roll,
      N_ ("A roll that is bought is no longer than this; more comes from several"), N_ ("LENGTH") },
    { "least-balance", 0, 0, G_OPTION_ARG_FILENAME, &options.least_balance, N_ ("A leftover that is shorter is waste"),
      N_ ("LENGTH") },
    { "least-balance-width", 0, 0, G_OPTION_ARG_FILENAME, &options.least_balance_width,
      N_ ("A leftover that is narrower is waste"), N_ ("WIDTH") },
    { "stages", 0, 0, G_OPTION_ARG_FILENAME, &options.stages, N_ ("Stages of straight cuts"), "3|any" },
    { "seconds", 0, 0, G_OPTION_ARG_DOUBLE, &options.seconds, N_ ("Time to search for better cuttings"), N_ ("S") },
    { "seed", 0, 0, G_OPTION_ARG_INT64, &options.seed, N_ ("Seed of the search"), N_ ("N") },
    { "effort", 0, 0, G_OPTION_ARG_INT64, &options.effort,
      N_ ("Steps of the search; the same steps give the same answer"), N_ ("N") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &options.json, N_ ("Print one JSON object"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  const RcCommandUsage usage = {
    .name = "nest",
    .parameters = "CUTS.csv",
    .summary = _ ("Place a list of cuts on rolls so that straight cuts from edge to edge free them all."),
    .description
    = _ ("CUTS.csv has a header row: label,width,length,quantity and optionally repeat,phase,match for the\n"
         "pattern along the roll (cuts of one match show it at one height), across_repeat,across_phase,\n"
         "across_match for the pattern across it, lot, and roll,along,across where a cut is pinned to a roll,\n"
         "counted from 1, or to a place on it. ROLLS.csv has a header row: length and optionally name,count,\n"
         "width,lot,value,trim,trim_end,damaged; an empty length is a roll to be bought, value is that of a\n"
         "metre, damaged is like 2 m to 2.5 m; 7 m to 7.2 m. Lengths are written like 12'6\", 3.66 m, 366 cm;\n"
         "a bare number is in mm. Without rolls one is bought to measure."),
    .entries = entries,
    .n_least = 1,
    .n_most = 1,
  };

  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  return solve (&options, arguments[0]);
}
