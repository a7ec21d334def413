#include "price-edit.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "day.h"
#include "free-id.h"
#include "rowcut-error.h"
#include "work.h"

#define PPM_PER_PERCENT 10000

static const RcPrice *
get_price (const RcPriceBook *book, RcPriceLine line)
{
  return line.price >= 0 ? g_ptr_array_index (book->prices, line.price) : NULL;
}

const char *
rc_price_edit_get_kind_label (RcGoodsKind kind)
{
  static const char *const LABELS[RC_N_GOODS_KINDS]
      = { N_ ("Carpet"),     N_ ("Cushion"),  N_ ("Seam tape"), N_ ("Seam sealer"),
          N_ ("Tack strip"), N_ ("Adhesive"), N_ ("Moulding") };

  return _ (LABELS[kind]);
}

static char *
dup_name (const RcPriceBook *book, const char *item)
{
  const RcGoods *goods = rc_price_book_find_goods (book, item);
  RcWork         work = RC_WORK_NONE;

  if (goods != NULL)
    return g_strdup (goods->name);
  return g_strdup (rc_work_parse (item, &work, NULL) && work != RC_WORK_NONE ? rc_work_get_label (work) : item);
}

/* --- lines --- */

static char *
dup_sought (const RcPriceBook *book, const char *item)
{
  g_autofree char *name = dup_name (book, item), *text = NULL;
  const RcGoods   *goods = rc_price_book_find_goods (book, item);

  text = g_strjoin (" ", name, item, goods != NULL ? rc_price_edit_get_kind_label (goods->kind) : _ ("Work"),
                    goods != NULL && goods->supplier != NULL ? goods->supplier : "", NULL);
  return g_utf8_casefold (text, -1);
}

static gboolean
holds_words (const RcPriceBook *book, const char *item, const GStrv words)
{
  g_autofree char *sought = dup_sought (book, item);

  for (guint i = 0; words[i] != NULL; i++)
    if (strstr (sought, words[i]) == NULL)
      return FALSE;
  return TRUE;
}

/* Every price of the item; goods without one have a line all the same. */
static void
add_lines (const RcPriceBook *book, const char *item, gboolean is_goods, GArray *lines)
{
  guint before = lines->len;

  for (guint i = 0; i < book->prices->len; i++)
    {
      const RcPrice *price = g_ptr_array_index (book->prices, i);
      RcPriceLine    line = { item, (int)i };

      if (g_str_equal (price->item, item))
        g_array_append_val (lines, line);
    }
  if (is_goods && lines->len == before)
    {
      RcPriceLine none = { item, -1 };

      g_array_append_val (lines, none);
    }
}

GArray *
rc_price_edit_find_lines (const RcPriceBook *book, const char *words)
{
  g_autofree char *folded = g_utf8_casefold (words != NULL ? words : "", -1);
  g_auto (GStrv) split = g_strsplit_set (folded, " \t", -1);
  g_autoptr (GHashTable) done = g_hash_table_new (g_str_hash, g_str_equal);
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (RcPriceLine));

  for (guint i = 0; i < book->goods->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (book->goods, i);

      if (g_hash_table_add (done, goods->id) && holds_words (book, goods->id, split))
        add_lines (book, goods->id, TRUE, lines);
    }
  for (guint i = 0; i < book->prices->len; i++)
    {
      const RcPrice *price = g_ptr_array_index (book->prices, i);

      if (g_hash_table_add (done, price->item) && holds_words (book, price->item, split))
        add_lines (book, price->item, FALSE, lines);
    }
  return lines;
}

/* --- fields --- */

gboolean
rc_price_field_is_editable (RcPriceField field)
{
  return field >= RC_PRICE_COST;
}

static char *
dup_margin (const RcPrice *price)
{
  g_autofree char *number = rc_quantity_format (rc_price_get_margin_ppm (price->cost, price->sale) * 100, 1);

  return g_strconcat (number, " %", NULL);
}

