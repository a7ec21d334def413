/* `rowcut-cli store` commands for job numbers and jobs made from others. */
#pragma once

#include "stock-commands.h"

int rc_store_run_numbers (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_duplicate (RcStore *store, const RcStoreOptions *options, GStrv arguments);
