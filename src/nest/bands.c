#include "bands.h"

#include <math.h>

#include "random.h"

enum
{
  MOST_LAST = 30, /* items that are tried exhaustively */
  MOST_LAST_BLOCKS = 8000,
  MOST_LAST_TRIES = 200, /* after one look for bands */
  FEW_LAST_TRIES = 20,   /* so few, and another band is cut off */
  MOST_LOOKED_AT = 36,   /* items among which bands are looked for */
  MOST_BAND_BLOCKS = 60000,
  N_CHOSEN = 3 /* bands of which one is taken */
};

/* How much worse a band may be and come before another. */
#define SCATTER 0.1

typedef struct
{
  const RcNestItem  *items;
  RcLength           width;
  const RcNestClock *clock;
  RcNestRandom       random;
  guint              left[RC_NEST_MOST_BAND_ITEMS]; /* the items that are in no band yet */
  guint              n_left;
  RcLength           along; /* where the bands end */
  RcLength           length;
  guint              sides[RC_NEST_MOST_BAND_ITEMS]; /* by item: the others left that have a side in common with it */
  RcNestSpot        *spots;
  guint64            work; /* pairs of blocks that may still be tried */
} Bands;

typedef struct
{
  guint64  items; /* of those looked at */
  RcLength length;
  guint    n;
  double   badness;
} Candidate;

static gboolean
is_over (const Bands *self)
{
  return self->work == 0 || rc_nest_clock_is_over (self->clock);
}

static RcNestBlocksLimit
begin_work (const Bands *self, guint most_blocks)
{
  return (RcNestBlocksLimit){ self->work, most_blocks, self->clock };
}

static gboolean
have_side (const RcNestItem *a, const RcNestItem *b)
{
  return a->w == b->w || a->h == b->h;
}

static void
count_sides (Bands *self)
{
  for (guint k = 0; k < self->n_left; k++)
    self->sides[self->left[k]] = 0;
  for (guint k = 0; k < self->n_left; k++)
    for (guint l = 0; l < k; l++)
      if (have_side (&self->items[self->left[k]], &self->items[self->left[l]]))
        {
          self->sides[self->left[k]]++;
          self->sides[self->left[l]]++;
        }
}

/* The pairs with a side in common that a band leaves, against what so few might have. */
static double
rate (Bands *self, const guint *looked_at, guint64 taken)
{
  guint taken_items[RC_NEST_MOST_BLOCK_ITEMS], n = 0;
  gint  pairs = 0, lost = 0;

  for (guint k = 0; k < self->n_left; k++)
    pairs += (gint)self->sides[self->left[k]];
  for (guint k = 0; k < RC_NEST_MOST_BLOCK_ITEMS; k++)
    if ((taken >> k & 1) != 0)
      taken_items[n++] = looked_at[k];
  for (guint k = 0; k < n; k++)
    {
      lost += (gint)self->sides[taken_items[k]];
      for (guint l = 0; l < k; l++)
        lost -= have_side (&self->items[taken_items[k]], &self->items[taken_items[l]]);
    }
  return 3 * log (self->n_left - n) - log (1 + MAX (pairs / 2 - lost, 0))
         + SCATTER * rc_nest_random_unit (&self->random);
}

static int
compare_candidates (gconstpointer a, gconstpointer b)
{
  const Candidate *p = a, *q = b;

  return (p->badness > q->badness) - (p->badness < q->badness);
}

/* Lays some of the items into what is left from `along` to `along + length`. */
static gboolean
lay (Bands *self, const guint *chosen, guint n, RcLength along, RcLength length)
{
  RcNestBlocksLimit  limit = begin_work (self, MOST_LAST_BLOCKS);
  RcNestBlockItem    blocks[RC_NEST_MOST_BLOCK_ITEMS];
  RcNestBlocksResult result;

  for (guint k = 0; k < n; k++)
    blocks[k] = (RcNestBlockItem){ self->items[chosen[k]].w, self->items[chosen[k]].h, 0, 0 };
  result = rc_nest_blocks_fit (blocks, n, self->width, length, &limit);
  self->work = limit.work;
  if (result != RC_NEST_BLOCKS_FIT)
    return FALSE;
  for (guint k = 0; k < n; k++)
    self->spots[chosen[k]] = (RcNestSpot){ 0, blocks[k].across, along + blocks[k].along };
  return TRUE;
}

