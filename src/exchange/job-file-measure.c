#include "job-file-parts.h"

#include <glib/gi18n-lib.h>

#include "job-file.h"
#include "seam-line.h"

/* --- stairs --- */

/* What the attributes of a turn are called: in a <turn>, and in a <stair> of earlier files, which had one turn at most.
 */
typedef struct
{
  const char *kind, *bend, *after, *winders, *going, *width;
} TurnNames;

static const TurnNames turn_names = { "kind", "bend", "after", "winders", "going", "width" };
static const TurnNames stair_turn_names = { "turn", "bend", "turn-after", "winders", "turn-going", "turn-width" };

static void
read_turn (RcXmlIn *in, const xmlNode *node, const TurnNames *names, RcStair *stair)
{
  g_autofree char *kind = rc_xml_in_dup (node, names->kind), *bend = rc_xml_in_dup (node, names->bend);
  RcStairTurn      turn = { .kind = RC_TURN_LANDING };
  GError          *error = NULL;

  if (!rc_turn_kind_parse (kind, &turn.kind, &error))
    rc_xml_in_take_error (in, node, names->kind, g_steal_pointer (&error));
  if (bend != NULL && !rc_bend_parse (bend, &turn.bend, &error))
    rc_xml_in_take_error (in, node, names->bend, error);
  turn.after = rc_xml_in_integer (in, node, names->after, 0, RC_STAIR_MAX_STEPS, 0);
  turn.winders = rc_xml_in_integer (in, node, names->winders, 0, RC_STAIR_MAX_STEPS, 0);
  turn.going = rc_xml_in_length (in, node, names->going, 0);
  turn.width = rc_xml_in_length (in, node, names->width, 0);
  g_array_append_val (stair->turns, turn);
}

static void
read_turns (RcXmlIn *in, const xmlNode *node, RcStair *stair)
{
  g_autofree char *of_stair = rc_xml_in_dup (node, stair_turn_names.kind);

  if (of_stair != NULL && !g_str_equal (of_stair, "straight"))
    read_turn (in, node, &stair_turn_names, stair);
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "turn"))
      read_turn (in, child, &turn_names, stair);
}

static RcStair *
read_stair (RcXmlIn *in, const xmlNode *node, const RcJob *job)
{
  g_autofree char *id = rc_xml_in_dup (node, "id"), *name = rc_xml_in_dup_text (node, "name");
  g_autofree char *style = rc_xml_in_dup (node, "style"), *cutting = rc_xml_in_dup (node, "cutting");
  RcStair         *stair = rc_stair_new (id, name != NULL || rc_xml_in_has (node, "name") ? name : id);
  GError          *error = NULL;

  stair->steps = rc_xml_in_integer (in, node, "steps", 1, RC_STAIR_MAX_STEPS, 1);
  stair->rise = rc_xml_in_length (in, node, "rise", 0);
  stair->going = rc_xml_in_length (in, node, "going", 0);
  stair->width = rc_xml_in_length (in, node, "width", 0);
  if (style != NULL && !rc_stair_style_parse (style, &stair->style, &error))
    rc_xml_in_take_error (in, node, "style", g_steal_pointer (&error));
  if (cutting != NULL && !rc_stair_cutting_parse (cutting, &stair->cutting, &error))
    rc_xml_in_take_error (in, node, "cutting", error);
  read_turns (in, node, stair);
  stair->placed = rc_xml_in_has (node, "at-x");
  stair->at.x = rc_xml_in_signed_length (in, node, "at-x", 0);
  stair->at.y = rc_xml_in_signed_length (in, node, "at-y", 0);
  if (rc_xml_in_has (node, "at-x") != rc_xml_in_has (node, "at-y"))
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("has one of at-x and at-y; give both or neither"));
  stair->floor = rc_xml_in_integer (in, node, "floor", -1000, 1000, 0);
  stair->bearing_degrees = rc_xml_in_integer (in, node, "bearing", 0, 359, 0);
  stair->runner_width = rc_xml_in_length (in, node, "runner-width", 0);
  stair->curved_width = rc_xml_in_length (in, node, "curved-width", 0);
  stair->piece_extra = rc_xml_in_length (in, node, "piece-extra", stair->piece_extra);
  stair->nose_extra = rc_xml_in_length (in, node, "nose-extra", stair->nose_extra);
  stair->end_extra = rc_xml_in_length (in, node, "end-extra", stair->end_extra);
  stair->width_extra = rc_xml_in_length (in, node, "width-extra", stair->width_extra);
  stair->carpet = rc_xml_in_dup_or (node, "carpet", rc_job_file_find_only_carpet (job));
  stair->cushion = rc_xml_in_dup (node, "cushion");
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "notes"))
      stair->notes = rc_xml_in_dup_content (child);
  return stair;
}

