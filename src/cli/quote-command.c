#include "quote-command.h"

#include "job-work.h"
#include "lines.h"
#include "document-options.h"
#include "shop-store.h"
#include "ubl.h"

#include <glib/gi18n-lib.h>

static int
print_json (const RcJobWork *work, const char *number)
{
  const RcQuote   *quote = work->quote;
  const RcCurrency currency = quote->currency;
  g_autoptr (RcJson) json = rc_json_new ();

  rc_json_begin_object (json, NULL);
  rc_json_add_string (json, "job", rc_job_work_get_number (work));
  rc_json_add_string (json, "measure", work->measure->id);
  rc_json_add_string (json, "number", number);
  rc_json_add_string (json, "date", work->options->date);
  rc_lines_add_quote_json (json, quote->lines, &currency, TRUE);
  rc_json_add_money (json, "sum", quote->sum, &currency);
  rc_json_add_money (json, "discount", quote->discount, &currency);
  rc_json_add_money (json, "net", quote->net, &currency);
  rc_json_add_micro (json, "tax_percent", quote->tax_ppm * 100);
  rc_json_add_money (json, "tax", quote->tax, &currency);
  rc_json_begin_array (json, "taxes");
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      const RcTaxPart *part = &g_array_index (quote->taxes, RcTaxPart, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_micro (json, "percent", part->ppm * 100);
      rc_json_add_money (json, "net", part->net, &currency);
      rc_json_add_money (json, "tax", part->tax, &currency);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
  rc_json_add_money (json, "total", quote->total, &currency);
  rc_json_begin_array (json, "payments");
  for (guint i = 0; i < quote->payments->len; i++)
    {
      const RcPaymentStep *step = g_ptr_array_index (quote->payments, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "name", step->name);
      rc_json_add_micro (json, "percent", step->part_ppm * 100);
      rc_json_add_money (json, "amount", step->amount, &currency);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
  rc_json_add_money (json, "deposit", quote->deposit, &currency);
  rc_json_add_money (json, "cost", quote->cost, &currency);
  rc_json_add_money (json, "margin", quote->margin, &currency);
  rc_json_add_string (json, "currency", currency.code);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

/* The job as it stands and its alternatives, priced; issued under one number. */
static gboolean
issue (RcJobWork *work, RcDocumentOptions *options, GError **error)
{
  g_autoptr (RcStore) store = rc_shop_store_open (work->options->store, error);
  g_autoptr (GPtrArray) quotes = g_ptr_array_new ();

  if (store == NULL || !rc_job_work_price_alternatives (work, error))
    return FALSE;
  g_ptr_array_add (quotes, work->quote);
  g_ptr_array_extend (quotes, work->alternatives, NULL, NULL);
  g_free (options->number);
  options->number = rc_store_issue_offer (store, work->job, quotes, options->revises, work->options->date, error);
  return options->number != NULL;
}

/* The paper as the customer gets it. */
static gboolean
keep_paper (const RcJobWork *work, const RcDocumentOptions *options, GError **error)
{
  g_autoptr (RcStore) store = NULL;
  g_autoptr (GBytes) bytes = NULL;
  char *data;
  gsize size;

  if (!options->keep || options->pdf == NULL)
    return TRUE;
  if (!g_file_get_contents (options->pdf, &data, &size, error))
    return FALSE;
  bytes = g_bytes_new_take (data, size);
  store = rc_shop_store_open (work->options->store, error);
  return store != NULL && rc_store_keep_paper (store, options->number, bytes, error);
}

static gboolean
write_files (RcJobWork *work, const RcDocumentOptions *options, GError **error)
{
  RcSheetData data;

  if (options->pdf != NULL && !rc_job_work_price_alternatives (work, error))
    return FALSE;
  data = rc_job_work_get_sheet_data (work, options->paper);
  data.number = options->number;
  if (options->pdf != NULL && !rc_sheet_write_pdf (RC_SHEET_QUOTATION, &data, options->pdf, error))
    return FALSE;
  if (options->ubl != NULL)
    {
      g_autofree char *xml
          = rc_ubl_format_quote (work->job, work->book, work->quote, options->number, work->options->date);

      return g_file_set_contents (options->ubl, xml, -1, error);
    }
  return TRUE;
}

int
rc_quote_command_run (int argc, char **argv)
{
  g_auto (RcJobOptions) job_options = { 0 };
  g_auto (RcDocumentOptions) options = { 0 };
  GOptionEntry         entries[RC_DOCUMENT_N_ENTRIES];
  const RcCommandUsage usage = {
    .name = "quote",
    .parameters = "JOB.xml",
    .summary = _ ("Prices a job for the customer: lines, net, tax, total."),
    .entries = entries,
    .job_options = &job_options,
    .n_least = 1,
    .n_most = 1,
  };
  g_auto (GStrv) arguments = NULL;
  g_autoptr (RcJobWork) work = NULL;
  g_autoptr (GError) error = NULL;
  int status;

  rc_document_options_get_entries (&options, entries);
  rc_job_options_init (&job_options);
  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  if (!rc_document_options_complete (&options, &error))
    return rc_command_fail_usage (usage.name, "%s", error->message);
  work = rc_job_work_new (arguments[0], &job_options, &error);
  if (work == NULL || !rc_job_work_price (work, &error) || (options.keep && !issue (work, &options, &error))
      || !write_files (work, &options, &error) || !keep_paper (work, &options, &error))
    return rc_command_fail (usage.name, error);
  if (job_options.json)
    return print_json (work, options.number);
  rc_lines_print_quote (work->quote->lines, &work->quote->currency);
  rc_lines_print_sums (work->quote->discount, work->quote->net, work->quote->tax, work->quote->total,
                       &work->quote->currency);
  return RC_EXIT_DONE;
}
