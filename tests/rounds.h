/* How many rounds a test of random cases makes: RC_ROUNDS, a percentage, makes them fewer where each takes long, as
   under the sanitizers, or more for a search through a night. */
#pragma once

#include <glib.h>
#include <stdlib.h>

/* `n` rounds at 100 percent, which it is when RC_ROUNDS is unset or says nothing usable; never fewer than 1. */
static inline guint
scale_rounds (guint n)
{
  const char *text = g_getenv ("RC_ROUNDS");
  guint       percent = text != NULL ? (guint)strtoul (text, NULL, 10) : 0;
  guint64     rounds = percent != 0 ? (guint64)n * percent / 100 : n;

  return (guint)CLAMP (rounds, 1, G_MAXINT);
}
