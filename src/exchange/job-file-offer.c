/* States, attachments, plan pictures and the offer of a job. */
#include "job-file-parts.h"

#include <glib/gi18n-lib.h>

#define MAX_DAYS 36500

static void
read_states (RcXmlIn *in, const xmlNode *node, RcJob *job)
{
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    {
      g_autofree char *name = NULL;
      RcJobState       state;
      GError          *error = NULL;

      if (!rc_xml_in_is (child, "state"))
        continue;
      name = rc_xml_in_dup (child, "name");
      if (!rc_job_state_parse (name, &state, &error))
        {
          rc_xml_in_take_error (in, child, "name", error);
          return;
        }
      g_free (job->reached[state]);
      job->reached[state] = rc_xml_in_dup (child, "date");
    }
}

static void
read_attachments (const xmlNode *node, RcJob *job)
{
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    {
      g_autofree char *id = NULL, *name = NULL;
      RcAttachment    *one;

      if (!rc_xml_in_is (child, "attachment"))
        continue;
      id = rc_xml_in_dup (child, "id");
      name = rc_xml_in_dup_text (child, "name");
      one = rc_attachment_new (id, name);
      one->place = rc_xml_in_dup_text (child, "place");
      one->digest = rc_xml_in_dup (child, "sha256");
      one->added = rc_xml_in_dup (child, "added");
      one->notes = rc_xml_in_dup_child_content (child, "notes");
      g_ptr_array_add (job->attachments, one);
    }
}

/* The bytes are not in the file: a store that has them shows the picture. */
static void
read_picture (RcXmlIn *in, const xmlNode *node, RcJob *job)
{
  RcPlanPicture *picture = g_new0 (RcPlanPicture, 1);

  picture->storey = (int)rc_xml_in_integer (in, node, "floor", -1000, 1000, 0);
  picture->name = rc_xml_in_dup_text (node, "name");
  picture->digest = rc_xml_in_dup (node, "sha256");
  picture->page = (guint)rc_xml_in_integer (in, node, "page", 1, G_MAXINT, 1);
  picture->at.x = rc_xml_in_signed_length (in, node, "at-x", 0);
  picture->at.y = rc_xml_in_signed_length (in, node, "at-y", 0);
  picture->ticks_per_1000px = rc_xml_in_length (in, node, "thousand-pixels", 0);
  picture->turn_millidegrees = rc_xml_in_integer (in, node, "turn-millidegrees", -360000, 360000, 0);
  picture->strength_percent = (guint)rc_xml_in_integer (in, node, "strength", 0, 100, 100);
  if (picture->ticks_per_1000px <= 0)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("needs the length that 1000 of its pixels stand for"));
  if (rc_job_find_picture (job, picture->storey) != NULL)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("is the second of its storey; one is right"));
  rc_job_take_picture (job, picture);
}

static void
read_pictures (RcXmlIn *in, const xmlNode *node, RcJob *job)
{
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "picture"))
      read_picture (in, child, job);
}

RcPayment *
rc_job_file_read_payment (RcXmlIn *in, const xmlNode *node)
{
  g_autofree char *name = rc_xml_in_dup_text (node, "name");
  RcPayment       *payment = rc_payment_new (name, rc_xml_in_percent (in, node, "percent", 0));

  payment->days = (int)rc_xml_in_integer (in, node, "days", 0, MAX_DAYS, 0);
  return payment;
}

static RcLineTerms *
read_line (RcXmlIn *in, const xmlNode *node)
{
  g_autofree char *item = rc_xml_in_dup (node, "item");
  RcLineTerms     *terms = rc_line_terms_new (item);

  terms->optional = rc_xml_in_yes (node, "optional");
  terms->hidden = rc_xml_in_yes (node, "hidden");
  terms->discount_ppm = rc_xml_in_percent (in, node, "discount-percent", 0);
  terms->tax_ppm = rc_xml_in_percent (in, node, "tax-percent", -1);
  return terms;
}

static RcExtraLine *
read_extra (RcXmlIn *in, const xmlNode *node, const RcJob *job)
{
  g_autofree char *id = rc_xml_in_dup (node, "id");
  RcExtraLine     *extra = rc_extra_line_new (id);

  extra->item = rc_xml_in_dup (node, "item");
  extra->name = rc_xml_in_dup_text (node, "name");
  extra->quantity_micro = rc_xml_in_quantity (in, node, "quantity", RC_MICRO);
  extra->unit = rc_xml_in_unit (in, node, "unit", RC_UNIT_EACH);
  extra->price = rc_xml_in_money (in, node, "price", &job->currency, 0);
  extra->cost = rc_xml_in_money (in, node, "cost", &job->currency, 0);
  extra->is_work = rc_xml_in_yes (node, "work");
  return extra;
}

