#include "price-csv.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "csv.h"
#include "day.h"
#include "exact-text.h"
#include "price-columns.h"
#include "rowcut-error.h"

/* --- settings --- */

typedef enum
{
  SETTING_CURRENCY,
  SETTING_TAX,
  SETTING_DEPOSIT,
  SETTING_SHOP_NAME,
  SETTING_SHOP_ADDRESS,
  SETTING_VALID_DAYS,
  SETTING_TERMS,
  N_SETTINGS
} Setting;

static const char *const setting_names[N_SETTINGS]
    = { "currency", "tax-percent", "deposit-percent", "shop-name", "shop-address", "valid-days", "terms" };

/* Days are whole; as many as the job file allows. */
#define MOST_VALID_DAYS 36500

static void
read_valid_days (RcPriceRow *row, const char *value, RcPriceBook *book)
{
  guint64 days;

  if (value == NULL)
    book->valid_days = 0;
  else if (g_ascii_string_to_unsigned (value, 10, 0, MOST_VALID_DAYS, &days, NULL))
    book->valid_days = (int)days;
  else
    rc_price_row_fail (row, RC_PRICE_COLUMN_NAME, _ ("“%s” is no number of days; it should be a whole number, as 30"),
                       value);
}

static void
read_setting (RcPriceRow *row, RcPriceBook *book)
{
  const char      *item = rc_price_row_get (row, RC_PRICE_COLUMN_ITEM);
  g_autofree char *value = rc_price_row_dup_text (row, RC_PRICE_COLUMN_NAME);
  guint            i = 0;

  while (i < N_SETTINGS && strcmp (setting_names[i], item) != 0)
    i++;
  switch ((Setting)i)
    {
    case SETTING_CURRENCY:
      rc_price_row_take (row, RC_PRICE_COLUMN_NAME,
                         rc_currency_parse (value != NULL ? value : "", &book->currency, rc_price_row_error (row)));
      break;
    case SETTING_TAX:
      rc_price_row_take (row, RC_PRICE_COLUMN_NAME,
                         rc_percent_parse (value != NULL ? value : "", &book->tax_ppm, rc_price_row_error (row)));
      break;
    case SETTING_DEPOSIT:
      rc_price_row_take (row, RC_PRICE_COLUMN_NAME,
                         rc_percent_parse (value != NULL ? value : "", &book->deposit_ppm, rc_price_row_error (row)));
      break;
    case SETTING_SHOP_NAME:
      g_free (book->shop_name);
      book->shop_name = g_steal_pointer (&value);
      break;
    case SETTING_SHOP_ADDRESS:
      g_free (book->shop_address);
      book->shop_address = g_steal_pointer (&value);
      break;
    case SETTING_VALID_DAYS:
      read_valid_days (row, value, book);
      break;
    case SETTING_TERMS:
      g_free (book->terms);
      book->terms = g_steal_pointer (&value);
      break;
    case N_SETTINGS:
    default:
      rc_price_row_fail (
          row, RC_PRICE_COLUMN_ITEM,
          _ ("“%s” is no setting; it should be one of: currency, tax-percent, deposit-percent, shop-name, "
             "shop-address, valid-days, terms"),
          item);
      break;
    }
}

static void
append_setting (GString *csv, Setting setting, const char *value)
{
  RcPriceFields fields = { { NULL } };

  if (value == NULL || *value == '\0')
    return;
  fields.text[RC_PRICE_COLUMN_ITEM] = g_strdup (setting_names[setting]);
  fields.text[RC_PRICE_COLUMN_KIND] = g_strdup (RC_PRICE_KIND_SETTING);
  fields.text[RC_PRICE_COLUMN_NAME] = rc_csv_neutralize (value);
  rc_price_fields_append (csv, &fields);
}

/* --- goods --- */

