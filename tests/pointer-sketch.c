#include "pointer-sketch.h"

#include "bearing.h"
#include "document-things.h"
#include "room-edit.h"
#include "sketch-openings.h"

#define IN RC_TICKS_PER_INCH

GtkWidget *
sketch_find (Sketcher *user, const char *name)
{
  return pointer_hand_find (GTK_WIDGET (user->hand.desk.window), name);
}

void
sketch_enter (Sketcher *user, const char *entry, const char *text)
{
  pointer_hand_enter (&user->hand, sketch_find (user, entry), text);
}

void
sketch_pick (Sketcher *user, const char *drop_down, const char *label)
{
  pointer_hand_pick (&user->hand, sketch_find (user, drop_down), label);
}

void
sketch_click_label (Sketcher *user, GtkWidget *root, const char *text)
{
  GtkWidget *label = pointer_hand_find_label (root, text);

  g_assert_nonnull (label);
  pointer_hand_click_widget (&user->hand, label);
}

/* A tool stays in hand until another is taken; F3 goes back from the panel to the floor, where lengths are typed. */
void
sketch_take_tool (Sketcher *user, const char *words)
{
  GtkWidget *floor = GTK_WIDGET (pointer_hand_get_floor (&user->hand));

  if (g_strcmp0 (user->tool, words) != 0)
    pointer_hand_pick (&user->hand, sketch_find (user, "draw_button"), words);
  else if (!gtk_widget_has_focus (floor))
    pointer_hand_key (&user->hand, "F3");
  user->tool = words;
}

/* Tells what the hand did since the last time. */
void
sketch_count (Sketcher *user, const char *what)
{
  PointerHand *hand = &user->hand;

  g_test_message ("%u clicks and drags, %u keys, %u turns of the wheel: %s", hand->n_clicks, hand->n_keys,
                  hand->n_turns, what);
  user->n_clicks += hand->n_clicks;
  user->n_keys += hand->n_keys;
  user->n_turns += hand->n_turns;
  hand->n_clicks = hand->n_keys = hand->n_turns = 0;
}

/* As it is typed: 12'6 1/2, bare inches below a foot, millimetres where inches are not whole parts. */
static char *
dup_typed (RcLength length)
{
  static const RcLengthStyle STYLE = { RC_LENGTH_UNIT_FOOT_INCH, 32, 0, TRUE };

  if (length % (IN / 32) != 0)
    return g_strdup_printf ("%dmm", (int)(length / RC_TICKS_PER_MM));
  g_autofree char *written = rc_length_format (length, &STYLE);
  g_autoptr (GString) typed = g_string_new (written);
  g_string_replace (typed, "\"", "", 0);
  g_string_replace (typed, "' ", "'", 0);
  return g_string_free (g_steal_pointer (&typed), FALSE);
}

void
sketch_type_length (Sketcher *user, RcLength length)
{
  g_autofree char *text = dup_typed (length);
  pointer_hand_type (&user->hand, text);
}

void
sketch_enter_length (Sketcher *user, GtkWidget *entry, RcLength length)
{
  g_autofree char *text = dup_typed (length);
  pointer_hand_enter (&user->hand, entry, text);
}

/* Rooms. */

RcRoom *
sketch_seek_drawn (Sketcher *user, const char *name)
{
  const RcMeasure *measure = pointer_hand_get_measure (&user->hand);

  for (guint i = 0; i < measure->rooms->len; i++)
    if (g_strcmp0 (((RcRoom *)measure->rooms->pdata[i])->name, name) == 0)
      return measure->rooms->pdata[i];
  return NULL;
}

RcRoom *
sketch_find_drawn (Sketcher *user, const char *name)
{
  RcRoom *room = sketch_seek_drawn (user, name);

  if (room == NULL)
    g_test_message ("no room is called %s", name);
  g_assert_nonnull (room);
  return room;
}

/* Where the corner of least x and y of a room on the sketch lies, and of the same room as drawn. */
static RcBox
get_sketched_box (Sketcher *user, const RcRoom *room)
{
  const RcPlacedRoom *placed = rc_house_find_room (user->house, room->id);
  g_autoptr (GArray) corners = rc_room_compute_corners (room);
  RcBox box = rc_ring_compute_box (corners);

  return (RcBox){ placed->at.x + box.x0, placed->at.y + box.y0, placed->at.x + box.x1, placed->at.y + box.y1 };
}

