/* Plans put together by hand, for tests of what follows from a plan: no planner and no nester is asked. */
#pragma once

#include "plan.h"

/* Feet, and feet and inches, in ticks. */
#define FT(feet)             ((RcLength)(feet)*RC_TICKS_PER_FOOT)
#define FT_IN(feet, inches)  (FT (feet) + (RcLength)((inches)*RC_TICKS_PER_INCH))
#define M(metres_hundredths) ((RcLength)(metres_hundredths)*RC_TICKS_PER_CM) /* M (366) is 3.66 m */

/* A job in US dollars, imperial, with one empty measure. */
RcJob *build_job (RcUnitSystem units);

/* Goods added to the job (borrowed). */
RcGoods *build_carpet (RcJob *job, const char *id, RcLength roll_width, RcUnit unit);
RcGoods *build_goods (GPtrArray *list, RcGoodsKind kind, const char *id, RcUnit unit, gint64 pack_micro,
                      RcUnit pack_unit);

/* A room of four walls, the first `length` going north, the second `width` going east; added to the job's last measure
 * and placed at x, 0. */
RcRoom *build_room (RcJob *job, const char *id, const char *name, RcLength width, RcLength length, RcLength x);

/* A room given by its corners. */
RcRoom *build_outline_room (RcJob *job, const char *id, const char *name, const RcPoint *points, guint n_points);

RcOpening *build_opening (RcRoom *room, const char *id, RcOpeningKind kind, guint wall, RcLength offset,
                          RcLength width);

/* An area of the rooms named, NULL at the end. */
RcFloorArea *build_area (RcJob *job, const char *id, const char *carpet, ...) G_GNUC_NULL_TERMINATED;

RcStair *build_stair (RcJob *job, const char *id, guint steps, RcLength rise, RcLength going, RcLength width,
                      RcStairStyle style);

/* The plan of the job's last measure with its house and floors, and no pieces, seams, cuttings. Aborts where the house
 * cannot be put together. */
RcPlan *build_plan (const RcJob *job);
void    build_plan_free (RcPlan *plan);

RcPiece *build_piece (RcPlan *plan, RcPieceKind kind, const char *area, const char *room, const char *goods,
                      RcLength width, RcLength length);
RcSeam  *build_seam (RcPlan *plan, RcSeamKind kind, const char *area, const char *room, RcLength length, guint piece_a,
                     guint piece_b, guint side_ends);

/* A cutting of a carpet; then rolls taken from stock (id not NULL) or bought; then pieces placed on the last roll, one
 * behind the other. */
RcCutting  *build_cutting (RcPlan *plan, const RcGoods *carpet);
RcNestRoll *build_roll (RcCutting *cutting, const char *id, RcLength used, RcLength length);
void        build_placement (RcCutting *cutting, const RcPiece *piece, RcLength across, RcLength along);

/* The published joined fill (hasslefreeflooring.com): a room of 15 by 20 ft from a roll of 12 ft: one drop of 12 x 20,
 * three fills of 4 x 7 cut side by side, 27 running feet, a side seam of 20 ft and two cross seams of 4 ft. Carpet
 * "twist" in sq yd. *job is to be freed after the plan. */
RcPlan *build_joined_fill (RcJob **job);
