/* Fuzz target of plan pictures: whatever is in the file, reading it ends in time, with an image of bounded size, with
 * an error in words, or with the child stopped. It is read by a child with the limits of the program's own, as the
 * libraries behind it are large and old. */
#include <errno.h>
#include <poll.h>
#include <stdio.h>
#include <string.h>
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

  while (files[0].fd >= 0 || files[1].fd >= 0)
    {
      if (poll (files, 2, -1) < 0)
        {
          g_assert_cmpint (errno, ==, EINTR); /* an engine's clock */
          continue;
        }
      for (guint i = 0; i < 2; i++)
        {
          guint8 part[4096];
          gssize n = files[i].revents != 0 ? read (files[i].fd, part, sizeof part) : -1;

          if (n > 0)
            g_byte_array_append (into[i], part, (guint)n);
          else if (files[i].revents != 0 && (n == 0 || errno != EINTR))
            files[i].fd = -1;
        }
    }
}

/* A number of a PNG: four bytes, the highest first. */
static guint32
get_number (const guint8 *bytes)
{
  return (guint32)bytes[0] << 24 | (guint32)bytes[1] << 16 | (guint32)bytes[2] << 8 | bytes[3];
}

/* How the inputs so far ended. */
static guint n_read, n_refused, n_stopped;

#ifdef RC_FUZZER
size_t LLVMFuzzerMutate (guint8 *data, size_t size, size_t max_size);
size_t LLVMFuzzerCustomMutator (guint8 *data, size_t size, size_t max_size, unsigned int seed);

/* An engine sees which code is run, but not in a child, nor in libraries that were not made for it. In place of that it
 * is told what the child said: a new message, whatever the numbers in it, is something new. */
__attribute__ ((section ("__libfuzzer_extra_counters"))) static guint8 said_before[4096];

static void
note_words (GByteArray *said, guint outcome)
{
  guint32 hash = outcome;

  for (guint i = 0; i < said->len; i++)
    {
      if (said->data[i] == '\n')
        {
          said_before[hash % G_N_ELEMENTS (said_before)] = 1;
          hash = outcome;
        }
      else if (!g_ascii_isxdigit (said->data[i]))
        hash = hash * 33 + said->data[i];
    }
  said_before[hash % G_N_ELEMENTS (said_before)] = 1;
}
#else
static void
note_words (GByteArray *said, guint outcome)
{
}
#endif

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
  while (waitpid (child, &status, 0) < 0)
    g_assert_cmpint (errno, ==, EINTR);
  note_words (said, WIFSIGNALED (status) ? 1000 + (guint)WTERMSIG (status) : png->len);
  if (WIFSIGNALED (status))
    {
      n_stopped++;
#ifndef RC_FUZZER
      g_test_message ("the child was stopped by signal %d", WTERMSIG (status));
#endif
    }
  else if (WEXITSTATUS (status) == 0)
    {
      n_read++;
      g_assert_cmpuint (png->len, >, 24);
      g_assert_cmpuint (get_number (png->data + 16), <=, RC_PICTURE_MAX_SIDE);
      g_assert_cmpuint (get_number (png->data + 20), <=, RC_PICTURE_MAX_SIDE);
    }
  else
    {
      n_refused++;
      g_assert_cmpint (WEXITSTATUS (status), ==, 1);
      g_assert_cmpuint (said->len, >, 0);
      g_assert_true (g_utf8_validate ((const char *)said->data, said->len, NULL));
    }
  return 0;
}

/* --- PNG: each part ends with a check sum of it, at which a reader stops --- */

/* The cyclic redundancy check of the PNG specification, annex D. */
static guint32
get_check_sum (const guint8 *data, gsize size)
{
  guint32 sum = 0xffffffffu;

  for (gsize i = 0; i < size; i++)
    {
      sum ^= data[i];
      for (guint bit = 0; bit < 8; bit++)
        sum = (sum & 1) != 0 ? sum >> 1 ^ 0xedb88320u : sum >> 1;
    }
  return ~sum;
}

static void
repair (guint8 *data, gsize size)
{
  gsize at = 8; /* behind the mark */

  if (size < at || memcmp (data, "\x89PNG", 4) != 0)
    return;
  while (at + 12 <= size && get_number (data + at) <= size - at - 12)
    {
      guint32 length = get_number (data + at), sum = get_check_sum (data + at + 4, length + 4);

      for (guint i = 0; i < 4; i++)
        data[at + 8 + length + i] = (guint8)(sum >> (24 - 8 * i));
      at += 12 + length;
    }
}

#ifdef RC_FUZZER
size_t
LLVMFuzzerCustomMutator (guint8 *data, size_t size, size_t max_size, unsigned int seed)
{
  size_t now = LLVMFuzzerMutate (data, size, max_size);

  if (seed % 4 > 0)
    repair (data, now);
  return now;
}
#endif

