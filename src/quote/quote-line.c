#include "quote-line.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

RcQuoteLine *
rc_quote_line_copy (const RcQuoteLine *line)
{
  RcQuoteLine *copy = g_memdup2 (line, sizeof *line);

  copy->item = g_strdup (line->item);
  copy->name = g_strdup (line->name);
  copy->because = g_strdup (line->because);
  copy->price_since = g_strdup (line->price_since);
  return copy;
}

void
rc_quote_line_free (RcQuoteLine *line)
{
  if (line == NULL)
    return;
  g_free (line->item);
  g_free (line->name);
  g_free (line->because);
  g_free (line->price_since);
  g_free (line);
}

RcQuoteLine *
rc_quote_line_new_plain (const char *item, const char *name, gint64 quantity_micro, RcUnit unit, RcMoney price,
                         RcMoney cost, gboolean is_work, GError **error)
{
  g_autoptr (RcQuoteLine) line = g_new0 (RcQuoteLine, 1);

  line->item = g_strdup (item);
  line->name = g_strdup (name != NULL ? name : item);
  line->because = g_strdup ("");
  line->quantity_micro = line->needed_micro = quantity_micro;
  line->unit = line->needed_unit = line->pack_unit = unit;
  line->price = price;
  line->is_work = is_work;
  if (!rc_money_multiply (price, quantity_micro, &line->gross, error)
      || !rc_money_multiply (cost, quantity_micro, &line->cost, error))
    {
      g_prefix_error (error, "%s: ", line->name);
      return NULL;
    }
  line->amount = line->gross;
  return g_steal_pointer (&line);
}

void
rc_quote_line_set_discount (RcQuoteLine *line, gint64 discount_ppm)
{
  line->discount_ppm = discount_ppm;
  line->amount = line->gross - rc_money_part (line->gross, discount_ppm);
}