static RcAlternative *
read_alternative (const xmlNode *node)
{
  g_autofree char *id = rc_xml_in_dup (node, "id"), *name = rc_xml_in_dup_text (node, "name");
  RcAlternative   *alternative = rc_alternative_new (id, name);

  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "swap"))
      {
        g_autofree char *place = rc_xml_in_dup (child, "place"), *carpet = rc_xml_in_dup (child, "carpet");
        g_autofree char *option = rc_xml_in_dup (child, "option");

        g_ptr_array_add (alternative->swaps, rc_swap_new (place, carpet, option));
      }
  return alternative;
}

static void
read_offer (RcXmlIn *in, const xmlNode *node, RcJob *job)
{
  RcOffer         *offer = job->offer;
  g_autofree char *detail = rc_xml_in_dup (node, "detail");
  GError          *error = NULL;

  offer->discount_ppm = rc_xml_in_percent (in, node, "discount-percent", 0);
  offer->discount = rc_xml_in_money (in, node, "discount", &job->currency, 0);
  offer->valid_days = (int)rc_xml_in_integer (in, node, "valid-days", 0, MAX_DAYS, 0);
  offer->tax_area = rc_xml_in_dup (node, "tax-area");
  if (detail != NULL && !rc_detail_parse (detail, &offer->detail, &error))
    rc_xml_in_take_error (in, node, "detail", error);
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "terms"))
      offer->terms = rc_xml_in_dup_content (child);
    else if (rc_xml_in_is (child, "line"))
      g_ptr_array_add (offer->lines, read_line (in, child));
    else if (rc_xml_in_is (child, "extra"))
      g_ptr_array_add (offer->extras, read_extra (in, child, job));
    else if (rc_xml_in_is (child, "payment"))
      g_ptr_array_add (offer->payments, rc_job_file_read_payment (in, child));
    else if (rc_xml_in_is (child, "alternative"))
      g_ptr_array_add (offer->alternatives, read_alternative (child));
}

void
rc_job_file_read_office (RcXmlIn *in, const xmlNode *node, RcJob *job)
{
  if (rc_xml_in_is (node, "states"))
    read_states (in, node, job);
  else if (rc_xml_in_is (node, "attachments"))
    read_attachments (node, job);
  else if (rc_xml_in_is (node, "pictures"))
    read_pictures (in, node, job);
  else if (rc_xml_in_is (node, "offer"))
    read_offer (in, node, job);
}

static void
write_states (RcXmlOut *out, const RcJob *job)
{
  gboolean open = FALSE;

  for (guint i = 0; i < RC_N_JOB_STATES; i++)
    {
      if (job->reached[i] == NULL)
        continue;
      if (!open)
        rc_xml_out_open (out, "states");
      open = TRUE;
      rc_xml_out_open (out, "state");
      rc_xml_out_attribute (out, "name", rc_job_state_get_name (i));
      rc_xml_out_attribute (out, "date", job->reached[i]);
      rc_xml_out_close (out);
    }
  if (open)
    rc_xml_out_close (out);
}

static void
write_attachments (RcXmlOut *out, const GPtrArray *attachments)
{
  if (attachments->len == 0)
    return;
  rc_xml_out_open (out, "attachments");
  for (guint i = 0; i < attachments->len; i++)
    {
      const RcAttachment *one = attachments->pdata[i];

      rc_xml_out_open (out, "attachment");
      rc_xml_out_attribute (out, "id", one->id);
      rc_xml_out_attribute (out, "name", one->name);
      rc_xml_out_attribute (out, "place", one->place);
      rc_xml_out_attribute (out, "sha256", one->digest);
      rc_xml_out_attribute (out, "added", one->added);
      rc_xml_out_text (out, "notes", one->notes);
      rc_xml_out_close (out);
    }
  rc_xml_out_close (out);
}

static void
write_pictures (RcXmlOut *out, const GPtrArray *pictures)
{
  if (pictures->len == 0)
    return;
  rc_xml_out_open (out, "pictures");
  for (guint i = 0; i < pictures->len; i++)
    {
      const RcPlanPicture *one = pictures->pdata[i];

      rc_xml_out_open (out, "picture");
      if (one->storey != 0)
        rc_xml_out_attribute_format (out, "floor", "%d", one->storey);
      rc_xml_out_attribute (out, "name", one->name);
      rc_xml_out_attribute (out, "sha256", one->digest);
      if (one->page != 1)
        rc_xml_out_attribute_format (out, "page", "%u", one->page);
      rc_xml_out_length (out, "at-x", one->at.x);
      rc_xml_out_length (out, "at-y", one->at.y);
      rc_xml_out_length (out, "thousand-pixels", one->ticks_per_1000px);
      if (one->turn_millidegrees != 0)
        rc_xml_out_attribute_format (out, "turn-millidegrees", "%" G_GINT64_FORMAT, one->turn_millidegrees);
      if (one->strength_percent != 100)
        rc_xml_out_attribute_format (out, "strength", "%u", one->strength_percent);
      rc_xml_out_close (out);
    }
  rc_xml_out_close (out);
}

