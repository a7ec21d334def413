#include "job-from-bytes.h"

#include <math.h>
#include <string.h>

#include "plan-maker.h"

typedef struct
{
  const guint8 *data;
  gsize         left;
} Bytes;

#define MOST_COLUMNS 5
#define MOST_ROOMS   4

static guint
take_byte (Bytes *bytes)
{
  if (bytes->left == 0)
    return 0;
  bytes->left--;
  return *bytes->data++;
}

/* 0 to below `n`. */
static guint
take (Bytes *bytes, guint n)
{
  return take_byte (bytes) % n;
}

/* TRUE in one case of `n`. */
static gboolean
take_chance (Bytes *bytes, guint n)
{
  return take (bytes, n) == n - 1;
}

/* Whole inches, whole millimetres, hairs off an inch, any tick. */
static RcLength
take_length (Bytes *bytes, RcLength least, RcLength most)
{
  guint    how = take (bytes, 4);
  guint    share = take_byte (bytes) << 8 | take_byte (bytes);
  RcLength length = least + (most - least) * share / G_MAXUINT16;
  switch (how)
    {
    case 0:
      length -= length % RC_TICKS_PER_INCH;
      break;
    case 1:
      length -= length % RC_TICKS_PER_MM;
      break;
    case 2:
      length += -length % RC_TICKS_PER_INCH + (RcLength)take (bytes, 33) - 16;
      break;
    default:
      break;
    }
  return CLAMP (length, least, most);
}

/* How far a corner lies off where it should: mostly not at all, or by ticks, by millimetres, by a wall's slope. */
static RcLength
take_nudge (Bytes *bytes)
{
  static const RcLength most[]
      = { 0, 0, 0, 0, 0, 2, 10, RC_TICKS_PER_MM, 2 * RC_TICKS_PER_MM, 20 * RC_TICKS_PER_MM, RC_TICKS_PER_M };
  RcLength reach = most[take (bytes, G_N_ELEMENTS (most))];
  return reach == 0 ? 0 : take_length (bytes, 0, 2 * reach) - reach;
}

static RcLength
take_extreme (Bytes *bytes, RcLength most)
{
  const RcLength some[] = { 1, 2, RC_TICKS_PER_MM, RC_TICKS_PER_MM + 1, RC_TICKS_PER_M, most / 2, most - 1, most };
  return some[take (bytes, G_N_ELEMENTS (some))];
}

/* --- goods and settings --- */

static RcLength
take_roll_width (Bytes *bytes)
{
  const RcLength usual[] = { FT (12), MM (4000), MM (5000), FT (13) + IN (2), FT (12) + 1, MM (3660) - 1 };
  guint          which = take (bytes, G_N_ELEMENTS (usual) + 1);
  return which < G_N_ELEMENTS (usual) ? usual[which] : take_length (bytes, MM (900), MM (5000));
}

static void
fill_carpet (RcGoods *carpet, Bytes *bytes)
{
  static const RcMatch matches[]
      = { RC_MATCH_SET, RC_MATCH_HALF_DROP, RC_MATCH_QUARTER_DROP, RC_MATCH (2, 3), RC_MATCH (7, 1000) };
  carpet->roll_width = take_roll_width (bytes);
  if (take_chance (bytes, 4))
    carpet->usable_width = take_length (bytes, carpet->roll_width * 3 / 4, carpet->roll_width);
  if (take_chance (bytes, 3))
    {
      carpet->repeat_length = take_length (bytes, 1, MM (1500));
      carpet->match = matches[take (bytes, G_N_ELEMENTS (matches))];
      if (take_chance (bytes, 2))
        carpet->repeat_width = take_length (bytes, 1, MM (4500));
    }
  if (take_chance (bytes, 4))
    carpet->full_roll = take_length (bytes, MM (100), MM (30000));
  if (take_chance (bytes, 4))
    carpet->length_step = take_length (bytes, 1, MM (2000));
  if (take_chance (bytes, 6))
    carpet->least_cut = take_length (bytes, 1, MM (8000));
}