static void
write_turn (RcXmlOut *out, const RcStairTurn *turn)
{
  rc_xml_out_open (out, "turn");
  rc_xml_out_attribute (out, turn_names.kind, rc_turn_kind_get_name (turn->kind));
  if (turn->bend != RC_BEND_LEFT)
    rc_xml_out_attribute (out, turn_names.bend, rc_bend_get_name (turn->bend));
  rc_xml_out_attribute_format (out, turn_names.after, "%u", turn->after);
  if (turn->winders != 0)
    rc_xml_out_attribute_format (out, turn_names.winders, "%u", turn->winders);
  rc_xml_out_length (out, turn_names.going, turn->going);
  rc_xml_out_length (out, turn_names.width, turn->width);
  rc_xml_out_close (out);
}

static void
write_stair (RcXmlOut *out, const RcStair *stair)
{
  rc_xml_out_open (out, "stair");
  rc_xml_out_attribute (out, "id", stair->id);
  rc_xml_out_attribute_or_none (out, "name", stair->name);
  rc_xml_out_attribute_format (out, "steps", "%u", stair->steps);
  rc_xml_out_length (out, "rise", stair->rise);
  rc_xml_out_length (out, "going", stair->going);
  rc_xml_out_length (out, "width", stair->width);
  rc_xml_out_attribute (out, "style", rc_stair_style_get_name (stair->style));
  if (stair->cutting != RC_STAIR_WHOLE_FLIGHT)
    rc_xml_out_attribute (out, "cutting", rc_stair_cutting_get_name (stair->cutting));
  if (stair->placed)
    {
      rc_xml_out_length (out, "at-x", stair->at.x);
      rc_xml_out_length (out, "at-y", stair->at.y);
    }
  if (stair->floor != 0)
    rc_xml_out_attribute_format (out, "floor", "%d", stair->floor);
  if (stair->bearing_degrees != 0)
    rc_xml_out_attribute_format (out, "bearing", "%d", stair->bearing_degrees);
  rc_xml_out_length_unless (out, "runner-width", stair->runner_width, 0);
  rc_xml_out_length_unless (out, "curved-width", stair->curved_width, 0);
  rc_xml_out_length (out, "piece-extra", stair->piece_extra);
  rc_xml_out_length (out, "nose-extra", stair->nose_extra);
  rc_xml_out_length (out, "end-extra", stair->end_extra);
  rc_xml_out_length (out, "width-extra", stair->width_extra);
  rc_xml_out_attribute_or_none (out, "carpet", stair->carpet);
  rc_xml_out_attribute (out, "cushion", stair->cushion);
  for (guint i = 0; i < stair->turns->len; i++)
    write_turn (out, rc_stair_get_turn (stair, i));
  rc_xml_out_text (out, "notes", stair->notes);
  rc_xml_out_close (out);
}

/* --- areas --- */

static void
read_area_rooms (const xmlNode *node, RcFloorArea *area)
{
  g_autofree char *text = rc_xml_in_dup (node, "rooms");
  g_auto (GStrv) words = NULL;

  if (text == NULL)
    return;
  words = g_strsplit_set (text, " \t\r\n", -1);
  for (guint i = 0; words[i] != NULL; i++)
    if (*words[i] != '\0')
      g_ptr_array_add (area->rooms, g_strdup (words[i]));
}

static void
read_pin (RcXmlIn *in, const xmlNode *node, RcFloorArea *area)
{
  g_autofree char *kind_name = rc_xml_in_dup (node, "kind"), *room = rc_xml_in_dup (node, "room");
  GError          *error = NULL;
  RcPinKind        kind;
  RcPin           *pin;

  if (!rc_pin_kind_parse (kind_name, &kind, &error))
    {
      rc_xml_in_take_error (in, node, "kind", error);
      return;
    }
  pin = rc_pin_new (kind, room);
  g_array_unref (pin->points);
  pin->points = rc_job_file_read_points (in, node);
  pin->roll = rc_xml_in_dup (node, "roll");
  g_ptr_array_add (area->pins, pin);
}

