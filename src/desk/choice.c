#include "choice.h"

RcChoice
rc_choice_of_thing (RcThing thing, const char *id)
{
  return (RcChoice){ thing, thing == RC_THING_JOB ? NULL : g_intern_string (id), 0, 0 };
}

RcChoice
rc_choice_of_piece (const RcPlan *plan, guint number)
{
  const RcPiece *piece = plan ? rc_plan_find_piece (plan, number) : NULL;

  if (piece == NULL)
    return rc_choice_of_thing (RC_THING_JOB, NULL);
  RcChoice choice = rc_choice_of_thing (piece->kind == RC_PIECE_STAIR ? RC_THING_STAIR : RC_THING_ROOM, piece->room);
  choice.piece = number;
  return choice;
}

RcChoice
rc_choice_step_piece (RcChoice choice, const RcPlan *plan, int step)
{
  if (plan == NULL || plan->pieces->len == 0)
    return choice;

  int n = plan->pieces->len;
  int at = step > 0 ? -1 : 0;
  for (int i = 0; i < n; i++)
    if (((const RcPiece *)g_ptr_array_index (plan->pieces, i))->number == choice.piece)
      at = i;
  const RcPiece *piece = g_ptr_array_index (plan->pieces, ((at + step) % n + n) % n);
  return rc_choice_of_piece (plan, piece->number);
}

const RcFloorArea *
rc_choice_find_area_of_room (const RcMeasure *measure, const char *room)
{
  for (guint i = 0; i < measure->areas->len; i++)
    {
      const RcFloorArea *area = g_ptr_array_index (measure->areas, i);
      for (guint r = 0; r < area->rooms->len; r++)
        if (g_strcmp0 (g_ptr_array_index (area->rooms, r), room) == 0)
          return area;
    }
  return NULL;
}

static gboolean
is_there (RcChoice choice, const RcMeasure *measure)
{
  switch (choice.thing)
    {
    case RC_THING_AREA:
      return rc_measure_find_area (measure, choice.id) != NULL;
    case RC_THING_ROOM:
      return rc_measure_find_room (measure, choice.id) != NULL;
    case RC_THING_STAIR:
      return rc_measure_find_stair (measure, choice.id) != NULL;
    case RC_THING_JOB:
    default:
      return TRUE;
    }
}

RcChoice
rc_choice_mend (RcChoice choice, const RcMeasure *measure, const RcPlan *plan)
{
  if (!is_there (choice, measure))
    return rc_choice_of_thing (RC_THING_JOB, NULL);
  if (choice.piece != 0 && (plan == NULL || rc_plan_find_piece (plan, choice.piece) == NULL))
    choice.piece = 0;
  if (choice.thing != RC_THING_ROOM || choice.wall > rc_room_get_n_walls (rc_measure_find_room (measure, choice.id)))
    choice.wall = 0;
  return choice;
}

gboolean
rc_choice_equal (RcChoice a, RcChoice b)
{
  return a.thing == b.thing && a.id == b.id && a.piece == b.piece && a.wall == b.wall;
}

const RcFloorArea *
rc_choice_find_area (RcChoice choice, const RcMeasure *measure)
{
  const RcFloorArea *area = NULL;

  if (choice.thing == RC_THING_AREA)
    area = rc_measure_find_area (measure, choice.id);
  else if (choice.thing == RC_THING_ROOM)
    area = rc_choice_find_area_of_room (measure, choice.id);
  if (area == NULL && measure->areas->len > 0)
    area = g_ptr_array_index (measure->areas, 0);
  return area;
}
