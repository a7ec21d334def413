#include "pointer-sketch.h"

#include "bearing.h"
#include "document-things.h"
#include "room-edit.h"

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

static void
type_length (Sketcher *user, RcLength length)
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

/* NULL while no room has that name. */
static RcRoom *
seek_drawn (Sketcher *user, const char *name)
{
  const RcMeasure *measure = pointer_hand_get_measure (&user->hand);

  for (guint i = 0; i < measure->rooms->len; i++)
    if (g_strcmp0 (((RcRoom *)measure->rooms->pdata[i])->name, name) == 0)
      return measure->rooms->pdata[i];
  return NULL;
}

static RcRoom *
find_drawn (Sketcher *user, const char *name)
{
  RcRoom *room = seek_drawn (user, name);

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
  const RcSceneRoom *seen = rc_scene_find_room (scene, find_drawn (user, room->name)->id);

  g_assert_nonnull (seen);
  return seen;
}

static gboolean
is_square (const RcRoom *room)
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
      if (other && seek_drawn (user, other->name))
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
  type_length (user, g_array_index (room->walls, RcWall, 0).length);
  pointer_hand_key (&user->hand, "Tab");
  type_length (user, g_array_index (room->walls, RcWall, 1).length);
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
      type_length (user, g_array_index (room->walls, RcWall, i).length);
      pointer_hand_key (&user->hand, "Return");
    }
  pointer_hand_key (&user->hand, "Return");
}

/* A wall of the sketch as drawn: a rectangle is walked the other way round, from its west side. */
static guint
get_drawn_wall (const RcRoom *room, guint wall)
{
  return is_square (room) ? 3 - wall : wall;
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
      guint         wall = get_drawn_wall (room, i);
      g_autoptr (RcRoom) drawn = rc_room_copy (find_drawn (user, room->name));
      g_autofree char *way = rc_bearing_format (wanted->bearing_degrees);
      rc_room_edit_make_walls (drawn);
      const RcWall *got = &g_array_index (drawn->walls, RcWall, wall);
      if (!is_square (room) && got->bearing_degrees != wanted->bearing_degrees)
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
  type_length (user, at.x1 - at.x0);
  pointer_hand_key (&user->hand, "Tab");
  type_length (user, at.y1 - at.y0);
  pointer_hand_key (&user->hand, "Return");
}

/* Openings. */

static const char *
get_tool_of (RcOpeningKind kind)
{
  return kind == RC_OPENING_DOOR ? "Door" : kind == RC_OPENING_ARCHWAY ? "Archway" : "Window";
}

/* Where an opening of the sketch stands in the wall as drawn. */
static RcLength
get_offset (const RcRoom *room, const RcOpening *opening)
{
  RcLength length = g_array_index (room->walls, RcWall, opening->wall).length;

  return is_square (room) ? length - opening->offset - opening->width : opening->offset;
}

/* The drawn room's opening that is nearest to where the sketch has it; NULL when none of its kind is in that wall. */
static RcOpening *
seek_opening (Sketcher *user, const RcRoom *room, const RcOpening *wanted)
{
  const RcRoom *drawn = find_drawn (user, room->name);
  RcLength      offset = get_offset (room, wanted), best = G_MAXINT64;
  RcOpening    *found = NULL;

  for (guint i = 0; i < drawn->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (drawn->openings, i);
      if (opening->kind != wanted->kind || opening->wall != get_drawn_wall (room, wanted->wall)
          || ABS (opening->offset - offset) >= MIN (best, 24 * IN))
        continue;
      best = ABS (opening->offset - offset);
      found = opening;
    }
  return found;
}

