/* Words laid out and kept: drawings say the same things again and again.
 */
#pragma once

#include <pango/pangocairo.h>

typedef struct _RcLayouts RcLayouts;

/* For one thread at a time, as its fonts are. */
RcLayouts *rc_layouts_new (PangoFontMap *fonts);
void       rc_layouts_free (RcLayouts *self);

/* `text` in one line, `size` in drawing units. Stays as it is until the next call. */
PangoLayout *rc_layouts_get (RcLayouts *self, const char *text, double size, gboolean bold);
