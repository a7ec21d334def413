#include "reason.h"

#include <glib/gi18n-lib.h>

#include "pins.h"

/* Why pins, patterns and matches contradict one another. */

typedef struct
{
  const char *name; /* of the match; NULL: counted from the roll */
  RcLength    repeat, phase, size;
  gboolean    is_pinned;
  RcLength    at; /* where it is pinned */
} Tie;

static Tie
get_tie (const RcNestTask *task, const RcNestItem *item, gboolean along)
{
  const RcNestItems *items = task->items;
  const char        *match = NULL;

  if (along)
    {
      match = item->match >= 0 ? items->matches->pdata[item->match] : NULL;
      return (Tie){ match, item->repeat, item->phase, item->h, item->is_along_pinned, item->along };
    }
  match = item->across_match >= 0 ? items->across_matches->pdata[item->across_match] : NULL;
  return (Tie){ match, item->across_repeat, item->across_phase, item->w, item->is_across_pinned, item->across };
}

static char *
say_leaves (const RcNestTask *task, const RcNestItem *item, RcLength by, gboolean along)
{
  g_autofree char *length = rc_nest_reason_format_length (by);

  if (along)
    return g_strdup_printf (_ ("Cut %s is pinned so far along that it ends %s beyond what can be cut of its roll"),
                            rc_nest_reason_get_label (task, item), length);
  return g_strdup_printf (_ ("Cut %s is pinned so far to the right that it leaves its roll by %s"),
                          rc_nest_reason_get_label (task, item), length);
}

/* Whether a place lies between the trimmed ends of some roll that the item may come from; *beyond gets by how much it
 * ends too late on the longest of them. */
static gboolean
is_within (const RcNestTask *task, const RcNestItem *item, RcLength *beyond)
{
  gboolean within = FALSE;

  *beyond = G_MAXINT64;
  for (guint b = 0; b < task->bins->n; b++)
    {
      const RcNestBin *bin = &task->bins->bins[b];
      RcLength         end = bin->roll_length > 0 ? bin->roll_length - bin->trim_end : bin->end;

      if (item->pinned > 0 && item->pinned != bin->source + 1)
        continue;
      *beyond = MIN (*beyond, item->along + item->h - end);
      within |= item->along + item->h <= end && item->along >= bin->start;
    }
  return within;
}

static char *
check_place (const RcNestTask *task, const RcNestItem *item)
{
  const char *label = rc_nest_reason_get_label (task, item);
  RcLength    widest = 0, beyond = 0;
  gboolean    fits = FALSE;

  for (guint b = 0; b < task->bins->n; b++)
    if (item->pinned == 0 || item->pinned == task->bins->bins[b].source + 1)
      {
        widest = MAX (widest, task->bins->bins[b].width);
        fits |= rc_nest_item_may_lie (item, &task->bins->bins[b]);
      }
  if (fits)
    return NULL;
  if (item->is_across_pinned && item->across + item->w > widest)
    return say_leaves (task, item, item->across + item->w - widest, FALSE);
  if ((item->is_across_pinned && item->across < 0) || (item->is_along_pinned && item->along < 0))
    return g_strdup_printf (_ ("Cut %s is pinned to a place before the roll’s edge: it must not be less than zero"),
                            label);
  if (item->is_along_pinned && !is_within (task, item, &beyond))
    {
      if (beyond > 0)
        return say_leaves (task, item, beyond, TRUE);
      return g_strdup_printf (_ ("Cut %s is pinned into the end that is trimmed off its roll"), label);
    }
  return g_strdup_printf (_ ("Cut %s is pinned over a damaged stretch of its roll"), label);
}

/* A place that is pinned against the pattern that is counted from the roll. */
static char *
check_own_pattern (const RcNestTask *task, const RcNestItem *item, gboolean along)
{
  Tie              tie = get_tie (task, item, along);
  RcLength         next = rc_nest_place_in_repeat (tie.repeat, tie.phase, tie.at);
  g_autofree char *at = NULL, *before = NULL, *after = NULL;

  if (!tie.is_pinned || tie.name != NULL || next == tie.at)
    return NULL;
  at = rc_nest_reason_format_length (tie.at);
  before = rc_nest_reason_format_length (next - tie.repeat);
  after = rc_nest_reason_format_length (next);
  return g_strdup_printf (along ? _ ("Cut %s is pinned at %s along the roll, but its pattern falls at %s and at %s")
                                : _ ("Cut %s is pinned at %s across the roll, but its pattern falls at %s and at %s"),
                          rc_nest_reason_get_label (task, item), at, before, after);
}

/* The cuts of one match against each other. */
static char *
check_match (const RcNestTask *task, const RcNestItem *item, const RcNestItem *other, gboolean along)
{
  Tie         a = get_tie (task, item, along), b = get_tie (task, other, along);
  const char *label = rc_nest_reason_get_label (task, item), *other_label = rc_nest_reason_get_label (task, other);
  RcLength    shift = (a.at - a.phase) - (b.at - b.phase), off;

  if (a.repeat != b.repeat)
    {
      g_autofree char *has = rc_nest_reason_format_length (a.repeat);
      g_autofree char *wants = rc_nest_reason_format_length (b.repeat);

      return g_strdup_printf (_ ("Cuts %s and %s are of one match, %s, but one has a repeat of %s, the other of %s"),
                              label, other_label, a.name, has, wants);
    }
  if (!a.is_pinned || !b.is_pinned || shift % a.repeat == 0)
    return NULL;
  off = ABS (shift) % a.repeat;
  {
    g_autofree char *by = rc_nest_reason_format_length (MIN (off, a.repeat - off));

    return g_strdup_printf (_ ("Cuts %s and %s are pinned so that their pattern, of match %s, is off by %s"), label,
                            other_label, a.name, by);
  }
}

