#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "pen.h"
#include "reason.h"
#include "roll-drawing.h"
#include "words.h"

#define COLUMNS       2u
#define ROWS          4u
#define HEAD_HEIGHT   42.0 /* of every page, so that the labels lie at the same places on all of them */
#define PADDING       10.0
#define FIGURES       40.0             /* what size, dye lot and a line of pieces take */
#define PICTURE       66.0             /* width of the picture at the label's right */
#define HIGHEST       46.0             /* the picture */
#define UNDER_PICTURE (HIGHEST + 50.0) /* its words end above this */

/* What a label is tied to: the cuts of one roll that leave for the job, what stays of it, or a roll in stock. */
typedef struct
{
  const RcCutting *cutting; /* NULL: a roll in stock */
  guint            use;
  const RcRoll    *stock;
  const char      *what;       /* translated */
  gboolean         own_ticket; /* it keeps its roll's ticket */
  gboolean         leaves;     /* for the job, and not into a rack */
  RcLength         width, length;
} Label;

/* A column of text in a label, filled downwards. */
typedef struct
{
  RcSheetWork *work;
  double       x, y, width;
  double       bottom;
} Column;

/* As many lines as it needs, cut off only where the column has no room for them but for `keep` points. */
static void
add_text (Column *column, RcTextStyle style, const char *text, double keep)
{
  PangoLayout *layout = rc_text_layout_new (column->work->pages->context, style, text, column->width);
  double       height;

  pango_layout_set_height (layout, (int)(MAX (1, column->bottom - keep - column->y) * PANGO_SCALE));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  rc_text_measure (layout, NULL, &height);
  rc_page_add_layout (column->work->flow.page, column->x, column->y, layout, rc_text_style_get_grey (style));
  column->y += height + 1;
}

/* In smaller letters where it does not fit otherwise. */
static void
add_name (Column *column, const char *name)
{
  g_autoptr (PangoLayout) layout
      = rc_text_layout_new (column->work->pages->context, RC_TEXT_STRONG, name, column->width);
  double height;

  rc_text_measure (layout, NULL, &height);
  add_text (column, column->y + height + FIGURES <= column->bottom ? RC_TEXT_STRONG : RC_TEXT_LABEL, name, FIGURES);
}

/* "Dye lot: C2"; without a value a line to write it on. */
static void
add_field (Column *column, const char *label, const char *value)
{
  g_autofree char *text = g_strdup_printf (_ ("%s: %s"), label, value && *value ? value : "");
  RcPage          *page = column->work->flow.page;
  PangoLayout     *layout;
  double           width, height;

  column->y += 3; /* room for handwriting */
  if (value && *value)
    {
      add_text (column, RC_TEXT_BODY, text, 0);
      return;
    }
  layout = rc_text_layout_new (column->work->pages->context, RC_TEXT_BODY, text, column->width);
  rc_text_measure (layout, &width, &height);
  rc_page_add_layout (page, column->x, column->y, layout, rc_text_style_get_grey (RC_TEXT_BODY));
  rc_page_add_line (page, column->x + width + 3, column->y + height - 2, column->x + column->width,
                    column->y + height - 2, 0.5, 0.5);
  column->y += height + 1;
}

static void
draw_picture (cairo_t *cr, double x, double y, double width, double height, gconstpointer data G_GNUC_UNUSED)
{
  RcView view = { 0, 0, 1 };
  RcPen  pen;

  rc_pen_init (&pen, cr, &view, &RC_PALETTE_PAPER, 7);
  pen.line = 1.4;
  rc_pen_set_colour (&pen, RC_PALETTE_PAPER.ink, 0.9);
  rc_pen_draw_arrow (&pen, (RcSpot){ x + width / 2, y + height / 2 }, 90, MIN (height - 8, 46));
  rc_pen_clear (&pen);
}

static void
add_caption (RcSheetWork *work, double x, double y, const char *text)
{
  PangoLayout *layout = rc_text_layout_new (work->pages->context, RC_TEXT_NOTE, text, PICTURE);

  pango_layout_set_alignment (layout, PANGO_ALIGN_CENTER);
  rc_page_add_layout (work->flow.page, x, y, layout, rc_text_style_get_grey (RC_TEXT_NOTE));
}

/* The carpet as it lies, the roll's start below, and the way its pile leans. A long one is drawn shorter than it is. */
static void
add_picture (RcSheetWork *work, const Label *label, double x, double y)
{
  double scale = HIGHEST / (double)MAX (label->width, label->length);
  double width = MAX (18, (double)label->width * scale), height = MAX (18, (double)label->length * scale);
  double left = x + (PICTURE - width) / 2, top = y + (HIGHEST - height) / 2;

  rc_page_add_frame (work->flow.page, left, top, width, height, 0.8, 0.3);
  rc_page_add_drawing (work->flow.page, left, top, width, height, draw_picture, NULL, NULL);
  add_caption (work, x, y + HIGHEST + 4, _ ("Pile leans this way; below, the side of the roll’s start"));
}

