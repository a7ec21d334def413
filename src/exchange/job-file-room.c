#include "job-file-parts.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "exact-text.h"

static const char *const compass[] = { "N", "NE", "E", "SE", "S", "SW", "W", "NW" };

/* --- walls --- */

/* Degrees in `text`; FALSE unless it is a number and nothing else. */
static gboolean
parse_degrees (const char *text, double *degrees)
{
  char  *end;
  double value = g_ascii_strtod (text, &end);

  if (end == text || (*end != '\0' && strcmp (end, "°") != 0) || !isfinite (value) || fabs (value) > 3600)
    return FALSE;
  *degrees = value;
  return TRUE;
}

static double
read_bearing (RcXmlIn *in, const xmlNode *node, const char *text)
{
  double degrees = 0;

  for (guint i = 0; i < G_N_ELEMENTS (compass); i++)
    if (g_ascii_strcasecmp (compass[i], text) == 0)
      return 45.0 * i;
  if (!parse_degrees (text, &degrees))
    rc_xml_in_fail (in, node, RC_ERROR_PARSE,
                    _ ("bearing: “%s” should be N, NE, E, SE, S, SW, W, NW or degrees clockwise from north"), text);
  return degrees;
}

static double
read_turn (RcXmlIn *in, const xmlNode *node, const char *text)
{
  static const struct
  {
    const char *word;
    double      degrees;
  } turns[] = { { "right", 90 }, { "left", -90 }, { "straight", 0 } };
  double degrees = 0;

  for (guint i = 0; i < G_N_ELEMENTS (turns); i++)
    if (strcmp (turns[i].word, text) == 0)
      return turns[i].degrees;
  if (!parse_degrees (text, &degrees))
    rc_xml_in_fail (in, node, RC_ERROR_PARSE, _ ("turn: “%s” should be left, right, straight or degrees clockwise"),
                    text);
  return degrees;
}

static void
read_wall (RcXmlIn *in, const xmlNode *node, RcRoom *room)
{
  g_autofree char *bearing = rc_xml_in_dup (node, "bearing"), *turn = rc_xml_in_dup (node, "turn");
  RcWall           wall = { 0 };

  if (bearing != NULL)
    wall.bearing_degrees = read_bearing (in, node, bearing);
  else if (turn == NULL)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("needs the way it is walked: bearing=\"N\" or turn=\"right\""));
  else if (room->walls->len == 0)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("is the room's first and cannot turn; give its bearing"));
  else
    {
      double degrees
          = g_array_index (room->walls, RcWall, room->walls->len - 1).bearing_degrees + read_turn (in, node, turn);

      wall.bearing_degrees = degrees - 360 * floor (degrees / 360);
    }
  wall.length = rc_xml_in_length (in, node, "length", 0);
  wall.bow = rc_xml_in_signed_length (in, node, "bow", 0);
  g_array_append_val (room->walls, wall);
}

static void
write_wall (RcXmlOut *out, const RcWall *wall)
{
  double           eighths = wall->bearing_degrees / 45;
  g_autofree char *degrees = rc_exact_double_format (wall->bearing_degrees);

  rc_xml_out_open (out, "wall");
  if (eighths >= 0 && eighths < 8 && eighths == floor (eighths))
    rc_xml_out_attribute (out, "bearing", compass[(int)eighths]);
  else
    rc_xml_out_attribute (out, "bearing", degrees);
  rc_xml_out_length (out, "length", wall->length);
  rc_xml_out_length_unless (out, "bow", wall->bow, 0);
  rc_xml_out_close (out);
}

/* --- points --- */

RcRing *
rc_job_file_read_points (RcXmlIn *in, const xmlNode *parent)
{
  RcRing *ring = rc_ring_new ();

  for (const xmlNode *node = parent->children; node != NULL; node = node->next)
    if (rc_xml_in_is (node, "point"))
      {
        RcPoint point = { rc_xml_in_signed_length (in, node, "x", 0), rc_xml_in_signed_length (in, node, "y", 0) };

        g_array_append_val (ring, point);
      }
  return ring;
}

void
rc_job_file_write_points (RcXmlOut *out, const RcRing *ring)
{
  for (guint i = 0; i < ring->len; i++)
    {
      rc_xml_out_open (out, "point");
      rc_xml_out_length (out, "x", rc_ring_get (ring, i)->x);
      rc_xml_out_length (out, "y", rc_ring_get (ring, i)->y);
      rc_xml_out_close (out);
    }
}

static void
write_points (RcXmlOut *out, const char *element, const RcRing *ring)
{
  rc_xml_out_open (out, element);
  rc_job_file_write_points (out, ring);
  rc_xml_out_close (out);
}

/* --- cut-outs --- */

