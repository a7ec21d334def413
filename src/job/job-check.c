#include "house.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

static gboolean fail (GError **error, RcErrorCode code, const char *format, ...) G_GNUC_PRINTF (3, 4);

static gboolean
fail (GError **error, RcErrorCode code, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list          args;

  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, RC_ERROR, code, message);
  return FALSE;
}

/* Adds `id` to those seen. FALSE when it is empty or was seen before. */
static gboolean
check_id (GHashTable *seen, const char *id, const char *what, GError **error)
{
  if (id == NULL || *id == '\0')
    return fail (error, RC_ERROR_REFERENCE, _ ("One %s has no id; each needs one of its own"), what);
  if (strpbrk (id, " \t\r\n") != NULL)
    return fail (error, RC_ERROR_REFERENCE, _ ("The %s “%s” has spaces in its id; take them out"), what, id);
  if (!g_hash_table_add (seen, (gpointer)id))
    return fail (error, RC_ERROR_REFERENCE, _ ("More than one %s has the id “%s”; each needs one of its own"), what,
                 id);
  return TRUE;
}

/* --- goods and rolls --- */

/* A width is left when a fill is trimmed. */
static gboolean
check_trim (const RcJob *job, const RcGoods *goods, GError **error)
{
  const RcLengthStyle *style = rc_job_get_length_style (job);
  g_autofree char     *width = rc_length_format (rc_goods_get_usable_width (goods), style);
  g_autofree char     *trim = rc_length_format (job->settings.trim_width, style);

  if (rc_goods_get_usable_width (goods) > job->settings.trim_width)
    return TRUE;
  return fail (error, RC_ERROR_INFEASIBLE,
               _ ("Carpet “%s” is %s wide, no more than the trim of %s that each fill needs; a wider roll or less trim "
                  "would do"),
               goods->id, width, trim);
}

static gboolean
check_goods (const RcJob *job, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < job->goods->len; i++)
    {
      const RcGoods *goods = job->goods->pdata[i];

      if (!check_id (seen, goods->id, _ ("entry of goods"), error))
        return FALSE;
      if (!rc_goods_check (goods, error) || (goods->kind == RC_GOODS_CARPET && !check_trim (job, goods, error)))
        return FALSE;
    }
  return TRUE;
}

/* The goods that `who` names as its carpet or cushion are there and are of that kind. */
static gboolean
check_named_goods (const RcJob *job, const char *who, const char *id, RcGoodsKind kind, GError **error)
{
  const char    *kind_name = rc_goods_kind_get_name (kind);
  const RcGoods *goods = rc_job_find_goods (job, id);

  if (id == NULL || *id == '\0')
    return fail (error, RC_ERROR_REFERENCE, _ ("%s has no %s; name one of the job's goods"), who, kind_name);
  if (goods == NULL)
    return fail (error, RC_ERROR_REFERENCE,
                 _ ("%s names the %s “%s”, which is neither in the job nor in the price book"), who, kind_name, id);
  if (goods->kind != kind)
    return fail (error, RC_ERROR_REFERENCE, _ ("%s names “%s” as its %s, but that is of the kind %s"), who, id,
                 kind_name, rc_goods_kind_get_name (goods->kind));
  return TRUE;
}

static gboolean
check_rolls (const RcJob *job, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < job->rolls->len; i++)
    {
      const RcRoll    *roll = job->rolls->pdata[i];
      g_autofree char *who = g_strdup_printf (_ ("Roll %s"), roll->id);

      if (!check_id (seen, roll->id, _ ("roll"), error)
          || !check_named_goods (job, who, roll->goods_id, RC_GOODS_CARPET, error))
        return FALSE;
      if (roll->length <= 0 || roll->length > RC_LENGTH_MAX)
        return fail (error, RC_ERROR_RANGE, _ ("%s has no length left; leave it out or measure it"), who);
      if (roll->width < 0 || roll->width > RC_ROOM_MAX_SIDE)
        return fail (error, RC_ERROR_RANGE, _ ("%s: its width must not be less than 0; 0 is that of its goods"), who);
      for (guint k = 0; k < roll->flaws->len; k++)
        {
          const RcFlaw *flaw = &g_array_index (roll->flaws, RcFlaw, k);

          if (flaw->from < 0 || flaw->from >= flaw->to)
            return fail (error, RC_ERROR_RANGE, _ ("%s: a damaged length must end after it begins"), who);
        }
    }
  return TRUE;
}

