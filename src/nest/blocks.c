#include "blocks.h"

#include "block-set.h"

enum
{
  MOST_SIDE = 20000, /* units of the rectangle's width or length */
  N_HEADS = 1 << 15
};

typedef enum
{
  ITEM,
  ROW,  /* side by side */
  STACK /* one after the other */
} Form;

/* What a row or stack is made of stands in an order, that of the blocks: its second block is none of its own form, and
 * no block of its first comes after that. So each is made once. */
typedef struct
{
  RcBlockSet set;
  gint64     area;          /* of the items */
  int        w, h;          /* in units */
  int        first, second; /* what it is made of; of one item its kind is the second */
  int        next_set;      /* chain of the blocks of like sets; -1: none */
  Form       form;
} Block;

/* A block in a list of those it may be joined with. */
typedef struct
{
  RcBlockSet set;
  int        size; /* along the line on which they are joined */
  int        at;
} Listed;

typedef struct
{
  Listed *listed; /* in the order of the blocks */
  guint   n, room;
} List;

/* Lists by length for rows, by width for stacks: */
typedef struct
{
  List *parts, *joined; /* blocks of another form, and of this form */
  int   n;
} Lists;

typedef struct
{
  RcNestBlockItem   *items;
  RcNestBlocksLimit *limit;
  guint              n;
  RcBlockKinds       of;            /* the items by kind */
  int                width, length; /* in units */
  gint64             budget;        /* of waste, in square units */
  int                least_w, least_h;
  int               *gap_w, *gap_h; /* by width (length) of a block: what stays empty beside (after) it at least */
  Lists              rows, stacks;
  int               *heads; /* all blocks, by set */
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

/* What stays empty along a line across the rectangle, whatever items lie beside a block of each size. */
static int *
list_gaps (const Blocks *self, gboolean across)
{
  int                side = across ? self->width : self->length, *gaps = g_new (int, side + 1);
  g_autofree guint8 *reached = g_new0 (guint8, side + 1);

  reached[0] = 1;
  for (guint k = 0; k < self->n; k++)
    {
      const RcNestBlockItem *item = &self->items[self->of.order[k]];
      int                    size = (int)(across ? item->w / self->of.unit_w : item->h / self->of.unit_h);

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
  guint  hash = rc_block_set_hash (block.set, N_HEADS);

  if (lost > self->budget)
    return;
  for (int i = self->heads[hash]; i >= 0; i = get (self, i)->next_set)
    {
      const Block *other = get (self, i);

      if (rc_block_set_is_same (other->set, block.set) && other->w <= block.w && other->h <= block.h)
        return;
    }
  block.next_set = self->heads[hash];
  self->heads[hash] = (int)self->blocks->len;
  if (rc_block_set_is_same (block.set, self->of.all))
    self->whole = (int)self->blocks->len;
  g_array_append_val (self->blocks, block);
}

static void
join (Blocks *self, int first, int second, Form form)
{
  const Block *a = get (self, first), *b = get (self, second);
  RcBlockSet   set = rc_block_set_add (a->set, b->set);
  Block        both = { set, a->area + b->area, 0, 0, first, second, -1, form };

  both.w = form == ROW ? a->w + b->w : MAX (a->w, b->w);
  both.h = form == ROW ? MAX (a->h, b->h) : a->h + b->h;
  if (both.w <= self->width && both.h <= self->length && self->whole < 0)
    add (self, both);
}

/* The newest block with what is still missing, if there is such a block. */
static void
complete (Blocks *self, int newest)
{
  RcBlockSet missing = rc_block_set_take_away (self->of.all, get (self, newest)->set);

  for (int i = self->heads[rc_block_set_hash (missing, N_HEADS)]; i >= 0 && self->whole < 0;
       i = get (self, i)->next_set)
    if (rc_block_set_is_same (get (self, i)->set, missing))
      {
        join (self, newest, i, ROW);
        join (self, newest, i, STACK);
      }
}

static gboolean
is_over (const Blocks *self)
{
  return self->whole >= 0 || self->limit->work == 0 || self->blocks->len >= self->limit->blocks;
}

/* Joins a block with those of a list from block `from` on. `leads`: it is the first of the two. */
static void
join_with_list (Blocks *self, int at, const List *list, int from, Form form, gboolean leads)
{
  const Block block = *get (self, at);
  int         room = form == ROW ? self->width - block.w : self->length - block.h;
  RcBlockSet  most = rc_block_set_take_away (self->of.all, block.set), spare = self->of.spare;
  guint       low = 0, high = list->n;

  for (guint w = 0; w < RC_BLOCK_SET_WORDS; w++)
    most.words[w] |= spare.words[w];
  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (list->listed[middle].at < from)
        low = middle + 1;
      else
        high = middle;
    }
  self->limit->work -= MIN (self->limit->work, list->n - low);
  for (const Listed *listed = list->listed + low, *end = list->listed + list->n; listed < end; listed++)
    {
      int count;

      if (G_LIKELY ((listed->size > room) | !rc_block_set_is_within (listed->set, most, spare)))
        continue;
      count = (int)self->blocks->len;
      join (self, leads ? at : listed->at, leads ? listed->at : at, form);
      if (count < (int)self->blocks->len)
        complete (self, count);
      if (is_over (self))
        return;
    }
}

/* Joins a block with all before it that are nearly as wide, one after the other, or nearly as long, side by side. */
static void
join_with_all (Blocks *self, int at, Form form)
{
  const Block  block = *get (self, at);
  const Lists *lists = form == ROW ? &self->rows : &self->stacks;
  int          size = form == ROW ? block.h : block.w, other = form == ROW ? block.w : block.h;
  int          least_other = form == ROW ? self->least_w : self->least_h;
  gint64       left = self->budget - get_waste (&block);
  int          from = (int)MAX (0, size - left / least_other), to = (int)MIN (lists->n - 1, size + left / other);

  for (int x = from; x <= to; x++)
    if (block.form == form)
      join_with_list (self, at, &lists->parts[x], block.second, form, TRUE);
    else
      {
        join_with_list (self, at, &lists->parts[x], 0, form, FALSE);
        join_with_list (self, at, &lists->joined[x], 0, form, FALSE);
      }
}

static void
append (List *list, Listed listed)
{
  if (list->n == list->room)
    {
      list->room = MAX (16, 2 * list->room);
      list->listed = g_renew (Listed, list->listed, list->room);
    }
  list->listed[list->n++] = listed;
}

static void
enlist (Blocks *self, int at)
{
  const Block *block = get (self, at);
  List        *row = block->form == ROW ? self->rows.joined : self->rows.parts;
  List        *stack = block->form == STACK ? self->stacks.joined : self->stacks.parts;

  append (&row[block->h], (Listed){ block->set, block->w, at });
  append (&stack[block->w], (Listed){ block->set, block->h, at });
}

static RcNestBlocksResult
run (Blocks *self)
{
  for (guint i = 0; i < self->blocks->len && self->whole < 0; i++)
    {
      if (is_over (self) || (i % 16 == 0 && rc_nest_clock_is_over (self->limit->clock)))
        return RC_NEST_BLOCKS_UNKNOWN;
      enlist (self, (int)i);
      join_with_all (self, (int)i, ROW);
      join_with_all (self, (int)i, STACK);
    }
  if (self->whole >= 0)
    return RC_NEST_BLOCKS_FIT;
  return is_over (self) ? RC_NEST_BLOCKS_UNKNOWN : RC_NEST_BLOCKS_CANNOT_FIT;
}

/* placed: by kind, how many have got their place. */
static void
place (const Blocks *self, int at, RcLength across, RcLength along, guint *placed)
{
  const Block *block = get (self, at);

  if (block->form == ITEM)
    {
      RcNestBlockItem *item
          = &self->items[self->of.order[self->of.kinds[block->second].first + placed[block->second]++]];

      item->across = across;
      item->along = along;
      return;
    }
  place (self, block->first, across, along, placed);
  if (block->form == ROW)
    across += get (self, block->first)->w * self->of.unit_w;
  else
    along += get (self, block->first)->h * self->of.unit_h;
  place (self, block->second, across, along, placed);
}

static void
add_items (Blocks *self)
{
  self->least_w = self->width;
  self->least_h = self->length;
  for (guint k = 0; k < self->of.n; k++)
    {
      const RcBlockKind *kind = &self->of.kinds[k];
      Block              block = { .area = kind->w * kind->h, .w = (int)kind->w, .h = (int)kind->h, .second = (int)k };

      block.set.words[kind->word] = G_GUINT64_CONSTANT (1) << kind->shift;
      self->least_w = MIN (self->least_w, block.w);
      self->least_h = MIN (self->least_h, block.h);
      add (self, block);
    }
}

static void
lists_init (Lists *lists, int n)
{
  *lists = (Lists){ g_new0 (List, n), g_new0 (List, n), n };
}

static void
lists_clear (Lists *lists)
{
  for (int x = 0; x < lists->n; x++)
    {
      g_free (lists->parts[x].listed);
      g_free (lists->joined[x].listed);
    }
  g_free (lists->parts);
  g_free (lists->joined);
}

static void
blocks_clear (Blocks *self)
{
  g_free (self->gap_w);
  g_free (self->gap_h);
  g_free (self->heads);
  if (self->blocks != NULL)
    {
      g_array_unref (self->blocks);
      lists_clear (&self->rows);
      lists_clear (&self->stacks);
    }
}

/* FALSE: the rectangle has too many units, or an item is larger than it. */
static gboolean
blocks_init (Blocks *self, RcNestBlockItem *items, guint n, RcLength width, RcLength length, RcNestBlocksLimit *limit)
{
  *self = (Blocks){ .items = items, .limit = limit, .n = n, .whole = -1 };
  rc_block_kinds_init (&self->of, items, n);
  if (width / self->of.unit_w > MOST_SIDE || length / self->of.unit_h > MOST_SIDE)
    return FALSE;
  for (guint k = 0; k < n; k++)
    if (items[k].w > width || items[k].h > length)
      return FALSE;
  self->width = (int)(width / self->of.unit_w);
  self->length = (int)(length / self->of.unit_h);
  self->gap_w = list_gaps (self, TRUE);
  self->gap_h = list_gaps (self, FALSE);
  self->heads = g_new (int, N_HEADS);
  memset (self->heads, -1, sizeof (int) * N_HEADS);
  self->blocks = g_array_new (FALSE, FALSE, sizeof (Block));
  lists_init (&self->rows, self->length + 1);
  lists_init (&self->stacks, self->width + 1);
  return TRUE;
}

RcNestBlocksResult
rc_nest_blocks_fit (RcNestBlockItem *items, guint n, RcLength width, RcLength length, RcNestBlocksLimit *limit)
{
  Blocks             self;
  RcNestBlocksResult result = RC_NEST_BLOCKS_UNKNOWN;
  guint              placed[RC_NEST_MOST_BLOCK_ITEMS] = { 0 };

  g_return_val_if_fail (n <= RC_NEST_MOST_BLOCK_ITEMS, RC_NEST_BLOCKS_UNKNOWN);
  if (n == 0)
    return RC_NEST_BLOCKS_FIT;
  for (guint k = 0; k < n; k++)
    if (items[k].w > width || items[k].h > length)
      return RC_NEST_BLOCKS_CANNOT_FIT;
  if (blocks_init (&self, items, n, width, length, limit))
    {
      self.budget = (gint64)self.width * self.length;
      for (guint k = 0; k < self.of.n; k++)
        self.budget -= self.of.kinds[k].count * self.of.kinds[k].w * self.of.kinds[k].h;
      if (self.budget >= 0)
        add_items (&self);
      result = self.budget < 0 || self.blocks->len < self.of.n ? RC_NEST_BLOCKS_CANNOT_FIT : run (&self);
      if (result == RC_NEST_BLOCKS_FIT)
        place (&self, self.whole, 0, 0, placed);
    }
  blocks_clear (&self);
  return result;
}

GArray *
rc_nest_blocks_list_bands (RcNestBlockItem *items, guint n, RcLength width, RcLength length, RcNestBlocksLimit *limit)
{
  Blocks  self;
  GArray *bands = g_array_new (FALSE, FALSE, sizeof (RcNestBand));

  g_return_val_if_fail (n > 0 && n <= RC_NEST_MOST_BLOCK_ITEMS, bands);
  if (blocks_init (&self, items, n, width, length, limit) && self.width * self.of.unit_w == width)
    {
      /* Other cuts may come after the band. */
      memset (self.gap_h, 0, sizeof (int) * (gsize)(self.length + 1));
      add_items (&self);
      run (&self);
      for (guint i = 0; i < self.blocks->len; i++)
        {
          const Block *block = get (&self, (int)i);
          RcNestBand   band = { rc_block_kinds_find_items (&self.of, block->set), block->h * self.of.unit_h };

          if (block->w == self.width && band.length < length)
            g_array_append_val (bands, band);
        }
    }
  blocks_clear (&self);
  return bands;
}
