/* Ids made of names, for what is told apart by ids. */
#pragma once

#include <glib.h>

/* The stem of the name (rc_id_stem_new), or `blank` where it has none; a number, from 2 on, is put behind one that is
 * taken. (transfer full) */
char *rc_free_id_new (const char *name, const char *blank, gboolean (*is_taken) (const char *id, gconstpointer data),
                      gconstpointer data);
