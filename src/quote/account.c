#include "account.h"

void
rc_account_free (RcAccount *account)
{
  g_free (account->number);
  g_free (account->day);
  g_free (account->party);
  g_free (account->job);
  g_free (account->title);
  g_clear_pointer (&account->sale, rc_quote_free);
  g_free (account);
}
