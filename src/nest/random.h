/* A small random source whose numbers are the same everywhere (xoroshiro128+ of Blackman and Vigna, public domain). */
#pragma once

#include <glib.h>

typedef struct
{
  guint64 a, b;
} RcNestRandom;

static inline guint64
rc_nest_random_next (RcNestRandom *random)
{
  guint64 a = random->a, b = random->b, sum = a + b;

  b ^= a;
  random->a = ((a << 24) | (a >> 40)) ^ b ^ (b << 16);
  random->b = (b << 37) | (b >> 27);
  return sum;
}

/* 0 .. n - 1, n > 0 */
static inline guint
rc_nest_random_below (RcNestRandom *random, guint n)
{
  return (guint)(((rc_nest_random_next (random) >> 32) * (guint64)n) >> 32);
}

/* 0 <= x < 1 */
static inline double
rc_nest_random_unit (RcNestRandom *random)
{
  return (double)(rc_nest_random_next (random) >> 11) * 0x1p-53;
}

static inline void
rc_nest_random_seed (RcNestRandom *random, guint64 seed)
{
  random->a = seed * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15) + 1;
  random->b = (seed ^ G_GUINT64_CONSTANT (0xd1b54a32d192ed03)) | 1;
  for (int i = 0; i < 8; i++)
    rc_nest_random_next (random);
}