/* "pieces 1, 3–5": those that come off the roll. (transfer full) */
static char *
dup_pieces (const Label *label)
{
  g_assert (label->cutting != NULL); /* what leaves a roll is cut from it */
  const GArray *placements = label->cutting->answer->placements;
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < placements->len; i++)
    {
      const RcNestPlacement *placement = &g_array_index (placements, RcNestPlacement, i);

      if (placement->roll == label->use)
        g_array_append_val (numbers, g_array_index (label->cutting->piece_numbers, guint, placement->cut));
    }
  return rc_reason_format_pieces (numbers);
}

/* "Job 2026-041  ·  its customer"; of a roll in stock the shop. (transfer full) */
static char *
dup_owner (const RcSheetData *data)
{
  const RcJob     *job = data->plan ? data->plan->job : NULL;
  g_autofree char *number
      = job ? g_strdup_printf (_ ("Job %s"), job->number && *job->number ? job->number : job->id) : NULL;

  if (job)
    return g_strjoin ("  ·  ", number, job->customer.name, NULL);
  return g_strdup (data->book && data->book->shop_name ? data->book->shop_name : "");
}

/* At the foot of the label; returns where it begins. */
static double
add_owner (RcSheetWork *work, double x, double bottom, double width)
{
  g_autofree char *name = dup_owner (work->data);
  PangoLayout     *layout = rc_text_layout_new (work->pages->context, RC_TEXT_STRONG, name, width);
  double           height;

  if (pango_layout_get_line_count (layout) > 2)
    {
      g_object_unref (layout);
      layout = rc_text_layout_new (work->pages->context, RC_TEXT_LABEL, name, width);
    }
  rc_text_measure (layout, NULL, &height);
  rc_page_add_layout (work->flow.page, x, bottom - height, layout, rc_text_style_get_grey (RC_TEXT_STRONG));
  return bottom - height;
}

static char *
dup_size (const RcSheetData *data, const Label *label)
{
  g_autofree char *width = NULL, *length = NULL;

  if (data->plan)
    return rc_text_format_size (data->plan->job, label->width, label->length);
  width = rc_length_format (label->width, data->lengths);
  length = rc_length_format (label->length, data->lengths);
  return label->width > 0 ? g_strdup_printf ("%s × %s", width, length) : g_steal_pointer (&length);
}

static const char *
get_goods_name (const RcSheetData *data, const Label *label)
{
  const RcGoods *goods = label->cutting ? label->cutting->goods
                         : data->book   ? rc_price_book_find_goods (data->book, label->stock->goods_id)
                                        : NULL;

  if (!goods)
    return label->stock->goods_id ? label->stock->goods_id : "";
  return goods->name ? goods->name : goods->id;
}

/* Its own ticket in large letters, or a line to write it on. */
static void
add_ticket (Column *column, const Label *label, const RcRoll *roll)
{
  g_autofree char *ticket = !roll               ? NULL
                            : label->own_ticket ? rc_ticket_format_bare (roll->id)
                                                : rc_ticket_format (roll->id);
  g_autofree char *from = NULL, *bought = NULL;

  if (roll && label->own_ticket)
    {
      add_text (column, RC_TEXT_TITLE, ticket, 0);
      return;
    }
  column->y += 5;
  add_field (column, _ ("Ticket"), NULL);
  column->y += 2;
  bought = label->cutting ? rc_order_dup_length_name (label->cutting, label->use) : NULL;
  from = roll || bought ? g_strdup_printf (_ ("off %s"), roll ? ticket : bought) : NULL;
  if (from)
    add_text (column, RC_TEXT_NOTE, from, 0);
}

static void
add_label (RcSheetWork *work, const Label *label, double x, double y, double width, double height)
{
  const RcRoll *roll
      = label->cutting ? rc_roll_find_stock (work->data->plan, label->cutting, label->use) : label->stock;
  g_autofree char *size = dup_size (work->data, label);
  g_autofree char *pieces = label->leaves ? dup_pieces (label) : NULL;
  Column           column = { work, x + PADDING, y + PADDING, width - PICTURE - 3 * PADDING, 0 };

  column.bottom = add_owner (work, column.x, y + height - PADDING, width - 2 * PADDING) - 2;
  add_text (&column, RC_TEXT_LABEL, label->what, 0);
  add_ticket (&column, label, roll);
  add_name (&column, get_goods_name (work->data, label));
  add_text (&column, RC_TEXT_TOTAL, size, 0);
  add_field (&column, _ ("Dye lot"), roll ? roll->lot : NULL);
  if (label->leaves)
    {
      column.y += 3;
      /* Beside the picture or, under it, across the whole label. */
      if (column.y > y + PADDING + UNDER_PICTURE)
        column.width = width - 2 * PADDING;
      add_text (&column, RC_TEXT_BODY, pieces, 0);
    }
  else
    add_field (&column, _ ("Place"), roll && label->own_ticket ? roll->place : NULL);
  add_picture (work, label, x + width - PADDING - PICTURE, y + PADDING);
}

