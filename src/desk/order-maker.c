#include "order-maker.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

RcOrderMaker *
rc_order_maker_new (RcStore *store, const char *day, GError **error)
{
  RcPriceBook  *book = rc_store_load_price_book (store, error);
  RcOrderMaker *maker;

  if (book == NULL)
    return NULL;
  maker = g_new0 (RcOrderMaker, 1);
  maker->store = store;
  maker->book = book;
  maker->day = g_strdup (day);
  maker->orders = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_order_free);
  maker->jobs = g_ptr_array_new_with_free_func (g_free);
  maker->claims = rc_roll_claims_new ();
  return maker;
}

void
rc_order_maker_free (RcOrderMaker *maker)
{
  rc_price_book_free (maker->book);
  g_free (maker->day);
  g_ptr_array_unref (maker->orders);
  g_ptr_array_unref (maker->jobs);
  rc_roll_claims_free (maker->claims);
  g_free (maker);
}

static RcOutcome *
plan_job (const RcOrderMaker *maker, const char *job_id, GError **error)
{
  g_autoptr (RcJob) job = rc_store_load_job (maker->store, job_id, error);

  g_autoptr (RcHeld) held = job != NULL ? rc_store_load_held (maker->store, job, error) : NULL;

  return held != NULL ? rc_outcome_new (job, NULL, held, maker->book, maker->day, 0, NULL, NULL, NULL, NULL, error)
                      : NULL;
}

gboolean
rc_order_maker_add_job (RcOrderMaker *maker, const char *job_id, RcOutcome *outcome, GError **error)
{
  g_autoptr (RcOutcome) planned = NULL;
  g_autoptr (GPtrArray) orders = NULL;
  const char *number;

  if (!rc_store_check_not_ordered (maker->store, job_id, error))
    return FALSE;
  planned = outcome != NULL ? rc_outcome_ref (outcome) : plan_job (maker, job_id, error);
  if (planned == NULL)
    return FALSE;
  if (planned->quantities == NULL)
    {
      if (error != NULL && planned->price_fault != NULL)
        *error = g_error_copy (planned->price_fault);
      else
        g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("What job %s needs cannot be told yet."), job_id);
      return FALSE;
    }
  number = planned->job->number && *planned->job->number ? planned->job->number : job_id;
  orders = rc_order_new_all (planned->job, planned->plan, planned->quantities, maker->book, maker->day, error);
  if (orders == NULL || !rc_roll_claims_add (maker->claims, planned->plan, number, error)
      || !rc_orders_add (maker->orders, orders, number, error))
    return FALSE;
  g_ptr_array_add (maker->jobs, g_strdup (job_id));
  return TRUE;
}

GPtrArray *
rc_order_maker_keep (RcOrderMaker *maker, GError **error)
{
  return rc_store_make_purchases (maker->store, maker->orders, maker->jobs, maker->day, error);
}
