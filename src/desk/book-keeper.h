/* The price book as the store holds it, for all windows that show or change it: each change is saved as it is made, and
 * what was changed here can be taken back until somebody else changes the book.
 *
 * Signal "changed" (gboolean by_others): the book is another now.
 */
#pragma once

#include "store.h"

#define RC_TYPE_BOOK_KEEPER (rc_book_keeper_get_type ())
G_DECLARE_FINAL_TYPE (RcBookKeeper, rc_book_keeper, RC, BOOK_KEEPER, GObject)

/* `store` outlives it. */
RcBookKeeper *rc_book_keeper_new (RcStore *store);

/* NULL, and an error, when it cannot be read. Borrowed until the next "changed". */
const RcPriceBook *rc_book_keeper_get_book (RcBookKeeper *self, GError **error);

/* Looks at the store again. */
void rc_book_keeper_follow (RcBookKeeper *self);

/* Saves `edited` (transfer full), made of the book as it is; `doing` names the change for undo. Errors: as
 * rc_store_save_price_book; in a conflict the book is read anew. */
gboolean rc_book_keeper_take (RcBookKeeper *self, RcPriceBook *edited, const char *doing, GError **error);

/* Takes the last change back, or makes it again. (transfer full) what it was; NULL without an error: there is none. */
char *rc_book_keeper_undo (RcBookKeeper *self, GError **error);
char *rc_book_keeper_redo (RcBookKeeper *self, GError **error);
