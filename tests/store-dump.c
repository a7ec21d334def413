#include "office-maker.h"
#include "store-maker.h"

static void
put_ring (GString *text, const char *name, const RcRing *ring)
{
  g_string_append_printf (text, "\n   %s", name);
  for (guint i = 0; i < ring->len; i++)
    g_string_append_printf (text, " %" G_GINT64_FORMAT ",%" G_GINT64_FORMAT, rc_ring_get (ring, i)->x,
                            rc_ring_get (ring, i)->y);
}

static void
put_cutout (GString *text, const RcCutout *cutout)
{
  put_ring (text, "cutout", cutout->points);
  put_text (text, "name", cutout->name);
  put_number (text, "kind", cutout->kind);
  put_number (text, "diameter", cutout->diameter);
  put_number (text, "strip", cutout->strip);
  put_number (text, "counted", cutout->counted);
}

static void
put_opening (GString *text, const RcOpening *opening)
{
  g_string_append (text, "\n   opening");
  put_text (text, "id", opening->id);
  put_number (text, "kind", opening->kind);
  put_number (text, "wall", opening->wall);
  put_number (text, "offset", opening->offset);
  put_number (text, "width", opening->width);
  put_number (text, "depth", opening->depth);
  put_number (text, "swing", opening->swing);
  put_number (text, "hinge_at_end", opening->hinge_at_end);
  put_text (text, "to_room", opening->to_room);
  put_text (text, "to_opening", opening->to_opening);
  put_text (text, "transition", opening->transition);
}

static void
put_room (GString *text, const RcRoom *room)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append (text, "\n  room");
  put_text (text, "id", room->id);
  put_text (text, "name", room->name);
  put_number (text, "floor", room->floor);
  put_number (text, "spread", room->spread);
  put_number (text, "placed", room->placed);
  put_number (text, "x", room->at.x);
  put_number (text, "y", room->at.y);
  put_text (text, "notes", room->notes);
  for (guint i = 0; i < room->walls->len; i++)
    {
      const RcWall *wall = &g_array_index (room->walls, RcWall, i);

      g_string_append_printf (text, "\n   wall %s", g_ascii_dtostr (digits, sizeof digits, wall->bearing_degrees));
      put_number (text, "length", wall->length);
      put_number (text, "bow", wall->bow);
    }
  put_ring (text, "outline", room->outline);
  for (guint i = 0; i < room->cutouts->len; i++)
    put_cutout (text, room->cutouts->pdata[i]);
  for (guint i = 0; i < room->openings->len; i++)
    put_opening (text, room->openings->pdata[i]);
  for (guint i = 0; i < room->diagonals->len; i++)
    {
      const RcDiagonal *diagonal = &g_array_index (room->diagonals, RcDiagonal, i);

      g_string_append (text, "\n   diagonal");
      put_number (text, "from", diagonal->from);
      put_number (text, "to", diagonal->to);
      put_number (text, "length", diagonal->length);
    }
}

static void
put_turn (GString *text, const RcStairTurn *turn)
{
  put_number (text, "turn", turn->kind);
  put_number (text, "bend", turn->bend);
  put_number (text, "after", turn->after);
  put_number (text, "winders", turn->winders);
  put_number (text, "turn going", turn->going);
  put_number (text, "turn width", turn->width);
}

static void
put_stair (GString *text, const RcStair *stair)
{
  g_string_append (text, "\n  stair");
  put_text (text, "id", stair->id);
  put_text (text, "name", stair->name);
  put_number (text, "steps", stair->steps);
  put_number (text, "rise", stair->rise);
  put_number (text, "going", stair->going);
  put_number (text, "width", stair->width);
  put_number (text, "style", stair->style);
  put_number (text, "nose_extra", stair->nose_extra);
  put_number (text, "end_extra", stair->end_extra);
  put_number (text, "width_extra", stair->width_extra);
  put_number (text, "cutting", stair->cutting);
  put_number (text, "runner_width", stair->runner_width);
  put_number (text, "curved_width", stair->curved_width);
  for (guint i = 0; i < stair->turns->len; i++)
    put_turn (text, rc_stair_get_turn (stair, i));
  put_number (text, "piece_extra", stair->piece_extra);
  put_number (text, "placed", stair->placed);
  put_number (text, "floor", stair->floor);
  put_number (text, "x", stair->at.x);
  put_number (text, "y", stair->at.y);
  put_number (text, "bearing", stair->bearing_degrees);
  put_text (text, "carpet", stair->carpet);
  put_text (text, "cushion", stair->cushion);
  put_text (text, "notes", stair->notes);
}

