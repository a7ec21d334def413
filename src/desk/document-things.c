#include "document-things.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "gesture-room.h"
#include "job-edit.h"
#include "measure-edit.h"
#include "room-edit.h"
#include "pin-edit.h"

#define MOST_SHORTFALLS 4 /* shown over the floor */

RcJob *
rc_document_dup_job (RcDocument *self)
{
  return rc_job_copy (rc_document_get_job (self));
}

RcMeasure *
rc_document_get_measure_of (RcDocument *self, RcJob *job)
{
  return rc_job_get_measure (job, rc_document_get_measure (self)->id);
}

void
rc_document_point (RcDocument *self, guint piece)
{
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (guint));

  if (piece)
    g_array_append_val (pieces, piece);
  rc_document_point_all (self, pieces);
}

/* "Room 3": the name with the next number. */
static char *
dup_next_name (const char *stem, guint n)
{
  return g_strdup_printf ("%s %u", stem, n + 1);
}

static gboolean
commit_and_choose (RcDocument *self, RcJob *job, const char *step, RcThing thing, const char *id, GError **error)
{
  RcChoice choice = rc_choice_of_thing (thing, id);

  if (!rc_document_commit (self, job, step, NULL, error))
    return FALSE;
  rc_document_choose (self, choice);
  return TRUE;
}

/* `like` NULL: a rectangle of a usual size. */
static gboolean
add_room (RcDocument *self, int floor, const RcRoom *like, GError **error)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  RcMeasure         *measure = rc_document_get_measure_of (self, job);
  const RcFloorArea *area = rc_choice_find_area (rc_document_get_choice (self), measure);
  gboolean           metric = job->units == RC_UNITS_METRIC;
  g_autofree char   *name = dup_next_name (_ ("Room"), measure->rooms->len);
  RcLength           width = metric ? 3 * RC_TICKS_PER_M : 10 * RC_TICKS_PER_FOOT;
  RcLength           length = metric ? 4 * RC_TICKS_PER_M : 12 * RC_TICKS_PER_FOOT;

  RcRoom *room = rc_measure_edit_add_room (measure, name, floor, like ? 0 : width, like ? 0 : length);
  if (like)
    g_array_append_vals (room->walls, like->walls->data, like->walls->len);
  if (area)
    rc_measure_edit_put_room_in_area (measure, room->id, area->id);
  return commit_and_choose (self, g_steal_pointer (&job), _ ("New room"), RC_THING_ROOM, room->id, error);
}

gboolean
rc_document_add_room (RcDocument *self, int floor, GError **error)
{
  return add_room (self, floor, NULL, error);
}

gboolean
rc_document_add_room_like (RcDocument *self, int floor, const RcRoom *like, GError **error)
{
  return add_room (self, floor, like, error);
}

gboolean
rc_document_add_stair (RcDocument *self, GError **error)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  RcMeasure         *measure = rc_document_get_measure_of (self, job);
  const RcFloorArea *area = rc_choice_find_area (rc_document_get_choice (self), measure);
  g_autofree char   *name = dup_next_name (_ ("Stair"), measure->stairs->len);

  RcStair *stair = rc_measure_edit_add_stair (measure, name, job->units);
  stair->carpet = g_strdup (area ? area->carpet : NULL);
  stair->cushion = g_strdup (area ? area->cushion : NULL);
  return commit_and_choose (self, g_steal_pointer (&job), _ ("New stair"), RC_THING_STAIR, stair->id, error);
}

gboolean
rc_document_add_area (RcDocument *self, GError **error)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  RcMeasure         *measure = rc_document_get_measure_of (self, job);
  const RcFloorArea *like = rc_choice_find_area (rc_document_get_choice (self), measure);
  g_autofree char   *name = dup_next_name (_ ("Area"), measure->areas->len);

  RcFloorArea *area = rc_measure_edit_add_area (measure, name);
  if (like)
    {
      area->carpet = g_strdup (like->carpet);
      area->cushion = g_strdup (like->cushion);
      area->fixing = like->fixing;
    }
  return commit_and_choose (self, g_steal_pointer (&job), _ ("New area"), RC_THING_AREA, area->id, error);
}

