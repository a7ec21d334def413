/* What the office settles for a job: states, attachments, the offer; and its plan pictures. */
#include "job-rows.h"

#include <glib/gi18n-lib.h>

static void
add_states (const RcJob *job, RcRowSet *rows)
{
  for (guint i = 0; i < RC_N_JOB_STATES; i++)
    if (job->reached[i] != NULL)
      rc_row_set_add (rows, RC_TABLE_JOB_STATES,
                      RC_VALUES (rc_value_text (rc_job_state_get_name (i)), rc_value_text (job->reached[i])));
}

static void
add_attachments (const RcJob *job, RcRowSet *rows)
{
  for (guint i = 0; i < job->attachments->len; i++)
    {
      const RcAttachment *one = job->attachments->pdata[i];

      rc_row_set_add (rows, RC_TABLE_ATTACHMENTS,
                      RC_VALUES (rc_value_text (one->id), rc_value_integer (i), rc_value_text (one->name),
                                 rc_value_text (one->place), rc_value_text (one->digest), rc_value_text (one->notes),
                                 rc_value_text (one->added)));
    }
}

/* An offer that settles nothing has no row, as in a store that knew of none. */
static void
add_head (const RcOffer *offer, RcRowSet *rows)
{
  if (offer->discount_ppm == 0 && offer->discount == 0 && offer->detail == RC_DETAIL_FULL && offer->valid_days == 0
      && offer->terms == NULL && offer->tax_area == NULL)
    return;
  rc_row_set_add (rows, RC_TABLE_OFFERS,
                  RC_VALUES (rc_value_integer (offer->discount_ppm), rc_value_integer (offer->discount),
                             rc_value_text (rc_detail_get_name (offer->detail)), rc_value_integer (offer->valid_days),
                             rc_value_text (offer->terms), rc_value_text (offer->tax_area)));
}

static void
add_lines (const RcOffer *offer, RcRowSet *rows)
{
  for (guint i = 0; i < offer->lines->len; i++)
    {
      const RcLineTerms *terms = offer->lines->pdata[i];

      rc_row_set_add (rows, RC_TABLE_OFFER_LINES,
                      RC_VALUES (rc_value_text (terms->item), rc_value_integer (i),
                                 rc_value_integer (terms->optional != FALSE), rc_value_integer (terms->hidden != FALSE),
                                 rc_value_integer (terms->discount_ppm), rc_value_integer (terms->tax_ppm)));
    }
  for (guint i = 0; i < offer->extras->len; i++)
    {
      const RcExtraLine *extra = offer->extras->pdata[i];

      rc_row_set_add (rows, RC_TABLE_OFFER_EXTRAS,
                      RC_VALUES (rc_value_text (extra->id), rc_value_integer (i), rc_value_text (extra->item),
                                 rc_value_text (extra->name), rc_value_integer (extra->quantity_micro),
                                 rc_value_text (rc_unit_get_name (extra->unit)), rc_value_integer (extra->price),
                                 rc_value_integer (extra->cost), rc_value_integer (extra->is_work != FALSE)));
    }
}

static void
add_alternatives (const RcOffer *offer, RcRowSet *rows)
{
  for (guint i = 0; i < offer->alternatives->len; i++)
    {
      const RcAlternative *one = offer->alternatives->pdata[i];

      rc_row_set_add (rows, RC_TABLE_ALTERNATIVES,
                      RC_VALUES (rc_value_text (one->id), rc_value_integer (i), rc_value_text (one->name)));
      for (guint k = 0; k < one->swaps->len; k++)
        {
          const RcSwap *swap = one->swaps->pdata[k];

          rc_row_set_add (rows, RC_TABLE_SWAPS,
                          RC_VALUES (rc_value_text (one->id), rc_value_integer (k), rc_value_text (swap->place),
                                     rc_value_text (swap->carpet), rc_value_text (swap->option)));
        }
    }
}

void
rc_payment_rows_add (const GPtrArray *payments, RcTableId table, RcRowSet *rows)
{
  for (guint i = 0; i < payments->len; i++)
    {
      const RcPayment *payment = payments->pdata[i];

      rc_row_set_add (rows, table,
                      RC_VALUES (rc_value_integer (i), rc_value_text (payment->name),
                                 rc_value_integer (payment->part_ppm), rc_value_integer (payment->days)));
    }
}

static void
add_pictures (const RcJob *job, RcRowSet *rows)
{
  for (guint i = 0; i < job->pictures->len; i++)
    {
      const RcPlanPicture *one = job->pictures->pdata[i];

      rc_row_set_add (rows, RC_TABLE_PICTURES,
                      RC_VALUES (rc_value_integer (one->storey), rc_value_text (one->name), rc_value_text (one->digest),
                                 rc_value_integer (one->page), rc_value_integer (one->at.x),
                                 rc_value_integer (one->at.y), rc_value_integer (one->ticks_per_1000px),
                                 rc_value_integer (one->turn_millidegrees), rc_value_integer (one->strength_percent)));
    }
}

void
rc_offer_rows_add (const RcJob *job, RcRowSet *rows)
{
  add_states (job, rows);
  add_attachments (job, rows);
  add_pictures (job, rows);
  add_head (job->offer, rows);
  add_lines (job->offer, rows);
  rc_payment_rows_add (job->offer->payments, RC_TABLE_OFFER_PAYMENTS, rows);
  add_alternatives (job->offer, rows);
}

static gboolean
build_states (const RcRowSet *rows, RcJob *job, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_JOB_STATES); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_JOB_STATES, i);
      RcJobState     state;

      if (!rc_job_state_parse (rc_value_get_text (&row[0]), &state, error))
        return FALSE;
      g_free (job->reached[state]);
      job->reached[state] = rc_value_dup_text (&row[1]);
    }
  return TRUE;
}