const RcSceneRoom *
sketch_find_seen (const RcScene *scene, Sketcher *user, const RcRoom *room)
{
  const RcSceneRoom *seen = rc_scene_find_room (scene, sketch_find_drawn (user, room->name)->id);

  g_assert_nonnull (seen);
  return seen;
}

gboolean
sketch_is_square (const RcRoom *room)
{
  static const double WAYS[] = { 90, 0, 270, 180 };

  if (room->walls->len != G_N_ELEMENTS (WAYS))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (WAYS); i++)
    if (g_array_index (room->walls, RcWall, i).bearing_degrees != WAYS[i])
      return FALSE;
  return TRUE;
}

/* A room drawn already that an opening leads to: the new one is drawn beside it. */
static const RcRoom *
find_neighbour (Sketcher *user, const RcRoom *room)
{
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (room->openings, i);
      const RcRoom    *other
          = opening->to_room ? rc_measure_find_room ((RcMeasure *)user->sketch, opening->to_room) : NULL;
      if (other && sketch_seek_drawn (user, other->name))
        return other;
    }
  return NULL;
}

/* How far what is drawn lies from the sketch, at a neighbour. */
static RcPoint
get_shift (Sketcher *user, const RcRoom *neighbour)
{
  g_autoptr (RcScene) scene = rc_document_new_scene (pointer_hand_get_document (&user->hand), 0);

  if (neighbour == NULL)
    return (RcPoint){ 0, 0 };
  RcBox drawn = rc_ring_compute_box (sketch_find_seen (scene, user, neighbour)->corners);
  RcBox sketched = get_sketched_box (user, neighbour);
  return (RcPoint){ drawn.x0 - sketched.x0, drawn.y0 - sketched.y0 };
}

/* From the corner nearest to the neighbour: it takes to the neighbour's walls. */
static void
draw_rectangle (Sketcher *user, const RcRoom *room)
{
  const RcRoom *neighbour = find_neighbour (user, room);
  RcBox         box = get_sketched_box (user, room), next = neighbour ? get_sketched_box (user, neighbour) : box;
  RcPoint       shift = get_shift (user, neighbour);
  gboolean      from_right = ABS (box.x1 - next.x0) < ABS (box.x0 - next.x1) && neighbour;
  gboolean from_top = ABS (box.y1 - next.y0) < ABS (box.y0 - next.y1) && ABS (box.y1 - next.y0) < 12 * IN && neighbour;
  RcPoint  from = { from_right ? box.x1 : box.x0, from_top ? box.y1 : box.y0 };

  sketch_take_tool (user, "Room by two corners");
  pointer_hand_click (&user->hand, from.x + shift.x, from.y + shift.y);
  pointer_hand_point (&user->hand, from.x + shift.x + (from_right ? -3 : 3) * 12 * IN,
                      from.y + shift.y + (from_top ? -3 : 3) * 12 * IN);
  sketch_type_length (user, g_array_index (room->walls, RcWall, 0).length);
  pointer_hand_key (&user->hand, "Tab");
  sketch_type_length (user, g_array_index (room->walls, RcWall, 1).length);
  pointer_hand_key (&user->hand, "Return");
}

/* Corner by corner: the pointer gives the way, the length is typed; Return closes. */
static void
draw_outline (Sketcher *user, const RcRoom *room)
{
  RcPoint             shift = get_shift (user, find_neighbour (user, room));
  const RcPlacedRoom *placed = rc_house_find_room (user->house, room->id);

  sketch_take_tool (user, "Room by its outline");
  for (guint i = 0; i < room->walls->len; i++)
    {
      RcPoint from, to;
      g_assert_true (rc_room_get_wall_ends (room, i, &from, &to));
      RcPoint at = { placed->at.x + shift.x + from.x, placed->at.y + shift.y + from.y };
      RcPoint way
          = { CLAMP (to.x - from.x, -4 * 12 * IN, 4 * 12 * IN), CLAMP (to.y - from.y, -4 * 12 * IN, 4 * 12 * IN) };
      if (i == 0)
        pointer_hand_click (&user->hand, at.x, at.y);
      if (i + 1 == room->walls->len)
        break;
      pointer_hand_point (&user->hand, at.x + way.x, at.y + way.y);
      sketch_type_length (user, g_array_index (room->walls, RcWall, i).length);
      pointer_hand_key (&user->hand, "Return");
    }
  pointer_hand_key (&user->hand, "Return");
}

