#include "gesture-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const struct
{
  const char  *name, *hint;
  RcToolHandle handle;
  RcToolSketch sketch;
} TOOLS[RC_N_TOOLS] = {
  [RC_TOOL_CHOOSE] = { "choose", NULL, rc_gesture_move_handle, rc_gesture_move_sketch },
  [RC_TOOL_ROOM]
  = { "room", N_ ("Drag a room from corner to corner. Type its width, Tab, its length, Enter. Escape cancels."),
      rc_gesture_draw_handle, rc_gesture_draw_sketch },
  [RC_TOOL_OUTLINE] = { "outline",
                        N_ ("Click the corners, or type a length and press an arrow key; Home, End, Page Up and Page "
                            "Down go aslant. Enter "
                            "closes the room; Backspace takes a corner back; Escape cancels."),
                        rc_gesture_draw_handle, rc_gesture_draw_sketch },
  [RC_TOOL_MOVE] = { "move", N_ ("Drag a room to another place; its corners take to other rooms' walls."),
                     rc_gesture_move_handle, rc_gesture_move_sketch },
  [RC_TOOL_DOOR] = { "door",
                     N_ ("Click on the wall. Type how far it stands from the wall's start, Tab, from its end, Tab, its "
                         "width. Space hangs the leaf another way."),
                     rc_gesture_opening_handle, rc_gesture_opening_sketch },
  [RC_TOOL_ARCHWAY] = { "archway",
                        N_ ("Click on the wall. Type how far it stands from the wall's start, Tab, from its end, Tab, "
                            "its width."),
                        rc_gesture_opening_handle, rc_gesture_opening_sketch },
  [RC_TOOL_WINDOW] = { "window",
                       N_ ("Click on the wall. Type how far it stands from the wall's start, Tab, from its end, Tab, "
                           "its width."),
                       rc_gesture_opening_handle, rc_gesture_opening_sketch },
  [RC_TOOL_CUTOUT]
  = { "cut-out",
      N_ ("Space says what it is: a hearth, an island, a column. Drag it from corner to corner, a column "
          "from its middle. Type its width, Tab, its length."),
      rc_gesture_cutout_handle, rc_gesture_cutout_sketch },
  [RC_TOOL_CLOSET]
  = { "closet",
      N_ ("Click on the wall that the closet stands behind. Type how far it stands from the wall's start, "
          "Tab, from its end, Tab, its width."),
      rc_gesture_closet_handle, rc_gesture_closet_sketch },
  [RC_TOOL_STAIR]
  = { "stair",
      N_ ("Press where the stair begins and drag the way up; Space turns it a quarter. A stair that stands "
          "here is moved by a drag, turned with Ctrl; Delete takes it off the drawing."),
      rc_gesture_stair_handle, rc_gesture_stair_sketch },
  [RC_TOOL_SPLIT] = { "split", N_ ("Drag a line across a room: it becomes two rooms, open to each other."),
                      rc_gesture_split_handle, rc_gesture_split_sketch },
  [RC_TOOL_MERGE] = { "merge", N_ ("Click on the wall between two rooms: it goes, and they become one."),
                      rc_gesture_merge_handle, rc_gesture_merge_sketch },
  [RC_TOOL_JOIN] = { "join",
                     N_ ("Click on a door, then on the door of another room that is the same one: that room is turned "
                         "and put where the two meet."),
                     rc_gesture_join_handle, rc_gesture_join_sketch },
  [RC_TOOL_PILE]
  = { "pile", N_ ("Drag on a carpeted floor the way its pile shall lean. A click leaves it to the planner."),
      rc_gesture_pile_handle, rc_gesture_pile_sketch },
  [RC_TOOL_SEAM] = { "seam",
                     N_ ("Drag along where a seam of the room shall lie. A click on such a seam leaves it to the "
                         "planner again."),
                     rc_gesture_pile_handle, rc_gesture_pile_sketch },
  [RC_TOOL_ZONE]
  = { "no-seams",
      N_ ("Drag from corner to corner the floor that no seam may lie on. Type its width, Tab, its length. "
          "Delete takes the one under the pointer away."),
      rc_gesture_cutout_handle, rc_gesture_cutout_sketch },
  [RC_TOOL_SCALE]
  = { "scale", N_ ("Click on two points of the plan picture, type how far apart they really are, Enter."),
      rc_gesture_scale_handle, rc_gesture_picture_sketch },
  [RC_TOOL_SLIDE]
  = { "slide", N_ ("Drag the plan picture to where it belongs."), rc_gesture_slide_handle, rc_gesture_picture_sketch },
  [RC_TOOL_SWIVEL]
  = { "swivel",
      N_ ("Click on the place that the plan picture turns about, then drag round it, or type by how many "
          "degrees it turns to the left, Enter."),
      rc_gesture_swivel_handle, rc_gesture_swivel_sketch },
};

