#include "sheet.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rowcut-error.h"
#include "sheet-layouts.h"
#include "translation.h"

struct _RcSheet
{
  RcSheetKind kind;
  RcSheetData data;
  RcPages    *pages;
};

static const struct
{
  const char *name, *label;
  void (*lay_out) (RcSheetWork *work);
} kinds[RC_N_SHEETS] = {
  [RC_SHEET_SEAM_PLAN] = { "seam-plan", N_ ("Seam plan"), rc_seam_plan_lay_out },
  [RC_SHEET_FITTERS] = { "fitters-sheet", N_ ("Fitters’ sheet"), rc_fitters_sheet_lay_out },
  [RC_SHEET_CUT_LIST] = { "cut-list", N_ ("Cut list"), rc_cut_list_lay_out },
  [RC_SHEET_QUOTATION] = { "quotation", N_ ("Quotation"), rc_quotation_lay_out },
  [RC_SHEET_ORDER] = { "order", N_ ("Order"), rc_order_sheet_lay_out },
  [RC_SHEET_OPTIONS] = { "options", N_ ("Options compared"), rc_options_sheet_lay_out },
  [RC_SHEET_ALTERNATIVES] = { "alternatives", N_ ("Alternatives"), rc_alternatives_lay_out },
  [RC_SHEET_ROLL_LABELS] = { "roll-labels", N_ ("Roll labels"), rc_roll_labels_lay_out },
  [RC_SHEET_JOB_SUMMARY] = { "job-summary", N_ ("Job summary"), rc_job_summary_lay_out },
};

const char *
rc_sheet_kind_get_name (RcSheetKind kind)
{
  g_return_val_if_fail (kind < RC_N_SHEETS, NULL);

  return kinds[kind].name;
}

const char *
rc_sheet_kind_get_label (RcSheetKind kind)
{
  g_return_val_if_fail (kind < RC_N_SHEETS, NULL);

  return _ (kinds[kind].label);
}

gboolean
rc_sheet_kind_is_customers (RcSheetKind kind)
{
  return kind == RC_SHEET_QUOTATION || kind == RC_SHEET_OPTIONS || kind == RC_SHEET_ALTERNATIVES
         || kind == RC_SHEET_SEAM_PLAN;
}

void
rc_paper_get_size (RcPaper paper, double *width_pt, double *height_pt)
{
  /* A4 is 210 mm by 297 mm; a point is 1/72 in. */
  *width_pt = paper == RC_PAPER_A4 ? 210 * 72 / 25.4 : 612;
  *height_pt = paper == RC_PAPER_A4 ? 297 * 72 / 25.4 : 792;
}

/* The sheet's name on paper. */
static const char *
get_title (RcSheetKind kind, const RcSheetData *data)
{
  return kind == RC_SHEET_QUOTATION && data->quote->variation ? _ ("Variation") : rc_sheet_kind_get_label (kind);
}

RcSheet *
rc_sheet_new (RcSheetKind kind, const RcSheetData *data)
{
  RcSheet         *sheet;
  RcSheetWork      work;
  double           width, height;
  g_autofree char *about = NULL, *foot = NULL;

  g_return_val_if_fail (kind < RC_N_SHEETS && data, NULL);
  g_return_val_if_fail (data->plan || kind == RC_SHEET_ORDER || (kind == RC_SHEET_ROLL_LABELS && data->stock), NULL);
  g_return_val_if_fail ((kind != RC_SHEET_QUOTATION && kind != RC_SHEET_ALTERNATIVES) || data->quote, NULL);
  g_return_val_if_fail (kind != RC_SHEET_ORDER || data->order, NULL);

  rc_translation_begin (data->language);
  sheet = g_new0 (RcSheet, 1);
  sheet->kind = kind;
  sheet->data = *data;
  rc_paper_get_size (data->paper, &width, &height);
  about = rc_sheet_dup_about (kind, data);
  foot = rc_sheet_dup_foot (data);
  sheet->pages = rc_pages_new (width, height, get_title (kind, data), about, foot);
  work.kind = kind;
  work.data = &sheet->data;
  work.pages = sheet->pages;
  kinds[kind].lay_out (&work);
  rc_pages_finish (sheet->pages);
  rc_translation_end ();

  return sheet;
}

void
rc_sheet_free (RcSheet *sheet)
{
  if (!sheet)
    return;
  rc_pages_free (sheet->pages);
  g_free (sheet);
}

guint
rc_sheet_get_n_pages (const RcSheet *sheet)
{
  return sheet->pages->pages->len;
}

void
rc_sheet_get_page_size (const RcSheet *sheet, guint page, double *width_pt, double *height_pt)
{
  const RcPage *the_page;

  g_return_if_fail (page < sheet->pages->pages->len);

  the_page = g_ptr_array_index (sheet->pages->pages, page);
  *width_pt = the_page->width;
  *height_pt = the_page->height;
}

void
rc_sheet_draw (const RcSheet *sheet, guint page, cairo_t *cr)
{
  /* Drawings are worded when they are drawn. */
  rc_translation_begin (sheet->data.language);
  rc_pages_draw (sheet->pages, page, cr);
  rc_translation_end ();
}

