#include "floor-hand.h"

#include <glib/gi18n-lib.h>

#include "document-things.h"
#include "floor-picture.h"
#include "floor-things.h"
#include "gesture-drawing.h"
#include "gesture-room.h"
#include "viewport.h"

#define REACH_PX     9.0
#define EMPTY_WIDTH  (15 * RC_TICKS_PER_M)
#define EMPTY_HEIGHT (10 * RC_TICKS_PER_M)

struct _RcFloorHand
{
  GtkWidget      *floor_view; /* borrowed */
  RcDocument     *document;   /* borrowed from the view */
  int             floor;
  RcFloorPicture *picture;
  RcGesture       gesture;
  RcScene        *scene; /* of the job as it is; NULL: to be made */
  RcGrip          grip;  /* under the pointer */
  guint           grip_index;
  RcPoint         pointed; /* where the pointer was last, and how near is near there */
  RcLength        reach;
};

RcFloorHand *
rc_floor_hand_new (GtkWidget *floor)
{
  RcFloorHand *hand = g_new0 (RcFloorHand, 1);

  hand->floor_view = floor;
  hand->picture = rc_floor_picture_new (floor);
  hand->gesture = rc_gesture_start (RC_TOOL_CHOOSE, NULL);
  return hand;
}

void
rc_floor_hand_free (RcFloorHand *hand)
{
  rc_floor_hand_forget_scene (hand);
  rc_floor_picture_free (hand->picture);
  g_free (hand);
}

static void
redraw (RcFloorHand *hand)
{
  gtk_widget_queue_draw (hand->floor_view);
}

static const RcScene *
get_scene (RcFloorHand *hand)
{
  if (hand->scene || hand->document == NULL)
    return hand->scene;
  hand->scene = rc_document_new_scene (hand->document, hand->floor);
  return hand->scene;
}

static const char *
get_chosen_room (RcFloorHand *hand)
{
  RcChoice choice = hand->document ? rc_document_get_choice (hand->document) : (RcChoice){ 0 };
  return choice.thing == RC_THING_ROOM ? choice.id : NULL;
}

static const char *
get_chosen_stair (RcFloorHand *hand)
{
  RcChoice choice = hand->document ? rc_document_get_choice (hand->document) : (RcChoice){ 0 };
  return choice.thing == RC_THING_STAIR ? choice.id : NULL;
}

/* At rest with what is chosen. */
static RcGesture
start_gesture (RcFloorHand *hand, RcTool tool)
{
  RcGesture fresh = rc_gesture_start (tool, get_chosen_room (hand));

  fresh.stair = get_chosen_stair (hand);
  fresh.pointer = hand->gesture.pointer;
  return fresh;
}

static gboolean
is_of_choice (RcFloorHand *hand)
{
  return hand->gesture.room == get_chosen_room (hand) && hand->gesture.stair == get_chosen_stair (hand);
}

void
rc_floor_hand_forget_scene (RcFloorHand *hand)
{
  g_clear_pointer (&hand->scene, rc_scene_free);
}

void
rc_floor_hand_forget (RcFloorHand *hand)
{
  rc_floor_hand_forget_scene (hand);
  rc_floor_picture_follow (hand->picture);
  hand->grip = RC_GRIP_NONE;
  if (hand->gesture.is_active || !is_of_choice (hand))
    {
      guint leaf = hand->gesture.leaf;
      hand->gesture = start_gesture (hand, hand->gesture.tool);
      hand->gesture.leaf = leaf;
    }
  redraw (hand);
}

void
rc_floor_hand_follow_choice (RcFloorHand *hand)
{
  if (!hand->gesture.is_active && !is_of_choice (hand))
    rc_floor_hand_forget (hand);
}

void
rc_floor_hand_set_document (RcFloorHand *hand, RcDocument *document)
{
  hand->document = document;
  rc_floor_picture_set_document (hand->picture, document);
  rc_floor_hand_forget (hand);
}

void
rc_floor_hand_set_floor (RcFloorHand *hand, int floor)
{
  hand->floor = floor;
  rc_floor_hand_forget (hand);
}

RcTool
rc_floor_hand_get_tool (RcFloorHand *hand)
{
  return hand->gesture.tool;
}