const char *
rc_tool_get_name (RcTool tool)
{
  g_return_val_if_fail ((guint)tool < RC_N_TOOLS, "");
  return TOOLS[tool].name;
}

const char *
rc_tool_get_hint (RcTool tool)
{
  g_return_val_if_fail ((guint)tool < RC_N_TOOLS, "");
  return TOOLS[tool].hint ? _ (TOOLS[tool].hint) : "";
}

gboolean
rc_tool_parse (const char *name, RcTool *tool)
{
  for (guint i = 0; i < RC_N_TOOLS; i++)
    if (g_strcmp0 (TOOLS[i].name, name) == 0)
      {
        *tool = i;
        return TRUE;
      }
  return FALSE;
}

void
rc_gesture_result_clear (RcGestureResult *result)
{
  g_clear_pointer (&result->job, rc_job_free);
  g_clear_pointer (&result->fault, g_free);
  *result = (RcGestureResult){ 0 };
}

RcGesture
rc_gesture_start (RcTool tool, const char *room)
{
  return (RcGesture){ .tool = tool, .room = g_intern_string (room), .arrow = -1 };
}

void
rc_gesture_rest (RcGesture *gesture)
{
  RcGesture rest = rc_gesture_start (gesture->tool, gesture->room);

  rest.pointer = gesture->pointer;
  rest.raw = gesture->raw;
  rest.leaf = gesture->leaf;
  rest.stair = gesture->stair;
  rest.held = gesture->held;
  rest.held_index = gesture->held_index;
  *gesture = rest;
}

gboolean
rc_gesture_wants_key (const RcGesture *gesture, const RcScene *scene, const RcGestureEvent *event)
{
  RcTool   tool = gesture->tool;
  gboolean is_drawing = tool == RC_TOOL_ROOM || tool == RC_TOOL_OUTLINE;
  gboolean is_opening
      = tool == RC_TOOL_DOOR || tool == RC_TOOL_ARCHWAY || tool == RC_TOOL_WINDOW || tool == RC_TOOL_CLOSET;
  guint index;

  if (rc_gesture_held_wants_key (gesture, scene, event))
    return TRUE;
  switch (event->kind)
    {
    case RC_EVENT_ESCAPE:
    case RC_EVENT_ENTER:
      return tool != RC_TOOL_CHOOSE;
    case RC_EVENT_LETTER:
      if (event->letter == ' ')
        return tool == RC_TOOL_DOOR || tool == RC_TOOL_CUTOUT;
      return g_unichar_isdigit (event->letter) && (is_drawing || (is_opening && gesture->n_points > 0));
    case RC_EVENT_REMOVE:
      return tool == RC_TOOL_ZONE || tool == RC_TOOL_STAIR
             || rc_gesture_find_grip (gesture, scene, event->at, event->reach, &index) != RC_GRIP_NONE;
    default:
      return FALSE;
    }
}

RcGesture
rc_gesture_handle (RcGesture gesture, const RcScene *scene, const RcGestureEvent *event, RcGestureResult *result)
{
  if (event->kind == RC_EVENT_ESCAPE)
    {
      gesture.held = RC_GRIP_NONE;
      if (gesture.is_active)
        rc_gesture_rest (&gesture);
      else
        {
          const char *stair = gesture.stair;
          gesture = rc_gesture_start (RC_TOOL_CHOOSE, gesture.room);
          gesture.stair = stair;
        }
      return gesture;
    }
  if (TOOLS[gesture.tool].handle)
    TOOLS[gesture.tool].handle (&gesture, scene, event, result);
  return gesture;
}