static void
read_cutout (RcXmlIn *in, const xmlNode *node, RcRoom *room)
{
  g_autofree char *word = rc_xml_in_dup (node, "kind");
  RcCutoutKind     kind = RC_CUTOUT_OTHER;
  RcCutout        *cutout;
  GError          *error = NULL;

  if (word != NULL && !rc_cutout_kind_parse (word, &kind, &error))
    rc_xml_in_take_error (in, node, "kind", error);
  cutout = rc_cutout_new_take (kind, rc_job_file_read_points (in, node));
  g_ptr_array_add (room->cutouts, cutout);
  cutout->name = rc_xml_in_dup_text (node, "name");
  cutout->diameter = rc_xml_in_length (in, node, "diameter", 0);
  if (cutout->diameter > 0 && cutout->points->len != 1)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("is round (it has a diameter) and needs one point: its middle"));
  if (rc_xml_in_has (node, "strip"))
    cutout->strip = rc_xml_in_yes (node, "strip");
  if (rc_xml_in_has (node, "counted"))
    cutout->counted = rc_xml_in_yes (node, "counted");
}

static void
write_cutout (RcXmlOut *out, const RcCutout *cutout)
{
  g_autoptr (RcCutout) usual = rc_cutout_new (cutout->kind);

  rc_xml_out_open (out, "cutout");
  if (cutout->kind != RC_CUTOUT_OTHER)
    rc_xml_out_attribute (out, "kind", rc_cutout_kind_get_name (cutout->kind));
  rc_xml_out_attribute_or_none (out, "name", cutout->name);
  rc_xml_out_length_unless (out, "diameter", cutout->diameter, 0);
  if (cutout->strip != usual->strip)
    rc_xml_out_attribute (out, "strip", cutout->strip ? "yes" : "no");
  if (cutout->counted != usual->counted)
    rc_xml_out_attribute (out, "counted", cutout->counted ? "yes" : "no");
  rc_job_file_write_points (out, cutout->points);
  rc_xml_out_close (out);
}

/* --- diagonals --- */

static void
read_diagonal (RcXmlIn *in, const xmlNode *node, RcRoom *room)
{
  RcDiagonal diagonal = { (guint)rc_xml_in_integer (in, node, "from", 1, RC_ROOM_MAX_WALLS, 1) - 1,
                          (guint)rc_xml_in_integer (in, node, "to", 1, RC_ROOM_MAX_WALLS, 1) - 1,
                          rc_xml_in_length (in, node, "length", 0) };

  g_array_append_val (room->diagonals, diagonal);
}

static void
write_diagonal (RcXmlOut *out, const RcDiagonal *diagonal)
{
  rc_xml_out_open (out, "diagonal");
  rc_xml_out_attribute_format (out, "from", "%u", diagonal->from + 1);
  rc_xml_out_attribute_format (out, "to", "%u", diagonal->to + 1);
  rc_xml_out_length (out, "length", diagonal->length);
  rc_xml_out_close (out);
}

/* --- openings --- */

static void
read_opening (RcXmlIn *in, const xmlNode *node, RcRoom *room, RcIdGiver *ids)
{
  static const char *const stems[] = { "D", "A", "W" };
  RcOpeningKind            kind = RC_OPENING_DOOR;
  g_autofree char         *id = rc_xml_in_dup (node, "id"), *swing = rc_xml_in_dup (node, "swing");
  g_autofree char         *hinge = rc_xml_in_dup (node, "hinge");
  RcOpening               *opening;
  GError                  *error = NULL;

  if (!rc_opening_kind_parse ((const char *)node->name, &kind, &error))
    rc_xml_in_take_error (in, node, NULL, error);
  if (room->openings->len >= RC_ROOM_MAX_OPENINGS)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("is one opening too many for a room, which has at most %d"),
                    RC_ROOM_MAX_OPENINGS);
  for (guint n = 1; id == NULL; n++)
    {
      id = g_strdup_printf ("%s%u", stems[kind], n);
      if (g_hash_table_contains (ids->taken, id))
        g_clear_pointer (&id, g_free);
    }
  rc_id_giver_take (ids, id);
  opening = rc_opening_new (id, kind);
  opening->wall = rc_xml_in_integer (in, node, "wall", 1, G_MAXINT, 1) - 1;
  opening->offset = rc_xml_in_length (in, node, "offset", 0);
  opening->width = rc_xml_in_length (in, node, "width", 0);
  opening->depth = rc_xml_in_length (in, node, "depth", 0);
  if (swing != NULL && !rc_swing_parse (swing, &opening->swing, &error))
    rc_xml_in_take_error (in, node, "swing", error);
  opening->hinge_at_end = g_strcmp0 (hinge, "end") == 0;
  opening->to_room = rc_xml_in_dup (node, "to");
  opening->to_opening = rc_xml_in_dup (node, "meets");
  opening->transition = rc_xml_in_dup (node, "transition");
  g_ptr_array_add (room->openings, opening);
}

