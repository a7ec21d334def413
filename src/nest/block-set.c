#include "block-set.h"

#include "wide.h"

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

void
rc_block_kinds_init (RcBlockKinds *self, const RcNestBlockItem *items, guint n)
{
  guint word = 0, shift = 0;

  *self = (RcBlockKinds){ .n = 0 };
  for (guint k = 0; k < n; k++)
    self->order[k] = (int)k;
  g_qsort_with_data (self->order, (gint)n, sizeof (int), compare_items, (gpointer)items);
  for (guint k = 0; k < n; k++)
    {
      const RcNestBlockItem *item = &items[self->order[k]];
      RcBlockKind           *last = self->n > 0 ? &self->kinds[self->n - 1] : NULL;

      self->unit_w = (RcLength)rc_wide_find_divisor (self->unit_w, item->w);
      self->unit_h = (RcLength)rc_wide_find_divisor (self->unit_h, item->h);
      if (last != NULL && last->w == item->w && last->h == item->h)
        last->count++;
      else
        self->kinds[self->n++] = (RcBlockKind){ item->w, item->h, k, 1, 0, 0 };
    }
  for (guint k = 0; k < self->n; k++)
    {
      RcBlockKind *kind = &self->kinds[k];
      guint        bits = (guint)g_bit_storage (kind->count);

      if (shift + bits > 63)
        {
          word++;
          shift = 0;
        }
      kind->w /= self->unit_w;
      kind->h /= self->unit_h;
      kind->word = word;
      kind->shift = shift;
      self->all.words[word] |= (guint64)kind->count << shift;
      self->spare.words[word] |= G_GUINT64_CONSTANT (1) << (shift + bits);
      shift += bits + 1;
    }
}

guint64
rc_block_kinds_find_items (const RcBlockKinds *self, RcBlockSet set)
{
  guint64 items = 0;

  for (guint k = 0; k < self->n; k++)
    {
      const RcBlockKind *kind = &self->kinds[k];
      guint64            bits = (G_GUINT64_CONSTANT (1) << g_bit_storage (kind->count)) - 1;
      guint              count = (guint)((set.words[kind->word] >> kind->shift) & bits);

      for (guint c = 0; c < count; c++)
        items |= G_GUINT64_CONSTANT (1) << self->order[kind->first + c];
    }
  return items;
}