/* Typed lengths. */

static void
take_letter (RcGesture *gesture, gunichar letter)
{
  char *text = gesture->text[gesture->field];
  char  utf8[7] = { 0 };
  gsize n = g_unichar_to_utf8 (letter, utf8), length = strlen (text);

  if (g_unichar_isprint (letter) && length + n < RC_GESTURE_MAX_TEXT)
    memcpy (text + length, utf8, n + 1);
}

gboolean
rc_gesture_take_span (RcGesture *gesture, const RcGestureEvent *event, guint n_fields)
{
  switch (event->kind)
    {
    case RC_EVENT_MOTION:
      gesture->has_moved = gesture->is_down && rc_point_distance (gesture->raw, gesture->points[0]) > event->reach;
      return FALSE;
    case RC_EVENT_RELEASE:
      gesture->is_down = FALSE;
      return gesture->is_active && gesture->has_moved;
    case RC_EVENT_ENTER:
      return gesture->is_active;
    default:
      if (gesture->is_active)
        rc_gesture_take_key (gesture, event, n_fields);
      return FALSE;
    }
}

gboolean
rc_gesture_take_key (RcGesture *gesture, const RcGestureEvent *event, guint n_fields)
{
  char *text = gesture->text[gesture->field];

  switch (event->kind)
    {
    case RC_EVENT_LETTER:
      take_letter (gesture, event->letter);
      return TRUE;
    case RC_EVENT_NEXT:
      gesture->field = (gesture->field + 1) % n_fields;
      return TRUE;
    case RC_EVENT_RUBOUT:
      if (*text == '\0')
        return FALSE;
      *g_utf8_find_prev_char (text, text + strlen (text)) = '\0';
      return TRUE;
    default:
      return FALSE;
    }
}

gboolean
rc_gesture_is_typed (const RcGesture *gesture, guint field)
{
  return gesture->text[field][0] != '\0';
}

gboolean
rc_gesture_parse_degrees (const RcGesture *gesture, double *degrees)
{
  g_autofree char *text = g_strdelimit (g_strdup (gesture->text[0]), ",", '.');
  char            *end = NULL;

  *degrees = g_ascii_strtod (text, &end);
  return end != text && (*end == '\0' || g_str_equal (end, "°")) && fabs (*degrees) <= 360;
}

char *
rc_gesture_dup_degrees (const RcGesture *gesture, double degrees)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  if (rc_gesture_is_typed (gesture, 0))
    return g_strdup_printf ("%s|", gesture->text[0]);
  g_ascii_formatd (number, sizeof number, "%.1f", degrees);
  return g_strdup_printf ("%s°", number);
}

gboolean
rc_gesture_get_typed (const RcGesture *gesture, const RcScene *scene, guint field, RcLength *length)
{
  RcLength typed = 0;

  if (!rc_gesture_is_typed (gesture, field)
      || !rc_length_parse (gesture->text[field], rc_job_get_bare_unit (scene->job), &typed, NULL) || typed <= 0)
    return FALSE;
  *length = typed;
  return TRUE;
}

gboolean
rc_gesture_has_bad_text (const RcGesture *gesture, const RcScene *scene, char **fault)
{
  for (guint i = 0; i < RC_GESTURE_FIELDS; i++)
    {
      RcLength typed = 0;
      g_autoptr (GError) error = NULL;
      if (!rc_gesture_is_typed (gesture, i)
          || rc_length_parse (gesture->text[i], rc_job_get_bare_unit (scene->job), &typed, &error))
        continue;
      *fault = g_strdup (error->message);
      return TRUE;
    }
  return FALSE;
}

