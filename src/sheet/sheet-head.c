#include "sheet-head.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "logo.h"
#include "words.h"

#define LOGO_WIDTH  120.0 /* at most */
#define LOGO_HEIGHT 48.0
#define LOGO_GAP    12.0

const char *
rc_sheet_get_number (const RcSheetData *data)
{
  return data->number && *data->number ? data->number : _ ("Draft");
}

static void
append_part (GString *text, const char *part)
{
  if (part && *part)
    g_string_append_printf (text, "%s%s", text->len ? "  ·  " : "", part);
}

/* What an order is for, as the office writes it; whose house that is, and what is done there, is not the supplier's
 * business. */
static const char *
get_order_jobs (const RcSheetData *data)
{
  const RcJob *job = data->plan ? data->plan->job : NULL;

  if (data->jobs || !job)
    return data->jobs ? data->jobs : "";
  return job->number && *job->number ? job->number : job->id;
}

char *
rc_sheet_dup_about (RcSheetKind kind, const RcSheetData *data)
{
  const RcJob *job;
  GString     *text;

  if (kind == RC_SHEET_ORDER)
    return g_strdup (get_order_jobs (data));
  if (!data->plan)
    return g_strdup (""); /* of stock, not of a job */
  job = data->plan->job;
  text = g_string_new (NULL);
  append_part (text, job->number);
  append_part (text, job->title);
  append_part (text, job->customer.name);

  return g_string_free (text, FALSE);
}

char *
rc_sheet_dup_foot (const RcSheetData *data)
{
  GString *text = g_string_new (NULL);

  append_part (text, data->book ? data->book->shop_name : NULL);
  append_part (text, data->number);
  append_part (text, data->date);

  return g_string_free (text, FALSE);
}

void
rc_sheet_add_fields (RcSheetWork *work, RcSheetField *fields, guint n_fields)
{
  RcFlow *flow = &work->flow;
  double  gap = 14, shares = 0, tallest = 0, x = flow->x;

  for (guint i = 0; i < n_fields; i++)
    shares += fields[i].share;
  rc_page_add_line (flow->page, flow->x, flow->y, flow->x + flow->width, flow->y, 0.5, 0.5);
  flow->y += 5;
  for (guint i = 0; i < n_fields; i++)
    {
      double       width = (flow->width - gap * (n_fields - 1)) * fields[i].share / shares, height, label_height;
      PangoLayout *label = rc_text_layout_new (work->pages->context, RC_TEXT_LABEL, fields[i].label, width);
      PangoLayout *value = rc_text_layout_new (work->pages->context, RC_TEXT_BODY,
                                               fields[i].value && *fields[i].value ? fields[i].value : "–", width);

      rc_text_measure (label, NULL, &label_height);
      rc_text_measure (value, NULL, &height);
      rc_page_add_layout (flow->page, x, flow->y, label, rc_text_style_get_grey (RC_TEXT_LABEL));
      rc_page_add_layout (flow->page, x, flow->y + label_height + 1, value, rc_text_style_get_grey (RC_TEXT_BODY));
      tallest = MAX (tallest, label_height + 1 + height);
      x += width + gap;
      g_clear_pointer (&fields[i].value, g_free);
    }
  flow->y += tallest + 5;
  rc_page_add_line (flow->page, flow->x, flow->y, flow->x + flow->width, flow->y, 0.5, 0.5);
  flow->y += 6;
}

static char *
dup_measured (const RcMeasure *measure)
{
  GString *text = g_string_new (measure->id);

  if (measure->date && *measure->date)
    g_string_append_printf (text, ", %s", measure->date);
  if (measure->taken_by && *measure->taken_by)
    g_string_append_printf (text, "\n%s", measure->taken_by);

  return g_string_free (text, FALSE);
}

/* In the warehouse nobody calls on the customer. */
static char *
dup_head_customer (const RcSheetWork *work)
{
  const RcCustomer *customer = &work->data->plan->job->customer;

  return work->kind == RC_SHEET_CUT_LIST ? g_strdup (customer->name) : rc_words_dup_customer (customer);
}

