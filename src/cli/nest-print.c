#include "nest-print.h"

#include <glib/gi18n-lib.h>

#include "json-out.h"

static const RcNestRoll *
get_source (const RcNestProblem *problem, const RcNestUse *use)
{
  return problem->rolls->len > 0 ? problem->rolls->pdata[use->source] : NULL;
}

static const char *
get_label (const RcNestProblem *problem, const RcNestAnswer *answer, guint placement)
{
  return ((RcNestCut *)problem->cuts->pdata[g_array_index (answer->placements, RcNestPlacement, placement).cut])->label;
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
      if (cut->quantity > 1)
        rc_json_add_int (json, "copy", placement->copy + 1);
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
add_strokes (RcJson *json, const RcNestProblem *problem, const RcNestAnswer *answer)
{
  g_autofree guint *freed_by = rc_nest_answer_list_freeing (answer);

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
      rc_json_begin_array (json, "frees");
      for (guint p = 0; p < answer->placements->len; p++)
        if (freed_by[p] == s)
          rc_json_add_string (json, NULL, get_label (problem, answer, p));
      rc_json_end_array (json);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

static void
add_leftovers (RcJson *json, const RcNestAnswer *answer)
{
  rc_json_begin_array (json, "leftovers");
  for (guint k = 0; k < answer->leftovers->len; k++)
    {
      const RcNestLeftover *rest = &g_array_index (answer->leftovers, RcNestLeftover, k);

      rc_json_begin_object (json, NULL);
      rc_json_add_int (json, "roll", rest->roll + 1);
      rc_json_add_length (json, "across", rest->across);
      rc_json_add_length (json, "along", rest->along);
      rc_json_add_length (json, "width", rest->width);
      rc_json_add_length (json, "length", rest->length);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

gboolean
rc_nest_print_json (const RcNestProblem *problem, const RcNestAnswer *answer)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_add_length (json, "roll_width", problem->roll_width);
  rc_json_add_length (json, "used_length", answer->used_length);
  rc_json_add_length (json, "lower_bound", answer->lower_bound);
  rc_json_add_string (json, "status", rc_nest_status_get_name (answer->status));
  add_cuts (json, problem, answer);
  add_rolls (json, problem, answer);
  add_strokes (json, problem, answer);
  add_leftovers (json, answer);
  rc_json_end_object (json);
  return rc_json_print (json);
}

static char *
format_metric (RcLength length)
{
  return rc_length_format (length, &RC_LENGTH_STYLE_METRIC);
}

static void
print_cuts (const RcNestProblem *problem, const RcNestAnswer *answer)
{
  for (guint p = 0; p < answer->placements->len; p++)
    {
      const RcNestPlacement *placement = &g_array_index (answer->placements, RcNestPlacement, p);
      g_autofree char       *along = format_metric (placement->along);
      g_autofree char       *across = format_metric (placement->across);
      g_autofree char       *width = format_metric (placement->width);
      g_autofree char       *length = format_metric (placement->length);

      g_print (_ ("roll %u  at %s, %s from the left: %s wide, %s long  %s\n"), placement->roll + 1, along, across,
               width, length, get_label (problem, answer, p));
    }
}

/* The strokes of later stages stand further in. */
static void
print_stroke (const RcNestProblem *problem, const RcNestStroke *stroke, guint number)
{
  g_autofree char *at = format_metric (stroke->at);
  g_autofree char *from = format_metric (stroke->from);
  g_autofree char *to = format_metric (stroke->to);
  int              indent = 2 * CLAMP (stroke->stage - 1, 0, 8);

  g_print ("%4u %*s", number, indent, "");
  if (problem->stages > 0 && stroke->stage > problem->stages)
    g_print ("%s: ", _ ("trim"));
  if (stroke->along_roll)
    g_print (_ ("along the roll, %s from the left, from %s to %s"), at, from, to);
  else if (stroke->stage == 1)
    g_print (_ ("across at %s, edge to edge"), at);
  else
    g_print (_ ("across at %s, from %s to %s from the left"), at, from, to);
}

static void
print_strokes (const RcNestProblem *problem, const RcNestAnswer *answer, const guint *freed_by, guint roll)
{
  guint number = 0;

  for (guint s = 0; s < answer->strokes->len; s++)
    {
      const RcNestStroke *stroke = &g_array_index (answer->strokes, RcNestStroke, s);
      gboolean            frees = FALSE;

      if (stroke->roll != roll)
        continue;
      print_stroke (problem, stroke, ++number);
      for (guint p = 0; p < answer->placements->len; p++)
        if (freed_by[p] == s)
          {
            g_print ("%s %s", frees ? "," : _ (" -> out comes"), get_label (problem, answer, p));
            frees = TRUE;
          }
      g_print ("\n");
    }
}

static void
print_leftovers (const RcNestAnswer *answer, guint roll)
{
  for (guint k = 0; k < answer->leftovers->len; k++)
    {
      const RcNestLeftover *rest = &g_array_index (answer->leftovers, RcNestLeftover, k);
      g_autofree char      *along = format_metric (rest->along);
      g_autofree char      *across = format_metric (rest->across);
      g_autofree char      *width = format_metric (rest->width);
      g_autofree char      *length = format_metric (rest->length);

      if (rest->roll == roll)
        g_print (_ ("     left over: %s wide, %s long, at %s, %s from the left\n"), width, length, along, across);
    }
}

static void
print_roll (const RcNestProblem *problem, const RcNestAnswer *answer, const guint *freed_by, guint roll)
{
  const RcNestUse  *use = answer->rolls->pdata[roll];
  const RcNestRoll *source = get_source (problem, use);
  g_autofree char  *length = format_metric (use->length);
  g_autofree char  *taken = format_metric (use->used);
  g_autofree char  *balance = format_metric (use->length - use->used);

  g_print ("\n");
  g_print (_ ("roll %u  of %s: %s used, %s left\n"), roll + 1, length, taken, balance);
  if (source != NULL && source->name != NULL)
    g_print (source->lot != NULL && *source->lot != '\0' ? _ ("     %s, dye lot %s\n") : "     %s\n", source->name,
             source->lot);
  print_strokes (problem, answer, freed_by, roll);
  print_leftovers (answer, roll);
}

void
rc_nest_print_text (const RcNestProblem *problem, const RcNestAnswer *answer)
{
  g_autofree char  *used = format_metric (answer->used_length);
  g_autofree char  *bound = format_metric (answer->lower_bound);
  g_autofree guint *freed_by = rc_nest_answer_list_freeing (answer);

  print_cuts (problem, answer);
  for (guint r = 0; r < answer->rolls->len; r++)
    print_roll (problem, answer, freed_by, r);
  g_print ("\n");
  g_print (_ ("Used %s; no cutting uses less than %s\n"), used, bound);
}
