/* The calls of the program to SQLite, each of which can be made to fail (FAULT_CALL of fault-layer.h). The linker puts
 * these in the place of SQLite's own where a program is linked with `--wrap` for each name of
 * tests/meson.build (`sqlite_calls`). For tests. */
#pragma once

#include <glib.h>

/* (transfer full) (element-type guint) The numbers of the calls, of those counted with none failing (the number armed
 * was G_MAXUINT) since this was last asked, that came from a place in the program that no call had come from before. */
GArray *fault_calls_take_new_places (void);
