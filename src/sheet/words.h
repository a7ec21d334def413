/* The words that several sheets use for the same things. All strings returned are translated; (transfer full) where
 * they are not const.
 */
#pragma once

#include "quote.h"

/* A room's or a stair's name by its id; the id where it names nothing; "" for NULL. */
const char *rc_words_get_place (const RcPlan *plan, const char *id);
const char *rc_words_get_goods (const RcPlan *plan, const char *id);
const char *rc_words_get_area (const RcPlan *plan, const char *id);

/* "Drop", "Fill", "Joined fill", "Stair". */
const char *rc_words_get_piece_kind (const RcPiece *piece);
const char *rc_words_get_seam_kind (RcSeamKind kind); /* "Side seam" */

/* "to the right of the plan", "45° up from the right of the plan". */
char *rc_words_dup_pile (double degrees);

/* "Ground floor", "Floor 2", "Basement". */
char *rc_words_dup_floor (int floor);

/* "3 rolls". */
char *rc_words_dup_packs (gint64 packs, RcUnit pack_unit);

/* Address lines joined by newlines, phone and e-mail under them; empty ones left out. */
char *rc_words_dup_customer (const RcCustomer *customer);
