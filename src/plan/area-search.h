/* The search for one area along one pile direction: strip lines per cell, a layout per part, against the roll length
 * that all its cuts take together.
 */
#pragma once

#include "grid.h"

/* What is minimised: factors on the parts of the cost. */
typedef struct
{
  gint64 carpet, seam, rule; /* factors */
  gint64 each_join;          /* added for every cross seam, before `seam` */
} RcObjective;

typedef struct
{
  gint64   score;  /* by the objective */
  RcLength length; /* roll length, to part equals */
} RcScore;

typedef struct _RcAreaSearch RcAreaSearch;

/* The site outlives the search. */
RcAreaSearch *rc_area_search_new (const RcSite *site);
void          rc_area_search_free (RcAreaSearch *search);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcAreaSearch, rc_area_search_free)

/* Searches from scratch. With `deep` other partings of the doorways are tried too, until `deadline_us`
 * (g_get_monotonic_time) or cancelled. FALSE and an error where the floor cannot be dealt with. */
gboolean rc_area_search_run (RcAreaSearch *search, const RcObjective *objective, gboolean deep, gint64 deadline_us,
                             GCancellable *cancellable, RcScore *score, GError **error);

/* The answer found: one grid a cell with a layout picked for each part; the doorways as parted. Borrowed, until the
 * next run. */
guint         rc_area_search_get_n_cells (const RcAreaSearch *search);
const RcCell *rc_area_search_get_cell (const RcAreaSearch *search, guint cell);
const RcGrid *rc_area_search_get_grid (const RcAreaSearch *search, guint cell);
const GArray *rc_area_search_get_doorways (const RcAreaSearch *search);

/* Where along the roll a patterned piece must start, modulo the repeat; 0 for plain goods. */
RcLength rc_area_search_get_phase (const RcAreaSearch *search, guint cell, const RcPart *part, const RcBlock *block);
