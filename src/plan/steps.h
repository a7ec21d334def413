/* Steps that do not touch one another, taken as many at a time as there are processors. */
#pragma once

#include <glib.h>

/* Takes the step of that number; an error where it cannot be done. */
typedef void (*RcStepFunc) (guint step, gpointer user_data, GError **error);

/* How many of so many steps are under way at a time. */
guint rc_steps_count_at_once (guint n_steps);

/* Takes steps 0 .. n_steps - 1, begun in their order. FALSE and the error of the first that could not be done; the
 * others are taken all the same. */
gboolean rc_steps_take (guint n_steps, RcStepFunc take, gpointer user_data, GError **error);
