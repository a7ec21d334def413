/* What the office settles, made at random and written out in full: shared by the tests of the job file and the store.
 */
#pragma once

#include "price-book.h"

void office_maker_fill_job (GRand *rand, RcJob *job);
void office_maker_dump_job (GString *text, const RcJob *job);
void office_maker_fill_roll (GRand *rand, RcRoll *roll);
void office_maker_dump_roll (GString *text, const RcRoll *roll);
void office_maker_fill_book (GRand *rand, RcPriceBook *book);
void office_maker_dump_book (GString *text, const RcPriceBook *book);

/* " name=value" put to the text; NULL and "" differ. */
void put_text (GString *text, const char *name, const char *value);
void put_number (GString *text, const char *name, gint64 value);
