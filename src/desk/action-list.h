/* Everything that can be done, by name: one types to find, Return does it. The list is made from the keys window's own
 * description, so that what stands in one stands in the other.
 */
#pragma once

#include <gtk/gtk.h>

#define RC_TYPE_ACTION_LIST (rc_action_list_get_type ())
G_DECLARE_FINAL_TYPE (RcActionList, rc_action_list, RC, ACTION_LIST, GtkPopover)

/* Every shortcut of `builder` that names an action, in its action-name or, for an action of a part of the window, in
 * its id. */
void rc_action_list_fill (RcActionList *self, GtkBuilder *builder, GtkApplication *application);

/* Whether an action of the window can be used now; asked for each when the list opens. */
typedef gboolean (*RcActionListIsEnabled) (const char *action, gpointer data);
void rc_action_list_set_enabled_func (RcActionList *self, RcActionListIsEnabled is_enabled, gpointer data);
/* Where actions of parts of the window are looked for when the widget with the focus does not know them. */
void rc_action_list_set_targets (RcActionList *self, GtkWidget *const targets[], guint n_targets);

gboolean    rc_action_list_has (RcActionList *self, const char *action);
guint       rc_action_list_get_n_shown (RcActionList *self);
const char *rc_action_list_get_first (RcActionList *self); /* the action that Return does; NULL: none */
