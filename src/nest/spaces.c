#include "spaces.h"

enum
{
  BLOCK = RC_NEST_SPACES_BLOCK
};

void
rc_nest_spaces_init (RcNestSpaces *self)
{
  *self = (RcNestSpaces){ 0 };
}

void
rc_nest_spaces_clear (RcNestSpaces *self)
{
  g_free (self->blocks);
  g_free (self->parts);
  g_free (self->idle);
}

void
rc_nest_spaces_reset (RcNestSpaces *self)
{
  self->n_parts = self->n_idle = 0;
  for (int b = self->n_blocks; b-- > 0;)
    self->idle[self->n_idle++] = b;
}

static inline gboolean
is_before (RcLength key, int id, RcLength other_key, int other_id)
{
  return key < other_key || (key == other_key && id < other_id);
}

/* The first part that does not end before the key and id. */
static int
find_part (const RcNestSpaces *self, RcLength key, int id)
{
  int lo = 0, hi = self->n_parts;

  while (lo < hi)
    {
      int mid = (lo + hi) / 2;

      if (is_before (self->parts[mid].last_key, self->parts[mid].last_id, key, id))
        lo = mid + 1;
      else
        hi = mid;
    }
  return lo;
}

/* The first space of a part that does not come before the key and id. */
static int
find_in_part (const RcNestSpaces *self, int part, RcLength key, int id)
{
  const RcNestSpace *spaces = self->blocks[self->parts[part].block].spaces;
  int                lo = 0, hi = self->parts[part].n;

  while (lo < hi)
    {
      int mid = (lo + hi) / 2;

      if (is_before (spaces[mid].key, spaces[mid].id, key, id))
        lo = mid + 1;
      else
        hi = mid;
    }
  return lo;
}

static void
note_changes (RcNestSpaces *self, int part)
{
  RcNestSpacesPart  *noted = &self->parts[part];
  const RcNestSpace *spaces = self->blocks[noted->block].spaces;

  noted->last_key = spaces[noted->n - 1].key;
  noted->last_id = spaces[noted->n - 1].id;
  noted->most_room = 0;
  for (int k = 0; k < noted->n; k++)
    noted->most_room = MAX (noted->most_room, spaces[k].room);
}

static void
insert_part (RcNestSpaces *self, int part)
{
  if (self->n_idle == 0)
    {
      int more = MAX (self->n_blocks, 1);

      self->blocks = g_renew (RcNestSpacesBlock, self->blocks, self->n_blocks + more);
      self->parts = g_renew (RcNestSpacesPart, self->parts, self->n_blocks + more);
      self->idle = g_renew (int, self->idle, self->n_blocks + more);
      for (int b = more; b-- > 0;)
        self->idle[self->n_idle++] = self->n_blocks + b;
      self->n_blocks += more;
    }
  memmove (self->parts + part + 1, self->parts + part, sizeof *self->parts * (gsize)(self->n_parts - part));
  self->parts[part] = (RcNestSpacesPart){ .block = self->idle[--self->n_idle] };
  self->n_parts++;
}

/* The second half of a full part becomes one of its own. */
static void
split_part (RcNestSpaces *self, int part)
{
  int n = self->parts[part].n / 2;

  insert_part (self, part + 1);
  self->parts[part + 1].n = self->parts[part].n - n;
  self->parts[part].n = n;
  memcpy (self->blocks[self->parts[part + 1].block].spaces, self->blocks[self->parts[part].block].spaces + n,
          sizeof (RcNestSpace) * (gsize)self->parts[part + 1].n);
  note_changes (self, part);
  note_changes (self, part + 1);
}

void
rc_nest_spaces_add (RcNestSpaces *self, RcLength key, RcLength room, int id)
{
  int               part = find_part (self, key, id), k;
  RcNestSpacesPart *grown;
  RcNestSpace      *spaces;

  if (self->n_parts == 0)
    insert_part (self, 0);
  part = MIN (part, self->n_parts - 1);
  if (self->parts[part].n == BLOCK)
    {
      split_part (self, part);
      part += is_before (self->parts[part].last_key, self->parts[part].last_id, key, id);
    }
  grown = &self->parts[part];
  spaces = self->blocks[grown->block].spaces;
  k = find_in_part (self, part, key, id);
  memmove (spaces + k + 1, spaces + k, sizeof *spaces * (gsize)(grown->n - k));
  spaces[k] = (RcNestSpace){ key, room, id };
  grown->n++;
  grown->most_room = MAX (grown->most_room, room);
  grown->last_key = spaces[grown->n - 1].key;
  grown->last_id = spaces[grown->n - 1].id;
}

void
rc_nest_spaces_remove (RcNestSpaces *self, RcLength key, int id)
{
  int               part = find_part (self, key, id), k = find_in_part (self, part, key, id);
  RcNestSpacesPart *lessened = &self->parts[part];
  RcNestSpace      *spaces = self->blocks[lessened->block].spaces;

  lessened->n--;
  memmove (spaces + k, spaces + k + 1, sizeof *spaces * (gsize)(lessened->n - k));
  if (lessened->n > 0)
    {
      note_changes (self, part);
      return;
    }
  self->idle[self->n_idle++] = lessened->block;
  self->n_parts--;
  memmove (self->parts + part, self->parts + part + 1, sizeof *self->parts * (gsize)(self->n_parts - part));
}

void
rc_nest_spaces_set_room (RcNestSpaces *self, RcLength key, int id, RcLength room)
{
  int part = find_part (self, key, id);

  self->blocks[self->parts[part].block].spaces[find_in_part (self, part, key, id)].room = room;
  note_changes (self, part);
}

/* From a space of a part on. */
static RcNestSpacesPlace
find_from (const RcNestSpaces *self, int part, int k, RcLength room)
{
  for (; part < self->n_parts; part++, k = 0)
    {
      const RcNestSpace *spaces = self->blocks[self->parts[part].block].spaces;

      if (self->parts[part].most_room < room)
        continue;
      for (; k < self->parts[part].n; k++)
        if (spaces[k].room >= room)
          return (RcNestSpacesPlace){ part, k };
    }
  return (RcNestSpacesPlace){ part, 0 };
}

RcNestSpacesPlace
rc_nest_spaces_find (const RcNestSpaces *self, RcLength key, RcLength room)
{
  int part = find_part (self, key, G_MININT);

  return find_from (self, part, part < self->n_parts ? find_in_part (self, part, key, G_MININT) : 0, room);
}

RcNestSpacesPlace
rc_nest_spaces_find_next (const RcNestSpaces *self, RcNestSpacesPlace place, RcLength room)
{
  return find_from (self, place.part, place.k + 1, room);
}
