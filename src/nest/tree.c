#include "tree.h"

static RcLength
round_up (const RcNestTree *self, RcLength length)
{
  return self->repeat == 1 ? length : rc_length_round_up (length, self->repeat);
}

static double *
make_weights (const RcNestBins *bins)
{
  double *weights = g_new (double, bins->n + 1);
  gint64  dearest = 1;

  for (guint b = 0; b < bins->n; b++)
    dearest = MAX (dearest, bins->bins[b].cost_per_m);
  for (guint b = 0; b < bins->n; b++)
    weights[b] = MAX ((double)bins->bins[b].cost_per_m / (double)dearest, 1e-3);
  return weights;
}

RcNestTree *
rc_nest_tree_new (const RcNestTask *task)
{
  RcNestTree *self = g_new0 (RcNestTree, 1);

  self->task = task;
  self->n_leaves = (int)task->items->n;
  self->n_roots = (int)task->bins->n;
  self->most_nodes = 3 * self->n_leaves + self->n_roots + 4;
  self->nodes = g_new0 (RcNestNode, self->most_nodes);
  self->stages = task->problem->stages > 0 ? task->problem->stages : G_MAXINT;
  self->repeat = task->items->has_repeats ? task->items->items[0].repeat : 1;
  for (int v = 0; v < self->n_leaves; v++)
    {
      const RcNestItem *item = &task->items->items[v];

      self->nodes[v] = (RcNestNode){ item->w, item->h, item->w * item->h, 0, 0, -1, -1, -1, -1, RC_NEST_LEAF, 1 };
    }
  for (int b = 0; b < self->n_roots; b++)
    self->nodes[self->n_leaves + b] = (RcNestNode){ 0, 0, 0, 0, 0, -1, -1, -1, -1, RC_NEST_STACK, 0 };
  self->n_nodes = self->n_leaves + self->n_roots;
  self->free_node = -1;
  self->weights = make_weights (task->bins);
  self->touched = g_new0 (guint32, self->most_nodes);
  self->open_share = 256;
  self->goal = G_MAXDOUBLE;
  self->outside_weight = 1;
  return self;
}

void
rc_nest_tree_free (RcNestTree *self)
{
  if (self == NULL)
    return;
  g_free (self->nodes);
  g_free (self->weights);
  g_free (self->touched);
  g_free (self);
}

void
rc_nest_tree_copy (RcNestTree *to, const RcNestTree *from)
{
  memcpy (to->nodes, from->nodes, sizeof (RcNestNode) * (gsize)from->n_nodes);
  to->n_nodes = from->n_nodes;
  to->free_node = from->free_node;
  to->goal = from->goal;
  to->outside_weight = from->outside_weight;
}

void
rc_nest_tree_begin_step (RcNestTree *self, guint32 salt, guint most_leaves)
{
  self->step++;
  self->salt = salt;
  self->open_share = self->n_leaves > (int)most_leaves ? 256 * most_leaves / (guint)self->n_leaves : 256;
}

double
rc_nest_tree_get_used (const RcNestTree *self)
{
  double used = 0;

  for (int b = 0; b < self->n_roots; b++)
    used += self->weights[b] * (double)self->nodes[self->n_leaves + b].h;
  return used;
}

static gboolean
is_root (const RcNestTree *self, int v)
{
  return v >= self->n_leaves && v < self->n_leaves + self->n_roots;
}

gboolean
rc_nest_tree_holds (const RcNestTree *self, int item)
{
  return self->nodes[item].parent >= 0;
}

static int
take_node (RcNestTree *self, RcNestNodeKind kind)
{
  int v = self->free_node;

  if (v >= 0)
    self->free_node = self->nodes[v].next;
  else
    v = self->n_nodes++;
  self->nodes[v] = (RcNestNode){ 0, 0, 0, 0, 0, -1, -1, -1, -1, kind, 0 };
  return v;
}

static void
link_child (RcNestTree *self, int parent, int child)
{
  RcNestNode *p = &self->nodes[parent], *c = &self->nodes[child];

  c->parent = parent;
  c->prev = -1;
  c->next = p->first;
  if (p->first >= 0)
    self->nodes[p->first].prev = child;
  p->first = child;
}

