#include "accounts-command.h"

#include <glib/gi18n-lib.h>

#include "accounts-csv.h"
#include "command.h"
#include "day.h"

const char *
rc_store_find_accounts_fault (const RcStoreOptions *options, GStrv arguments)
{
  for (guint i = 1; arguments[i] != NULL; i++)
    if (!rc_day_is_valid (arguments[i]))
      return _ ("FROM and TO are days, as 2026-04-30");
  if (!options->replace && g_file_test (arguments[0], G_FILE_TEST_EXISTS))
    return _ ("FILE is there already; --replace writes over it");
  return NULL;
}

int
rc_store_run_accounts (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) accounts
      = rc_store_find_accounts (store, arguments[1], arguments[1] != NULL ? arguments[2] : NULL, &error);
  g_autofree char *csv = accounts != NULL ? rc_accounts_csv_format (accounts) : NULL;

  if (csv == NULL || !g_file_set_contents (arguments[0], csv, -1, &error))
    return rc_store_run_fail ("accounts", error);
  return RC_EXIT_DONE;
}