static void
put_area (GString *text, const RcFloorArea *area)
{
  g_string_append (text, "\n  area");
  put_text (text, "id", area->id);
  put_text (text, "name", area->name);
  for (guint i = 0; i < area->rooms->len; i++)
    put_text (text, "room", area->rooms->pdata[i]);
  put_text (text, "carpet", area->carpet);
  put_text (text, "cushion", area->cushion);
  put_number (text, "fixing", area->fixing);
  put_number (text, "pile_degrees", area->pile_degrees);
  put_text (text, "option", area->option);
  for (guint i = 0; i < area->pins->len; i++)
    {
      const RcPin *pin = area->pins->pdata[i];
      g_string_append (text, "\n   pin");
      put_text (text, "kind", rc_pin_kind_get_name (pin->kind));
      put_text (text, "room", pin->room);
      put_text (text, "roll", pin->roll);
      for (guint k = 0; k < pin->points->len; k++)
        {
          put_number (text, "x", rc_ring_get (pin->points, k)->x);
          put_number (text, "y", rc_ring_get (pin->points, k)->y);
        }
    }
}

static void
put_goods (GString *text, const RcGoods *goods)
{
  g_string_append (text, "\n goods");
  put_text (text, "id", goods->id);
  put_number (text, "kind", goods->kind);
  put_text (text, "name", goods->name);
  put_text (text, "supplier", goods->supplier);
  put_number (text, "unit", goods->unit);
  put_number (text, "roll_width", goods->roll_width);
  put_number (text, "usable_width", goods->usable_width);
  put_number (text, "repeat_length", goods->repeat_length);
  put_number (text, "repeat_width", goods->repeat_width);
  put_number (text, "match", goods->match);
  put_number (text, "length_step", goods->length_step);
  put_number (text, "full_roll", goods->full_roll);
  put_number (text, "least_cut", goods->least_cut);
  put_number (text, "pack_micro", goods->pack_micro);
  put_number (text, "pack_unit", goods->pack_unit);
  put_number (text, "tape_width", goods->tape_width);
  put_number (text, "pack_covers_area", goods->pack_covers_area);
  put_number (text, "pack_covers_length", goods->pack_covers_length);
}

static void
put_settings (GString *text, const RcSettings *settings)
{
  put_number (text, "trim_length", settings->trim_length);
  put_number (text, "trim_width", settings->trim_width);
  put_number (text, "least_fill_width", settings->least_fill_width);
  put_number (text, "least_piece_length", settings->least_piece_length);
  put_number (text, "most_joins", settings->most_joins);
  put_number (text, "door_distance", settings->door_distance);
  put_number (text, "stagger", settings->stagger);
  for (guint i = 0; i < RC_N_RULES; i++)
    put_number (text, "rule_cost", settings->rule_cost[i]);
  put_number (text, "strip_double_from", settings->strip_double_from);
  put_number (text, "error_max", settings->closure.error_max);
  put_number (text, "close_max", settings->closure.close_max);
}

static void
put_measure (GString *text, const RcMeasure *measure)
{
  g_string_append (text, "\n measure");
  put_text (text, "id", measure->id);
  put_text (text, "date", measure->date);
  put_text (text, "taken_by", measure->taken_by);
  put_text (text, "notes", measure->notes);
  for (guint i = 0; i < measure->rooms->len; i++)
    put_room (text, measure->rooms->pdata[i]);
  for (guint i = 0; i < measure->stairs->len; i++)
    put_stair (text, measure->stairs->pdata[i]);
  for (guint i = 0; i < measure->areas->len; i++)
    put_area (text, measure->areas->pdata[i]);
}

char *
rc_store_maker_dump_job (const RcJob *job)
{
  GString *text = g_string_new ("job");

  put_text (text, "id", job->id);
  put_text (text, "number", job->number);
  put_text (text, "title", job->title);
  put_text (text, "date", job->date);
  put_text (text, "notes", job->notes);
  put_text (text, "customer", job->customer.name);
  put_text (text, "address", job->customer.address);
  put_text (text, "phone", job->customer.phone);
  put_text (text, "email", job->customer.email);
  put_text (text, "language", job->customer.language);
  put_number (text, "units", job->units);
  put_text (text, "currency", job->currency.code);
  put_number (text, "digits", job->currency.digits);
  put_number (text, "tax_ppm", job->tax_ppm);
  put_settings (text, &job->settings);
  for (guint i = 0; i < job->goods->len; i++)
    put_goods (text, job->goods->pdata[i]);
  for (guint i = 0; i < job->rolls->len; i++)
    {
      const RcRoll *roll = job->rolls->pdata[i];

      g_string_append (text, "\n roll");
      put_text (text, "id", roll->id);
      put_text (text, "goods_id", roll->goods_id);
      put_text (text, "lot", roll->lot);
      put_number (text, "length", roll->length);
      put_number (text, "remnant", roll->remnant);
      put_text (text, "place", roll->place);
      office_maker_dump_roll (text, roll);
    }
  for (guint i = 0; i < job->measures->len; i++)
    put_measure (text, job->measures->pdata[i]);
  office_maker_dump_job (text, job);
  return g_string_free (text, FALSE);
}

