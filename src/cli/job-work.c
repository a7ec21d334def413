#include "job-work.h"

#include "job-file.h"
#include "remeasure.h"
#include "shop-store.h"

#include <glib/gi18n-lib.h>
#include <unistd.h>

void
rc_job_work_free (RcJobWork *work)
{
  if (work == NULL)
    return;
  g_clear_pointer (&work->alternatives, g_ptr_array_unref);
  g_clear_pointer (&work->quote, rc_quote_free);
  g_clear_pointer (&work->quantities, g_ptr_array_unref);
  g_clear_pointer (&work->plan, rc_plan_free);
  g_clear_pointer (&work->book, rc_price_book_free);
  g_clear_pointer (&work->held, rc_held_unref);
  g_clear_pointer (&work->known, rc_held_unref);
  g_clear_pointer (&work->job, rc_job_free);
  g_free (work);
}

static gboolean
find_measure (RcJobWork *work, GError **error)
{
  g_autoptr (GString) known = NULL;

  work->measure = rc_job_get_measure (work->job, work->options->measure);
  if (work->measure != NULL)
    return TRUE;
  known = g_string_new (NULL);
  for (guint i = 0; i < work->job->measures->len; i++)
    {
      const RcMeasure *measure = g_ptr_array_index (work->job->measures, i);

      g_string_append_printf (known, "%s%s", i > 0 ? ", " : "", measure->id);
    }
  g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("There is no measure “%s”; the job has %s"),
               work->options->measure, known->str);
  return FALSE;
}

RcJobWork *
rc_job_work_new (const char *path, const RcJobOptions *options, GError **error)
{
  g_autoptr (RcJobWork) work = g_new0 (RcJobWork, 1);

  work->options = options;
  work->job = rc_job_file_read (path, &work->book, error);
  if (work->job == NULL || !find_measure (work, error))
    return NULL;
  return g_steal_pointer (&work);
}

/* --- what the file leaves out --- */

static const RcGoods *
find_goods (const GPtrArray *goods, const char *id)
{
  for (guint i = 0; i < goods->len; i++)
    {
      const RcGoods *candidate = g_ptr_array_index (goods, i);

      if (g_str_equal (candidate->id, id))
        return candidate;
    }
  return NULL;
}

/* What is not in the file is the shop's: rates (a job free of tax says so itself), letterhead, terms. */
static void
merge_shop (RcPriceBook *book, const RcPriceBook *from)
{
  if (book->tax_ppm == 0)
    book->tax_ppm = from->tax_ppm;
  if (book->deposit_ppm == 0)
    book->deposit_ppm = from->deposit_ppm;
  if (book->shop_name == NULL)
    {
      book->shop_name = g_strdup (from->shop_name);
      g_free (book->shop_address);
      book->shop_address = g_strdup (from->shop_address);
    }
  if (book->terms == NULL)
    book->terms = g_strdup (from->terms);
}

/* The file's own goods and prices go before the store's. */
static void
merge_book (RcPriceBook *book, const RcPriceBook *from)
{
  guint n_own = book->prices->len;

  merge_shop (book, from);

  for (guint i = 0; i < from->goods->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (from->goods, i);

      if (find_goods (book->goods, goods->id) == NULL)
        g_ptr_array_add (book->goods, rc_goods_copy (goods));
    }
  for (guint i = 0; i < from->prices->len; i++)
    {
      const RcPrice *price = g_ptr_array_index (from->prices, i);
      gboolean       is_own = FALSE;

      for (guint j = 0; j < n_own && !is_own; j++)
        is_own = g_str_equal (((const RcPrice *)g_ptr_array_index (book->prices, j))->item, price->item);
      if (!is_own)
        g_ptr_array_add (book->prices, rc_price_copy (price));
    }
}

