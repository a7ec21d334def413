/* Edits of a job as a whole: new jobs, measures, goods it takes from the price book.
 */
#pragma once

#include "quote.h"

/* Makes `id` of the catalogue one of the job's goods, if it is not yet, and lets the job use the stock rolls (of
 * RcRoll, nullable) of it. FALSE when the catalogue has no such goods. */
gboolean rc_job_edit_take_goods (RcJob *job, const RcPriceBook *book, const GPtrArray *stock, const char *id);

/* The job's rolls as they lie in stock now: `stock` (of RcRoll) is what there is for the job. Those it has follow, with
 * what is left of them, those that have gone go; `taken` (nullable) is the ticket of one that it may use from now on.
 * Pieces cut for the job stay as they are. */
void rc_job_edit_follow_stock (RcJob *job, const GPtrArray *stock, const char *taken);

/* A new measure, a copy of `from` (NULL: the last), dated `date`, with the next free id "M2". (transfer none) */
RcMeasure *rc_job_edit_add_measure (RcJob *job, const char *from, const char *date);
/* Never the only one. */
gboolean rc_job_edit_remove_measure (RcJob *job, const char *id);

/* A job to start from: one measure with one empty area that has the first carpet and cushion of the price book, both
 * nullable. (transfer full) */
RcJob *rc_job_edit_new_job (const char *id, const char *title, const char *date, const RcPriceBook *book,
                            const GPtrArray *stock, RcUnitSystem units);

/* The first goods of a kind in the job, else in the catalogue; NULL for none. */
const RcGoods *rc_job_edit_find_first_goods (const RcJob *job, const RcPriceBook *book, RcGoodsKind kind);

/* The two differ in nothing but plan pictures, which no plan or price depends on. */
gboolean rc_job_edit_plans_alike (const RcJob *a, const RcJob *b);
