/* Fuzz target of the store opened from any file at all. */
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "fuzz-run.h"
#include "rowcut-error.h"
#include "store-maker.h"

static char *
new_file (void)
{
  char *path = NULL;
  int   file = g_file_open_tmp ("rowcut-fuzz-XXXXXX.db", &path, NULL);

  g_assert_cmpint (file, >=, 0);
  close (file);
  return path;
}

static void
remove_file (const char *path)
{
  static const char *const ends[] = { "", "-wal", "-shm", "-journal" };

  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      g_autofree char *name = g_strconcat (path, ends[i], NULL);

      g_unlink (name);
    }
}

/* Whatever is in it: reading, checking and writing end, with an answer or an error in words. */
static void
use (RcStore *store)
{
  g_autoptr (GPtrArray) jobs = rc_store_find_jobs (store, NULL, NULL);
  g_autofree char *report = NULL;

  g_clear_pointer (&(RcPriceBook *){ rc_store_load_price_book (store, NULL) }, rc_price_book_free);
  g_clear_pointer (&(GPtrArray *){ rc_store_load_rolls (store, NULL) }, g_ptr_array_unref);
  rc_store_check (store, &report, NULL);
  for (guint i = 0; jobs != NULL && i < jobs->len; i++)
    {
      const RcJobSummary *summary = jobs->pdata[i];
      g_autoptr (GError) error = NULL;
      g_autoptr (RcJob) job = rc_store_load_job (store, summary->id, &error);

      g_assert_true (job != NULL || error != NULL);
      if (job != NULL && !rc_store_save_job (store, job, "Edit", NOW, &error))
        g_assert_nonnull (error);
      rc_store_undo (store, summary->id, NULL, NULL);
    }
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *path = new_file ();
  g_autoptr (GError) error = NULL;
  g_autoptr (RcStore) store = NULL;

  g_assert_true (
      g_file_set_contents_full (path, (const char *)data, (gssize)size, G_FILE_SET_CONTENTS_NONE, 0600, NULL));
  store = rc_store_open (path, NULL, &error);
  if (store != NULL)
    use (store);
  else
    {
      g_assert_nonnull (error);
      g_assert_true (error->domain == RC_ERROR);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
    }
  rc_store_close (g_steal_pointer (&store));
  remove_file (path);
  return 0;
}

static const char *const words[]
    = { "CREATE TABLE", "SQLite format 3", "\xff\xff\xff\xff", "\x0d", "\x05", "\x0a", "jobs", "NULL", "'", NULL };

static void
add_samples (GPtrArray *into)
{
  g_autofree char *path = new_file ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  g_autoptr (RcJob) job = rc_store_maker_new_job (rand, "J-1", 3);
  RcStore *store = rc_store_open (path, NULL, NULL);
  char    *data;
  gsize    size;

  for (guint i = 0; i < 3; i++)
    {
      g_assert_true (rc_store_save_job (store, job, "Edit", NOW, NULL));
      rc_store_maker_edit_job (rand, job);
    }
  rc_store_close (store);
  g_assert_true (g_file_get_contents (path, &data, &size, NULL));
  g_ptr_array_add (into, g_bytes_new_take (data, size));
  remove_file (path);
}

const FuzzTarget fuzz_target = { "store", words, 600, 6, add_samples };
