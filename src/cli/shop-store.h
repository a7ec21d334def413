/* The shop's store as the commands open it. */
#pragma once

#include "rowcut-error.h"
#include "store.h"

/* The store at `path` (NULL: the user's own), made and filled with the shipped price book when it is not there. */
RcStore *rc_shop_store_open (const char *path, GError **error);

gboolean rc_shop_store_is_there (const char *path);

/* The same, but never makes one: RC_ERROR_STORE naming the file when it is not there. */
RcStore *rc_shop_store_open_existing (const char *path, GError **error);