void
rc_sheet_add_job_head (RcSheetWork *work)
{
  const RcSheetData *data = work->data;
  const RcJob       *job = data->plan->job;
  RcFlow            *flow = &work->flow;
  const char        *shop = data->book && data->book->shop_name ? data->book->shop_name : "";
  PangoLayout       *name = rc_text_layout_new (work->pages->context, RC_TEXT_SUBHEADING, shop, flow->width * 0.5);
  RcSheetField       fields[] = {
          { _ ("JOB"), g_strdup_printf ("%s\n%s", job->number ? job->number : job->id, job->title ? job->title : ""), 1.3 },
          { _ ("CUSTOMER"), dup_head_customer (work), 1.6 },
          { _ ("MEASURE"), dup_measured (data->plan->measure), 0.9 },
          { _ ("DATE"), g_strdup (data->date), 0.7 },
  };

  double name_height, top = flow->y;

  pango_layout_set_alignment (name, PANGO_ALIGN_RIGHT);
  rc_text_measure (name, NULL, &name_height);
  rc_page_add_layout (flow->page, flow->x + flow->width * 0.5, top + 8, name, 0.36);
  flow->width *= 0.5;
  rc_flow_text (flow, RC_TEXT_TITLE, rc_sheet_kind_get_label (work->kind));
  flow->width *= 2;
  flow->y = MAX (flow->y, top + 8 + name_height) + 3;
  rc_sheet_add_fields (work, fields, G_N_ELEMENTS (fields));
}

/* Logo, name and address of the shop in a column `width` wide; the cursor stands below them. */
static void
add_shop (RcSheetWork *work, double width)
{
  const RcPriceBook *book = work->data->book;
  RcFlow            *flow = &work->flow;
  double             top = flow->y, x = flow->x, full = flow->width, logo_width = 0, logo_height = 0;

  if (!book)
    return;
  if (rc_logo_add (flow->page, x, top, LOGO_WIDTH, LOGO_HEIGHT, book->logo, &logo_width, &logo_height))
    logo_width += LOGO_GAP;
  flow->x += logo_width;
  flow->width = width - logo_width;
  if (book->shop_name && *book->shop_name)
    rc_flow_text (flow, RC_TEXT_SHOP, book->shop_name);
  if (book->shop_address && *book->shop_address)
    {
      flow->y += 2;
      rc_flow_text (flow, RC_TEXT_NOTE, book->shop_address);
    }
  flow->y = MAX (flow->y, top + logo_height);
  flow->x = x;
  flow->width = full;
}

static char *
dup_letter_job (const RcSheetWork *work)
{
  const RcJob *job = work->kind != RC_SHEET_ORDER ? work->data->plan->job : NULL;

  return job ? g_strdup_printf ("%s\n%s", job->number ? job->number : job->id, job->title ? job->title : "")
             : g_strdup (get_order_jobs (work->data));
}

void
rc_sheet_add_letter_head (RcSheetWork *work, const char *to_label, const char *to, const char *deliver_to)
{
  const RcSheetData *data = work->data;
  RcFlow            *flow = &work->flow;
  double             full = flow->width, top = flow->y, height;
  PangoLayout       *title = rc_text_layout_new (work->pages->context, RC_TEXT_TITLE, work->pages->title, full * 0.42);
  RcSheetField       fields[] = {
          { to_label, g_strdup (to), 1.5 },           { _ ("DELIVER TO"), g_strdup (deliver_to), 1.4 },
          { _ ("JOB"), dup_letter_job (work), 1.4 },  { _ ("NUMBER"), g_strdup (rc_sheet_get_number (data)), 0.7 },
          { _ ("DATE"), g_strdup (data->date), 0.7 },
  };

  pango_layout_set_alignment (title, PANGO_ALIGN_RIGHT);
  rc_text_measure (title, NULL, &height);
  rc_page_add_layout (flow->page, flow->x + full * 0.58, top, title, rc_text_style_get_grey (RC_TEXT_TITLE));
  add_shop (work, full * 0.55);
  flow->y = MAX (flow->y, top + height) + 14;
  rc_page_add_fill (flow->page, flow->x, flow->y - 6, full, 2.2, 0.08);
  flow->y += 4;
  if (!deliver_to)
    {
      g_free (fields[1].value);
      memmove (&fields[1], &fields[2], sizeof fields - 2 * sizeof fields[0]);
    }
  rc_sheet_add_fields (work, fields, G_N_ELEMENTS (fields) - (deliver_to ? 0 : 1));
}

void
rc_sheet_add_signature (RcSheetWork *work, double x, double width, const char *label)
{
  RcFlow      *flow = &work->flow;
  PangoLayout *layout = rc_text_layout_new (work->pages->context, RC_TEXT_NOTE, label, width);

  rc_page_add_line (flow->page, x, flow->y, x + width, flow->y, 0.6, 0.2);
  rc_page_add_layout (flow->page, x, flow->y + 3, layout, rc_text_style_get_grey (RC_TEXT_NOTE));
}