/* The tool is another: the bench says what it does, and the pointer shows it. */
static void
tell_tool (RcFloorHand *hand)
{
  gtk_widget_set_cursor_from_name (hand->floor_view, hand->gesture.tool == RC_TOOL_CHOOSE ? NULL : "crosshair");
  gtk_widget_activate_action (hand->floor_view, "bench.tool-changed", NULL);
  redraw (hand);
}

void
rc_floor_hand_set_tool (RcFloorHand *hand, RcTool tool)
{
  hand->gesture = start_gesture (hand, tool);
  hand->grip = RC_GRIP_NONE;
  tell_tool (hand);
}

static void
tell (RcFloorHand *hand, const char *text)
{
  gtk_widget_activate_action (hand->floor_view, "win.tell", "s", text);
}

static void
choose (RcFloorHand *hand, const char *room, guint wall)
{
  RcChoice choice = rc_choice_of_thing (RC_THING_ROOM, room);

  choice.wall = wall;
  rc_document_choose (hand->document, choice);
}

/* Saves what the gesture made. Choosing comes after, when the job has it. */
static void
take_result (RcFloorHand *hand, RcGestureResult *result)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *key
      = result->is_nudge ? g_strdup_printf ("nudge %d %u", hand->gesture.held, hand->gesture.held_index) : NULL;

  if (result->fault)
    tell (hand, result->fault);
  if (result->job && rc_document_commit (hand->document, g_steal_pointer (&result->job), result->step, key, &error))
    {
      if (result->stair)
        rc_document_choose (hand->document, rc_choice_of_thing (RC_THING_STAIR, result->stair));
      else if (result->room)
        choose (hand, result->room, result->wall);
    }
  if (error)
    tell (hand, error->message);
}

/* TRUE when the event was a click that picks. */
static gboolean
handle (RcFloorHand *hand, const RcGestureEvent *event)
{
  RcGestureResult result = { 0 };
  const RcScene  *scene = get_scene (hand);
  RcTool          tool = hand->gesture.tool;

  if (scene == NULL)
    return FALSE;
  RcChoice choice = rc_document_get_choice (hand->document);
  hand->gesture.area = choice.thing == RC_THING_AREA ? choice.id : NULL;
  hand->gesture = rc_gesture_handle (hand->gesture, scene, event, &result);
  gboolean is_click = result.is_click && result.room == NULL;
  if (result.is_click && result.room)
    choose (hand, result.room, result.wall);
  take_result (hand, &result);
  if (result.picture.kind != RC_PICTURE_KEEP)
    rc_floor_picture_change (hand->picture, hand->floor, &result.picture);
  rc_gesture_result_clear (&result);
  if (hand->gesture.tool != tool)
    {
      hand->gesture = start_gesture (hand, hand->gesture.tool);
      tell_tool (hand);
    }
  redraw (hand);
  return is_click;
}

void
rc_floor_hand_mirror (RcFloorHand *hand)
{
  const RcScene *scene = get_scene (hand);

  if (scene == NULL)
    return;
  RcGestureResult result
      = { .job = rc_gesture_room_mirror (scene, get_chosen_room (hand)), .step = _ ("Mirror a room") };
  take_result (hand, &result);
}

void
rc_floor_hand_turn (RcFloorHand *hand, double degrees)
{
  const RcScene *scene = get_scene (hand);

  if (scene == NULL)
    return;
  RcGestureResult result
      = { .job = rc_gesture_room_turn (scene, get_chosen_room (hand), degrees), .step = _ ("Turn a room") };
  take_result (hand, &result);
}

static RcGestureEvent
make_event (RcEventKind kind, const RcView *view, double x, double y, GdkModifierType state)
{
  return (RcGestureEvent){ .kind = kind,
                           .at = rc_viewport_to_house (*view, x, y),
                           .reach = (RcLength)(REACH_PX / view->scale),
                           .is_free = (state & GDK_SHIFT_MASK) != 0,
                           .is_bow = (state & GDK_CONTROL_MASK) != 0 };
}

static void
find_grip (RcFloorHand *hand, const RcGestureEvent *event)
{
  guint  index = 0;
  RcGrip grip = get_scene (hand)
                    ? rc_gesture_find_grip (&hand->gesture, get_scene (hand), event->at, event->reach, &index)
                    : RC_GRIP_NONE;

  if (grip == hand->grip && index == hand->grip_index)
    return;
  hand->grip = grip;
  hand->grip_index = index;
  gtk_widget_set_cursor_from_name (hand->floor_view, grip != RC_GRIP_NONE ? "move" : NULL);
  redraw (hand);
}

