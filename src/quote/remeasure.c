#include "remeasure.h"

#include <glib/gi18n-lib.h>

#include "quote.h"
#include "reason.h"

static void
cure_free (RcCure *cure)
{
  g_free (cure->name);
  rc_plan_free (cure->plan);
  rc_job_free (cure->job);
  g_ptr_array_unref (cure->extra);
  g_free (cure);
}

void
rc_remeasure_free (RcRemeasure *remeasure)
{
  if (remeasure == NULL)
    return;
  g_ptr_array_unref (remeasure->cures);
  g_clear_pointer (&remeasure->shortfalls, g_ptr_array_unref);
  g_free (remeasure);
}

/* --- planning --- */

static const RcNestRoll *
get_roll (const RcCutting *cutting, const RcNestUse *use)
{
  return g_ptr_array_index (cutting->problem->rolls, use->source);
}

static gboolean
is_cut (const RcCutting *cutting, const RcNestUse *use)
{
  return rc_ticket_is_cut (get_roll (cutting, use)->name);
}

static gboolean
is_paid (const RcCutting *cutting, const RcNestUse *use)
{
  return is_cut (cutting, use) || rc_ticket_is_on_order (get_roll (cutting, use)->name);
}

/* Carpet at what it weighs in the cutting, everything else at what the shop pays, rules at their price. */
static gboolean
compute_cost (const RcPlan *plan, const RcPriceBook *book, const char *date, RcMoney *cost, GError **error)
{
  g_autoptr (GPtrArray) quantities = rc_quantity_compute (plan, book->goods, error);
  g_autoptr (RcQuote) quote = quantities != NULL ? rc_quote_new (plan->job, quantities, book, date, error) : NULL;

  if (quote == NULL)
    return FALSE;
  *cost = 0;
  for (guint i = 0; i < quote->lines->len; i++)
    {
      const RcQuoteLine *line = g_ptr_array_index (quote->lines, i);
      const RcGoods     *goods = rc_job_find_goods (plan->job, line->item);

      if (goods == NULL || goods->kind != RC_GOODS_CARPET)
        *cost += line->cost;
    }
  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);

      for (guint k = 0; k < cutting->answer->rolls->len; k++)
        {
          const RcNestUse  *use = g_ptr_array_index (cutting->answer->rolls, k);
          const RcNestRoll *roll = get_roll (cutting, use);
          gint64            part;

          if (!is_paid (cutting, use)
              && rc_multiply_divide (roll->name != NULL ? use->used : use->length, roll->cost_per_m, RC_TICKS_PER_M,
                                     &part))
            *cost += part;
        }
    }
  for (guint i = 0; i < plan->areas->len; i++)
    {
      const RcOption *option = rc_area_plan_get_chosen (g_ptr_array_index (plan->areas, i));

      for (guint k = 0; k < option->broken->len; k++)
        *cost += ((const RcBrokenRule *)g_ptr_array_index (option->broken, k))->cost;
    }
  return TRUE;
}

/* "Living room: a piece of 4" × 12' 7" from roll R-7". */
static void
add_extra (RcCure *cure, const RcCutting *cutting, const RcNestPlacement *placement, const RcNestUse *use)
{
  guint            number = g_array_index (cutting->piece_numbers, guint, placement->cut);
  const RcPiece   *piece = rc_plan_find_piece (cure->plan, number);
  g_autofree char *width = rc_reason_format_length (cure->plan, piece->cut_width);
  g_autofree char *length = rc_reason_format_length (cure->plan, piece->cut_length);
  const char      *place = rc_reason_get_place (cure->plan, piece->room), *roll = get_roll (cutting, use)->name;
  char            *extra;

  if (roll == NULL)
    extra = g_strdup_printf (_ ("%s: a piece of %s × %s, to be bought"), place, width, length);
  else if (rc_ticket_is_on_order (roll))
    extra = g_strdup_printf (_ ("%s: a piece of %s × %s of what is on order"), place, width, length);
  else /* what is cut already is not cut besides */
    extra = g_strdup_printf (_ ("%s: a piece of %s × %s from roll %s"), place, width, length, roll);
  g_ptr_array_add (cure->extra, extra);
}

static void
add_extras (RcCure *cure)
{
  for (guint i = 0; i < cure->plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (cure->plan->cuttings, i);

      for (guint k = 0; k < cutting->answer->placements->len; k++)
        {
          const RcNestPlacement *placement = &g_array_index (cutting->answer->placements, RcNestPlacement, k);
          const RcNestUse       *use = g_ptr_array_index (cutting->answer->rolls, placement->roll);

          if (!is_cut (cutting, use) && placement->cut < cutting->piece_numbers->len)
            add_extra (cure, cutting, placement, use);
        }
    }
}

typedef struct
{
  const RcJob       *job;
  const char        *measure;
  const RcPlan      *before;
  const GPtrArray   *cut;
  const RcPriceBook *book;
  const char        *date;
  double             seconds;
} Task;

