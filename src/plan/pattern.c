#include "pattern.h"

RcLength
rc_pattern_compute_across_repeat (const RcGoods *carpet, RcLength strip_width)
{
  RcLength roll_width = rc_goods_get_usable_width (carpet);
  RcLength repeat = carpet->repeat_width;
  gint64   denominator = rc_match_get_denominator (carpet->match);
  if (carpet->match == RC_MATCH_SET || carpet->repeat_length == 0)
    return MIN (repeat, roll_width);
  if (repeat == 0 || repeat > roll_width)
    return roll_width;
  gint64   n_repeats = strip_width / repeat;
  gboolean diagonal = (n_repeats - 1) * rc_match_get_numerator (carpet->match) % denominator == 0;
  return diagonal && repeat < roll_width / denominator ? repeat * denominator : roll_width;
}

RcPoint
rc_pattern_find_place (const RcSite *site, const RcGrid *grid, const RcPart *part, const RcBlock *block)
{
  RcBox    cut = rc_grid_get_cut_box (grid, site, part, block);
  RcLength strip_x0 = grid->first + site->strip_width * part->strip;
  RcLength drop = rc_goods_compute_drop (site->carpet, rc_grid_get_step (grid, site, part->strip));
  RcPoint  place = { 0, 0 };
  if (site->across_repeat > 0)
    place.x = rc_wrap (cut.x0 - strip_x0, site->across_repeat);
  if (site->repeat > 0)
    place.y = rc_wrap (cut.y0 + drop, site->repeat);
  return place;
}
