#include "offer-edit.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

#define MOST_DAYS 3650

/* --- finding --- */

RcExtraLine *
rc_offer_edit_find_extra (const RcOffer *offer, const char *id)
{
  for (guint i = 0; i < offer->extras->len; i++)
    if (g_strcmp0 (((RcExtraLine *)offer->extras->pdata[i])->id, id) == 0)
      return offer->extras->pdata[i];
  return NULL;
}

RcAlternative *
rc_offer_edit_find_option (const RcOffer *offer, const char *id)
{
  for (guint i = 0; i < offer->alternatives->len; i++)
    if (g_strcmp0 (((RcAlternative *)offer->alternatives->pdata[i])->id, id) == 0)
      return offer->alternatives->pdata[i];
  return NULL;
}

RcSwap *
rc_offer_edit_find_swap (const RcAlternative *alternative, const char *place)
{
  for (guint i = 0; i < alternative->swaps->len; i++)
    if (g_strcmp0 (((RcSwap *)alternative->swaps->pdata[i])->place, place) == 0)
      return alternative->swaps->pdata[i];
  return NULL;
}

/* --- terms of lines --- */

static RcLineTerms *
need_terms (RcOffer *offer, const char *item)
{
  RcLineTerms *terms = rc_offer_find_line (offer, item);

  if (terms == NULL)
    g_ptr_array_add (offer->lines, terms = rc_line_terms_new (item));
  return terms;
}

/* Terms that say nothing are none. */
static void
drop_empty_terms (RcOffer *offer)
{
  for (guint i = offer->lines->len; i-- > 0;)
    {
      const RcLineTerms *terms = offer->lines->pdata[i];

      if (!terms->optional && !terms->hidden && terms->discount_ppm == 0 && terms->tax_ppm < 0)
        g_ptr_array_remove_index (offer->lines, i);
    }
}

void
rc_offer_edit_set_optional (RcOffer *offer, const char *item, gboolean optional)
{
  need_terms (offer, item)->optional = optional;
  drop_empty_terms (offer);
}

void
rc_offer_edit_set_hidden (RcOffer *offer, const char *item, gboolean hidden)
{
  need_terms (offer, item)->hidden = hidden;
  drop_empty_terms (offer);
}

/* --- texts --- */

static char *
dup_rate (gint64 ppm, gint64 nothing)
{
  return ppm == nothing ? g_strdup ("") : rc_rate_format (ppm);
}

static char *
dup_count (int number)
{
  return number == 0 ? g_strdup ("") : g_strdup_printf ("%d", number);
}

static char *
dup_extra_text (const RcExtraLine *extra, RcOfferField field, const RcCurrency *currency)
{
  if (extra == NULL)
    return g_strdup ("");
  if (field == RC_OFFER_EXTRA_NAME)
    return g_strdup (extra->name != NULL ? extra->name : "");
  if (field == RC_OFFER_EXTRA_QUANTITY)
    return rc_quantity_format (extra->quantity_micro, 6);
  return rc_money_format_plain (field == RC_OFFER_EXTRA_PRICE ? extra->price : extra->cost, currency);
}

static char *
dup_payment_text (const RcOffer *offer, const RcOfferSpot *spot)
{
  const RcPayment *payment = spot->index < offer->payments->len ? offer->payments->pdata[spot->index] : NULL;

  if (payment == NULL)
    return g_strdup ("");
  if (spot->field == RC_OFFER_PAYMENT_NAME)
    return g_strdup (payment->name != NULL ? payment->name : "");
  return spot->field == RC_OFFER_PAYMENT_PART ? rc_rate_format (payment->part_ppm) : dup_count (payment->days);
}

char *
rc_offer_edit_dup_text (const RcOffer *offer, const RcOfferSpot *spot, const RcCurrency *currency)
{
  const RcLineTerms   *terms = rc_offer_find_line (offer, spot->item);
  const RcAlternative *alternative;

  switch (spot->field)
    {
    case RC_OFFER_DISCOUNT_RATE:
      return dup_rate (offer->discount_ppm, 0);
    case RC_OFFER_DISCOUNT_SUM:
      return offer->discount == 0 ? g_strdup ("") : rc_money_format_plain (offer->discount, currency);
    case RC_OFFER_VALID_DAYS:
      return dup_count (offer->valid_days);
    case RC_OFFER_TERMS:
      return g_strdup (offer->terms != NULL ? offer->terms : "");
    case RC_OFFER_LINE_DISCOUNT:
      return dup_rate (terms != NULL ? terms->discount_ppm : 0, 0);
    case RC_OFFER_LINE_TAX:
      return dup_rate (terms != NULL ? terms->tax_ppm : -1, -1);
    case RC_OFFER_PAYMENT_NAME:
    case RC_OFFER_PAYMENT_PART:
    case RC_OFFER_PAYMENT_DAYS:
      return dup_payment_text (offer, spot);
    case RC_OFFER_OPTION_NAME:
      alternative = rc_offer_edit_find_option (offer, spot->item);
      return g_strdup (alternative != NULL && alternative->name != NULL ? alternative->name : "");
    default:
      return dup_extra_text (rc_offer_edit_find_extra (offer, spot->item), spot->field, currency);
    }
}

