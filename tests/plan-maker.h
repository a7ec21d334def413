/* Small jobs for tests, made by hand. */
#pragma once

#include "plan.h"

/* A job in US dollars with one carpet "carpet" of that roll width, no trim, no cost on any rule. */
RcJob *make_job (RcLength roll_width);

/* Adds a rectangular room with its lower left corner at x, y; and (area not NULL) puts it into that area, made when it
 * is not there. */
RcRoom *add_rectangle (RcJob *job, const char *id, RcLength x, RcLength y, RcLength width, RcLength length,
                       const char *area);

/* Adds a room by its outline. */
RcRoom *add_outline (RcJob *job, const char *id, const RcPoint *points, guint n_points, const char *area);

RcFloorArea *get_area (RcJob *job, const char *area);

/* A door in edge `wall` of the room. */
RcOpening *add_door (RcRoom *room, const char *id, guint wall, RcLength offset, RcLength width, RcLength depth,
                     const char *to_room);

/* 10.00 a metre of carpet, 1.00 a metre of side seam, 1.50 a metre of cross seam and 2.00 each. */
void plain_weights (const RcGoods *carpet, RcPlanWeights *weights, gpointer user_data);

/* Plans the job's last measure, failing the test on error. */
RcPlan *make_plan (const RcJob *job);
RcPlan *make_plan_within (const RcJob *job, double seconds); /* counted in work: the same plan on a busy machine */

const RcOption *find_option (const RcPlan *plan, guint area, const char *name);

#define FT(n) ((RcLength)((n)*RC_TICKS_PER_FOOT))
#define IN(n) ((RcLength)((n)*RC_TICKS_PER_INCH))
#define MM(n) ((RcLength)((n)*RC_TICKS_PER_MM))
