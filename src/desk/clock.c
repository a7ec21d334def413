#include "clock.h"

char *
rc_clock_dup_now (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  return g_date_time_format (now, "%Y-%m-%dT%H:%M:%SZ");
}

char *
rc_clock_dup_today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  return g_date_time_format (now, "%Y-%m-%d");
}
