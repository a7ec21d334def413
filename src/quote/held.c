#include "held.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "conversion.h"
#include "quote.h"
#include "rowcut-error.h"

RcCutGoods *
rc_cut_goods_new (const char *piece, const char *goods_id, const char *lot, RcLength width, RcLength length)
{
  RcCutGoods *cut = g_new0 (RcCutGoods, 1);

  cut->piece = g_strdup (piece);
  cut->goods_id = g_strdup (goods_id);
  cut->lot = g_strdup (lot);
  cut->width = width;
  cut->length = length;
  return cut;
}

RcCutGoods *
rc_cut_goods_new_ordered (const char *order, const char *goods_id, RcLength length)
{
  RcCutGoods *cut = rc_cut_goods_new (NULL, goods_id, NULL, 0, length);

  cut->order = g_strdup (order);
  return cut;
}

void
rc_cut_goods_free (RcCutGoods *cut)
{
  if (cut == NULL)
    return;
  g_free (cut->piece);
  g_free (cut->roll);
  g_free (cut->order);
  g_free (cut->goods_id);
  g_free (cut->lot);
  g_free (cut);
}

char *
rc_cut_goods_dup_ticket (const RcCutGoods *one, guint index)
{
  return one->order != NULL ? rc_ticket_new_on_order (index, one->order)
                            : rc_ticket_new_cut (index, one->piece, one->roll);
}

void
rc_job_take_cut_goods (RcJob *job, const GPtrArray *goods)
{
  for (guint i = job->rolls->len; i-- > 0;)
    if (((const RcRoll *)g_ptr_array_index (job->rolls, i))->cut)
      g_ptr_array_remove_index (job->rolls, i);
  for (guint i = 0; i < goods->len; i++)
    {
      const RcCutGoods *one = g_ptr_array_index (goods, i);
      g_autofree char  *id = rc_cut_goods_dup_ticket (one, i);
      RcRoll           *roll = rc_roll_new (id, one->goods_id, one->length);

      roll->lot = g_strdup (one->lot);
      roll->width = one->width;
      roll->cut = TRUE;
      roll->remnant = one->order == NULL;
      g_ptr_array_add (job->rolls, roll);
    }
}

static gboolean
is_same_goods (const RcRoll *roll, const RcCutGoods *one)
{
  return roll != NULL && roll->cut && g_strcmp0 (roll->goods_id, one->goods_id) == 0 && roll->width == one->width
         && roll->length == one->length;
}

gboolean
rc_job_has_taken_cut_goods (const RcJob *job, const GPtrArray *goods)
{
  for (guint i = 0; i < goods->len; i++)
    {
      g_autofree char *ticket = rc_cut_goods_dup_ticket (goods->pdata[i], i);

      if (!is_same_goods (rc_rolls_find (job->rolls, ticket), goods->pdata[i]))
        return FALSE;
    }
  return TRUE;
}

/* --- all that a job has --- */

RcOrdered *
rc_ordered_new (const char *number, const char *supplier, GPtrArray *lines)
{
  RcOrdered *ordered = g_new0 (RcOrdered, 1);

  ordered->number = g_strdup (number);
  ordered->supplier = g_strdup (supplier);
  ordered->lines = lines;
  return ordered;
}

void
rc_ordered_free (RcOrdered *ordered)
{
  if (ordered == NULL)
    return;
  g_free (ordered->number);
  g_free (ordered->supplier);
  g_free (ordered->made);
  g_ptr_array_unref (ordered->lines);
  g_free (ordered);
}

RcSpent *
rc_spent_new (const char *goods_id, RcLength length)
{
  RcSpent *spent = g_new0 (RcSpent, 1);

  spent->goods_id = g_strdup (goods_id);
  spent->length = length;
  return spent;
}

void
rc_spent_free (RcSpent *spent)
{
  if (spent == NULL)
    return;
  g_free (spent->goods_id);
  g_free (spent);
}

RcHeld *
rc_held_new (GPtrArray *rolls, GPtrArray *goods, GPtrArray *orders)
{
  RcHeld *held = g_new0 (RcHeld, 1);

  g_atomic_ref_count_init (&held->refs);
  held->rolls = rolls;
  held->goods = goods;
  held->orders = orders;
  held->spent = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_spent_free);
  held->offcuts = g_ptr_array_new_with_free_func (g_free);
  return held;
}

RcHeld *
rc_held_ref (RcHeld *held)
{
  g_atomic_ref_count_inc (&held->refs);
  return held;
}

void
rc_held_unref (RcHeld *held)
{
  if (!g_atomic_ref_count_dec (&held->refs))
    return;
  g_ptr_array_unref (held->rolls);
  g_ptr_array_unref (held->goods);
  g_ptr_array_unref (held->orders);
  g_ptr_array_unref (held->spent);
  g_ptr_array_unref (held->offcuts);
  rc_quote_free (held->accepted);
  rc_quote_free (held->accepted_first);
  g_free (held->accepted_as);
  g_free (held);
}