/* --- samples --- */

/* Nothing in it is packed and its table of places is left to the reader to find, so that what a mutation changes is
 * read: lines and curves, text in a font that is not there, a shading, a picture in the page, one beside it, a page
 * within it, a layer and a note. */
static const char PLAIN_PDF[]
    = "%PDF-1.7\n"
      "1 0 obj <</Type /Catalog /Pages 2 0 R /OCProperties <</OCGs [9 0 R] /D <</ON [9 0 R]>>>>>> endobj\n"
      "2 0 obj <</Type /Pages /Count 1 /Kids [3 0 R] /MediaBox [0 0 200 150]>> endobj\n"
      "3 0 obj <</Type /Page /Parent 2 0 R /Rotate 90 /UserUnit 1 /Contents 4 0 R /Annots [10 0 R] /Resources <<"
      " /Font <</F 5 0 R>> /Shading <</S 6 0 R>> /XObject <</I 7 0 R /P 8 0 R>> /Properties <</L 9 0 R>>"
      " /ExtGState <</G <</ca 0.5 /BM /Multiply /SMask /None>>>> >> >> endobj\n"
      "4 0 obj <</Length 330>> stream\n"
      "q /G gs 2 w [3 1] 0 d 10 10 m 60 10 l 80 20 90 60 70 80 c h B Q\n"
      "BT /F 12 Tf 20 100 Td (Bed 1) Tj [(1) -200 (2) 50 (3)] TJ ET\n"
      "q 0 0 50 50 re W n /S sh Q q 40 0 0 30 100 20 cm /I Do Q\n"
      "/OC /L BDC q 1 0 0 1 100 80 cm /P Do Q EMC\n"
      "q 20 0 0 20 10 120 cm BI /W 4 /H 4 /BPC 8 /CS /G /F /AHx ID 00102030405060708090a0b0c0d0e0f0> EI Q\n"
      "endstream endobj\n"
      "5 0 obj <</Type /Font /Subtype /Type1 /BaseFont /Helvetica /FirstChar 32 /Widths [300 300]>> endobj\n"
      "6 0 obj <</ShadingType 2 /ColorSpace /DeviceRGB /Coords [0 0 50 50] /Extend [true false] /Function"
      " <</FunctionType 2 /Domain [0 1] /C0 [1 0 0] /C1 [0 0 1] /N 1.5>>>> endobj\n"
      "7 0 obj <</Subtype /Image /Width 3 /Height 2 /BitsPerComponent 8 /ColorSpace [/Indexed /DeviceRGB 1 "
      "<000000ffffff>]"
      " /Filter [/ASCIIHexDecode /RunLengthDecode] /Decode [0 1] /Length 17>> stream\n050001000100018080>\nendstream "
      "endobj\n"
      "8 0 obj <</Subtype /Form /BBox [0 0 40 40] /Matrix [1 0 0 1 0 0] /Group <</S /Transparency>> /Length 29>> "
      "stream\n"
      "0.5 g 0 0 30 30 re f 1 0 0 RG\nendstream endobj\n"
      "9 0 obj <</Type /OCG /Name (walls)>> endobj\n"
      "10 0 obj <</Type /Annot /Subtype /Square /Rect [5 5 25 25] /C [1 0 0] /Contents (door)>> endobj\n"
      "trailer <</Root 1 0 R /Size 11>>\n%%EOF\n";

static const char *const WORDS[]
    = { "\xff\xd8\xff\xe1", "\xff\xff\xff\xff", "IHDR",  "/MediaBox [0 0 1e9 1e9]", "/Length", "stream", "obj",
        "/Kids [1 0 R]",    "99999999",         "8 0 R", "/Filter /FlateDecode",    "acTL",    NULL };

static void
add_samples (GPtrArray *samples)
{
  g_ptr_array_add (samples, rc_picture_maker_make_png ());
  g_ptr_array_add (samples, rc_picture_maker_make_loose_png ());
  g_ptr_array_add (samples, rc_picture_maker_make_jpeg ());
  g_ptr_array_add (samples, rc_picture_maker_make_pdf ());
  g_ptr_array_add (samples, g_bytes_new_static (PLAIN_PDF, strlen (PLAIN_PDF)));
}

/* Were all input refused at its first bytes, or the child stopped before it read any, nothing would have been tried. */
static void
check_outcomes (void)
{
  guint n = n_read + n_refused + n_stopped;

  g_test_message ("%u pictures read, %u refused, %u children stopped", n_read, n_refused, n_stopped);
  g_assert_cmpuint (n_read, >, n / 5);
  g_assert_cmpuint (n_refused, >, n / 10);
}

const FuzzTarget fuzz_target = { "picture", WORDS, 600, 8, add_samples, repair, check_outcomes };
