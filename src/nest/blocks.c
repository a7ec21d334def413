#include "blocks.h"

#include "wide.h"

enum
{
  MOST_BLOCKS = 200000,
  MOST_SIDE = 20000, /* units of the rectangle's width or length */
  N_HEADS = 1 << 15
};

/* Items of one size. A set of items is a number with a field for each kind that holds how many of it are in the set,
 * and above it a bit to spare, so that sets are joined by adding. */
typedef struct
{
  RcLength w, h; /* in units */
  guint    first, count;
  guint    shift;
} Kind;

typedef struct
{
  guint64  set;
  gint64   area;          /* of the items */
  int      w, h;          /* in units */
  int      first, second; /* what it is made of; -1: one item */
  int      next_w, next_h, next_set;
  gboolean beside;
} Block;

typedef struct
{
  RcNestBlockItem   *items;
  const RcNestClock *clock;
  guint64           *work;
  int                order[RC_NEST_MOST_BLOCK_ITEMS]; /* the items by kind */
  guint              n;
  Kind               kinds[RC_NEST_MOST_BLOCK_ITEMS];
  guint              n_kinds;
  guint64            all, spare; /* the set of all items; the bits to spare */
  RcLength           unit_w, unit_h;
  int                width, length; /* in units */
  gint64             budget;        /* of waste, in square units */
  int                least_w, least_h;
  int               *gap_w, *gap_h;   /* by width (length) of a block: what stays empty beside (after) it at least */
  int               *head_w, *head_h; /* blocks that have been joined with those before them, by width, by length */
  int               *heads;           /* all blocks, by set */
  GArray            *blocks;
  int                whole; /* the block of all items; -1: not found */
} Blocks;

static const Block *
get (const Blocks *self, int i)
{
  return &g_array_index (self->blocks, Block, i);
}

static gint64
get_waste (const Block *block)
{
  return (gint64)block->w * block->h - block->area;
}

/* Whether no kind is in the set more often than there are items of it. */
static inline gboolean
is_set (const Blocks *self, guint64 set)
{
  return (((self->all | self->spare) - set) & self->spare) == self->spare;
}

static guint
hash_set (guint64 set)
{
  return (guint)((set * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15)) >> 49) % N_HEADS;
}

static int
compare_items (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const RcNestBlockItem *items = user_data, *p = &items[*(const int *)a], *q = &items[*(const int *)b];

  if (p->w != q->w)
    return p->w > q->w ? -1 : 1;
  if (p->h != q->h)
    return p->h > q->h ? -1 : 1;
  return *(const int *)a - *(const int *)b;
}

/* FALSE: there are too many kinds for one number. */
static gboolean
list_kinds (Blocks *self)
{
  guint shift = 0;

  for (guint k = 0; k < self->n; k++)
    self->order[k] = (int)k;
  g_qsort_with_data (self->order, (gint)self->n, sizeof (int), compare_items, self->items);
  for (guint k = 0; k < self->n; k++)
    {
      const RcNestBlockItem *item = &self->items[self->order[k]];
      Kind                  *last = self->n_kinds > 0 ? &self->kinds[self->n_kinds - 1] : NULL;

      self->unit_w = (RcLength)rc_wide_find_divisor (self->unit_w, item->w);
      self->unit_h = (RcLength)rc_wide_find_divisor (self->unit_h, item->h);
      if (last != NULL && last->w == item->w && last->h == item->h)
        last->count++;
      else
        self->kinds[self->n_kinds++] = (Kind){ item->w, item->h, k, 1, 0 };
    }
  for (guint k = 0; k < self->n_kinds; k++)
    {
      Kind *kind = &self->kinds[k];
      guint bits = (guint)g_bit_storage (kind->count);

      if (shift + bits > 63)
        return FALSE;
      kind->shift = shift;
      self->all |= (guint64)kind->count << shift;
      self->spare |= G_GUINT64_CONSTANT (1) << (shift + bits);
      shift += bits + 1;
    }
  return TRUE;
}