/* Blank is `nothing`. */
static gboolean
read_rate (const char *text, gint64 nothing, gint64 most_ppm, gint64 *ppm, GError **error)
{
  gint64 read = nothing;

  if (*text != '\0' && !rc_rate_parse (text, &read, error))
    return FALSE;
  if (*text != '\0' && (read < 0 || read > most_ppm))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("%s %% is not between 0 and %d %%"), text,
                   (int)(most_ppm / 10000));
      return FALSE;
    }
  *ppm = read;
  return TRUE;
}

static gboolean
read_money (const char *text, const RcCurrency *currency, RcMoney *money, GError **error)
{
  RcMoney read = 0;

  if (*text != '\0' && !rc_money_parse (text, currency, &read, error))
    return FALSE;
  if (read < 0)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("A sum of money here is not below 0"));
      return FALSE;
    }
  *money = read;
  return TRUE;
}

static gboolean
read_count (const char *text, int *number, GError **error)
{
  guint64 read = 0;

  if (*text != '\0' && !g_ascii_string_to_unsigned (text, 10, 0, MOST_DAYS, &read, NULL))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_PARSE, _ ("“%s” is no number of days from 0 to %d"), text, MOST_DAYS);
      return FALSE;
    }
  *number = (int)read;
  return TRUE;
}

static void
read_text (const char *text, char **at)
{
  g_free (*at);
  *at = *text != '\0' ? g_strdup (text) : NULL;
}

static gboolean
set_extra_text (RcExtraLine *extra, RcOfferField field, const char *text, const RcCurrency *currency, GError **error)
{
  if (field == RC_OFFER_EXTRA_NAME)
    read_text (text, &extra->name);
  else if (field == RC_OFFER_EXTRA_QUANTITY)
    return rc_quantity_parse (text, &extra->quantity_micro, error);
  else
    return read_money (text, currency, field == RC_OFFER_EXTRA_PRICE ? &extra->price : &extra->cost, error);
  return TRUE;
}

static gboolean
set_payment_text (RcOffer *offer, const RcOfferSpot *spot, const char *text, GError **error)
{
  RcPayment *payment = offer->payments->pdata[spot->index];

  if (spot->field == RC_OFFER_PAYMENT_NAME)
    read_text (text, &payment->name);
  else if (spot->field == RC_OFFER_PAYMENT_PART)
    return read_rate (text, 0, RC_MICRO, &payment->part_ppm, error);
  else
    return read_count (text, &payment->days, error);
  return TRUE;
}

static gboolean
set_line_rate (RcOffer *offer, const RcOfferSpot *spot, const char *text, GError **error)
{
  gboolean is_tax = spot->field == RC_OFFER_LINE_TAX;
  gint64   ppm;

  if (!read_rate (text, is_tax ? -1 : 0, RC_MICRO, &ppm, error))
    return FALSE;
  if (is_tax)
    need_terms (offer, spot->item)->tax_ppm = ppm;
  else
    need_terms (offer, spot->item)->discount_ppm = ppm;
  drop_empty_terms (offer);
  return TRUE;
}

/* Somebody may have taken away what the spot is about. */
static gboolean
is_there (const RcOffer *offer, const RcOfferSpot *spot)
{
  switch (spot->field)
    {
    case RC_OFFER_EXTRA_NAME:
    case RC_OFFER_EXTRA_QUANTITY:
    case RC_OFFER_EXTRA_PRICE:
    case RC_OFFER_EXTRA_COST:
      return rc_offer_edit_find_extra (offer, spot->item) != NULL;
    case RC_OFFER_PAYMENT_NAME:
    case RC_OFFER_PAYMENT_PART:
    case RC_OFFER_PAYMENT_DAYS:
      return spot->index < offer->payments->len;
    case RC_OFFER_OPTION_NAME:
      return rc_offer_edit_find_option (offer, spot->item) != NULL;
    default:
      return TRUE;
    }
}