static gboolean
add_rolls (RcJobWork *work, RcStore *store, GError **error)
{
  g_autoptr (GPtrArray) rolls = rc_store_load_rolls_for_job (store, work->job->id, error);

  if (rolls == NULL)
    return FALSE;
  for (guint i = 0; i < rolls->len; i++)
    {
      const RcRoll *roll = g_ptr_array_index (rolls, i);

      if (rc_job_find_goods (work->job, roll->goods_id) != NULL)
        g_ptr_array_add (work->job->rolls, rc_roll_copy (roll));
    }
  return TRUE;
}

static gboolean
complete_from_store (RcJobWork *work, GError **error)
{
  g_autoptr (RcStore) store = rc_shop_store_open (work->options->store, error);
  g_autoptr (RcPriceBook) book = store != NULL ? rc_store_load_price_book (store, error) : NULL;
  gboolean wants_rolls = work->book == NULL && work->job->rolls->len == 0;

  if (book == NULL)
    return FALSE;
  work->store_read = TRUE;
  if (work->book == NULL)
    work->book = g_steal_pointer (&book);
  else if (g_str_equal (work->book->currency.code, book->currency.code))
    merge_book (work->book, book);
  rc_job_adopt_goods (work->job, work->book->goods);
  return !wants_rolls || add_rolls (work, store, error);
}

/* Whether a step that failed may do better with the store's help. */
static gboolean
may_try_store (const RcJobWork *work, const GError *error)
{
  return !work->store_read && g_error_matches (error, RC_ERROR, RC_ERROR_REFERENCE);
}

/* --- the steps --- */

static void
take_option (RcJobWork *work)
{
  if (work->options->option == NULL)
    return;
  for (guint i = 0; i < work->measure->areas->len; i++)
    {
      RcFloorArea *area = g_ptr_array_index (work->measure->areas, i);

      g_free (area->option);
      area->option = g_strdup (work->options->option);
    }
}

static gboolean
check_option (const RcJobWork *work, GError **error)
{
  if (work->options->option == NULL)
    return TRUE;
  for (guint i = 0; i < work->plan->areas->len; i++)
    {
      const RcAreaPlan *area_plan = g_ptr_array_index (work->plan->areas, i);
      g_autoptr (GString) known = g_string_new (NULL);
      guint index;

      if (rc_area_plan_find_option (area_plan, work->options->option, &index))
        continue;
      for (guint j = 0; j < area_plan->options->len; j++)
        g_string_append_printf (known, "%s%s", j > 0 ? ", " : "",
                                ((const RcOption *)g_ptr_array_index (area_plan->options, j))->name);
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("Area “%s” has no option “%s”; it has %s"),
                   area_plan->area->name, work->options->option, known->str);
      return FALSE;
    }
  return TRUE;
}

/* One line on the terminal, written over again and again. */
static void
show_progress (const RcPlanProgress *progress, gpointer data)
{
  const RcCurrency *currency = data;
  g_autofree char  *cost = rc_money_format (progress->cost, currency);
  g_autofree char  *least = rc_money_format (progress->cost_lower_bound, currency);

  g_printerr ("\r\033[K%3.0f %%  ", progress->share * 100);
  if (progress->cost > 0)
    g_printerr (_ ("%s: cost %s, at least %s"), progress->what, cost, least);
  else
    g_printerr ("%s", progress->what);
}

static RcPlanParams
get_params (const RcJobWork *work)
{
  const RcJobOptions *options = work->options;
  return (
      RcPlanParams){ .seconds = options->seconds, .effort = (guint64)options->effort, .seed = (guint64)options->seed };
}

gboolean
rc_job_work_plan (RcJobWork *work, GError **error)
{
  RcPlanParams params = get_params (work);
  gboolean     is_watched = (params.seconds > 0 || params.effort > 0) && isatty (STDERR_FILENO);
  RcPriceDay   day = { .date = work->options->date };

  if (work->plan != NULL)
    return TRUE;
  if ((work->book == NULL || !rc_job_adopt_goods (work->job, work->book->goods)) && !complete_from_store (work, error))
    return FALSE;
  take_option (work);
  day.book = work->book;
  if (is_watched)
    {
      params.progress = show_progress;
      params.progress_data = &work->job->currency;
    }
  work->plan = rc_plan_new (work->job, work->measure, rc_price_day_get_weights, &day, &params, error);
  if (is_watched)
    g_printerr ("\r\033[K");
  return work->plan != NULL && check_option (work, error);
}

