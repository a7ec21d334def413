/* When a search must end: time, steps, or a cancel from outside. Whoever wants a part of the time asks here, so that
 * parts are in proportion whichever clock counts. */
#pragma once

#include <time.h>

#include "nest.h"

typedef struct
{
  gint64        end_us;     /* G_MAXINT64: never */
  guint64       steps_left; /* G_MAXUINT64: no limit */
  GCancellable *cancellable;
  gboolean      counts_work; /* end_us is of this thread's processor time; else of the time that passes */
} RcNestClock;

static inline gint64
rc_nest_clock_get_us (const RcNestClock *clock)
{
  struct timespec time;

  if (!clock->counts_work || clock_gettime (CLOCK_THREAD_CPUTIME_ID, &time) != 0)
    return g_get_monotonic_time ();
  return (gint64)time.tv_sec * G_USEC_PER_SEC + time.tv_nsec / 1000;
}

/* The same clock, over after so many seconds. */
static inline RcNestClock
rc_nest_clock_set (const RcNestClock *clock, double seconds)
{
  RcNestClock set = *clock;

  set.end_us = rc_nest_clock_get_us (clock) + (gint64)(seconds * G_USEC_PER_SEC);
  return set;
}

/* The same clock, over after so many seconds if it is not over before. */
static inline RcNestClock
rc_nest_clock_take_part (const RcNestClock *clock, double seconds)
{
  RcNestClock part = rc_nest_clock_set (clock, seconds);

  part.end_us = MIN (part.end_us, clock->end_us);
  return part;
}

/* The same clock, over after that share of what is left; one that is never over stays so. */
static inline RcNestClock
rc_nest_clock_take_share (const RcNestClock *clock, double share)
{
  gint64 left_us = clock->end_us - rc_nest_clock_get_us (clock);

  return clock->end_us < G_MAXINT64 ? rc_nest_clock_take_part (clock, share * (double)left_us / G_USEC_PER_SEC)
                                    : *clock;
}

static inline RcNestClock
rc_nest_clock_start (const RcNestParams *params)
{
  RcNestClock clock
      = { G_MAXINT64, params->effort > 0 ? params->effort : G_MAXUINT64, params->cancellable, params->counts_work };

  return rc_nest_clock_set (&clock, params->seconds);
}

static inline gboolean
rc_nest_clock_is_over (const RcNestClock *clock)
{
  return clock->steps_left == 0 || g_cancellable_is_cancelled (clock->cancellable)
         || rc_nest_clock_get_us (clock) >= clock->end_us;
}

/* TRUE where steps decide: whatever takes part must then give the same on a busy machine. */
static inline gboolean
rc_nest_clock_counts_steps (const RcNestClock *clock)
{
  return clock->steps_left != G_MAXUINT64;
}

/* For solvers that take their limit in milliseconds: what is left, at most `most`. */
static inline int
rc_nest_clock_get_ms (const RcNestClock *clock, int most)
{
  return (int)CLAMP ((clock->end_us - rc_nest_clock_get_us (clock)) / 1000, 1, most);
}