/* Splits what is left into the items of a band and the others, which come first. */
static guint
set_apart (Bands *self, const guint *looked_at, guint64 taken)
{
  g_autofree gboolean *in_band = g_new0 (gboolean, RC_NEST_MOST_BAND_ITEMS);
  guint                n = 0;

  for (guint k = 0; k < RC_NEST_MOST_BLOCK_ITEMS; k++)
    if ((taken >> k & 1) != 0)
      in_band[looked_at[k]] = TRUE;
  for (guint k = 0; k < self->n_left; k++)
    if (!in_band[self->left[k]])
      {
        guint item = self->left[k];

        self->left[k] = self->left[n];
        self->left[n++] = item;
      }
  return n;
}

/* Whether the items that a band leaves fit behind it; then the band is laid too. */
static gboolean
try_last (Bands *self, const guint *looked_at, const Candidate *band)
{
  guint n = set_apart (self, looked_at, band->items);

  return lay (self, self->left, n, self->along + band->length, self->length - self->along - band->length)
         && lay (self, self->left + n, self->n_left - n, self->along, band->length);
}

/* The bands that can be made of some of the items, chosen at random, best first. */
static GArray *
list_candidates (Bands *self, guint *looked_at)
{
  RcNestBlocksLimit limit = begin_work (self, MOST_BAND_BLOCKS);
  RcNestBlockItem   blocks[RC_NEST_MOST_BLOCK_ITEMS];
  guint             n = MIN (self->n_left, MOST_LOOKED_AT);
  GArray           *candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));
  g_autoptr (GArray) bands = NULL;

  for (guint k = 0; k < n; k++)
    {
      guint other = k + rc_nest_random_below (&self->random, self->n_left - k), item = self->left[other];

      self->left[other] = self->left[k];
      self->left[k] = looked_at[k] = item;
      blocks[k] = (RcNestBlockItem){ self->items[item].w, self->items[item].h, 0, 0 };
    }
  count_sides (self);
  bands = rc_nest_blocks_list_bands (blocks, n, self->width, self->length - self->along, &limit);
  self->work = limit.work;
  for (guint b = 0; b < bands->len; b++)
    {
      const RcNestBand *band = &g_array_index (bands, RcNestBand, b);
      Candidate         candidate = { band->items, band->length, 0, 0 };

      for (guint64 bits = band->items; bits != 0; bits &= bits - 1)
        candidate.n++;
      if (candidate.n == self->n_left)
        continue;
      candidate.badness = rate (self, looked_at, band->items);
      g_array_append_val (candidates, candidate);
    }
  g_array_sort (candidates, compare_candidates);
  return candidates;
}

/* Cuts off bands until few items are left, and tries these. */
static gboolean
dive (Bands *self, guint n)
{
  self->n_left = n;
  self->along = 0;
  for (guint i = 0; i < n; i++)
    self->left[i] = i;
  while (self->n_left > MOST_LAST)
    {
      guint looked_at[RC_NEST_MOST_BLOCK_ITEMS], tries = 0, chosen, kept;
      g_autoptr (GArray) candidates = list_candidates (self, looked_at);
      const Candidate *band;

      for (guint c = 0; c < candidates->len && tries < MOST_LAST_TRIES; c++)
        {
          band = &g_array_index (candidates, Candidate, c);
          if (self->n_left - band->n > MOST_LAST)
            continue;
          if (is_over (self))
            return FALSE;
          if (try_last (self, looked_at, band))
            return TRUE;
          tries++;
        }
      if (tries > FEW_LAST_TRIES || candidates->len == 0 || is_over (self))
        return FALSE;
      chosen = rc_nest_random_below (&self->random, MIN (candidates->len, N_CHOSEN));
      band = &g_array_index (candidates, Candidate, chosen);
      kept = set_apart (self, looked_at, band->items);
      if (!lay (self, self->left + kept, self->n_left - kept, self->along, band->length))
        return FALSE;
      self->n_left = kept;
      self->along += band->length;
    }
  return lay (self, self->left, self->n_left, self->along, self->length - self->along);
}

gboolean
rc_nest_bands_fit (const RcNestItem *items, guint n, RcLength width, RcLength length, guint64 seed, guint64 work,
                   const RcNestClock *clock, RcNestSpot *spots)
{
  Bands   *self = g_new0 (Bands, 1);
  gboolean fits = FALSE;

  g_return_val_if_fail (n <= RC_NEST_MOST_BAND_ITEMS, FALSE);
  *self = (Bands){ .items = items, .width = width, .clock = clock, .length = length, .spots = spots, .work = work };
  rc_nest_random_seed (&self->random, seed);
  while (!fits && !is_over (self))
    fits = dive (self, n);
  g_free (self);
  return fits;
}
