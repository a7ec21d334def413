/* Items by kind, and sets of them as numbers that are added: a field for each kind holds how many of it are in the set,
 * and above it there is a bit to spare. No field lies in two words. Private to blocks. */
#pragma once

#include "blocks.h"

enum
{
  RC_BLOCK_SET_WORDS = 2
};

typedef struct
{
  guint64 words[RC_BLOCK_SET_WORDS];
} RcBlockSet;

/* Items of one size. */
typedef struct
{
  RcLength w, h;         /* in units */
  guint    first, count; /* in RcBlockKinds.order */
  guint    word, shift;
} RcBlockKind;

typedef struct
{
  int         order[RC_NEST_MOST_BLOCK_ITEMS]; /* the items by kind, the widest first */
  RcBlockKind kinds[RC_NEST_MOST_BLOCK_ITEMS];
  guint       n;
  RcBlockSet  all, spare;     /* the set of all items; the bits to spare */
  RcLength    unit_w, unit_h; /* the largest of which every width and length is a multiple */
} RcBlockKinds;

/* n <= RC_NEST_MOST_BLOCK_ITEMS, one at least. */
void rc_block_kinds_init (RcBlockKinds *kinds, const RcNestBlockItem *items, guint n);
/* Bit i is item i. */
guint64 rc_block_kinds_find_items (const RcBlockKinds *kinds, RcBlockSet set);

static inline RcBlockSet
rc_block_set_add (RcBlockSet a, RcBlockSet b)
{
  return (RcBlockSet){ { a.words[0] + b.words[0], a.words[1] + b.words[1] } };
}

static inline RcBlockSet
rc_block_set_take_away (RcBlockSet from, RcBlockSet set)
{
  return (RcBlockSet){ { from.words[0] - set.words[0], from.words[1] - set.words[1] } };
}

static inline gboolean
rc_block_set_is_same (RcBlockSet a, RcBlockSet b)
{
  return a.words[0] == b.words[0] && a.words[1] == b.words[1];
}

/* Whether no kind is in the set more often than in `most`, whose bits to spare are set. */
static inline gboolean
rc_block_set_is_within (RcBlockSet set, RcBlockSet most, RcBlockSet spare)
{
  guint64 a = ~(most.words[0] - set.words[0]) & spare.words[0], b = ~(most.words[1] - set.words[1]) & spare.words[1];

  return (a | b) == 0;
}

/* Below n. */
static inline guint
rc_block_set_hash (RcBlockSet set, guint n)
{
  guint64 mixed = (set.words[0] ^ (set.words[1] * G_GUINT64_CONSTANT (0xd1b54a32d192ed03)))
                  * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);

  return (guint)(mixed >> 49) % n;
}