static void
write_pin (RcXmlOut *out, const RcPin *pin)
{
  rc_xml_out_open (out, "pin");
  rc_xml_out_attribute (out, "kind", rc_pin_kind_get_name (pin->kind));
  rc_xml_out_attribute (out, "room", pin->room);
  rc_xml_out_attribute (out, "roll", pin->roll);
  rc_job_file_write_points (out, pin->points);
  rc_xml_out_close (out);
}

static RcFloorArea *
read_area (RcXmlIn *in, const xmlNode *node, const RcJob *job)
{
  g_autofree char *id = rc_xml_in_dup (node, "id"), *name = rc_xml_in_dup_text (node, "name");
  g_autofree char *fixing = rc_xml_in_dup (node, "fixing");
  RcFloorArea     *area = rc_floor_area_new (id, name != NULL || rc_xml_in_has (node, "name") ? name : id);
  GError          *error = NULL;

  read_area_rooms (node, area);
  area->carpet = rc_xml_in_dup_or (node, "carpet", rc_job_file_find_only_carpet (job));
  area->cushion = rc_xml_in_dup (node, "cushion");
  if (fixing != NULL && !rc_fixing_parse (fixing, &area->fixing, &error))
    rc_xml_in_take_error (in, node, "fixing", error);
  area->pile_degrees = rc_xml_in_integer (in, node, "pile-degrees", 0, 359, -1);
  area->option = rc_xml_in_dup (node, "option");
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "pin"))
      read_pin (in, child, area);
  return area;
}

static void
write_area (RcXmlOut *out, const RcFloorArea *area)
{
  g_autoptr (GString) rooms = g_string_new (NULL);

  for (guint i = 0; i < area->rooms->len; i++)
    g_string_append_printf (rooms, "%s%s", i == 0 ? "" : " ", (const char *)area->rooms->pdata[i]);
  rc_xml_out_open (out, "area");
  rc_xml_out_attribute (out, "id", area->id);
  rc_xml_out_attribute_or_none (out, "name", area->name);
  rc_xml_out_attribute_or_none (out, "rooms", rooms->str);
  rc_xml_out_attribute_or_none (out, "carpet", area->carpet);
  rc_xml_out_attribute (out, "cushion", area->cushion);
  rc_xml_out_attribute (out, "fixing", rc_fixing_get_name (area->fixing));
  if (area->pile_degrees >= 0)
    rc_xml_out_attribute_format (out, "pile-degrees", "%d", area->pile_degrees);
  rc_xml_out_attribute (out, "option", area->option);
  for (guint i = 0; i < area->pins->len; i++)
    write_pin (out, g_ptr_array_index (area->pins, i));
  rc_xml_out_close (out);
}

/* --- the measure --- */

/* Gives ids to what has none. */
static void
give_room_ids (RcMeasure *measure)
{
  RcIdGiver ids;

  rc_id_giver_init (&ids);
  for (guint i = 0; i < measure->rooms->len; i++)
    rc_id_giver_take (&ids, ((const RcRoom *)measure->rooms->pdata[i])->id);
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      RcRoom *room = measure->rooms->pdata[i];

      if (room->id == NULL)
        room->id = rc_id_giver_give (&ids, room->name, "room");
    }
  rc_id_giver_clear (&ids);
}

static void
give_area_ids (RcMeasure *measure)
{
  RcIdGiver ids;

  rc_id_giver_init (&ids);
  for (guint i = 0; i < measure->areas->len; i++)
    rc_id_giver_take (&ids, ((const RcFloorArea *)measure->areas->pdata[i])->id);
  for (guint i = 0; i < measure->areas->len; i++)
    {
      RcFloorArea *area = measure->areas->pdata[i];

      if (area->id != NULL)
        continue;
      area->id = rc_id_giver_give (&ids, area->name, "area");
      if (area->name == NULL)
        area->name = g_strdup (area->id);
    }
  rc_id_giver_clear (&ids);
}

static void
give_stair_ids (RcMeasure *measure)
{
  RcIdGiver ids;

  rc_id_giver_init (&ids);
  for (guint i = 0; i < measure->stairs->len; i++)
    rc_id_giver_take (&ids, ((const RcStair *)measure->stairs->pdata[i])->id);
  for (guint i = 0; i < measure->stairs->len; i++)
    {
      RcStair *stair = measure->stairs->pdata[i];

      if (stair->id != NULL)
        continue;
      stair->id = rc_id_giver_give (&ids, stair->name, "stair");
      if (stair->name == NULL)
        stair->name = g_strdup (stair->id);
    }
  rc_id_giver_clear (&ids);
}

