/* The store's sales and purchases for the accounts, as store-command.c lists it. */
#pragma once

#include "stock-commands.h"

/* FILE [FROM [TO]] */
int rc_store_run_accounts (RcStore *store, const RcStoreOptions *options, GStrv arguments);
/* What is wrong with how it is used; NULL when nothing is. */
const char *rc_store_find_accounts_fault (const RcStoreOptions *options, GStrv arguments);