/* What stays empty along a line across the rectangle, whatever items lie beside a block of each size. */
static int *
list_gaps (const Blocks *self, gboolean across)
{
  int                side = across ? self->width : self->length, *gaps = g_new (int, side + 1);
  g_autofree guint8 *reached = g_new0 (guint8, side + 1);

  reached[0] = 1;
  for (guint k = 0; k < self->n; k++)
    {
      const RcNestBlockItem *item = &self->items[self->order[k]];
      int                    size = (int)(across ? item->w / self->unit_w : item->h / self->unit_h);

      for (int x = side; x >= size; x--)
        reached[x] |= reached[x - size];
    }
  for (int x = 0, last = 0; x <= side; x++)
    {
      last = reached[x] ? x : last;
      gaps[side - x] = x - last;
    }
  return gaps;
}

/* Keeps a block unless it wastes too much or another of the same items is no larger. */
static void
add (Blocks *self, Block block)
{
  gint64 lost = get_waste (&block) + (gint64)self->gap_w[block.w] * block.h + (gint64)self->gap_h[block.h] * block.w;
  guint  hash = hash_set (block.set);

  if (lost > self->budget)
    return;
  for (int i = self->heads[hash]; i >= 0; i = get (self, i)->next_set)
    {
      const Block *other = get (self, i);

      if (other->set == block.set && other->w <= block.w && other->h <= block.h)
        return;
    }
  block.next_set = self->heads[hash];
  self->heads[hash] = (int)self->blocks->len;
  if (block.set == self->all)
    self->whole = (int)self->blocks->len;
  g_array_append_val (self->blocks, block);
}

static void
join (Blocks *self, int first, int second, gboolean beside)
{
  const Block *a = get (self, first), *b = get (self, second);
  Block        both = { a->set + b->set, a->area + b->area, 0, 0, first, second, -1, -1, -1, beside };

  both.w = beside ? a->w + b->w : MAX (a->w, b->w);
  both.h = beside ? MAX (a->h, b->h) : a->h + b->h;
  if (both.w <= self->width && both.h <= self->length && self->whole < 0)
    add (self, both);
}

/* The newest block with what is still missing, if there is such a block. */
static void
complete (Blocks *self, int newest)
{
  guint64 missing = self->all - get (self, newest)->set;

  for (int i = self->heads[hash_set (missing)]; i >= 0 && self->whole < 0; i = get (self, i)->next_set)
    if (get (self, i)->set == missing)
      {
        join (self, newest, i, TRUE);
        join (self, newest, i, FALSE);
      }
}

static gboolean
is_over (const Blocks *self)
{
  return self->whole >= 0 || *self->work == 0 || self->blocks->len >= MOST_BLOCKS;
}

/* Joins a block with all before it that are nearly as wide, one after the other, or nearly as long, side by side. */
static void
join_with_all (Blocks *self, int at, gboolean beside)
{
  const Block block = *get (self, at);
  int         size = beside ? block.h : block.w, other = beside ? block.w : block.h;
  int         most = beside ? self->length : self->width, least_other = beside ? self->least_w : self->least_h;
  gint64      left = self->budget - get_waste (&block);
  int         from = (int)MAX (0, size - left / least_other), to = (int)MIN (most, size + left / other);

  for (int x = from; x <= to && !is_over (self); x++)
    for (int i = beside ? self->head_h[x] : self->head_w[x]; i >= 0;)
      {
        int next = beside ? get (self, i)->next_h : get (self, i)->next_w, count = (int)self->blocks->len;

        if (is_over (self))
          return;
        --*self->work;
        if (is_set (self, block.set + get (self, i)->set))
          join (self, at, i, beside);
        if (count < (int)self->blocks->len)
          complete (self, count);
        i = next;
      }
}