gboolean
rc_job_work_measure_out (RcJobWork *work, GError **error)
{
  g_autoptr (GError) first_error = NULL;

  if (work->quantities != NULL)
    return TRUE;
  if (!rc_job_work_plan (work, error))
    return FALSE;
  work->quantities = rc_quantity_compute (work->plan, work->book->goods, &first_error);
  if (work->quantities == NULL && may_try_store (work, first_error))
    {
      if (!complete_from_store (work, error))
        return FALSE;
      g_clear_error (&first_error);
      work->quantities = rc_quantity_compute (work->plan, work->book->goods, &first_error);
    }
  if (work->quantities == NULL)
    g_propagate_error (error, g_steal_pointer (&first_error));
  return work->quantities != NULL;
}

static gboolean
check_currency (const RcJobWork *work, GError **error)
{
  if (g_str_equal (work->job->currency.code, work->book->currency.code))
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
               _ ("The job is in %s but the prices are in %s; give the job prices of its own or change its currency"),
               work->job->currency.code, work->book->currency.code);
  return FALSE;
}

gboolean
rc_job_work_price (RcJobWork *work, GError **error)
{
  g_autoptr (GError) first_error = NULL;

  if (work->quote != NULL)
    return TRUE;
  if (!rc_job_work_measure_out (work, error) || !check_currency (work, error))
    return FALSE;
  work->quote = rc_quote_new (work->job, work->quantities, work->book, work->options->date, &first_error);
  if (work->quote == NULL && may_try_store (work, first_error))
    {
      if (!complete_from_store (work, error))
        return FALSE;
      g_clear_error (&first_error);
      work->quote = rc_quote_new (work->job, work->quantities, work->book, work->options->date, &first_error);
    }
  if (work->quote == NULL)
    g_propagate_error (error, g_steal_pointer (&first_error));
  return work->quote != NULL;
}

static RcQuote *
price_alternative (RcJobWork *work, const RcAlternative *alternative, GError **error)
{
  g_autoptr (RcJob) job = rc_job_new_alternative (work->job, work->measure->id, alternative, error);
  RcPlanParams params = get_params (work);
  RcPriceDay   day = { work->book, work->options->date };
  g_autoptr (RcPlan) plan = NULL;
  g_autoptr (GPtrArray) quantities = NULL;
  RcQuote *quote;

  if (job == NULL)
    return NULL;
  plan = rc_plan_new (job, rc_job_get_measure (job, work->measure->id), rc_price_day_get_weights, &day, &params, error);
  quantities = plan != NULL ? rc_quantity_compute (plan, work->book->goods, error) : NULL;
  quote = quantities != NULL ? rc_quote_new (job, quantities, work->book, work->options->date, error) : NULL;
  if (quote != NULL)
    quote->option = g_strdup (alternative->name != NULL ? alternative->name : alternative->id);
  return quote;
}

gboolean
rc_job_work_price_alternatives (RcJobWork *work, GError **error)
{
  const GPtrArray *alternatives = work->job->offer->alternatives;
  g_autoptr (GPtrArray) quotes = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_free);

  if (work->alternatives != NULL)
    return TRUE;
  if (!rc_job_work_price (work, error))
    return FALSE;
  for (guint i = 0; i < alternatives->len; i++)
    {
      RcQuote *quote = price_alternative (work, g_ptr_array_index (alternatives, i), error);

      if (quote == NULL)
        return FALSE;
      g_ptr_array_add (quotes, quote);
    }
  work->alternatives = g_steal_pointer (&quotes);
  return TRUE;
}

