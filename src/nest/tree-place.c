#include "tree.h"

#include "random.h"

typedef struct
{
  const RcNestTree *tree;
  const RcNestItem *item;
  RcNestFit         fit;
  RcNestRandom     *random;
  double            weight; /* of one tick of growth of the bin at hand */
  RcLength          room;   /* most growth of the bin at hand that is still of interest */
  gint64            area;   /* of the item */
  RcNestPlace       best;
} Search;

static double
measure_fit (const Search *search, RcLength free_w, RcLength free_h)
{
  RcLength w = search->item->w, h = search->item->h;

  free_h = MAX (free_h, h);
  switch (search->fit)
    {
    case RC_NEST_FIT_SHORT_SIDE:
      return (double)MIN (free_w - w, free_h - h);
    case RC_NEST_FIT_WIDTH:
      return (double)(free_w - w) + 1e-3 * (double)(free_h - h);
    case RC_NEST_FIT_AREA:
    default:
      return (double)free_w * (double)free_h;
    }
}

/* A free space of free_w x free_h, where free_h may be exceeded at the price of growth. */
static void
consider (Search *search, int node, int group, RcLength free_w, RcLength free_h)
{
  RcLength growth = MAX (0, search->item->h - free_h);
  double   cost, fit;

  if (free_w < search->item->w || growth > search->room)
    return;
  cost = (double)growth * search->weight;
  fit = measure_fit (search, free_w, free_h);
  if (cost > search->best.cost || (cost == search->best.cost && fit >= search->best.fit))
    return;
  if (rc_nest_random_below (search->random, 100) == 0)
    return;
  search->best = (RcNestPlace){ node, group, growth, cost, fit };
  search->room = growth;
}

/* The least group of low siblings (short ones of a row, narrow ones of a stack) that is long enough to carry the item
 * on top, or beside it, if it fits there. */
static void
consider_groups (Search *search, int parent, RcLength alloc_w, RcLength alloc_h)
{
  const RcNestTree *tree = search->tree;
  const RcNestNode *nodes = tree->nodes;
  RcNestNodeKind    kind = nodes[parent].kind;
  gboolean          row = kind == RC_NEST_ROW;
  RcLength          most = row ? alloc_h - search->item->h : alloc_w - search->item->w;
  RcLength          spare = row ? alloc_w - nodes[parent].w : alloc_h - nodes[parent].h, base = 0;
  RcLength          wanted = (row ? search->item->w : search->item->h) - spare;
  int               low[RC_NEST_MOST_GROUP], n = 0, n_children = 0;

  for (int c = nodes[parent].first; c >= 0; c = nodes[c].next)
    {
      int k;

      n_children++;
      if ((row ? nodes[c].h : nodes[c].w) > most
          || (n == RC_NEST_MOST_GROUP && !rc_nest_tree_is_lower (tree, kind, c, low[n - 1])))
        continue;
      for (k = MIN (n, RC_NEST_MOST_GROUP - 1); k > 0 && rc_nest_tree_is_lower (tree, kind, c, low[k - 1]); k--)
        low[k] = low[k - 1];
      low[k] = c;
      n = MIN (n + 1, RC_NEST_MOST_GROUP);
    }
  for (int k = 0; k < n && k + 1 < n_children; k++)
    {
      base += row ? nodes[low[k]].w : nodes[low[k]].h;
      if (k == 0 || base < wanted)
        continue;
      if (row)
        consider (search, parent, k + 1, base + spare, alloc_h - nodes[low[k]].h);
      else
        consider (search, parent, k + 1, alloc_w - nodes[low[k]].w, base + spare);
      return;
    }
}

/* Whether the item, put anywhere inside the node's own space with spare_w and spare_h to grow, has no room or costs
 * more than the best place known: it is too wide, or too long, or there is not enough area left. */
static inline gboolean
is_hopeless (const Search *search, const RcNestNode *node, RcLength spare_w, RcLength spare_h)
{
  RcLength w = node->w + spare_w, h = node->h + spare_h + search->room;
  gint64   space; /* beside a roll without an end it is more than a number holds */

  return w < search->item->w || h < search->item->h
         || (!__builtin_mul_overflow (w, h, &space) && search->area + node->area > space);
}

/* Whether a length is left out in this step. */
static inline gboolean
is_closed (const RcNestTree *tree, int v)
{
  guint32 mixed = ((guint32)v ^ tree->salt) * 0x9e3779b1u;

  return tree->touched[v] != tree->step && (mixed >> 24) >= tree->open_share;
}