/* The wall is pointed at from within the room, as the wall behind it is near; how far along is typed. */
static void
put_opening (Sketcher *user, const RcRoom *room, const RcOpening *opening)
{
  g_autoptr (RcScene) scene = rc_document_new_scene (pointer_hand_get_document (&user->hand), 0);
  const RcSceneRoom *seen = sketch_find_seen (scene, user, room);
  RcLength           offset = get_offset (room, opening);
  RcPoint            from, to, out;

  sketch_take_tool (user, get_tool_of (opening->kind));
  rc_scene_get_wall (seen, get_drawn_wall (room, opening->wall), &from, &to);
  g_assert_true (rc_room_get_outward_step (seen->room, get_drawn_wall (room, opening->wall), 4 * IN, &out));
  double share = (double)(offset + opening->width / 2) / (double)rc_point_distance (from, to);
  pointer_hand_point (&user->hand, from.x + (RcLength)((double)(to.x - from.x) * share) - out.x,
                      from.y + (RcLength)((double)(to.y - from.y) * share) - out.y);
  type_length (user, offset);
  if (opening->width != rc_room_edit_get_usual_width (opening->kind, RC_UNITS_IMPERIAL))
    {
      pointer_hand_key (&user->hand, "Tab");
      pointer_hand_key (&user->hand, "Tab");
      type_length (user, opening->width);
    }
  pointer_hand_key (&user->hand, "Return");
}

typedef struct
{
  Sketcher        *user;
  const RcRoom    *room;
  const RcOpening *wanted;
} SoughtOpening;

static gboolean
is_opening_there (gpointer data)
{
  const SoughtOpening *sought = data;
  return seek_opening (sought->user, sought->room, sought->wanted) != NULL;
}

/* It is there, or comes by what the hand has just done. */
static RcOpening *
find_opening (Sketcher *user, const RcRoom *room, const RcOpening *wanted)
{
  SoughtOpening sought = { user, room, wanted };

  pointer_hand_wait (is_opening_there, &sought);
  return seek_opening (user, room, wanted);
}

typedef struct
{
  Sketcher   *user;
  const char *id;
  GtkWidget  *card;
} SoughtCard;

static gboolean
is_card_shown (gpointer data)
{
  SoughtCard *sought = data;
  for (GtkWidget *card = gtk_widget_get_first_child (sketch_find (sought->user, "openings_box"));
       card && sought->card == NULL; card = gtk_widget_get_next_sibling (card))
    if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (pointer_hand_find (card, "id_label"))), sought->id) == 0)
      sought->card = card;
  return sought->card != NULL;
}

/* The opening's card, once the panel shows it. */
static GtkWidget *
find_card (Sketcher *user, const char *id)
{
  SoughtCard sought = { user, id, NULL };
  pointer_hand_wait (is_card_shown, &sought);
  return sought.card;
}

/* No tape tells a sixteenth of an inch. */
static gboolean
is_near (RcLength a, RcLength b)
{
  return ABS (a - b) < IN / 16;
}

static gboolean
is_right (const RcRoom *room, const RcOpening *got, const RcOpening *wanted)
{
  return is_near (got->offset, get_offset (room, wanted))
         && (wanted->kind == RC_OPENING_WINDOW || is_near (got->depth, wanted->depth)) && got->swing == wanted->swing
         && g_strcmp0 (got->transition, wanted->transition) == 0;
}

/* What the click could not say is said on the opening's card. */
static void
mend_opening (Sketcher *user, const RcRoom *room, const RcOpening *wanted)
{
  static const char *const LEAVES[] = { "none", "opens into", "opens out" };
  RcOpening               *got = find_opening (user, room, wanted);

  g_assert_true (is_near (got->width, wanted->width));
  GtkWidget *card = find_card (user, got->id);
  if (wanted->kind != RC_OPENING_WINDOW && !is_near (got->depth, wanted->depth))
    sketch_enter_length (user, pointer_hand_find (card, "depth_entry"), wanted->depth);
  if (!is_near (find_opening (user, room, wanted)->offset, get_offset (room, wanted)))
    sketch_enter_length (user, pointer_hand_find (card, "offset_entry"), get_offset (room, wanted));
  if ((got = find_opening (user, room, wanted))->swing != wanted->swing)
    pointer_hand_pick (&user->hand, pointer_hand_find (card, "swing_drop"), LEAVES[wanted->swing]);
  if (g_strcmp0 ((got = find_opening (user, room, wanted))->transition, wanted->transition) != 0)
    pointer_hand_pick (&user->hand, pointer_hand_find (card, "transition_drop"),
                       rc_job_find_goods (user->demo, wanted->transition)->name);
}

