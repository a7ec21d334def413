#include "sheets-command.h"

#include "job-work.h"
#include "json-out.h"
#include "document-options.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>

#define PNG_DPI 150.0

typedef struct
{
  const char *folder;
  const char *language; /* of all sheets; NULL: orders come in their suppliers' */
  GPtrArray  *written;  /* of char*, paths */
} Output;

static gboolean
write_sheet (RcSheetKind kind, const RcSheetData *data, const char *name, Output *output, GError **error)
{
  g_autofree char *pdf_name = g_strconcat (name, ".pdf", NULL);
  g_autofree char *png_name = g_strconcat (name, ".png", NULL);
  g_autofree char *pdf = g_build_filename (output->folder, pdf_name, NULL);
  g_autofree char *png = g_build_filename (output->folder, png_name, NULL);
  guint            n_pages;

  if (!rc_sheet_write_pdf (kind, data, pdf, error) || !rc_sheet_write_png (kind, data, PNG_DPI, png, error))
    return FALSE;
  g_ptr_array_add (output->written, g_steal_pointer (&pdf));
  n_pages = rc_sheet_count_pages (kind, data);
  for (guint page = 0; page < n_pages; page++)
    g_ptr_array_add (output->written, rc_document_dup_numbered_path (png, page, n_pages));
  return TRUE;
}

static gboolean
write_sheets (RcJobWork *work, RcPaper paper, Output *output, GError **error)
{
  static const RcSheetKind kinds[] = {
    RC_SHEET_SEAM_PLAN, RC_SHEET_FITTERS, RC_SHEET_CUT_LIST,    RC_SHEET_ROLL_LABELS,
    RC_SHEET_QUOTATION, RC_SHEET_OPTIONS, RC_SHEET_JOB_SUMMARY,
  };
  g_autoptr (GPtrArray) orders = rc_job_work_order (work, output->language, error);
  RcSheetData data;

  if (orders == NULL || !rc_job_work_price_alternatives (work, error))
    return FALSE;
  data = rc_job_work_get_sheet_data (work, paper);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (!write_sheet (kinds[i], &data, rc_sheet_kind_get_name (kinds[i]), output, error))
      return FALSE;
  if (work->alternatives->len > 0
      && !write_sheet (RC_SHEET_ALTERNATIVES, &data, rc_sheet_kind_get_name (RC_SHEET_ALTERNATIVES), output, error))
    return FALSE;
  for (guint i = 0; i < orders->len; i++)
    {
      g_autofree char *name = rc_document_dup_numbered_path (rc_sheet_kind_get_name (RC_SHEET_ORDER), i, orders->len);

      data.order = g_ptr_array_index (orders, i);
      data.language = output->language == NULL ? rc_price_book_get_language (work->book, data.order->supplier) : NULL;
      if (!write_sheet (RC_SHEET_ORDER, &data, name, output, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
make_folder (const char *folder, GError **error)
{
  if (g_mkdir_with_parents (folder, 0777) == 0 && g_file_test (folder, G_FILE_TEST_IS_DIR))
    return TRUE;
  g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_FAILED, _ ("Cannot make the folder “%s”"), folder);
  return FALSE;
}

static int
print_written (const GPtrArray *written, gboolean as_json)
{
  g_autoptr (RcJson) json = rc_json_new ();

  for (guint i = 0; i < written->len && !as_json; i++)
    printf ("%s\n", (const char *)g_ptr_array_index (written, i));
  if (!as_json)
    return RC_EXIT_DONE;
  rc_json_begin_object (json, NULL);
  rc_json_begin_array (json, "files");
  for (guint i = 0; i < written->len; i++)
    rc_json_add_string (json, NULL, g_ptr_array_index (written, i));
  rc_json_end_array (json);
  rc_json_end_object (json);
  return rc_json_print (json) ? RC_EXIT_DONE : RC_EXIT_FAILED;
}

int
rc_sheets_command_run (int argc, char **argv)
{
  g_auto (RcJobOptions) job_options = { 0 };
  g_autofree char   *folder = NULL, *paper_text = NULL, *language = NULL;
  const GOptionEntry entries[] = {
    { "to", 0, 0, G_OPTION_ARG_FILENAME, &folder, N_ ("Folder to write to, made when it is not there"), "FOLDER" },
    rc_paper_option_get_entry (&paper_text),
    rc_language_option_get_entry (&language),
    G_OPTION_ENTRY_NULL,
  };
  const RcCommandUsage usage = {
    .name = "sheets",
    .parameters = "JOB.xml --to FOLDER",
    .summary = _ ("Writes a job's sheets as PDF and PNG: seam plan, fitters' sheet, cut list, roll labels, quotation, "
                  "options and "
                  "alternatives side by side, and an order for each supplier. Prints the names of the files."),
    .entries = entries,
    .job_options = &job_options,
    .n_least = 1,
    .n_most = 1,
  };
  g_auto (GStrv) arguments = NULL;
  g_autoptr (RcJobWork) work = NULL;
  g_autoptr (GPtrArray) written = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  RcPaper paper;
  int     status;

  rc_job_options_init (&job_options);
  if (!rc_command_parse (&usage, argc, argv, &arguments, &status))
    return status;
  if (folder == NULL)
    return rc_command_fail_usage (usage.name, _ ("--to FOLDER is missing"));
  if (!rc_paper_option_parse (paper_text, &paper, &error) || !rc_language_option_apply (language, &error))
    return rc_command_fail_usage (usage.name, "%s", error->message);
  work = rc_job_work_new (arguments[0], &job_options, &error);
  if (work == NULL || !rc_job_work_price (work, &error) || !rc_job_work_look_at_held (work, &error)
      || !make_folder (folder, &error) || !write_sheets (work, paper, &(Output){ folder, language, written }, &error))
    return rc_command_fail (usage.name, error);
  return print_written (written, job_options.json);
}
