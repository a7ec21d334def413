#include "fitters-words.h"

#include <glib/gi18n-lib.h>

#include "length.h"

const char *const RC_FITTERS_CAUTIONS[] = {
  /* Neutral wording throughout: what is law differs from place to place. */
  N_ ("Local codes, the makers’ instructions and safety data sheets, and work reserved to licensed trades come before "
      "this sheet. Where they differ from it, follow them. Keep the data sheets of adhesives and sealers on site."),
  /* 29 CFR 1926.1101 summaries; UFGS 13280A; recognition: Plant Engineering, 2000. */
  N_ ("Old floor coverings, adhesives and felts may hold asbestos. It cannot be told from looks, size or date; only a "
      "laboratory can say. In the United States resilient flooring and mastic in buildings built no later than 1980 "
      "are presumed to hold it unless shown otherwise. Do not sand, dry sweep or chip. Stop, keep others away, and "
      "ask: "
      "removal may be work for licensed people under local rules."),
  /* EPA final rule 2008 (73 FR 21692). */
  N_ ("Old paint may hold lead. In the United States work that disturbs paint in housing built before 1978 falls under "
      "the renovation rule; elsewhere ask what the local rules are before removing skirtings or scraping."),
  /* NIOSH Alert 90-104 (1990); CRI 105:2019 p. 37. */
  N_ ("Wear knee pads. Stretch with the power stretcher; use the knee kicker only to position carpet or to hook an "
      "edge."),
  /* CRI 2015 10.3.1; the rest is general safety. */
  N_ ("Hot-melt seams: ventilate the fumes, use the heat shield. Rest the iron on its stand, unplug it when it is not "
      "in hand."),
  /* General safety; eye protection: Litchfield. */
  N_ ("Cut away from the body, cover blades, collect used ones. Wear eye protection when driving nails, above all into "
      "masonry."),
  /* CPSC documents 450, 454. */
  N_ ("Bring in fresh air and run exhaust during the work and for 48 to 72 hours after it. Occupants may prefer to be "
      "away."),
  /* How-to pages. */
  N_ ("A loose stair carpet is a fall hazard: close the stair until each step is fixed, or fix it from step to step as "
      "you go."),
  NULL,
};

const char *const RC_FITTERS_SITE_CHECKS[] = {
  /* Common practice, no source. */
  N_ ("Walk the rooms with the seam plan and the customer’s approval of it. Measure each room again before cutting "
      "anything: a wall longer than the plan by more than the trim allowance stops the work; call the shop."),
  /* Dye lot per area: CRI 104/105 layout clause, from memory; flaws: common practice. */
  N_ ("Compare the goods with the cut list: name, dye lot, roll number, length. Look for flaws before the first cut. "
      "One "
      "dye lot only in an area."),
  /* CRI 105:2019 7.2 p. 13; CRI 2015 12.7.3. */
  N_ ("Climate from 48 hours before until 72 hours after: 65 to 95 °F (18 to 35 °C), relative humidity at most 65 %, a "
      "slab at least 65 °F (18 °C)."),
  /* nficnet.com, guidelines for tufted and woven wools. */
  N_ ("Let carpet and cushion lie in the rooms for 24 to 48 hours, cut and unrolled where there is space."),
  /* Common practice, no source; joints: CRI 2011 6.4. */
  N_ ("The floor must be clean, dry, sound and level. Fix loose boards, fill hollows. Do not carpet over expansion "
      "joints. Look where pipes and cables run before nailing."),
  /* Common practice, no source. */
  N_ ("Take doors off that open over the carpet and see that they will clear it."),
  NULL,
};

const char *const RC_FITTERS_STRIP[] = {
  /* CRI 2015 11.1 (gully, fasteners, doorways, pins); the smallest strip is 1 in by 1/4 in. */
  N_ ("Strip along walls and cut-outs, pins leaning to the wall, with a gully slightly less than the carpet’s "
      "thickness "
      "and at most 3/8 in (9 mm). At least two fasteners in every piece, however short."),
  N_ ("No strip across door openings or sills. Pins must not come through the carpet."),
  NULL,
};

