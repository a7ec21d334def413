/* When a search must end: time, steps, or a cancel from outside. */
#pragma once

#include "nest.h"

typedef struct
{
  gint64        end_us;     /* monotonic; G_MAXINT64: never */
  guint64       steps_left; /* G_MAXUINT64: no limit */
  GCancellable *cancellable;
} RcNestClock;

static inline void
rc_nest_clock_start (RcNestClock *clock, const RcNestParams *params)
{
  clock->end_us = g_get_monotonic_time () + (gint64)(params->seconds * 1e6);
  clock->steps_left = params->effort > 0 ? params->effort : G_MAXUINT64;
  clock->cancellable = params->cancellable;
}

static inline gboolean
rc_nest_clock_is_over (const RcNestClock *clock)
{
  return clock->steps_left == 0 || g_cancellable_is_cancelled (clock->cancellable)
         || g_get_monotonic_time () >= clock->end_us;
}
