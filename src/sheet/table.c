#include "table.h"

#include <string.h>

#define CELL_GAP    10.0 /* between columns */
#define ROW_PADDING 2.2  /* above and under a row's text */
#define LEAST_SHARE 0.38 /* of the width for the columns that share; else titles fold */
#define LEAST_FLEX  80.0 /* a sharing column is not squeezed below this while others can give */

typedef struct
{
  char        *title;
  RcColumnKind kind;
  double       weight;
  double       x, width;
  double       before_point; /* RC_COLUMN_DECIMAL: widest part before the point */
  double       after_point;  /* and from the point on */
} Column;

typedef struct
{
  RcRowKind kind;
  char    **cells; /* one per column */
  char    **notes;
} Row;

struct _RcTable
{
  GPtrArray *columns;
  GPtrArray *rows;
  char      *foot; /* nullable */
};

static void
column_free (gpointer data)
{
  Column *column = data;

  g_free (column->title);
  g_free (column);
}

static void
strings_free (char **strings, guint n)
{
  for (guint i = 0; i < n; i++)
    g_free (strings[i]);
  g_free (strings);
}

RcTable *
rc_table_new (void)
{
  RcTable *table = g_new0 (RcTable, 1);

  table->columns = g_ptr_array_new_with_free_func (column_free);
  table->rows = g_ptr_array_new ();

  return table;
}

void
rc_table_free (RcTable *table)
{
  for (guint i = 0; i < table->rows->len; i++)
    {
      Row *row = g_ptr_array_index (table->rows, i);

      strings_free (row->cells, table->columns->len);
      strings_free (row->notes, table->columns->len);
      g_free (row);
    }
  g_ptr_array_unref (table->rows);
  g_ptr_array_unref (table->columns);
  g_free (table->foot);
  g_free (table);
}

void
rc_table_add_column (RcTable *table, const char *title, RcColumnKind kind, double weight)
{
  Column *column = g_new0 (Column, 1);

  g_return_if_fail (table->rows->len == 0);

  column->title = g_strdup (title);
  column->kind = kind;
  column->weight = weight;
  g_ptr_array_add (table->columns, column);
}

static Row *
add_empty_row (RcTable *table, RcRowKind kind)
{
  Row *row = g_new0 (Row, 1);

  row->kind = kind;
  row->cells = g_new0 (char *, table->columns->len);
  row->notes = g_new0 (char *, table->columns->len);
  g_ptr_array_add (table->rows, row);

  return row;
}

void
rc_table_add_row (RcTable *table, RcRowKind kind, const char *first, ...)
{
  Row    *row = add_empty_row (table, kind);
  va_list cells;

  row->cells[0] = g_strdup (first);
  va_start (cells, first);
  for (guint i = 1; i < table->columns->len; i++)
    row->cells[i] = g_strdup (va_arg (cells, const char *));
  va_end (cells);
}

void
rc_table_add_cells (RcTable *table, RcRowKind kind, const char *const *cells)
{
  Row *row = add_empty_row (table, kind);

  for (guint i = 0; i < table->columns->len; i++)
    row->cells[i] = g_strdup (cells[i]);
}

void
rc_table_set_note (RcTable *table, guint column, const char *note)
{
  Row *row;

  g_return_if_fail (table->rows->len > 0 && column < table->columns->len);

  row = g_ptr_array_index (table->rows, table->rows->len - 1);
  g_free (row->notes[column]);
  row->notes[column] = note && *note ? g_strdup (note) : NULL;
}

void
rc_table_set_foot (RcTable *table, const char *note)
{
  g_free (table->foot);
  table->foot = g_strdup (note);
}

guint
rc_table_get_n_rows (const RcTable *table)
{
  return table->rows->len;
}

static double
measure_width (PangoContext *context, RcTextStyle style, const char *text)
{
  g_autoptr (PangoLayout) layout = rc_text_layout_new (context, style, text, 0);
  double width;

  rc_text_measure (layout, &width, NULL);

  return width;
}