static void
read_goods (RcPriceRow *row, RcGoodsKind kind, RcPriceBook *book)
{
  const char      *id = rc_price_row_get (row, RC_PRICE_COLUMN_ITEM);
  g_autofree char *name = rc_price_row_dup_text (row, RC_PRICE_COLUMN_NAME);
  RcGoods         *goods;

  if (rc_price_book_find_goods (book, id) != NULL)
    {
      rc_price_row_fail (row, RC_PRICE_COLUMN_ITEM,
                         _ ("“%s” stands in a row before; leave kind empty for a further price"), id);
      return;
    }
  goods = rc_goods_new (id, kind, name != NULL ? name : id);
  g_ptr_array_add (book->goods, goods);
  goods->supplier = rc_price_row_dup_text (row, RC_PRICE_COLUMN_SUPPLIER);
  goods->unit = rc_price_row_unit (row, RC_PRICE_COLUMN_UNIT, goods->unit);
  goods->roll_width = rc_price_row_length (row, RC_PRICE_COLUMN_ROLL_WIDTH);
  goods->usable_width = rc_price_row_length (row, RC_PRICE_COLUMN_USABLE_WIDTH);
  goods->repeat_length = rc_price_row_length (row, RC_PRICE_COLUMN_REPEAT_LENGTH);
  goods->repeat_width = rc_price_row_length (row, RC_PRICE_COLUMN_REPEAT_WIDTH);
  if (rc_price_row_has (row, RC_PRICE_COLUMN_MATCH))
    rc_price_row_take (
        row, RC_PRICE_COLUMN_MATCH,
        rc_match_parse (rc_price_row_get (row, RC_PRICE_COLUMN_MATCH), &goods->match, rc_price_row_error (row)));
  goods->length_step = rc_price_row_length (row, RC_PRICE_COLUMN_LENGTH_STEP);
  goods->full_roll = rc_price_row_length (row, RC_PRICE_COLUMN_FULL_ROLL);
  goods->pack_micro = rc_price_row_quantity (row, RC_PRICE_COLUMN_PACK);
  goods->pack_unit = rc_price_row_unit (row, RC_PRICE_COLUMN_PACK_UNIT, goods->pack_unit);
  goods->tape_width = rc_price_row_length (row, RC_PRICE_COLUMN_TAPE_WIDTH);
  if (kind != RC_GOODS_ADHESIVE)
    goods->pack_covers_length = rc_price_row_length (row, RC_PRICE_COLUMN_COVERS);
  else if (rc_price_row_has (row, RC_PRICE_COLUMN_COVERS))
    rc_price_row_take (row, RC_PRICE_COLUMN_COVERS,
                       rc_area_parse (rc_price_row_get (row, RC_PRICE_COLUMN_COVERS), &goods->pack_covers_area,
                                      rc_price_row_error (row)));
  if (kind == RC_GOODS_CARPET && goods->roll_width == 0)
    rc_price_row_fail (row, RC_PRICE_COLUMN_ROLL_WIDTH, _ ("carpet “%s” needs its roll width, as 12 ft or 4 m"), id);
}

/* --- prices --- */

static char *
dup_date (RcPriceRow *row, RcPriceColumn column)
{
  const char *date = rc_price_row_get (row, column);

  if (*date == '\0')
    return NULL;
  if (!rc_day_is_valid (date))
    rc_price_row_fail (row, column, _ ("“%s” is no date; it should read like 2026-03-31"), date);
  return g_strdup (date);
}

/* The unit that goes without saying: the goods' own, or that of the work in yards and feet. */
static RcUnit
find_usual_unit (const RcPriceBook *book, const char *item)
{
  const RcGoods *goods = rc_price_book_find_goods (book, item);
  RcWork         work;

  if (goods != NULL)
    return goods->unit;
  if (rc_work_parse (item, &work, NULL) && work != RC_WORK_NONE)
    return rc_work_get_unit (work, RC_UNITS_IMPERIAL);
  return RC_UNIT_EACH;
}

static void
read_price (RcPriceRow *row, RcPriceBook *book)
{
  const char *item = rc_price_row_get (row, RC_PRICE_COLUMN_ITEM);
  RcPrice    *price;

  if (!rc_price_row_has (row, RC_PRICE_COLUMN_SALE))
    {
      if (rc_price_row_has (row, RC_PRICE_COLUMN_COST) || rc_price_book_find_goods (book, item) == NULL)
        rc_price_row_fail (row, RC_PRICE_COLUMN_SALE, _ ("“%s” needs the price that the customer pays"), item);
      return;
    }
  price = rc_price_new (item, rc_price_row_unit (row, RC_PRICE_COLUMN_UNIT, find_usual_unit (book, item)), 0, 0);
  g_ptr_array_add (book->prices, price);
  price->cost = rc_price_row_money (row, RC_PRICE_COLUMN_COST, &book->currency);
  price->sale = rc_price_row_money (row, RC_PRICE_COLUMN_SALE, &book->currency);
  price->from_micro = rc_price_row_quantity (row, RC_PRICE_COLUMN_FROM_QUANTITY);
  price->valid_from = dup_date (row, RC_PRICE_COLUMN_VALID_FROM);
  price->valid_to = dup_date (row, RC_PRICE_COLUMN_VALID_TO);
}

