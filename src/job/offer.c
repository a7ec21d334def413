#include "offer.h"

#include <glib/gi18n-lib.h>

#include "words.h"

static const char *const detail_names[] = { "full", "amounts", "groups" };
G_STATIC_ASSERT (G_N_ELEMENTS (detail_names) == RC_N_DETAILS);

static const char *const detail_labels[]
    = { N_ ("Quantities, prices and amounts"), N_ ("Amounts only"), N_ ("Sums of goods and work") };
G_STATIC_ASSERT (G_N_ELEMENTS (detail_labels) == RC_N_DETAILS);

const char *
rc_detail_get_name (RcDetail detail)
{
  g_return_val_if_fail ((guint)detail < RC_N_DETAILS, "");
  return detail_names[detail];
}

gboolean
rc_detail_parse (const char *name, RcDetail *detail, GError **error)
{
  guint index;

  if (!rc_words_parse (detail_names, G_N_ELEMENTS (detail_names), _ ("detail of a quotation"), name, &index, error))
    return FALSE;
  *detail = index;
  return TRUE;
}

const char *
rc_detail_get_label (RcDetail detail)
{
  g_return_val_if_fail ((guint)detail < RC_N_DETAILS, "");
  return _ (detail_labels[detail]);
}

RcLineTerms *
rc_line_terms_new (const char *item)
{
  RcLineTerms *terms = g_new0 (RcLineTerms, 1);

  terms->item = g_strdup (item);
  terms->tax_ppm = -1;
  return terms;
}

RcLineTerms *
rc_line_terms_copy (const RcLineTerms *terms)
{
  RcLineTerms *copy = g_memdup2 (terms, sizeof *terms);

  copy->item = g_strdup (terms->item);
  return copy;
}

void
rc_line_terms_free (RcLineTerms *terms)
{
  if (terms == NULL)
    return;
  g_free (terms->item);
  g_free (terms);
}

RcExtraLine *
rc_extra_line_new (const char *id)
{
  RcExtraLine *extra = g_new0 (RcExtraLine, 1);

  extra->id = g_strdup (id);
  extra->quantity_micro = RC_MICRO;
  extra->unit = RC_UNIT_EACH;
  return extra;
}

RcExtraLine *
rc_extra_line_copy (const RcExtraLine *extra)
{
  RcExtraLine *copy = g_memdup2 (extra, sizeof *extra);

  copy->id = g_strdup (extra->id);
  copy->item = g_strdup (extra->item);
  copy->name = g_strdup (extra->name);
  return copy;
}

void
rc_extra_line_free (RcExtraLine *extra)
{
  if (extra == NULL)
    return;
  g_free (extra->id);
  g_free (extra->item);
  g_free (extra->name);
  g_free (extra);
}

RcPayment *
rc_payment_new (const char *name, gint64 part_ppm)
{
  RcPayment *payment = g_new0 (RcPayment, 1);

  payment->name = g_strdup (name);
  payment->part_ppm = part_ppm;
  return payment;
}

RcPayment *
rc_payment_copy (const RcPayment *payment)
{
  RcPayment *copy = rc_payment_new (payment->name, payment->part_ppm);

  copy->days = payment->days;
  return copy;
}

void
rc_payment_free (RcPayment *payment)
{
  if (payment == NULL)
    return;
  g_free (payment->name);
  g_free (payment);
}

RcSwap *
rc_swap_new (const char *place, const char *carpet, const char *option)
{
  RcSwap *swap = g_new0 (RcSwap, 1);

  swap->place = g_strdup (place);
  swap->carpet = g_strdup (carpet);
  swap->option = g_strdup (option);
  return swap;
}

void
rc_swap_free (RcSwap *swap)
{
  if (swap == NULL)
    return;
  g_free (swap->place);
  g_free (swap->carpet);
  g_free (swap->option);
  g_free (swap);
}

RcAlternative *
rc_alternative_new (const char *id, const char *name)
{
  RcAlternative *alternative = g_new0 (RcAlternative, 1);

  alternative->id = g_strdup (id);
  alternative->name = g_strdup (name);
  alternative->swaps = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_swap_free);
  return alternative;
}

RcAlternative *
rc_alternative_copy (const RcAlternative *alternative)
{
  RcAlternative *copy = rc_alternative_new (alternative->id, alternative->name);

  for (guint i = 0; i < alternative->swaps->len; i++)
    {
      const RcSwap *swap = alternative->swaps->pdata[i];

      g_ptr_array_add (copy->swaps, rc_swap_new (swap->place, swap->carpet, swap->option));
    }
  return copy;
}

void
rc_alternative_free (RcAlternative *alternative)
{
  if (alternative == NULL)
    return;
  g_free (alternative->id);
  g_free (alternative->name);
  g_ptr_array_unref (alternative->swaps);
  g_free (alternative);
}

RcOffer *
rc_offer_new (void)
{
  RcOffer *offer = g_new0 (RcOffer, 1);

  offer->lines = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_line_terms_free);
  offer->extras = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_extra_line_free);
  offer->payments = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_payment_free);
  offer->alternatives = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_alternative_free);
  return offer;
}

static void
copy_all (const GPtrArray *from, GPtrArray *to, gpointer (*copy) (gconstpointer))
{
  for (guint i = 0; i < from->len; i++)
    g_ptr_array_add (to, copy (from->pdata[i]));
}

RcOffer *
rc_offer_copy (const RcOffer *offer)
{
  RcOffer *copy = rc_offer_new ();

  copy->discount_ppm = offer->discount_ppm;
  copy->discount = offer->discount;
  copy->detail = offer->detail;
  copy->valid_days = offer->valid_days;
  copy->terms = g_strdup (offer->terms);
  copy->tax_area = g_strdup (offer->tax_area);
  copy_all (offer->lines, copy->lines, (gpointer (*) (gconstpointer))rc_line_terms_copy);
  copy_all (offer->extras, copy->extras, (gpointer (*) (gconstpointer))rc_extra_line_copy);
  copy_all (offer->payments, copy->payments, (gpointer (*) (gconstpointer))rc_payment_copy);
  copy_all (offer->alternatives, copy->alternatives, (gpointer (*) (gconstpointer))rc_alternative_copy);
  return copy;
}

void
rc_offer_free (RcOffer *offer)
{
  if (offer == NULL)
    return;
  g_free (offer->terms);
  g_free (offer->tax_area);
  g_ptr_array_unref (offer->lines);
  g_ptr_array_unref (offer->extras);
  g_ptr_array_unref (offer->payments);
  g_ptr_array_unref (offer->alternatives);
  g_free (offer);
}

RcLineTerms *
rc_offer_find_line (const RcOffer *offer, const char *item)
{
  for (guint i = 0; i < offer->lines->len; i++)
    {
      RcLineTerms *terms = offer->lines->pdata[i];

      if (g_strcmp0 (terms->item, item) == 0)
        return terms;
    }
  return NULL;
}
