#include "shop-rows.h"

#include <glib/gi18n-lib.h>

#include "form-field.h"
#include "free-id.h"
#include "rowcut-error.h"

/* Between 0 and 100 %; left blank it is `blank_ppm`, below 0: it must be written. */
static gboolean
read_rate (RcTextRows *rows, guint row, guint column, gint64 blank_ppm, gint64 *ppm, GError **error)
{
  const char *text = rc_text_rows_get_text (rows, row, column);

  if (*text == '\0' && blank_ppm >= 0)
    {
      *ppm = blank_ppm;
      return TRUE;
    }
  if (*text == '\0')
    g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("nothing is written"));
  else if (rc_rate_parse (text, ppm, error) && *ppm >= 0 && *ppm <= RC_MICRO)
    return TRUE;
  else if (error != NULL && *error == NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("“%s” is not between 0 and 100 %%"), text);
  rc_text_rows_show_fault (rows, row, column, error);
  return FALSE;
}

/* With its unit, as the name of its column is hidden by it. */
static char *
dup_rate (gint64 ppm)
{
  g_autofree char *rate = rc_rate_format (ppm);

  return g_strconcat (rate, " %", NULL);
}

/* NULL: blank, told. (transfer full) */
static char *
dup_name (RcTextRows *rows, guint row, GError **error)
{
  char *name = g_strstrip (g_strdup (rc_text_rows_get_text (rows, row, 0)));

  if (*name != '\0')
    return name;
  g_free (name);
  g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("nothing is written"));
  rc_text_rows_show_fault (rows, row, 0, error);
  return NULL;
}

/* --- tax areas --- */

GtkWidget *
rc_shop_rows_new_tax_areas (void)
{
  const RcTextRowsWords words
      = { _ ("Tax area"), _ ("Add a ta_x area"), { _ ("Name on paper"), _ ("On goods, %"), _ ("On work, %") } };

  return rc_text_rows_new (&words);
}

void
rc_shop_rows_show_tax_areas (RcTextRows *rows, const RcPriceBook *book)
{
  rc_text_rows_clear (rows);
  for (guint i = 0; i < book->tax_areas->len; i++)
    {
      const RcTaxArea *area = g_ptr_array_index (book->tax_areas, i);
      g_autofree char *goods = dup_rate (area->goods_ppm), *work = dup_rate (area->work_ppm);
      const char      *texts[RC_TEXT_ROWS_COLUMNS] = { area->name != NULL ? area->name : area->id, goods, work };

      rc_text_rows_add (rows, area->id, texts);
    }
}

static gboolean
is_tax_area (const char *id, gconstpointer areas)
{
  for (guint i = 0; i < ((const GPtrArray *)areas)->len; i++)
    if (g_str_equal (((const RcTaxArea *)g_ptr_array_index ((GPtrArray *)areas, i))->id, id))
      return TRUE;
  return FALSE;
}

/* Work is taxed as goods are where nothing else is written. An id stays with its row, as jobs name the area by it. */
static gboolean
add_tax_area (RcTextRows *rows, guint row, GPtrArray *areas, GError **error)
{
  g_autofree char *name = dup_name (rows, row, error), *id = g_strdup (rc_text_rows_get_key (rows, row));
  gint64           goods_ppm, work_ppm;

  if (name == NULL || !read_rate (rows, row, 1, -1, &goods_ppm, error)
      || !read_rate (rows, row, 2, goods_ppm, &work_ppm, error))
    return FALSE;
  if (id == NULL)
    id = rc_free_id_new (name, "tax", is_tax_area, areas); /* those kept stand before */
  rc_text_rows_set_key (rows, row, id);
  g_ptr_array_add (areas, rc_tax_area_new (id, name, goods_ppm, work_ppm));
  return TRUE;
}

gboolean
rc_shop_rows_read_tax_areas (RcTextRows *rows, RcPriceBook *book, GError **error)
{
  g_autoptr (GPtrArray) areas = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_tax_area_free);

  for (guint row = 0; row < rc_text_rows_get_n (rows); row++)
    if (!rc_text_rows_is_blank (rows, row) && !add_tax_area (rows, row, areas, error))
      return FALSE;
  g_ptr_array_unref (book->tax_areas);
  book->tax_areas = g_steal_pointer (&areas);
  return TRUE;
}

/* --- steps of payment --- */

GtkWidget *
rc_shop_rows_new_payments (void)
{
  const RcTextRowsWords words
      = { _ ("Step of payment"), _ ("Add a step of _payment"), { _ ("When"), _ ("Part, %"), _ ("Days later") } };

  return rc_text_rows_new (&words);
}

void
rc_shop_rows_show_payments (RcTextRows *rows, const RcPriceBook *book)
{
  rc_text_rows_clear (rows);
  for (guint i = 0; i < book->payments->len; i++)
    {
      const RcPayment *payment = g_ptr_array_index (book->payments, i);
      g_autofree char *part = dup_rate (payment->part_ppm);
      g_autofree char *days = payment->days > 0 ? g_strdup_printf ("%d", payment->days) : NULL;
      const char      *texts[RC_TEXT_ROWS_COLUMNS] = { payment->name, part, days };

      rc_text_rows_add (rows, NULL, texts);
    }
}

static gboolean
add_payment (RcTextRows *rows, guint row, GPtrArray *payments, GError **error)
{
  g_autofree char *name = dup_name (rows, row, error);
  const char      *text = rc_text_rows_get_text (rows, row, 2);
  int              days = 0;
  gint64           part_ppm;

  if (name == NULL || !read_rate (rows, row, 1, -1, &part_ppm, error))
    return FALSE;
  if (*text != '\0' && !rc_form_read_days (text, &days, error))
    {
      rc_text_rows_show_fault (rows, row, 2, error);
      return FALSE;
    }
  RcPayment *payment = rc_payment_new (name, part_ppm);
  payment->days = days;
  g_ptr_array_add (payments, payment);
  return TRUE;
}

gboolean
rc_shop_rows_read_payments (RcTextRows *rows, RcPriceBook *book, GError **error)
{
  g_autoptr (GPtrArray) payments = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_payment_free);
  gint64 sum_ppm = 0;

  for (guint row = 0; row < rc_text_rows_get_n (rows); row++)
    {
      if (rc_text_rows_is_blank (rows, row))
        continue;
      if (!add_payment (rows, row, payments, error))
        return FALSE;
      sum_ppm += ((const RcPayment *)g_ptr_array_index (payments, payments->len - 1))->part_ppm;
      if (sum_ppm > RC_MICRO)
        {
          g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("with it the steps are more than 100 %%"));
          rc_text_rows_show_fault (rows, row, 1, error);
          return FALSE;
        }
    }
  g_ptr_array_unref (book->payments);
  book->payments = g_steal_pointer (&payments);
  return TRUE;
}
