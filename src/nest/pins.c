#include "pins.h"

typedef struct
{
  const RcNestTask *task;
  RcNestPins       *pins;
  guint            *order;
  guint             n;
} Pinning;

typedef struct
{
  RcLength from, to;
  guint    item;
} Span;

static void
block_free (RcNestPinnedBlock *block)
{
  g_array_unref (block->pieces);
  g_free (block);
}

static void
length_free (RcNestPinnedLength *length)
{
  g_ptr_array_unref (length->blocks);
  g_free (length);
}

static RcNestPinnedBlock *
block_new (RcLength from, RcLength to)
{
  RcNestPinnedBlock *block = g_new (RcNestPinnedBlock, 1);

  *block = (RcNestPinnedBlock){ from, to, g_array_new (FALSE, FALSE, sizeof (guint)) };
  return block;
}

static int
compare_spans (gconstpointer a, gconstpointer b)
{
  const Span *p = a, *q = b;

  if (p->from != q->from)
    return p->from < q->from ? -1 : 1;
  return p->item < q->item ? -1 : p->item > q->item;
}

/* Where a straight cut parts the first of the spans, sorted, from the rest. */
static guint
find_part (const Span *spans, guint n)
{
  RcLength reach = spans[0].to;
  guint    k = 1;

  for (; k < n && spans[k].from < reach; k++)
    reach = MAX (reach, spans[k].to);
  return k;
}

static Span *
list_spans (const Pinning *self, const guint *items, guint n, gboolean along)
{
  Span *spans = g_new (Span, n + 1);

  for (guint k = 0; k < n; k++)
    {
      const RcNestItem *item = &self->task->items->items[items[k]];
      const RcNestSpot *spot = &self->pins->spots[items[k]];
      RcLength          from = along ? spot->along : spot->across;

      spans[k] = (Span){ from, from + (along ? item->h : item->w), items[k] };
    }
  qsort (spans, n, sizeof *spans, compare_spans);
  return spans;
}

/* Whether straight cuts of so many stages (-1: any number) part the items, the first along or across the roll. */
static gboolean
is_partable (const Pinning *self, const guint *items, guint n, gboolean along, int stages, gboolean stuck)
{
  g_autofree Span  *spans = list_spans (self, items, n, along);
  g_autofree guint *part = g_new (guint, n + 1);

  if (n <= 1 || stages == 0)
    return n <= 1;
  for (guint first = 0, next; first < n; first = next)
    {
      next = first + find_part (spans + first, n - first);
      for (guint k = first; k < next; k++)
        part[k - first] = spans[k].item;
      if ((next - first == n && stuck && stages < 0)
          || !is_partable (self, part, next - first, !along, MAX (stages - 1, -1), next - first == n))
        return FALSE;
    }
  return TRUE;
}

/* All pinned items of a bin that have a spot, and one more. */
static GArray *
list_in_bin (const Pinning *self, int bin)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint k = 0; k < self->n; k++)
    if (self->pins->spots[self->order[k]].bin == bin)
      g_array_append_val (list, self->order[k]);
  return list;
}

static gboolean
holds (const Pinning *self, int bin)
{
  g_autoptr (GArray) list = list_in_bin (self, bin);

  return is_partable (self, (const guint *)(gpointer)list->data, list->len, TRUE,
                      self->task->problem->stages > 0 ? self->task->problem->stages : -1, FALSE);
}

/* The phase of an item's pattern across, from the roll's left edge: that of a match follows from those of it that have
 * a place. FALSE: from none. */
static gboolean
find_across_phase (const Pinning *self, const RcNestItem *item, RcLength *phase)
{
  *phase = item->across_phase;
  if (item->across_match < 0)
    return TRUE;
  for (guint i = 0; i < self->task->items->n; i++)
    {
      const RcNestItem *other = &self->task->items->items[i];

      if (other->across_match != item->across_match || (!other->is_across_pinned && self->pins->spots[i].bin < 0))
        continue;
      *phase += (other->is_across_pinned ? other->across : self->pins->spots[i].across) - other->across_phase;
      return TRUE;
    }
  return FALSE;
}

/* The first place across a bin where the item can lie beside or before and behind those that are there. */
static gboolean
find_spot (Pinning *self, guint i, int bin)
{
  const RcNestItem *item = &self->task->items->items[i];
  RcNestSpot       *spot = &self->pins->spots[i];
  RcLength          width = self->task->bins->bins[bin].width;
  g_autoptr (GArray) edges = g_array_new (FALSE, FALSE, sizeof (RcLength));
  RcLength start = item->is_across_pinned ? item->across : 0, phase;
  gboolean has_phase = find_across_phase (self, item, &phase);

  g_array_append_val (edges, start);
  for (guint k = 0; k < self->n && !item->is_across_pinned; k++)
    if (self->pins->spots[self->order[k]].bin == bin)
      {
        RcLength edge = self->pins->spots[self->order[k]].across + self->task->items->items[self->order[k]].w;
        g_array_append_val (edges, edge);
      }
  for (guint e = 0; e < edges->len; e++)
    {
      RcLength across = g_array_index (edges, RcLength, e);

      if (has_phase)
        across = rc_nest_place_in_repeat (item->across_repeat, phase, across);
      if (across + item->w > width || (item->is_across_pinned && across != item->across))
        continue;
      *spot = (RcNestSpot){ bin, across, item->along };
      if (holds (self, bin))
        return TRUE;
    }
  spot->bin = -1;
  return FALSE;
}

