/* Quantities become priced lines: one price for a line, or whole rolls and the rest by the cut. */
#include <glib/gi18n-lib.h>

#include "quote-line.h"
#include "rowcut-error.h"
#include "roll-way.h"

/* How much of a quantity line goes at which price. */
typedef struct
{
  const RcPrice *price;
  RcPriceSide    side;
  gint64         micro;        /* in the quantity's unit */
  gint64         needed_micro; /* of what the plan needs, so much is in it */
  gint64         n_rolls;      /* whole rolls that it is; 0: not counted in rolls */
} Share;

static RcQuoteLine *
line_new (const RcQuantityLine *quantity, const Share *share, GError **error)
{
  g_autoptr (RcQuoteLine) line = g_new0 (RcQuoteLine, 1);
  const RcPrice *price = share->price;

  line->item = g_strdup (quantity->item);
  line->name = g_strdup (quantity->name);
  line->because = g_strdup (quantity->because);
  line->packs = share->n_rolls > 0 ? share->n_rolls : quantity->packs;
  line->pack_unit = share->n_rolls > 0 ? RC_UNIT_ROLL : quantity->pack_unit;
  line->is_work = quantity->work != RC_WORK_NONE;
  line->from_stock = quantity->from_stock;
  line->needed_micro = share->needed_micro;
  line->needed_unit = quantity->unit;
  line->unit = price->unit;
  line->price = rc_price_get (price, share->side);
  line->from_micro = price->from_micro;
  line->price_since = g_strdup (price->valid_from);
  if (!rc_conversion_apply (quantity->goods, share->micro, quantity->unit, price->unit, &line->quantity_micro))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                   _ ("%s (item “%s”) is counted in %s, but its price is for 1 %s: give a price in a unit that can be "
                      "converted, or say what a pack holds"),
                   quantity->name, quantity->item, rc_unit_get_name (quantity->unit), rc_unit_get_name (price->unit));
      return NULL;
    }
  if (!rc_money_multiply (line->price, line->quantity_micro, &line->gross, error))
    {
      g_prefix_error (error, "%s: ", quantity->name);
      return NULL;
    }
  line->amount = line->gross;
  return g_steal_pointer (&line);
}

static void
set_no_price_error (const RcQuantityLine *quantity, const RcPriceBook *book, const char *date, gint64 wanted_micro,
                    GError **error)
{
  g_autofree char *when = date != NULL ? g_strdup_printf (_ (" on %s"), date) : g_strdup ("");
  g_autofree char *wanted = rc_quantity_format (wanted_micro, 3);

  if (rc_price_book_find (book, quantity->item, date) != NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                 _ ("The price book has no price for as little as %s %s of %s (item “%s”)%s: add one from 0"), wanted,
                 rc_unit_get_name (quantity->unit), quantity->name, quantity->item, when);
  else if (rc_price_book_find (book, quantity->item, NULL) != NULL)
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                 _ ("No price for %s (item “%s”) is valid%s: the price book has one for other days"), quantity->name,
                 quantity->item, when);
  else
    g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("The price book has no price for %s (item “%s”)%s"),
                 quantity->name, quantity->item, when);
}

/* All of the line at the price for `wanted_micro` of its item. */
static RcQuoteLine *
plain_line_new (const RcQuantityLine *quantity, gint64 wanted_micro, RcPriceSide side, const RcPriceBook *book,
                const char *date, GError **error)
{
  Share share = { NULL, side, quantity->quantity_micro, quantity->net_micro, 0 };

  share.price = rc_price_book_find_for (book, quantity->goods, quantity->item, date, wanted_micro, quantity->unit);
  if (share.price != NULL)
    return line_new (quantity, &share, error);
  set_no_price_error (quantity, book, date, wanted_micro, error);
  return NULL;
}

/* --- by the roll and by the cut --- */

static void
say (RcQuoteLine *line, const char *name, char *because)
{
  g_autofree char *named = g_strdup_printf (name, line->name);

  g_free (line->name);
  line->name = g_steal_pointer (&named);
  g_free (line->because);
  line->because = because;
}

/* Adds what of the line goes by the roll (rolls_micro) and what by the cut. The sentence about the way stands with the
 * rolls. */
static gboolean
add_by_roll (GPtrArray *lines, const RcQuantityLine *quantity, const RcRollWay *way, gint64 rolls_micro,
             gint64 cut_micro, RcPriceSide side, const RcCurrency *currency, GError **error)
{
  gint64 needed_in_rolls = MIN (quantity->net_micro, rolls_micro);
  Share  rolls
      = { way->by_roll, side, rolls_micro, needed_in_rolls, rolls_micro == way->rolls_micro ? way->n_rolls : 0 };
  Share        cut = { way->by_cut, side, cut_micro, quantity->net_micro - needed_in_rolls, 0 };
  RcQuoteLine *line;

  if (rolls_micro > 0)
    {
      g_autofree char *sentence = rc_roll_way_explain (way, currency);

      line = line_new (quantity, &rolls, error);
      if (line == NULL)
        return FALSE;
      /* Translators: %s are the goods */
      say (line, _ ("%s, by the roll"), g_strconcat (quantity->because, "; ", sentence, NULL));
      g_ptr_array_add (lines, line);
    }
  if (cut_micro > 0)
    {
      line = line_new (quantity, &cut, error);
      if (line == NULL)
        return FALSE;
      say (line, _ ("%s, by the cut"),
           rolls_micro > 0 ? g_strdup (_ ("The rest beside full rolls")) : g_strdup (quantity->because));
      g_ptr_array_add (lines, line);
    }
  return TRUE;
}

