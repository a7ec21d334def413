/* The search for one area along one pile direction: how doorways are parted, strip lines per cell, a layout per part,
 * against the roll length that all its cuts take together.
 */
#pragma once

#include "area-state.h"

typedef struct _RcAreaSearch RcAreaSearch;

/* The site outlives the search. `counts_work`: as in RcAreaState. */
RcAreaSearch *rc_area_search_new (const RcSite *site, gboolean counts_work);
void          rc_area_search_free (RcAreaSearch *search);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcAreaSearch, rc_area_search_free)

/* Later runs search beside these other cuts (NULL: by itself); what it names outlives them. */
void rc_area_search_set_beside (RcAreaSearch *search, const RcBeside *beside);

/* Searches for the best state by the objective. With `deep` other partings of the doorways are tried with all their
 * cuts, until nothing gets better, `deadline_us` (rc_area_state_get_us) or cancelled; without, by a guess only. FALSE
 * and an error where the floor cannot be dealt with. */
gboolean rc_area_search_run (RcAreaSearch *search, const RcObjective *objective, gboolean deep, gint64 deadline_us,
                             GCancellable *cancellable, RcScore *score, GError **error);

/* Takes the state with the doorways parted like that (of RcParting), the strip lines of the cells there (of RcLength,
 * in the cells' order) and all parts whole. *possible is FALSE where pins or a pattern hold the lines elsewhere. */
gboolean rc_area_search_take (RcAreaSearch *search, const GArray *partings, const GArray *lines, gboolean *possible,
                              GError **error);

/* The state found: one grid a cell with a layout picked for each part; the doorways as parted. Borrowed, until the next
 * run. */
const RcAreaState *rc_area_search_get_state (const RcAreaSearch *search);
const GArray      *rc_area_search_get_doorways (const RcAreaSearch *search); /* of RcDoorway */
