#include "slice-few.h"

#define ONE (1 << 20) /* the worth of a slice */

typedef struct
{
  const RcNestSliceItem *items;
  guint                  n;
  RcLength               width;
  gint64                *price;
  gint64                *value; /* by width: the most valuable slice without one item */
  gint64                *before;
} Few;

static void
add_item (Few *self, guint i)
{
  RcLength w = self->items[i].w;
  gint64   price = self->price[i];
  guint    most = (guint)MIN ((RcLength)self->items[i].count, self->width / w);
  if (price == 0)
    return;
  if (most >= (guint)(self->width / w)) /* as often as it fits */
    {
      for (RcLength x = w; x <= self->width; x++)
        self->value[x] = MAX (self->value[x], self->value[x - w] + price);
      return;
    }
  memcpy (self->before, self->value, sizeof (gint64) * ((gsize)self->width + 1));
  for (guint k = 1; k <= most; k++)
    for (RcLength x = w * k; x <= self->width; x++)
      self->value[x] = MAX (self->value[x], self->before[x - w * k] + price * k);
}

/* As dear as what else can lie beside it leaves. */
static void
raise_price (Few *self, guint i)
{
  RcLength w = self->items[i].w;
  gint64   most = ONE;
  memset (self->value, 0, sizeof (gint64) * ((gsize)self->width + 1));
  for (guint k = 0; k < self->n; k++)
    if (k != i)
      add_item (self, k);
  for (guint k = 1; k <= self->items[i].count && w * k <= self->width; k++)
    most = MIN (most, (ONE - self->value[self->width - w * k]) / k);
  self->price[i] = most;
}

/* Prices are raised from nothing, those first of items that are most of all. */
static RcLength
weigh (Few *self, const guint *order)
{
  __int128 sum = 0;
  for (guint i = 0; i < self->n; i++)
    raise_price (self, order[i]);
  for (guint i = 0; i < self->n; i++)
    sum += (__int128)self->price[i] * self->items[i].demand;
  return (RcLength)((sum + ONE - 1) / ONE);
}

static int
compare_sizes (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const RcNestSliceItem *items = user_data, *p = &items[*(const guint *)a], *q = &items[*(const guint *)b];
  __int128               p_size = (__int128)p->w * p->demand, q_size = (__int128)q->w * q->demand;
  return (p_size < q_size) - (p_size > q_size);
}

RcLength
rc_nest_slice_bound_few (const RcNestSliceItem *items, guint n, RcLength width, RcLength known)
{
  Few               self = { items, n, width, g_new0 (gint64, n + 1), NULL, NULL };
  g_autofree guint *order = g_new (guint, n + 1);
  self.value = g_new (gint64, (gsize)width + 1);
  self.before = g_new (gint64, (gsize)width + 1);
  for (guint i = 0; i < n; i++)
    order[i] = i;
  g_qsort_with_data (order, (int)n, sizeof (guint), compare_sizes, (gpointer)items);
  if (n > 0)
    known = MAX (known, weigh (&self, order));
  g_free (self.price);
  g_free (self.value);
  g_free (self.before);
  return known;
}
