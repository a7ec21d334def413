#pragma once

#include "nest.h"

RcNestAnswer *rc_nest_answer_new (void);
