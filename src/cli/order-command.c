#include "order-command.h"

#include "job-work.h"
#include "lines.h"
#include "document-options.h"
#include "shop-store.h"
#include "ubl.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

static void
add_order (RcJson *json, const RcOrder *order)
{
  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "supplier", order->supplier);
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

static int
print_json (const RcJobWork *work, const GPtrArray *orders)
{
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "job", rc_job_work_get_number (work));
  rc_json_add_string (json, "measure", work->measure->id);
  rc_json_add_string (json, "date", work->options->date);
  rc_json_begin_array (json, "orders");
  for (guint i = 0; i < orders->len; i++)
    add_order (json, g_ptr_array_index (orders, i));
  rc_json_end_array (json);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

static void
print_text (const GPtrArray *orders)
{
  if (orders->len == 0)
    printf ("%s\n", _ ("Nothing to order: all is in stock."));
  for (guint i = 0; i < orders->len; i++)
    {
      const RcOrder *order = g_ptr_array_index (orders, i);

      printf ("%s%s\n\n", i > 0 ? "\n" : "", order->supplier[0] != '\0' ? order->supplier : _ ("No supplier named"));
      rc_lines_print_quote (order->lines, &order->currency);
      rc_lines_print_sums (0, order->net, order->tax, order->total, &order->currency);
      for (guint j = 0; j < order->notes->len; j++)
        printf ("  %s\n", (const char *)g_ptr_array_index (order->notes, j));
    }
}

/* Of the order at `index`: the number given, numbered on where there are several. */
static char *
dup_number (const char *number, guint index, guint count)
{
  return number == NULL || count == 1 ? g_strdup (number) : g_strdup_printf ("%s-%u", number, index + 1);
}

/* An order in XML must have a number; one that has none goes by the job's. */
static gboolean
write_ubl (const RcJobWork *work, const RcOrder *order, const char *number, const char *path, GError **error)
{
  g_autofree char *xml = rc_ubl_format_order (work->job, work->book, order, number, work->options->date);

  return g_file_set_contents (path, xml, -1, error);
}

static gboolean
write_order (const RcJobWork *work, const GPtrArray *orders, guint index, const RcDocumentOptions *options,
             GError **error)
{
  RcSheetData      data = rc_job_work_get_sheet_data (work, options->paper);
  g_autofree char *number = dup_number (options->number, index, orders->len);

  data.order = g_ptr_array_index (orders, index);
  data.number = number;
  if (options->pdf != NULL)
    {
      g_autofree char *path = rc_document_dup_numbered_path (options->pdf, index, orders->len);

      if (!rc_sheet_write_pdf (RC_SHEET_ORDER, &data, path, error))
        return FALSE;
    }
  if (options->ubl != NULL)
    {
      g_autofree char *path = rc_document_dup_numbered_path (options->ubl, index, orders->len);
      g_autofree char *own = dup_number (rc_job_work_get_number (work), index, orders->len);

      return write_ubl (work, data.order, number != NULL ? number : own, path, error);
    }
  return TRUE;
}

static gboolean
write_files (const RcJobWork *work, const GPtrArray *orders, const RcDocumentOptions *options, GError **error)
{
  for (guint i = 0; i < orders->len; i++)
    if (!write_order (work, orders, i, options, error))
      return FALSE;
  return TRUE;
}

/* Each order under a number of its own. */
static gboolean
keep_orders (const RcJobWork *work, const GPtrArray *orders, GError **error)
{
  g_autoptr (RcStore) store = rc_shop_store_open (work->options->store, error);
  g_autoptr (GPtrArray) jobs = g_ptr_array_new ();

  g_ptr_array_add (jobs, work->job->id);
  for (guint i = 0; store != NULL && i < orders->len; i++)
    {
      g_autofree char *number
          = rc_store_make_purchase (store, g_ptr_array_index (orders, i), jobs, work->options->date, error);

      if (number == NULL)
        return FALSE;
      if (!work->options->json)
        printf (_ ("Order %s\n"), number);
    }
  return store != NULL;
}

int
rc_order_command_run (int argc, char **argv)
{
  g_auto (RcJobOptions) job_options = { 0 };
  g_auto (RcDocumentOptions) options = { 0 };
  GOptionEntry         entries[RC_DOCUMENT_N_ENTRIES];
  const RcCommandUsage usage = {
    .name = "order",
    .parameters = "JOB.xml",
    .summary = _ ("Says what to order for a job, supplier by supplier, at what the shop pays. Carpet in stock is not "
                  "ordered."),
    .description = _ ("With several suppliers the files are numbered: order.pdf gives order-1.pdf, order-2.pdf."),
    .entries = entries,
    .job_options = &job_options,
    .n_least = 1,
    .n_most = 1,
  };
  g_auto (GStrv) arguments = NULL;
  g_autoptr (RcJobWork) work = NULL;
  g_autoptr (GPtrArray) orders = NULL;
  g_autoptr (GError) error = NULL;
  int status;

  rc_document_options_get_entries (&options, entries);
  rc_job_options_init (&job_options);
  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  if (!rc_document_options_complete (&options, &error))
    return rc_command_fail_usage (usage.name, "%s", error->message);
  work = rc_job_work_new (arguments[0], &job_options, &error);
  orders = work != NULL ? rc_job_work_order (work, &error) : NULL;
  if (orders == NULL || !write_files (work, orders, &options, &error)
      || (options.keep && !keep_orders (work, orders, &error)))
    return rc_command_fail (usage.name, error);
  if (job_options.json)
    return print_json (work, orders);
  print_text (orders);
  return RC_EXIT_DONE;
}