static void
write_opening (RcXmlOut *out, const RcOpening *opening)
{
  rc_xml_out_open (out, rc_opening_kind_get_name (opening->kind));
  rc_xml_out_attribute (out, "id", opening->id);
  rc_xml_out_attribute_format (out, "wall", "%u", opening->wall + 1);
  rc_xml_out_length (out, "offset", opening->offset);
  rc_xml_out_length (out, "width", opening->width);
  rc_xml_out_length_unless (out, "depth", opening->depth, 0);
  if (opening->swing != RC_SWING_NONE)
    rc_xml_out_attribute (out, "swing", rc_swing_get_name (opening->swing));
  rc_xml_out_attribute (out, "hinge", opening->hinge_at_end ? "end" : NULL);
  rc_xml_out_attribute (out, "to", opening->to_room);
  rc_xml_out_attribute (out, "meets", opening->to_opening);
  rc_xml_out_attribute (out, "transition", opening->transition);
  rc_xml_out_close (out);
}

/* --- the room --- */

static void
read_child (RcXmlIn *in, const xmlNode *node, RcRoom *room, RcIdGiver *openings)
{
  if (rc_xml_in_is (node, "wall"))
    read_wall (in, node, room);
  else if (rc_xml_in_is (node, "outline"))
    {
      if (room->outline->len > 0)
        rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("stands twice in its room; one is right"));
      g_array_unref (room->outline);
      room->outline = rc_job_file_read_points (in, node);
    }
  else if (rc_xml_in_is (node, "cutout"))
    read_cutout (in, node, room);
  else if (rc_xml_in_is (node, "diagonal"))
    read_diagonal (in, node, room);
  else if (rc_xml_in_is (node, "notes"))
    {
      if (room->notes != NULL)
        rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("stand twice in their room; once is right"));
      g_free (room->notes);
      room->notes = rc_xml_in_dup_content (node);
    }
  else if (node->type == XML_ELEMENT_NODE)
    read_opening (in, node, room, openings);
}

RcRoom *
rc_job_file_read_room (RcXmlIn *in, const xmlNode *node)
{
  g_autofree char *id = rc_xml_in_dup (node, "id"), *name = rc_xml_in_dup_text (node, "name");
  RcRoom          *room = rc_room_new (id, name != NULL || rc_xml_in_has (node, "name") ? name : id);
  RcIdGiver        openings;

  if (id == NULL && name == NULL)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("has neither id nor name; give one"));
  if (rc_xml_in_has (node, "at-x") != rc_xml_in_has (node, "at-y"))
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("has one of at-x and at-y; give both or neither"));
  room->floor = rc_xml_in_integer (in, node, "floor", -1000, 1000, 0);
  room->spread = rc_xml_in_yes (node, "spread");
  room->placed = rc_xml_in_has (node, "at-x");
  room->at.x = rc_xml_in_signed_length (in, node, "at-x", 0);
  room->at.y = rc_xml_in_signed_length (in, node, "at-y", 0);
  rc_id_giver_init (&openings);
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_ELEMENT_NODE)
      {
        g_autofree char *child_id = rc_xml_in_dup (child, "id");

        rc_id_giver_take (&openings, child_id);
      }
  for (const xmlNode *child = node->children; child != NULL && in->error == NULL; child = child->next)
    read_child (in, child, room, &openings);
  rc_id_giver_clear (&openings);
  if (room->walls->len > 0 && room->outline->len > 0)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("has walls and an outline; give one or the other"));
  if (room->walls->len == 0 && room->outline->len == 0)
    rc_xml_in_fail (in, node, RC_ERROR_FORMAT, _ ("has neither walls nor an outline; give one of them"));
  return room;
}

void
rc_job_file_write_room (RcXmlOut *out, const RcRoom *room)
{
  rc_xml_out_open (out, "room");
  rc_xml_out_attribute (out, "id", room->id);
  rc_xml_out_attribute_or_none (out, "name", room->name);
  if (room->floor != 0)
    rc_xml_out_attribute_format (out, "floor", "%d", room->floor);
  rc_xml_out_attribute (out, "spread", room->spread ? "yes" : NULL);
  if (room->placed)
    {
      rc_xml_out_length (out, "at-x", room->at.x);
      rc_xml_out_length (out, "at-y", room->at.y);
    }
  for (guint i = 0; i < room->walls->len; i++)
    write_wall (out, &g_array_index (room->walls, RcWall, i));
  if (room->outline->len > 0)
    write_points (out, "outline", room->outline);
  for (guint i = 0; i < room->cutouts->len; i++)
    write_cutout (out, room->cutouts->pdata[i]);
  for (guint i = 0; i < room->diagonals->len; i++)
    write_diagonal (out, &g_array_index (room->diagonals, RcDiagonal, i));
  for (guint i = 0; i < room->openings->len; i++)
    write_opening (out, room->openings->pdata[i]);
  rc_xml_out_text (out, "notes", room->notes);
  rc_xml_out_close (out);
}
