/* Ranges of strip lines over rooms with walls out of square by a hair, or sloping: what a range says of its parts and
 * their steps is no more than floor at any of its positions. */
#include "line-range.h"
#include "plan-maker.h"
#include "range-price.h"
#include "rounds.h"
#include "strip.h"

/* A room of bays between two walls, each as deep as it happens; every corner off by up to so much. */
static void
add_room (RcJob *job, GRand *rand, RcLength off)
{
  guint n = (guint)g_rand_int_range (rand, 1, 5);
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (RcPoint));
  RcLength x = 0;
  for (guint upper = 0; upper < 2; upper++)
    for (guint i = 0; i < n; i++)
      {
        int      inches = 2 * g_rand_int_range (rand, 0, 80) + (int)(i % 2); /* neighbours differ */
        RcLength depth = upper ? IN (60 + inches) : -IN (inches);
        RcLength next = x + (upper ? -1 : 1) * IN (70);
        RcPoint  ends[] = { { x, depth }, { next, depth } };
        for (guint k = 0; k < 2; k++)
          {
            ends[k].x += g_rand_int_range (rand, 0, (gint32)off + 1);
            ends[k].y += g_rand_int_range (rand, 0, (gint32)off + 1);
          }
        g_array_append_vals (points, ends, 2);
        x = next;
      }
  add_outline (job, "room", (RcPoint *)points->data, points->len, "area");
}

/* The part of the strip that holds the middle of the box; else the one nearest to it. */
static RcBox
find_slice (const GArray *slices, const RcBox *like)
{
  RcBox    best = { 0 };
  RcLength most = G_MININT64;
  for (guint i = 0; i < slices->len; i++)
    {
      const RcBox *box = &g_array_index (slices, RcStripPart, i).box;
      RcLength     both = MIN (box->y1, like->y1) - MAX (box->y0, like->y0);
      if (both <= most)
        continue;
      most = both;
      best = *box;
    }
  return best;
}

/* From the leftmost floor at the step's middle to the rightmost, in the strip. */
static RcLength
measure_step (const RcRegion *floor, const RcRangeStep *step, RcLength x0, RcLength x1)
{
  g_autoptr (GArray) inside = rc_region_cross_line_y (floor, (step->y0 + step->y1) / 2, x0, x1);
  if (inside->len == 0)
    return 0;
  return g_array_index (inside, RcInterval, inside->len - 1).to - g_array_index (inside, RcInterval, 0).from;
}

static void
check_range_at (const RcSite *site, const RcRegion *floor, const RcLineRange *range, RcLength moved)
{
  RcLength width = site->strip_width, middle = range->from + (range->to - range->from) / 2;
  for (guint i = 0; i < range->parts->len; i++)
    {
      const RcRangePart *part = &g_array_index (range->parts, RcRangePart, i);
      RcLength at = part->box.x0 - rc_wrap (part->box.x0 - middle, width), wide = part->width + part->slope * moved;
      RcLength x0 = at + range->from + moved - middle;
      g_autoptr (GArray) slices = rc_region_slice (floor, x0, x0 + width);
      RcBox own = find_slice (slices, &part->box);
      if (wide > RC_SLIVER)
        {
          g_assert_cmpint (wide, <=, own.x1 - own.x0);
          g_assert_cmpint (part->length, <=, own.y1 - own.y0);
        }
      for (guint s = 0; s < part->n_steps; s++)
        {
          const RcRangeStep *step = &g_array_index (range->steps, RcRangeStep, part->first_step + s);
          RcLength           of_step = rc_range_get_step_width (step, moved);
          g_assert_cmpint (of_step, >=, 0);
          if (of_step > RC_SLIVER && step->y1 - step->y0 > RC_SLIVER)
            g_assert_cmpint (of_step, <=, measure_step (floor, step, x0, x0 + width));
        }
    }
}

static void
check_room (GRand *rand, RcLength off)
{
  g_autoptr (RcJob) job = make_job (g_rand_boolean (rand) ? FT (12) : FT (5) + 7);
  add_room (job, rand, off);
  rc_settings_init (&job->settings, &job->currency);
  g_autoptr (GError) error = NULL;
  g_autoptr (RcHouse) house = rc_house_new (rc_job_get_measure (job, NULL), &job->settings.closure, &error);
  g_assert_no_error (error);
  const RcGoods *carpet = g_ptr_array_index (job->goods, 0);
  RcPlanWeights  weights;
  plain_weights (carpet, &weights, NULL);
  g_autoptr (RcSite) site
      = rc_site_new (job, house, get_area (job, "area"), carpet, &weights, 90.0 * g_rand_int_range (rand, 0, 4));
  g_autoptr (GPtrArray) floor = g_ptr_array_new_with_free_func ((GDestroyNotify)rc_polygon_free);
  g_ptr_array_add (floor, rc_polygon_copy (((RcSiteRoom *)g_ptr_array_index (site->rooms, 0))->polygon));
  g_autoptr (GPtrArray) ranges = rc_line_ranges_new (site, floor);
  g_assert_cmpuint (ranges->len, >, 0);
  for (guint i = 0; i < ranges->len; i++)
    {
      const RcLineRange *range = g_ptr_array_index (ranges, i);
      RcLength           reach = range->to - range->from;
      check_range_at (site, floor, range, 0);
      check_range_at (site, floor, range, reach);
      check_range_at (site, floor, range, g_rand_int_range (rand, 0, (gint32)reach + 1));
    }
}

static void
check_rooms (RcLength off)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32)g_test_rand_int ());
  guint n = g_test_slow () ? 20000 : scale_rounds (200);
  for (guint round = 0; round < n; round++)
    check_room (rand, off);
}

static void
test_askew (void)
{
  check_rooms (12);
}

static void
test_sloping (void)
{
  check_rooms (RC_TICKS_PER_INCH - 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/ranges/walls out of square by a hair", test_askew);
  g_test_add_func ("/plan/ranges/sloping walls", test_sloping);
  return g_test_run ();
}
