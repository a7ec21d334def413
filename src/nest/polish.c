#include "polish.h"

#include "leftover.h"

/* A length of a cutting that straight cuts across part from the rest. */
typedef struct
{
  int      bin;
  RcLength length;
  GArray  *items; /* of guint */
} Part;

typedef struct
{
  const RcNestTask  *task;
  const RcNestClock *clock;
  RcNestSpot        *spots, *tried;
  RcNestScore        score;
  GPtrArray         *parts; /* of Part, by bin and place along it */
  gboolean           better;
} Polish;

typedef struct
{
  RcLength from, to; /* across */
  RcLength length;
  guint    first, n; /* in items[] */
} Strip;

static void
part_free (Part *part)
{
  g_array_unref (part->items);
  g_free (part);
}

static void
list_parts (Polish *self)
{
  const RcNestTask         *task = self->task;
  g_autofree RcNestSegment *segments = g_new (RcNestSegment, task->items->n + 1);
  guint                     n = rc_nest_list_segments (task, self->spots, segments);

  g_ptr_array_set_size (self->parts, 0);
  for (guint s = 0; s < n; s++)
    {
      Part *part = g_new (Part, 1);

      *part = (Part){ segments[s].bin, segments[s].to - segments[s].from, g_array_new (FALSE, FALSE, sizeof (guint)) };
      for (guint i = 0; i < task->items->n; i++)
        if (self->spots[i].bin == segments[s].bin && self->spots[i].along >= segments[s].from
            && self->spots[i].along < segments[s].to)
          g_array_append_val (part->items, i);
      g_ptr_array_add (self->parts, part);
    }
}

/* Writes the parts one after another onto their bins into tried[]. FALSE: one does not go there. */
static gboolean
lay_out (Polish *self)
{
  const RcNestBins    *bins = self->task->bins;
  g_autofree RcLength *reach = g_new (RcLength, bins->n + 1);

  for (guint b = 0; b < bins->n; b++)
    reach[b] = bins->bins[b].start;
  for (guint p = 0; p < self->parts->len; p++)
    {
      const Part *part = self->parts->pdata[p];
      RcLength    from = G_MAXINT64;

      for (guint k = 0; k < part->items->len; k++)
        from = MIN (from, self->spots[g_array_index (part->items, guint, k)].along);
      for (guint k = 0; k < part->items->len; k++)
        {
          guint             i = g_array_index (part->items, guint, k);
          const RcNestItem *item = &self->task->items->items[i];

          self->tried[i]
              = (RcNestSpot){ part->bin, self->spots[i].across, self->spots[i].along - from + reach[part->bin] };
          if (!rc_nest_task_allows (self->task, item, &bins->bins[part->bin])
              || self->tried[i].across + item->w > bins->bins[part->bin].width)
            return FALSE;
        }
      reach[part->bin] += part->length;
      if (reach[part->bin] > bins->bins[part->bin].end)
        return FALSE;
    }
  return TRUE;
}

/* Takes tried[] over when it is better; what is proved by the used length stays proved. */
static gboolean
take (Polish *self)
{
  RcNestScore score = rc_nest_score (self->task, self->tried);

  if (rc_nest_score_compare (&score, &self->score) >= 0 || score.used > self->score.used)
    return FALSE;
  self->score = score;
  memcpy (self->spots, self->tried, sizeof (RcNestSpot) * self->task->items->n);
  self->better = TRUE;
  return TRUE;
}

static gboolean
is_over (const Polish *self)
{
  return self->clock != NULL && rc_nest_clock_is_over (self->clock);
}

/* One part goes to another bin, or two change bins. */
static gboolean
move_parts (Polish *self)
{
  guint n = self->parts->len;

  for (guint p = 0; p < n && !is_over (self); p++)
    {
      Part *part = self->parts->pdata[p];
      int   bin = part->bin;

      for (int b = 0; b < (int)self->task->bins->n; b++)
        {
          part->bin = b;
          if (b != bin && lay_out (self) && take (self))
            return TRUE;
        }
      part->bin = bin;
      for (guint q = p + 1; q < n; q++)
        {
          Part *other = self->parts->pdata[q];

          if (other->bin == bin || other->length == part->length)
            continue;
          part->bin = other->bin;
          other->bin = bin;
          if (lay_out (self) && take (self))
            return TRUE;
          other->bin = part->bin;
          part->bin = bin;
        }
    }
  return FALSE;
}

static int
compare_across (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const Polish *self = user_data;
  const guint  *p = a, *q = b;
  RcLength      x = self->spots[*p].across, y = self->spots[*q].across;

  return x < y ? -1 : x > y ? 1 : (int)*p - (int)*q;
}

static int
compare_widths (gconstpointer a, gconstpointer b)
{
  const Strip *p = a, *q = b;
  RcLength     x = p->to - p->from, y = q->to - q->from;

  return x > y ? -1 : x < y ? 1 : (int)p->first - (int)q->first;
}

