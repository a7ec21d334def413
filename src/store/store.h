/* The shop's store: one SQLite file with customers, jobs, measures, rooms, goods, rolls, prices and quotations.
 *
 * Every call that changes something is one transaction: when it returns TRUE the change is on disk, when it returns
 * FALSE nothing changed. Foreign keys on, STRICT tables, WAL, schema version in user_version. Errors are RC_ERROR_STORE
 * with a message for people, or as said below.
 *
 * Two programs, or two windows of one, may work on one file; each window opens a store of its own. A writer waits up to
 * 5 s for another. Nobody's edit is lost: what is saved must still be as it was loaded by the same RcStore, else the
 * error is RC_ERROR_CONFLICT and the job must be loaded anew. rc_store_get_data_version tells when to look. An RcStore
 * belongs to one thread at a time.
 */
#pragma once

#include "account.h"
#include "purchase.h"
#include "quote.h"
#include "stock.h"

typedef struct _RcStore RcStore;

/* Opens `path` (":memory:" too), making it when it is not there. *created (nullable) is TRUE as long as no price book
 * was ever saved: then the caller fills in the shipped one. Checks that it is a store of ours, its version (migrates an
 * older one after a backup beside it, refuses a newer one), its tables, and its pages and references (those of a file
 * above 16 MB only when it was not closed properly). Refuses, and touches nothing of, a file that is no database or
 * another program's, and a folder or file that cannot be written. The folder is only made for the default path. */
RcStore *rc_store_open (const char *path, gboolean *created, GError **error);
void     rc_store_close (RcStore *store);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcStore, rc_store_close)

/* A number that changes whenever another RcStore has changed the file. */
gboolean rc_store_get_data_version (RcStore *store, gint64 *version, GError **error);

/* $XDG_DATA_HOME/rowcut/rowcut.db. (transfer full) */
char *rc_store_dup_default_path (void);

typedef struct
{
  char *id, *number, *title, *customer, *address, *date;
  char *changed; /* ISO 8601 date and time of the last edit, UTC */
} RcJobSummary;

void rc_job_summary_free (RcJobSummary *summary);

/* Jobs whose number, title, customer (with phone and mail), address or notes hold every word of `words`: beginnings of
 * words count, letter case and accents do not, signs mean nothing; without a letter or digit in `words` (or NULL), all.
 * Latest changed first. (transfer full) GPtrArray of RcJobSummary. */
GPtrArray *rc_store_find_jobs (RcStore *store, const char *words, GError **error);
/* The same, at most so many (0: all): what a list shows while one types. */
GPtrArray *rc_store_find_latest_jobs (RcStore *store, const char *words, guint most, GError **error);

/* The same, those that are in this state now: rc_job_get_state. */
GPtrArray *rc_store_find_jobs_in_state (RcStore *store, const char *words, RcJobState state, guint most,
                                        GError **error);
/* The state that a job is in and the day it came to it (*reached, transfer full; it is NULL or freed before; NULL: an
 * enquiry without a day). A job that is not there is an enquiry. */
gboolean rc_store_find_state (RcStore *store, const char *job_id, RcJobState *state, char **reached, GError **error);

/* A new id "J-n" that is no job's id or number and was never used. It is taken when the job is saved. (transfer full)
 */
char *rc_store_dup_new_job_id (RcStore *store, GError **error);

/* Saves a duplicate of the job (rc_job_new_duplicate) with an id and a number of its own. `customer` NULL: the same.
 * (transfer full) its id. */
char *rc_store_duplicate_job (RcStore *store, const char *id, const RcCustomer *customer, const char *date,
                              const char *now, GError **error);

/* To be edited: saving it is refused once others have changed it. RC_ERROR_REFERENCE when there is none. */
RcJob *rc_store_load_job (RcStore *store, const char *id, GError **error);
/* To be looked at only: whoever has loaded it is still told when others have changed it since. */
RcJob *rc_store_read_job (RcStore *store, const char *id, GError **error);

/* Writes the whole job, new or changed, as one named step that can be undone; only rows that differ are written. When
 * nothing differs there is no step. The first save of a job is no step, for there is nothing to go back to. A job that
 * was deleted comes back with its steps. `now` is the ISO 8601 time to note. Text must be UTF-8; ids of the things in a
 * job must be there and unique (RC_ERROR_STORE names the room, opening, ... otherwise); nothing else is asked of the
 * job, so that every edit can be stored. RC_ERROR_CONFLICT: the job in the store is not the one last loaded or saved by
 * this RcStore. */
