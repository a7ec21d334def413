#include "fuzz-run.h"

#include <string.h>

#include "rounds.h"

#define LONGEST_TAKEN_OUT 40

static void
insert (GByteArray *bytes, guint at, const guint8 *what, guint size)
{
  guint after = bytes->len - at;

  g_byte_array_set_size (bytes, bytes->len + size);
  memmove (bytes->data + at + size, bytes->data + at, after);
  memcpy (bytes->data + at, what, size);
}

/* A digit for another: most texts stay well formed. */
static void
change_digit (GByteArray *bytes, guint from, GRand *rand)
{
  for (guint i = from; i < bytes->len; i++)
    if (g_ascii_isdigit (bytes->data[i]))
      {
        bytes->data[i] = (guint8)('0' + g_rand_int_range (rand, 0, 10));
        return;
      }
}

static void
mutate (GByteArray *bytes, const GPtrArray *samples, GRand *rand)
{
  guint         at = (guint)g_rand_int_range (rand, 0, (gint32)bytes->len + 1);
  guint         length = (guint)g_rand_int_range (rand, 1, LONGEST_TAKEN_OUT);
  guint         n_words = g_strv_length ((GStrv)fuzz_target.words);
  const char   *word = fuzz_target.words[g_rand_int_range (rand, 0, (gint32)n_words)];
  gsize         size;
  const guint8 *other = g_bytes_get_data (samples->pdata[g_rand_int_range (rand, 0, (gint32)samples->len)], &size);

  switch (g_rand_int_range (rand, 0, 5))
    {
    case 0:
      insert (bytes, at, (const guint8 *)word, (guint)strlen (word));
      break;
    case 1:
      insert (bytes, at, other, (guint)MIN (size, LONGEST_TAKEN_OUT));
      break;
    case 2:
      if (at < bytes->len)
        g_byte_array_remove_range (bytes, at, MIN (bytes->len - at, length));
      break;
    case 3:
      change_digit (bytes, at, rand);
      break;
    default:
      if (at < bytes->len)
        bytes->data[at] = (guint8)g_rand_int_range (rand, 0, 256);
    }
}

static void
try (const guint8 *data, gsize size)
{
  /* As a fuzzing engine does: a block of just that size, so that reading past its end is noticed. */
  g_autofree guint8 *copy = g_memdup2 (data, size);

  LLVMFuzzerTestOneInput (copy != NULL ? copy : (const guint8 *)"", size);
}

static void
test_mutations (void)
{
  g_autoptr (GPtrArray) samples = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);
  g_autoptr (GRand) rand = g_rand_new_with_seed (20);

  fuzz_target.add_samples (samples);
  for (guint i = 0; i < samples->len; i++)
    {
      gsize         size;
      const guint8 *data = g_bytes_get_data (samples->pdata[i], &size);

      try (data, size);
    }
  for (guint run = 0; run < scale_rounds (fuzz_target.n_runs); run++)
    {
      gsize         size;
      const guint8 *sample = g_bytes_get_data (samples->pdata[run % samples->len], &size);
      g_autoptr (GByteArray) bytes = g_byte_array_new ();

      g_byte_array_append (bytes, sample, (guint)size);
      for (gint32 n = g_rand_int_range (rand, 1, (gint32)fuzz_target.most_changes + 1); n > 0; n--)
        mutate (bytes, samples, rand);
      if (fuzz_target.repair != NULL && g_rand_boolean (rand))
        fuzz_target.repair (bytes->data, bytes->len);
      try (bytes->data, bytes->len);
    }
  if (fuzz_target.check_outcomes != NULL)
    fuzz_target.check_outcomes ();
}

static void
test_corpus (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "corpus", fuzz_target.name, NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  if (dir == NULL)
    {
      g_test_message ("nothing was found yet");
      return;
    }
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL), *data = NULL;
      gsize            size;

      g_assert_true (g_file_get_contents (path, &data, &size, NULL));
      try ((const guint8 *)data, size);
    }
}

/* What a fuzzing engine starts from. */
static void
write_samples (const char *folder)
{
  g_autoptr (GPtrArray) samples = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);

  fuzz_target.add_samples (samples);
  for (guint i = 0; i < samples->len; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s/sample-%u", folder, i);
      gsize            size;
      const char      *data = g_bytes_get_data (samples->pdata[i], &size);

      g_assert_true (g_file_set_contents (path, data, (gssize)size, NULL));
    }
}

int
main (int argc, char **argv)
{
  g_autofree char *mutations = g_strdup_printf ("/fuzz/%s/stands mutated input", fuzz_target.name);
  g_autofree char *corpus = g_strdup_printf ("/fuzz/%s/stands what was trouble once", fuzz_target.name);

  if (g_getenv ("RC_FUZZ_SAMPLES") != NULL)
    {
      write_samples (g_getenv ("RC_FUZZ_SAMPLES"));
      return 0;
    }
  g_test_init (&argc, &argv, NULL);
  g_test_add_func (corpus, test_corpus);
  g_test_add_func (mutations, test_mutations);
  return g_test_run ();
}