guint
sketch_get_drawn_wall (const RcRoom *room, guint wall)
{
  return sketch_is_square (room) ? 3 - wall : wall;
}

static GtkWidget *
find_wall_entry (Sketcher *user, int column, guint wall)
{
  return gtk_grid_get_child_at (GTK_GRID (sketch_find (user, "grid")), column, (int)wall + 1);
}

/* Walls that drawing made otherwise than measured are typed, bows and what is spread besides. */
static void
mend_walls (Sketcher *user, const RcRoom *room)
{
  for (guint i = 0; i < room->walls->len; i++)
    {
      const RcWall *wanted = &g_array_index (room->walls, RcWall, i);
      guint         wall = sketch_get_drawn_wall (room, i);
      g_autoptr (RcRoom) drawn = rc_room_copy (sketch_find_drawn (user, room->name));
      g_autofree char *way = rc_bearing_format (wanted->bearing_degrees);
      rc_room_edit_make_walls (drawn);
      const RcWall *got = &g_array_index (drawn->walls, RcWall, wall);
      if (!sketch_is_square (room) && got->bearing_degrees != wanted->bearing_degrees)
        pointer_hand_enter (&user->hand, find_wall_entry (user, 1, wall), way);
      if (got->length != wanted->length)
        sketch_enter_length (user, find_wall_entry (user, 2, wall), wanted->length);
      if (got->bow != wanted->bow)
        sketch_enter_length (user, find_wall_entry (user, 3, wall), wanted->bow);
    }
  if (room->spread)
    pointer_hand_click_widget (&user->hand, sketch_find (user, "spread_check"));
}

/* In at the corner of the hearth next to the wall it stands at; "Space" says what it is. */
static void
draw_hearth (Sketcher *user, const RcRoom *room, const RcCutout *cutout)
{
  RcBox   box = get_sketched_box (user, room), at = rc_ring_compute_box (cutout->points);
  RcPoint shift = get_shift (user, room);
  RcPoint from = { box.x0 + shift.x + at.x0, box.y0 + shift.y + at.y0 };

  sketch_take_tool (user, "Cut-out");
  pointer_hand_point (&user->hand, from.x + 2 * IN, from.y);
  pointer_hand_key (&user->hand, "space");
  pointer_hand_click (&user->hand, from.x + 2 * IN, from.y);
  pointer_hand_point (&user->hand, from.x + 12 * IN, from.y + 36 * IN);
  sketch_type_length (user, at.x1 - at.x0);
  pointer_hand_key (&user->hand, "Tab");
  sketch_type_length (user, at.y1 - at.y0);
  pointer_hand_key (&user->hand, "Return");
}

typedef struct
{
  Sketcher *user;
  guint     n_rooms;
} SoughtCount;

static gboolean
is_room_drawn (gpointer data)
{
  const SoughtCount *sought = data;
  return pointer_hand_get_measure (&sought->user->hand)->rooms->len == sought->n_rooms;
}

typedef struct
{
  Sketcher   *user;
  const char *name;
} SoughtRoom;

static gboolean
is_named (gpointer data)
{
  const SoughtRoom *sought = data;
  return sketch_seek_drawn (sought->user, sought->name) != NULL;
}

void
sketch_draw_room (Sketcher *user, const RcRoom *room)
{
  SoughtCount drawn = { user, pointer_hand_get_measure (&user->hand)->rooms->len + 1 };
  SoughtRoom  named = { user, room->name };

  if (sketch_is_square (room))
    draw_rectangle (user, room);
  else
    draw_outline (user, room);
  pointer_hand_wait (is_room_drawn, &drawn);
  sketch_enter (user, "name_entry", room->name);
  pointer_hand_wait (is_named, &named);
  mend_walls (user, room);
  for (guint i = 0; i < room->cutouts->len; i++)
    draw_hearth (user, room, g_ptr_array_index (room->cutouts, i));
  sketch_put_openings (user, room);
  sketch_count (user, room->name);
}
