#include "supplier-edit.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rowcut-error.h"

static int
find_place (const RcPriceBook *book, const char *name)
{
  for (guint i = 0; i < book->suppliers->len; i++)
    if (g_str_equal (((const RcSupplier *)g_ptr_array_index (book->suppliers, i))->name, name))
      return (int)i;
  return -1;
}

/* --- found --- */

static gboolean
holds_words (const RcSupplier *supplier, const GStrv words)
{
  const char *const parts[]
      = { supplier->name, supplier->address, supplier->phone, supplier->email, supplier->account };
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] != NULL)
      g_string_append_printf (text, "%s ", parts[i]);
  g_autofree char *folded = g_utf8_casefold (text->str, -1);
  for (guint i = 0; words[i] != NULL; i++)
    if (strstr (folded, words[i]) == NULL)
      return FALSE;
  return TRUE;
}

static void
take_if_it_has (RcSupplier *supplier, const GStrv words, GPtrArray *found)
{
  if (holds_words (supplier, words))
    g_ptr_array_add (found, supplier);
  else
    rc_supplier_free (supplier);
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_utf8_collate ((*(const RcSupplier *const *)a)->name, (*(const RcSupplier *const *)b)->name);
}

GPtrArray *
rc_supplier_edit_find (const RcPriceBook *book, const char *words)
{
  g_autofree char *folded = g_utf8_casefold (words != NULL ? words : "", -1);
  g_auto (GStrv) split = g_strsplit_set (folded, " \t", -1);
  g_autoptr (GHashTable) named = g_hash_table_new (g_str_hash, g_str_equal);
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_supplier_free);

  for (guint i = 0; i < book->suppliers->len; i++)
    take_if_it_has (rc_supplier_copy (g_ptr_array_index (book->suppliers, i)), split, found);
  for (guint i = 0; i < book->goods->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (book->goods, i);

      if (goods->supplier != NULL && *goods->supplier != '\0' && find_place (book, goods->supplier) < 0
          && g_hash_table_add (named, goods->supplier))
        take_if_it_has (rc_supplier_new (goods->supplier), split, found);
    }
  g_ptr_array_sort (found, compare_names);
  return found;
}

guint
rc_supplier_edit_count_goods (const RcPriceBook *book, const char *name, const RcGoods **one)
{
  guint n = 0;

  for (guint i = 0; i < book->goods->len; i++)
    {
      const RcGoods *goods = g_ptr_array_index (book->goods, i);

      if (g_strcmp0 (goods->supplier, name) == 0 && n++ == 0 && one != NULL)
        *one = goods;
    }
  return n;
}

/* --- changed --- */

static gboolean
equal (const RcSupplier *a, const RcSupplier *b)
{
  return g_strcmp0 (a->name, b->name) == 0 && g_strcmp0 (a->address, b->address) == 0
         && g_strcmp0 (a->phone, b->phone) == 0 && g_strcmp0 (a->email, b->email) == 0
         && g_strcmp0 (a->account, b->account) == 0 && g_strcmp0 (a->language, b->language) == 0
         && a->freight_cost == b->freight_cost && a->freight_sale == b->freight_sale
         && a->freight_free_from == b->freight_free_from && a->lead_days == b->lead_days;
}

static gboolean
check (const RcPriceBook *book, const RcSupplier *before, const RcSupplier *supplier, GError **error)
{
  int place = before != NULL ? find_place (book, before->name) : -1;

  if (before != NULL && (place < 0 || !equal (before, g_ptr_array_index (book->suppliers, place))))
    g_set_error (error, RC_ERROR, RC_ERROR_CONFLICT,
                 _ ("Another program has changed “%s” or taken it away; open it again and write it once more"),
                 before->name);
  else if (*supplier->name == '\0')
    g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("Name: is blank; write whom the goods are ordered from"));
  else if (find_place (book, supplier->name) >= 0 && find_place (book, supplier->name) != place)
    g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("Name: there is a supplier “%s” already; write another name"),
                 supplier->name);
  else
    return TRUE;
  return FALSE;
}

static void
rename_in_goods (const RcPriceBook *book, const char *before, const char *now)
{
  for (guint i = 0; i < book->goods->len; i++)
    {
      RcGoods *goods = g_ptr_array_index (book->goods, i);

      if (g_strcmp0 (goods->supplier, before) == 0)
        {
          g_free (goods->supplier);
          goods->supplier = g_strdup (now);
        }
    }
}

RcPriceBook *
rc_supplier_edit_put (const RcPriceBook *book, const RcSupplier *before, const RcSupplier *supplier, GError **error)
{
  RcSupplier  *put = rc_supplier_copy (supplier);
  RcPriceBook *edited;

  g_strstrip (put->name);
  if (!check (book, before, put, error))
    {
      rc_supplier_free (put);
      return NULL;
    }
  edited = rc_price_book_copy (book);
  if (before == NULL)
    {
      g_ptr_array_add (edited->suppliers, put);
      return edited;
    }
  int place = find_place (edited, before->name);
  rename_in_goods (edited, before->name, put->name);
  g_ptr_array_remove_index (edited->suppliers, (guint)place);
  g_ptr_array_insert (edited->suppliers, place, put);
  return edited;
}

RcPriceBook *
rc_supplier_edit_remove (const RcPriceBook *book, const char *name, GError **error)
{
  const RcGoods *one = NULL;
  guint          n = rc_supplier_edit_count_goods (book, name, &one);
  RcPriceBook   *edited;

  if (n > 0)
    {
      g_set_error (
          error, RC_ERROR, RC_ERROR_REFERENCE,
          ngettext ("“%s” stays: %u article comes from there, “%s”. Give it another supplier first.",
                    "“%s” stays: %u articles come from there, “%s” the first. Give them another supplier first.", n),
          name, n, one->name);
      return NULL;
    }
  edited = rc_price_book_copy (book);
  g_ptr_array_remove_index (edited->suppliers, (guint)find_place (edited, name));
  return edited;
}