const char *const RC_FITTERS_CUSHION[] = {
  /* CRI 2015 13.1 p. 27 (Barré for widths). */
  N_ ("Cushion in the longest lengths that fit, up to the strip and not on it, joints tight and taped. Its joints run "
      "at "
      "right angles to the carpet’s seams or at least 6 in (150 mm) beside them."),
  NULL,
};

const char *const RC_FITTERS_GLUE[] = {
  /* CRI 2015 12.2 and 13.8; makers’ open times differ. */
  N_ ("Dry-lay all pieces of the area first, seams cut and closed, then fold back half. Spread adhesive with the notch "
      "its "
      "maker names, replace worn notches, keep to its open time."),
  N_ ("Lay into the adhesive from the seam outwards, seal the cut edge as the second piece meets it, roll the whole "
      "area, and keep traffic off as the maker says."),
  NULL,
};

const char *const RC_FITTERS_SEAMS[] = {
  /* Common practice, no source; row cut: CRI, glossary. */
  N_ ("Trim the roll’s side edges first, along a row of tufts, on every edge that will be joined. Keep the pile of "
      "every "
      "piece leaning as the arrows show."),
  /* Common practice, no source. */
  N_ ("Cross seams come before side seams: a drop or fill of several pieces is joined end to end first, then "
      "joined to its neighbour by one side seam. Cross seams in doorways, between what is ready in two rooms, come "
      "last."),
  /* Common practice, no source. */
  N_ ("At a cross seam cut the edge over which the pile leans out first (the table says whose). Lay it over its "
      "neighbour "
      "with its pile pulled back, mark the neighbour from it, then cut the neighbour: pile nicked by the second cut "
      "falls off with the waste."),
  /* Common practice, no source. */
  N_ ("Mark the second edge from the first in as many places as the table says, both pieces pulled up tight to the "
      "main "
      "piece."),
  /* CRI 2015 13.7 p. 25; bead: CRI 105 extract. */
  N_ ("Seal both edges of every seam, the bead thick enough to cover both backings, before they meet."),
  /* CRI 2015 10.3.1 p. 17; setback: common practice, no source. */
  N_ ("Centre the tape under the seam. Under a cross seam it stops half its width short of the edge that will meet a "
      "side "
      "seam, so that the side seam’s own tape does not lie over it: the table gives the length to cut."),
  /* CRI 2015 10.3.1; against the pile: common practice, no source. */
  N_ ("Run the iron with the pile where you can. Where it must run against the pile, lift the weight and set it down; "
      "never drag it."),
  /* Common practice, no source. */
  N_ ("Leave a seam until the tape has set; with a cooling tool it can be handled after about 20 seconds."),
  NULL,
};

const char *const RC_FITTERS_STRETCH[] = {
  /* CRI 2011 16.5 p. 18; maker’s bulletin: 1 to 1 1/2 %; across a seam less: nficnet.com. */
  /* xgettext:no-c-format */
  N_ ("Stretch with the power stretcher at least 1 % in length and in width, or as the maker says; less across a seam. "
      "The table gives 1 % of each room in inches or millimetres."),
  /* Common practice, no source. */
  N_ ("Hook, stretch, trim to the wall, tuck into the gully. Fit the transitions last."),
  NULL,
};

const char *const RC_FITTERS_FINISH[] = {
  /* CRI 2015 12.7.2. */
  N_ ("Do not cover the new carpet with plastic film: it is slippery, holds moisture, and self-adhering film may leave "
      "residue. Paper or board is better where others still work."),
  /* Common practice, no source. */
  N_ ("Trim loose tufts with scissors, never pull. Vacuum. Rehang doors. Leave useful remnants with the customer "
      "unless "
      "agreed otherwise, and take waste, blades and strip ends away."),
  /* Common practice, no source. */
  N_ ("Walk the rooms with the customer, seams included. Note here what was done differently from this sheet:"),
  NULL,
};

guint
rc_fitters_get_n_marks (gint64 width_ticks)
{
  /* Half way between 1 1/2 and 4 ft, then in steps of the same 2 1/2 ft. */
  const gint64 middle = RC_TICKS_PER_INCH * 33, step = RC_TICKS_PER_INCH * 30;

  if (width_ticks < middle)
    return 2;

  return (guint)(3 + (width_ticks - middle) / step);
}