/* As soon as both its rooms stand; from the one that the leaf opens into, as a door is drawn so. */
static void
put_openings (Sketcher *user, const RcRoom *room)
{
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (room->openings, i);
      RcRoom          *from = (RcRoom *)room;
      RcRoom *other = opening->to_room ? rc_measure_find_room ((RcMeasure *)user->sketch, opening->to_room) : NULL;
      if ((other && seek_drawn (user, other->name) == NULL) || seek_opening (user, room, opening))
        continue;
      if (other && opening->swing == RC_SWING_OUT)
        {
          from = other;
          opening = rc_room_edit_find_opening (other, opening->to_opening);
        }
      put_opening (user, from, opening);
      if (!is_right (from, find_opening (user, from, opening), opening))
        mend_opening (user, from, opening);
    }
}

typedef struct
{
  Sketcher   *user;
  const char *name;
} SoughtRoom;

static gboolean
is_chosen_room (gpointer data)
{
  const SoughtRoom *sought = data;
  RcChoice          choice = rc_document_get_choice (pointer_hand_get_document (&sought->user->hand));
  const RcRoom     *drawn = find_drawn (sought->user, sought->name);
  return choice.thing == RC_THING_ROOM && g_strcmp0 (choice.id, drawn->id) == 0;
}

/* A click that only shuts what was open is made again. */
static void
choose_room (Sketcher *user, const RcRoom *room)
{
  g_autoptr (RcScene) scene = rc_document_new_scene (pointer_hand_get_document (&user->hand), 0);
  RcBox      box = rc_ring_compute_box (sketch_find_seen (scene, user, room)->corners);
  SoughtRoom sought = { user, room->name };

  sketch_take_tool (user, "Choose and move");
  for (guint i = 0; i < POINTER_HAND_TRIES && !is_chosen_room (&sought); i++)
    {
      pointer_hand_click (&user->hand, box.x0 + (box.x1 - box.x0) / 3, box.y0 + (box.y1 - box.y0) / 3);
      pointer_hand_try (is_chosen_room, &sought);
    }
  g_assert_true (is_chosen_room (&sought));
}

void
sketch_mend_openings (Sketcher *user)
{
  for (guint r = 0; r < user->sketch->rooms->len; r++)
    {
      const RcRoom *room = g_ptr_array_index (user->sketch->rooms, r);
      gboolean      is_chosen = FALSE;
      for (guint i = 0; i < room->openings->len; i++)
        {
          const RcOpening *opening = g_ptr_array_index (room->openings, i);
          if (is_right (room, find_opening (user, room, opening), opening))
            continue;
          if (!is_chosen)
            choose_room (user, room);
          is_chosen = TRUE;
          mend_opening (user, room, opening);
        }
    }
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

static gboolean
is_named (gpointer data)
{
  const SoughtRoom *sought = data;
  return seek_drawn (sought->user, sought->name) != NULL;
}

void
sketch_draw_room (Sketcher *user, const RcRoom *room)
{
  SoughtCount drawn = { user, pointer_hand_get_measure (&user->hand)->rooms->len + 1 };
  SoughtRoom  named = { user, room->name };

  if (is_square (room))
    draw_rectangle (user, room);
  else
    draw_outline (user, room);
  pointer_hand_wait (is_room_drawn, &drawn);
  sketch_enter (user, "name_entry", room->name);
  pointer_hand_wait (is_named, &named);
  mend_walls (user, room);
  for (guint i = 0; i < room->cutouts->len; i++)
    draw_hearth (user, room, g_ptr_array_index (room->cutouts, i));
  put_openings (user, room);
  sketch_count (user, room->name);
}
