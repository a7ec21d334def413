/* A plan as members of the JSON object that is open: areas, stairs, cuts, rolls, sums. */
#pragma once

#include "json-out.h"
#include "plan.h"

void rc_plan_json_add (RcJson *json, const RcPlan *plan);

/* What a roll of a cutting is called: its ticket, or "GOODS/new", "GOODS/new-2" for lengths to be bought.
 * `use` is an index in cutting->answer->rolls. (transfer full) */
char *rc_cutting_dup_roll_name (const RcCutting *cutting, guint use);
