/* A quotation's alternatives as columns beside each other: what each is made of, and what it comes to. */
#include "sheet-layouts.h"

#include <glib/gi18n-lib.h>

#include "quote-table.h"
#include "table.h"
#include "words.h"

#define MOST_COLUMNS 6

/* Some of the quotations, the first of all always among them. */
typedef struct
{
  const RcQuote *quotes[MOST_COLUMNS];
  guint          n;
  RcTable       *table;
} Columns;

static const RcCurrency *
get_currency (const Columns *columns)
{
  return &columns->quotes[0]->currency;
}

/* A row of money; a figure that a quotation has not got is a dash. */
static void
add_row (const Columns *columns, RcRowKind kind, const char *label, const RcMoney *amounts, const gboolean *there,
         gboolean signed_plus)
{
  const char *cells[MOST_COLUMNS + 1] = { label };

  for (guint i = 0; i < columns->n; i++)
    {
      g_autofree char *amount = rc_text_format_amount (amounts[i], get_currency (columns));

      if (there != NULL && !there[i])
        cells[i + 1] = g_strdup ("–");
      else
        cells[i + 1] = g_strconcat (signed_plus && amounts[i] > 0 ? "+" : "", amount, NULL);
    }
  rc_table_add_cells (columns->table, kind, cells);
  for (guint i = 0; i < columns->n; i++)
    g_free ((char *)cells[i + 1]);
}

static void
add_group (const Columns *columns, const char *label)
{
  const char *cells[MOST_COLUMNS + 1] = { label };

  rc_table_add_cells (columns->table, RC_ROW_GROUP, cells);
}

/* --- lines --- */

/* Which lines stand under one head. */
typedef struct
{
  gboolean work, optional;
} Part;

static gboolean
is_in (const RcQuoteLine *line, const Part *part)
{
  return line->optional == part->optional && (part->optional || line->is_work == part->work);
}

static gboolean
is_shown (const RcQuote *quote, const RcQuoteLine *line)
{
  return line->optional || (quote->detail != RC_DETAIL_GROUPS && !line->hidden);
}

static gboolean
is_same (const RcQuoteLine *a, const RcQuoteLine *b)
{
  return g_strcmp0 (a->item, b->item) == 0 && g_strcmp0 (a->name, b->name) == 0;
}

/* Lines like one of them in each quotation, added up. */
static void
add_line (const Columns *columns, const RcQuoteLine *like, const Part *part)
{
  RcMoney  amounts[MOST_COLUMNS] = { 0 };
  gboolean there[MOST_COLUMNS] = { FALSE };

  for (guint i = 0; i < columns->n; i++)
    for (guint k = 0; k < columns->quotes[i]->lines->len; k++)
      {
        const RcQuoteLine *line = g_ptr_array_index (columns->quotes[i]->lines, k);

        if (!is_in (line, part) || !is_shown (columns->quotes[i], line) || !is_same (line, like))
          continue;
        amounts[i] += line->amount;
        there[i] = TRUE;
      }
  add_row (columns, RC_ROW_BODY, like->name != NULL ? like->name : like->item, amounts, there, FALSE);
}

static gboolean
find_like (const GPtrArray *list, const RcQuoteLine *line, guint *index)
{
  for (*index = 0; *index < list->len; (*index)++)
    if (is_same (line, g_ptr_array_index (list, *index)))
      return TRUE;
  return FALSE;
}

/* The kinds of lines that some quotation shows: one of each (borrowed). What only a later one has stands behind what it
 * follows there. */
static GPtrArray *
list_lines (const Columns *columns, const Part *part)
{
  GPtrArray *list = g_ptr_array_new ();

  for (guint i = 0; i < columns->n; i++)
    {
      guint next = 0, at;

      for (guint k = 0; k < columns->quotes[i]->lines->len; k++)
        {
          RcQuoteLine *line = g_ptr_array_index (columns->quotes[i]->lines, k);

          if (!is_in (line, part) || !is_shown (columns->quotes[i], line))
            continue;
          if (!find_like (list, line, &at))
            {
              at = next;
              g_ptr_array_insert (list, (int)at, line);
            }
          next = at + 1;
        }
    }
  return list;
}

/* What is not shown by itself, as one sum. */
static void
add_rest (const Columns *columns, const Part *part, gboolean any_shown)
{
  RcMoney     amounts[MOST_COLUMNS] = { 0 };
  gboolean    any = FALSE;
  const char *all = part->work ? _ ("All work") : _ ("All goods"),
             *other = part->work ? _ ("Other work") : _ ("Other goods");

  for (guint i = 0; i < columns->n; i++)
    for (guint k = 0; k < columns->quotes[i]->lines->len; k++)
      {
        const RcQuoteLine *line = g_ptr_array_index (columns->quotes[i]->lines, k);

        if (!is_in (line, part) || is_shown (columns->quotes[i], line))
          continue;
        amounts[i] += line->amount;
        any = TRUE;
      }
  if (any)
    add_row (columns, RC_ROW_BODY, any_shown ? other : all, amounts, NULL, FALSE);
}