static void
unlink_child (RcNestTree *self, int child)
{
  RcNestNode *c = &self->nodes[child];

  if (c->prev >= 0)
    self->nodes[c->prev].next = c->next;
  else
    self->nodes[c->parent].first = c->next;
  if (c->next >= 0)
    self->nodes[c->next].prev = c->prev;
  c->parent = c->next = c->prev = -1;
}

static void
measure (RcNestTree *self, int v)
{
  RcNestNode *node = &self->nodes[v];

  node->w = node->h = node->pitch = node->slack = node->area = node->n_leaves = 0;
  for (int c = node->first; c >= 0; c = self->nodes[c].next)
    {
      const RcNestNode *child = &self->nodes[c];

      node->area += child->area;
      node->n_leaves += child->n_leaves;
      if (node->kind == RC_NEST_ROW)
        {
          node->w += child->w;
          node->h = MAX (node->h, child->h);
        }
      else
        {
          RcLength pitch = round_up (self, child->h);

          node->w = MAX (node->w, child->w);
          node->pitch += pitch;
          node->slack = MAX (node->slack, pitch - child->h);
        }
    }
  if (node->kind == RC_NEST_STACK)
    node->h = node->pitch - node->slack;
}

static void
measure_up (RcNestTree *self, int v)
{
  for (; v >= 0; v = self->nodes[v].parent)
    {
      measure (self, v);
      self->touched[v] = self->step;
    }
}

/* A node with one child gives its place to the child, whose own children move up when it is of the parent's kind. */
static void
collapse (RcNestTree *self, int v)
{
  int parent = self->nodes[v].parent, child = self->nodes[v].first;

  unlink_child (self, v);
  if (child >= 0)
    {
      unlink_child (self, child);
      if (self->nodes[child].kind != self->nodes[parent].kind)
        link_child (self, parent, child);
      else
        {
          for (int c = self->nodes[child].first; c >= 0; c = self->nodes[child].first)
            {
              unlink_child (self, c);
              link_child (self, parent, c);
            }
          self->nodes[child].next = self->free_node;
          self->free_node = child;
        }
    }
  self->nodes[v].next = self->free_node;
  self->free_node = v;
}

void
rc_nest_tree_remove (RcNestTree *self, int item)
{
  int parent = self->nodes[item].parent;

  unlink_child (self, item);
  while (!is_root (self, parent) && (self->nodes[parent].first < 0 || self->nodes[self->nodes[parent].first].next < 0))
    {
      int above = self->nodes[parent].parent;

      collapse (self, parent);
      parent = above;
    }
  measure_up (self, parent);
}

/* Puts a new inner node in the place of v, with v its only child. */
static int
wrap (RcNestTree *self, int v, RcNestNodeKind kind)
{
  int inner = take_node (self, kind), parent = self->nodes[v].parent;

  unlink_child (self, v);
  link_child (self, parent, inner);
  link_child (self, inner, v);
  return inner;
}

gboolean
rc_nest_tree_is_lower (const RcNestTree *self, RcNestNodeKind kind, int a, int b)
{
  const RcNestNode *p = &self->nodes[a], *q = &self->nodes[b];
  RcLength          size_a = kind == RC_NEST_ROW ? p->h : p->w, size_b = kind == RC_NEST_ROW ? q->h : q->w;

  return size_a < size_b || (size_a == size_b && a < b);
}

/* The lowest child that comes after `last` in the order of is_lower; last -1: the very lowest. */
static int
find_lowest (const RcNestTree *self, int parent, int last)
{
  RcNestNodeKind kind = self->nodes[parent].kind;
  int            best = -1;

  for (int c = self->nodes[parent].first; c >= 0; c = self->nodes[c].next)
    if ((last < 0 || rc_nest_tree_is_lower (self, kind, last, c))
        && (best < 0 || rc_nest_tree_is_lower (self, kind, c, best)))
      best = c;
  return best;
}

static void
put_on_group (RcNestTree *self, int item, int parent, int n_group)
{
  RcNestNodeKind kind = self->nodes[parent].kind;
  int            both = take_node (self, kind == RC_NEST_ROW ? RC_NEST_STACK : RC_NEST_ROW);
  int            under = take_node (self, kind), last = -1;
  int            group[RC_NEST_MOST_GROUP];

  for (int k = 0; k < n_group; k++)
    group[k] = last = find_lowest (self, parent, last);
  for (int k = 0; k < n_group; k++)
    {
      unlink_child (self, group[k]);
      link_child (self, under, group[k]);
    }
  link_child (self, both, under);
  link_child (self, both, item);
  link_child (self, parent, both);
  measure (self, under);
  measure_up (self, both);
}

