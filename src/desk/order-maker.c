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
  maker->known = g_ptr_array_new_with_free_func (g_free);
  maker->stock = g_ptr_array_new_with_free_func (g_free);
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
  g_ptr_array_unref (maker->known);
  g_ptr_array_unref (maker->stock);
  rc_roll_claims_free (maker->claims);
  g_free (maker);
}

static RcOutcome *
plan_job (const RcOrderMaker *maker, const RcJob *job, const char *measure, RcHeld *held, GError **error)
{
  return rc_outcome_new (job, measure, held, maker->book, maker->day, 0, NULL, NULL, NULL, NULL, error);
}

/* What the orders are made from. `outcome` (nullable) is what is known already. (transfer full) */
static RcOutcome *
find_outcome (const RcOrderMaker *maker, const RcJob *job, RcHeld *held, RcOutcome *outcome, GError **error)
{
  g_autoptr (RcOutcome) planned = outcome != NULL ? rc_outcome_ref (outcome) : plan_job (maker, job, NULL, held, error);

  if (planned == NULL || held->orders->len == 0 || planned->before != NULL)
    return g_steal_pointer (&planned);
  return rc_outcome_new_whole (planned, job, held, error);
}

static gboolean
has_quantities (const RcOutcome *outcome, const char *job_id, GError **error)
{
  if (outcome->quantities != NULL)
    return TRUE;
  if (error != NULL && outcome->price_fault != NULL)
    *error = g_error_copy (outcome->price_fault);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("What job %s needs cannot be told yet."), job_id);
  return FALSE;
}

typedef struct
{
  const RcOrderMaker *maker;
  const RcOutcome    *planned;
  const RcHeld       *held;
} Making;

static GPtrArray *
make_orders (gpointer data, GError **error)
{
  const Making       *making = data;
  const RcOrderMaker *maker = making->maker;
  const RcOutcome    *planned = making->planned;

  if (making->held->orders->len > 0)
    return rc_order_new_supplement (planned->job, planned->plan, planned->quantities, making->held, maker->book,
                                    maker->day, error);
  return rc_order_new_all (planned->job, planned->plan, planned->quantities, maker->book, maker->day, error);
}

gboolean
rc_order_maker_add_job (RcOrderMaker *maker, const char *job_id, RcOutcome *outcome, GError **error)
{
  g_autoptr (RcJob) job = rc_store_read_job (maker->store, job_id, error);
  g_autoptr (RcHeld) held = job != NULL ? rc_store_load_held (maker->store, job, error) : NULL;
  g_autoptr (RcOutcome) planned = held != NULL ? find_outcome (maker, job, held, outcome, error) : NULL;
  g_autoptr (GPtrArray) orders = NULL;
  const char *number;

  if (planned == NULL || !has_quantities (planned, job_id, error))
    return FALSE;
  number = job->number && *job->number ? job->number : job_id;
  orders = rc_orders_new_worded (maker->book, make_orders, &(Making){ maker, planned, held }, error);
  if (orders == NULL || !rc_roll_claims_add (maker->claims, planned->plan, number, error)
      || !rc_orders_add (maker->orders, orders, number, error))
    return FALSE;
  g_ptr_array_add (maker->jobs, g_strdup (job_id));
  g_ptr_array_add (maker->known, rc_held_dup_order_numbers (held, NULL));
  g_ptr_array_extend_and_steal (maker->stock, rc_order_list_stock (planned->plan));
  return TRUE;
}

GPtrArray *
rc_order_maker_keep (RcOrderMaker *maker, GError **error)
{
  return rc_store_make_purchases (maker->store, maker->orders, maker->jobs, maker->known, maker->day, error);
}