static RcGoods *
add_carpet (RcJob *job, const char *id)
{
  RcGoods *carpet = rc_goods_new (id, RC_GOODS_CARPET, id);
  g_ptr_array_add (job->goods, carpet);
  return carpet;
}

static void
fill_settings (RcSettings *settings, Bytes *bytes)
{
  RcLength *const lengths[] = { &settings->trim_length,        &settings->trim_width,    &settings->least_fill_width,
                                &settings->least_piece_length, &settings->door_distance, &settings->stagger };
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    switch (take (bytes, 4))
      {
      case 0:
        break; /* as usual */
      case 1:
        *lengths[i] = 0;
        break;
      case 2:
        *lengths[i] = take_length (bytes, 0, MM (1000));
        break;
      default:
        *lengths[i]
            = take_chance (bytes, 4) ? take_extreme (bytes, RC_ROOM_MAX_SIDE) : take_length (bytes, 0, MM (100));
      }
  if (take_chance (bytes, 2))
    settings->most_joins = take (bytes, 8);
  for (guint i = 0; i < RC_N_RULES; i++)
    switch (take (bytes, 6))
      {
      case 4:
        settings->rule_cost[i] = 0;
        break;
      case 5:
        settings->rule_cost[i] = (RcMoney)take_byte (bytes) << take (bytes, 20);
        break;
      default:
        break; /* as usual */
      }
}

static void
fill_weights (RcPlanWeights *weights, Bytes *bytes)
{
  gint64 *const each[]
      = { &weights->carpet_per_m, &weights->side_seam_per_m, &weights->cross_seam_per_m, &weights->cross_seam_each };
  plain_weights (NULL, weights, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (each); i++)
    if (take_chance (bytes, 4))
      *each[i] = (gint64)take_byte (bytes) << take (bytes, 12);
}

static void
add_rolls (RcJob *job, Bytes *bytes)
{
  guint n = take (bytes, 8) % 4;
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("R-%u", i), *lot = g_strdup_printf ("%u", take (bytes, 3));
      const RcGoods   *carpet = g_ptr_array_index (job->goods, take (bytes, job->goods->len));
      RcRoll          *roll = rc_roll_new (id, carpet->id,
                                  take_chance (bytes, 4) ? take_extreme (bytes, RC_LENGTH_MAX)
                                                                  : take_length (bytes, 1, MM (30000)));
      if (take_chance (bytes, 2))
        roll->lot = g_strdup (lot);
      roll->remnant = take_chance (bytes, 2);
      roll->cut = take_chance (bytes, 8);
      if (roll->remnant && take_chance (bytes, 2))
        roll->width = take_length (bytes, 1, MM (5000));
      if (take_chance (bytes, 4))
        roll->kept = take_length (bytes, 0, roll->length);
      for (guint k = take (bytes, 6); k > 3; k--)
        {
          RcFlaw flaw = { .from = take_length (bytes, 0, MM (20000)) };
          flaw.to = flaw.from + take_length (bytes, 1, MM (3000));
          g_array_append_val (roll->flaws, flaw);
        }
      g_ptr_array_add (job->rolls, roll);
    }
}

/* --- rooms --- */

/* How the whole house lies: mirrored, turned by quarters, by a hair, by any angle. */
typedef struct
{
  gboolean mirrored;
  double   cosine, sine;
  guint    quarters;
} Attitude;

static Attitude
take_attitude (Bytes *bytes)
{
  static const double angles[] = { 0, 0, 0, 0, 1e-5, 1e-4, 1e-3, 0.01, 0.3, G_PI / 4 };
  Attitude            attitude = { .mirrored = take_chance (bytes, 2), .quarters = take (bytes, 4) };
  double              angle = angles[take (bytes, G_N_ELEMENTS (angles))] * (1 + take (bytes, 16) / 16.0);
  attitude.cosine = cos (angle);
  attitude.sine = sin (angle);
  return attitude;
}

