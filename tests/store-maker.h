/* Jobs for the store's tests: made at random, edited at random, and written out in full for comparing. */
#pragma once

#include <gio/gio.h>

#include "store.h"

#define NOW "2025-03-04T05:06:07Z"

/* A rich job: every field of the model at work, text with quotes, line ends and signs of several scripts. */
RcJob *rc_store_maker_new_job (GRand *rand, const char *id, guint n_rooms);

/* One edit as somebody might make it, and its name. */
const char *rc_store_maker_edit_job (GRand *rand, RcJob *job);

/* Every field of the model as text: two jobs are the same when their texts are. Written without the store's help.
 * (transfer full) */
char *rc_store_maker_dump_job (const RcJob *job);
char *rc_store_maker_dump_price_book (const RcPriceBook *book);
char *rc_store_maker_dump_quote (const RcQuote *quote);

RcPriceBook *rc_store_maker_new_price_book (GRand *rand, guint n_goods);
RcQuote     *rc_store_maker_new_quote (GRand *rand, guint n_lines);

/* A new folder of the test's own; removed with all that is in it. (transfer full) */
char *rc_store_maker_new_folder (void);
void  rc_store_maker_remove_folder (char *folder);

/* Opens it, made when it is not there; an error fails the test. */
RcStore *rc_store_maker_open (const char *path);
/* Three jobs with steps, the third deleted, prices, and a quotation of each. */
void rc_store_maker_fill (RcStore *store, GRand *rand);

/* Loads the job and compares it with the text. */
void rc_store_maker_assert_stored (RcStore *store, const char *id, const char *dump);
/* The full check finds nothing. */
void rc_store_maker_assert_sound (RcStore *store);
