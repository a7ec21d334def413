/* A row of a list on the bench: the same model as the drawings, to be read without them.
 */
#pragma once

#include <gio/gio.h>

#include "document.h"

#define RC_TYPE_ITEM (rc_item_get_type ())
G_DECLARE_FINAL_TYPE (RcItem, rc_item, RC, ITEM, GObject)

/* Properties: the strings "mark" (a short sign or number), "title", "detail"; "classes", the style classes of the row.
 */
RcItem  *rc_item_new (RcChoice choice, const char *mark, const char *title, const char *detail);
RcChoice rc_item_get_choice (RcItem *self);
/* TRUE when choosing `choice` lights this row up. */
gboolean rc_item_is_chosen (RcItem *self, RcChoice choice);

/* The row of the piece under the pointer is lit. */
void rc_item_set_lit (RcItem *self, gboolean lit);

/* Size, room and place of the piece under the pointer in words, and what it is charged by on the quotation; NULL when
 * there is none, or no document. (transfer full) */
char *rc_item_dup_pointed_words (RcDocument *document);

/* Fills a list store of RcItem, keeping the rows that stay and changing their texts in place. */
typedef void (*RcItemFill) (GListStore *rows, RcDocument *document);

/* The job, then each area with its rooms, then rooms without an area, then stairs. */
void rc_item_fill_things (GListStore *rows, RcDocument *document);
/* The pieces in the order of their numbers, with size, room and place on the roll. */
void rc_item_fill_pieces (GListStore *rows, RcDocument *document);
