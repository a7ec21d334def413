#include "pattern.h"

RcLength
rc_pattern_compute_across_repeat (const RcGoods *carpet)
{
  RcLength roll_width = rc_goods_get_usable_width (carpet);
  RcLength repeat = carpet->repeat_width;
  gint64   denominator = rc_match_get_denominator (carpet->match);
  if (carpet->match == RC_MATCH_SET || carpet->repeat_length == 0)
    return MIN (repeat, roll_width);
  if (repeat == 0 || repeat > roll_width)
    return roll_width;
  gint64   n_repeats = rc_goods_compute_matching_width (carpet) / repeat;
  gboolean diagonal = (n_repeats - 1) * rc_match_get_numerator (carpet->match) % denominator == 0;
  return diagonal && repeat < roll_width / denominator ? repeat * denominator : roll_width;
}

RcNestCut
rc_pattern_get_cut (const RcSite *site, const RcGrid *grid, const RcPart *part, const RcBlock *block)
{
  RcNestCut cut = { .width = block->cut_width, .length = block->cut_length, .quantity = 1 };
  if (site->repeat == 0 && site->across_repeat == 0)
    return cut;
  RcBox    box = rc_grid_get_cut_box (grid, site, part, block);
  RcLength strip_x0 = grid->first + site->strip_width * part->strip;
  RcLength drop = rc_goods_compute_drop (site->carpet, rc_grid_get_step (grid, site, part->strip));
  cut.repeat = site->repeat;
  cut.phase = site->repeat > 0 ? rc_wrap (box.y0 + drop, site->repeat) : 0;
  cut.match = site->repeat > 0 ? site->area->id : NULL;
  cut.across_repeat = site->across_repeat;
  cut.across_phase = site->across_repeat > 0 ? rc_wrap (box.x0 - strip_x0, site->across_repeat) : 0;
  return cut;
}
