/* A drop-down over things that have ids: goods, rooms, areas, measures.
 */
#pragma once

#include <gtk/gtk.h>

#include "quote.h"

/* Ids with the labels shown for them, in order. The first id may be NULL: "none". */
typedef struct
{
  GPtrArray *ids;    /* of char*, nullable entries */
  GPtrArray *labels; /* of char* */
} RcPick;

void rc_pick_init (RcPick *pick);
void rc_pick_clear (RcPick *pick);
void rc_pick_add (RcPick *pick, const char *id, const char *label);

/* The goods of a kind in the job (nullable), then those that only the price book has. */
void rc_pick_add_goods (RcPick *pick, const RcJob *job, const RcPriceBook *book, RcGoodsKind kind);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RcPick, rc_pick_clear)

/* Shows the list with `selected` (nullable) selected; an id that is not in the list is added as it is, so that what the
 * job says is never hidden. */
void rc_pick_show (const RcPick *pick, GtkDropDown *drop_down, const char *selected);
/* The id selected, NULL for none. */
const char *rc_pick_get_selected (GtkDropDown *drop_down);

/* The languages that papers are written in, by their own names, the program's own (NULL) first. */
void rc_pick_show_languages (GtkDropDown *drop_down, const char *selected);

/* Selects the next entry, round the end, that begins with the letter (lower case). FALSE: none does. */
gboolean rc_pick_step_to_letter (GtkDropDown *drop_down, gunichar letter);