static RcPoint
turn (const Attitude *attitude, RcPoint point)
{
  RcLength x = attitude->mirrored ? -point.x : point.x, y = point.y;
  for (guint i = 0; i < attitude->quarters; i++)
    {
      RcLength swap = x;
      x = -y;
      y = swap;
    }
  return (RcPoint){ (RcLength)round ((double)x * attitude->cosine - (double)y * attitude->sine),
                    (RcLength)round ((double)x * attitude->sine + (double)y * attitude->cosine) };
}

static void
add_point (RcRing *ring, RcLength x, RcLength y)
{
  RcPoint point = { x, y };
  if (ring->len == 0 || memcmp (rc_ring_get (ring, ring->len - 1), &point, sizeof point) != 0)
    g_array_append_val (ring, point);
}

/* A room before it is turned: columns side by side, each over and under its neighbours by something, so that there are
 * steps, bays, necks and slivers. */
typedef struct
{
  guint    n;
  RcLength edges[MOST_COLUMNS + 1], high[MOST_COLUMNS], low[MOST_COLUMNS];
} Columns;

static void
take_columns (Columns *columns, RcLength x, Bytes *bytes)
{
  columns->n = 1 + take (bytes, MOST_COLUMNS);
  columns->edges[0] = x;
  for (guint i = 0; i < columns->n; i++)
    {
      RcLength widest = MM (10000) / columns->n;
      columns->edges[i + 1]
          = columns->edges[i]
            + (take_chance (bytes, 6) ? take_extreme (bytes, widest) : take_length (bytes, MM (100), widest));
      columns->high[i] = take_length (bytes, MM (1200), MM (9000));
      columns->low[i] = take_chance (bytes, 2) ? take_length (bytes, 0, MM (2400)) - MM (1200) : 0;
    }
}

/* *end_edge: the number of the edge where the last column ends. */
static RcRing *
make_outline (const Columns *columns, guint *end_edge, Bytes *bytes)
{
  RcRing *ring = rc_ring_new ();
  for (guint i = 0; i < columns->n; i++)
    {
      add_point (ring, columns->edges[i], columns->high[i]);
      add_point (ring, columns->edges[i + 1], columns->high[i]);
    }
  *end_edge = ring->len - 1;
  for (guint i = columns->n; i-- > 0;)
    {
      add_point (ring, columns->edges[i + 1], columns->low[i]);
      add_point (ring, columns->edges[i], columns->low[i]);
    }
  for (guint i = take (bytes, ring->len + 1); i > 0; i--)
    {
      RcPoint *corner = rc_ring_get (ring, take (bytes, ring->len));
      corner->x += take_nudge (bytes);
      corner->y += take_nudge (bytes);
    }
  return ring;
}

static RcPoint
take_point_in (const RcRing *ring, Bytes *bytes)
{
  const RcPoint *a = rc_ring_get (ring, take (bytes, ring->len)), *b = rc_ring_get (ring, take (bytes, ring->len));
  RcLength       share = take (bytes, 17);
  return (RcPoint){ a->x + (b->x - a->x) * share / 16 + take_nudge (bytes),
                    a->y + (b->y - a->y) * share / 16 + take_nudge (bytes) };
}

/* In one of the columns, at its wall or not. */
static void
add_cutout (RcRoom *room, const Columns *columns, Bytes *bytes)
{
  guint    i = take (bytes, columns->n);
  RcLength x0 = take_length (bytes, columns->edges[i], columns->edges[i + 1]),
           y0 = take_length (bytes, columns->low[i], columns->high[i]);
  RcLength x1 = take_length (bytes, x0, columns->edges[i + 1]), y1 = take_length (bytes, y0, columns->high[i]);
  RcPoint  corners[] = { { x0, y0 }, { x1, y0 }, { x1, y1 }, { x0, y1 } };
  if (take_chance (bytes, 4))
    g_ptr_array_add (room->cutouts, rc_cutout_new_round (RC_CUTOUT_COLUMN, (RcPoint){ (x0 + x1) / 2, (y0 + y1) / 2 },
                                                         MIN (x1 - x0, y1 - y0)));
  else
    g_ptr_array_add (room->cutouts,
                     rc_cutout_new_take (RC_CUTOUT_HEARTH, rc_ring_new_from_points (corners, G_N_ELEMENTS (corners))));
}

