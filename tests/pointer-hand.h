/* A person's hand: real events of a pointer and a keyboard, made by xdotool on the virtual display, through the real
 * widgets. Counts what it does. The window stands at the display's corner, as there is no window manager.
 */
#pragma once

#include "desk-fixture.h"

typedef struct
{
  DeskFixture desk;
  guint       n_keys, n_clicks; /* a drag is a click, and so are two or three in one place */
  guint       n_turns;          /* of the wheel */
} PointerHand;

/* TRUE, and the test is skipped, where there is no hand. */
gboolean pointer_hand_is_missing (void);

/* Runs a command, mostly xdotool, and handles events until it has ended and all is quiet. */
void pointer_hand_do (const char *format, ...) G_GNUC_PRINTF (1, 2);

RcFloorView     *pointer_hand_get_floor (PointerHand *hand);
RcDocument      *pointer_hand_get_document (PointerHand *hand);
const RcMeasure *pointer_hand_get_measure (PointerHand *hand);

/* On the floor, in the house's coordinates. */
void pointer_hand_point (PointerHand *hand, RcLength x, RcLength y);
void pointer_hand_click (PointerHand *hand, RcLength x, RcLength y);
void pointer_hand_drag (PointerHand *hand, RcLength x0, RcLength y0, RcLength x1, RcLength y1);

void pointer_hand_key (PointerHand *hand, const char *name);
void pointer_hand_type (PointerHand *hand, const char *text);

/* Over a widget that can be seen. */
void pointer_hand_point_widget (GtkWidget *widget);
/* On a widget; one that is scrolled out of sight is brought there by the wheel. */
void pointer_hand_click_widget (PointerHand *hand, GtkWidget *widget);
/* Three clicks on an entry choose all of its text, which what is typed replaces. */
void pointer_hand_enter (PointerHand *hand, GtkWidget *entry, const char *text);
/* The first entry of a drop-down list or a menu button's menu whose label begins so; "Carpet and seams|Place" goes
 * through a part of the menu. */
void pointer_hand_pick (PointerHand *hand, GtkWidget *drop_down, const char *labels);

/* The descendant with that buildable id that is on the screen. Fails when there is none. */
GtkWidget *pointer_hand_find (GtkWidget *root, const char *name);
/* The label shown below `root` that begins so; NULL for none. */
GtkWidget *pointer_hand_find_label (GtkWidget *root, const char *text);
/* Handles events until `ask` says TRUE; FALSE where it does not for some seconds: time to do it again, which is worth
 * POINTER_HAND_TRIES. */
#define POINTER_HAND_TRIES 4
gboolean pointer_hand_try (gboolean (*ask) (gpointer data), gpointer data);
/* The same; fails after a minute. */
void pointer_hand_wait (gboolean (*ask) (gpointer data), gpointer data);