static char *
dup_price_text (const RcPriceBook *book, const RcPrice *price, RcPriceField field)
{
  switch (field)
    {
    case RC_PRICE_COST:
      return rc_money_format_plain (price->cost, &book->currency);
    case RC_PRICE_SALE:
      return rc_money_format_plain (price->sale, &book->currency);
    case RC_PRICE_MARGIN:
      return dup_margin (price);
    case RC_PRICE_QUANTITY_FROM:
      return price->from_micro > 0 ? rc_quantity_format (price->from_micro, 6) : g_strdup ("");
    case RC_PRICE_DAY_FROM:
      return g_strdup (price->valid_from != NULL ? price->valid_from : "");
    default:
      return g_strdup (price->valid_to != NULL ? price->valid_to : "");
    }
}

char *
rc_price_edit_dup_text (const RcPriceBook *book, RcPriceLine line, RcPriceField field)
{
  const RcGoods *goods = rc_price_book_find_goods (book, line.item);
  const RcPrice *price = get_price (book, line);

  switch (field)
    {
    case RC_PRICE_NAME:
      return dup_name (book, line.item);
    case RC_PRICE_KIND:
      return g_strdup (goods != NULL ? rc_price_edit_get_kind_label (goods->kind) : _ ("Work"));
    case RC_PRICE_SUPPLIER:
      return g_strdup (goods != NULL && goods->supplier != NULL ? goods->supplier : "");
    case RC_PRICE_UNIT:
      return g_strdup (rc_unit_get_label (price != NULL ? price->unit : goods->unit));
    default:
      return price != NULL ? dup_price_text (book, price, field) : g_strdup ("");
    }
}

gboolean
rc_price_edit_read_money (const char *text, const RcCurrency *currency, RcMoney *money, GError **error)
{
  if (!rc_money_parse (text, currency, money, error))
    return FALSE;
  if (*money >= 0)
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("A price is not below 0"));
  return FALSE;
}

static gboolean
set_margin (RcPrice *price, const char *text, GError **error)
{
  gint64 margin_ppm;

  return rc_rate_parse (text, &margin_ppm, error)
         && rc_price_sale_from_margin (price->cost, margin_ppm, &price->sale, error);
}

/* "" is no day. */
static gboolean
set_day (const char *text, char **day, GError **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));

  if (*stripped != '\0' && !rc_day_is_valid (stripped))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is not a day; write it like 2026-03-31"), text);
      return FALSE;
    }
  g_free (*day);
  *day = *stripped != '\0' ? g_steal_pointer (&stripped) : NULL;
  return TRUE;
}

static gboolean
check_days (const RcPrice *price, GError **error)
{
  if (price->valid_from == NULL || price->valid_to == NULL || strcmp (price->valid_from, price->valid_to) <= 0)
    return TRUE;
  g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The last day, %s, is before the first, %s"), price->valid_to,
               price->valid_from);
  return FALSE;
}

static gboolean
set_field (const RcPriceBook *book, RcPrice *price, RcPriceField field, const char *text, GError **error)
{
  switch (field)
    {
    case RC_PRICE_COST:
      return rc_price_edit_read_money (text, &book->currency, &price->cost, error);
    case RC_PRICE_SALE:
      return rc_price_edit_read_money (text, &book->currency, &price->sale, error);
    case RC_PRICE_MARGIN:
      return set_margin (price, text, error);
    case RC_PRICE_QUANTITY_FROM:
      price->from_micro = 0;
      return *text == '\0' || rc_quantity_parse (text, &price->from_micro, error);
    case RC_PRICE_DAY_FROM:
      return set_day (text, &price->valid_from, error) && check_days (price, error);
    case RC_PRICE_DAY_TO:
      return set_day (text, &price->valid_to, error) && check_days (price, error);
    default:
      g_return_val_if_reached (FALSE);
    }
}