gboolean rc_store_save_job (RcStore *store, const RcJob *job, const char *step, const char *now, GError **error);
/* Saves a new job under the next number by the price book's pattern (job_numbers) on `date`, as the office writes it,
 * and where it has no id yet (NULL) under a new one; both are put into it. One transaction: whatever programs save at
 * once no number is given twice, nor one that is another job's id, and none is used up by a job that was not saved. */
gboolean rc_store_save_new_job (RcStore *store, RcJob *job, const char *step, const char *date, const char *now,
                                GError **error);
/* As rc_store_save_job, but in place of the job's latest step: undo then goes back to before that one. One transaction,
 * so that letters typed into one field stay one step and none is lost. *has_step (nullable) is FALSE when the job is
 * now as it was before that step: then there is no such step any more. Without a step to replace (nothing but the first
 * save, or the latest was undone) it is rc_store_save_job. */
gboolean rc_store_amend_job (RcStore *store, const RcJob *job, const char *step, const char *now, gboolean *has_step,
                             GError **error);

/* The job goes, its issued quotations stay. rc_store_undo with its id brings it back. */
gboolean rc_store_delete_job (RcStore *store, const char *id, GError **error);

/* The number of the last change of this job among all changes in the store, 0 when there is no such job. It differs
 * from what it was if anybody changed the job in between. */
gboolean rc_store_get_revision (RcStore *store, const char *job_id, gint64 *revision, GError **error);
/* Whether the job is still as this RcStore last loaded or saved it; FALSE when it is gone, too. */
gboolean rc_store_is_current (RcStore *store, const char *job_id, gboolean *is_current, GError **error);

/* Undo and redo of the job's steps, kept in the store without limit; the job must then be loaded anew. *step (nullable,
 * transfer full) gets the step's name. FALSE without error when there is nothing to undo (redo). A new step forgets
 * what was undone. RC_ERROR_CONFLICT: as for saving. */
gboolean rc_store_undo (RcStore *store, const char *job_id, char **step, GError **error);
gboolean rc_store_redo (RcStore *store, const char *job_id, char **step, GError **error);
gboolean rc_store_can_undo (RcStore *store, const char *job_id);
gboolean rc_store_can_redo (RcStore *store, const char *job_id);
/* The name of the step that would be undone (redone); NULL when there is none. (transfer full) */
char *rc_store_dup_undo_name (RcStore *store, const char *job_id);
char *rc_store_dup_redo_name (RcStore *store, const char *job_id);

/* The largest file that the store keeps. */
#define RC_STORE_MAX_FILE_BYTES (32 << 20)

/* Keeps bytes for an attachment under their digest (SHA-256, lower-case hex), once however often they are added. A
 * file stays for good, so that undo finds it. RC_ERROR_RANGE above the largest. (transfer full) the digest. */
char *rc_store_add_file (RcStore *store, GBytes *bytes, GError **error);
/* RC_ERROR_REFERENCE when there is none of that digest. (transfer full) */
GBytes *rc_store_load_file (RcStore *store, const char *digest, GError **error);

/* RC_ERROR_REFERENCE when none was saved yet. */
RcPriceBook *rc_store_load_price_book (RcStore *store, GError **error);
/* Replaces it whole. RC_ERROR_CONFLICT: the book was loaded, and the store's changed since. */
gboolean rc_store_save_price_book (RcStore *store, RcPriceBook *book, GError **error);

/* Rolls in stock, of RcRoll, by goods and id. */
GPtrArray *rc_store_load_rolls (RcStore *store, GError **error);
/* Saves a new roll or a changed one. RC_ERROR_RANGE for a length below 0. */
gboolean rc_store_save_roll (RcStore *store, const RcRoll *roll, GError **error);
gboolean rc_store_delete_roll (RcStore *store, const char *id, GError **error);

/* Freezes a quotation as issued: numbered Q-n, with its lines and the customer as written now; never changed, also not
 * when the job is. RC_ERROR_RANGE when the lines do not add up to the total. (transfer full) the number. */
char *rc_store_issue_quote (RcStore *store, const RcJob *job, const RcQuote *quote, const char *date, GError **error);
/* The most options that are issued together. */
#define RC_STORE_MAX_OPTIONS 20