gboolean
rc_document_duplicate_chosen (RcDocument *self, GError **error)
{
  RcChoice choice = rc_document_get_choice (self);
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  RcMeasure    *measure = rc_document_get_measure_of (self, job);
  const RcRoom *from = choice.thing == RC_THING_ROOM ? rc_measure_find_room (measure, choice.id) : NULL;

  if (from == NULL)
    return FALSE;
  const RcFloorArea *area = rc_choice_find_area_of_room (measure, from->id);
  g_autofree char   *name = g_strdup_printf (_ ("%s, again"), from->name);
  RcRoom            *room = rc_measure_edit_duplicate_room (measure, from->id, name);
  if (area)
    rc_measure_edit_put_room_in_area (measure, room->id, area->id);
  return commit_and_choose (self, g_steal_pointer (&job), _ ("Copy a room"), RC_THING_ROOM, room->id, error);
}

gboolean
rc_document_remove_chosen (RcDocument *self, GError **error)
{
  RcChoice choice = rc_document_get_choice (self);
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  RcMeasure  *measure = rc_document_get_measure_of (self, job);
  gboolean    removed = FALSE;
  const char *step = NULL;

  switch (choice.thing)
    {
    case RC_THING_ROOM:
      removed = rc_measure_edit_remove_room (measure, choice.id);
      step = _ ("Take a room away");
      break;
    case RC_THING_STAIR:
      removed = rc_measure_edit_remove_stair (measure, choice.id);
      step = _ ("Take a stair away");
      break;
    case RC_THING_AREA:
      removed = rc_measure_edit_remove_area (measure, choice.id);
      step = _ ("Take an area away");
      break;
    case RC_THING_JOB:
    default:
      return FALSE;
    }
  return removed && rc_document_commit (self, g_steal_pointer (&job), step, NULL, error);
}

/* TRUE where the area, of a copy of the job, was changed. */
static gboolean
pin_piece (const RcPlan *plan, guint number, RcFloorArea *area, gboolean pinned, char **told)
{
  const char *roll = NULL;

  if (!pinned && rc_pin_edit_unpin_piece (plan, number, area))
    *told = g_strdup_printf (_ ("Piece %u is free again."), number);
  else if (!pinned)
    {
      *told = g_strdup_printf (_ ("Nothing is pinned of piece %u itself."), number);
      return FALSE;
    }
  else if (!rc_pin_edit_pin_piece (plan, number, area, &roll))
    return FALSE;
  else if (roll)
    *told = g_strdup_printf (_ ("Piece %u is pinned as it lies, and to roll %s."), number, roll);
  else
    *told = g_strdup_printf (_ ("Piece %u is pinned as it lies."), number);
  return TRUE;
}

gboolean
rc_document_pin_chosen_piece (RcDocument *self, gboolean pinned, char **told, GError **error)
{
  RcOutcome     *outcome = rc_document_get_outcome (self);
  guint          number = rc_document_get_choice (self).piece;
  const RcPiece *piece = outcome && number ? rc_plan_find_piece (outcome->plan, number) : NULL;
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  RcFloorArea *area
      = piece && piece->area ? rc_measure_find_area (rc_document_get_measure_of (self, job), piece->area) : NULL;

  if (!rc_document_is_planned (self))
    *told = g_strdup (_ ("The plan is still being made; try again when it stands."));
  else if (area && pin_piece (outcome->plan, number, area, pinned, told))
    return rc_document_commit (self, g_steal_pointer (&job), pinned ? _ ("Pin the piece") : _ ("Unpin the piece"), NULL,
                               error);
  if (*told == NULL)
    *told = g_strdup (_ ("Choose a piece of a floor first: it is what is pinned."));
  return FALSE;
}

