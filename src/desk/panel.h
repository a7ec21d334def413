/* A panel whose fields show, and change, one part of the open job.
 *
 * A subclass finds its part in a job, binds the plain fields once, and shows the rest itself. Each change of a field is
 * one edit of the document; the letters typed into one field are one step.
 */
#pragma once

#include <gtk/gtk.h>

#include "document.h"
#include "length-entry.h"

#define RC_TYPE_PANEL (rc_panel_get_type ())
G_DECLARE_DERIVABLE_TYPE (RcPanel, rc_panel, RC, PANEL, GtkBox)

struct _RcPanelClass
{
  GtkBoxClass parent_class;

  /* The struct that the fields lie in; NULL when the choice is not this panel's. `job` may be a copy. */
  gpointer (*find) (RcPanel *self, RcJob *job);
  /* Shows what is not a bound field; `part` from find on the document's job: not to be changed. Nullable. */
  void (*show) (RcPanel *self, gpointer part);
  /* What follows from a field that was changed: takes the edited copy, gives the one that is committed (both transfer
   * full). Nullable. */
  RcJob *(*settle) (RcPanel *self, RcJob *job);
};

/* For the panel and those within it. Borrowed by the panel's parent; the panel keeps a reference. NULL: none. */
void        rc_panel_set_document (RcPanel *self, RcDocument *document);
RcDocument *rc_panel_get_document (RcPanel *self);

/* A `find` for panels of a room: the chosen one, in the job or a copy; NULL when no room is chosen. */
gpointer rc_panel_find_chosen_room (RcPanel *self, RcJob *job);

/* Binds a widget to the field `offset` bytes into the part. `step` is the edit's translated name. */
void rc_panel_bind_text (RcPanel *self, GtkEditable *entry, gsize offset, const char *step);       /* char* */
void rc_panel_bind_buffer (RcPanel *self, GtkTextView *view, gsize offset, const char *step);      /* char* */
void rc_panel_bind_length (RcPanel *self, RcLengthEntry *entry, gsize offset, const char *step);   /* RcLength */
void rc_panel_bind_count (RcPanel *self, GtkSpinButton *spin, gsize offset, const char *step);     /* guint or int */
void rc_panel_bind_choice (RcPanel *self, GtkDropDown *drop_down, gsize offset, const char *step); /* an enum */
void rc_panel_bind_switch (RcPanel *self, GtkCheckButton *check, gsize offset, const char *step);  /* gboolean */
/* char*: the id of goods of a kind, from the job and the price book; optional: may be none. */
void rc_panel_bind_goods (RcPanel *self, GtkDropDown *drop_down, gsize offset, RcGoodsKind kind, gboolean optional,
                          const char *step);

/* TRUE while the panel shows a state: signals from its widgets are not the user's then. */
gboolean rc_panel_is_showing (RcPanel *self);
void     rc_panel_show (RcPanel *self);

/* Takes an edited copy of the job; a store that refuses is told to the user. */
void rc_panel_commit (RcPanel *self, RcJob *job, const char *step, const char *key);
