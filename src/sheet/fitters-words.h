/* The standing words of the fitters' sheet: cautions, checks and methods, in the order they are needed. Lists end with
 * NULL and hold text to be translated with _(). Sources are named beside each in fitters-words.c.
 */
#pragma once

#include <glib.h>

extern const char *const RC_FITTERS_CAUTIONS[];
extern const char *const RC_FITTERS_SITE_CHECKS[];
extern const char *const RC_FITTERS_STRIP[];
extern const char *const RC_FITTERS_CUSHION[];
extern const char *const RC_FITTERS_GLUE[];
extern const char *const RC_FITTERS_SEAMS[];
extern const char *const RC_FITTERS_STRETCH[];
extern const char *const RC_FITTERS_FINISH[];

/* In how many places the second edge of a cross seam of that width is marked from the first: 2 for a fill about
 * 1 1/2 ft wide, 3 for one about 4 ft (common practice, no source), one more for every further 2 1/2 ft. */
guint rc_fitters_get_n_marks (gint64 width_ticks);