/* --- rooms, areas, stairs --- */

static gboolean
check_rooms (const RcMeasure *measure, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *room = measure->rooms->pdata[i];
      g_autoptr (GHashTable) openings = g_hash_table_new (g_str_hash, g_str_equal);

      if (!check_id (seen, room->id, _ ("room"), error))
        return FALSE;
      for (guint k = 0; k < room->openings->len; k++)
        if (!check_id (openings, ((const RcOpening *)room->openings->pdata[k])->id, _ ("opening"), error))
          {
            g_prefix_error (error, "%s: ", rc_room_get_name (room));
            return FALSE;
          }
      if (room->placed && (ABS (room->at.x) > 10 * RC_ROOM_MAX_SIDE || ABS (room->at.y) > 10 * RC_ROOM_MAX_SIDE))
        return fail (error, RC_ERROR_RANGE,
                     _ ("%s is placed farther than 10 km from the house's origin, the most it may"),
                     rc_room_get_name (room));
    }
  return TRUE;
}

static gboolean
check_pin (const RcJob *job, const RcFloorArea *area, const RcPin *pin, const char *who, guint number, GError **error)
{
  gboolean has_roll = pin->kind != RC_PIN_ROLL;

  if (rc_floor_area_find_room (area, pin->room) == 0)
    return fail (error, RC_ERROR_REFERENCE, _ ("%s, pin %u: it names the room “%s”, which is not in the area"), who,
                 number, pin->room != NULL ? pin->room : "");
  if (!rc_pin_check (pin, error))
    {
      g_prefix_error (error, _ ("%s, pin %u: "), who, number);
      return FALSE;
    }
  for (guint i = 0; i < job->rolls->len; i++)
    {
      const RcRoll *roll = g_ptr_array_index (job->rolls, i);

      has_roll = has_roll || (g_strcmp0 (roll->id, pin->roll) == 0 && g_strcmp0 (roll->goods_id, area->carpet) == 0);
    }
  if (!has_roll)
    return fail (error, RC_ERROR_REFERENCE, _ ("%s, pin %u: there is no roll “%s” of its carpet in stock"), who, number,
                 pin->roll);
  return TRUE;
}

static gboolean
check_area (const RcJob *job, const RcMeasure *measure, const RcFloorArea *area, GHashTable *taken, GError **error)
{
  const char      *name = area->name != NULL && *area->name != '\0' ? area->name : area->id;
  g_autofree char *who = g_strdup_printf (_ ("Area %s"), name);

  if (area->rooms->len == 0)
    return fail (error, RC_ERROR_REFERENCE, _ ("%s has no rooms; name at least one"), who);
  for (guint i = 0; i < area->rooms->len; i++)
    {
      char              *id = area->rooms->pdata[i];
      const RcFloorArea *other = g_hash_table_lookup (taken, id);

      if (rc_measure_find_room (measure, id) == NULL)
        return fail (error, RC_ERROR_REFERENCE, _ ("%s names the room “%s”, which is not measured"), who, id);
      if (other != NULL)
        return fail (error, RC_ERROR_REFERENCE, _ ("The room “%s” is in two areas, %s and %s; it can be carpeted once"),
                     id, other->name != NULL ? other->name : other->id, name);
      g_hash_table_insert (taken, id, (gpointer)area);
    }
  for (guint i = 0; i < area->pins->len; i++)
    if (!check_pin (job, area, g_ptr_array_index (area->pins, i), who, i + 1, error))
      return FALSE;
  if (area->pile_degrees < -1 || area->pile_degrees >= 360)
    return fail (error, RC_ERROR_RANGE, _ ("%s: the pile direction must be 0 to 359 degrees"), who);
  return check_named_goods (job, who, area->carpet, RC_GOODS_CARPET, error)
         && (area->cushion == NULL || check_named_goods (job, who, area->cushion, RC_GOODS_CUSHION, error));
}

