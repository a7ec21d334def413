#include "price-columns.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "exact-text.h"
#include "rowcut-error.h"

static const char *const column_names[RC_N_PRICE_COLUMNS]
    = { "item",         "kind",          "name",          "supplier",   "unit",        "cost",
        "sale",         "margin",        "from_quantity", "valid_from", "valid_to",    "roll_width",
        "usable_width", "repeat_length", "repeat_width",  "match",      "length_step", "least_cut",
        "full_roll",    "pack",          "pack_unit",     "tape_width", "covers",      "goods_percent",
        "work_percent", "part_percent",  "days",          "free_from",  "address",     "phone",
        "email",        "account",       "language" };

/* --- reading --- */

static gboolean
fail_header (RcPriceRow *row, GError **error, const char *format, const char *column)
{
  g_autoptr (GString) known = g_string_new (NULL);

  for (guint i = 0; i < RC_N_PRICE_COLUMNS; i++)
    g_string_append_printf (known, "%s%s", i == 0 ? "" : ", ", column_names[i]);
  g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s, line %u: %s “%s”; the columns are: %s"), row->reader.name,
               row->reader.line, format, column, known->str);
  return FALSE;
}

static gboolean
read_header (RcPriceRow *row, const GPtrArray *names, GError **error)
{
  for (guint i = 0; i < RC_N_PRICE_COLUMNS; i++)
    row->field_of[i] = -1;
  for (guint k = 0; k < names->len; k++)
    {
      const char *name = g_strstrip ((char *)names->pdata[k]);
      guint       i = 0;

      while (i < RC_N_PRICE_COLUMNS && strcmp (column_names[i], name) != 0)
        i++;
      if (i == RC_N_PRICE_COLUMNS)
        return fail_header (row, error, _ ("there is no column"), name);
      if (row->field_of[i] >= 0)
        return fail_header (row, error, _ ("twice the column"), name);
      row->field_of[i] = k;
    }
  if (row->field_of[RC_PRICE_COLUMN_ITEM] < 0)
    return fail_header (row, error, _ ("the header row lacks the column"), "item");
  if (row->field_of[RC_PRICE_COLUMN_SALE] < 0 && row->field_of[RC_PRICE_COLUMN_MARGIN] < 0)
    return fail_header (row, error, _ ("the header row lacks the column"), "sale");
  row->n_fields = names->len;
  return TRUE;
}

gboolean
rc_price_row_begin (RcPriceRow *row, const char *csv, const char *name, GError **error)
{
  g_autoptr (GPtrArray) names = NULL;
  GError *fault = NULL;

  if (!rc_csv_reader_init (&row->reader, csv, name, error))
    return FALSE;
  names = rc_csv_reader_next (&row->reader, &fault);
  if (fault != NULL)
    {
      g_propagate_error (error, fault);
      return FALSE;
    }
  if (names == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_FORMAT, _ ("%s: the table is empty; it should begin with a header row"),
                   name);
      return FALSE;
    }
  return read_header (row, names, error);
}

/* Takes the message and frees it. */
static void
note_fault (RcPriceRow *row, int code, char *message)
{
  if (row->faults == NULL)
    {
      row->faults = g_string_new (NULL);
      row->code = code;
    }
  if (row->n_faults < RC_PRICE_MOST_FAULTS)
    g_string_append_printf (row->faults, "%s%s", row->n_faults > 0 ? "\n" : "", message);
  row->n_faults++;
  g_free (message);
}

static gboolean
has_fields_enough (RcPriceRow *row)
{
  if (row->fields->len == row->n_fields)
    return TRUE;
  note_fault (row, RC_ERROR_FORMAT,
              g_strdup_printf (_ ("%s, line %u: %u fields, but the header row has %u"), row->reader.name,
                               row->reader.line, row->fields->len, row->n_fields));
  return FALSE;
}

gboolean
rc_price_row_next (RcPriceRow *row)
{
  GError *fault = NULL;
  char  **item, *restored;

  do
    {
      g_clear_pointer (&row->fields, g_ptr_array_unref);
      row->fields = rc_csv_reader_next (&row->reader, &fault);
      if (fault != NULL)
        {
          note_fault (row, fault->code, g_strdup (fault->message));
          g_error_free (fault);
        }
      if (row->fields == NULL)
        return FALSE;
    }
  while (!has_fields_enough (row));
  memset (row->failed, 0, sizeof row->failed);
  item = (char **)&row->fields->pdata[row->field_of[RC_PRICE_COLUMN_ITEM]];
  restored = rc_csv_restore (g_strstrip (*item));
  g_free (*item);
  *item = restored;
  return TRUE;
}

gboolean
rc_price_row_end (RcPriceRow *row, GError **error)
{
  guint more = row->n_faults - MIN (row->n_faults, RC_PRICE_MOST_FAULTS);

  if (row->n_faults == 0)
    return TRUE;
  if (more > 0)
    g_string_append_printf (row->faults, ngettext ("\nand %u fault more", "\nand %u faults more", more), more);
  g_set_error_literal (error, RC_ERROR, row->code, row->faults->str);
  return FALSE;
}

