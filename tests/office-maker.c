#include "office-maker.h"

#include "translation.h"

static char *
make_text (GRand *rand)
{
  static const char *const texts[]
      = { NULL, "With the order", "O'Shea & Sons <b>; --", "two\nlines", "½ in «%s» 漢", " x " };

  return g_strdup (texts[g_rand_int_range (rand, 0, G_N_ELEMENTS (texts))]);
}

static char *
make_id (GRand *rand, const char *prefix)
{
  return g_strdup_printf ("%s-%08x", prefix, g_rand_int (rand));
}

static char *
maybe_id (GRand *rand, const char *prefix)
{
  return g_rand_boolean (rand) ? make_id (rand, prefix) : NULL;
}

static void
add_payments (GRand *rand, GPtrArray *payments)
{
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      g_autofree char *name = make_text (rand);
      RcPayment       *payment = rc_payment_new (name, g_rand_int_range (rand, 0, 1000001));

      payment->days = g_rand_int_range (rand, 0, 90);
      g_ptr_array_add (payments, payment);
    }
}

static void
add_lines (GRand *rand, RcOffer *offer)
{
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      g_autofree char *item = make_id (rand, "item");
      RcLineTerms     *terms = rc_line_terms_new (item);

      terms->optional = g_rand_boolean (rand);
      terms->hidden = g_rand_boolean (rand);
      terms->discount_ppm = g_rand_int_range (rand, 0, 500000);
      terms->tax_ppm = g_rand_int_range (rand, -1, 300000);
      g_ptr_array_add (offer->lines, terms);
    }
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      g_autofree char *id = make_id (rand, "X");
      RcExtraLine     *extra = rc_extra_line_new (id);

      extra->item = maybe_id (rand, "work");
      extra->name = make_text (rand);
      extra->quantity_micro = g_rand_int_range (rand, 0, G_MAXINT32);
      extra->unit = g_rand_int_range (rand, 0, RC_N_UNITS);
      extra->price = g_rand_int_range (rand, 0, 100000);
      extra->cost = g_rand_int_range (rand, 0, 100000);
      extra->is_work = g_rand_boolean (rand);
      g_ptr_array_add (offer->extras, extra);
    }
}

static void
add_alternatives (GRand *rand, RcOffer *offer)
{
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      g_autofree char *id = make_id (rand, "B"), *name = make_text (rand);
      RcAlternative   *one = rc_alternative_new (id, name);

      for (int k = g_rand_int_range (rand, 0, 3); k > 0; k--)
        {
          g_autofree char *place = make_id (rand, "area"), *carpet = maybe_id (rand, "carpet");
          g_autofree char *option = maybe_id (rand, "option");

          g_ptr_array_add (one->swaps, rc_swap_new (place, carpet, option));
        }
      g_ptr_array_add (offer->alternatives, one);
    }
}

void
office_maker_fill_job (GRand *rand, RcJob *job)
{
  RcOffer *offer = job->offer;

  for (guint i = 0; i < RC_N_JOB_STATES; i++)
    if (g_rand_boolean (rand))
      job->reached[i] = g_strdup_printf ("2026-0%u-1%u", 1 + i, i);
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      g_autofree char *id = make_id (rand, "F"), *name = make_text (rand);
      RcAttachment    *one = rc_attachment_new (id, name);

      one->place = make_text (rand);
      one->digest = maybe_id (rand, "digest");
      one->notes = make_text (rand);
      one->added = g_rand_boolean (rand) ? g_strdup ("2026-03-04") : NULL;
      g_ptr_array_add (job->attachments, one);
    }
  for (int storey = g_rand_int_range (rand, -1, 4); storey < 3; storey += g_rand_int_range (rand, 1, 4))
    {
      RcPlanPicture *one = g_new0 (RcPlanPicture, 1);

      one->storey = storey;
      one->name = make_text (rand);
      one->digest = maybe_id (rand, "digest");
      one->page = (guint)g_rand_int_range (rand, 1, 9);
      one->at = (RcPoint){ g_rand_int_range (rand, -90000, 90000), g_rand_int_range (rand, -90000, 90000) };
      one->ticks_per_1000px = g_rand_int_range (rand, 1, 90000000);
      one->turn_millidegrees = g_rand_int_range (rand, -359999, 360000);
      one->strength_percent = (guint)g_rand_int_range (rand, 0, 101);
      rc_job_take_picture (job, one);
    }
  if (g_rand_boolean (rand))
    {
      offer->discount_ppm = g_rand_int_range (rand, 0, 500000);
      offer->discount = g_rand_int_range (rand, 0, 100000);
      offer->detail = g_rand_int_range (rand, 0, RC_N_DETAILS);
      offer->valid_days = g_rand_int_range (rand, 0, 90);
      offer->terms = make_text (rand);
      offer->tax_area = maybe_id (rand, "tax");
    }
  add_lines (rand, offer);
  add_payments (rand, offer->payments);
  add_alternatives (rand, offer);
}