RcPriceBook *
rc_price_edit_set (const RcPriceBook *book, RcPriceLine line, RcPriceField field, const char *text, GError **error)
{
  g_autoptr (RcPriceBook) edited = rc_price_book_copy (book);
  RcPrice *price;

  if (line.price < 0)
    {
      price = rc_price_new (line.item, rc_price_book_find_goods (book, line.item)->unit, 0, 0);
      g_ptr_array_add (edited->prices, price);
    }
  else
    price = g_ptr_array_index (edited->prices, line.price);
  return set_field (book, price, field, text, error) ? g_steal_pointer (&edited) : NULL;
}

RcPriceBook *
rc_price_edit_renew (const RcPriceBook *book, guint price, const char *day, guint *new_price, GError **error)
{
  g_autoptr (RcPriceBook) edited = rc_price_book_copy (book);
  RcPrice *old = g_ptr_array_index (edited->prices, price), *new = rc_price_copy (old);

  if (old->valid_from != NULL && strcmp (old->valid_from, day) >= 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("This price begins on %s itself: change it where it stands"),
                   old->valid_from);
      rc_price_free (new);
      return NULL;
    }
  g_free (old->valid_to);
  old->valid_to = rc_day_add (day, -1);
  g_free (new->valid_from);
  new->valid_from = g_strdup (day);
  g_ptr_array_insert (edited->prices, (int)price + 1, new);
  *new_price = price + 1;
  return g_steal_pointer (&edited);
}

RcPriceBook *
rc_price_edit_remove (const RcPriceBook *book, guint price)
{
  RcPriceBook *edited = rc_price_book_copy (book);

  g_ptr_array_remove_index (edited->prices, price);
  return edited;
}

/* --- goods --- */

static int
find_place (const RcPriceBook *book, const char *id)
{
  for (guint i = 0; i < book->goods->len; i++)
    if (g_strcmp0 (((const RcGoods *)g_ptr_array_index (book->goods, i))->id, id) == 0)
      return (int)i;
  return -1;
}

static gboolean
is_taken (const char *id, gconstpointer data)
{
  const RcPriceBook *book = data;
  RcWork             work;

  for (guint i = 0; i < book->prices->len; i++)
    if (g_str_equal (((const RcPrice *)g_ptr_array_index (book->prices, i))->item, id))
      return TRUE;
  return find_place (book, id) >= 0 || rc_work_parse (id, &work, NULL);
}

RcPriceBook *
rc_price_edit_put_goods (const RcPriceBook *book, const RcGoods *before, const RcGoods *goods, char **id,
                         GError **error)
{
  int place = before != NULL ? find_place (book, before->id) : -1;
  g_autoptr (RcGoods) put = rc_goods_copy (goods);
  RcPriceBook *edited;

  if (before != NULL && (place < 0 || !rc_goods_equal (before, g_ptr_array_index (book->goods, place))))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT,
                   _ ("Another program has changed “%s” or taken it away; open it again and write it once more"),
                   before->name);
      return NULL;
    }
  g_strstrip (put->name);
  if (*put->name == '\0')
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("Name: is blank; write what the goods are called"));
      return NULL;
    }
  if (put->supplier != NULL && *g_strstrip (put->supplier) == '\0')
    g_clear_pointer (&put->supplier, g_free);
  if (before == NULL)
    {
      g_free (put->id);
      put->id = rc_free_id_new (put->name, rc_goods_kind_get_name (put->kind), is_taken, book);
    }
  if (!rc_goods_check (put, error))
    return NULL;
  *id = g_strdup (put->id);
  edited = rc_price_book_copy (book);
  if (place >= 0)
    g_ptr_array_remove_index (edited->goods, (guint)place);
  g_ptr_array_insert (edited->goods, place, g_steal_pointer (&put));
  return edited;
}

RcPriceBook *
rc_price_edit_remove_goods (const RcPriceBook *book, const char *id)
{
  RcPriceBook *edited = rc_price_book_copy (book);

  g_ptr_array_remove_index (edited->goods, (guint)find_place (edited, id));
  return edited;
}
