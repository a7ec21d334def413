#include "nest-command.h"

#include <string.h>

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "command.h"
#include "cuts-csv.h"
#include "json-out.h"
#include "rowcut-error.h"

enum
{
  MOST_ROLLS = 10000
};

typedef struct
{
  char    *roll_width, *stages, *step;
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
      if (!g_ascii_string_to_unsigned (x + 1, 10, 1, MOST_ROLLS, &count, NULL))
        {
          g_set_error (error, RC_ERROR, RC_ERROR_PARSE,
                       _ ("--stock: “%s” must be a length and how many of it, like \"30 mx2\""), text);
          return FALSE;
        }
      *x = '\0';
    }
  if (!parse_length ("--stock", size, &length, error))
    return FALSE;
  if ((*n_rolls += count) > MOST_ROLLS)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("--stock: more than %d rolls"), MOST_ROLLS);
      return FALSE;
    }
  roll = rc_nest_roll_new (size, at != NULL ? at + 1 : "", length, (guint)count);
  roll->cost_per_m = 1;
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
  if (options->step != NULL && !parse_length ("--step", options->step, &problem->buy_step, error))
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
  if (options->buy && problem->rolls->len > 0)
    {
      RcNestRoll *bought = rc_nest_roll_new (NULL, NULL, 0, 1);

      bought->cost_per_m = 2;
      g_ptr_array_add (problem->rolls, bought);
    }
  if (!(options->seconds >= 0 && options->seconds <= 86400) || options->seed < 0 || options->effort < 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE,
                   _ ("--seconds must be between 0 and 86400, --seed and --effort must not be negative"));
      return NULL;
    }
  return g_steal_pointer (&problem);
}

static gboolean
read_cuts (const char *file, RcNestProblem *problem, GError **error)
{
  g_autofree char *text = NULL;
  gsize            length = 0;

  if (!g_file_get_contents (file, &text, &length, error))
    return FALSE;
  if (strlen (text) != length)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s is not a text file"), file);
      return FALSE;
    }
  return rc_cuts_csv_parse (text, file, RC_LENGTH_UNIT_MM, problem, error);
}

static const RcNestRoll *
get_source (const RcNestProblem *problem, const RcNestUse *use)
{
  return problem->rolls->len > 0 ? problem->rolls->pdata[use->source] : NULL;
}

static void
add_cuts (RcJson *json, const RcNestProblem *problem, const RcNestAnswer *answer)
{
  rc_json_begin_array (json, "cuts");
  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, p);
      const RcNestCut       *cut = problem->cuts->pdata[placement->cut];

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "label", cut->label);
      rc_json_add_int (json, "roll", placement->roll + 1);
      rc_json_add_length (json, "across", placement->across);
      rc_json_add_length (json, "along", placement->along);
      rc_json_add_length (json, "width", placement->width);
      rc_json_add_length (json, "length", placement->length);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

static void
add_rolls (RcJson *json, const RcNestProblem *problem, const RcNestAnswer *answer)
{
  rc_json_begin_array (json, "rolls");
  for (guint r = 0; r < answer->rolls->len; r++)
    {
      const RcNestUse  *use = answer->rolls->pdata[r];
      const RcNestRoll *source = get_source (problem, use);

      rc_json_begin_object (json, NULL);
      rc_json_add_int (json, "roll", r + 1);
      rc_json_add_string (json, "stock", source != NULL ? source->name : NULL);
      if (source != NULL && source->lot != NULL && *source->lot != '\0')
        rc_json_add_string (json, "lot", source->lot);
      rc_json_add_length (json, "length", use->length);
      rc_json_add_length (json, "used", use->used);
      rc_json_add_length (json, "balance", use->length - use->used);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

static void
add_strokes (RcJson *json, const RcNestAnswer *answer)
{
  rc_json_begin_array (json, "strokes");
  for (guint s = 0; s < answer->strokes->len; s++)
    {
      const RcNestStroke *stroke = &g_array_index (answer->strokes, RcNestStroke, s);

      rc_json_begin_object (json, NULL);
      rc_json_add_int (json, "roll", stroke->roll + 1);
      rc_json_add_int (json, "stage", stroke->stage);
      rc_json_add_string (json, "runs", stroke->along_roll ? "along" : "across");
      rc_json_add_length (json, "at", stroke->at);
      rc_json_add_length (json, "from", stroke->from);
      rc_json_add_length (json, "to", stroke->to);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

static gboolean
print_json (const RcNestProblem *problem, const RcNestAnswer *answer)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_add_length (json, "roll_width", problem->roll_width);
  rc_json_add_length (json, "used_length", answer->used_length);
  rc_json_add_length (json, "lower_bound", answer->lower_bound);
  rc_json_add_string (json, "status", rc_nest_status_get_name (answer->status));
  add_cuts (json, problem, answer);
  add_rolls (json, problem, answer);
  add_strokes (json, answer);
  rc_json_end_object (json);
  return rc_json_print (json);
}

static char *
format_metric (RcLength length)
{
  return rc_length_format (length, &RC_LENGTH_STYLE_METRIC);
}

static void
print_table (const RcNestProblem *problem, const RcNestAnswer *answer)
{
  g_autofree char *used = format_metric (answer->used_length);
  g_autofree char *bound = format_metric (answer->lower_bound);

  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, p);
      const RcNestCut       *cut = problem->cuts->pdata[placement->cut];
      g_autofree char       *along = format_metric (placement->along);
      g_autofree char       *across = format_metric (placement->across);
      g_autofree char       *width = format_metric (placement->width);
      g_autofree char       *length = format_metric (placement->length);

      g_print (_ ("roll %u  at %s, %s from the left: %s wide, %s long  %s\n"), placement->roll + 1, along, across,
               width, length, cut->label);
    }
  for (guint r = 0; r < answer->rolls->len; r++)
    {
      const RcNestUse *use = answer->rolls->pdata[r];
      g_autofree char *length = format_metric (use->length);
      g_autofree char *taken = format_metric (use->used);
      g_autofree char *balance = format_metric (use->length - use->used);

      g_print (_ ("roll %u  of %s: %s used, %s left\n"), r + 1, length, taken, balance);
    }
  g_print (_ ("Used %s; no cutting uses less than %s\n"), used, bound);
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
  if (!read_cuts (file, problem, &error))
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
    print_table (problem, answer);
  else if (!print_json (problem, answer))
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
    { "buy", 0, 0, G_OPTION_ARG_NONE, &options.buy, N_ ("Buy what the stock does not hold"), NULL },
    { "step", 0, 0, G_OPTION_ARG_FILENAME, &options.step, N_ ("Lengths are bought in steps of this"), N_ ("LENGTH") },
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
    = _ ("CUTS.csv has a header row: label,width,length,quantity and optionally repeat,phase,lot. Lengths are\n"
         "written like 12'6\", 3.66 m, 366 cm; a bare number is in mm. Without --stock one roll is bought to\n"
         "measure."),
    .entries = entries,
    .n_least = 1,
    .n_most = 1,
  };

  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  return solve (&options, arguments[0]);
}
