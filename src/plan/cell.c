#include "cell.h"

#include "edge-merge.h"

/* How far into the wall, in halves of its depth, the carpet of the opening's first room runs. */
static int
get_first_halves (RcParting parting)
{
  switch (parting)
    {
    case RC_PARTING_FIRST_FACE:
      return 0;
    case RC_PARTING_MIDDLE:
      return 1;
    default:
      return 2;
    }
}

static gboolean
may_run_through (const RcSiteOpening *opening)
{
  RcArea smaller
      = MIN (rc_polygon_compute_area (opening->room->polygon), rc_polygon_compute_area (opening->other->polygon));
  return opening->opening->width >= RC_RUN_THROUGH_WIDTH || smaller <= RC_CLOSET_AREA;
}

GArray *
rc_site_find_doorways (const RcSite *site)
{
  GArray *doorways = g_array_new (FALSE, FALSE, sizeof (RcDoorway));
  for (guint i = 0; i < site->doors->len; i++)
    {
      RcDoorway doorway = { g_array_index (site->doors, RcSiteOpening, i), RC_PARTING_MIDDLE, FALSE };
      if (doorway.opening.other != NULL && rc_site_has_room (site, doorway.opening.room)
          && rc_site_has_room (site, doorway.opening.other))
        {
          doorway.may_run_through = may_run_through (&doorway.opening);
          g_array_append_val (doorways, doorway);
        }
    }
  return doorways;
}

gboolean
rc_doorway_get_seam (const RcDoorway *doorway, RcPoint *from, RcPoint *to)
{
  if (doorway->parting == RC_PARTING_NONE)
    return FALSE;
  int halves = get_first_halves (doorway->parting);
  *from = rc_site_opening_get_from (&doorway->opening, halves);
  *to = rc_site_opening_get_to (&doorway->opening, halves);
  return TRUE;
}

void
rc_cell_free (RcCell *cell)
{
  if (cell == NULL)
    return;
  g_free (cell->key);
  g_clear_pointer (&cell->floor, g_ptr_array_unref);
  g_free (cell);
}

/* G_MAXUINT where the room is not of the area. */
static guint
find_index (const RcSite *site, const RcPlacedRoom *room)
{
  for (guint i = 0; i < site->rooms->len; i++)
    if (((RcSiteRoom *)g_ptr_array_index (site->rooms, i))->placed == room)
      return i;
  return G_MAXUINT;
}

/* groups[i]: the first room of the cell that room i lies in. */
static void
find_groups (const RcSite *site, const GArray *doorways, guint *groups)
{
  for (guint i = 0; i < site->rooms->len; i++)
    groups[i] = i;
  for (guint d = 0; d < doorways->len; d++)
    {
      const RcDoorway *doorway = &g_array_index (doorways, RcDoorway, d);
      if (doorway->parting != RC_PARTING_NONE)
        continue;
      guint room = find_index (site, doorway->opening.room), other = find_index (site, doorway->opening.other);
      g_assert (MAX (room, other) < site->rooms->len); /* a doorway lies between two of the site's */
      guint a = groups[room], b = groups[other];
      for (guint i = 0; i < site->rooms->len; i++)
        if (groups[i] == MAX (a, b))
          groups[i] = MIN (a, b);
    }
}

/* What of the opening's wall belongs to the cell of `group`: halves from .. to of the depth. */
static gboolean
find_sill (const RcSite *site, const RcSiteOpening *opening, const GArray *doorways, const guint *groups, guint group,
           int *from, int *to)
{
  guint    first = find_index (site, opening->room);
  guint    other = opening->other != NULL ? find_index (site, opening->other) : G_MAXUINT;
  gboolean has_first = first != G_MAXUINT && groups[first] == group;
  gboolean has_other = other != G_MAXUINT && groups[other] == group;
  if ((!has_first && !has_other) || opening->blocked)
    return FALSE;

  int parted_at = 1; /* out of the area: half the depth, under the closed door */
  for (guint d = 0; d < doorways->len; d++)
    {
      const RcDoorway *doorway = &g_array_index (doorways, RcDoorway, d);
      if (doorway->opening.opening == opening->opening)
        parted_at = get_first_halves (doorway->parting);
    }
  *from = has_first ? 0 : parted_at;
  *to = has_other ? 2 : parted_at;
  return *from < *to;
}

