/* Fuzz target of plan pictures: whatever is in the file, reading it ends in time, with an image of bounded size, with
 * an error in words, or with the child stopped. It is read by a child with the limits of the program's own, as the
 * libraries behind it are large and old. */
#include <poll.h>
#include <stdio.h>
#include <sys/wait.h>
#include <unistd.h>

#include "fuzz-run.h"
#include "picture-decode.h"
#include "picture-maker.h"

/* The bytes as a file open for reading. */
static int
open_input (const guint8 *data, gsize size)
{
  FILE *file = tmpfile ();
  int   input;

  g_assert_nonnull (file);
  g_assert_cmpuint (fwrite (data, 1, size, file), ==, size);
  g_assert_cmpint (fflush (file), ==, 0);
  input = dup (fileno (file));
  g_assert_cmpint (lseek (input, 0, SEEK_SET), ==, 0);
  fclose (file);
  return input;
}

/* Both pipes to their ends: a child that is not read from stops. */
static void
read_both (const int inputs[2], GByteArray *const into[2])
{
  struct pollfd files[2] = { { .fd = inputs[0], .events = POLLIN }, { .fd = inputs[1], .events = POLLIN } };

  while ((files[0].fd >= 0 || files[1].fd >= 0) && poll (files, 2, -1) > 0)
    for (guint i = 0; i < 2; i++)
      {
        guint8 part[4096];
        gssize n = files[i].revents != 0 ? read (files[i].fd, part, sizeof part) : 1;

        if (n <= 0)
          files[i].fd = -1;
        else if (files[i].revents != 0)
          g_byte_array_append (into[i], part, (guint)n);
      }
}

/* A side of a PNG, which stands at a fixed place: four bytes, the highest first. */
static guint
get_side (const GByteArray *png, guint at)
{
  const guint8 *bytes = png->data + at;

  return (guint)bytes[0] << 24 | (guint)bytes[1] << 16 | (guint)bytes[2] << 8 | bytes[3];
}

static G_NORETURN void
read_as_the_child (int input, int output, int said)
{
  char *arguments[] = { (char *)"rowcut", (char *)RC_PICTURE_OPTION, (char *)"1", NULL };

  dup2 (input, STDIN_FILENO);
  dup2 (output, STDOUT_FILENO);
  dup2 (said, STDERR_FILENO);
  _exit (rc_picture_decode_main (3, arguments));
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GByteArray) png = g_byte_array_new ();
  g_autoptr (GByteArray) said = g_byte_array_new ();
  int   input = open_input (data, size), output[2], words[2], status;
  pid_t child;

  g_assert_cmpint (pipe (output), ==, 0);
  g_assert_cmpint (pipe (words), ==, 0);
  fflush (NULL); /* or the child writes what waits once more */
  child = fork ();
  if (child == 0)
    read_as_the_child (input, output[1], words[1]);
  close (input);
  close (output[1]);
  close (words[1]);
  read_both ((int[]){ output[0], words[0] }, (GByteArray *[]){ png, said });
  close (output[0]);
  close (words[0]);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  if (WIFSIGNALED (status))
    g_test_message ("the child was stopped by signal %d", WTERMSIG (status));
  else if (WEXITSTATUS (status) == 0)
    {
      g_assert_cmpuint (png->len, >, 24);
      g_assert_cmpuint (get_side (png, 16), <=, RC_PICTURE_MAX_SIDE);
      g_assert_cmpuint (get_side (png, 20), <=, RC_PICTURE_MAX_SIDE);
    }
  else
    {
      g_assert_cmpint (WEXITSTATUS (status), ==, 1);
      g_assert_cmpuint (said->len, >, 0);
      g_assert_true (g_utf8_validate ((const char *)said->data, said->len, NULL));
    }
  return 0;
}

static const char *const WORDS[]
    = { "\xff\xd8\xff\xe1", "\xff\xff\xff\xff", "IHDR", "/MediaBox [0 0 1e9 1e9]", "/Length", "stream", "obj",
        "/Kids [1 0 R]",    "99999999",         NULL };

static void
add_samples (GPtrArray *samples)
{
  g_ptr_array_add (samples, rc_picture_maker_make_png ());
  g_ptr_array_add (samples, rc_picture_maker_make_jpeg ());
  g_ptr_array_add (samples, rc_picture_maker_make_pdf ());
}

const FuzzTarget fuzz_target = { "picture", WORDS, 600, 8, add_samples };
