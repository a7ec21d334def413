#include "text-table.h"

#include <stdio.h>

struct _RcTextTable
{
  char      *alignment;
  guint      n_columns;
  GPtrArray *cells; /* of char*, row after row */
};

RcTextTable *
rc_text_table_new (const char *alignment)
{
  RcTextTable *table = g_new0 (RcTextTable, 1);

  table->alignment = g_strdup (alignment);
  table->n_columns = (guint)strlen (alignment);
  table->cells = g_ptr_array_new_with_free_func (g_free);
  return table;
}

void
rc_text_table_free (RcTextTable *table)
{
  if (table == NULL)
    return;
  g_free (table->alignment);
  g_ptr_array_unref (table->cells);
  g_free (table);
}

void
rc_text_table_add_take (RcTextTable *table, char *cell)
{
  g_ptr_array_add (table->cells, cell != NULL ? cell : g_strdup (""));
}

void
rc_text_table_add (RcTextTable *table, const char *cell)
{
  rc_text_table_add_take (table, g_strdup (cell));
}

/* Columns of the terminal, near enough for the languages we print in. */
static guint
count_columns (const char *text)
{
  guint n = 0;

  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    {
      gunichar letter = g_utf8_get_char (c);

      n += g_unichar_iszerowidth (letter) ? 0 : g_unichar_iswide (letter) ? 2 : 1;
    }
  return n;
}

static const char *
get_cell (const RcTextTable *table, guint row, guint column)
{
  return g_ptr_array_index (table->cells, row * table->n_columns + column);
}

static void
append_padding (GString *text, guint n, char c)
{
  for (guint i = 0; i < n; i++)
    g_string_append_c (text, c);
}

static void
append_row (const RcTextTable *table, guint row, const guint *widths, GString *text)
{
  for (guint column = 0; column < table->n_columns; column++)
    {
      const char *cell = get_cell (table, row, column);
      guint       padding = widths[column] - count_columns (cell);
      gboolean    is_last = column + 1 == table->n_columns;

      if (column > 0)
        g_string_append (text, "  ");
      if (table->alignment[column] == 'r')
        append_padding (text, padding, ' ');
      g_string_append (text, cell);
      if (table->alignment[column] != 'r' && !is_last)
        append_padding (text, padding, ' ');
    }
  g_string_append_c (text, '\n');
}

char *
rc_text_table_dup_text (const RcTextTable *table, gboolean with_heading)
{
  GString          *text = g_string_new (NULL);
  g_autofree guint *widths = g_new0 (guint, table->n_columns);
  guint             n_rows = table->cells->len / table->n_columns;
  guint             total = 2 * (table->n_columns - 1);

  for (guint row = 0; row < n_rows; row++)
    for (guint column = 0; column < table->n_columns; column++)
      widths[column] = MAX (widths[column], count_columns (get_cell (table, row, column)));
  for (guint column = 0; column < table->n_columns; column++)
    total += widths[column];
  for (guint row = 0; row < n_rows; row++)
    {
      append_row (table, row, widths, text);
      if (row == 0 && with_heading)
        {
          append_padding (text, total, '-');
          g_string_append_c (text, '\n');
        }
    }
  return g_string_free (text, FALSE);
}

void
rc_text_table_print (const RcTextTable *table, gboolean with_heading)
{
  g_autofree char *text = rc_text_table_dup_text (table, with_heading);

  fputs (text, stdout);
}
