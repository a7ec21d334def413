#include "tree.h"

/* Taking a cutting apart by straight cuts into a tree. */

typedef struct
{
  RcNestTree       *tree;
  const RcNestSpot *spots;
} Load;

static int
compare_starts (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const RcNestSpot *spots = ((const Load *)user_data)->spots;
  const RcNestSpot *p = &spots[*(const int *)a], *q = &spots[*(const int *)b];

  return p->across < q->across ? -1 : p->across > q->across ? 1 : *(const int *)a - *(const int *)b;
}

static int
compare_starts_along (gconstpointer a, gconstpointer b, gpointer user_data)
{
  const RcNestSpot *spots = ((const Load *)user_data)->spots;
  const RcNestSpot *p = &spots[*(const int *)a], *q = &spots[*(const int *)b];

  return p->along < q->along ? -1 : p->along > q->along ? 1 : *(const int *)a - *(const int *)b;
}

static void
load_part (Load *load, int parent, int *items, guint n, gboolean failed)
{
  RcNestTree       *tree = load->tree;
  RcNestNodeKind    kind = tree->nodes[parent].kind;
  const RcNestItem *all = tree->task->items->items;
  guint             first = 0;

  g_qsort_with_data (items, (gint)n, sizeof *items, kind == RC_NEST_STACK ? compare_starts_along : compare_starts,
                     load);
  while (first < n)
    {
      RcLength reach = G_MININT64;
      guint    next = first;
      int      child;

      for (; next < n; next++)
        {
          const RcNestSpot *spot = &load->spots[items[next]];
          RcLength          from = kind == RC_NEST_STACK ? spot->along : spot->across;
          RcLength          size = kind == RC_NEST_STACK ? all[items[next]].h : all[items[next]].w;

          if (next > first && from >= reach)
            break;
          reach = MAX (reach, from + size);
        }
      if (next - first == 1)
        rc_nest_tree_add_child (tree, parent, items[first]);
      else if (failed && first == 0 && next == n)
        return; /* not cuttable: left out */
      else
        {
          child = rc_nest_tree_add_inner (tree, parent);
          load_part (load, child, items + first, next - first, first == 0 && next == n);
        }
      first = next;
    }
}

void
rc_nest_tree_load (RcNestTree *tree, const RcNestSpot *spots)
{
  g_autofree int *items = g_new (int, tree->n_leaves + 1);
  Load            load = { tree, spots };

  for (int b = 0; b < tree->n_roots; b++)
    {
      guint n = 0;

      for (int i = 0; i < tree->n_leaves; i++)
        if (spots[i].bin == b)
          items[n++] = i;
      load_part (&load, tree->n_leaves + b, items, n, FALSE);
    }
  rc_nest_tree_settle (tree);
}