/* The strips that rips part a length into, widest first; its items are sorted by them. */
static GArray *
list_strips (Polish *self, Part *part)
{
  GArray           *strips = g_array_new (FALSE, FALSE, sizeof (Strip));
  const RcNestItem *items = self->task->items->items;
  RcLength          base = G_MAXINT64;

  g_array_sort_with_data (part->items, compare_across, self);
  for (guint k = 0; k < part->items->len; k++)
    base = MIN (base, self->spots[g_array_index (part->items, guint, k)].along);
  for (guint k = 0; k < part->items->len; k++)
    {
      guint    i = g_array_index (part->items, guint, k);
      RcLength from = self->spots[i].across, to = from + items[i].w, end = self->spots[i].along + items[i].h - base;
      Strip   *last = strips->len > 0 ? &g_array_index (strips, Strip, strips->len - 1) : NULL;

      if (last != NULL && from < last->to)
        {
          last->to = MAX (last->to, to);
          last->length = MAX (last->length, end);
          last->n++;
        }
      else
        {
          Strip strip = { from, to, end, k, 1 };
          g_array_append_val (strips, strip);
        }
    }
  g_array_sort (strips, compare_widths);
  return strips;
}

/* Puts the items of a strip into tried[], its left edge at `across`, its beginning at `along`. */
static void
put_strip (Polish *self, const Part *part, const Strip *strip, int bin, RcLength across, RcLength along)
{
  RcLength base = G_MAXINT64;

  for (guint k = 0; k < part->items->len; k++)
    base = MIN (base, self->spots[g_array_index (part->items, guint, k)].along);
  for (guint k = strip->first; k < strip->first + strip->n; k++)
    {
      guint i = g_array_index (part->items, guint, k);

      self->tried[i]
          = (RcNestSpot){ bin, self->spots[i].across - strip->from + across, self->spots[i].along - base + along };
    }
}

/* Two lengths of a bin, the second laid behind the first strip by strip: then rips come before the cut between them,
 * and none goes right across. Fits when widest on widest is not too wide in all. */
static gboolean
merge (Polish *self, guint first, guint second)
{
  Part    *a = self->parts->pdata[first], *b = self->parts->pdata[second];
  RcLength across = 0, along = G_MAXINT64, begin = G_MAXINT64, width = self->task->bins->bins[a->bin].width;
  g_autoptr (GArray) lower = list_strips (self, a);
  g_autoptr (GArray) upper = list_strips (self, b);

  memcpy (self->tried, self->spots, sizeof (RcNestSpot) * self->task->items->n);
  for (guint k = 0; k < a->items->len; k++)
    along = MIN (along, self->spots[g_array_index (a->items, guint, k)].along);
  for (guint k = 0; k < b->items->len; k++)
    begin = MIN (begin, self->spots[g_array_index (b->items, guint, k)].along);
  for (guint p = first + 1; p < second; p++)
    for (guint k = 0; k < ((Part *)self->parts->pdata[p])->items->len; k++)
      self->tried[g_array_index (((Part *)self->parts->pdata[p])->items, guint, k)].along += b->length;
  for (guint k = 0; k < MAX (lower->len, upper->len); k++)
    {
      const Strip *under = k < lower->len ? &g_array_index (lower, Strip, k) : NULL;
      const Strip *over = k < upper->len ? &g_array_index (upper, Strip, k) : NULL;
      RcLength     wide = MAX (under != NULL ? under->to - under->from : 0, over != NULL ? over->to - over->from : 0);

      if (across + wide > width)
        return FALSE;
      if (under != NULL)
        put_strip (self, a, under, a->bin, across, along + (k % 2 == 1 && over != NULL ? over->length : 0));
      if (over != NULL)
        put_strip (self, b, over, a->bin, across, along + (k % 2 == 0 && under != NULL ? under->length : 0));
      across += wide;
    }
  return take (self);
}

static gboolean
merge_parts (Polish *self)
{
  for (guint p = 0; p < self->parts->len && !is_over (self); p++)
    for (guint q = p + 1; q < self->parts->len; q++)
      if (((Part *)self->parts->pdata[p])->bin == ((Part *)self->parts->pdata[q])->bin && merge (self, p, q))
        return TRUE;
  return FALSE;
}

gboolean
rc_nest_polish (const RcNestTask *task, const RcNestClock *clock, guint most_segments, RcNestSpot *spots)
{
  g_autofree RcNestSpot *tried = g_memdup2 (spots, sizeof (RcNestSpot) * (task->items->n + 1));
  Polish                 self = { task, clock, spots, tried, rc_nest_score (task, spots), NULL, FALSE };
  gboolean               again = !task->items->has_repeats && !task->items->is_tied && self.score.unplaced == 0
                   && self.score.cross_cuts <= most_segments;

  self.parts = g_ptr_array_new_with_free_func ((GDestroyNotify)part_free);
  while (again && !is_over (&self))
    {
      list_parts (&self);
      again = move_parts (&self) || merge_parts (&self);
    }
  g_ptr_array_unref (self.parts);
  return self.better;
}
