/* The rows of the pieces of carpet and of the lines that the quotation has for them: each tells what the other is for.
 */
#pragma once

#include "item.h"

/* Size, room and place of the piece under the pointer in words, and what it is charged by on the quotation; NULL when
 * there is none, or no document. (transfer full) */
char *rc_item_dup_pointed_words (RcDocument *document);

/* The pieces in the order of their numbers, with size, room and place on the roll. */
void rc_item_fill_pieces (GListStore *rows, RcDocument *document);
/* The lines of the quotation, with quantity and amount. A line of carpet is lit with its pieces; pointing at any line
 * lights the pieces that it is charged for. */
void rc_item_fill_lines (GListStore *rows, RcDocument *document);