static RcTextStyle
row_get_style (const Row *row)
{
  return row->kind == RC_ROW_BODY ? RC_TEXT_BODY : RC_TEXT_STRONG;
}

/* Widths of a figure's parts: before its decimal point, and from the point on. A figure without a point, and words
 * after a figure ("12.5 m"), count as before the point up to the first character that is no figure. */
static void
measure_decimal (PangoContext *context, RcTextStyle style, const char *text, double *before, double *after)
{
  const char *point = text ? strchr (text, '.') : NULL;

  if (!point)
    {
      *before = measure_width (context, style, text);
      *after = 0;
      return;
    }
  {
    g_autofree char *head = g_strndup (text, (gsize)(point - text));

    *before = measure_width (context, style, head);
    *after = measure_width (context, style, text) - *before;
  }
}

static double
measure_longest_word (PangoContext *context, RcTextStyle style, const char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  double longest = 0;

  for (guint i = 0; words[i]; i++)
    longest = MAX (longest, measure_width (context, style, words[i]));

  return longest;
}

/* The width a column would like best; with its title in several lines where `folded`. */
static double
column_measure (RcTable *table, guint index, gboolean folded, PangoContext *context)
{
  Column *column = g_ptr_array_index (table->columns, index);
  double  widest = folded ? measure_longest_word (context, RC_TEXT_LABEL, column->title)
                          : measure_width (context, RC_TEXT_LABEL, column->title);

  column->before_point = column->after_point = 0;
  for (guint i = 0; i < table->rows->len; i++)
    {
      Row   *row = g_ptr_array_index (table->rows, i);
      double before, after;

      if (row->kind == RC_ROW_GROUP && index == 0)
        continue;
      if (column->weight == 0 && column->kind == RC_COLUMN_TEXT && row->notes[index])
        widest = MAX (widest, measure_width (context, RC_TEXT_NOTE, row->notes[index]));
      if (column->kind == RC_COLUMN_DECIMAL)
        {
          measure_decimal (context, row_get_style (row), row->cells[index], &before, &after);
          column->before_point = MAX (column->before_point, before);
          column->after_point = MAX (column->after_point, after);
        }
      else
        widest = MAX (widest, measure_width (context, row_get_style (row), row->cells[index]));
    }

  return MAX (widest, column->before_point + column->after_point) + 0.5;
}

/* Takes `excess` from the widest columns of words that do not share. */
static void
squeeze_words (RcTable *table, double excess)
{
  while (excess > 0.5)
    {
      Column *widest = NULL;

      for (guint i = 0; i < table->columns->len; i++)
        {
          Column *column = g_ptr_array_index (table->columns, i);

          if (column->kind == RC_COLUMN_TEXT && column->weight == 0 && (!widest || column->width > widest->width))
            widest = column;
        }
      if (!widest || widest->width < 40)
        return;
      {
        double taken = MIN (excess, MAX (4, widest->width * 0.1));

        widest->width -= taken;
        excess -= taken;
      }
    }
}

/* What the columns that do not share take, gaps included; their widths are set. */
static double
measure_fixed (RcTable *table, gboolean folded, PangoContext *context)
{
  double fixed = CELL_GAP * (table->columns->len - 1);

  for (guint i = 0; i < table->columns->len; i++)
    {
      Column *column = g_ptr_array_index (table->columns, i);

      column->width = column_measure (table, i, folded, context);
      fixed += column->weight > 0 ? 0 : column->width;
    }

  return fixed;
}