/* spare_w, spare_h: how much node v may grow without moving anything else. */
static void
visit (Search *search, int v, RcLength spare_w, RcLength spare_h, int depth)
{
  const RcNestTree *tree = search->tree;
  const RcNestNode *node = &tree->nodes[v];
  const RcNestItem *item = search->item;
  RcLength          low = 0; /* the sum of the children that leave the item room beside or after each of them */
  int               n_low = 0;
  gboolean          in_row = depth > 0 && tree->nodes[MAX (node->parent, 0)].kind == RC_NEST_ROW;

  if (node->kind == RC_NEST_LEAF)
    {
      if (depth >= tree->stages)
        return;
      if (in_row)
        consider (search, v, 0, node->w + spare_w,
                  spare_h - (tree->repeat > 1 ? rc_length_round_up (node->h, tree->repeat) - node->h : 0));
      else
        consider (search, v, 0, spare_w, node->h + spare_h);
      return;
    }
  if (node->kind == RC_NEST_ROW)
    {
      consider (search, v, 0, spare_w, node->h + spare_h);
      for (int c = node->first; c >= 0; c = tree->nodes[c].next)
        {
          RcLength more = spare_h + node->h - tree->nodes[c].h;

          if (more >= item->h)
            {
              n_low++;
              low += tree->nodes[c].w;
            }
          if (!is_hopeless (search, &tree->nodes[c], spare_w, more))
            visit (search, c, spare_w, more, depth + 1);
        }
      if (n_low > 1 && low + spare_w >= item->w && depth + 3 <= tree->stages && tree->repeat == 1)
        consider_groups (search, v, node->w + spare_w, node->h + spare_h);
      return;
    }
  if (tree->repeat == 1)
    consider (search, v, 0, node->w + spare_w, spare_h);
  else
    {
      RcLength pitch = rc_length_round_up (item->h, tree->repeat);
      RcLength grown = node->pitch + pitch - MAX (node->slack, pitch - item->h);

      consider (search, v, 0, node->w + spare_w, spare_h + item->h - (grown - node->h));
    }
  for (int c = node->first; c >= 0; c = tree->nodes[c].next)
    {
      const RcNestNode *child = &tree->nodes[c];
      RcLength          more = spare_h;

      if (tree->repeat > 1)
        more = rc_length_round_up (child->h, tree->repeat) - child->h + spare_h / tree->repeat * tree->repeat;
      if (spare_w + node->w - child->w >= item->w)
        {
          n_low++;
          low += child->h;
        }
      if ((depth == 0 && is_closed (tree, c)) || is_hopeless (search, child, spare_w + node->w - child->w, more))
        continue;
      visit (search, c, spare_w + node->w - child->w, more, depth + 1);
    }
  if (n_low > 1 && low + spare_h >= item->h && tree->stages == G_MAXINT && tree->repeat == 1)
    consider_groups (search, v, node->w + spare_w, node->h + spare_h);
}

/* By how much the used length may grow for an item: up to the goal, and beyond as far as that, which counts twice, is
 * no worse than to leave the item outside. */
static double
find_slack (const RcNestTree *tree, const RcNestItem *item)
{
  double area = (double)item->w * (double)item->h, width = (double)tree->task->bins->bins[0].width;

  return MAX (tree->goal - rc_nest_tree_get_used (tree), 0) + tree->outside_weight * area / (2 * width);
}

RcNestPlace
rc_nest_tree_find_place (const RcNestTree *tree, int item, RcNestFit fit, RcNestRandom *random)
{
  const RcNestBins *bins = tree->task->bins;
  Search            search
      = { tree, &tree->task->items->items[item], fit, random, 1, 0, 0, { -1, 0, 0, G_MAXDOUBLE, G_MAXDOUBLE } };
  gboolean seen_empty = FALSE;
  double   slack = find_slack (tree, search.item);

  search.area = search.item->w * search.item->h;
  for (int b = 0; b < tree->n_roots; b++)
    {
      const RcNestBin  *bin = &bins->bins[b];
      int               root = tree->n_leaves + b;
      const RcNestNode *node = &tree->nodes[root];
      gboolean          empty = node->first < 0;

      if (!rc_nest_task_allows (tree->task, search.item, bin))
        continue;
      if (empty && b > 0 && seen_empty && bin->source == bins->bins[b - 1].source
          && bin->start == bins->bins[b - 1].start)
        continue;
      seen_empty = empty;
      search.weight = tree->weights[b];
      search.room = bin->end - rc_nest_tree_get_base (tree, b) - node->h;
      if (MIN (slack, search.best.cost) < (double)search.room * search.weight)
        search.room = (RcLength)(MIN (slack, search.best.cost) / search.weight);
      visit (&search, root, bin->width - node->w, 0, 0);
    }
  return search.best;
}
