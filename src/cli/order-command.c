#include "order-command.h"

#include "job-work.h"
#include "lines.h"
#include "document-options.h"
#include "roll-claims.h"
#include "shop-store.h"
#include "ubl.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

static void
add_order (RcJson *json, const RcOrder *order)
{
  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "supplier", order->supplier);
  if (order->supplements != NULL)
    rc_json_add_string (json, "supplements", order->supplements);
  rc_lines_add_quote_json (json, order->lines, &order->currency, FALSE);
  rc_json_begin_array (json, "notes");
  for (guint i = 0; i < order->notes->len; i++)
    rc_json_add_string (json, NULL, g_ptr_array_index (order->notes, i));
  rc_json_end_array (json);
  rc_json_add_money (json, "net", order->net, &order->currency);
  rc_json_add_money (json, "tax", order->tax, &order->currency);
  rc_json_add_money (json, "total", order->total, &order->currency);
  rc_json_add_string (json, "currency", order->currency.code);
  rc_json_end_object (json);
}

/* What is ordered at once: jobs, and what they need together. */
typedef struct
{
  gboolean    supplements; /* only what is missing beside what is ordered */
  GPtrArray  *works;       /* of RcJobWork */
  GPtrArray  *orders;      /* of RcOrder */
  char       *jobs;        /* "2026-014, 2026-015" */
  const char *language;    /* borrowed: of all orders; NULL: each in its supplier's */
} Ordering;

static void
ordering_clear (Ordering *ordering)
{
  g_clear_pointer (&ordering->orders, g_ptr_array_unref);
  g_clear_pointer (&ordering->works, g_ptr_array_unref);
  g_clear_pointer (&ordering->jobs, g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Ordering, ordering_clear)

static RcJobWork *
get_work (const Ordering *ordering, guint index)
{
  return g_ptr_array_index (ordering->works, index);
}

static gboolean
is_there (const Ordering *ordering, const RcJobWork *work, GError **error)
{
  for (guint i = 0; i < ordering->works->len; i++)
    if (g_strcmp0 (get_work (ordering, i)->job->id, work->job->id) == 0)
      {
        g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT, _ ("Job %s is there twice"), rc_job_work_get_number (work));
        return TRUE;
      }
  return FALSE;
}

/* One job's orders as they are; of several each line says which it is for. */
static gboolean
add_job (Ordering *ordering, RcJobWork *work, gboolean alone, RcRollClaims *claims, GError **error)
{
  g_autoptr (GPtrArray) orders = rc_job_work_order (work, ordering->language, error);
  const char      *number = rc_job_work_get_number (work);
  g_autofree char *before = ordering->jobs;

  if (orders == NULL || !rc_roll_claims_add (claims, work->plan, number, error))
    {
      ordering->jobs = g_steal_pointer (&before);
      return FALSE;
    }
  ordering->jobs = before != NULL ? g_strdup_printf ("%s, %s", before, number) : g_strdup (number);
  if (!alone)
    return rc_orders_add (ordering->orders, orders, number, error);
  g_ptr_array_unref (ordering->orders);
  ordering->orders = g_steal_pointer (&orders);
  return TRUE;
}

static gboolean
ordering_init (Ordering *ordering, char **paths, const RcJobOptions *options, GError **error)
{
  g_autoptr (RcRollClaims) claims = rc_roll_claims_new ();

  ordering->works = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_job_work_free);
  ordering->orders = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_order_free);
  for (guint i = 0; paths[i] != NULL; i++)
    {
      RcJobWork *work = rc_job_work_new (paths[i], options, error);

      if (work == NULL || is_there (ordering, work, error))
        {
          g_clear_pointer (&work, rc_job_work_free);
          return FALSE;
        }
      g_ptr_array_add (ordering->works, work);
      if ((ordering->supplements && !rc_job_work_count_on_held (work, paths[i], error))
          || !add_job (ordering, work, paths[1] == NULL, claims, error))
        return FALSE;
    }
  return TRUE;
}