/* Planned with one of the planner's goals for all areas; NULL: those that have not changed stay as they were. */
static RcCure *
cure_new (const Task *task, const char *option, GError **error)
{
  RcCure      *cure = g_new0 (RcCure, 1);
  RcPriceDay   day = { task->book, task->date };
  RcPlanParams params = { .seconds = task->seconds, .seed = 1, .steady = TRUE };
  RcMeasure   *measure;

  if (option == NULL)
    params.laid = task->before;
  cure->extra = g_ptr_array_new_with_free_func (g_free);
  cure->job = rc_job_copy (task->job);
  rc_job_take_cut_goods (cure->job, task->cut);
  measure = rc_job_get_measure (cure->job, task->measure);
  rc_plan_hold_pile (cure->job, measure, task->before, rc_price_day_get_weights, &day);
  for (guint i = 0; i < measure->areas->len; i++)
    {
      RcFloorArea *area = g_ptr_array_index (measure->areas, i);

      g_free (area->option);
      area->option = g_strdup (option);
    }
  cure->plan = rc_plan_new (cure->job, measure, rc_price_day_get_weights, &day, &params, error);
  if (cure->plan == NULL || !compute_cost (cure->plan, task->book, task->date, &cure->cost, error))
    {
      g_clear_pointer (&cure->plan, rc_plan_free);
      rc_job_free (cure->job);
      g_ptr_array_unref (cure->extra);
      g_free (cure);
      return NULL;
    }
  cure->name = option == NULL || cure->plan->areas->len == 0
                   ? g_strdup (_ ("Cheapest with the job"))
                   : rc_option_dup_label (rc_area_plan_get_chosen (g_ptr_array_index (cure->plan->areas, 0)));
  add_extras (cure);
  return cure;
}

static int
compare_cures (gconstpointer a, gconstpointer b)
{
  RcMoney left = (*(RcCure *const *)a)->cost, right = (*(RcCure *const *)b)->cost;

  return (left > right) - (left < right);
}

/* Two goals that come to the same are one way to go on. */
static void
drop_repeated (GPtrArray *cures)
{
  for (guint i = 1; i < cures->len;)
    {
      const RcCure *cure = g_ptr_array_index (cures, i), *last = g_ptr_array_index (cures, i - 1);
      gboolean      same = cure->cost == last->cost && cure->extra->len == last->extra->len;

      for (guint k = 0; same && k < cure->extra->len; k++)
        same = g_str_equal (g_ptr_array_index (cure->extra, k), g_ptr_array_index (last->extra, k));
      if (same)
        g_ptr_array_remove_index (cures, i);
      else
        i++;
    }
}

/* --- what is no longer covered --- */

static gboolean
has_number (const RcCutGoods *one, const RcPiece *piece)
{
  g_autofree char *number = g_strdup_printf ("%u", piece->number);

  return g_strcmp0 (one->piece, number) == 0 && g_strcmp0 (one->goods_id, piece->goods) == 0;
}

/* The room across and along the pile, as it is measured now. */
static gboolean
measure_room (const RcPlan *plan, const char *room, double pile_degrees, RcLength *across, RcLength *along)
{
  const RcPlacedRoom *placed = rc_house_find_room (plan->house, room);
  RcBox               box;
  gboolean            upright = pile_degrees == 90 || pile_degrees == 270;

  if (placed == NULL)
    return FALSE;
  box = rc_ring_compute_box (placed->polygon->outer);
  *across = upright ? box.x1 - box.x0 : box.y1 - box.y0;
  *along = upright ? box.y1 - box.y0 : box.x1 - box.x0;
  return TRUE;
}

static guint
count_pieces (const RcPlan *plan, const char *room)
{
  guint n = 0;

  for (guint i = 0; i < plan->pieces->len; i++)
    n += g_strcmp0 (((const RcPiece *)g_ptr_array_index (plan->pieces, i))->room, room) == 0;
  return n;
}

/* A piece that covered its room by itself: by how much it is too small now. */
static void
add_shortfall (GPtrArray *shortfalls, const RcPlan *plan, const RcPlan *before, const RcCutGoods *one,
               const RcPiece *piece)
{
  g_autofree char *width = rc_reason_format_length (plan, one->width),
                  *length = rc_reason_format_length (plan, one->length);
  const char *place = rc_reason_get_place (plan, piece->room);
  RcLength    across, along;

  if (count_pieces (before, piece->room) != 1
      || !measure_room (plan, piece->room, piece->pile_degrees, &across, &along))
    return;
  if (across > one->width)
    {
      g_autofree char *by = rc_reason_format_length (plan, across - one->width);

      g_ptr_array_add (shortfalls,
                       g_strdup_printf (_ ("%s: piece %s, cut %s × %s, no longer covers it: it is %s too narrow"),
                                        place, one->piece, width, length, by));
    }
  if (along > one->length)
    {
      g_autofree char *by = rc_reason_format_length (plan, along - one->length);

      g_ptr_array_add (shortfalls,
                       g_strdup_printf (_ ("%s: piece %s, cut %s × %s, no longer covers it: it is %s too short"), place,
                                        one->piece, width, length, by));
    }
}

