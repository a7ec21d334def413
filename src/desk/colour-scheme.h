/* Follows the desktop's wish for a dark or a light style.
 *
 * Read from the settings portal (org.freedesktop.appearance, color-scheme: 1 prefers dark, 2 light, 0 has no wish),
 * where there is one.
 */
#pragma once

#include <gtk/gtk.h>

#define RC_TYPE_COLOUR_SCHEME (rc_colour_scheme_get_type ())
G_DECLARE_FINAL_TYPE (RcColourScheme, rc_colour_scheme, RC, COLOUR_SCHEME, GObject)

/* Follows as long as the object lives. */
RcColourScheme *rc_colour_scheme_new (void);