/* The first cut of each match that is pinned, or else the first of all, is what the others are held against. */
static char *
check_matches (const RcNestTask *task, const GPtrArray *names, gboolean along)
{
  const RcNestItems            *items = task->items;
  g_autofree const RcNestItem **first = g_new0 (const RcNestItem *, names->len + 1);

  for (int round = 0; round < 3; round++)
    for (guint i = 0; i < items->n; i++)
      {
        const RcNestItem *item = &items->items[i];
        int               match = along ? item->match : item->across_match;
        gboolean          pinned = along ? item->is_along_pinned : item->is_across_pinned;
        char             *reason;

        if (match < 0)
          continue;
        if (round < 2 && first[match] == NULL && (pinned || round == 1))
          first[match] = item;
        reason = round == 2 ? check_match (task, first[match], item, along) : NULL;
        if (reason != NULL)
          return reason;
      }
  return NULL;
}

/* The one roll an item surely comes from: its index in the problem's rolls; -1: not known. */
static int
find_only_roll (const RcNestTask *task, const RcNestItem *item)
{
  const GPtrArray *rolls = task->problem->rolls;
  guint            roll = item->pinned > 0 ? item->pinned - 1 : 0;

  if (rolls->len == 0)
    return 0;
  if ((item->pinned == 0 && rolls->len > 1) || roll >= rolls->len)
    return -1;
  return ((RcNestRoll *)rolls->pdata[roll])->length == 0 || ((RcNestRoll *)rolls->pdata[roll])->count == 1 ? (int)roll
                                                                                                           : -1;
}

static char *
check_overlap (const RcNestTask *task, const RcNestItem *a, const RcNestItem *b)
{
  RcLength along = MIN (a->along + a->h, b->along + b->h) - MAX (a->along, b->along);
  RcLength across = MIN (a->across + a->w, b->across + b->w) - MAX (a->across, b->across);

  if (along <= 0 || across <= 0 || find_only_roll (task, a) < 0 || find_only_roll (task, a) != find_only_roll (task, b))
    return NULL;
  {
    g_autofree char *over = rc_nest_reason_format_length (across);
    g_autofree char *by = rc_nest_reason_format_length (along);

    return g_strdup_printf (_ ("Cuts %s and %s are pinned over each other, %s across and %s along the roll"),
                            rc_nest_reason_get_label (task, a), rc_nest_reason_get_label (task, b), over, by);
  }
}

static const char *
get_roll_name (const RcNestTask *task, guint pinned)
{
  const RcNestRoll *roll = task->problem->rolls->pdata[pinned - 1];

  return roll->name != NULL ? roll->name : _ ("goods to be bought");
}

/* Cuts of one group pinned to rolls of two lots. */
static char *
check_lots (const RcNestTask *task, const RcNestItem *a, const RcNestItem *b)
{
  const GPtrArray *rolls = task->problem->rolls;

  if (a->group < 0 || a->group != b->group || a->pinned == 0 || b->pinned == 0
      || g_strcmp0 (((RcNestRoll *)rolls->pdata[a->pinned - 1])->lot, ((RcNestRoll *)rolls->pdata[b->pinned - 1])->lot)
             == 0)
    return NULL;
  return g_strdup_printf (
      _ ("The cuts of %s must come from one dye lot, but %s is pinned to %s and %s to %s, which are "
         "of two lots"),
      (const char *)task->items->groups->pdata[a->group], rc_nest_reason_get_label (task, a),
      get_roll_name (task, a->pinned), rc_nest_reason_get_label (task, b), get_roll_name (task, b->pinned));
}

static char *
check_pairs (const RcNestTask *task)
{
  g_autoptr (GPtrArray) pinned = g_ptr_array_new ();

  for (guint i = 0; i < task->items->n; i++)
    {
      RcNestItem *item = &task->items->items[i];
      gboolean    placed = item->is_along_pinned && item->is_across_pinned;

      for (guint k = 0; k < pinned->len; k++)
        {
          const RcNestItem *other = pinned->pdata[k];
          char             *reason = check_lots (task, other, item);

          if (reason == NULL && placed && other->is_along_pinned && other->is_across_pinned)
            reason = check_overlap (task, other, item);
          if (reason != NULL)
            return reason;
        }
      if (placed || (item->pinned > 0 && item->group >= 0 && item->copy == 0))
        g_ptr_array_add (pinned, item);
    }
  return NULL;
}

static char *
check_own (const RcNestTask *task, const RcNestItem *item)
{
  guint n_rolls = MAX (task->problem->rolls->len, 1);
  char *reason;

  if (item->pinned > n_rolls)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Cut %s is pinned to roll %u, but there is only %u",
                                         "Cut %s is pinned to roll %u, but there are only %u", n_rolls),
                            rc_nest_reason_get_label (task, item), item->pinned, n_rolls);
  reason = check_place (task, item);
  if (reason == NULL)
    reason = check_own_pattern (task, item, TRUE);
  return reason != NULL ? reason : check_own_pattern (task, item, FALSE);
}

char *
rc_nest_reason_for_ties (const RcNestTask *task)
{
  char *reason = NULL;

  for (guint i = 0; i < task->items->n && reason == NULL; i++)
    if (task->items->items[i].copy == 0)
      reason = check_own (task, &task->items->items[i]);
  if (reason == NULL)
    reason = check_matches (task, task->items->matches, TRUE);
  if (reason == NULL)
    reason = check_matches (task, task->items->across_matches, FALSE);
  return reason != NULL ? reason : check_pairs (task);
}