/* Several options (of RcQuote) issued together: the first is numbered Q-n, the others Q-n-B, Q-n-C, ... With `revises`
 * (nullable) they take the place of that quotation and all issued with it, which are marked as superseded: the number
 * is then Q-n.2, Q-n.3, ... To revise, change the job (or a copy), price it and issue it so. RC_ERROR_REFERENCE when
 * there is no quotation `revises`. (transfer full) the first's number. */
char *rc_store_issue_offer (RcStore *store, const RcJob *job, const GPtrArray *quotes, const char *revises,
                            const char *date, GError **error);

typedef enum
{
  RC_QUOTE_OPEN, /* waiting for the customer's word */
  RC_QUOTE_ACCEPTED,
  RC_QUOTE_DECLINED,
  RC_QUOTE_SUPERSEDED,
  RC_N_QUOTE_STATES
} RcQuoteState;

const char *rc_quote_state_get_name (RcQuoteState state);  /* stable: "open", "accepted", "declined", "superseded" */
const char *rc_quote_state_get_label (RcQuoteState state); /* translated */

/* Notes what became of a quotation; its figures stay. When one of several options is accepted the others are declined.
 * RC_ERROR_REFERENCE. */
gboolean rc_store_mark_quote (RcStore *store, const char *number, RcQuoteState state, const char *day,
                              const char *notes, GError **error);

/* Keeps the quotation's paper (PDF) as the customer got it, once. */
gboolean rc_store_keep_paper (RcStore *store, const char *number, GBytes *pdf, GError **error);
/* RC_ERROR_REFERENCE when none was kept. (transfer full) */
GBytes *rc_store_load_paper (RcStore *store, const char *number, GError **error);

/* Quotations accepted, then orders that stand, from one day to another (ISO 8601, both included, nullable: any; a month
 * or a year counts whole). (transfer full) GPtrArray of RcAccount. */
GPtrArray *rc_store_find_accounts (RcStore *store, const char *from, const char *to, GError **error);

typedef struct
{
  char        *number, *job_id, *date;
  char        *title, *customer, *address; /* as when issued; nullable */
  RcMoney      total, margin;
  RcCurrency   currency;
  char        *offer;   /* number of the first issued with it */
  char        *option;  /* name of the alternative; nullable */
  char        *revises; /* nullable */
  int          valid_days;
  gboolean     variation;
  RcQuoteState state;
  char        *marked; /* day of the state; NULL while open */
} RcIssuedQuote;
void rc_issued_quote_free (RcIssuedQuote *quote);
/* Of RcIssuedQuote, in the order issued; job_id NULL: of all jobs. */
GPtrArray *rc_store_find_quotes (RcStore *store, const char *job_id, GError **error);
/* The quotation as it was issued. RC_ERROR_REFERENCE when there is none of that number. (transfer full) */
RcQuote *rc_store_load_quote (RcStore *store, const char *number, GError **error);

/* Integrity and model check in full; TRUE when sound. Each fault is a line of *report (transfer full; "" when sound).
 * Looks at pages, indexes and references; that every job loads and is written again as the same rows; that its steps
 * can be taken back to the first and done again; the search words; the sums of issued quotations. Changes nothing.
 * FALSE with an error when the check itself could not be done. */
gboolean rc_store_check (RcStore *store, char **report, GError **error);

/* SQLite's online backup to a new file; refuses one that exists. The file appears when it is complete. */
gboolean rc_store_backup (RcStore *store, const char *path, GError **error);

/* The rota: one backup a day, in the folder "rowcut.db.backups" beside the store, named by its day. Makes the one of
 * `day` (ISO 8601 date) when it is not there yet, then removes those it makes superfluous: the latest 7 days' stay, and
 * of those before the last of each month, for 24 months. Does nothing for a store in memory. */
gboolean rc_store_back_up_daily (RcStore *store, const char *day, GError **error);
/* Whether the backup of that day is there; costs no look into the store. */
gboolean rc_store_is_backed_up (const char *path, const char *day);
/* The paths of those backups of the store `path`, latest first. (transfer full) */
GPtrArray *rc_store_find_backups (const char *path);
char      *rc_store_dup_backup_folder (const char *path);

/* Puts a backup in the place of the store `path`, which may be open in other programs, or not there; not of one that
 * cannot be opened. The backup is checked in full before, and only read. What was there is kept beside it: the path of
 * that is returned (transfer full); there is no such file when there was no store. Numbers given out stay given out.
 * NULL with an error when nothing was changed. */
char *rc_store_restore (const char *path, const char *backup, GError **error);
