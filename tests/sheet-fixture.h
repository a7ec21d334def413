/* A house of two storeys for the sheets' tests: planned, measured out and priced by the program itself.
 *
 * Ground floor: an L-shaped living room with a bay, a hall, a dining room a little wider than the roll, a closet.
 * Upper floor: two bedrooms. A straight stair. Two carpets, a remnant in stock.
 */
#pragma once

#include "sheet.h"

typedef struct
{
  RcJob       *job;
  RcPriceBook *book;
  RcPlan      *plan;
  GPtrArray   *quantities; /* of RcQuantityLine */
  RcQuote     *quote;
  GPtrArray   *orders; /* of RcOrder */
} RcSheetFixture;

RcSheetFixture *rc_sheet_fixture_new (RcUnitSystem units);
/* Every name as long as people write them, and an address of many lines. */
RcSheetFixture *rc_sheet_fixture_new_long_names (void);
/* `n` rooms of 12 by 15 ft in a grid, each an area of its own. */
RcSheetFixture *rc_sheet_fixture_new_building (guint n_rooms);
/* A measure without rooms. */
RcSheetFixture *rc_sheet_fixture_new_empty (void);
/* A long low house, drawn best on paper that lies on its side. */
RcSheetFixture *rc_sheet_fixture_new_wide (void);
/* One area with that many side seams: a hall 250 ft long. */
RcSheetFixture *rc_sheet_fixture_new_large (void);
/* Two rooms a foot wider than the roll, seams at next to no price and no rule against them: fills joined of several
 * pieces. */
RcSheetFixture *rc_sheet_fixture_new_joined_fills (void);
/* The house's job and the prices, to be changed before they are planned; `new_of` takes both over. */
RcJob          *rc_sheet_fixture_make_house (RcUnitSystem units);
RcPriceBook    *rc_sheet_fixture_make_book (void);
RcSheetFixture *rc_sheet_fixture_new_of (RcJob *job, RcPriceBook *book);
void            rc_sheet_fixture_free (RcSheetFixture *fixture);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcSheetFixture, rc_sheet_fixture_free)

/* What a sheet of that kind is drawn from. */
RcSheetData rc_sheet_fixture_get_data (const RcSheetFixture *fixture, RcPaper paper);

/* The words of a sheet as pdftotext reads them, spaces joined; NULL where there is no pdftotext. (transfer full) */
char *rc_sheet_fixture_dup_words (RcSheetKind kind, const RcSheetData *data);

/* Gives back what Pango and cairo keep of fonts until a program ends, so that a leak checker sees only our own. */
void rc_sheet_fixture_forget_fonts (void);