RcPoint
rc_gesture_get_far_corner (const RcGesture *gesture, const RcScene *scene)
{
  RcPoint  from = gesture->points[0], to = gesture->pointer;
  RcLength typed = 0;

  if (rc_gesture_get_typed (gesture, scene, 0, &typed))
    to.x = from.x + (gesture->raw.x < from.x ? -typed : typed);
  if (rc_gesture_get_typed (gesture, scene, 1, &typed))
    to.y = from.y + (gesture->raw.y < from.y ? -typed : typed);
  return to;
}

RcJob *
rc_gesture_dup_job (const RcScene *scene)
{
  return rc_job_copy (scene->job);
}

RcMeasure *
rc_gesture_get_measure (const RcScene *scene, RcJob *job)
{
  return rc_job_get_measure (job, scene->measure->id);
}

/* Sketches. */

static RcSketch *
sketch_new (void)
{
  RcSketch *sketch = g_new0 (RcSketch, 1);

  sketch->rings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  sketch->lines = rc_ring_new ();
  sketch->guides = rc_ring_new ();
  sketch->lengths = g_array_new (FALSE, FALSE, sizeof (RcSketchLength));
  return sketch;
}

void
rc_sketch_free (RcSketch *sketch)
{
  if (sketch == NULL)
    return;
  g_ptr_array_unref (sketch->rings);
  g_array_unref (sketch->lines);
  g_array_unref (sketch->guides);
  g_array_unref (sketch->lengths);
  g_free (sketch->word);
  g_free (sketch);
}

RcSketch *
rc_gesture_sketch (const RcGesture *gesture, const RcScene *scene)
{
  RcSketch *sketch = sketch_new ();

  if (TOOLS[gesture->tool].sketch)
    TOOLS[gesture->tool].sketch (gesture, scene, sketch);
  return sketch;
}

RcRing *
rc_sketch_add_ring (RcSketch *sketch)
{
  RcRing *ring = rc_ring_new ();
  g_ptr_array_add (sketch->rings, ring);
  return ring;
}

void
rc_sketch_add_line (GArray *lines, RcPoint from, RcPoint to)
{
  g_array_append_val (lines, from);
  g_array_append_val (lines, to);
}

static gboolean
is_lined_up (RcSnapKind kind)
{
  return kind == RC_SNAP_WALL || kind == RC_SNAP_BEHIND || kind == RC_SNAP_CORNER;
}

void
rc_sketch_add_guides (RcSketch *sketch, const RcGesture *gesture)
{
  const RcSnap *snap = &gesture->snap;

  if (is_lined_up (snap->x_kind))
    rc_sketch_add_line (sketch->guides, (RcPoint){ snap->point.x, snap->x_from.y }, snap->point);
  if (is_lined_up (snap->y_kind))
    rc_sketch_add_line (sketch->guides, (RcPoint){ snap->y_from.x, snap->point.y }, snap->point);
}

void
rc_sketch_add_length (RcSketch *sketch, const RcGesture *gesture, const RcScene *scene, RcPoint from, RcPoint to,
                      RcLength value, int field)
{
  RcLength       typed = 0;
  gboolean       is_typed = field >= 0 && rc_gesture_is_typed (gesture, (guint)field);
  RcSketchLength length = { .from = from,
                            .to = to,
                            .value = value,
                            .field = field,
                            .text = is_typed ? gesture->text[field] : NULL,
                            .is_active = field >= 0 && gesture->field == (guint)field,
                            .is_bad = is_typed && !rc_gesture_get_typed (gesture, scene, (guint)field, &typed) };
  g_array_append_val (sketch->lengths, length);
}

void
rc_sketch_add_rectangle (RcSketch *sketch, const RcGesture *gesture, const RcScene *scene)
{
  RcPoint from = gesture->points[0], to = rc_gesture_get_far_corner (gesture, scene);
  RcPoint points[] = { from, { from.x, to.y }, to, { to.x, from.y } };
  RcRing *ring = rc_sketch_add_ring (sketch);

  g_array_append_vals (ring, points, G_N_ELEMENTS (points));
  rc_sketch_add_length (sketch, gesture, scene, points[1], to, ABS (to.x - from.x), 0);
  rc_sketch_add_length (sketch, gesture, scene, to, points[3], ABS (to.y - from.y), 1);
}
