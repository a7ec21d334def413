/* The rows of a price book that are the shop's own: settings, tax areas, suppliers, steps of payment. */
#include "price-shop.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "exact-text.h"
#include "job-number.h"
#include "translation.h"

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
  SETTING_JOB_NUMBERS,
  N_SETTINGS
} Setting;

static const char *const setting_names[N_SETTINGS] = {
  "currency", "tax-percent", "deposit-percent", "shop-name", "shop-address", "valid-days", "terms", "job-numbers"
};

void
rc_price_read_setting (RcPriceRow *row, RcPriceBook *book)
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
      book->valid_days = rc_price_row_days (row, RC_PRICE_COLUMN_NAME);
      break;
    case SETTING_TERMS:
      g_free (book->terms);
      book->terms = g_steal_pointer (&value);
      break;
    case SETTING_JOB_NUMBERS:
      if (value != NULL)
        rc_price_row_take (row, RC_PRICE_COLUMN_NAME, rc_job_number_check_pattern (value, rc_price_row_error (row)));
      g_free (book->job_numbers);
      book->job_numbers = g_steal_pointer (&value);
      break;
    case N_SETTINGS:
    default:
      rc_price_row_fail (
          row, RC_PRICE_COLUMN_ITEM,
          _ ("“%s” is no setting; it should be one of: currency, tax-percent, deposit-percent, shop-name, "
             "shop-address, valid-days, terms, job-numbers"),
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

static void
append_settings (GString *csv, const RcPriceBook *book)
{
  g_autofree char *tax = rc_percent_format (book->tax_ppm), *deposit = rc_percent_format (book->deposit_ppm);
  g_autofree char *days = g_strdup_printf ("%d", book->valid_days);

  append_setting (csv, SETTING_CURRENCY, book->currency.code);
  append_setting (csv, SETTING_TAX, tax);
  append_setting (csv, SETTING_DEPOSIT, deposit);
  append_setting (csv, SETTING_SHOP_NAME, book->shop_name);
  append_setting (csv, SETTING_SHOP_ADDRESS, book->shop_address);
  append_setting (csv, SETTING_VALID_DAYS, book->valid_days > 0 ? days : NULL);
  append_setting (csv, SETTING_TERMS, book->terms);
  append_setting (csv, SETTING_JOB_NUMBERS, book->job_numbers);
}

/* --- tax areas --- */

void
rc_price_read_tax_area (RcPriceRow *row, RcPriceBook *book)
{
  const char      *id = rc_price_row_get (row, RC_PRICE_COLUMN_ITEM);
  g_autofree char *name = rc_price_row_dup_text (row, RC_PRICE_COLUMN_NAME);

  if (rc_price_book_find_tax_area (book, id) != NULL)
    rc_price_row_fail (row, RC_PRICE_COLUMN_ITEM, _ ("“%s” stands in a row before; give each tax area its own"), id);
  g_ptr_array_add (book->tax_areas,
                   rc_tax_area_new (id, name, rc_price_row_percent (row, RC_PRICE_COLUMN_GOODS_PERCENT),
                                    rc_price_row_percent (row, RC_PRICE_COLUMN_WORK_PERCENT)));
}

static void
append_tax_areas (GString *csv, const RcPriceBook *book)
{
  for (guint i = 0; i < book->tax_areas->len; i++)
    {
      const RcTaxArea *area = g_ptr_array_index (book->tax_areas, i);
      RcPriceFields    fields = { { NULL } };

      fields.text[RC_PRICE_COLUMN_ITEM] = rc_csv_neutralize (area->id);
      fields.text[RC_PRICE_COLUMN_KIND] = g_strdup (RC_PRICE_KIND_TAX_AREA);
      fields.text[RC_PRICE_COLUMN_NAME] = rc_csv_neutralize (area->name);
      fields.text[RC_PRICE_COLUMN_GOODS_PERCENT] = rc_percent_format (area->goods_ppm);
      fields.text[RC_PRICE_COLUMN_WORK_PERCENT] = rc_percent_format (area->work_ppm);
      rc_price_fields_append (csv, &fields);
    }
}

/* --- suppliers --- */

void
rc_price_read_supplier (RcPriceRow *row, RcPriceBook *book)
{
  const char      *name = rc_price_row_get (row, RC_PRICE_COLUMN_ITEM);
  RcSupplier      *supplier = rc_supplier_new (name);
  g_autofree char *languages = g_strjoinv (", ", (char **)rc_translation_list ());

  if (rc_price_book_find_supplier (book, name) != NULL)
    rc_price_row_fail (row, RC_PRICE_COLUMN_ITEM, _ ("“%s” stands in a row before; give each supplier one row"), name);
  g_ptr_array_add (book->suppliers, supplier);
  supplier->address = rc_price_row_dup_text (row, RC_PRICE_COLUMN_ADDRESS);
  supplier->phone = rc_price_row_dup_text (row, RC_PRICE_COLUMN_PHONE);
  supplier->email = rc_price_row_dup_text (row, RC_PRICE_COLUMN_EMAIL);
  supplier->account = rc_price_row_dup_text (row, RC_PRICE_COLUMN_ACCOUNT);
  supplier->language = rc_price_row_dup_text (row, RC_PRICE_COLUMN_LANGUAGE);
  if (supplier->language != NULL && !rc_translation_has (supplier->language))
    rc_price_row_fail (row, RC_PRICE_COLUMN_LANGUAGE, _ ("“%s” is not a language of this program; there are %s"),
                       supplier->language, languages);
  supplier->freight_cost = rc_price_row_money (row, RC_PRICE_COLUMN_COST, &book->currency);
  supplier->freight_sale = rc_price_row_money (row, RC_PRICE_COLUMN_SALE, &book->currency);
  supplier->freight_free_from = rc_price_row_money (row, RC_PRICE_COLUMN_FREE_FROM, &book->currency);
  supplier->lead_days = rc_price_row_days (row, RC_PRICE_COLUMN_DAYS);
}

static char *
format_money (RcMoney money, const RcPriceBook *book)
{
  return money != 0 ? rc_money_format_plain (money, &book->currency) : NULL;
}

static char *
format_days (int days)
{
  return days > 0 ? g_strdup_printf ("%d", days) : NULL;
}

static void
append_suppliers (GString *csv, const RcPriceBook *book)
{
  for (guint i = 0; i < book->suppliers->len; i++)
    {
      const RcSupplier *supplier = g_ptr_array_index (book->suppliers, i);
      RcPriceFields     fields = { { NULL } };

      fields.text[RC_PRICE_COLUMN_ITEM] = rc_csv_neutralize (supplier->name);
      fields.text[RC_PRICE_COLUMN_KIND] = g_strdup (RC_PRICE_KIND_SUPPLIER);
      fields.text[RC_PRICE_COLUMN_ADDRESS] = rc_csv_neutralize (supplier->address);
      fields.text[RC_PRICE_COLUMN_PHONE] = rc_csv_neutralize (supplier->phone);
      fields.text[RC_PRICE_COLUMN_EMAIL] = rc_csv_neutralize (supplier->email);
      fields.text[RC_PRICE_COLUMN_ACCOUNT] = rc_csv_neutralize (supplier->account);
      fields.text[RC_PRICE_COLUMN_LANGUAGE] = g_strdup (supplier->language);
      fields.text[RC_PRICE_COLUMN_COST] = format_money (supplier->freight_cost, book);
      fields.text[RC_PRICE_COLUMN_SALE] = format_money (supplier->freight_sale, book);
      fields.text[RC_PRICE_COLUMN_FREE_FROM] = format_money (supplier->freight_free_from, book);
      fields.text[RC_PRICE_COLUMN_DAYS] = format_days (supplier->lead_days);
      rc_price_fields_append (csv, &fields);
    }
}

/* --- steps of payment --- */

void
rc_price_read_payment (RcPriceRow *row, RcPriceBook *book)
{
  g_autofree char *name = rc_price_row_dup_text (row, RC_PRICE_COLUMN_NAME);
  RcPayment       *payment = rc_payment_new (name, rc_price_row_percent (row, RC_PRICE_COLUMN_PART_PERCENT));

  g_ptr_array_add (book->payments, payment);
  payment->days = rc_price_row_days (row, RC_PRICE_COLUMN_DAYS);
  if (!rc_price_row_has (row, RC_PRICE_COLUMN_PART_PERCENT))
    rc_price_row_fail (row, RC_PRICE_COLUMN_PART_PERCENT, _ ("is empty; say which part of the total is due, as 40"));
}

static void
append_payments (GString *csv, const RcPriceBook *book)
{
  for (guint i = 0; i < book->payments->len; i++)
    {
      const RcPayment *payment = g_ptr_array_index (book->payments, i);
      RcPriceFields    fields = { { NULL } };

      fields.text[RC_PRICE_COLUMN_ITEM] = g_strdup_printf ("%u", i + 1);
      fields.text[RC_PRICE_COLUMN_KIND] = g_strdup (RC_PRICE_KIND_PAYMENT);
      fields.text[RC_PRICE_COLUMN_NAME] = rc_csv_neutralize (payment->name);
      fields.text[RC_PRICE_COLUMN_PART_PERCENT] = rc_percent_format (payment->part_ppm);
      fields.text[RC_PRICE_COLUMN_DAYS] = format_days (payment->days);
      rc_price_fields_append (csv, &fields);
    }
}

void
rc_price_append_shop (GString *csv, const RcPriceBook *book)
{
  append_settings (csv, book);
  append_tax_areas (csv, book);
  append_payments (csv, book);
  append_suppliers (csv, book);
}
