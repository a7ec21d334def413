#include "lines.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

#define WRAP_COLUMN 100

static void
add_packs (RcJson *json, gint64 packs, RcUnit pack_unit)
{
  rc_json_add_int (json, "packs", packs);
  rc_json_add_string (json, "pack_unit", packs > 0 ? rc_unit_get_name (pack_unit) : NULL);
}

void
rc_lines_add_quantities_json (RcJson *json, const GPtrArray *quantities)
{
  rc_json_begin_array (json, "lines");
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (quantities, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "item", line->item);
      rc_json_add_string (json, "name", line->name);
      rc_json_add_micro (json, "quantity", line->quantity_micro);
      rc_json_add_string (json, "unit", rc_unit_get_name (line->unit));
      add_packs (json, line->packs, line->pack_unit);
      rc_json_add_micro (json, "needed", line->net_micro);
      rc_json_add_string (json, "because", line->because);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

void
rc_lines_add_quote_json (RcJson *json, const GPtrArray *lines, const RcCurrency *currency, gboolean with_cost)
{
  rc_json_begin_array (json, "lines");
  for (guint i = 0; i < lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (lines, i);

      rc_json_begin_object (json, NULL);
      rc_json_add_string (json, "item", line->item);
      rc_json_add_string (json, "name", line->name);
      rc_json_add_micro (json, "quantity", line->quantity_micro);
      rc_json_add_string (json, "unit", rc_unit_get_name (line->unit));
      add_packs (json, line->packs, line->pack_unit);
      rc_json_add_money (json, "price", line->price, currency);
      rc_json_add_money (json, "amount", line->amount, currency);
      rc_json_add_bool (json, "optional", line->optional);
      if (with_cost)
        rc_json_add_money (json, "cost", line->cost, currency);
      rc_json_add_string (json, "currency", currency->code);
      rc_json_add_string (json, "because", line->because);
      rc_json_end_object (json);
    }
  rc_json_end_array (json);
}

static char *
dup_packs (gint64 packs, RcUnit pack_unit)
{
  return packs > 0 ? g_strdup_printf ("%" G_GINT64_FORMAT " %s", packs, rc_unit_get_name (pack_unit)) : NULL;
}

/* `text` indented, broken between words so that lines stay within a terminal's width. */
static void
print_wrapped (const char *text)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  glong column = WRAP_COLUMN;

  for (guint i = 0; words[i] != NULL; i++)
    {
      glong    width = g_utf8_strlen (words[i], -1);
      gboolean breaks = column + 1 + width > WRAP_COLUMN;

      printf ("%s%s", !breaks ? " " : i == 0 ? "    " : "\n    ", words[i]);
      column = (breaks ? 4 : column + 1) + width;
    }
  printf ("\n");
}

void
rc_lines_print_quantities (const GPtrArray *quantities)
{
  g_autoptr (RcTextTable) table = rc_text_table_new ("lrlr");
  g_autofree char *text = NULL;
  g_auto (GStrv) rows = NULL;

  rc_text_table_add (table, _ ("Item"));
  rc_text_table_add (table, _ ("Quantity"));
  rc_text_table_add (table, _ ("Unit"));
  rc_text_table_add (table, _ ("Packs"));
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (quantities, i);

      rc_text_table_add (table, line->name);
      rc_text_table_add_take (table, rc_quantity_format (line->quantity_micro, 3));
      rc_text_table_add (table, rc_unit_get_name (line->unit));
      rc_text_table_add_take (table, dup_packs (line->packs, line->pack_unit));
    }
  /* Each row, and under it where it comes from; the heading takes two lines. */
  text = rc_text_table_dup_text (table, TRUE);
  rows = g_strsplit (text, "\n", -1);
  printf ("%s\n%s\n", rows[0], rows[1]);
  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *line = g_ptr_array_index (quantities, i);

      printf ("%s\n", rows[i + 2]);
      print_wrapped (line->because);
    }
}

void
rc_lines_print_quote (const GPtrArray *lines, const RcCurrency *currency)
{
  g_autoptr (RcTextTable) table = rc_text_table_new ("lrlrrr");

  rc_text_table_add (table, _ ("Item"));
  rc_text_table_add (table, _ ("Quantity"));
  rc_text_table_add (table, _ ("Unit"));
  rc_text_table_add (table, _ ("Packs"));
  rc_text_table_add (table, _ ("Price"));
  rc_text_table_add (table, _ ("Amount"));
  for (guint i = 0; i < lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (lines, i);

      rc_text_table_add_take (table, line->optional
                                         ? g_strdup_printf (_ ("%s (optional, not in the total)"), line->name)
                                         : g_strdup (line->name));
      rc_text_table_add_take (table, rc_quantity_format (line->quantity_micro, 3));
      rc_text_table_add (table, rc_unit_get_name (line->unit));
      rc_text_table_add_take (table, dup_packs (line->packs, line->pack_unit));
      rc_text_table_add_take (table, rc_money_format (line->price, currency));
      rc_text_table_add_take (table, rc_money_format (line->amount, currency));
    }
  rc_text_table_print (table, TRUE);
}

void
rc_lines_print_sums (RcMoney discount, RcMoney net, RcMoney tax, RcMoney total, const RcCurrency *currency)
{
  g_autoptr (RcTextTable) table = rc_text_table_new ("lr");

  if (discount != 0)
    {
      rc_text_table_add (table, _ ("Sum"));
      rc_text_table_add_take (table, rc_money_format (net + discount, currency));
      rc_text_table_add (table, _ ("Discount"));
      rc_text_table_add_take (table, rc_money_format (-discount, currency));
    }
  rc_text_table_add (table, _ ("Net"));
  rc_text_table_add_take (table, rc_money_format (net, currency));
  rc_text_table_add (table, _ ("Tax"));
  rc_text_table_add_take (table, rc_money_format (tax, currency));
  rc_text_table_add (table, _ ("Total"));
  rc_text_table_add_take (table, rc_money_format (total, currency));
  printf ("\n");
  rc_text_table_print (table, FALSE);
}