/* Those with both places pinned first, then the wide ones. */
static int
compare_pinned (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const RcNestItem *items = user_data;
  const guint      *p = a, *q = b;

  if (items[*p].is_across_pinned != items[*q].is_across_pinned)
    return items[*p].is_across_pinned ? -1 : 1;
  if (items[*p].w != items[*q].w)
    return items[*p].w > items[*q].w ? -1 : 1;
  return *p < *q ? -1 : *p > *q;
}

static void
place_all (Pinning *self)
{
  for (guint i = 0; i < self->task->items->n; i++)
    {
      self->pins->spots[i] = (RcNestSpot){ -1, 0, 0 };
      if (self->task->items->items[i].is_along_pinned)
        self->order[self->n++] = i;
    }
  g_qsort_with_data (self->order, (gint)self->n, sizeof (guint), compare_pinned, self->task->items->items);
  for (guint k = 0; k < self->n; k++)
    for (int b = 0; b < (int)self->task->bins->n; b++)
      if (rc_nest_task_allows (self->task, &self->task->items->items[self->order[k]], &self->task->bins->bins[b])
          && find_spot (self, self->order[k], b))
        break;
}

static void
add_blocks (Pinning *self, RcNestPinnedLength *length, const Span *along, guint n)
{
  g_autofree guint *items = g_new (guint, n + 1);
  g_autofree Span  *across = NULL;
  RcLength          reach = 0, width = self->task->bins->bins[length->bin].width;

  for (guint k = 0; k < n; k++)
    items[k] = along[k].item;
  across = list_spans (self, items, n, FALSE);
  for (guint first = 0, next; first < n; first = next)
    {
      RcNestPinnedBlock *block = block_new (across[first].from, across[first].to);
      g_autofree Span   *sorted = NULL;

      next = first + find_part (across + first, n - first);
      for (guint k = first; k < next; k++)
        {
          items[k] = across[k].item;
          block->to = MAX (block->to, across[k].to);
        }
      if (block->from > reach)
        g_ptr_array_add (length->blocks, block_new (reach, block->from));
      sorted = list_spans (self, items + first, next - first, TRUE);
      for (guint k = 0; k < next - first; k++)
        g_array_append_val (block->pieces, sorted[k].item);
      reach = block->to;
      g_ptr_array_add (length->blocks, block);
    }
  if (reach < width)
    g_ptr_array_add (length->blocks, block_new (reach, width));
}

static void
add_lengths (Pinning *self, int bin)
{
  g_autoptr (GArray) list = list_in_bin (self, bin);
  g_autofree Span *spans = list_spans (self, (const guint *)(gpointer)list->data, list->len, TRUE);

  for (guint first = 0, next; first < list->len; first = next)
    {
      RcNestPinnedLength *length = g_new0 (RcNestPinnedLength, 1);

      next = first + find_part (spans + first, list->len - first);
      length->bin = bin;
      length->from = spans[first].from;
      for (guint k = first; k < next; k++)
        length->to = MAX (length->to, spans[k].to);
      length->blocks = g_ptr_array_new_with_free_func ((GDestroyNotify)block_free);
      add_blocks (self, length, spans + first, next - first);
      g_ptr_array_add (self->pins->lengths, length);
    }
}

RcNestPins *
rc_nest_pins_new (const RcNestTask *task)
{
  RcNestPins       *pins = g_new0 (RcNestPins, 1);
  g_autofree guint *order = g_new (guint, task->items->n + 1);
  Pinning           self = { task, pins, order, 0 };

  pins->lengths = g_ptr_array_new_with_free_func ((GDestroyNotify)length_free);
  pins->spots = g_new0 (RcNestSpot, task->items->n + 1);
  place_all (&self);
  for (int b = 0; b < (int)task->bins->n; b++)
    add_lengths (&self, b);
  return pins;
}

void
rc_nest_pins_free (RcNestPins *pins)
{
  if (pins == NULL)
    return;
  g_ptr_array_unref (pins->lengths);
  g_free (pins->spots);
  g_free (pins);
}

RcLength
rc_nest_pins_compute_bound (const RcNestTask *task)
{
  g_autofree RcLength *reach = g_new0 (RcLength, task->problem->rolls->len + 2);
  RcLength             bound = 0, most = 0;

  for (guint i = 0; i < task->items->n; i++)
    {
      const RcNestItem *item = &task->items->items[i];

      if (!item->is_along_pinned)
        continue;
      most = MAX (most, item->along + item->h);
      if (item->pinned > 0 && item->pinned <= task->problem->rolls->len)
        reach[item->pinned] = MAX (reach[item->pinned], item->along + item->h);
    }
  for (guint r = 1; r <= task->problem->rolls->len; r++)
    bound += reach[r];
  return MAX (bound, most);
}
