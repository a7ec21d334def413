/* A job as rows, and rows as a job. The two stand side by side: what one writes the other reads. */
#pragma once

#include "row-set.h"

/* Text stays the job's. */
void rc_job_rows_add (const RcJob *job, RcRowSet *rows);

/* From rows read in the model's order. (transfer full) NULL and RC_ERROR_STORE naming the row that has a word which
 * this program does not know, or when there is no such job. */
RcJob *rc_job_rows_build (const RcRowSet *rows, GError **error);

/* The parts. */
void     rc_measure_rows_add (const RcMeasure *measure, guint position, RcRowSet *rows);
gboolean rc_measure_rows_build (const RcRowSet *rows, RcJob *job, GError **error);
/* Stores held an area's seam by two columns of its row once, which are read into a pin and written as 0. Makes rows
 * that were read what would be written today but for that pin; TRUE where there is one. */
gboolean rc_measure_rows_drop_seam_lines (RcRowSet *rows);
/* The measure named by the row's first column. */
RcMeasure *rc_measure_rows_find (const RcJob *job, RcTableId table, const RcValue *row, GError **error);
void       rc_offer_rows_add (const RcJob *job, RcRowSet *rows);
gboolean   rc_offer_rows_build (const RcRowSet *rows, RcJob *job, GError **error);
void       rc_payment_rows_add (const GPtrArray *payments, RcTableId table, RcRowSet *rows);
void       rc_payment_rows_build (const RcRowSet *rows, RcTableId table, GPtrArray *payments);
void       rc_goods_rows_add (const GPtrArray *goods, RcTableId table, RcRowSet *rows);
gboolean   rc_goods_rows_build (const RcRowSet *rows, RcTableId table, GPtrArray *goods, GError **error);