static RcNestBlocksResult
run (Blocks *self)
{
  for (guint i = 0; i < self->blocks->len; i++)
    {
      Block *block = &g_array_index (self->blocks, Block, i);

      block->next_w = self->head_w[block->w];
      block->next_h = self->head_h[block->h];
      self->head_w[block->w] = self->head_h[block->h] = (int)i;
      join_with_all (self, (int)i, TRUE);
      join_with_all (self, (int)i, FALSE);
      if (self->whole >= 0)
        return RC_NEST_BLOCKS_FIT;
      if (is_over (self) || (i % 16 == 0 && rc_nest_clock_is_over (self->clock)))
        return RC_NEST_BLOCKS_UNKNOWN;
    }
  return RC_NEST_BLOCKS_CANNOT_FIT;
}

/* placed: by kind, how many have got their place. */
static void
place (const Blocks *self, int at, RcLength across, RcLength along, guint *placed)
{
  const Block *block = get (self, at);

  if (block->first < 0)
    {
      RcNestBlockItem *item = &self->items[self->order[self->kinds[block->second].first + placed[block->second]++]];

      item->across = across;
      item->along = along;
      return;
    }
  place (self, block->first, across, along, placed);
  if (block->beside)
    across += get (self, block->first)->w * self->unit_w;
  else
    along += get (self, block->first)->h * self->unit_h;
  place (self, block->second, across, along, placed);
}

static void
add_items (Blocks *self)
{
  self->least_w = self->width;
  self->least_h = self->length;
  for (guint k = 0; k < self->n_kinds; k++)
    {
      const Kind *kind = &self->kinds[k];
      int         w = (int)(kind->w / self->unit_w), h = (int)(kind->h / self->unit_h);

      self->least_w = MIN (self->least_w, w);
      self->least_h = MIN (self->least_h, h);
      add (self, (Block){ G_GUINT64_CONSTANT (1) << kind->shift, (gint64)w * h, w, h, -1, (int)k, -1, -1, -1, FALSE });
    }
}

static int *
new_heads (int n)
{
  int *heads = g_new (int, n);

  memset (heads, -1, sizeof (int) * (gsize)n);
  return heads;
}

static RcNestBlocksResult
search (Blocks *self)
{
  RcNestBlocksResult result;
  guint              placed[RC_NEST_MOST_BLOCK_ITEMS] = { 0 };

  self->gap_w = list_gaps (self, TRUE);
  self->gap_h = list_gaps (self, FALSE);
  self->head_w = new_heads (self->width + 1);
  self->head_h = new_heads (self->length + 1);
  self->heads = new_heads (N_HEADS);
  self->blocks = g_array_new (FALSE, FALSE, sizeof (Block));
  add_items (self);
  result = self->blocks->len < self->n_kinds ? RC_NEST_BLOCKS_CANNOT_FIT : run (self);
  if (result == RC_NEST_BLOCKS_FIT)
    place (self, self->whole, 0, 0, placed);
  g_free (self->gap_w);
  g_free (self->gap_h);
  g_free (self->head_w);
  g_free (self->head_h);
  g_free (self->heads);
  g_array_unref (self->blocks);
  return result;
}

RcNestBlocksResult
rc_nest_blocks_fit (RcNestBlockItem *items, guint n, RcLength width, RcLength length, guint64 *work,
                    const RcNestClock *clock)
{
  Blocks self = { .items = items, .clock = clock, .work = work, .n = n, .whole = -1 };

  g_return_val_if_fail (n <= RC_NEST_MOST_BLOCK_ITEMS, RC_NEST_BLOCKS_UNKNOWN);
  if (n == 0)
    return RC_NEST_BLOCKS_FIT;
  if (!list_kinds (&self) || width / self.unit_w > MOST_SIDE || length / self.unit_h > MOST_SIDE)
    return RC_NEST_BLOCKS_UNKNOWN;
  self.width = (int)(width / self.unit_w);
  self.length = (int)(length / self.unit_h);
  self.budget = (gint64)self.width * self.length;
  for (guint k = 0; k < n; k++)
    {
      if (items[k].w > width || items[k].h > length)
        return RC_NEST_BLOCKS_CANNOT_FIT;
      self.budget -= items[k].w / self.unit_w * (items[k].h / self.unit_h);
    }
  return self.budget < 0 ? RC_NEST_BLOCKS_CANNOT_FIT : search (&self);
}
