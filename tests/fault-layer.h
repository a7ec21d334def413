/* A layer under SQLite whose calls can be made to fail: file calls and allocations. For tests. */
#pragma once

#include <glib.h>

typedef enum
{
  FAULT_READ,      /* the disk cannot be read */
  FAULT_WRITE,     /* the disk cannot be written, nor made to keep what was written */
  FAULT_FULL,      /* no room left */
  FAULT_LOCKED,    /* another program holds the file */
  FAULT_READ_ONLY, /* files can be opened to be read, not to be written */
  FAULT_MEMORY,    /* no memory left */
  FAULT_CALL,      /* a call of the program to SQLite that can fail does, whatever the reason (fault-calls.h) */
  FAULT_N_KINDS
} FaultKind;

const char *fault_kind_get_name (FaultKind kind);

/* Puts the layer under every store opened from now on. Once, before SQLite is first used. */
void fault_layer_install (void);

/* The calls of this kind fail from the one with this number on (0 is the next); only that one when `once`. While armed,
 * nothing waits for a lock to go. */
void fault_layer_arm (FaultKind kind, guint number, gboolean once);
/* How many calls of the armed kind there were since. */
guint fault_layer_get_n_calls (void);
/* Whether calls are armed with G_MAXUINT: none is reached, so all are only counted. */
gboolean fault_layer_is_counting (void);
/* Whether this call of that kind, which is the next, is to fail. For what stands between the program and the disk. */
gboolean fault_layer_take (FaultKind kind);
/* All calls work again. The number of calls that failed. */
guint fault_layer_disarm (void);