static void
add_part (const Columns *columns, const char *head, const Part *part)
{
  g_autoptr (GPtrArray) list = list_lines (columns, part);

  if (list->len > 0)
    add_group (columns, head);
  for (guint i = 0; i < list->len; i++)
    add_line (columns, g_ptr_array_index (list, i), part);
  add_rest (columns, part, list->len > 0);
}

/* --- sums --- */

static void
add_sums (const Columns *columns)
{
  RcMoney  discounts[MOST_COLUMNS], nets[MOST_COLUMNS], taxes[MOST_COLUMNS], totals[MOST_COLUMNS], more[MOST_COLUMNS];
  gboolean is_other[MOST_COLUMNS], any_discount = FALSE;

  for (guint i = 0; i < columns->n; i++)
    {
      const RcQuote *quote = columns->quotes[i];

      discounts[i] = -quote->discount;
      nets[i] = quote->net;
      taxes[i] = quote->tax;
      totals[i] = quote->total;
      more[i] = quote->total - columns->quotes[0]->total;
      is_other[i] = i > 0;
      any_discount = any_discount || quote->discount != 0;
    }
  if (any_discount)
    add_row (columns, RC_ROW_BODY, _ ("Discount"), discounts, NULL, FALSE);
  add_row (columns, RC_ROW_BODY, _ ("Net"), nets, NULL, FALSE);
  add_row (columns, RC_ROW_BODY, _ ("Tax"), taxes, NULL, FALSE);
  add_row (columns, RC_ROW_STRONG, _ ("Total"), totals, NULL, FALSE);
  add_row (columns, RC_ROW_BODY, _ ("Beside the first"), more, is_other, TRUE);
}

/* What is due with the order or first. */
static void
add_first_payment (const Columns *columns)
{
  RcMoney  amounts[MOST_COLUMNS];
  gboolean any = FALSE;

  for (guint i = 0; i < columns->n; i++)
    {
      amounts[i] = columns->quotes[i]->deposit;
      any = any || amounts[i] != 0;
    }
  if (any)
    add_row (columns, RC_ROW_BODY, _ ("First payment"), amounts, NULL, FALSE);
}

static void
add_heads (const Columns *columns)
{
  g_autofree char *amounts = g_strdup_printf (_ ("AMOUNTS, %s"), get_currency (columns)->code);

  rc_table_add_column (columns->table, amounts, RC_COLUMN_TEXT, 1 + 0.25 * columns->n);
  for (guint i = 0; i < columns->n; i++)
    {
      g_assert (columns->quotes[i] != NULL); /* n of them there are */
      const char *name = columns->quotes[i]->option;

      rc_table_add_column (columns->table, name != NULL && *name != '\0' ? name : _ ("As proposed"), RC_COLUMN_RIGHT,
                           1);
    }
}

static void
flow_columns (RcSheetWork *work, Columns *columns, gboolean is_last)
{
  columns->table = rc_table_new ();
  add_heads (columns);
  add_part (columns, _ ("Goods"), &(Part){ FALSE, FALSE });
  add_part (columns, _ ("Work"), &(Part){ TRUE, FALSE });
  add_sums (columns);
  add_first_payment (columns);
  add_part (columns, _ ("If you wish, besides"), &(Part){ FALSE, TRUE });
  if (is_last)
    rc_table_set_foot (columns->table,
                       _ ("What you may wish besides is in no total, and before tax. Each total is the whole job done "
                          "that way; one of them is to be chosen."));
  rc_table_flow (columns->table, &work->flow);
  rc_table_free (columns->table);
}

static guint
count_alternatives (const RcSheetData *data)
{
  return data->quote != NULL && data->alternatives != NULL ? data->alternatives->len : 0;
}

static void
flow_all (RcSheetWork *work)
{
  const RcSheetData *data = work->data;
  guint              n = count_alternatives (data);

  /* Those that do not fit beside the first stand beside it again in a table of their own. */
  for (guint from = 0; from < MAX (n, 1); from += MOST_COLUMNS - 1)
    {
      Columns columns = { { data->quote }, 1, NULL };

      for (guint i = from; i < n && columns.n < MOST_COLUMNS; i++)
        columns.quotes[columns.n++] = g_ptr_array_index (data->alternatives, i);
      rc_flow_skip (&work->flow, from > 0 ? 16 : 0);
      flow_columns (work, &columns, from + MOST_COLUMNS - 1 >= MAX (n, 1));
    }
}

void
rc_alternatives_flow (RcSheetWork *work)
{
  if (count_alternatives (work->data) == 0)
    return;
  rc_flow_break (&work->flow, FALSE);
  rc_flow_heading (&work->flow, _ ("The alternatives side by side"), 120);
  flow_all (work);
}

void
rc_alternatives_lay_out (RcSheetWork *work)
{
  g_autofree char *customer = rc_words_dup_customer (&work->data->plan->job->customer);

  rc_flow_start (&work->flow, work->pages, FALSE);
  rc_sheet_add_letter_head (work, _ ("FOR"), customer, NULL);
  flow_all (work);
}