guint
rc_sheet_count_pages (RcSheetKind kind, const RcSheetData *data)
{
  g_autoptr (RcSheet) sheet = rc_sheet_new (kind, data);

  return sheet ? rc_sheet_get_n_pages (sheet) : 0;
}

void
rc_sheet_draw_page (RcSheetKind kind, const RcSheetData *data, guint page, cairo_t *cr)
{
  g_autoptr (RcSheet) sheet = rc_sheet_new (kind, data);
  double width, height;

  g_return_if_fail (sheet && page < rc_sheet_get_n_pages (sheet));

  rc_sheet_get_page_size (sheet, page, &width, &height);
  cairo_save (cr);
  if (width > height)
    {
      cairo_translate (cr, 0, width);
      cairo_rotate (cr, -G_PI_2);
    }
  rc_sheet_draw (sheet, page, cr);
  cairo_restore (cr);
}

static cairo_status_t
append_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);

  return CAIRO_STATUS_SUCCESS;
}

/* A creation date that does not come from the clock. */
static char *
dup_pdf_date (const char *date)
{
  if (!date || !*date)
    return g_strdup ("1970-01-01T00:00:00Z");
  if (strchr (date, 'T'))
    return g_strdup (date);

  return g_strdup_printf ("%sT00:00:00Z", date);
}

static gboolean
set_drawing_error (cairo_status_t status, const char *path, GError **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_FAILED, _ ("%s could not be drawn: %s"), path,
               cairo_status_to_string (status));

  return FALSE;
}

GBytes *
rc_sheet_make_pdf (RcSheetKind kind, const RcSheetData *data, GError **error)
{
  g_autoptr (RcSheet) sheet = rc_sheet_new (kind, data);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autofree char *title = NULL, *about = NULL, *created = NULL;
  cairo_surface_t *surface;
  cairo_status_t   status;
  cairo_t         *cr;
  double           width, height;

  g_return_val_if_fail (sheet, NULL);

  rc_paper_get_size (data->paper, &width, &height);
  surface = cairo_pdf_surface_create_for_stream (append_bytes, bytes, width, height);
  about = rc_sheet_dup_about (kind, data);
  rc_translation_begin (data->language);
  title = g_strdup_printf ("%s  ·  %s", get_title (kind, data), about);
  rc_translation_end ();
  created = dup_pdf_date (data->date);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Rowcut");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, created);
  cr = cairo_create (surface);
  for (guint page = 0; page < rc_sheet_get_n_pages (sheet); page++)
    {
      rc_sheet_get_page_size (sheet, page, &width, &height);
      cairo_pdf_surface_set_size (surface, width, height);
      rc_sheet_draw (sheet, page, cr);
      cairo_show_page (cr);
    }
  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);

  if (!set_drawing_error (status, rc_sheet_kind_get_name (kind), error))
    return NULL;

  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}

gboolean
rc_sheet_write_pdf (RcSheetKind kind, const RcSheetData *data, const char *path, GError **error)
{
  g_autoptr (GBytes) bytes = NULL;

  g_return_val_if_fail (path, FALSE);

  bytes = rc_sheet_make_pdf (kind, data, error);

  return bytes && g_file_set_contents (path, g_bytes_get_data (bytes, NULL), (gssize)g_bytes_get_size (bytes), error);
}

static char *
dup_page_path (const char *path, guint page, guint n_pages)
{
  g_autofree char *stem = NULL;

  if (n_pages == 1)
    return g_strdup (path);
  if (!g_str_has_suffix (path, ".png"))
    return g_strdup_printf ("%s-%u", path, page + 1);
  stem = g_strndup (path, strlen (path) - 4);

  return g_strdup_printf ("%s-%u.png", stem, page + 1);
}

static gboolean
write_png_page (const RcSheet *sheet, guint page, double dpi, const char *path, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  double           width, height;
  cairo_surface_t *surface;
  cairo_status_t   status;
  cairo_t         *cr;

  rc_sheet_get_page_size (sheet, page, &width, &height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)ceil (width * dpi / 72 - 1e-6),
                                        (int)ceil (height * dpi / 72 - 1e-6));
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, dpi / 72, dpi / 72);
  rc_sheet_draw (sheet, page, cr);
  status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, append_bytes, bytes);
  cairo_surface_destroy (surface);

  return set_drawing_error (status, path, error)
         && g_file_set_contents (path, (const char *)bytes->data, bytes->len, error);
}

gboolean
rc_sheet_write_png (RcSheetKind kind, const RcSheetData *data, double dpi, const char *path, GError **error)
{
  g_autoptr (RcSheet) sheet = rc_sheet_new (kind, data);

  g_return_val_if_fail (sheet && path, FALSE);

  if (!(dpi >= 18 && dpi <= 1200))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s: a picture needs 18 to 1200 dots an inch"), path);
      return FALSE;
    }
  for (guint page = 0; page < rc_sheet_get_n_pages (sheet); page++)
    {
      g_autofree char *page_path = dup_page_path (path, page, rc_sheet_get_n_pages (sheet));

      if (!write_png_page (sheet, page, dpi, page_path, error))
        return FALSE;
    }

  return TRUE;
}
