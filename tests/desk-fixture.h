/* The desk as tests need it: resources loaded, a store of its own, a window on the demo job, events until all is quiet.
 */
#pragma once

#include "desk.h"
#include "window.h"

typedef struct
{
  char           *folder; /* temporary, removed at the end */
  RcStore        *store;
  GtkApplication *application;
  RcWindow       *window;
} DeskFixture;

/* Without a window: a new store with the shipped price book. */
void desk_fixture_open_store (DeskFixture *fixture);
/* With a window; then `open_demo` opens the demo job in it. */
void desk_fixture_open (DeskFixture *fixture, gboolean open_demo);
/* Closes all; asserts that the window and its document are gone. */
void desk_fixture_close (DeskFixture *fixture);
/* With the files in it. */
void desk_fixture_remove_folder (const char *path);

/* Handles events until the document's state has its plan, or its fault. */
void desk_fixture_wait (RcDocument *document);
/* Handles events until every window's job is planned and none is waiting. */
void desk_fixture_settle (void);
/* Handles events until the window has painted what it was last told, or is gone. */
void desk_fixture_paint (GtkWidget *window);

/* The first descendant of a type whose accessible label or buildable id is `name` (NULL: any). */
GtkWidget *desk_fixture_find (GtkWidget *root, GType type, const char *name);

/* Types a text into the focused entry as keys would: what is selected is replaced, each letter is its own change. */
void desk_fixture_type (GtkWindow *window, const char *text);
/* Activates the focused widget, as Return does. */
void desk_fixture_press_return (GtkWindow *window);
