/* Free spaces in the order of their keys, each with its room the other way: best fit asks for the first from a key on
 * that has room enough.
 *
 * Sorted blocks of a fixed size, and over them a list of where each ends and of the most room in it: a search tree of
 * two levels that knows the largest below each node. Few spaces are one block and cost what a sorted array costs. */
#pragma once

#include "length.h"

enum
{
  RC_NEST_SPACES_BLOCK = 64
};

typedef struct
{
  RcLength key, room;
  int      id; /* at one key in the order of these */
} RcNestSpace;

typedef struct
{
  RcNestSpace spaces[RC_NEST_SPACES_BLOCK];
} RcNestSpacesBlock;

typedef struct
{
  RcLength last_key, most_room;
  int      last_id, n, block;
} RcNestSpacesPart;

typedef struct
{
  RcNestSpacesBlock *blocks;
  RcNestSpacesPart  *parts; /* one for each block in use, in order */
  int               *idle;  /* blocks */
  int                n_parts, n_idle, n_blocks;
} RcNestSpaces;

/* Where a search stands; at an end when part == n_parts. */
typedef struct
{
  int part, k;
} RcNestSpacesPlace;

void rc_nest_spaces_init (RcNestSpaces *self);
void rc_nest_spaces_clear (RcNestSpaces *self);

/* Forgets all spaces. */
void rc_nest_spaces_reset (RcNestSpaces *self);

/* No two spaces have both key and id alike. */
void rc_nest_spaces_add (RcNestSpaces *self, RcLength key, RcLength room, int id);
void rc_nest_spaces_remove (RcNestSpaces *self, RcLength key, int id);
void rc_nest_spaces_set_room (RcNestSpaces *self, RcLength key, int id, RcLength room);

/* The first space of at least this key and room. */
RcNestSpacesPlace rc_nest_spaces_find (const RcNestSpaces *self, RcLength key, RcLength room);

/* The next one of at least this room. */
RcNestSpacesPlace rc_nest_spaces_find_next (const RcNestSpaces *self, RcNestSpacesPlace place, RcLength room);

/* NULL at the end. */
static inline const RcNestSpace *
rc_nest_spaces_get (const RcNestSpaces *self, RcNestSpacesPlace place)
{
  return place.part < self->n_parts ? &self->blocks[self->parts[place.part].block].spaces[place.k] : NULL;
}
