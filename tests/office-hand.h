/* What tests of the office's windows share: a job of one room, and hands that open, press and type. */
#pragma once

#include "desk-fixture.h"

/* A job file: the parlour of job J-7, cut 11' 11" by 14' 3" from a roll of 12 ft. */
extern const char OFFICE_HAND_PARLOUR[];

/* A window on that job, in a new store; it is in the fixture's folder, too, as parlour.xml. */
void office_hand_set_up (DeskFixture *fixture, gconstpointer data);
void office_hand_tear_down (DeskFixture *fixture, gconstpointer data);

/* Opens a window by the main window's action and finds it. (transfer none) */
gpointer office_hand_open_window (DeskFixture *fixture, const char *action, GType type);
void     office_hand_act (gpointer window, const char *action);
void     office_hand_click (gpointer window, const char *button);

RcJobState office_hand_get_state (DeskFixture *fixture);
/* Types the parlour's width, 4 in more than the piece that is cut or ordered, into the wall table. */
void office_hand_widen (DeskFixture *fixture);