/* A window, or a door that leads out. */
static void
add_window (RcRoom *room, const char *id, Bytes *bytes)
{
  RcOpening *window = rc_opening_new (id, take_chance (bytes, 3) ? RC_OPENING_DOOR : RC_OPENING_WINDOW);
  RcPoint    from, to;
  window->wall = take (bytes, rc_room_get_n_walls (room));
  rc_room_get_wall_ends (room, window->wall, &from, &to);
  window->offset = take_length (bytes, 0, rc_point_distance (from, to));
  window->width = take_length (bytes, 0, rc_point_distance (from, to) - window->offset);
  window->depth = take_length (bytes, 0, MM (300));
  g_ptr_array_add (room->openings, window);
}

static void
add_next_door (RcRoom *room, guint wall, RcLength depth, const char *next, Bytes *bytes)
{
  RcOpening *door = add_door (room, "D1", wall, take_length (bytes, 0, MM (1000)),
                              take_length (bytes, MM (10), MM (1200)), depth, next);
  door->kind = take_chance (bytes, 2) ? RC_OPENING_ARCHWAY : RC_OPENING_DOOR;
  door->swing = take (bytes, 3);
  door->hinge_at_end = take_chance (bytes, 2);
}

static void
turn_ring (const Attitude *attitude, RcRing *ring)
{
  for (guint i = 0; i < ring->len; i++)
    *rc_ring_get (ring, i) = turn (attitude, *rc_ring_get (ring, i));
}

static void
add_rooms (RcJob *job, Bytes *bytes)
{
  Attitude attitude = take_attitude (bytes);
  guint    n = 1 + take (bytes, MOST_ROOMS);
  RcLength x = take_chance (bytes, 4) ? take_length (bytes, 0, MM (60000)) - MM (30000) : 0;
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *id = g_strdup_printf ("room%u", i), *next = g_strdup_printf ("room%u", i + 1);
      RcLength         depth = take_chance (bytes, 3) ? take_length (bytes, 0, MM (400)) : IN (take (bytes, 7));
      guint            end_edge;
      Columns          columns;
      take_columns (&columns, x, bytes);
      x = columns.edges[columns.n] + depth;
      g_autoptr (GArray) ring = make_outline (&columns, &end_edge, bytes);
      RcRoom *room = add_outline (job, id, (const RcPoint *)(gpointer)ring->data, ring->len,
                                  take_chance (bytes, 4) ? "other" : "area");
      for (guint k = take (bytes, 6); k > 4; k--)
        add_cutout (room, &columns, bytes);
      turn_ring (&attitude, room->outline);
      for (guint k = 0; k < room->cutouts->len; k++)
        turn_ring (&attitude, ((RcCutout *)g_ptr_array_index (room->cutouts, k))->points);
      if (i + 1 < n && !take_chance (bytes, 4))
        add_next_door (room, end_edge, depth, next, bytes);
      if (take_chance (bytes, 3))
        add_window (room, "W1", bytes);
    }
}

/* --- pins and stairs --- */

static const RcRoll *
find_roll (const RcJob *job, const char *carpet)
{
  for (guint i = 0; i < job->rolls->len; i++)
    {
      const RcRoll *roll = g_ptr_array_index (job->rolls, i);
      if (g_str_equal (roll->goods_id, carpet))
        return roll;
    }
  return NULL;
}

