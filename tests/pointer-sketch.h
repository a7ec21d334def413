/* An estimator with the sketch of the demo house beside the screen, who enters it with the pointer through the real
 * widgets: rooms drawn beside each other, their openings put in the walls. Letters are typed for names and lengths
 * alone. */
#pragma once

#include "gesture-scene.h"
#include "pointer-hand.h"

typedef struct
{
  PointerHand      hand;
  RcJob           *demo;
  const RcMeasure *sketch;
  RcHouse         *house; /* of the sketch */
  guint            n_keys, n_clicks, n_turns;
  const char      *tool; /* the menu's words for the one in hand */
} Sketcher;

/* What stands on the screen under that buildable id. */
GtkWidget *sketch_find (Sketcher *user, const char *name);
void       sketch_enter (Sketcher *user, const char *entry, const char *text);
void       sketch_enter_length (Sketcher *user, GtkWidget *entry, RcLength length);
void       sketch_pick (Sketcher *user, const char *drop_down, const char *label);
void       sketch_click_label (Sketcher *user, GtkWidget *root, const char *text);
/* Into what has the keys. */
void sketch_type_length (Sketcher *user, RcLength length);
/* By the words of the menu. */
void sketch_take_tool (Sketcher *user, const char *words);
/* Tells what the hand did since the last time, and adds it up. */
void sketch_count (Sketcher *user, const char *what);

/* A room of the sketch, its walls, hearth and those openings whose other room stands already. */
void sketch_draw_room (Sketcher *user, const RcRoom *room);
/* The drawn room of that name; NULL while there is none. */
RcRoom *sketch_seek_drawn (Sketcher *user, const char *name);
/* The same, which must be there. */
RcRoom *sketch_find_drawn (Sketcher *user, const char *name);
/* A wall of the sketch as drawn: a rectangle is walked the other way round, from its west side. */
guint    sketch_get_drawn_wall (const RcRoom *room, guint wall);
gboolean sketch_is_square (const RcRoom *room);
/* As drawn. */
const RcSceneRoom *sketch_find_seen (const RcScene *scene, Sketcher *user, const RcRoom *room);