char *
rc_store_maker_dump_price_book (const RcPriceBook *book)
{
  GString *text = g_string_new ("book");

  put_text (text, "currency", book->currency.code);
  put_number (text, "digits", book->currency.digits);
  put_number (text, "tax_ppm", book->tax_ppm);
  put_number (text, "deposit_ppm", book->deposit_ppm);
  put_text (text, "shop_name", book->shop_name);
  put_text (text, "shop_address", book->shop_address);
  put_text (text, "terms", book->terms);
  office_maker_dump_book (text, book);
  for (guint i = 0; i < book->goods->len; i++)
    put_goods (text, book->goods->pdata[i]);
  for (guint i = 0; i < book->prices->len; i++)
    {
      const RcPrice *price = book->prices->pdata[i];

      g_string_append (text, "\n price");
      put_text (text, "item", price->item);
      put_number (text, "unit", price->unit);
      put_number (text, "cost", price->cost);
      put_number (text, "sale", price->sale);
      put_text (text, "valid_from", price->valid_from);
      put_text (text, "valid_to", price->valid_to);
      put_number (text, "from_micro", price->from_micro);
    }
  return g_string_free (text, FALSE);
}

char *
rc_store_maker_dump_quote (const RcQuote *quote)
{
  GString *text = g_string_new ("quote");

  put_text (text, "currency", quote->currency.code);
  put_number (text, "digits", quote->currency.digits);
  put_number (text, "tax_ppm", quote->tax_ppm);
  put_number (text, "net", quote->net);
  put_number (text, "tax", quote->tax);
  put_number (text, "total", quote->total);
  put_number (text, "deposit", quote->deposit);
  put_number (text, "cost", quote->cost);
  put_number (text, "margin", quote->margin);
  put_number (text, "sum", quote->sum);
  put_number (text, "discount_ppm", quote->discount_ppm);
  put_number (text, "discount", quote->discount);
  put_number (text, "detail", quote->detail);
  put_number (text, "valid_days", quote->valid_days);
  put_number (text, "variation", quote->variation);
  put_text (text, "tax_name", quote->tax_name);
  put_text (text, "terms", quote->terms);
  put_text (text, "option", quote->option);
  for (guint i = 0; i < quote->taxes->len; i++)
    {
      put_number (text, "rate", g_array_index (quote->taxes, RcTaxPart, i).ppm);
      put_number (text, "of", g_array_index (quote->taxes, RcTaxPart, i).net);
      put_number (text, "is", g_array_index (quote->taxes, RcTaxPart, i).tax);
    }
  for (guint i = 0; i < quote->payments->len; i++)
    {
      const RcPaymentStep *step = quote->payments->pdata[i];

      put_text (text, "payment", step->name);
      put_number (text, "part", step->part_ppm);
      put_number (text, "days", step->days);
      put_number (text, "amount", step->amount);
    }
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = quote->lines->pdata[i];

      g_string_append (text, "\n line");
      put_text (text, "item", line->item);
      put_text (text, "name", line->name);
      put_text (text, "because", line->because);
      put_number (text, "quantity_micro", line->quantity_micro);
      put_number (text, "unit", line->unit);
      put_number (text, "packs", line->packs);
      put_number (text, "pack_unit", line->pack_unit);
      put_number (text, "price", line->price);
      put_number (text, "amount", line->amount);
      put_number (text, "cost", line->cost);
      put_number (text, "is_work", line->is_work);
      put_number (text, "from_stock", line->from_stock);
      put_number (text, "gross", line->gross);
      put_number (text, "discount_ppm", line->discount_ppm);
      put_number (text, "tax_ppm", line->tax_ppm);
      put_number (text, "optional", line->optional);
      put_number (text, "hidden", line->hidden);
      put_number (text, "needed_micro", line->needed_micro);
      put_number (text, "needed_unit", line->needed_unit);
      put_number (text, "from_micro", line->from_micro);
      put_text (text, "price_since", line->price_since);
    }
  return g_string_free (text, FALSE);
}