/* The length that is left whole across the roll of that use. */
static RcLength
sum_left (const RcCutting *cutting, guint use)
{
  RcLength left = 0;

  for (guint i = 0; i < cutting->answer->leftovers->len; i++)
    {
      const RcNestLeftover *over = &g_array_index (cutting->answer->leftovers, RcNestLeftover, i);

      left += over->roll == use && over->width >= cutting->problem->roll_width ? over->length : 0;
    }
  return left;
}

/* What was left of the carpet when it was bought: lengths come in steps. */
static RcLength
find_bought_left (const RcPlan *before, const char *goods_id)
{
  RcLength left = 0;

  for (guint i = 0; i < before->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (before->cuttings, i);

      for (guint k = 0; g_strcmp0 (cutting->goods->id, goods_id) == 0 && k < cutting->answer->rolls->len; k++)
        if (rc_cutting_get_roll_id (cutting, g_ptr_array_index (cutting->answer->rolls, k)) == NULL)
          left += sum_left (cutting, k);
    }
  return left;
}

/* The length of it that is left whole across the roll; -1 when nothing is cut from it. */
static RcLength
find_left (const RcPlan *plan, const char *ticket)
{
  for (guint i = 0; i < plan->cuttings->len; i++)
    {
      const RcCutting *cutting = g_ptr_array_index (plan->cuttings, i);

      for (guint k = 0; k < cutting->answer->rolls->len; k++)
        {
          const RcNestUse *use = g_ptr_array_index (cutting->answer->rolls, k);

          if (g_strcmp0 (get_roll (cutting, use)->name, ticket) == 0)
            return sum_left (cutting, k);
        }
    }
  return -1;
}

/* What is on order and more than is needed, and was not so when it was ordered: the order can still be changed. */
static void
add_surplus (GPtrArray *shortfalls, const RcPlan *plan, const RcPlan *before, const RcCutGoods *one, RcLength left)
{
  const RcGoods   *goods = rc_job_find_goods (plan->job, one->goods_id);
  g_autofree char *length = rc_reason_format_length (plan, one->length);
  g_autofree char *over = rc_reason_format_length (plan, left < 0 ? one->length : left);

  if (left < 0 || left > find_bought_left (before, one->goods_id))
    g_ptr_array_add (shortfalls,
                     g_strdup_printf (_ ("Order %s: of %s of %s on its way, %s is not needed any more"), one->order,
                                      length, goods != NULL ? goods->name : one->goods_id, over));
}

static char *
format_useless (const RcPlan *plan, const RcCutGoods *one)
{
  g_autofree char *width = rc_reason_format_length (plan, one->width);
  g_autofree char *length = rc_reason_format_length (plan, one->length);

  if (one->piece == NULL && one->roll != NULL)
    return g_strdup_printf (_ ("What was cut from roll %s, %s × %s, is of no use any more"), one->roll, width, length);
  return g_strdup_printf (_ ("Piece %s, cut %s × %s, is of no use any more"), one->piece != NULL ? one->piece : "–",
                          width, length);
}

GPtrArray *
rc_remeasure_list_shortfalls (const RcPlan *plan, const RcPlan *before, const GPtrArray *cut)
{
  GPtrArray *shortfalls = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < cut->len; i++)
    {
      const RcCutGoods *one = g_ptr_array_index (cut, i);
      g_autofree char  *ticket = rc_cut_goods_dup_ticket (one, i);
      RcLength          left = find_left (plan, ticket);

      if (one->order != NULL)
        {
          add_surplus (shortfalls, plan, before, one, left);
          continue;
        }
      for (guint k = 0; k < before->pieces->len; k++)
        if (has_number (one, g_ptr_array_index (before->pieces, k)))
          add_shortfall (shortfalls, plan, before, one, g_ptr_array_index (before->pieces, k));
      if (left < 0)
        g_ptr_array_add (shortfalls, format_useless (plan, one));
    }
  return shortfalls;
}

RcRemeasure *
rc_remeasure_new (const RcJob *job, const char *measure, const RcPlan *before, const GPtrArray *cut,
                  const RcPriceBook *book, const char *date, double seconds, GError **error)
{
  static const char *const options[] = { NULL, "least-cost", "fewest-seams", "least-carpet" };
  const Task               task = { job, measure, before, cut, book, date, seconds };
  g_autoptr (RcRemeasure) remeasure = g_new0 (RcRemeasure, 1);
  g_autoptr (GError) first = NULL;

  remeasure->cures = g_ptr_array_new_with_free_func ((GDestroyNotify)cure_free);
  for (guint i = 0; i < G_N_ELEMENTS (options); i++)
    {
      RcCure *cure = cure_new (&task, options[i], first == NULL ? &first : NULL);

      if (cure != NULL)
        g_ptr_array_add (remeasure->cures, cure);
    }
  if (remeasure->cures->len == 0)
    {
      g_propagate_error (error, g_steal_pointer (&first));
      return NULL;
    }
  g_ptr_array_sort (remeasure->cures, compare_cures);
  drop_repeated (remeasure->cures);
  remeasure->shortfalls
      = rc_remeasure_list_shortfalls (((const RcCure *)g_ptr_array_index (remeasure->cures, 0))->plan, before, cut);
  return g_steal_pointer (&remeasure);
}
