/* Ids made of names, for what the price book and its files tell apart by ids. */
#pragma once

#include <glib.h>

/* "Harbour Twist, slate" is harbour-twist-slate; what has no Latin letter is `blank`. A number, from 2 on, is put
 * behind one that is taken. (transfer full) */
char *rc_free_id_new (const char *name, const char *blank, gboolean (*is_taken) (const char *id, gconstpointer data),
                      gconstpointer data);