char *
rc_held_dup_order_numbers (const RcHeld *held, const char *supplier)
{
  g_autoptr (GString) list = g_string_new (NULL);

  for (guint i = 0; i < held->orders->len; i++)
    {
      const RcOrdered *order = held->orders->pdata[i];

      if (supplier == NULL || g_strcmp0 (order->supplier, supplier) == 0)
        g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "", order->number);
    }
  return list->len > 0 ? g_string_free (g_steal_pointer (&list), FALSE) : NULL;
}

static gboolean
is_roll_equal (const RcRoll *a, const RcRoll *b)
{
  return g_strcmp0 (a->id, b->id) == 0 && g_strcmp0 (a->goods_id, b->goods_id) == 0 && g_strcmp0 (a->lot, b->lot) == 0
         && a->length == b->length && a->width == b->width && a->kept == b->kept && a->remnant == b->remnant
         && g_strcmp0 (a->place, b->place) == 0 && a->flaws->len == b->flaws->len
         && (a->flaws->len == 0 || memcmp (a->flaws->data, b->flaws->data, a->flaws->len * sizeof (RcFlaw)) == 0);
}

static gboolean
is_cut_equal (const RcCutGoods *a, const RcCutGoods *b)
{
  return g_strcmp0 (a->piece, b->piece) == 0 && g_strcmp0 (a->roll, b->roll) == 0 && g_strcmp0 (a->order, b->order) == 0
         && g_strcmp0 (a->goods_id, b->goods_id) == 0 && g_strcmp0 (a->lot, b->lot) == 0 && a->width == b->width
         && a->length == b->length;
}

static gboolean
is_spent_equal (const RcSpent *a, const RcSpent *b)
{
  return g_strcmp0 (a->goods_id, b->goods_id) == 0 && a->length == b->length;
}

/* An order's lines never change but for what has come in, which is among the goods; what was accepted never does. */
gboolean
rc_held_equal (const RcHeld *a, const RcHeld *b)
{
  if (a == NULL || b == NULL)
    return a == b;
  if (a->rolls->len != b->rolls->len || a->goods->len != b->goods->len || a->orders->len != b->orders->len
      || a->spent->len != b->spent->len || g_strcmp0 (a->accepted_as, b->accepted_as) != 0)
    return FALSE;
  for (guint i = 0; i < a->spent->len; i++)
    if (!is_spent_equal (a->spent->pdata[i], b->spent->pdata[i]))
      return FALSE;
  for (guint i = 0; i < a->orders->len; i++)
    if (g_strcmp0 (((RcOrdered *)a->orders->pdata[i])->number, ((RcOrdered *)b->orders->pdata[i])->number) != 0)
      return FALSE;
  for (guint i = 0; i < a->rolls->len; i++)
    if (!is_roll_equal (a->rolls->pdata[i], b->rolls->pdata[i]))
      return FALSE;
  for (guint i = 0; i < a->goods->len; i++)
    if (!is_cut_equal (a->goods->pdata[i], b->goods->pdata[i]))
      return FALSE;
  return TRUE;
}

/* Something is cut for the job, on its way, or has come. */
static gboolean
is_begun (const RcHeld *held)
{
  return held->goods->len > 0 || held->orders->len > 0;
}

static gboolean
is_any_kept (const RcHeld *held)
{
  for (guint i = 0; i < held->rolls->len; i++)
    if (((const RcRoll *)held->rolls->pdata[i])->kept > 0)
      return TRUE;
  return FALSE;
}

gboolean
rc_held_is_counted_on (const RcHeld *held, const RcJob *job, const char *measure)
{
  return held != NULL && rc_job_get_measure (job, measure) != job->measures->pdata[0]
         && (is_begun (held) || is_any_kept (held));
}

const RcQuote *
rc_held_get_accepted_for (const RcHeld *held, const RcJob *job, const char *measure)
{
  return held != NULL && !rc_held_is_counted_on (held, job, measure) ? held->accepted : NULL;
}

static gboolean
is_piece (const RcCutGoods *one, const RcPiece *piece)
{
  g_autofree char *number = g_strdup_printf ("%u", piece->number);

  return g_strcmp0 (one->piece, number) == 0 && g_strcmp0 (one->goods_id, piece->goods) == 0
         && one->width == piece->cut_width && one->length == piece->cut_length;
}

gboolean
rc_held_was_cut_by (const RcHeld *held, const RcPlan *plan)
{
  for (guint i = 0; i < held->goods->len; i++)
    for (guint k = 0; k < plan->pieces->len; k++)
      if (is_piece (held->goods->pdata[i], plan->pieces->pdata[k]))
        return TRUE;
  return FALSE;
}

static const RcMeasure *
find_ordered_by (const RcHeld *held, const RcJob *job, const RcMeasure *measure)
{
  const RcOrdered *first = held->orders->len > 0 ? held->orders->pdata[0] : NULL;
  const RcMeasure *found = NULL;

  for (guint i = 0; i < job->measures->len; i++)
    {
      const RcMeasure *one = job->measures->pdata[i];

      if (g_strcmp0 (one->id, measure->id) == 0)
        break;
      if (found == NULL || first == NULL || first->made == NULL || one->date == NULL
          || strcmp (one->date, first->made) <= 0)
        found = one;
    }
  return found;
}

