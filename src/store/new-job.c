/* Numbers of new jobs, and jobs made from others. */
#include "job-number.h"
#include "job-store.h"
#include "query.h"
#include "store.h"

#include <glib/gi18n-lib.h>

#include "rowcut-error.h"

static char *
dup_pattern (RcStore *store, GError **error)
{
  g_auto (RcQuery) query = { 0 };
  char *pattern = NULL;

  if (!rc_query_start (&query, store, "SELECT job_numbers FROM price_book", NULL, 0, error))
    return NULL;
  if (rc_query_next (&query, error))
    pattern = rc_query_dup_text (&query, 0);
  if (query.failed)
    {
      g_free (pattern);
      return NULL;
    }
  if (pattern == NULL || !rc_job_number_check_pattern (pattern, NULL))
    {
      g_free (pattern);
      pattern = g_strdup (RC_JOB_NUMBERS_USUAL);
    }
  return pattern;
}

/* Counts on past numbers that some job has been given by hand. */
char *
rc_new_job_take_number (RcStore *store, const char *date, GError **error)
{
  g_autofree char *pattern = dup_pattern (store, error);
  g_autofree char *series = pattern != NULL ? rc_job_number_dup_series (pattern, date) : NULL;
  g_autofree char *counter = g_strconcat ("job number ", series, NULL);
  gint64           running, n_taken = 1;

  while (series != NULL)
    {
      g_autofree char *number = NULL;

      if (!rc_store_count (store, counter, &running, error))
        return NULL;
      number = rc_job_number_format (pattern, date, running);
      if (!rc_query_find_integer (store, "SELECT count (*) FROM jobs WHERE id = ?1 OR number = ?1",
                                  RC_VALUES (rc_value_text (number)), 0, &n_taken, error))
        return NULL;
      if (n_taken == 0)
        return g_steal_pointer (&number);
    }
  return NULL;
}

char *
rc_store_duplicate_job (RcStore *store, const char *id, const RcCustomer *customer, const char *date, const char *now,
                        GError **error)
{
  g_autoptr (RcJob) job = NULL;
  g_autoptr (RcJob) copy = NULL;

  g_return_val_if_fail (store != NULL && id != NULL && date != NULL && now != NULL, NULL);

  job = rc_store_read_job (store, id, error);
  if (job == NULL)
    return NULL;
  copy = rc_job_new_duplicate (job, NULL, NULL, date, customer);
  return rc_store_save_new_job (store, copy, _ ("Duplicate"), date, now, error) ? g_strdup (copy->id) : NULL;
}
