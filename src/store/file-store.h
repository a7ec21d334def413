/* Bytes kept under their digest. */
#pragma once

#include "query.h"

/* Within a transaction of the caller's. (transfer full) the digest. */
char *rc_file_store_add (RcStore *store, GBytes *bytes, GError **error);