void
office_maker_fill_roll (GRand *rand, RcRoll *roll)
{
  roll->cut = g_rand_boolean (rand);
  roll->width = g_rand_boolean (rand) ? g_rand_int_range (rand, 1, 500000) : 0;
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      RcFlaw flaw = { g_rand_int_range (rand, 0, 100000), g_rand_int_range (rand, 100001, 500000) };

      g_array_append_val (roll->flaws, flaw);
    }
}

void
office_maker_fill_book (GRand *rand, RcPriceBook *book)
{
  guint32 noise[64];

  book->valid_days = g_rand_int_range (rand, 0, 90);
  book->job_numbers = g_strdup (g_rand_boolean (rand) ? "YY-####" : NULL);
  for (guint i = 0; i < G_N_ELEMENTS (noise); i++)
    noise[i] = g_rand_int (rand);
  if (g_rand_boolean (rand))
    book->logo = g_bytes_new (noise, sizeof noise);
  add_payments (rand, book->payments);
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      g_autofree char *id = make_id (rand, "tax"), *name = make_text (rand);

      g_ptr_array_add (book->tax_areas, rc_tax_area_new (id, name, g_rand_int_range (rand, 0, 300000),
                                                         g_rand_int_range (rand, 0, 300000)));
    }
  for (int n = g_rand_int_range (rand, 0, 3); n > 0; n--)
    {
      g_autofree char *name = make_id (rand, "Mill & Co");
      RcSupplier      *one = rc_supplier_new (name);

      one->address = make_text (rand);
      one->phone = make_text (rand);
      one->email = make_text (rand);
      one->account = make_text (rand);
      if (g_rand_boolean (rand))
        one->language = g_strdup (
            rc_translation_list ()[g_rand_int_range (rand, 0, (gint32)g_strv_length ((GStrv)rc_translation_list ()))]);
      one->freight_cost = g_rand_int_range (rand, 0, 10000);
      one->freight_sale = g_rand_int_range (rand, 0, 10000);
      one->freight_free_from = g_rand_int_range (rand, 0, 100000);
      one->lead_days = g_rand_int_range (rand, 0, 60);
      g_ptr_array_add (book->suppliers, one);
    }
}

void
put_text (GString *text, const char *name, const char *value)
{
  if (value == NULL)
    g_string_append_printf (text, " %s=nil", name);
  else
    g_string_append_printf (text, " %s=\"%s\"", name, value);
}

void
put_number (GString *text, const char *name, gint64 value)
{
  g_string_append_printf (text, " %s=%" G_GINT64_FORMAT, name, value);
}

static void
put_payments (GString *text, const GPtrArray *payments)
{
  for (guint i = 0; i < payments->len; i++)
    {
      const RcPayment *payment = payments->pdata[i];

      g_string_append (text, "\n payment");
      put_text (text, "name", payment->name);
      put_number (text, "part", payment->part_ppm);
      put_number (text, "days", payment->days);
    }
}

