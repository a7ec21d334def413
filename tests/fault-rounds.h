/* Work on a store, done again and again, while each call of SQLite to a file, each allocation it makes, and each call
 * of the program to it fails in turn, once or from then on: nothing crashes, the fault is told in words, and all of the
 * change or none of it is in the file. The store holds the jobs J-1 and J-2, a deleted J-3, prices, steps to undo and
 * redo, and what store-office.h says. For tests; fault_layer_install comes first. */
#pragma once

#include "store.h"

typedef struct
{
  char   *folder, *path;
  char   *copy;    /* where the work puts its copy of the store, if it makes one */
  char   *earlier; /* a backup of when there was only J-2 */
  GBytes *base;
  char   *stored; /* the text of J-1 in the store */
  RcJob  *job;    /* as loaded from it, with an edit */
} FaultFixture;

/* `store` is NULL where the work opens it. */
typedef gboolean (*FaultRunFunc) (FaultFixture *fixture, RcStore *store, GError **error);

typedef struct
{
  const char  *name;
  FaultRunFunc run;
  gboolean     needs_store; /* open before anything fails */
  const char  *copy;        /* the file beside the store that the work makes; nullable */
  int          version;     /* of an earlier program's store to begin with; 0: one of today */
} FaultWork;

/* Adds a test for each work, which must be constant. */
void fault_rounds_add (const char *suite, const FaultWork *works, guint n_works);
