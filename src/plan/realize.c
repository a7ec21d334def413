#include "realize.h"

#include <math.h>

#include "option.h"
#include "pattern.h"
#include "rule.h"
#include "site-pins.h"

typedef struct
{
  const RcSite       *site;
  const RcAreaSearch *search;
  const RcAreaState  *state;
  RcOption           *option;
  RcMoney            *rules;   /* the option's rule_cost */
  guint               n_fills; /* joined fills so far */
  GArray             *first;   /* of guint: number of the first piece of each part, for the cell at hand */
} RcRealizing;

static RcPoint
to_house (const RcSite *site, RcPoint point)
{
  return rc_point_rotate (point, -site->turn_degrees);
}

static RcBox
box_to_house (const RcSite *site, RcBox box)
{
  RcPoint corners[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    corners[i] = to_house (site, corners[i]);
  g_autoptr (GArray) ring = rc_ring_new_from_points (corners, G_N_ELEMENTS (corners));
  return rc_ring_compute_box (ring);
}

static const char *
find_room_id (const RcSite *site, const RcRegion *outline)
{
  RcBox         box = rc_region_compute_box (outline);
  RcPoint       center = { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 };
  const RcRoom *room = rc_site_find_room (site, center);
  for (guint i = 0; room == NULL && i < outline->len; i++)
    {
      const RcPolygon *polygon = g_ptr_array_index (outline, i);
      for (guint k = 0; room == NULL && k < polygon->outer->len; k++)
        room = rc_site_find_room (site, *rc_ring_get (polygon->outer, k));
    }
  if (room == NULL && site->rooms->len > 0)
    room = ((RcSiteRoom *)g_ptr_array_index (site->rooms, 0))->placed->room;
  return room != NULL ? room->id : NULL;
}

static gboolean
add_piece (RcRealizing *r, guint cell, const RcPart *part, const RcBlock *block, guint fill, GError **error)
{
  const RcSite   *site = r->site;
  const RcGrid   *grid = rc_area_state_get_grid (r->state, cell);
  const RcRegion *floor = part->floor != NULL ? part->floor : rc_area_state_get_cell (r->state, cell)->cell->floor;
  g_autoptr (GPtrArray) outline = rc_region_intersect_box (floor, block->box, error);
  if (outline == NULL)
    return FALSE;

  RcBox    cut = rc_grid_get_cut_box (grid, site, part, block);
  RcPiece *piece = rc_piece_new (block->is_drop ? RC_PIECE_DROP : RC_PIECE_FILL);
  g_ptr_array_unref (piece->outline);
  piece->outline = rc_region_rotate (outline, -site->turn_degrees);
  piece->number = r->option->pieces->len + 1;
  piece->area = g_strdup (site->area->id);
  piece->room = g_strdup (find_room_id (site, outline));
  piece->goods = g_strdup (site->carpet->id);
  piece->cut_box = box_to_house (site, cut);
  piece->cut_start = to_house (site, (RcPoint){ cut.x0, cut.y0 });
  piece->pile_degrees = r->option->pile_degrees;
  piece->cut_width = block->cut_width;
  piece->cut_length = block->cut_length;
  piece->strip = part->strip;
  piece->fill = fill;
  RcNestCut place = rc_pattern_get_cut (site, grid, part, block);
  piece->repeat = place.repeat;
  piece->phase = place.phase;
  piece->across_repeat = place.across_repeat;
  piece->across_phase = place.across_phase;
  const RcSitePin *pin = rc_site_find_pinned_roll (site, outline);
  if (pin != NULL)
    {
      piece->roll = g_strdup (pin->pin->roll);
      piece->roll_pin = pin->index;
    }
  g_ptr_array_add (r->option->pieces, piece);

  *r->rules += rc_rules_weigh_piece (site, block->box, part->floor, part->seamed && !block->is_drop, fill > 0,
                                     r->option->broken);
  return TRUE;
}

static RcSeam *
add_seam (RcRealizing *r, RcSeamKind kind, RcPoint from, RcPoint to, guint piece_a, guint piece_b)
{
  const RcSite *site = r->site;
  RcSeam       *seam = rc_seam_new (kind, to_house (site, from), to_house (site, to));
  seam->length = rc_point_distance (from, to);
  seam->piece_a = piece_a;
  seam->piece_b = piece_b;
  seam->area = g_strdup (site->area->id);
  RcPoint        middle = { (from.x + to.x) / 2, (from.y + to.y) / 2 };
  const RcRoom  *room = rc_site_find_room (site, middle);
  const RcPiece *piece = g_ptr_array_index (r->option->pieces, piece_a - 1);
  seam->room = g_strdup (room != NULL ? room->id : piece->room);
  if (kind == RC_SEAM_SIDE)
    r->option->side_seam += seam->length;
  else
    r->option->cross_seam += seam->length;
  g_ptr_array_add (r->option->seams, seam);
  return seam;
}

static const RcLayout *
get_layout (const RcPart *part)
{
  return g_ptr_array_index (part->layouts, part->pick);
}

static void
add_cross_seams (RcRealizing *r, const RcGrid *grid, guint part_index)
{
  const RcPart   *part = g_ptr_array_index (grid->parts, part_index);
  const RcLayout *layout = get_layout (part);
  guint           first = g_array_index (r->first, guint, part_index);
  for (guint i = 0; i < layout->crosses->len; i++)
    {
      const RcCrossLine *line = &g_array_index (layout->crosses, RcCrossLine, i);
      RcPoint            from = { line->x0, line->y }, to = { line->x1, line->y };
      RcSeam            *seam = add_seam (r, RC_SEAM_CROSS, from, to, first + line->below, first + line->above);
      seam->side_ends = rc_grid_count_side_ends (grid, line);
      r->option->joins++;
      *r->rules += rc_rules_weigh_seam (r->site, RC_SEAM_CROSS, from, to, r->option->broken);
    }
  *r->rules += rc_rules_weigh_joins (r->site, layout->crosses->len, (RcPoint){ part->box.x0, part->box.y0 },
                                     r->option->broken);
}

/* One seam for each pair of pieces that lie beside each other along the line. */
static void
add_side_seams (RcRealizing *r, const RcGrid *grid, const RcSideLine *line)
{
  const RcLayout *left = get_layout (g_ptr_array_index (grid->parts, line->left));
  const RcLayout *right = get_layout (g_ptr_array_index (grid->parts, line->right));
  for (guint a = 0; a < left->blocks->len; a++)
    for (guint b = 0; b < right->blocks->len; b++)
      {
        const RcBox *p = &g_array_index (left->blocks, RcBlock, a).box;
        const RcBox *q = &g_array_index (right->blocks, RcBlock, b).box;
        RcLength     y0 = MAX (line->y0, MAX (p->y0, q->y0)), y1 = MIN (line->y1, MIN (p->y1, q->y1));
        if (y1 - y0 > RC_SLIVER) /* walls at an angle to the pile lie off by a tick where they turn */
          add_seam (r, RC_SEAM_SIDE, (RcPoint){ line->x, y0 }, (RcPoint){ line->x, y1 },
                    g_array_index (r->first, guint, line->left) + a, g_array_index (r->first, guint, line->right) + b);
      }
  *r->rules += rc_rules_weigh_seam (r->site, RC_SEAM_SIDE, (RcPoint){ line->x, line->y0 },
                                    (RcPoint){ line->x, line->y1 }, r->option->broken);
  for (guint a = 0; a < left->crosses->len; a++)
    for (guint b = 0; b < right->crosses->len; b++)
      {
        RcLength y_a = g_array_index (left->crosses, RcCrossLine, a).y;
        *r->rules += rc_rules_weigh_stagger (r->site, y_a, g_array_index (right->crosses, RcCrossLine, b).y,
                                             (RcPoint){ line->x, y_a }, r->option->broken);
      }
}

static gboolean
add_cell (RcRealizing *r, guint cell, GError **error)
{
  const RcGrid *grid = rc_area_state_get_grid (r->state, cell);
  g_array_set_size (r->first, 0);
  for (guint p = 0; p < grid->parts->len; p++)
    {
      const RcPart   *part = g_ptr_array_index (grid->parts, p);
      const RcLayout *layout = get_layout (part);
      guint           fill = layout->blocks->len > 1 ? ++r->n_fills : 0;
      guint           first = r->option->pieces->len + 1;
      g_array_append_val (r->first, first);
      for (guint b = 0; b < layout->blocks->len; b++)
        if (!add_piece (r, cell, part, &g_array_index (layout->blocks, RcBlock, b), fill, error))
          return FALSE;
    }
  for (guint p = 0; p < grid->parts->len; p++)
    add_cross_seams (r, grid, p);
  for (guint s = 0; s < grid->sides->len; s++)
    add_side_seams (r, grid, &g_array_index (grid->sides, RcSideLine, s));
  return TRUE;
}

/* The piece at a point of the frame, 0 for none. */
static guint
find_piece_at (const RcRealizing *r, RcPoint point)
{
  RcPoint in_house = to_house (r->site, point);
  for (guint i = 0; i < r->option->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (r->option->pieces, i);
      for (guint p = 0; p < piece->outline->len; p++)
        if (rc_polygon_locate (g_ptr_array_index (piece->outline, p), in_house) >= 0)
          return piece->number;
    }
  return 0;
}

/* The point a part t of the way along a line. */
static RcPoint
go_along (RcPoint from, RcPoint to, double t)
{
  return (RcPoint){ from.x + (RcLength)round (t * (double)(to.x - from.x)),
                    from.y + (RcLength)round (t * (double)(to.y - from.y)) };
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return x < y ? -1 : x > y;
}

/* How far along a line of the frame corners of pieces lie on it, from 0 to 1, sorted: there another piece may begin.
 * (transfer full) GArray of double. */
static GArray *
find_breaks (const RcRealizing *r, RcPoint from, RcPoint to)
{
  GArray *breaks = g_array_new (FALSE, FALSE, sizeof (double));
  double  ends[] = { 0, 1 }, length = MAX (1.0, (double)rc_point_distance (from, to));
  double  ux = (double)(to.x - from.x) / length, uy = (double)(to.y - from.y) / length;
  g_array_append_vals (breaks, ends, G_N_ELEMENTS (ends));
  for (guint i = 0; i < r->option->pieces->len; i++)
    {
      const RcPiece *piece = g_ptr_array_index (r->option->pieces, i);
      for (guint p = 0; p < piece->outline->len; p++)
        {
          const RcRing *ring = ((RcPolygon *)g_ptr_array_index (piece->outline, p))->outer;
          for (guint k = 0; k < ring->len; k++)
            {
              RcPoint at = rc_point_rotate (*rc_ring_get (ring, k), r->site->turn_degrees);
              double  dx = (double)(at.x - from.x), dy = (double)(at.y - from.y), along = dx * ux + dy * uy;
              if (fabs (dx * uy - dy * ux) > RC_SLIVER || along <= RC_SLIVER || along >= length - RC_SLIVER)
                continue;
              along /= length;
              g_array_append_val (breaks, along);
            }
        }
    }
  g_array_sort (breaks, compare_doubles);
  return breaks;
}

/* The seam across a doorway: one for each pair of pieces that meet in it. */
static void
add_doorway_seam (RcRealizing *r, RcPoint from, RcPoint to)
{
  gboolean along_pile = ABS (to.y - from.y) > ABS (to.x - from.x);
  double   width = MAX (1.0, (double)rc_point_distance (from, to)), begun = 0;
  RcPoint  nudge = { (RcLength)((double)(to.y - from.y) / width * 2 * RC_SLIVER),
                     (RcLength)((double)(from.x - to.x) / width * 2 * RC_SLIVER) };
  guint    before_a = 0, before_b = 0;
  g_autoptr (GArray) breaks = find_breaks (r, from, to);
  for (guint i = 0; i < breaks->len; i++)
    {
      double t = g_array_index (breaks, double, i);
      guint  a = 0, b = 0;
      if (i + 1 < breaks->len)
        {
          double  next = g_array_index (breaks, double, i + 1);
          RcPoint middle = go_along (from, to, (t + next) / 2);
          if ((next - t) * width <= 2 * RC_SLIVER)
            continue;
          a = find_piece_at (r, (RcPoint){ middle.x - nudge.x, middle.y - nudge.y });
          b = find_piece_at (r, (RcPoint){ middle.x + nudge.x, middle.y + nudge.y });
        }
      if (a == before_a && b == before_b)
        continue;
      if (before_a != 0 && before_b != 0 && before_a != before_b)
        add_seam (r, along_pile ? RC_SEAM_SIDE : RC_SEAM_CROSS, go_along (from, to, begun), go_along (from, to, t),
                  before_a, before_b);
      begun = t;
      before_a = a;
      before_b = b;
    }
}

static void
add_doorway_seams (RcRealizing *r)
{
  const GArray *doorways = rc_area_search_get_doorways (r->search);
  for (guint i = 0; i < doorways->len; i++)
    {
      RcPoint from, to;
      if (rc_doorway_get_seam (&g_array_index (doorways, RcDoorway, i), &from, &to))
        add_doorway_seam (r, from, to);
    }
}

RcOption *
rc_option_realize (const RcSite *site, const RcAreaSearch *search, double pile_degrees, const char *name,
                   GError **error)
{
  RcRealizing r = {
    .site = site,
    .search = search,
    .state = rc_area_search_get_state (search),
    .option = rc_option_new (name),
    .first = g_array_new (FALSE, FALSE, sizeof (guint)),
  };
  gboolean fine = TRUE;
  r.option->pile_degrees = pile_degrees;
  r.rules = &r.option->rule_cost;
  for (guint c = 0; fine && c < r.state->cells->len; c++)
    fine = add_cell (&r, c, error);
  if (fine)
    add_doorway_seams (&r);
  for (guint i = 0; i < r.option->broken->len; i++)
    {
      RcBrokenRule *broken = g_ptr_array_index (r.option->broken, i);
      broken->place = to_house (site, broken->place);
    }
  g_array_unref (r.first);
  if (!fine)
    g_clear_pointer (&r.option, rc_option_free);
  return r.option;
}
