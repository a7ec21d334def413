#include "number-commands.h"

#include "command.h"
#include "job-number.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>

static gboolean
set_pattern (RcStore *store, RcPriceBook *book, const char *pattern, GError **error)
{
  if (!rc_job_number_check_pattern (pattern, error))
    return FALSE;
  g_free (book->job_numbers);
  book->job_numbers = g_strdup (pattern);
  return rc_store_save_price_book (store, book, error);
}

int
rc_store_run_numbers (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RcPriceBook) book = rc_store_load_price_book (store, &error);

  if (book == NULL || (arguments[0] != NULL && !set_pattern (store, book, arguments[0], &error)))
    return rc_store_run_fail ("numbers", error);
  printf ("%s\n", book->job_numbers != NULL ? book->job_numbers : RC_JOB_NUMBERS_USUAL);
  return RC_EXIT_DONE;
}

int
rc_store_run_duplicate (RcStore *store, const RcStoreOptions *options, GStrv arguments)
{
  g_autofree char *today = rc_command_dup_today (), *now = rc_command_dup_now (), *id = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (RcJob) job = NULL;
  RcCustomer customer = { .name = arguments[1] };

  id = rc_store_duplicate_job (store, arguments[0], arguments[1] != NULL ? &customer : NULL, today, now, &error);
  job = id != NULL ? rc_store_load_job (store, id, &error) : NULL;
  if (job == NULL)
    return rc_store_run_fail ("duplicate", error);
  printf (_ ("%s is job %s, number %s\n"), job->title != NULL ? job->title : "", job->id, job->number);
  return RC_EXIT_DONE;
}
