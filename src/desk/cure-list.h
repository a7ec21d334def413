/* What the goods that are cut already no longer cover in a new measure, and the ways to go on, the cheapest first. */
#pragma once

#include <gtk/gtk.h>

#include "document.h"
#include "remeasure.h"

#define RC_TYPE_CURE_LIST (rc_cure_list_get_type ())
G_DECLARE_FINAL_TYPE (RcCureList, rc_cure_list, RC, CURE_LIST, GtkBox)

GtkWidget *rc_cure_list_new (void);

/* The document outlives the list. Looks at what is cut for its job; hidden when that is nothing. `before` is the
 * outcome of the measure that it was cut by, `measure` the id of the new one. FALSE with an error when no way could be
 * planned. */
gboolean rc_cure_list_show (RcCureList *self, RcDocument *document, const RcOutcome *before, const char *measure,
                            GError **error);

const RcRemeasure *rc_cure_list_get (RcCureList *self); /* nullable: nothing is cut */
/* Goes on in way `index`: the measure's plan is that of the cure from now on. A step that can be undone. */
gboolean rc_cure_list_take (RcCureList *self, guint index, GError **error);