RcScene *
rc_document_new_scene (RcDocument *self, int floor)
{
  RcOutcome       *outcome = rc_document_get_outcome (self);
  const RcJob     *job = rc_document_get_job (self);
  const RcMeasure *measure = rc_document_get_measure (self);
  g_autoptr (RcHouse) now = rc_house_new_rooms (measure, &job->settings.closure, NULL);

  return rc_scene_new (job, measure, now ? now : outcome ? outcome->plan->house : NULL, floor);
}

static gboolean
is_held (const RcRoom *room, const char *other_than)
{
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (room->openings, i);
      if (opening->to_room && g_strcmp0 (opening->id, other_than) != 0)
        return TRUE;
    }
  return FALSE;
}

RcJob *
rc_document_lead_opening (RcDocument *self, const char *room, const char *opening, const char *to_room,
                          const char *to_opening)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  RcMeasure *measure = rc_document_get_measure_of (self, job);
  RcRoom    *from = rc_measure_find_room (measure, room), *to = rc_measure_find_room (measure, to_room);

  if (from == NULL || !rc_measure_edit_lead (measure, room, opening, to_room, to_opening))
    return NULL;
  if (to == NULL || to_opening == NULL)
    return g_steal_pointer (&job);
  g_autoptr (RcScene) scene = rc_document_new_scene (self, from->floor);
  gboolean stays = is_held (from, opening) && !is_held (to, to_opening);
  RcJob   *joined = stays ? rc_gesture_room_join (scene, room, opening, to_room, to_opening)
                          : rc_gesture_room_join (scene, to_room, to_opening, room, opening);
  return joined ? joined : g_steal_pointer (&job);
}

/* The other side of an opening; NULL where none is measured. */
static RcOpening *
find_other_side (RcMeasure *measure, const RcOpening *opening)
{
  RcRoom *room = opening->to_room ? rc_measure_find_room (measure, opening->to_room) : NULL;

  return room && opening->to_opening ? rc_room_edit_find_opening (room, opening->to_opening) : NULL;
}

static RcSwing
turn_swing (RcSwing swing)
{
  return swing == RC_SWING_IN ? RC_SWING_OUT : swing == RC_SWING_OUT ? RC_SWING_IN : RC_SWING_NONE;
}

/* It is one hole with one leaf: what was alike on both sides stays so. */
static void
keep_sides_alike (const RcOpening *was, const RcOpening *other_was, const RcOpening *opening, RcOpening *other)
{
  if (was->kind == other_was->kind)
    other->kind = opening->kind;
  if (was->swing == turn_swing (other_was->swing))
    other->swing = turn_swing (opening->swing);
  if (was->width == other_was->width)
    other->width = opening->width;
  if (was->depth == other_was->depth)
    other->depth = opening->depth;
}

/* A room with a place of its own that nothing but this opening holds comes along, if the house can then be built. Rooms
 * without one lie where the last plan had them: half a length typed may have put them elsewhere. */
static RcJob *
bring_along (RcDocument *self, const RcJob *job, const RcRoom *room, const RcOpening *opening)
{
  RcMeasure    *measure = rc_document_get_measure_of (self, (RcJob *)job);
  const RcRoom *other = rc_measure_find_room (measure, opening->to_room);
  RcOutcome    *outcome = rc_document_get_outcome (self);
  g_autoptr (RcScene) scene = rc_scene_new (job, measure, outcome ? outcome->plan->house : NULL, room->floor);
  RcJob *joined = NULL;

  if (other->placed && !is_held (other, opening->to_opening))
    joined = rc_gesture_room_join (scene, room->id, opening->id, other->id, opening->to_opening);
  else if (room->placed && !is_held (room, opening->id))
    joined = rc_gesture_room_join (scene, other->id, opening->to_opening, room->id, opening->id);
  g_autoptr (RcHouse) house
      = joined ? rc_house_new (rc_document_get_measure_of (self, joined), &joined->settings.closure, NULL) : NULL;
  if (house == NULL)
    g_clear_pointer (&joined, rc_job_free);
  return joined;
}

