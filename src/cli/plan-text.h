/* A plan as tables for people. */
#pragma once

#include "plan.h"

void rc_plan_text_print (const RcPlan *plan);