/* Takes the job over, planned anew with what it has. */
static gboolean
plan_whole (RcJobWork *work, RcJob *whole, const RcPlan *laid, GError **error)
{
  RcPlanParams params = get_params (work);
  RcPriceDay   day = { work->book, work->options->date };
  RcMeasure   *measure = rc_job_get_measure (whole, work->measure->id);
  RcPlan      *plan;

  params.laid = laid;
  rc_plan_hold_pile (whole, measure, laid, rc_price_day_get_weights, &day);
  plan = rc_plan_new (whole, measure, rc_price_day_get_weights, &day, &params, error);
  if (plan == NULL)
    {
      rc_job_free (whole);
      return FALSE;
    }
  rc_plan_free (work->plan);
  rc_job_free (work->job);
  work->plan = plan;
  work->job = whole;
  work->measure = measure;
  return TRUE;
}

/* Earlier measures of the work's job, and the last that was planned. */
typedef struct
{
  const RcJobWork *of;
  const char      *path;
  RcJobOptions     options; /* borrows */
  RcJobWork       *found;
} Earlier;

static const RcPlan *
find_plan (const RcMeasure *measure, gpointer data)
{
  Earlier *self = data;

  if (self->found != NULL && g_str_equal (self->found->measure->id, measure->id))
    return self->found->plan;
  g_clear_pointer (&self->found, rc_job_work_free);
  self->options = *self->of->options;
  self->options.measure = measure->id;
  self->found = rc_job_work_new (self->path, &self->options, NULL);
  if (self->found != NULL && !rc_job_work_plan (self->found, NULL))
    g_clear_pointer (&self->found, rc_job_work_free);
  return self->found != NULL ? self->found->plan : NULL;
}

gboolean
rc_job_work_count_on_held (RcJobWork *work, const char *path, GError **error)
{
  g_autoptr (RcStore) store = NULL;
  Earlier  earlier = { .of = work, .path = path };
  gboolean done;

  if (!rc_job_work_plan (work, error))
    return FALSE;
  store = rc_shop_store_open (work->options->store, error);
  work->held = store != NULL ? rc_store_load_held (store, work->job, error) : NULL;
  if (work->held == NULL)
    return FALSE;
  rc_held_find_begun_by (work->held, work->job, work->measure, find_plan, &earlier);
  done = plan_whole (work, rc_held_dup_whole_job (work->held, work->job),
                     earlier.found != NULL ? earlier.found->plan : work->plan, error);
  g_clear_pointer (&earlier.found, rc_job_work_free);
  return done;
}

gboolean
rc_job_work_look_at_held (RcJobWork *work, GError **error)
{
  g_autoptr (RcStore) store = NULL;

  if (!rc_shop_store_is_there (work->options->store))
    return TRUE;
  store = rc_shop_store_open (work->options->store, error);
  work->known = store != NULL ? rc_store_load_held (store, work->job, error) : NULL;
  return work->known != NULL;
}

static GPtrArray *
make_orders (gpointer data, GError **error)
{
  const RcJobWork *work = data;

  if (work->held != NULL)
    return rc_order_new_supplement (work->job, work->plan, work->quantities, work->held, work->book,
                                    work->options->date, error);
  return rc_order_new_all (work->job, work->plan, work->quantities, work->book, work->options->date, error);
}

GPtrArray *
rc_job_work_order (RcJobWork *work, const char *language, GError **error)
{
  if (!rc_job_work_price (work, error))
    return NULL;
  return language != NULL ? make_orders (work, error) : rc_orders_new_worded (work->book, make_orders, work, error);
}

const char *
rc_job_work_get_number (const RcJobWork *work)
{
  return work->job->number != NULL && work->job->number[0] != '\0' ? work->job->number : work->job->id;
}

RcSheetData
rc_job_work_get_sheet_data (const RcJobWork *work, RcPaper paper)
{
  return (RcSheetData){
    .plan = work->plan,
    .quantities = work->quantities,
    .quote = work->quote,
    .alternatives = work->alternatives,
    .book = work->book,
    .date = work->options->date,
    .paper = paper,
    .accepted = rc_held_get_accepted_for (work->known, work->job, work->measure->id),
    .accepted_as = work->known != NULL ? work->known->accepted_as : NULL,
  };
}