/* A further price must not carry what belongs to the goods: it would be lost without a word. */
static void
check_no_goods_columns (RcPriceRow *row)
{
  for (RcPriceColumn column = RC_PRICE_COLUMN_ROLL_WIDTH; column < RC_N_PRICE_COLUMNS; column++)
    if (rc_price_row_has (row, column))
      rc_price_row_fail (row, column, _ ("belongs in the row of the goods that says their kind; leave it empty here"));
}

static void
read_row (RcPriceRow *row, RcPriceBook *book)
{
  const char *kind = rc_price_row_get (row, RC_PRICE_COLUMN_KIND);
  RcGoodsKind goods_kind;
  RcWork      work;

  if (!rc_price_row_has (row, RC_PRICE_COLUMN_ITEM))
    rc_price_row_fail (row, RC_PRICE_COLUMN_ITEM, _ ("is empty; name the goods, work or setting"));
  else if (strcmp (kind, RC_PRICE_KIND_SETTING) == 0)
    read_setting (row, book);
  else if (strcmp (kind, RC_PRICE_KIND_WORK) == 0)
    {
      rc_price_row_take (row, RC_PRICE_COLUMN_ITEM,
                         rc_work_parse (rc_price_row_get (row, RC_PRICE_COLUMN_ITEM), &work, rc_price_row_error (row)));
      check_no_goods_columns (row);
      read_price (row, book);
    }
  else if (*kind == '\0')
    {
      check_no_goods_columns (row);
      read_price (row, book);
    }
  else if (rc_goods_kind_parse (kind, &goods_kind, NULL))
    {
      read_goods (row, goods_kind, book);
      read_price (row, book);
    }
  else
    rc_price_row_fail (row, RC_PRICE_COLUMN_KIND,
                       _ ("“%s” should be carpet, cushion, tape, sealer, strip, adhesive, transition, work, setting or "
                          "empty"),
                       kind);
}

RcPriceBook *
rc_price_csv_parse (const char *csv, const char *name, const RcCurrency *currency, GError **error)
{
  g_autoptr (RcPriceBook) book = rc_price_book_new (currency);
  g_auto (RcPriceRow) row = { 0 };

  if (!rc_price_row_begin (&row, csv, name, error))
    return NULL;
  while (rc_price_row_next (&row))
    read_row (&row, book);
  if (row.error != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&row.error));
      return NULL;
    }
  return g_steal_pointer (&book);
}

/* --- and back --- */

static char *
format_length (RcLength length)
{
  return length != 0 ? rc_exact_length_format (length, TRUE) : NULL;
}

static void
fill_goods (RcPriceFields *fields, const RcGoods *goods)
{
  fields->text[RC_PRICE_COLUMN_KIND] = g_strdup (rc_goods_kind_get_name (goods->kind));
  fields->text[RC_PRICE_COLUMN_NAME] = rc_csv_neutralize (goods->name);
  fields->text[RC_PRICE_COLUMN_SUPPLIER] = rc_csv_neutralize (goods->supplier);
  fields->text[RC_PRICE_COLUMN_UNIT] = g_strdup (rc_unit_get_name (goods->unit));
  fields->text[RC_PRICE_COLUMN_ROLL_WIDTH] = format_length (goods->roll_width);
  fields->text[RC_PRICE_COLUMN_USABLE_WIDTH] = format_length (goods->usable_width);
  fields->text[RC_PRICE_COLUMN_REPEAT_LENGTH] = format_length (goods->repeat_length);
  fields->text[RC_PRICE_COLUMN_REPEAT_WIDTH] = format_length (goods->repeat_width);
  if (goods->repeat_length != 0 || goods->match != RC_MATCH_SET)
    fields->text[RC_PRICE_COLUMN_MATCH] = g_strdup (rc_match_get_name (goods->match));
  fields->text[RC_PRICE_COLUMN_LENGTH_STEP] = format_length (goods->length_step);
  fields->text[RC_PRICE_COLUMN_FULL_ROLL] = format_length (goods->full_roll);
  if (goods->pack_micro != 0)
    fields->text[RC_PRICE_COLUMN_PACK] = rc_quantity_format (goods->pack_micro, 6);
  if (goods->pack_micro != 0 || goods->pack_unit != RC_UNIT_EACH)
    fields->text[RC_PRICE_COLUMN_PACK_UNIT] = g_strdup (rc_unit_get_name (goods->pack_unit));
  fields->text[RC_PRICE_COLUMN_TAPE_WIDTH] = format_length (goods->tape_width);
  if (goods->kind != RC_GOODS_ADHESIVE)
    fields->text[RC_PRICE_COLUMN_COVERS] = format_length (goods->pack_covers_length);
  else if (goods->pack_covers_area != 0)
    fields->text[RC_PRICE_COLUMN_COVERS] = rc_exact_area_format (goods->pack_covers_area);
}