const RcMeasure *
rc_held_find_begun_by (const RcHeld *held, const RcJob *job, const RcMeasure *measure, RcHeldPlanFunc plan,
                       gpointer data)
{
  const RcMeasure *found;
  guint            at = 0;

  while (at < job->measures->len && g_strcmp0 (((const RcMeasure *)job->measures->pdata[at])->id, measure->id) != 0)
    at++;
  for (guint i = at; i-- > 0 && held->goods->len > 0;)
    {
      const RcPlan *by = plan (job->measures->pdata[i], data);

      if (by != NULL && rc_held_was_cut_by (held, by))
        return job->measures->pdata[i];
    }
  found = find_ordered_by (held, job, measure);
  if (found != NULL)
    plan (found, data);
  return found;
}

static void
follow_stock (RcJob *job, const GPtrArray *stock)
{
  g_autoptr (GPtrArray) was = job->rolls;

  job->rolls = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_roll_free);
  for (guint i = 0; i < was->len; i++)
    {
      const RcRoll *roll = was->pdata[i], *now = roll->cut ? NULL : rc_rolls_find (stock, roll->id);

      if (now == NULL || now->length > 0)
        g_ptr_array_add (job->rolls, rc_roll_copy (now != NULL ? now : roll));
    }
  for (guint i = 0; i < stock->len; i++)
    {
      const RcRoll *roll = stock->pdata[i];

      if (roll->kept > 0 && rc_rolls_find (was, roll->id) == NULL && rc_job_find_goods (job, roll->goods_id) != NULL)
        g_ptr_array_add (job->rolls, rc_roll_copy (roll));
    }
}

RcJob *
rc_held_dup_whole_job (const RcHeld *held, const RcJob *job)
{
  RcJob *copy = rc_job_copy (job);

  rc_job_use_rolls (copy, held->rolls);
  rc_job_take_cut_goods (copy, held->goods);
  return copy;
}

RcJob *
rc_held_dup_job (const RcHeld *held, const RcJob *job, const char *measure)
{
  RcJob *copy;

  if (rc_held_is_counted_on (held, job, measure))
    return rc_held_dup_whole_job (held, job);
  copy = rc_job_copy (job);
  if (held != NULL && !is_begun (held))
    follow_stock (copy, held->rolls);
  return copy;
}

/* --- what is still to be bought --- */

/* What was ordered of the item: packs where both count the same packs, and the rest in the line's unit. */
static gboolean
sum_ordered (const RcHeld *held, const RcQuantityLine *line, gint64 *packs, gint64 *loose_micro, GError **error)
{
  *packs = *loose_micro = 0;
  for (guint i = 0; i < held->orders->len; i++)
    {
      const RcOrdered *order = held->orders->pdata[i];

      for (guint k = 0; k < order->lines->len; k++)
        {
          const RcQuoteLine *one = order->lines->pdata[k];
          gint64             micro;

          if (!g_str_equal (one->item, line->item))
            continue;
          if (one->packs > 0 && line->packs > 0 && one->pack_unit == line->pack_unit)
            *packs += one->packs;
          else if (rc_conversion_apply (line->goods, one->quantity_micro, one->unit, line->unit, &micro))
            *loose_micro += micro;
          else
            {
              g_set_error (error, RC_ERROR, RC_ERROR_REFERENCE,
                           _ ("%s was ordered in %s with order %s and is counted in %s now: order by hand what is "
                              "missing"),
                           line->name, rc_unit_get_name (one->unit), order->number, rc_unit_get_name (line->unit));
              return FALSE;
            }
        }
    }
  return TRUE;
}

/* Takes what is ordered off the line; packs are bought whole. */
static gboolean
take_off_ordered (const RcHeld *held, RcQuantityLine *line, GError **error)
{
  gint64 packs, loose_micro, pack_micro = line->packs > 0 ? line->quantity_micro / line->packs : 0;

  if (!sum_ordered (held, line, &packs, &loose_micro, error))
    return FALSE;
  if (pack_micro > 0)
    {
      line->packs = MAX (0, line->packs - packs - (loose_micro + RC_CONVERSION_SLACK_MICRO) / pack_micro);
      line->quantity_micro = line->packs * pack_micro;
    }
  else
    line->quantity_micro -= loose_micro;
  if (line->quantity_micro <= RC_CONVERSION_SLACK_MICRO)
    line->quantity_micro = 0;
  line->net_micro = MIN (line->net_micro, line->quantity_micro);
  return TRUE;
}

GPtrArray *
rc_held_list_missing (const RcHeld *held, const GPtrArray *quantities, GError **error)
{
  g_autoptr (GPtrArray) missing = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_quantity_line_free);

  for (guint i = 0; i < quantities->len; i++)
    {
      const RcQuantityLine *line = quantities->pdata[i];
      RcQuantityLine       *left;

      if (line->goods == NULL || line->from_stock)
        continue;
      left = rc_quantity_line_copy (line);
      g_ptr_array_add (missing, left);
      if (line->goods->kind != RC_GOODS_CARPET && !take_off_ordered (held, left, error))
        return NULL;
    }
  return g_steal_pointer (&missing);
}