static void
add_pin (RcFloorArea *area, const RcMeasure *measure, const RcJob *job, Bytes *bytes)
{
  const char   *id = g_ptr_array_index (area->rooms, take (bytes, area->rooms->len));
  const RcRoom *room = rc_measure_find_room (measure, id);
  RcPinKind     kind = take (bytes, RC_N_PIN_KINDS);
  const RcRoll *roll = kind == RC_PIN_ROLL ? find_roll (job, area->carpet) : NULL;
  if (kind == RC_PIN_ROLL && roll == NULL)
    return;
  RcPin *pin = rc_pin_new (kind, id);
  guint  n = pin->kind == RC_PIN_SEAM    ? 2
             : pin->kind == RC_PIN_ROLL  ? 1
             : pin->kind == RC_PIN_SPLIT ? 1 + take (bytes, 4)
                                         : 3 + take (bytes, 2);
  for (guint i = 0; i < n; i++)
    {
      RcPoint point = take_point_in (room->outline, bytes);
      if (pin->kind == RC_PIN_SEAM && i == 1)
        switch (take (bytes, 3))
          {
          case 0:
            point.x = rc_ring_get (pin->points, 0)->x;
            break;
          case 1:
            point.y = rc_ring_get (pin->points, 0)->y;
            break;
          default:
            break; /* at any slope */
          }
      g_array_append_val (pin->points, point);
    }
  pin->roll = roll != NULL ? g_strdup (roll->id) : NULL;
  g_ptr_array_add (area->pins, pin);
}

static void
fill_areas (RcJob *job, Bytes *bytes)
{
  RcMeasure *measure = rc_job_get_measure (job, NULL);
  for (guint i = 0; i < measure->areas->len; i++)
    {
      RcFloorArea *area = g_ptr_array_index (measure->areas, i);
      if (i > 0 && take_chance (bytes, 2))
        {
          g_free (area->carpet);
          area->carpet = g_strdup ("second");
        }
      if (take_chance (bytes, 4))
        area->pile_degrees = 90 * (int)take (bytes, 4) + (take_chance (bytes, 4) ? (int)take (bytes, 90) : 0);
      for (guint k = take (bytes, 8); k > 4; k--)
        add_pin (area, measure, job, bytes);
    }
}

static void
add_stair (RcJob *job, Bytes *bytes)
{
  RcStair *stair = rc_stair_new ("stair", "Stair");
  stair->steps = 1 + take (bytes, 15);
  stair->rise = take_length (bytes, MM (100), MM (250));
  stair->going = take_length (bytes, MM (150), MM (400));
  stair->width = take_length (bytes, MM (300), MM (1500));
  stair->style = take_chance (bytes, 2) ? RC_STAIR_CAP_AND_BAND : RC_STAIR_WATERFALL;
  stair->cutting = take_chance (bytes, 2) ? RC_STAIR_PER_STEP : RC_STAIR_WHOLE_FLIGHT;
  stair->carpet = g_strdup ("carpet");
  if (take_chance (bytes, 3))
    stair->runner_width = take_length (bytes, 1, stair->width);
  g_ptr_array_add (rc_job_get_measure (job, NULL)->stairs, stair);
}

RcJob *
make_job_from_bytes (const guint8 *data, gsize size, RcPlanWeights *weights, guint64 *effort)
{
  static const guint64 efforts[] = { 0, 30, 100, 300 };
  Bytes                bytes = { data, size };
  RcJob               *job = make_job (FT (12));
  rc_settings_init (&job->settings, &job->currency);
  *effort = efforts[take (&bytes, G_N_ELEMENTS (efforts))];
  fill_carpet (g_ptr_array_index (job->goods, 0), &bytes);
  fill_carpet (add_carpet (job, "second"), &bytes);
  fill_settings (&job->settings, &bytes);
  fill_weights (weights, &bytes);
  add_rolls (job, &bytes);
  add_rooms (job, &bytes);
  fill_areas (job, &bytes);
  if (take_chance (&bytes, 4))
    add_stair (job, &bytes);
  return job;
}