/* What nobody has to order. (transfer full) GPtrArray of char*. */
static GPtrArray *
list_stock (const Ordering *ordering)
{
  GPtrArray *list = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < ordering->works->len; i++)
    {
      GPtrArray *own = rc_order_list_stock (get_work (ordering, i)->plan);

      g_ptr_array_extend_and_steal (list, own);
    }
  return list;
}

static int
print_json (const Ordering *ordering)
{
  g_autoptr (RcJson) json = rc_json_new ();
  const RcJobWork *first = get_work (ordering, 0);
  g_autoptr (GPtrArray) stock = list_stock (ordering);

  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "job", rc_job_work_get_number (first));
  rc_json_add_string (json, "measure", first->measure->id);
  rc_json_begin_array (json, "jobs");
  for (guint i = 0; i < ordering->works->len; i++)
    rc_json_add_string (json, NULL, rc_job_work_get_number (get_work (ordering, i)));
  rc_json_end_array (json);
  rc_json_add_string (json, "date", first->options->date);
  rc_json_begin_array (json, "orders");
  for (guint i = 0; i < ordering->orders->len; i++)
    add_order (json, g_ptr_array_index (ordering->orders, i));
  rc_json_end_array (json);
  rc_json_begin_array (json, "from_stock");
  for (guint i = 0; i < stock->len; i++)
    rc_json_add_string (json, NULL, g_ptr_array_index (stock, i));
  rc_json_end_array (json);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

static void
print_text (const Ordering *ordering)
{
  const GPtrArray *orders = ordering->orders;
  g_autoptr (GPtrArray) stock = list_stock (ordering);

  if (orders->len == 0)
    printf ("%s\n", ordering->supplements ? _ ("Nothing is missing beside what is ordered and in stock.")
                                          : _ ("Nothing to order: all is in stock."));
  for (guint i = 0; i < orders->len; i++)
    {
      const RcOrder *order = g_ptr_array_index (orders, i);

      printf ("%s%s\n\n", i > 0 ? "\n" : "", order->supplier[0] != '\0' ? order->supplier : _ ("No supplier named"));
      rc_lines_print_quote (order->lines, &order->currency);
      rc_lines_print_sums (0, order->net, order->tax, order->total, &order->currency);
      for (guint j = 0; j < order->notes->len; j++)
        printf ("  %s\n", (const char *)g_ptr_array_index (order->notes, j));
    }
  if (stock->len > 0)
    printf ("\n%s\n", _ ("Not ordered, as it is there:"));
  for (guint i = 0; i < stock->len; i++)
    printf ("  %s\n", (const char *)g_ptr_array_index (stock, i));
}

/* Of the order at `index`: the number given, numbered on where there are several. */
static char *
dup_number (const char *number, guint index, guint count)
{
  return number == NULL || count == 1 ? g_strdup (number) : g_strdup_printf ("%s-%u", number, index + 1);
}

/* An order in XML must have a number; one that has none goes by the job's. */
static gboolean
write_ubl (const Ordering *ordering, const RcOrder *order, const char *number, const char *path, GError **error)
{
  const RcJobWork *first = get_work (ordering, 0);
  g_autofree char *xml = rc_ubl_format_order (first->job, first->book, order, number, first->options->date);

  return g_file_set_contents (path, xml, -1, error);
}

