#include "room-shape-kind.h"

#include <glib/gi18n-lib.h>

#include "room-edit.h"
#include "rowcut-error.h"

typedef enum
{
  WIDTH,
  LENGTH,
  CUT_WIDTH,
  CUT_LENGTH,
  BAY_WIDTH,
  BAY_DEPTH,
  BAY_FRONT,
} Size;

static const char *const SIZE_LABELS[] = { [WIDTH] = N_ ("Width"),
                                           [LENGTH] = N_ ("Length"),
                                           [CUT_WIDTH] = N_ ("Corner off, along the width"),
                                           [CUT_LENGTH] = N_ ("Corner off, along the length"),
                                           [BAY_WIDTH] = N_ ("Bay, opening"),
                                           [BAY_DEPTH] = N_ ("Bay, depth"),
                                           [BAY_FRONT] = N_ ("Bay, front") };

static const struct
{
  const char *label;
  guint       n_sizes;
  Size        sizes[RC_SHAPE_MAX_SIZES];
} SHAPES[RC_N_SHAPES] = {
  [RC_SHAPE_RECTANGLE] = { N_ ("Rectangle"), 2, { WIDTH, LENGTH } },
  [RC_SHAPE_L] = { N_ ("L"), 4, { WIDTH, LENGTH, CUT_WIDTH, CUT_LENGTH } },
  [RC_SHAPE_BAY] = { N_ ("With a bay"), 5, { WIDTH, LENGTH, BAY_WIDTH, BAY_DEPTH, BAY_FRONT } },
  [RC_SHAPE_L_BAY]
  = { N_ ("L with a bay"), 7, { WIDTH, LENGTH, CUT_WIDTH, CUT_LENGTH, BAY_WIDTH, BAY_DEPTH, BAY_FRONT } },
  [RC_SHAPE_ANGLED] = { N_ ("Angled corner"), 4, { WIDTH, LENGTH, CUT_WIDTH, CUT_LENGTH } },
};

const char *
rc_shape_get_label (RcShape shape)
{
  g_return_val_if_fail ((guint)shape < RC_N_SHAPES, "");
  return _ (SHAPES[shape].label);
}

guint
rc_shape_get_n_sizes (RcShape shape)
{
  g_return_val_if_fail ((guint)shape < RC_N_SHAPES, 0);
  return SHAPES[shape].n_sizes;
}

const char *
rc_shape_get_size_label (RcShape shape, guint size)
{
  g_return_val_if_fail ((guint)shape < RC_N_SHAPES && size < SHAPES[shape].n_sizes, "");
  return _ (SIZE_LABELS[SHAPES[shape].sizes[size]]);
}

static gboolean
fail (Size size, GError **error, const char *message)
{
  g_set_error (error, RC_ERROR, RC_ERROR_GEOMETRY, "%s: %s", _ (SIZE_LABELS[size]), message);
  return FALSE;
}

static gboolean
check (RcShape shape, const RcLength *by_size, GError **error)
{
  for (guint i = 0; i < SHAPES[shape].n_sizes; i++)
    {
      Size size = SHAPES[shape].sizes[i];
      if (by_size[size] <= 0)
        return fail (size, error, _ ("type a length"));
      if (by_size[size] > RC_ROOM_MAX_SIDE)
        return fail (size, error, _ ("no wall is longer than 1 km"));
    }
  if (by_size[CUT_WIDTH] >= by_size[WIDTH])
    return fail (CUT_WIDTH, error, _ ("must be less than the width"));
  if (by_size[CUT_LENGTH] >= by_size[LENGTH])
    return fail (CUT_LENGTH, error, _ ("must be less than the length"));
  if (by_size[BAY_WIDTH] > by_size[WIDTH])
    return fail (BAY_WIDTH, error, _ ("must not be more than the width"));
  if (by_size[BAY_FRONT] > by_size[BAY_WIDTH])
    return fail (BAY_FRONT, error, _ ("must not be more than the bay's opening"));
  return TRUE;
}

static void
add_corner (RcRing *ring, RcLength x, RcLength y)
{
  RcPoint point = { x, y };
  if (ring->len == 0 || rc_point_distance (*rc_ring_get (ring, ring->len - 1), point) > 0)
    g_array_append_val (ring, point);
}

static void
add_north_east (RcRing *ring, RcShape shape, const RcLength *by_size)
{
  RcLength w = by_size[WIDTH], l = by_size[LENGTH], cut_w = by_size[CUT_WIDTH], cut_l = by_size[CUT_LENGTH];

  add_corner (ring, w - cut_w, l);
  if (shape == RC_SHAPE_L || shape == RC_SHAPE_L_BAY)
    add_corner (ring, w - cut_w, l - cut_l);
  add_corner (ring, w, l - cut_l);
}

static void
add_bay (RcRing *ring, const RcLength *by_size)
{
  RcLength w = by_size[WIDTH], opening = by_size[BAY_WIDTH], front = by_size[BAY_FRONT];
  RcLength start = (w - opening) / 2, slant = (opening - front) / 2;

  add_corner (ring, start + opening, 0);
  add_corner (ring, start + slant + front, -by_size[BAY_DEPTH]);
  add_corner (ring, start + slant, -by_size[BAY_DEPTH]);
  add_corner (ring, start, 0);
}

gboolean
rc_shape_build (RcShape shape, const RcLength *sizes, RcRoom *room, GError **error)
{
  RcLength by_size[G_N_ELEMENTS (SIZE_LABELS)] = { 0 };

  g_return_val_if_fail ((guint)shape < RC_N_SHAPES, FALSE);
  for (guint i = 0; i < SHAPES[shape].n_sizes; i++)
    by_size[SHAPES[shape].sizes[i]] = sizes[i];
  if (!check (shape, by_size, error))
    return FALSE;
  g_array_set_size (room->walls, 0);
  g_array_set_size (room->outline, 0);
  g_ptr_array_set_size (room->openings, 0);
  g_ptr_array_set_size (room->cutouts, 0);
  g_array_set_size (room->diagonals, 0);
  add_corner (room->outline, 0, 0);
  add_corner (room->outline, 0, by_size[LENGTH]);
  add_north_east (room->outline, shape, by_size);
  add_corner (room->outline, by_size[WIDTH], 0);
  if (by_size[BAY_WIDTH] > 0)
    add_bay (room->outline, by_size);
  if (rc_point_distance (*rc_ring_get (room->outline, 0), *rc_ring_get (room->outline, room->outline->len - 1)) == 0)
    g_array_set_size (room->outline, room->outline->len - 1);
  rc_room_edit_make_walls (room);
  return TRUE;
}