static void
place_columns (RcTable *table, PangoContext *context, double width)
{
  double fixed = measure_fixed (table, FALSE, context), weights = 0, x = 0;
  guint  n_flex = 0;

  for (guint i = 0; i < table->columns->len; i++)
    {
      const Column *column = g_ptr_array_index (table->columns, i);

      weights += column->weight;
      n_flex += column->weight > 0 ? 1 : 0;
    }
  /* Long titles, as some languages have, must not take the room of the words under them. */
  if (n_flex > 0 && width - fixed < LEAST_SHARE * width)
    fixed = measure_fixed (table, TRUE, context);
  if (fixed + LEAST_FLEX * n_flex > width)
    {
      squeeze_words (table, fixed + LEAST_FLEX * n_flex - width);
      fixed = CELL_GAP * (table->columns->len - 1);
      for (guint i = 0; i < table->columns->len; i++)
        {
          Column *column = g_ptr_array_index (table->columns, i);

          fixed += column->weight > 0 ? 0 : column->width;
        }
    }
  for (guint i = 0; i < table->columns->len; i++)
    {
      Column *column = g_ptr_array_index (table->columns, i);

      if (column->weight > 0)
        column->width = MAX (20, (width - fixed) * column->weight / weights);
      column->x = x;
      x += column->width + CELL_GAP;
    }
}

static PangoLayout *
cell_layout (const RcTable *table, const Row *row, guint index, const RcFlow *flow)
{
  const Column *column = g_ptr_array_index (table->columns, index);
  double        width = column->width;
  PangoLayout  *layout;

  if (row->kind == RC_ROW_GROUP)
    width = flow->width;
  layout = rc_text_layout_new (flow->pages->context, row_get_style (row), row->cells[index],
                               column->kind == RC_COLUMN_DECIMAL ? 0 : width);
  if (column->kind == RC_COLUMN_RIGHT && row->kind != RC_ROW_GROUP)
    pango_layout_set_alignment (layout, PANGO_ALIGN_RIGHT);

  return layout;
}

static PangoLayout *
note_layout (const RcTable *table, const Row *row, guint index, const RcFlow *flow)
{
  const Column *column = g_ptr_array_index (table->columns, index);

  return rc_text_layout_new (flow->pages->context, RC_TEXT_NOTE, row->notes[index], column->width);
}

static double
row_measure (const RcTable *table, const Row *row, const RcFlow *flow)
{
  double tallest = 0;

  for (guint i = 0; i < table->columns->len; i++)
    {
      g_autoptr (PangoLayout) layout = cell_layout (table, row, i, flow);
      double height, note_height;

      rc_text_measure (layout, NULL, &height);
      if (row->notes[i])
        {
          g_autoptr (PangoLayout) note = note_layout (table, row, i, flow);

          rc_text_measure (note, NULL, &note_height);
          height += note_height + 1;
        }
      tallest = MAX (tallest, height);
      if (row->kind == RC_ROW_GROUP)
        break;
    }

  return tallest + 2 * ROW_PADDING + (row->kind == RC_ROW_GROUP ? 4 : 0);
}

/* Where a cell's text starts: figures stand with their points one under the other, the block right in its column. */
static double
cell_get_x (const Column *column, PangoContext *context, const Row *row, const char *text)
{
  double before, after;

  if (column->kind != RC_COLUMN_DECIMAL)
    return column->x;
  measure_decimal (context, row_get_style (row), text, &before, &after);

  return column->x + column->width - column->after_point - before;
}

static void
row_draw (const RcTable *table, const Row *row, RcFlow *flow, double height)
{
  double y = flow->y + ROW_PADDING + (row->kind == RC_ROW_GROUP ? 4 : 0);

  for (guint i = 0; i < table->columns->len; i++)
    {
      const Column *column = g_ptr_array_index (table->columns, i);
      PangoLayout  *layout = cell_layout (table, row, i, flow);
      double        cell_height;

      rc_text_measure (layout, NULL, &cell_height);
      rc_page_add_layout (flow->page, flow->x + cell_get_x (column, flow->pages->context, row, row->cells[i]), y,
                          layout, rc_text_style_get_grey (row_get_style (row)));
      if (row->notes[i])
        rc_page_add_layout (flow->page, flow->x + column->x, y + cell_height + 1, note_layout (table, row, i, flow),
                            rc_text_style_get_grey (RC_TEXT_NOTE));
      if (row->kind == RC_ROW_GROUP)
        break;
    }
  if (row->kind == RC_ROW_STRONG)
    rc_page_add_line (flow->page, flow->x, flow->y, flow->x + flow->width, flow->y, 0.7, 0.08);
  flow->y += height;
  if (row->kind != RC_ROW_STRONG)
    rc_page_add_line (flow->page, flow->x, flow->y, flow->x + flow->width, flow->y, 0.3, 0.78);
}