/* With a repeat the growth of a place is an estimate, so the end is checked once the item is in. */
static gboolean
is_in_its_bin (const RcNestTree *self, int v)
{
  int bin;

  while (self->nodes[v].parent >= 0)
    v = self->nodes[v].parent;
  bin = v - self->n_leaves;
  return rc_nest_tree_get_base (self, bin) + self->nodes[v].h <= self->task->bins->bins[bin].end;
}

static void
put (RcNestTree *self, int item, const RcNestPlace *place)
{
  int v = place->node;

  if (place->group > 0)
    {
      put_on_group (self, item, v, place->group);
      return;
    }
  if (self->nodes[v].kind == RC_NEST_LEAF)
    v = wrap (self, v, self->nodes[self->nodes[v].parent].kind == RC_NEST_ROW ? RC_NEST_STACK : RC_NEST_ROW);
  link_child (self, v, item);
  measure_up (self, v);
}

void
rc_nest_tree_add_child (RcNestTree *self, int parent, int child)
{
  link_child (self, parent, child);
}

int
rc_nest_tree_add_inner (RcNestTree *self, int parent)
{
  int inner = take_node (self, self->nodes[parent].kind == RC_NEST_ROW ? RC_NEST_STACK : RC_NEST_ROW);

  link_child (self, parent, inner);
  return inner;
}

static void
settle (RcNestTree *self, int v)
{
  for (int c = self->nodes[v].first, next; c >= 0; c = next)
    {
      next = self->nodes[c].next;
      if (self->nodes[c].kind != RC_NEST_LEAF)
        settle (self, c);
    }
  if (!is_root (self, v) && (self->nodes[v].first < 0 || self->nodes[self->nodes[v].first].next < 0))
    collapse (self, v);
  else
    measure (self, v);
}

void
rc_nest_tree_settle (RcNestTree *self)
{
  for (int b = 0; b < self->n_roots; b++)
    settle (self, self->n_leaves + b);
}

gboolean
rc_nest_tree_put (RcNestTree *self, int item, const RcNestPlace *place)
{
  put (self, item, place);
  if (self->repeat == 1 || is_in_its_bin (self, item))
    return TRUE;
  rc_nest_tree_remove (self, item);
  return FALSE;
}

static void
place_node (const RcNestTree *self, int v, int bin, RcLength across, RcLength along, RcNestSpot *spots)
{
  const RcNestNode *node = &self->nodes[v];
  int               last = -1;

  if (node->kind == RC_NEST_LEAF)
    {
      spots[v] = (RcNestSpot){ bin, across, along };
      return;
    }
  for (int c = node->first; c >= 0 && node->kind == RC_NEST_STACK; c = self->nodes[c].next)
    if (round_up (self, self->nodes[c].h) - self->nodes[c].h == node->slack)
      last = c;
  for (int c = node->first; c >= 0; c = self->nodes[c].next)
    {
      if (c == last)
        continue;
      place_node (self, c, bin, across, along, spots);
      if (node->kind == RC_NEST_ROW)
        across += self->nodes[c].w;
      else
        along += round_up (self, self->nodes[c].h);
    }
  if (last >= 0)
    place_node (self, last, bin, across, along, spots);
}

void
rc_nest_tree_to_spots (const RcNestTree *self, RcNestSpot *spots)
{
  for (int i = 0; i < self->n_leaves; i++)
    spots[i] = (RcNestSpot){ -1, 0, 0 };
  for (int b = 0; b < self->n_roots; b++)
    if (self->nodes[self->n_leaves + b].first >= 0)
      place_node (self, self->n_leaves + b, b, 0, rc_nest_tree_get_base (self, b), spots);
}

RcLength
rc_nest_tree_get_base (const RcNestTree *self, int bin)
{
  RcLength start = self->task->bins->bins[bin].start;

  return self->n_leaves > 0 ? rc_nest_item_place (&self->task->items->items[0], start) : start;
}