gboolean
rc_offer_edit_set_text (RcOffer *offer, const RcOfferSpot *spot, const char *text, const RcCurrency *currency,
                        GError **error)
{
  if (!is_there (offer, spot))
    {
      g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE, _ ("What this field was about has been taken away."));
      return FALSE;
    }
  switch (spot->field)
    {
    case RC_OFFER_DISCOUNT_RATE:
      return read_rate (text, 0, RC_MICRO, &offer->discount_ppm, error);
    case RC_OFFER_DISCOUNT_SUM:
      return read_money (text, currency, &offer->discount, error);
    case RC_OFFER_VALID_DAYS:
      return read_count (text, &offer->valid_days, error);
    case RC_OFFER_TERMS:
      read_text (text, &offer->terms);
      return TRUE;
    case RC_OFFER_LINE_DISCOUNT:
    case RC_OFFER_LINE_TAX:
      return set_line_rate (offer, spot, text, error);
    case RC_OFFER_PAYMENT_NAME:
    case RC_OFFER_PAYMENT_PART:
    case RC_OFFER_PAYMENT_DAYS:
      return set_payment_text (offer, spot, text, error);
    case RC_OFFER_OPTION_NAME:
      read_text (text, &rc_offer_edit_find_option (offer, spot->item)->name);
      return TRUE;
    default:
      return set_extra_text (rc_offer_edit_find_extra (offer, spot->item), spot->field, text, currency, error);
    }
}

/* --- further lines --- */

RcExtraLine *
rc_offer_edit_add_extra (RcOffer *offer, const char *item, RcUnit unit)
{
  RcExtraLine *extra = NULL;

  for (guint number = 1; extra == NULL; number++)
    {
      g_autofree char *id = g_strdup_printf ("X%u", number);

      if (rc_offer_edit_find_extra (offer, id) == NULL)
        extra = rc_extra_line_new (id);
    }
  extra->item = g_strdup (item);
  extra->unit = unit;
  if (item == NULL)
    extra->name = g_strdup (_ ("Further work"));
  extra->is_work = TRUE;
  g_ptr_array_add (offer->extras, extra);
  return extra;
}

void
rc_offer_edit_remove_extra (RcOffer *offer, const char *id)
{
  RcLineTerms *terms = rc_offer_find_line (offer, id);

  if (terms != NULL)
    g_ptr_array_remove (offer->lines, terms);
  g_ptr_array_remove (offer->extras, rc_offer_edit_find_extra (offer, id));
}

/* --- payments --- */

void
rc_offer_edit_add_payment (RcOffer *offer, const GPtrArray *book_payments)
{
  gint64 left_ppm = RC_MICRO;

  for (guint i = 0; offer->payments->len == 0 && i < book_payments->len; i++)
    g_ptr_array_add (offer->payments, rc_payment_copy (book_payments->pdata[i]));
  for (guint i = 0; i < offer->payments->len; i++)
    left_ppm -= ((const RcPayment *)offer->payments->pdata[i])->part_ppm;
  g_ptr_array_add (offer->payments,
                   rc_payment_new (offer->payments->len == 0 ? _ ("With the order") : _ ("When fitted"),
                                   offer->payments->len == 0 ? RC_MICRO / 2 : MAX (left_ppm, 0)));
}

void
rc_offer_edit_remove_payment (RcOffer *offer, guint index)
{
  g_ptr_array_remove_index (offer->payments, index);
}

/* --- other ways to do the job --- */

RcAlternative *
rc_offer_edit_add_option (RcOffer *offer, const char *name)
{
  RcAlternative *alternative = NULL;

  /* The job as it stands is A. */
  for (char letter = 'B'; alternative == NULL && letter <= 'Z'; letter++)
    {
      const char id[] = { letter, '\0' };

      if (rc_offer_edit_find_option (offer, id) == NULL)
        alternative = rc_alternative_new (id, name);
    }
  if (alternative != NULL)
    g_ptr_array_add (offer->alternatives, alternative);
  return alternative;
}

void
rc_offer_edit_remove_option (RcOffer *offer, const char *id)
{
  g_ptr_array_remove (offer->alternatives, rc_offer_edit_find_option (offer, id));
}

void
rc_offer_edit_swap (RcAlternative *alternative, const char *place, const char *carpet, const char *option)
{
  RcSwap *swap = rc_offer_edit_find_swap (alternative, place);

  if (swap != NULL)
    g_ptr_array_remove (alternative->swaps, swap);
  if (carpet != NULL || option != NULL)
    g_ptr_array_add (alternative->swaps, rc_swap_new (place, carpet, option));
}