RcJob *
rc_document_meet_opening (RcDocument *self, RcJob *job, const char *room_id, const char *id)
{
  RcMeasure *before = (RcMeasure *)rc_document_get_measure (self), *measure = rc_document_get_measure_of (self, job);
  RcRoom    *room_was = rc_measure_find_room (before, room_id), *room = rc_measure_find_room (measure, room_id);
  RcOpening *was = room_was ? rc_room_edit_find_opening (room_was, id) : NULL;
  RcOpening *opening = room ? rc_room_edit_find_opening (room, id) : NULL;
  RcOpening *other_was = was ? find_other_side (before, was) : NULL;
  RcOpening *other = opening ? find_other_side (measure, opening) : NULL;

  if (other_was == NULL || other == NULL)
    return job;
  keep_sides_alike (was, other_was, opening, other);
  g_autoptr (RcHouse) house = rc_house_new (measure, &job->settings.closure, NULL);
  RcJob *joined = house ? NULL : bring_along (self, job, room, opening);
  if (joined == NULL)
    return job;
  rc_job_free (job);
  return joined;
}

gboolean
rc_document_add_measure (RcDocument *self, GError **error)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  g_autofree char *today = rc_clock_dup_today ();
  RcMeasure       *measure = rc_job_edit_add_measure (job, rc_document_get_measure (self)->id, today);
  g_autofree char *id = g_strdup (measure->id);

  return rc_document_commit (self, g_steal_pointer (&job), _ ("Measure again"), NULL, error)
         && rc_document_set_measure (self, id);
}

char *
rc_document_dup_shortfalls (RcDocument *self)
{
  RcOutcome *outcome = rc_document_get_outcome (self);
  g_autoptr (GPtrArray) all = outcome ? rc_outcome_list_shortfalls (outcome) : NULL;
  g_autoptr (GString) text = g_string_new (NULL);

  if (all == NULL || all->len == 0 || rc_job_has_taken_cut_goods (rc_document_get_job (self), outcome->held->goods))
    return NULL;
  for (guint i = 0; i < MIN (all->len, MOST_SHORTFALLS); i++)
    g_string_append_printf (text, "%s\n", (const char *)g_ptr_array_index (all, i));
  if (all->len > MOST_SHORTFALLS)
    g_string_append_printf (text, ngettext ("and %u more\n", "and %u more\n", all->len - MOST_SHORTFALLS),
                            all->len - MOST_SHORTFALLS);
  g_string_append (text, _ ("Compare measures (Ctrl+D) has the ways to go on."));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
rc_document_dup_departure (RcDocument *self)
{
  RcOutcome     *outcome = rc_document_get_outcome (self);
  const RcQuote *accepted
      = outcome ? rc_held_get_accepted_for (outcome->held, outcome->job, outcome->measure->id) : NULL;
  g_autoptr (GString) text = g_string_new (NULL);

  if (accepted == NULL || outcome->quote == NULL || !rc_document_is_settled (self))
    return NULL;
  g_autoptr (GPtrArray) all = rc_quote_list_departures (accepted, outcome->quote, outcome->job, TRUE);
  if (all->len == 0)
    return NULL;
  g_string_append_printf (text, _ ("The plan is not the one accepted with %s:"), outcome->held->accepted_as);
  for (guint i = 0; i < all->len; i++)
    g_string_append_printf (text, "\n%s", (const char *)g_ptr_array_index (all, i));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

gboolean
rc_document_set_state (RcDocument *self, RcJobState state, GError **error)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self);
  g_autofree char *today = rc_clock_dup_today ();

  rc_job_set_state (job, state, job->reached[state] != NULL ? job->reached[state] : today);
  return rc_document_commit (self, g_steal_pointer (&job), _ ("State of the job"), NULL, error);
}

gboolean
rc_document_reach (RcDocument *self, RcJobState state, GError **error)
{
  return rc_job_get_state (rc_document_get_job (self)) >= state || rc_document_set_state (self, state, error);
}
