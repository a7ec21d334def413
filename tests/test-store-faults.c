/* Every call of SQLite to a file, and every allocation it makes, fails in turn, once or from then on, while the store
   is opened, read, changed and copied: nothing crashes, the fault is told in words, and all of the change or none of it
   is in the file. */
#include <string.h>

#include "fault-layer.h"
#include "fault-rounds.h"
#include "rowcut-error.h"
#include "store-maker.h"

#define SEED 30

static gboolean
run_open (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcStore) opened = rc_store_open (fixture->path, NULL, error);

  return opened != NULL;
}

static gboolean
run_load (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (RcJob) job = rc_store_load_job (store, "J-1", error);
  g_autofree char *dump = job != NULL ? rc_store_maker_dump_job (job) : NULL;

  if (job != NULL)
    g_assert_cmpstr (dump, ==, fixture->stored);
  return job != NULL;
}

static gboolean
run_find (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GPtrArray) jobs = rc_store_find_jobs (store, NULL, error);

  g_assert_true (jobs == NULL || jobs->len == 2);
  return jobs != NULL;
}

static gboolean
run_save (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_save_job (store, fixture->job, "Edit", NOW, error);
}

static gboolean
save_other (RcStore *store, const char *id, GError **error)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autoptr (RcJob) job = rc_store_maker_new_job (rand, id, 2);

  return rc_store_save_job (store, job, "New job", NOW, error);
}

static gboolean
run_save_new (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autofree char *id = rc_store_dup_new_job_id (store, error);

  return id != NULL && save_other (store, id, error);
}

/* Which brings its steps back. */
static gboolean
run_save_deleted (FaultFixture *fixture, RcStore *store, GError **error)
{
  return save_other (store, "J-3", error);
}

static gboolean
run_amend (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_amend_job (store, fixture->job, "Edit", NOW, NULL, error);
}

static gboolean
run_undo (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_undo (store, "J-1", NULL, error);
}

static gboolean
run_redo (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_redo (store, "J-1", NULL, error);
}

static gboolean
run_delete (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_delete_job (store, "J-1", error);
}

static gboolean
run_save_prices (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autoptr (RcPriceBook) book = rc_store_maker_new_price_book (rand, 5);

  return rc_store_save_price_book (store, book, error);
}

static gboolean
run_issue (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autoptr (RcQuote) quote = rc_store_maker_new_quote (rand, 4);
  g_autofree char *number = rc_store_issue_quote (store, fixture->job, quote, "2025-03-05", error);

  return number != NULL;
}

static gboolean
run_check (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autofree char *report = NULL;
  g_autoptr (GError) fault = NULL;
  gboolean sound = rc_store_check (store, &report, &fault);

  /* That the disk cannot be read may be told as a fault of the store, too. */
  if (!sound && fault == NULL)
    fault = g_error_new_literal (RC_ERROR, RC_ERROR_STORE, report);
  if (!sound)
    g_propagate_error (error, g_steal_pointer (&fault));
  return sound;
}

static gboolean
run_backup (FaultFixture *fixture, RcStore *store, GError **error)
{
  return rc_store_backup (store, fixture->copy, error);
}

static gboolean
run_restore (FaultFixture *fixture, RcStore *store, GError **error)
{
  g_autofree char *kept = rc_store_restore (fixture->path, fixture->earlier, error);

  return kept != NULL;
}

static const FaultWork works[] = {
  { "opening", run_open, FALSE, NULL, 0 },
  { "loading-a-job", run_load, TRUE, NULL, 0 },
  { "finding-jobs", run_find, TRUE, NULL, 0 },
  { "saving-a-job", run_save, TRUE, NULL, 0 },
  { "saving-a-new-job", run_save_new, TRUE, NULL, 0 },
  { "saving-a-deleted-job", run_save_deleted, TRUE, NULL, 0 },
  { "amending-a-step", run_amend, TRUE, NULL, 0 },
  { "undo", run_undo, TRUE, NULL, 0 },
  { "redo", run_redo, TRUE, NULL, 0 },
  { "deleting-a-job", run_delete, TRUE, NULL, 0 },
  { "saving-prices", run_save_prices, TRUE, NULL, 0 },
  { "issuing-a-quotation", run_issue, TRUE, NULL, 0 },
  { "checking", run_check, TRUE, NULL, 0 },
  { "a-backup", run_backup, TRUE, "copy.db", 0 },
  { "restoring", run_restore, FALSE, "shop.db.before-restore", 0 },
  { "a-migration", run_open, FALSE, "shop.db.version-1.backup", 1 },
};

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  fault_layer_install ();
  fault_rounds_add ("store-faults", works, G_N_ELEMENTS (works));
  return g_test_run ();
}