static double
head_draw (const RcTable *table, RcFlow *flow, gboolean measure_only)
{
  double tallest = measure_only ? 0 : head_draw (table, flow, TRUE) - 2 * ROW_PADDING;

  for (guint i = 0; i < table->columns->len; i++)
    {
      const Column *column = g_ptr_array_index (table->columns, i);
      PangoLayout  *layout = rc_text_layout_new (flow->pages->context, RC_TEXT_LABEL, column->title, column->width);
      double        height;

      if (column->kind != RC_COLUMN_TEXT)
        pango_layout_set_alignment (layout, PANGO_ALIGN_RIGHT);
      rc_text_measure (layout, NULL, &height);
      tallest = MAX (tallest, height);
      /* The last lines stand side by side. */
      if (measure_only)
        g_object_unref (layout);
      else
        rc_page_add_layout (flow->page, flow->x + column->x, flow->y + ROW_PADDING + tallest - height, layout,
                            rc_text_style_get_grey (RC_TEXT_LABEL));
    }
  tallest += 2 * ROW_PADDING;
  if (!measure_only)
    {
      flow->y += tallest;
      rc_page_add_line (flow->page, flow->x, flow->y, flow->x + flow->width, flow->y, 0.7, 0.25);
    }

  return tallest;
}

#define FOOT_GAP 4.0

static double
foot_measure (const RcTable *table, const RcFlow *flow)
{
  g_autoptr (PangoLayout) layout = NULL;
  double height;

  if (!table->foot)
    return 0;
  layout = rc_text_layout_new (flow->pages->context, RC_TEXT_NOTE, table->foot, flow->width);
  rc_text_measure (layout, NULL, &height);
  return FOOT_GAP + height;
}

/* The height of the rows that must stand on the page of row `index`: what follows a group's head, sums under their last
 * line, and the last row of all, which does not stand alone on a page, with its foot. */
static double
measure_kept (const RcTable *table, guint index, const RcFlow *flow)
{
  double kept = 0;

  for (guint i = index; i + 1 < table->rows->len; i++)
    {
      const Row *row = g_ptr_array_index (table->rows, i), *next = g_ptr_array_index (table->rows, i + 1);

      if (row->kind != RC_ROW_GROUP && next->kind != RC_ROW_STRONG && i + 2 < table->rows->len)
        break;
      kept += row_measure (table, next, flow) + (i + 2 == table->rows->len ? foot_measure (table, flow) : 0);
    }
  return index + 1 == table->rows->len ? foot_measure (table, flow) : kept;
}

void
rc_table_flow (RcTable *table, RcFlow *flow)
{
  double head_height;

  if (table->rows->len == 0)
    return;
  place_columns (table, flow->pages->context, flow->width);
  head_height = head_draw (table, flow, TRUE);
  for (guint i = 0; i < table->rows->len; i++)
    {
      const Row *row = g_ptr_array_index (table->rows, i);
      double     height = row_measure (table, row, flow);
      gboolean   broken = rc_flow_need (flow, height + measure_kept (table, i, flow) + (i == 0 ? head_height : 0));

      if (broken || i == 0)
        head_draw (table, flow, FALSE);
      row_draw (table, row, flow, height);
    }
  flow->y += FOOT_GAP;
  if (table->foot)
    rc_flow_text (flow, RC_TEXT_NOTE, table->foot);
}