/* The only area of a measure, where the file says nothing of its rooms, has them all. */
static void
give_all_rooms (const xmlNode *node, RcMeasure *measure)
{
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (rc_xml_in_is (child, "area") && measure->areas->len == 1 && !rc_xml_in_has (child, "rooms"))
      for (guint i = 0; i < measure->rooms->len; i++)
        g_ptr_array_add (((RcFloorArea *)measure->areas->pdata[0])->rooms,
                         g_strdup (((const RcRoom *)measure->rooms->pdata[i])->id));
}

/* Where a seam is held by its place in the house it becomes a pin, for which the rooms must be known. */
static void
read_seam_lines (RcXmlIn *in, const xmlNode *node, const RcJob *job, RcMeasure *measure)
{
  guint at = 0;

  for (const xmlNode *child = node->children; child != NULL && in->error == NULL; child = child->next)
    {
      GError *error = NULL;

      if (!rc_xml_in_is (child, "area"))
        continue;
      RcFloorArea *area = measure->areas->pdata[at++];
      if (!rc_xml_in_has (child, "seam-line"))
        continue;
      RcLength line = rc_xml_in_signed_length (in, child, "seam-line", 0);
      if (in->error == NULL && !rc_seam_line_pin (measure, &job->settings.closure, area, line, &error))
        rc_xml_in_take_error (in, child, "seam-line", error);
    }
}

static void
read_child (RcXmlIn *in, const xmlNode *node, const RcJob *job, RcMeasure *measure)
{
  if (measure->rooms->len > RC_JOB_FILE_MAX_ROOMS)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("stands in a measure of more than %d rooms, the most it may have"),
                    RC_JOB_FILE_MAX_ROOMS);
  else if (rc_xml_in_is (node, "room"))
    g_ptr_array_add (measure->rooms, rc_job_file_read_room (in, node));
  else if (rc_xml_in_is (node, "stair"))
    g_ptr_array_add (measure->stairs, read_stair (in, node, job));
  else if (rc_xml_in_is (node, "area"))
    g_ptr_array_add (measure->areas, read_area (in, node, job));
  else if (rc_xml_in_is (node, "notes"))
    {
      if (measure->notes != NULL)
        rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("stand twice in their measure; once is right"));
      g_free (measure->notes);
      measure->notes = rc_xml_in_dup_content (node);
    }
}

RcMeasure *
rc_job_file_read_measure (RcXmlIn *in, const xmlNode *node, const RcJob *job)
{
  g_autofree char *id = rc_xml_in_dup (node, "id");
  RcMeasure       *measure = rc_measure_new (id);

  measure->date = rc_xml_in_dup (node, "date");
  measure->taken_by = rc_xml_in_dup_text (node, "taken-by");
  for (const xmlNode *child = node->children; child != NULL && in->error == NULL; child = child->next)
    read_child (in, child, job, measure);
  give_room_ids (measure);
  give_area_ids (measure);
  give_stair_ids (measure);
  give_all_rooms (node, measure);
  read_seam_lines (in, node, job, measure);
  if (measure->areas->len == 0 && !rc_xml_in_has (node, "areas") && rc_job_file_find_only_carpet (job) != NULL)
    rc_job_file_add_areas (measure, rc_job_file_find_only_carpet (job));
  return measure;
}

void
rc_job_file_write_measure (RcXmlOut *out, const RcMeasure *measure)
{
  rc_xml_out_open (out, "measure");
  rc_xml_out_attribute (out, "id", measure->id);
  rc_xml_out_attribute (out, "date", measure->date);
  rc_xml_out_attribute (out, "taken-by", measure->taken_by);
  rc_xml_out_attribute (out, "areas", measure->areas->len == 0 && measure->rooms->len > 0 ? "none" : NULL);
  rc_xml_out_text (out, "notes", measure->notes);
  for (guint i = 0; i < measure->rooms->len; i++)
    rc_job_file_write_room (out, measure->rooms->pdata[i]);
  for (guint i = 0; i < measure->stairs->len; i++)
    write_stair (out, measure->stairs->pdata[i]);
  for (guint i = 0; i < measure->areas->len; i++)
    write_area (out, measure->areas->pdata[i]);
  rc_xml_out_close (out);
}