gboolean
rc_quote_lines_add_cost (GPtrArray *lines, const RcQuantityLine *quantity, const RcPriceBook *book, const char *date,
                         GError **error)
{
  guint        first = lines->len;
  RcQuoteLine *line;
  RcRollWay    way;

  if (rc_roll_way_find (&way, quantity, quantity->quantity_micro, !quantity->from_stock, RC_PRICE_SIDE_COST, book,
                        date))
    {
      if (!add_by_roll (lines, quantity, &way, way.rolls_micro, way.cut_micro, RC_PRICE_SIDE_COST, &book->currency,
                        error))
        return FALSE;
    }
  else
    {
      line = plain_line_new (quantity, quantity->quantity_micro, RC_PRICE_SIDE_COST, book, date, error);
      if (line == NULL)
        return FALSE;
      g_ptr_array_add (lines, line);
    }
  for (guint i = first; i < lines->len; i++)
    {
      line = g_ptr_array_index (lines, i);
      line->cost = line->amount;
    }
  return TRUE;
}

/* The job's quantity of an item in a line's unit. */
typedef struct
{
  gint64   before_micro; /* in the lines before it */
  gint64   all_micro;
  gboolean is_bought; /* some of it, in the last such line */
} ItemSum;

static ItemSum
sum_item (const GPtrArray *quantities, guint index)
{
  const RcQuantityLine *line = g_ptr_array_index (quantities, index);
  ItemSum               sum = { 0 };

  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *other = g_ptr_array_index (quantities, i);

      if (other->unit != line->unit || !g_str_equal (other->item, line->item))
        continue;
      if (i == index)
        sum.before_micro = sum.all_micro;
      if (__builtin_add_overflow (sum.all_micro, other->quantity_micro, &sum.all_micro))
        sum.all_micro = G_MAXINT64;
      sum.is_bought = !other->from_stock;
    }
  return sum;
}

/* Gives the lines from `first` on what the shop pays: line by line where it buys in the same shares, else by how much
 * of the quantity each is. */
static gboolean
set_costs (const GPtrArray *lines, guint first, const RcQuantityLine *quantity, const RcPriceBook *book,
           const char *date, GError **error)
{
  g_autoptr (GPtrArray) costs = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quote_line_free);
  RcMoney  sum = 0, rest;
  gint64   sold_micro = 0;
  guint    n = lines->len - first;
  gboolean same;

  if (!rc_quote_lines_add_cost (costs, quantity, book, date, error))
    return FALSE;
  same = costs->len == n;
  for (guint i = 0; i < costs->len; i++)
    {
      const RcQuoteLine *cost = g_ptr_array_index (costs, i);

      if (!rc_money_add (sum, cost->cost, &sum))
        sum = G_MAXINT64; /* the quotation's sum will say so */
      same = same && ((const RcQuoteLine *)g_ptr_array_index (lines, first + i))->packs == cost->packs;
    }
  for (guint i = 0; i < n; i++)
    sold_micro += ((const RcQuoteLine *)g_ptr_array_index (lines, first + i))->needed_micro;
  rest = sum;
  for (guint i = 0; i < n; i++)
    {
      RcQuoteLine *line = g_ptr_array_index (lines, first + i);

      if (same)
        line->cost = ((const RcQuoteLine *)g_ptr_array_index (costs, i))->cost;
      else if (i + 1 == n || sold_micro == 0 || !rc_multiply_divide (sum, line->needed_micro, sold_micro, &line->cost))
        line->cost = rest;
      rest -= line->cost;
    }
  return TRUE;
}

gboolean
rc_quote_lines_add_sale (GPtrArray *lines, const GPtrArray *quantities, guint index, const RcPriceBook *book,
                         const char *date, GError **error)
{
  const RcQuantityLine *quantity = g_ptr_array_index (quantities, index);
  const ItemSum         sum = sum_item (quantities, index);
  guint                 first = lines->len;
  RcRollWay             way;

  if (rc_roll_way_find (&way, quantity, sum.all_micro, sum.is_bought, RC_PRICE_SIDE_SALE, book, date))
    {
      gint64 rolls_micro = CLAMP (way.rolls_micro - sum.before_micro, 0, quantity->quantity_micro);

      if (way.adds_roll && sum.before_micro + quantity->quantity_micro == sum.all_micro)
        rolls_micro = way.rolls_micro - sum.before_micro;
      if (!add_by_roll (lines, quantity, &way, rolls_micro, MAX (quantity->quantity_micro - rolls_micro, 0),
                        RC_PRICE_SIDE_SALE, &book->currency, error))
        return FALSE;
    }
  else
    {
      RcQuoteLine *line = plain_line_new (quantity, sum.all_micro, RC_PRICE_SIDE_SALE, book, date, error);

      if (line == NULL)
        return FALSE;
      g_ptr_array_add (lines, line);
    }
  return set_costs (lines, first, quantity, book, date, error);
}