static void
fill_price (RcPriceFields *fields, const RcPriceBook *book, const RcPrice *price)
{
  fields->text[RC_PRICE_COLUMN_COST] = rc_money_format_plain (price->cost, &book->currency);
  fields->text[RC_PRICE_COLUMN_SALE] = rc_money_format_plain (price->sale, &book->currency);
  if (price->from_micro != 0)
    fields->text[RC_PRICE_COLUMN_FROM_QUANTITY] = rc_quantity_format (price->from_micro, 6);
  fields->text[RC_PRICE_COLUMN_VALID_FROM] = g_strdup (price->valid_from);
  fields->text[RC_PRICE_COLUMN_VALID_TO] = g_strdup (price->valid_to);
}

/* All prices of one item; the first in the goods' own row where their units are the same. */
static void
append_goods (GString *csv, const RcPriceBook *book, const RcGoods *goods)
{
  RcPriceFields fields = { { NULL } };
  gboolean      begun = FALSE;

  fields.text[RC_PRICE_COLUMN_ITEM] = rc_csv_neutralize (goods->id);
  fill_goods (&fields, goods);
  for (guint i = 0; i < book->prices->len; i++)
    {
      const RcPrice *price = book->prices->pdata[i];

      if (strcmp (price->item, goods->id) != 0)
        continue;
      if (!begun && price->unit != goods->unit)
        rc_price_fields_append (csv, &fields);
      if (begun || price->unit != goods->unit)
        {
          fields.text[RC_PRICE_COLUMN_ITEM] = rc_csv_neutralize (goods->id);
          fields.text[RC_PRICE_COLUMN_UNIT] = g_strdup (rc_unit_get_name (price->unit));
        }
      fill_price (&fields, book, price);
      rc_price_fields_append (csv, &fields);
      begun = TRUE;
    }
  if (!begun)
    rc_price_fields_append (csv, &fields);
}

static void
append_other_price (GString *csv, const RcPriceBook *book, const RcPrice *price)
{
  RcPriceFields fields = { { NULL } };
  RcWork        work;

  if (rc_price_book_find_goods (book, price->item) != NULL)
    return;
  fields.text[RC_PRICE_COLUMN_ITEM] = rc_csv_neutralize (price->item);
  if (rc_work_parse (price->item, &work, NULL) && work != RC_WORK_NONE)
    fields.text[RC_PRICE_COLUMN_KIND] = g_strdup (RC_PRICE_KIND_WORK);
  fields.text[RC_PRICE_COLUMN_UNIT] = g_strdup (rc_unit_get_name (price->unit));
  fill_price (&fields, book, price);
  rc_price_fields_append (csv, &fields);
}

char *
rc_price_csv_format (const RcPriceBook *book)
{
  GString         *csv = g_string_new (NULL);
  g_autofree char *tax = rc_percent_format (book->tax_ppm), *deposit = rc_percent_format (book->deposit_ppm);
  g_autofree char *days = g_strdup_printf ("%d", book->valid_days);

  rc_price_fields_append_header (csv);
  append_setting (csv, SETTING_CURRENCY, book->currency.code);
  append_setting (csv, SETTING_TAX, tax);
  append_setting (csv, SETTING_DEPOSIT, deposit);
  append_setting (csv, SETTING_SHOP_NAME, book->shop_name);
  append_setting (csv, SETTING_SHOP_ADDRESS, book->shop_address);
  append_setting (csv, SETTING_VALID_DAYS, book->valid_days > 0 ? days : NULL);
  append_setting (csv, SETTING_TERMS, book->terms);
  for (guint i = 0; i < book->goods->len; i++)
    append_goods (csv, book, book->goods->pdata[i]);
  for (guint i = 0; i < book->prices->len; i++)
    append_other_price (csv, book, book->prices->pdata[i]);
  return g_string_free (csv, FALSE);
}