static void
build_attachments (const RcRowSet *rows, GPtrArray *attachments)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_ATTACHMENTS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_ATTACHMENTS, i);
      RcAttachment  *one = rc_attachment_new (rc_value_get_text (&row[0]), rc_value_get_text (&row[2]));

      one->place = rc_value_dup_text (&row[3]);
      one->digest = rc_value_dup_text (&row[4]);
      one->notes = rc_value_dup_text (&row[5]);
      one->added = rc_value_dup_text (&row[6]);
      g_ptr_array_add (attachments, one);
    }
}

static void
build_pictures (const RcRowSet *rows, RcJob *job)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_PICTURES); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_PICTURES, i);
      RcPlanPicture *one = g_new0 (RcPlanPicture, 1);

      one->storey = (int)rc_value_get_integer (&row[0]);
      one->name = rc_value_dup_text (&row[1]);
      one->digest = rc_value_dup_text (&row[2]);
      one->page = (guint)rc_value_get_integer (&row[3]);
      one->at = (RcPoint){ rc_value_get_integer (&row[4]), rc_value_get_integer (&row[5]) };
      one->ticks_per_1000px = rc_value_get_integer (&row[6]);
      one->turn_millidegrees = rc_value_get_integer (&row[7]);
      one->strength_percent = (guint)rc_value_get_integer (&row[8]);
      rc_job_take_picture (job, one);
    }
}

static gboolean
build_head (const RcRowSet *rows, RcOffer *offer, GError **error)
{
  const RcValue *row;

  if (rc_row_set_get_n_rows (rows, RC_TABLE_OFFERS) == 0)
    return TRUE;
  row = rc_row_set_get (rows, RC_TABLE_OFFERS, 0);
  offer->discount_ppm = rc_value_get_integer (&row[0]);
  offer->discount = rc_value_get_integer (&row[1]);
  offer->valid_days = (int)rc_value_get_integer (&row[3]);
  offer->terms = rc_value_dup_text (&row[4]);
  offer->tax_area = rc_value_dup_text (&row[5]);
  return rc_detail_parse (rc_value_get_text (&row[2]), &offer->detail, error);
}

static void
build_lines (const RcRowSet *rows, GPtrArray *lines)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_OFFER_LINES); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_OFFER_LINES, i);
      RcLineTerms   *terms = rc_line_terms_new (rc_value_get_text (&row[0]));

      terms->optional = rc_value_get_integer (&row[2]) != 0;
      terms->hidden = rc_value_get_integer (&row[3]) != 0;
      terms->discount_ppm = rc_value_get_integer (&row[4]);
      terms->tax_ppm = rc_value_get_integer (&row[5]);
      g_ptr_array_add (lines, terms);
    }
}

static gboolean
build_extras (const RcRowSet *rows, GPtrArray *extras, GError **error)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_OFFER_EXTRAS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_OFFER_EXTRAS, i);
      RcExtraLine   *extra = rc_extra_line_new (rc_value_get_text (&row[0]));

      g_ptr_array_add (extras, extra);
      extra->item = rc_value_dup_text (&row[2]);
      extra->name = rc_value_dup_text (&row[3]);
      extra->quantity_micro = rc_value_get_integer (&row[4]);
      extra->price = rc_value_get_integer (&row[6]);
      extra->cost = rc_value_get_integer (&row[7]);
      extra->is_work = rc_value_get_integer (&row[8]) != 0;
      if (!rc_unit_parse (rc_value_get_text (&row[5]), &extra->unit, error))
        {
          g_prefix_error (error, _ ("line %s: "), extra->id);
          return FALSE;
        }
    }
  return TRUE;
}

void
rc_payment_rows_build (const RcRowSet *rows, RcTableId table, GPtrArray *payments)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, table); i++)
    {
      const RcValue *row = rc_row_set_get (rows, table, i);
      RcPayment     *payment = rc_payment_new (rc_value_get_text (&row[1]), rc_value_get_integer (&row[2]));

      payment->days = (int)rc_value_get_integer (&row[3]);
      g_ptr_array_add (payments, payment);
    }
}

static RcAlternative *
find_alternative (const GPtrArray *alternatives, const char *id)
{
  for (guint i = 0; i < alternatives->len; i++)
    {
      RcAlternative *one = alternatives->pdata[i];

      if (g_strcmp0 (one->id, id) == 0)
        return one;
    }
  return NULL;
}

static void
build_alternatives (const RcRowSet *rows, GPtrArray *alternatives)
{
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_ALTERNATIVES); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_ALTERNATIVES, i);

      g_ptr_array_add (alternatives, rc_alternative_new (rc_value_get_text (&row[0]), rc_value_get_text (&row[2])));
    }
  for (guint i = 0; i < rc_row_set_get_n_rows (rows, RC_TABLE_SWAPS); i++)
    {
      const RcValue *row = rc_row_set_get (rows, RC_TABLE_SWAPS, i);
      RcAlternative *one = find_alternative (alternatives, rc_value_get_text (&row[0]));

      if (one != NULL)
        g_ptr_array_add (one->swaps, rc_swap_new (rc_value_get_text (&row[2]), rc_value_get_text (&row[3]),
                                                  rc_value_get_text (&row[4])));
    }
}

gboolean
rc_offer_rows_build (const RcRowSet *rows, RcJob *job, GError **error)
{
  build_attachments (rows, job->attachments);
  build_pictures (rows, job);
  build_lines (rows, job->offer->lines);
  rc_payment_rows_build (rows, RC_TABLE_OFFER_PAYMENTS, job->offer->payments);
  build_alternatives (rows, job->offer->alternatives);
  return build_states (rows, job, error) && build_head (rows, job->offer, error)
         && build_extras (rows, job->offer->extras, error);
}
