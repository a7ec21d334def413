/* The shop's store: one SQLite file with customers, jobs, measures, rooms, goods, rolls, prices and quotations.
 *
 * Every call that changes something is one transaction: when it returns TRUE the change is on disk, when it returns
 * FALSE nothing changed. Foreign keys on, STRICT tables, WAL, schema version in user_version. Errors are RC_ERROR_STORE
 * with a message for people.
 */
#pragma once

#include "quote.h"

typedef struct _RcStore RcStore;

/* Opens `path` (":memory:" too), making it when it is not there: then *created (nullable) is TRUE and the caller fills
 * in the shipped price book. Checks that it is a store of ours, its version (migrates an older one after a backup
 * beside it, refuses a newer one), its integrity. */
RcStore *rc_store_open (const char *path, gboolean *created, GError **error);
void     rc_store_close (RcStore *store);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcStore, rc_store_close)

/* $XDG_DATA_HOME/rowcut/rowcut.db. (transfer full) */
char *rc_store_dup_default_path (void);

typedef struct
{
  char *id, *number, *title, *customer, *address, *date;
  char *changed; /* ISO 8601 date and time of the last edit, UTC */
} RcJobSummary;

void rc_job_summary_free (RcJobSummary *summary);

/* Jobs whose number, title, customer, address or notes hold every word of `words` (prefixes count; NULL or "": all),
 * latest changed first. (transfer full) GPtrArray of RcJobSummary. */
GPtrArray *rc_store_find_jobs (RcStore *store, const char *words, GError **error);

/* A new id "J-n" and number, free in this store. (transfer full) */
char *rc_store_dup_new_job_id (RcStore *store, GError **error);

RcJob *rc_store_load_job (RcStore *store, const char *id, GError **error);
/* Writes the whole job, new or changed, as one named step that can be undone. `now` is the ISO 8601 time to note. */
gboolean rc_store_save_job (RcStore *store, const RcJob *job, const char *step, const char *now, GError **error);
gboolean rc_store_delete_job (RcStore *store, const char *id, GError **error);

/* Undo and redo of the job's steps, kept in the store; *step (nullable, transfer full) gets the step's name. FALSE
 * without error when there is nothing to undo (redo). */
gboolean rc_store_undo (RcStore *store, const char *job_id, char **step, GError **error);
gboolean rc_store_redo (RcStore *store, const char *job_id, char **step, GError **error);
gboolean rc_store_can_undo (RcStore *store, const char *job_id);
gboolean rc_store_can_redo (RcStore *store, const char *job_id);

RcPriceBook *rc_store_load_price_book (RcStore *store, GError **error);
gboolean     rc_store_save_price_book (RcStore *store, const RcPriceBook *book, GError **error);

GPtrArray *rc_store_load_rolls (RcStore *store, GError **error); /* of RcRoll */
gboolean   rc_store_save_roll (RcStore *store, const RcRoll *roll, GError **error);
gboolean   rc_store_delete_roll (RcStore *store, const char *id, GError **error);

/* Freezes a quotation as issued: numbered Q-n, never changed. (transfer full) the number. */
char *rc_store_issue_quote (RcStore *store, const RcJob *job, const RcQuote *quote, const char *date, GError **error);
typedef struct
{
  char      *number, *job_id, *date;
  RcMoney    total;
  RcCurrency currency;
} RcIssuedQuote;
void       rc_issued_quote_free (RcIssuedQuote *quote);
GPtrArray *rc_store_find_quotes (RcStore *store, const char *job_id, GError **error); /* of RcIssuedQuote */

/* Integrity and model check in full; TRUE when sound. Each fault is a line of *report (transfer full). */
gboolean rc_store_check (RcStore *store, char **report, GError **error);

/* SQLite's online backup to a new file; refuses one that exists. */
gboolean rc_store_backup (RcStore *store, const char *path, GError **error);
