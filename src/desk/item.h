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
/* The pieces (of guint; (transfer full), nullable) that pointing at the row lights up on floor and rolls. With
 * `answers` it is lit itself when one of them is pointed at there. */
void          rc_item_set_pieces (RcItem *self, GArray *pieces, gboolean answers);
const GArray *rc_item_get_pieces (RcItem *self);
/* FALSE for a line of the quotation: it stands for nothing that can be chosen. */
gboolean rc_item_is_thing (RcItem *self);
/* TRUE when choosing `choice` lights this row up. */
gboolean rc_item_is_chosen (RcItem *self, RcChoice choice);

/* Lights the row up, or not, for the pieces under the pointer. */
void rc_item_show_pointed (RcItem *self, const GArray *pointed);

/* Fills a list store of RcItem, keeping the rows that stay and changing their texts in place. */
typedef void (*RcItemFill) (GListStore *rows, RcDocument *document);

/* The identity of a row that is a line of the quotation. */
RcChoice rc_item_choice_of_line (const char *key);

/* A row more for rc_item_take_rows. */
void rc_item_add (GPtrArray *wanted, RcChoice choice, const char *mark, const char *title, const char *detail);

/* Makes `rows` say what `wanted` (of RcItem) says; rows of the same things stay the same objects. */
void rc_item_take_rows (GListStore *rows, GPtrArray *wanted);

/* The job, then each area with its rooms, then rooms without an area, then stairs. */
void rc_item_fill_things (GListStore *rows, RcDocument *document);
