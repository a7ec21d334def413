/* A list of the bench's things or pieces, its selection bound to the document's choice both ways.
 */
#pragma once

#include <gtk/gtk.h>

#include "item.h"

#define RC_TYPE_ITEM_LIST (rc_item_list_get_type ())
G_DECLARE_FINAL_TYPE (RcItemList, rc_item_list, RC, ITEM_LIST, GtkBox)

/* What the rows are; once, before there is a document. */
void rc_item_list_set_fill (RcItemList *self, RcItemFill fill, const char *accessible_label);
void rc_item_list_set_document (RcItemList *self, RcDocument *document);
void rc_item_list_focus (RcItemList *self);