void
rc_price_row_clear (RcPriceRow *row)
{
  g_clear_pointer (&row->fields, g_ptr_array_unref);
  if (row->faults != NULL)
    g_string_free (row->faults, TRUE);
  g_clear_error (&row->pending);
}

static void
fail_literal (RcPriceRow *row, RcPriceColumn column, int code, const char *message)
{
  if (!row->failed[column])
    note_fault (row, code,
                g_strdup_printf (_ ("%s, line %u, column %s: %s"), row->reader.name, row->reader.line,
                                 column_names[column], message));
  row->failed[column] = TRUE;
}

void
rc_price_row_fail (RcPriceRow *row, RcPriceColumn column, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list          args;

  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  fail_literal (row, column, RC_ERROR_FORMAT, message);
}

GError **
rc_price_row_error (RcPriceRow *row)
{
  g_clear_error (&row->pending);
  return &row->pending;
}

void
rc_price_row_take (RcPriceRow *row, RcPriceColumn column, gboolean parsed)
{
  if (!parsed)
    fail_literal (row, column, row->pending->domain == RC_ERROR ? row->pending->code : RC_ERROR_FORMAT,
                  row->pending->message);
  g_clear_error (&row->pending);
}

const char *
rc_price_row_get (RcPriceRow *row, RcPriceColumn column)
{
  int field = row->field_of[column];

  return field >= 0 ? g_strstrip ((char *)row->fields->pdata[field]) : "";
}

gboolean
rc_price_row_has (RcPriceRow *row, RcPriceColumn column)
{
  return *rc_price_row_get (row, column) != '\0';
}

char *
rc_price_row_dup_text (RcPriceRow *row, RcPriceColumn column)
{
  return rc_price_row_has (row, column) ? rc_csv_restore (rc_price_row_get (row, column)) : NULL;
}

RcLength
rc_price_row_length (RcPriceRow *row, RcPriceColumn column)
{
  RcLength length = 0;

  if (rc_price_row_has (row, column))
    rc_price_row_take (
        row, column,
        rc_length_parse (rc_price_row_get (row, column), RC_LENGTH_UNIT_FOOT_INCH, &length, rc_price_row_error (row)));
  return length;
}

gint64
rc_price_row_quantity (RcPriceRow *row, RcPriceColumn column)
{
  gint64 quantity_micro = 0;

  if (rc_price_row_has (row, column))
    rc_price_row_take (row, column,
                       rc_quantity_parse (rc_price_row_get (row, column), &quantity_micro, rc_price_row_error (row)));
  if (quantity_micro < 0)
    rc_price_row_fail (row, column, _ ("must not be less than 0"));
  return quantity_micro;
}

RcMoney
rc_price_row_money (RcPriceRow *row, RcPriceColumn column, const RcCurrency *currency)
{
  RcMoney money = 0;

  if (rc_price_row_has (row, column))
    rc_price_row_take (row, column,
                       rc_money_parse (rc_price_row_get (row, column), currency, &money, rc_price_row_error (row)));
  if (money < 0)
    rc_price_row_fail (row, column, _ ("must not be less than 0"));
  return money;
}

#define MOST_DAYS 36500

int
rc_price_row_days (RcPriceRow *row, RcPriceColumn column)
{
  const char *text = rc_price_row_get (row, column);
  guint64     days = 0;

  if (*text != '\0' && !g_ascii_string_to_unsigned (text, 10, 0, MOST_DAYS, &days, NULL))
    rc_price_row_fail (row, column, _ ("“%s” is no number of days; it should be a whole number, as 30"), text);
  return (int)days;
}

gint64
rc_price_row_percent (RcPriceRow *row, RcPriceColumn column)
{
  gint64 ppm = 0;

  if (rc_price_row_has (row, column))
    rc_price_row_take (row, column, rc_percent_parse (rc_price_row_get (row, column), &ppm, rc_price_row_error (row)));
  return ppm;
}

RcUnit
rc_price_row_unit (RcPriceRow *row, RcPriceColumn column, RcUnit fallback)
{
  RcUnit unit = fallback;

  if (rc_price_row_has (row, column))
    rc_price_row_take (row, column, rc_unit_parse (rc_price_row_get (row, column), &unit, rc_price_row_error (row)));
  return unit;
}

/* --- writing --- */

void
rc_price_fields_append_header (GString *csv)
{
  for (guint i = 0; i < RC_N_PRICE_COLUMNS; i++)
    rc_csv_append (csv, column_names[i], i == 0);
  g_string_append (csv, "\r\n");
}

void
rc_price_fields_append (GString *csv, RcPriceFields *fields)
{
  for (guint i = 0; i < RC_N_PRICE_COLUMNS; i++)
    {
      rc_csv_append (csv, fields->text[i], i == 0);
      g_clear_pointer (&fields->text[i], g_free);
    }
  g_string_append (csv, "\r\n");
}
