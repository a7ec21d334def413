/* The store's commands for rolls, orders and quotations; each as store-command.c lists it. */
#pragma once

#include "store.h"

typedef struct
{
  gboolean json, prices, replace, as_new;
} RcStoreOptions;

/* Says why `rowcut-cli store WHAT` could not be done. RC_EXIT_FAILED */
int rc_store_run_fail (const char *what, const GError *error);

int rc_store_run_stock (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_receive (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_reserve (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_cut (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_history (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_quotations (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_accept (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_orders (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_cancel (RcStore *store, const RcStoreOptions *options, GStrv arguments);
int rc_store_run_arrived (RcStore *store, const RcStoreOptions *options, GStrv arguments);