gboolean
rc_floor_hand_press (RcFloorHand *hand, const RcView *view, double x, double y, GdkModifierType state)
{
  RcGestureEvent event = make_event (RC_EVENT_PRESS, view, x, y, state);

  if (hand->gesture.tool == RC_TOOL_CHOOSE)
    {
      find_grip (hand, &event);
      if (hand->grip == RC_GRIP_NONE)
        return FALSE;
    }
  handle (hand, &event);
  return TRUE;
}

void
rc_floor_hand_move (RcFloorHand *hand, const RcView *view, double x, double y, GdkModifierType state)
{
  RcGestureEvent event = make_event (RC_EVENT_MOTION, view, x, y, state);

  if (hand->document == NULL)
    return;
  hand->pointed = event.at;
  hand->reach = event.reach;
  if (hand->gesture.tool == RC_TOOL_CHOOSE && !hand->gesture.is_active)
    find_grip (hand, &event);
  else
    handle (hand, &event);
}

gboolean
rc_floor_hand_release (RcFloorHand *hand, const RcView *view, double x, double y, GdkModifierType state)
{
  RcGestureEvent event = make_event (RC_EVENT_RELEASE, view, x, y, state);
  return handle (hand, &event);
}

static gboolean
make_key_event (guint keyval, GdkModifierType state, RcGestureEvent *event)
{
  static const struct
  {
    guint       keyval, keypad;
    RcEventKind kind;
    int         arrow;
  } KEYS[] = { { GDK_KEY_Escape, GDK_KEY_Escape, RC_EVENT_ESCAPE, 0 },
               { GDK_KEY_Return, GDK_KEY_KP_Enter, RC_EVENT_ENTER, 0 },
               { GDK_KEY_BackSpace, GDK_KEY_BackSpace, RC_EVENT_RUBOUT, 0 },
               { GDK_KEY_Delete, GDK_KEY_KP_Delete, RC_EVENT_REMOVE, 0 },
               { GDK_KEY_Tab, GDK_KEY_ISO_Left_Tab, RC_EVENT_NEXT, 0 },
               { GDK_KEY_Right, GDK_KEY_KP_Right, RC_EVENT_ARROW, 0 },
               { GDK_KEY_Up, GDK_KEY_KP_Up, RC_EVENT_ARROW, 1 },
               { GDK_KEY_Left, GDK_KEY_KP_Left, RC_EVENT_ARROW, 2 },
               { GDK_KEY_Down, GDK_KEY_KP_Down, RC_EVENT_ARROW, 3 },
               { GDK_KEY_Page_Up, GDK_KEY_KP_Page_Up, RC_EVENT_ARROW, 4 },
               { GDK_KEY_Home, GDK_KEY_KP_Home, RC_EVENT_ARROW, 5 },
               { GDK_KEY_End, GDK_KEY_KP_End, RC_EVENT_ARROW, 6 },
               { GDK_KEY_Page_Down, GDK_KEY_KP_Page_Down, RC_EVENT_ARROW, 7 } };

  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (KEYS); i++)
    if (keyval == KEYS[i].keyval || keyval == KEYS[i].keypad)
      {
        event->kind = KEYS[i].kind;
        event->arrow = KEYS[i].arrow;
        event->is_free = (state & GDK_SHIFT_MASK) != 0;
        return TRUE;
      }
  event->kind = RC_EVENT_LETTER;
  event->letter = gdk_keyval_to_unicode (keyval);
  return event->letter != 0 && g_unichar_isprint (event->letter);
}

gboolean
rc_floor_hand_key (RcFloorHand *hand, guint keyval, GdkModifierType state)
{
  RcGestureEvent event = { 0 };

  if (hand->document == NULL || !make_key_event (keyval, state, &event))
    return FALSE;
  event.at = hand->pointed;
  event.reach = hand->reach;
  if (!hand->gesture.is_active
      && (get_scene (hand) == NULL || !rc_gesture_wants_key (&hand->gesture, get_scene (hand), &event)))
    return FALSE;
  handle (hand, &event);
  return TRUE;
}

void
rc_floor_hand_draw_rooms (RcFloorHand *hand, const RcPalette *palette, double font_size, const RcView *view,
                          cairo_t *cr)
{
  const RcScene *scene = get_scene (hand);
  if (scene)
    rc_gesture_drawing_draw_rooms (scene, palette, font_size, view, cr);
}

