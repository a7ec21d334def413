#include "job.h"

RcJob *
rc_job_new (const char *id, const RcCurrency *currency)
{
  RcJob *job = g_new0 (RcJob, 1);

  job->id = g_strdup (id);
  job->currency = *currency;
  job->tax_ppm = -1;
  rc_settings_init (&job->settings, currency);
  job->goods = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_goods_free);
  job->rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  job->measures = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_measure_free);
  g_ptr_array_add (job->measures, rc_measure_new ("M1"));
  job->offer = rc_offer_new ();
  job->attachments = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_attachment_free);
  job->pictures = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_plan_picture_free);
  return job;
}

static void
copy_customer (const RcCustomer *from, RcCustomer *to)
{
  to->name = g_strdup (from->name);
  to->address = g_strdup (from->address);
  to->phone = g_strdup (from->phone);
  to->email = g_strdup (from->email);
  to->language = g_strdup (from->language);
}

RcJob *
rc_job_copy (const RcJob *job)
{
  RcJob *copy = rc_job_new (job->id, &job->currency);

  copy->number = g_strdup (job->number);
  copy->title = g_strdup (job->title);
  copy->date = g_strdup (job->date);
  copy->notes = g_strdup (job->notes);
  copy_customer (&job->customer, &copy->customer);
  copy->units = job->units;
  copy->tax_ppm = job->tax_ppm;
  copy->settings = job->settings;
  for (guint i = 0; i < job->goods->len; i++)
    g_ptr_array_add (copy->goods, rc_goods_copy (job->goods->pdata[i]));
  for (guint i = 0; i < job->rolls->len; i++)
    g_ptr_array_add (copy->rolls, rc_roll_copy (job->rolls->pdata[i]));
  g_ptr_array_set_size (copy->measures, 0);
  for (guint i = 0; i < job->measures->len; i++)
    g_ptr_array_add (copy->measures, rc_measure_copy (job->measures->pdata[i]));
  for (guint i = 0; i < RC_N_JOB_STATES; i++)
    copy->reached[i] = g_strdup (job->reached[i]);
  rc_offer_free (copy->offer);
  copy->offer = rc_offer_copy (job->offer);
  for (guint i = 0; i < job->attachments->len; i++)
    g_ptr_array_add (copy->attachments, rc_attachment_copy (job->attachments->pdata[i]));
  for (guint i = 0; i < job->pictures->len; i++)
    g_ptr_array_add (copy->pictures, rc_plan_picture_copy (job->pictures->pdata[i]));
  return copy;
}

void
rc_job_free (RcJob *job)
{
  if (job == NULL)
    return;
  g_free (job->id);
  g_free (job->number);
  g_free (job->title);
  g_free (job->date);
  g_free (job->notes);
  g_free (job->customer.name);
  g_free (job->customer.address);
  g_free (job->customer.phone);
  g_free (job->customer.email);
  g_free (job->customer.language);
  g_ptr_array_unref (job->goods);
  g_ptr_array_unref (job->rolls);
  g_ptr_array_unref (job->measures);
  for (guint i = 0; i < RC_N_JOB_STATES; i++)
    g_free (job->reached[i]);
  rc_offer_free (job->offer);
  g_ptr_array_unref (job->attachments);
  g_ptr_array_unref (job->pictures);
  g_free (job);
}

static void
set_text (char **field, const char *text)
{
  char *copy = g_strdup (text);

  g_free (*field);
  *field = copy;
}

static gboolean
is_cut (gconstpointer roll, gconstpointer unused)
{
  return ((const RcRoll *)roll)->cut;
}

RcJob *
rc_job_new_duplicate (const RcJob *job, const char *id, const char *number, const char *date,
                      const RcCustomer *customer)
{
  RcJob *copy = rc_job_copy (job);
  guint  cut;

  set_text (&copy->id, id);
  set_text (&copy->number, number);
  set_text (&copy->date, date);
  rc_job_set_state (copy, RC_JOB_ENQUIRY, date);
  while (g_ptr_array_find_with_equal_func (copy->rolls, NULL, is_cut, &cut))
    g_ptr_array_remove_index (copy->rolls, cut);
  if (customer == NULL)
    return copy;
  set_text (&copy->customer.name, customer->name);
  set_text (&copy->customer.address, customer->address);
  set_text (&copy->customer.phone, customer->phone);
  set_text (&copy->customer.email, customer->email);
  set_text (&copy->customer.language, customer->language);
  g_ptr_array_set_size (copy->attachments, 0);
  return copy;
}

RcJobState
rc_job_get_state (const RcJob *job)
{
  RcJobState state = RC_N_JOB_STATES - 1;

  while (state > RC_JOB_ENQUIRY && job->reached[state] == NULL)
    state--;
  return state;
}

void
rc_job_set_state (RcJob *job, RcJobState state, const char *date)
{
  char *day;

  g_return_if_fail ((guint)state < RC_N_JOB_STATES);

  day = g_strdup (date); /* may be the one that is freed */
  for (guint i = state; i < RC_N_JOB_STATES; i++)
    g_clear_pointer (&job->reached[i], g_free);
  job->reached[state] = day;
}

RcMeasure *
rc_job_get_measure (const RcJob *job, const char *id)
{
  if (id == NULL)
    return job->measures->len > 0 ? job->measures->pdata[job->measures->len - 1] : NULL;
  for (guint i = 0; i < job->measures->len; i++)
    {
      RcMeasure *measure = job->measures->pdata[i];

      if (g_strcmp0 (measure->id, id) == 0)
        return measure;
    }
  return NULL;
}

const RcGoods *
rc_job_find_goods (const RcJob *job, const char *id)
{
  for (guint i = 0; i < job->goods->len; i++)
    {
      const RcGoods *goods = job->goods->pdata[i];

      if (g_strcmp0 (goods->id, id) == 0)
        return goods;
    }
  return NULL;
}

const RcLengthStyle *
rc_job_get_length_style (const RcJob *job)
{
  return job->units == RC_UNITS_METRIC ? &RC_LENGTH_STYLE_METRIC : &RC_LENGTH_STYLE_IMPERIAL;
}

RcLengthUnit
rc_job_get_bare_unit (const RcJob *job)
{
  return job->units == RC_UNITS_METRIC ? RC_LENGTH_UNIT_MM : RC_LENGTH_UNIT_FOOT_INCH;
}

RcPlanPicture *
rc_job_find_picture (const RcJob *job, int storey)
{
  for (guint i = 0; i < job->pictures->len; i++)
    if (((const RcPlanPicture *)job->pictures->pdata[i])->storey == storey)
      return job->pictures->pdata[i];
  return NULL;
}

void
rc_job_take_picture (RcJob *job, RcPlanPicture *picture)
{
  RcPlanPicture *old = rc_job_find_picture (job, picture->storey);
  guint          at = 0;

  if (old != NULL)
    g_ptr_array_remove (job->pictures, old);
  while (at < job->pictures->len && ((const RcPlanPicture *)job->pictures->pdata[at])->storey < picture->storey)
    at++;
  g_ptr_array_insert (job->pictures, (int)at, picture);
}