static void
put_offer (GString *text, const RcOffer *offer)
{
  g_string_append (text, "\n offer");
  put_number (text, "discount_ppm", offer->discount_ppm);
  put_number (text, "discount", offer->discount);
  put_number (text, "detail", offer->detail);
  put_number (text, "valid_days", offer->valid_days);
  put_text (text, "terms", offer->terms);
  put_text (text, "tax_area", offer->tax_area);
  for (guint i = 0; i < offer->lines->len; i++)
    {
      const RcLineTerms *terms = offer->lines->pdata[i];

      g_string_append (text, "\n terms");
      put_text (text, "item", terms->item);
      put_number (text, "optional", terms->optional);
      put_number (text, "hidden", terms->hidden);
      put_number (text, "discount", terms->discount_ppm);
      put_number (text, "tax", terms->tax_ppm);
    }
  for (guint i = 0; i < offer->extras->len; i++)
    {
      const RcExtraLine *extra = offer->extras->pdata[i];

      g_string_append (text, "\n extra");
      put_text (text, "id", extra->id);
      put_text (text, "item", extra->item);
      put_text (text, "name", extra->name);
      put_number (text, "quantity", extra->quantity_micro);
      put_number (text, "unit", extra->unit);
      put_number (text, "price", extra->price);
      put_number (text, "cost", extra->cost);
      put_number (text, "is_work", extra->is_work);
    }
  put_payments (text, offer->payments);
  for (guint i = 0; i < offer->alternatives->len; i++)
    {
      const RcAlternative *one = offer->alternatives->pdata[i];

      g_string_append (text, "\n alternative");
      put_text (text, "id", one->id);
      put_text (text, "name", one->name);
      for (guint k = 0; k < one->swaps->len; k++)
        {
          const RcSwap *swap = one->swaps->pdata[k];

          put_text (text, "place", swap->place);
          put_text (text, "carpet", swap->carpet);
          put_text (text, "option", swap->option);
        }
    }
}

void
office_maker_dump_job (GString *text, const RcJob *job)
{
  for (guint i = 0; i < RC_N_JOB_STATES; i++)
    put_text (text, "reached", job->reached[i]);
  for (guint i = 0; i < job->pictures->len; i++)
    {
      const RcPlanPicture *one = job->pictures->pdata[i];

      g_string_append (text, "\n picture");
      put_number (text, "storey", one->storey);
      put_text (text, "name", one->name);
      put_text (text, "digest", one->digest);
      put_number (text, "page", one->page);
      put_number (text, "x", one->at.x);
      put_number (text, "y", one->at.y);
      put_number (text, "scale", one->ticks_per_1000px);
      put_number (text, "turn", one->turn_millidegrees);
      put_number (text, "strength", one->strength_percent);
    }
  for (guint i = 0; i < job->attachments->len; i++)
    {
      const RcAttachment *one = job->attachments->pdata[i];

      g_string_append (text, "\n attachment");
      put_text (text, "id", one->id);
      put_text (text, "name", one->name);
      put_text (text, "place", one->place);
      put_text (text, "digest", one->digest);
      put_text (text, "notes", one->notes);
      put_text (text, "added", one->added);
    }
  put_offer (text, job->offer);
}

void
office_maker_dump_roll (GString *text, const RcRoll *roll)
{
  put_number (text, "width", roll->width);
  put_number (text, "cut", roll->cut);
  for (guint i = 0; i < roll->flaws->len; i++)
    {
      put_number (text, "from", g_array_index (roll->flaws, RcFlaw, i).from);
      put_number (text, "to", g_array_index (roll->flaws, RcFlaw, i).to);
    }
}

void
office_maker_dump_book (GString *text, const RcPriceBook *book)
{
  g_autofree char *logo = book->logo != NULL ? g_compute_checksum_for_bytes (G_CHECKSUM_MD5, book->logo) : NULL;

  put_number (text, "valid_days", book->valid_days);
  put_text (text, "job_numbers", book->job_numbers);
  put_text (text, "logo", logo);
  put_payments (text, book->payments);
  for (guint i = 0; i < book->tax_areas->len; i++)
    {
      const RcTaxArea *area = book->tax_areas->pdata[i];

      g_string_append (text, "\n tax area");
      put_text (text, "id", area->id);
      put_text (text, "name", area->name);
      put_number (text, "goods", area->goods_ppm);
      put_number (text, "work", area->work_ppm);
    }
  for (guint i = 0; i < book->suppliers->len; i++)
    {
      const RcSupplier *one = book->suppliers->pdata[i];

      g_string_append (text, "\n supplier");
      put_text (text, "name", one->name);
      put_text (text, "address", one->address);
      put_text (text, "phone", one->phone);
      put_text (text, "email", one->email);
      put_text (text, "account", one->account);
      put_text (text, "language", one->language);
      put_number (text, "freight_cost", one->freight_cost);
      put_number (text, "freight_sale", one->freight_sale);
      put_number (text, "freight_free_from", one->freight_free_from);
      put_number (text, "lead_days", one->lead_days);
    }
}
