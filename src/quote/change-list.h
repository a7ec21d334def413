/* Collecting changes: what the parts of the comparison share. Used inside this folder only. */
#pragma once

#include "compare.h"

typedef struct
{
  const RcPlan *before, *after;
  RcLengthStyle style;
  GPtrArray    *changes; /* of RcChange */
} RcChangeList;

/* Adds a change unless both texts are the same. Takes name, before and after; before NULL: added, after NULL: removed;
 * both NULL: nothing. */
void rc_change_list_add (RcChangeList *list, const char *what, char *name, char *before, char *after);

/* (transfer full) */
char *rc_change_list_format_length (const RcChangeList *list, RcLength length);
char *rc_change_list_format_area (const RcChangeList *list, RcArea area);

void rc_change_list_add_rooms (RcChangeList *list);
void rc_change_list_add_stairs (RcChangeList *list);
void rc_change_list_add_cuts (RcChangeList *list);
