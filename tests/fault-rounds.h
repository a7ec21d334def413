/* Work on a store, done again and again, while each call of SQLite to a file, and each allocation it makes, fails in
 * turn, once or from then on: nothing crashes, the fault is told in words, and all of the change or none of it is in
 * the file. For tests; fault_layer_install comes first. */
#pragma once

#include "store.h"

/* What the store that every round begins with holds, beside the jobs J-1 and J-2, prices, and steps to undo and redo.
 */
#define FAULT_QUOTE "Q-1"
#define FAULT_BARE  "Q-2" /* a quotation whose paper was not kept yet */
#define FAULT_ROLL  "R-7" /* 40 ft, 10 ft of them promised to J-1 */
#define FAULT_ORDER "O-1" /* of one line, 36 sq yd; sent */

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

/* (transfer full) The number of a new order for J-1. */
char *fault_rounds_make_order (RcStore *store, GError **error);