static RcPoint
get_middle_of_view (RcFloorHand *hand, const RcView *view)
{
  return rc_viewport_to_house (*view, gtk_widget_get_width (hand->floor_view) / 2.0,
                               gtk_widget_get_height (hand->floor_view) / 2.0);
}

void
rc_floor_hand_add_picture (RcFloorHand *hand, GFile *file)
{
  if (hand->document)
    rc_floor_picture_add (hand->picture, hand->floor, file, rc_floor_hand_get_box (hand));
}

void
rc_floor_hand_change_picture (RcFloorHand *hand, RcHandPicture change, const RcView *view)
{
  if (hand->document == NULL)
    return;
  if (!rc_floor_picture_has (hand->picture, hand->floor))
    {
      tell (hand, _ ("This storey has no plan picture yet."));
      return;
    }
  switch (change)
    {
    case RC_HAND_PICTURE_LIGHTEN:
      rc_floor_picture_lighten (hand->picture, hand->floor);
      break;
    case RC_HAND_PICTURE_TURN:
      rc_floor_picture_turn (hand->picture, hand->floor, get_middle_of_view (hand, view), 90000);
      break;
    case RC_HAND_PICTURE_PAGE:
      rc_floor_picture_turn_page (hand->picture, hand->floor, rc_floor_hand_get_box (hand));
      break;
    case RC_HAND_PICTURE_REMOVE:
    default:
      rc_floor_picture_remove (hand->picture, hand->floor);
    }
}

void
rc_floor_hand_draw_picture (RcFloorHand *hand, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  rc_floor_picture_draw (hand->picture, hand->floor, palette->paper[0] < 0.5, view, cr);
}

void
rc_floor_hand_draw_below (RcFloorHand *hand, const RcPalette *palette, const RcView *view, cairo_t *cr)
{
  if (get_scene (hand))
    rc_gesture_drawing_draw_below (get_scene (hand), palette, view, cr);
}

RcBox
rc_floor_hand_get_box (RcFloorHand *hand)
{
  const RcScene   *scene = get_scene (hand);
  RcBox            box = { 0, 0, EMPTY_WIDTH, EMPTY_HEIGHT };
  const GPtrArray *rooms = scene == NULL ? NULL : scene->rooms->len > 0 ? scene->rooms : scene->below;
  RcBox            stairs;

  for (guint i = 0; rooms && i < rooms->len; i++)
    {
      const RcSceneRoom *room = g_ptr_array_index (rooms, i);
      RcBox              one = rc_ring_compute_box (room->corners);
      box = i == 0 ? one
                   : (RcBox){ MIN (box.x0, one.x0), MIN (box.y0, one.y0), MAX (box.x1, one.x1), MAX (box.y1, one.y1) };
    }
  if (scene && rc_floor_compute_stair_box (scene->measure, hand->floor, &stairs))
    box = (RcBox){ MIN (box.x0, stairs.x0), MIN (box.y0, stairs.y0), MAX (box.x1, stairs.x1), MAX (box.y1, stairs.y1) };
  return box;
}

void
rc_floor_hand_draw (RcFloorHand *hand, const RcPalette *palette, double font_size, const RcView *view, cairo_t *cr)
{
  const RcScene *scene = get_scene (hand);

  if (scene == NULL)
    return;
  const RcSceneRoom *room = rc_scene_find_room (scene, hand->gesture.room);
  if (room && hand->gesture.tool == RC_TOOL_CHOOSE && !hand->gesture.is_active)
    {
      gboolean is_pointed = hand->grip != RC_GRIP_NONE;
      rc_gesture_drawing_draw_grips (room, is_pointed ? hand->grip : hand->gesture.held,
                                     is_pointed ? hand->grip_index : hand->gesture.held_index,
                                     (RcLength)(REACH_PX / view->scale), palette, view, cr);
    }
  /* A plan that is up to date shows them itself. */
  if (!rc_document_is_planned (hand->document))
    rc_gesture_drawing_draw_zones (scene, palette, font_size, view, cr);
  g_autoptr (RcSketch) sketch = rc_gesture_sketch (&hand->gesture, scene);
  rc_gesture_drawing_draw (sketch, scene->job, palette, font_size, view, cr);
}