static char *
make_key (const RcSite *site, const GArray *doorways, const guint *groups, guint group)
{
  GString *key = g_string_new (NULL);
  for (guint i = 0; i < site->rooms->len; i++)
    if (groups[i] == group)
      g_string_append_printf (key, "%u,", i);
  for (guint d = 0; d < site->doors->len; d++)
    {
      int from, to;
      if (find_sill (site, &g_array_index (site->doors, RcSiteOpening, d), doorways, groups, group, &from, &to))
        g_string_append_printf (key, "%u:%d-%d,", d, from, to);
    }
  return g_string_free (key, FALSE);
}

/* Of the cell's floor in the making, the ring round that room; NULL when the room is of another cell. */
static RcRing *
find_outer (const RcSite *site, const RcRegion *parts, const guint *groups, guint group, const RcPlacedRoom *room)
{
  guint index = find_index (site, room), before = 0;
  if (index == G_MAXUINT || groups[index] != group)
    return NULL;
  for (guint i = 0; i < index; i++)
    before += groups[i] == group;
  return ((RcPolygon *)g_ptr_array_index (parts, before))->outer;
}

/* The floor inside the wall between `from_halves` and `to_halves` of its depth. Where it meets the rings round its
 * rooms (nullable) its corners become theirs: turned and rounded it would stand off a sloping wall by a hair. NULL when
 * it has no area. */
static RcPolygon *
new_sill (const RcSiteOpening *opening, int from_halves, int to_halves, RcRing *room, RcRing *other)
{
  RcPoint points[] = {
    rc_site_opening_get_from (opening, from_halves),
    rc_site_opening_get_to (opening, from_halves),
    rc_site_opening_get_to (opening, to_halves),
    rc_site_opening_get_from (opening, to_halves),
  };
  RcPolygon *sill = rc_polygon_new ();
  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    {
      RcRing *ring = i < 2 ? room : other;
      if (ring != NULL)
        rc_ring_insert_corner (ring, &points[i]);
    }
  g_array_append_vals (sill->outer, points, G_N_ELEMENTS (points));
  rc_polygon_normalize (sill);
  if (sill->outer->len < 3 || rc_polygon_compute_area (sill) == 0)
    {
      rc_polygon_free (sill);
      return NULL;
    }
  return sill;
}

static RcRegion *
make_floor (const RcSite *site, const GArray *doorways, const guint *groups, guint group, GError **error)
{
  g_autoptr (GPtrArray) parts = rc_region_new (), nothing = rc_region_new ();
  for (guint i = 0; i < site->rooms->len; i++)
    if (groups[i] == group)
      g_ptr_array_add (parts, rc_polygon_copy (((RcSiteRoom *)g_ptr_array_index (site->rooms, i))->polygon));
  for (guint d = 0; d < site->doors->len; d++)
    {
      const RcSiteOpening *opening = &g_array_index (site->doors, RcSiteOpening, d);
      int                  from, to;
      RcPolygon           *sill = NULL;
      if (find_sill (site, opening, doorways, groups, group, &from, &to))
        sill = new_sill (opening, from, to, from == 0 ? find_outer (site, parts, groups, group, opening->room) : NULL,
                         to == 2 && opening->other != NULL ? find_outer (site, parts, groups, group, opening->other)
                                                           : NULL);
      if (sill != NULL)
        g_ptr_array_add (parts, sill);
    }
  return rc_region_union (parts, nothing, error);
}

GPtrArray *
rc_cells_new (const RcSite *site, const GArray *doorways, GHashTable *known, GError **error)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_cell_free);
  g_autofree guint *groups = g_new (guint, site->rooms->len);
  find_groups (site, doorways, groups);
  for (guint i = 0; i < site->rooms->len; i++)
    {
      if (groups[i] != i)
        continue;
      RcCell *cell = g_new0 (RcCell, 1);
      g_ptr_array_add (cells, cell);
      cell->key = make_key (site, doorways, groups, i);
      if (g_hash_table_contains (known, cell->key))
        continue;
      cell->floor = make_floor (site, doorways, groups, i, error);
      if (cell->floor == NULL)
        return NULL;
    }
  return g_steal_pointer (&cells);
}