static void
add_dashes (RcPage *page, double x0, double y0, double x1, double y1)
{
  double length = x1 - x0 + y1 - y0, dash = 4;

  for (int i = 0; i * 2 * dash < length; i++)
    {
      double at = i * 2 * dash, to = MIN (at + dash, length), along = x1 > x0, down = y1 > y0;

      rc_page_add_line (page, x0 + along * at, y0 + down * at, x0 + along * to, y0 + down * to, 0.4, 0.55);
    }
}

/* Head, and the lines to cut along: all labels of a page can be parted with a straight knife. */
static void
add_page (RcSheetWork *work, guint n_labels, double width, double height)
{
  RcFlow *flow = &work->flow;
  double  left = flow->x, top = RC_PAGE_TOP + HEAD_HEIGHT;
  guint   n_rows = (n_labels + COLUMNS - 1) / COLUMNS;

  for (guint row = 0; row <= n_rows; row++)
    add_dashes (flow->page, left, top + row * height, left + flow->width, top + row * height);
  for (guint column = 0; column <= COLUMNS; column++)
    add_dashes (flow->page, left + column * width, top, left + column * width, top + n_rows * height);
}

static void
add_rolls_labels (GArray *labels, const RcCutting *cutting, guint use_index)
{
  const RcNestUse  *use = g_ptr_array_index (cutting->answer->rolls, use_index);
  const RcNestRoll *source
      = use->source < cutting->problem->rolls->len ? g_ptr_array_index (cutting->problem->rolls, use->source) : NULL;
  Label cut = { cutting, use_index, NULL, _ ("CUT FOR THE JOB"), TRUE, TRUE, 0, use->used };

  cut.width = source && source->width > 0 ? source->width : cutting->problem->roll_width;
  g_array_append_val (labels, cut);
  for (guint i = 0; i < cutting->answer->leftovers->len; i++)
    {
      const RcNestLeftover *left = &g_array_index (cutting->answer->leftovers, RcNestLeftover, i);
      gboolean              is_balance = left->along >= use->used;
      Label                 label = { cutting, use_index, NULL, NULL, is_balance, FALSE, left->width, left->length };

      label.what = is_balance ? _ ("BALANCE") : _ ("REMNANT");
      if (left->roll == use_index && left->width >= RC_LEAST_REMNANT && left->length >= RC_LEAST_REMNANT)
        g_array_append_val (labels, label);
    }
}

static void
add_planned (GArray *labels, const RcPlan *plan)
{
  for (guint c = 0; c < plan->cuttings->len; c++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, c);

      for (guint use = 0; use < cutting->answer->rolls->len; use++)
        add_rolls_labels (labels, cutting, use);
    }
}

static void
add_stock (GArray *labels, const RcSheetData *data)
{
  for (guint i = 0; i < data->stock->len; i++)
    {
      const RcRoll  *roll = g_ptr_array_index (data->stock, i);
      const RcGoods *goods = data->book ? rc_price_book_find_goods (data->book, roll->goods_id) : NULL;
      Label          label = { .stock = roll, .own_ticket = TRUE, .width = roll->width, .length = roll->length };

      label.what = roll->remnant ? _ ("REMNANT") : _ ("ROLL");
      if (label.width == 0 && goods)
        label.width = rc_goods_get_usable_width (goods);
      g_array_append_val (labels, label);
    }
}

void
rc_roll_labels_lay_out (RcSheetWork *work)
{
  RcFlow *flow = &work->flow;
  double  width, height;
  g_autoptr (GArray) labels = g_array_new (FALSE, FALSE, sizeof (Label));

  if (work->data->stock)
    add_stock (labels, work->data);
  else
    add_planned (labels, work->data->plan);
  rc_flow_start (flow, work->pages, FALSE);
  rc_flow_text (flow, RC_TEXT_TITLE, rc_sheet_kind_get_label (work->kind));
  rc_flow_text (flow, RC_TEXT_NOTE,
                work->data->stock ? _ ("Cut along the lines; tie each to its carpet, the arrow the way its pile leans.")
                : labels->len > 0 ? _ ("Cut along the lines; tie each to its carpet as soon as it is cut. Measure what "
                                       "is left before it goes into the rack.")
                                  : _ ("There is nothing to cut yet."));
  width = flow->width / COLUMNS;
  height = (flow->bottom - RC_PAGE_TOP - HEAD_HEIGHT) / ROWS;
  for (guint i = 0; i < labels->len; i++)
    {
      guint cell = i % (COLUMNS * ROWS), row = cell / COLUMNS;

      if (i > 0 && cell == 0)
        rc_flow_break (flow, FALSE);
      if (cell == 0)
        add_page (work, MIN (labels->len - i, COLUMNS * ROWS), width, height);
      add_label (work, &g_array_index (labels, Label, i), flow->x + (cell % COLUMNS) * width,
                 RC_PAGE_TOP + HEAD_HEIGHT + row * height, width, height);
    }
}