static gboolean
check_areas (const RcJob *job, const RcMeasure *measure, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) taken = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < measure->areas->len; i++)
    {
      const RcFloorArea *area = measure->areas->pdata[i];

      if (!check_id (seen, area->id, _ ("area"), error) || !check_area (job, measure, area, taken, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
check_stair_turn (const RcStair *stair, guint index, const char *who, GError **error)
{
  const RcStairTurn *turn = rc_stair_get_turn (stair, index);

  if (turn->going <= 0 || turn->width <= 0)
    return fail (error, RC_ERROR_RANGE, _ ("%s, turn %u: its going and its width must be more than 0"), who, index + 1);
  if (turn->after > rc_stair_count_flight_steps (stair, index))
    return fail (error, RC_ERROR_RANGE,
                 _ ("%s, turn %u comes after %u straight steps, but only %u of the stair’s %u are left for it"), who,
                 index + 1, turn->after, rc_stair_count_flight_steps (stair, index), stair->steps);
  if (turn->kind == RC_TURN_WINDERS && (turn->winders == 0 || turn->winders > RC_STAIR_MAX_STEPS))
    return fail (error, RC_ERROR_RANGE, _ ("%s, turn %u has %u winders; it should have 1 to %d"), who, index + 1,
                 turn->winders, RC_STAIR_MAX_STEPS);
  if (turn->kind == RC_TURN_WINDERS && turn->bend == RC_BEND_AHEAD)
    return fail (error, RC_ERROR_RANGE, _ ("%s, turn %u: winders lead to a side or back, only a landing straight on"),
                 who, index + 1);
  return TRUE;
}

static gboolean
check_stair_turns (const RcStair *stair, const char *who, GError **error)
{
  if (stair->turns->len > RC_STAIR_MAX_TURNS)
    return fail (error, RC_ERROR_RANGE, _ ("%s has %u turns; a stair has at most %d"), who, stair->turns->len,
                 RC_STAIR_MAX_TURNS);
  for (guint i = 0; i < stair->turns->len; i++)
    if (!check_stair_turn (stair, i, who, error))
      return FALSE;
  if (rc_stair_count_steps (stair) > RC_STAIR_MAX_STEPS)
    return fail (error, RC_ERROR_RANGE, _ ("%s has %u steps with those of its turns; a stair has at most %d"), who,
                 rc_stair_count_steps (stair), RC_STAIR_MAX_STEPS);
  return TRUE;
}

/* The parts of a stair that not every stair has. */
static gboolean
check_stair_extras (const RcStair *stair, const char *who, GError **error)
{
  if (stair->runner_width < 0 || stair->runner_width > stair->width)
    return fail (error, RC_ERROR_RANGE, _ ("%s: its runner must not be wider than the stair"), who);
  if (stair->curved_width != 0 && stair->curved_width < stair->width)
    return fail (error, RC_ERROR_RANGE, _ ("%s: its curved bottom step must not be narrower than the stair"), who);
  if (stair->curved_width != 0 && rc_stair_count_flight_steps (stair, 0) == 0)
    return fail (error, RC_ERROR_RANGE, _ ("%s: a curved bottom step must be a straight one, below the turn"), who);
  return TRUE;
}

/* Every piece comes off its carpet's roll. */
static gboolean
check_stair_pieces (const RcJob *job, const RcStair *stair, const char *who, GError **error)
{
  g_autoptr (GArray) pieces = rc_stair_compute_pieces (stair);
  RcLength usable = rc_goods_get_usable_width (rc_job_find_goods (job, stair->carpet));

  if (pieces == NULL)
    return fail (error, RC_ERROR_RANGE, _ ("%s: its sizes are too large"), who);
  for (guint i = 0; i < pieces->len; i++)
    {
      const RcStairPiece *piece = &g_array_index (pieces, RcStairPiece, i);
      g_autofree char    *text = rc_length_format (piece->cut_width, rc_job_get_length_style (job));

      if (piece->cut_width > usable)
        return fail (error, RC_ERROR_INFEASIBLE, _ ("%s needs a cut %s wide, wider than its carpet “%s”"), who, text,
                     stair->carpet);
    }
  return TRUE;
}

static gboolean
check_stair (const RcJob *job, const RcStair *stair, GError **error)
{
  const char      *name = stair->name != NULL && *stair->name != '\0' ? stair->name : stair->id;
  g_autofree char *who = g_strdup_printf (_ ("Stair %s"), name);

  if (stair->steps == 0 || stair->steps > RC_STAIR_MAX_STEPS)
    return fail (error, RC_ERROR_RANGE, _ ("%s has %u steps; it should have 1 to %d"), who, stair->steps,
                 RC_STAIR_MAX_STEPS);
  if (stair->rise <= 0 || stair->going <= 0 || stair->width <= 0)
    return fail (error, RC_ERROR_RANGE, _ ("%s: rise, going and width must all be more than 0"), who);
  if (stair->nose_extra < 0 || stair->end_extra < 0 || stair->width_extra < 0 || stair->piece_extra < 0)
    return fail (error, RC_ERROR_RANGE, _ ("%s: its allowances are out of range"), who);
  return check_stair_turns (stair, who, error) && check_stair_extras (stair, who, error)
         && check_named_goods (job, who, stair->carpet, RC_GOODS_CARPET, error)
         && (stair->cushion == NULL || check_named_goods (job, who, stair->cushion, RC_GOODS_CUSHION, error))
         && check_stair_pieces (job, stair, who, error);
}

static gboolean
check_stairs (const RcJob *job, const RcMeasure *measure, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < measure->stairs->len; i++)
    {
      const RcStair *stair = measure->stairs->pdata[i];

      if (!check_id (seen, stair->id, _ ("stair"), error) || !check_stair (job, stair, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
check_settings (const RcSettings *settings, GError **error)
{
  const RcLength lengths[] = { settings->trim_length,        settings->trim_width,        settings->least_fill_width,
                               settings->least_piece_length, settings->door_distance,     settings->stagger,
                               settings->strip_double_from,  settings->closure.error_max, settings->closure.close_max };

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    if (lengths[i] < 0 || lengths[i] > RC_ROOM_MAX_SIDE)
      return fail (error, RC_ERROR_RANGE, _ ("The job's settings: lengths must be from 0 to 1 km"));
  for (guint i = 0; i < RC_N_RULES; i++)
    if (settings->rule_cost[i] < 0)
      return fail (error, RC_ERROR_RANGE, _ ("The job's settings: the rule “%s” must not cost less than 0"),
                   rc_rule_get_name (i));
  return TRUE;
}

gboolean
rc_job_check (const RcJob *job, const RcMeasure *measure, GError **error)
{
  g_autoptr (RcHouse) house = NULL;

  if (measure == NULL)
    measure = rc_job_get_measure (job, NULL);
  if (measure == NULL)
    return fail (error, RC_ERROR_REFERENCE, _ ("The job has no measure"));
  if (!check_settings (&job->settings, error) || !check_goods (job, error) || !check_rolls (job, error)
      || !check_rooms (measure, error) || !check_areas (job, measure, error) || !check_stairs (job, measure, error))
    return FALSE;
  house = rc_house_new (measure, &job->settings.closure, error);
  return house != NULL;
}
