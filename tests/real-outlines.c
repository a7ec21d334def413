#include "real-outlines.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

char *
rc_outlines_load (void)
{
  const char      *shared = g_getenv ("RC_SHARED");
  g_autofree char *path = g_build_filename (shared != NULL ? shared : "", "floors", "rooms.jsonl", NULL);
  char            *lines = NULL;

  if (shared == NULL || !g_file_get_contents (path, &lines, NULL, NULL))
    g_test_skip ("RC_SHARED does not name a folder with floors/rooms.jsonl");
  return lines;
}

RcRing *
rc_outlines_read_ring (const char **text)
{
  RcRing *ring = rc_ring_new ();

  g_assert_true (**text == '[');
  for ((*text)++; **text != ']';)
    {
      RcPoint point;
      char   *end;

      if (**text == ',')
        (*text)++;
      g_assert_true (**text == '[');
      point.x = llround (g_ascii_strtod (*text + 1, &end) * RC_TICKS_PER_MM);
      g_assert_true (*end == ',');
      point.y = llround (g_ascii_strtod (end + 1, &end) * RC_TICKS_PER_MM);
      g_assert_true (*end == ']');
      *text = end + 1;
      g_array_append_val (ring, point);
    }
  (*text)++;
  return ring;
}

const char *
rc_outlines_find_value (const char *line, const char *key)
{
  g_autofree char *quoted = g_strdup_printf ("\"%s\":", key);
  const char      *found = strstr (line, quoted);

  g_assert_nonnull (found);
  return found + strlen (quoted);
}

RcRoom *
rc_outlines_read_room (const char *line)
{
  RcRoom     *room = rc_room_new ("room", NULL);
  const char *text = rc_outlines_find_value (line, "id");

  room->name = g_strndup (text + 1, strcspn (text + 1, "\""));
  text = rc_outlines_find_value (line, "outer");
  g_array_unref (room->outline);
  room->outline = rc_outlines_read_ring (&text);
  for (text = rc_outlines_find_value (line, "holes") + 1; *text != ']';)
    {
      if (*text == ',')
        text++;
      g_ptr_array_add (room->cutouts, rc_cutout_new_take (RC_CUTOUT_OTHER, rc_outlines_read_ring (&text)));
    }
  return room;
}
