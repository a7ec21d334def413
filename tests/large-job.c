#include "large-job.h"

#include "plan-maker.h"

#define ROW_ROOMS   20
#define ROOM_WIDTH  FT (12)
#define ROOM_LENGTH FT (15)
#define DEPTH       IN (4)

/* Every third room has an alcove of 2 by 5 ft at its upper end. */
static RcRoom *
add_room (RcJob *job, guint index, const char *area)
{
  RcLength         x = (index % ROW_ROOMS) * (ROOM_WIDTH + DEPTH);
  RcLength         y = index / ROW_ROOMS * (ROOM_LENGTH + FT (4));
  g_autofree char *id = g_strdup_printf ("room-%u", index + 1);
  const RcPoint    alcove[] = { { x, y },
                                { x + ROOM_WIDTH, y },
                                { x + ROOM_WIDTH, y + ROOM_LENGTH },
                                { x + FT (8), y + ROOM_LENGTH },
                                { x + FT (8), y + ROOM_LENGTH + FT (2) },
                                { x + FT (3), y + ROOM_LENGTH + FT (2) },
                                { x + FT (3), y + ROOM_LENGTH },
                                { x, y + ROOM_LENGTH } };
  RcRoom          *room = index % 3 == 0 ? add_outline (job, id, alcove, G_N_ELEMENTS (alcove), area)
                                         : add_rectangle (job, id, x, y, ROOM_WIDTH, ROOM_LENGTH, area);

  g_free (room->name);
  room->name = g_strdup_printf ("Guest room %u", index + 101);
  return room;
}

RcJob *
make_large_job (const char *id, guint n_rooms, const char *carpet)
{
  RcJob *job = make_job (FT (12));

  g_free (job->id);
  job->id = g_strdup (id);
  g_free (job->title);
  job->title = g_strdup ("Large building");
  for (guint i = 0; i < n_rooms; i++)
    {
      g_autofree char *area = g_strdup_printf ("row-%u", i / ROW_ROOMS + 1);
      g_autofree char *next = g_strdup_printf ("room-%u", i + 2);
      gboolean         has_next = i % ROW_ROOMS != ROW_ROOMS - 1 && i + 1 < n_rooms;
      RcRoom          *room = add_room (job, i, area);
      RcFloorArea     *floor = get_area (job, area);
      RcOpening       *window = rc_opening_new ("W", RC_OPENING_WINDOW);

      g_free (floor->carpet);
      floor->carpet = g_strdup (carpet);
      window->offset = FT (4);
      window->width = FT (4);
      g_ptr_array_add (room->openings, window);
      if (has_next)
        add_door (room, "D", 1, FT (6), IN (32), DEPTH, next);
    }
  return job;
}
