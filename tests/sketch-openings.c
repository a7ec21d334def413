#include "sketch-openings.h"

#include "document-things.h"
#include "room-edit.h"

#define IN RC_TICKS_PER_INCH

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

  return sketch_is_square (room) ? length - opening->offset - opening->width : opening->offset;
}

/* The drawn room's opening that is nearest to where the sketch has it; NULL when none of its kind is in that wall. */
static RcOpening *
seek_opening (Sketcher *user, const RcRoom *room, const RcOpening *wanted)
{
  const RcRoom *drawn = sketch_find_drawn (user, room->name);
  RcLength      offset = get_offset (room, wanted), best = G_MAXINT64;
  RcOpening    *found = NULL;

  for (guint i = 0; i < drawn->openings->len; i++)
    {
      RcOpening *opening = g_ptr_array_index (drawn->openings, i);
      if (opening->kind != wanted->kind || opening->wall != sketch_get_drawn_wall (room, wanted->wall)
          || ABS (opening->offset - offset) >= MIN (best, 24 * IN))
        continue;
      best = ABS (opening->offset - offset);
      found = opening;
    }
  return found;
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

/* The wall is pointed at from within the room, as the wall behind it is near; how far along is typed. */
static void
click_opening (Sketcher *user, const RcRoom *room, const RcOpening *opening)
{
  g_autoptr (RcScene) scene = rc_document_new_scene (pointer_hand_get_document (&user->hand), 0);
  const RcSceneRoom *seen = sketch_find_seen (scene, user, room);
  RcLength           offset = get_offset (room, opening);
  RcPoint            from, to, out;

  sketch_take_tool (user, get_tool_of (opening->kind));
  rc_scene_get_wall (seen, sketch_get_drawn_wall (room, opening->wall), &from, &to);
  g_assert_true (rc_room_get_outward_step (seen->room, sketch_get_drawn_wall (room, opening->wall), 4 * IN, &out));
  double share = (double)(offset + opening->width / 2) / (double)rc_point_distance (from, to);
  pointer_hand_point (&user->hand, from.x + (RcLength)((double)(to.x - from.x) * share) - out.x,
                      from.y + (RcLength)((double)(to.y - from.y) * share) - out.y);
  sketch_type_length (user, offset);
  if (opening->width != rc_room_edit_get_usual_width (opening->kind, RC_UNITS_IMPERIAL))
    {
      pointer_hand_key (&user->hand, "Tab");
      pointer_hand_key (&user->hand, "Tab");
      sketch_type_length (user, opening->width);
    }
  pointer_hand_key (&user->hand, "Return");
}

/* A click that the floor did not take is made again. */
static void
put_opening (Sketcher *user, const RcRoom *room, const RcOpening *opening)
{
  SoughtOpening sought = { user, room, opening };

  for (guint i = 0; i < POINTER_HAND_TRIES && !is_opening_there (&sought); i++)
    {
      if (i > 0)
        g_test_message ("%s of %s is put once more", opening->id, room->name);
      click_opening (user, room, opening);
      pointer_hand_try (is_opening_there, &sought);
    }
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
void
sketch_put_openings (Sketcher *user, const RcRoom *room)
{
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (room->openings, i);
      RcRoom          *from = (RcRoom *)room;
      RcRoom *other = opening->to_room ? rc_measure_find_room ((RcMeasure *)user->sketch, opening->to_room) : NULL;
      if ((other && sketch_seek_drawn (user, other->name) == NULL) || seek_opening (user, room, opening))
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
  const RcRoom     *drawn = sketch_find_drawn (sought->user, sought->name);
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