void
rc_job_file_write_payment (RcXmlOut *out, const RcPayment *payment)
{
  rc_xml_out_open (out, "payment");
  rc_xml_out_attribute (out, "name", payment->name);
  rc_xml_out_percent (out, "percent", payment->part_ppm);
  if (payment->days != 0)
    rc_xml_out_attribute_format (out, "days", "%d", payment->days);
  rc_xml_out_close (out);
}

static void
write_percent_unless (RcXmlOut *out, const char *name, gint64 ppm, gint64 usual)
{
  if (ppm != usual)
    rc_xml_out_percent (out, name, ppm);
}

static void
write_line (RcXmlOut *out, const RcLineTerms *terms)
{
  rc_xml_out_open (out, "line");
  rc_xml_out_attribute (out, "item", terms->item);
  rc_xml_out_attribute (out, "optional", terms->optional ? "yes" : NULL);
  rc_xml_out_attribute (out, "hidden", terms->hidden ? "yes" : NULL);
  write_percent_unless (out, "discount-percent", terms->discount_ppm, 0);
  write_percent_unless (out, "tax-percent", terms->tax_ppm, -1);
  rc_xml_out_close (out);
}

static void
write_extra (RcXmlOut *out, const RcExtraLine *extra, const RcCurrency *currency)
{
  rc_xml_out_open (out, "extra");
  rc_xml_out_attribute (out, "id", extra->id);
  rc_xml_out_attribute (out, "item", extra->item);
  rc_xml_out_attribute (out, "name", extra->name);
  rc_xml_out_quantity (out, "quantity", extra->quantity_micro);
  rc_xml_out_attribute (out, "unit", rc_unit_get_name (extra->unit));
  if (extra->price != 0)
    rc_xml_out_money (out, "price", extra->price, currency);
  if (extra->cost != 0)
    rc_xml_out_money (out, "cost", extra->cost, currency);
  rc_xml_out_attribute (out, "work", extra->is_work ? "yes" : NULL);
  rc_xml_out_close (out);
}

static void
write_alternative (RcXmlOut *out, const RcAlternative *alternative)
{
  rc_xml_out_open (out, "alternative");
  rc_xml_out_attribute (out, "id", alternative->id);
  rc_xml_out_attribute (out, "name", alternative->name);
  for (guint i = 0; i < alternative->swaps->len; i++)
    {
      const RcSwap *swap = alternative->swaps->pdata[i];

      rc_xml_out_open (out, "swap");
      rc_xml_out_attribute (out, "place", swap->place);
      rc_xml_out_attribute (out, "carpet", swap->carpet);
      rc_xml_out_attribute (out, "option", swap->option);
      rc_xml_out_close (out);
    }
  rc_xml_out_close (out);
}

static void
write_offer (RcXmlOut *out, const RcOffer *offer, const RcCurrency *currency)
{
  rc_xml_out_open (out, "offer");
  write_percent_unless (out, "discount-percent", offer->discount_ppm, 0);
  if (offer->discount != 0)
    rc_xml_out_money (out, "discount", offer->discount, currency);
  if (offer->detail != RC_DETAIL_FULL)
    rc_xml_out_attribute (out, "detail", rc_detail_get_name (offer->detail));
  if (offer->valid_days != 0)
    rc_xml_out_attribute_format (out, "valid-days", "%d", offer->valid_days);
  rc_xml_out_attribute (out, "tax-area", offer->tax_area);
  rc_xml_out_text (out, "terms", offer->terms);
  for (guint i = 0; i < offer->lines->len; i++)
    write_line (out, offer->lines->pdata[i]);
  for (guint i = 0; i < offer->extras->len; i++)
    write_extra (out, offer->extras->pdata[i], currency);
  for (guint i = 0; i < offer->payments->len; i++)
    rc_job_file_write_payment (out, offer->payments->pdata[i]);
  for (guint i = 0; i < offer->alternatives->len; i++)
    write_alternative (out, offer->alternatives->pdata[i]);
  rc_xml_out_close (out);
}

static gboolean
is_empty (const RcOffer *offer)
{
  return offer->discount_ppm == 0 && offer->discount == 0 && offer->detail == RC_DETAIL_FULL && offer->valid_days == 0
         && offer->terms == NULL && offer->tax_area == NULL
         && offer->lines->len + offer->extras->len + offer->payments->len + offer->alternatives->len == 0;
}

void
rc_job_file_write_office (RcXmlOut *out, const RcJob *job)
{
  write_states (out, job);
  write_attachments (out, job->attachments);
  write_pictures (out, job->pictures);
  if (!is_empty (job->offer))
    write_offer (out, job->offer, &job->currency);
}
