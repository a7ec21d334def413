#include "price-csv.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "csv.h"
#include "day.h"
#include "exact-text.h"
#include "price-shop.h"
#include "rowcut-error.h"

/* --- goods --- */

static void
read_goods (RcPriceRow *row, RcGoodsKind kind, RcPriceBook *book)
{
  const char      *id = rc_price_row_get (row, RC_PRICE_COLUMN_ITEM);
  g_autofree char *name = rc_price_row_dup_text (row, RC_PRICE_COLUMN_NAME);
  const guint      n_faults = row->n_faults;
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
  goods->least_cut = rc_price_row_length (row, RC_PRICE_COLUMN_LEAST_CUT);
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
  if (row->n_faults == n_faults) /* each field can be read: what they say together */
    rc_price_row_take (row, RC_PRICE_COLUMN_ITEM, rc_goods_check (goods, rc_price_row_error (row)));
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

/* The sale price, as written or by the margin over the cost. */
static RcMoney
read_sale (RcPriceRow *row, RcMoney cost, const RcCurrency *currency)
{
  RcMoney sale = rc_price_row_money (row, RC_PRICE_COLUMN_SALE, currency), by_margin = sale;

  if (!rc_price_row_has (row, RC_PRICE_COLUMN_MARGIN))
    return sale;
  rc_price_row_take (row, RC_PRICE_COLUMN_MARGIN,
                     rc_price_sale_from_margin (cost, rc_price_row_percent (row, RC_PRICE_COLUMN_MARGIN), &by_margin,
                                                rc_price_row_error (row)));
  if (rc_price_row_has (row, RC_PRICE_COLUMN_SALE) && by_margin != sale)
    {
      g_autofree char *printed = rc_money_format_plain (by_margin, currency);

      rc_price_row_fail (row, RC_PRICE_COLUMN_MARGIN,
                         _ ("makes a sale price of %s, another than stands there; leave one of the two empty"),
                         printed);
    }
  return by_margin;
}

static void
read_price (RcPriceRow *row, RcPriceBook *book)
{
  const char *item = rc_price_row_get (row, RC_PRICE_COLUMN_ITEM);
  RcPrice    *price;

  if (!rc_price_row_has (row, RC_PRICE_COLUMN_SALE) && !rc_price_row_has (row, RC_PRICE_COLUMN_MARGIN))
    {
      if (rc_price_row_has (row, RC_PRICE_COLUMN_COST) || rc_price_book_find_goods (book, item) == NULL)
        rc_price_row_fail (row, RC_PRICE_COLUMN_SALE, _ ("“%s” needs the price that the customer pays"), item);
      return;
    }
  price = rc_price_new (item, rc_price_row_unit (row, RC_PRICE_COLUMN_UNIT, find_usual_unit (book, item)), 0, 0);
  g_ptr_array_add (book->prices, price);
  price->cost = rc_price_row_money (row, RC_PRICE_COLUMN_COST, &book->currency);
  price->sale = read_sale (row, price->cost, &book->currency);
  price->from_micro = rc_price_row_quantity (row, RC_PRICE_COLUMN_FROM_QUANTITY);
  price->valid_from = dup_date (row, RC_PRICE_COLUMN_VALID_FROM);
  price->valid_to = dup_date (row, RC_PRICE_COLUMN_VALID_TO);
  if (price->valid_from != NULL && price->valid_to != NULL && strcmp (price->valid_to, price->valid_from) < 0)
    rc_price_row_fail (row, RC_PRICE_COLUMN_VALID_TO, _ ("%s is before the first day, %s"), price->valid_to,
                       price->valid_from);
}

/* A further price must not carry what belongs to the goods: it would be lost without a word. */
static void
check_no_goods_columns (RcPriceRow *row)
{
  for (RcPriceColumn column = RC_PRICE_COLUMN_ROLL_WIDTH; column <= RC_PRICE_COLUMN_COVERS; column++)
    if (rc_price_row_has (row, column))
      rc_price_row_fail (row, column, _ ("belongs in the row of the goods that says their kind; leave it empty here"));
}

/* From `first` on, columns that mean nothing in a row of this kind would be lost without a word too. */
static void
check_no_others (RcPriceRow *row, RcPriceColumn first, const RcPriceColumn *allowed, gsize n_allowed)
{
  for (RcPriceColumn column = first; column < RC_N_PRICE_COLUMNS; column++)
    {
      gsize k = 0;

      while (k < n_allowed && allowed[k] != column)
        k++;
      if (k == n_allowed && rc_price_row_has (row, column))
        rc_price_row_fail (row, column, _ ("belongs to another kind of row; leave it empty here"));
    }
}

/* The kinds of rows that are neither goods nor prices. */
static const struct
{
  const char *kind;
  void (*read) (RcPriceRow *row, RcPriceBook *book);
  RcPriceColumn columns[9];
  gsize         n_columns;
} shop_kinds[] = {
  { RC_PRICE_KIND_SETTING, rc_price_read_setting, { 0 }, 0 },
  { RC_PRICE_KIND_TAX_AREA,
    rc_price_read_tax_area,
    { RC_PRICE_COLUMN_GOODS_PERCENT, RC_PRICE_COLUMN_WORK_PERCENT },
    2 },
  { RC_PRICE_KIND_PAYMENT, rc_price_read_payment, { RC_PRICE_COLUMN_PART_PERCENT, RC_PRICE_COLUMN_DAYS }, 2 },
  { RC_PRICE_KIND_SUPPLIER,
    rc_price_read_supplier,
    { RC_PRICE_COLUMN_COST, RC_PRICE_COLUMN_SALE, RC_PRICE_COLUMN_ADDRESS, RC_PRICE_COLUMN_PHONE, RC_PRICE_COLUMN_EMAIL,
      RC_PRICE_COLUMN_ACCOUNT, RC_PRICE_COLUMN_LANGUAGE, RC_PRICE_COLUMN_FREE_FROM, RC_PRICE_COLUMN_DAYS },
    9 },
};

/* FALSE when the row is of none of those kinds. */
static gboolean
read_shop_row (RcPriceRow *row, RcPriceBook *book)
{
  const char *kind = rc_price_row_get (row, RC_PRICE_COLUMN_KIND);

  for (gsize i = 0; i < G_N_ELEMENTS (shop_kinds); i++)
    if (strcmp (kind, shop_kinds[i].kind) == 0)
      {
        check_no_others (row, RC_PRICE_COLUMN_SUPPLIER, shop_kinds[i].columns, shop_kinds[i].n_columns);
        shop_kinds[i].read (row, book);
        return TRUE;
      }
  return FALSE;
}

static void
read_row (RcPriceRow *row, RcPriceBook *book)
{
  const char *kind = rc_price_row_get (row, RC_PRICE_COLUMN_KIND);
  RcGoodsKind goods_kind;
  RcWork      work;

  if (!rc_price_row_has (row, RC_PRICE_COLUMN_ITEM))
    {
      rc_price_row_fail (row, RC_PRICE_COLUMN_ITEM, _ ("is empty; name the goods, work or setting"));
      return;
    }
  if (read_shop_row (row, book))
    return;
  check_no_others (row, RC_PRICE_COLUMN_GOODS_PERCENT, NULL, 0);
  if (strcmp (kind, RC_PRICE_KIND_WORK) == 0)
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
                       _ ("“%s” should be carpet, cushion, tape, sealer, strip, adhesive, transition, work, supplier, "
                          "tax-area, payment, setting or empty"),
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
  if (!rc_price_row_end (&row, error))
    return NULL;
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
  fields->text[RC_PRICE_COLUMN_LEAST_CUT] = format_length (goods->least_cut);
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
  GString *csv = g_string_new (NULL);

  rc_price_fields_append_header (csv);
  rc_price_append_shop (csv, book);
  for (guint i = 0; i < book->goods->len; i++)
    append_goods (csv, book, book->goods->pdata[i]);
  for (guint i = 0; i < book->prices->len; i++)
    append_other_price (csv, book, book->prices->pdata[i]);
  return g_string_free (csv, FALSE);
}