static gboolean
write_order (const Ordering *ordering, guint index, const RcDocumentOptions *options, GError **error)
{
  const RcJobWork *first = get_work (ordering, 0);
  guint            n = ordering->orders->len;
  RcSheetData      data = rc_job_work_get_sheet_data (first, options->paper);
  g_autofree char *number = dup_number (options->number, index, n);

  data.order = g_ptr_array_index (ordering->orders, index);
  data.number = number;
  data.jobs = ordering->jobs;
  data.language = ordering->language == NULL ? rc_price_book_get_language (first->book, data.order->supplier) : NULL;
  if (options->pdf != NULL)
    {
      g_autofree char *path = rc_document_dup_numbered_path (options->pdf, index, n);

      if (!rc_sheet_write_pdf (RC_SHEET_ORDER, &data, path, error))
        return FALSE;
    }
  if (options->ubl != NULL)
    {
      g_autofree char *path = rc_document_dup_numbered_path (options->ubl, index, n);
      g_autofree char *own = dup_number (rc_job_work_get_number (first), index, n);

      return write_ubl (ordering, data.order, number != NULL ? number : own, path, error);
    }
  return TRUE;
}

static gboolean
write_files (const Ordering *ordering, const RcDocumentOptions *options, GError **error)
{
  for (guint i = 0; i < ordering->orders->len; i++)
    if (!write_order (ordering, i, options, error))
      return FALSE;
  return TRUE;
}

/* Each order under a number of its own. */
static gboolean
keep_orders (const Ordering *ordering, GError **error)
{
  const RcJobOptions *options = get_work (ordering, 0)->options;
  g_autoptr (RcStore) store = rc_shop_store_open (options->store, error);
  g_autoptr (GPtrArray) jobs = g_ptr_array_new (), numbers = NULL;
  g_autoptr (GPtrArray) known = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < ordering->works->len; i++)
    {
      const RcJobWork *work = get_work (ordering, i);

      g_ptr_array_add (jobs, work->job->id);
      g_ptr_array_add (known, work->held != NULL ? rc_held_dup_order_numbers (work->held, NULL) : NULL);
    }
  numbers = store != NULL ? rc_store_make_purchases (store, ordering->orders, jobs, known, options->date, error) : NULL;
  for (guint i = 0; numbers != NULL && !options->json && i < numbers->len; i++)
    printf (_ ("Order %s\n"), (const char *)g_ptr_array_index (numbers, i));
  return numbers != NULL;
}

int
rc_order_command_run (int argc, char **argv)
{
  g_auto (RcJobOptions) job_options = { 0 };
  g_auto (RcDocumentOptions) options = { 0 };
  GOptionEntry         entries[RC_DOCUMENT_N_ENTRIES + 1];
  const RcCommandUsage usage = {
    .name = "order",
    .parameters = "JOB.xml...",
    .summary = _ ("Says what to order for a job or for several together, supplier by supplier, at what the shop pays. "
                  "Carpet in stock is not ordered."),
    .description = _ ("With several suppliers the files are numbered: order.pdf gives order-1.pdf, order-2.pdf."),
    .entries = entries,
    .job_options = &job_options,
    .n_least = 1,
    .n_most = G_MAXINT,
  };
  g_auto (GStrv) arguments = NULL;
  g_auto (Ordering) ordering = { 0 };
  g_autoptr (GError) error = NULL;
  int status;

  rc_document_options_get_entries (&options, entries);
  entries[RC_DOCUMENT_N_ENTRIES - 1]
      = (GOptionEntry){ "supplement",
                        0,
                        0,
                        G_OPTION_ARG_NONE,
                        &ordering.supplements,
                        N_ ("Only what is missing beside what the store says is ordered, "
                            "cut and kept for the job"),
                        NULL };
  entries[RC_DOCUMENT_N_ENTRIES] = (GOptionEntry)G_OPTION_ENTRY_NULL;
  rc_job_options_init (&job_options);
  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  if (!rc_document_options_complete (&options, &error))
    return rc_command_fail_usage (usage.name, "%s", error->message);
  ordering.language = options.language;
  if (!ordering_init (&ordering, arguments, &job_options, &error) || !write_files (&ordering, &options, &error)
      || (options.keep && !keep_orders (&ordering, &error)))
    return rc_command_fail (usage.name, error);
  if (job_options.json)
    return print_json (&ordering);
  print_text (&ordering);
  return RC_EXIT_DONE;
}
