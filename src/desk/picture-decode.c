#include "picture-decode.h"

#include <errno.h>
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <gdk/gdk.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <poppler.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <unistd.h>

#include "rowcut-error.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PopplerDocument, g_object_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PopplerPage, g_object_unref)

#define CHILD_MEMORY  (1024UL << 20)
#define CHILD_SECONDS 20
#define PDF_SCALE     2.0 /* 144 dots to the inch, where the page is not too large for it */

static cairo_surface_t *
fail (GError **error, RcErrorCode code, const char *message)
{
  g_set_error_literal (error, RC_ERROR, code, message);
  return NULL;
}

static gboolean
begins_with (GBytes *bytes, const char *magic, gsize length)
{
  gsize       size = 0;
  const char *data = g_bytes_get_data (bytes, &size);
  return size >= length && memcmp (data, magic, length) == 0;
}

/* --- PNG and JPEG --- */

/* Before any pixel is read: never larger than the largest side. */
static void
on_size_prepared (GdkPixbufLoader *loader, int width, int height, gpointer data)
{
  int side = MAX (width, height);

  if (side > RC_PICTURE_MAX_SIDE)
    gdk_pixbuf_loader_set_size (loader, (int)MAX (1, (gint64)width * RC_PICTURE_MAX_SIDE / side),
                                (int)MAX (1, (gint64)height * RC_PICTURE_MAX_SIDE / side));
}

static cairo_surface_t *
paint_pixbuf (GdkPixbuf *pixbuf)
{
  int              width = gdk_pixbuf_get_width (pixbuf), height = gdk_pixbuf_get_height (pixbuf);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t         *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  gdk_cairo_set_source_pixbuf (cr, pixbuf, 0, 0);
  cairo_paint (cr);
  cairo_destroy (cr);
  return surface;
}

static cairo_surface_t *
decode_pixels (GBytes *bytes, const char *type, GError **error)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new_with_type (type, error);

  if (loader == NULL)
    return NULL;
  g_signal_connect (loader, "size-prepared", G_CALLBACK (on_size_prepared), NULL);
  gboolean   written = gdk_pixbuf_loader_write_bytes (loader, bytes, error);
  gboolean   closed = gdk_pixbuf_loader_close (loader, written ? error : NULL);
  GdkPixbuf *pixbuf = written && closed ? gdk_pixbuf_loader_get_pixbuf (loader) : NULL;
  if (pixbuf == NULL)
    {
      g_clear_error (error);
      return fail (error, RC_ERROR_FORMAT, _ ("The picture is damaged or not whole."));
    }
  g_autoptr (GdkPixbuf) upright = gdk_pixbuf_apply_embedded_orientation (pixbuf);
  return paint_pixbuf (upright);
}

/* --- PDF --- */

static cairo_surface_t *
paint_page (PopplerPage *page, GError **error)
{
  double width = 0, height = 0;

  poppler_page_get_size (page, &width, &height);
  if (!(width > 0 && height > 0 && width < 1e6 && height < 1e6))
    return fail (error, RC_ERROR_RANGE, _ ("The page has no size that can be drawn."));
  double           scale = MIN (PDF_SCALE, RC_PICTURE_MAX_SIDE / MAX (width, height));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, MAX (1, (int)ceil (width * scale)),
                                                         MAX (1, (int)ceil (height * scale)));
  cairo_t         *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  poppler_page_render (page, cr);
  cairo_destroy (cr);
  return surface;
}

static cairo_surface_t *
decode_pdf (GBytes *bytes, guint number, GError **error)
{
  g_autoptr (PopplerDocument) document = poppler_document_new_from_bytes (bytes, NULL, NULL);

  if (document == NULL)
    return fail (error, RC_ERROR_FORMAT, _ ("The PDF is damaged or locked by a password."));
  int n = poppler_document_get_n_pages (document);
  g_autoptr (PopplerPage) page
      = number >= 1 && (int)number <= n ? poppler_document_get_page (document, (int)number - 1) : NULL;
  if (page == NULL)
    {
      g_set_error (error, RC_ERROR, RC_ERROR_RANGE, _ ("The PDF has %d pages, no page %u."), n, number);
      return NULL;
    }
  return paint_page (page, error);
}

cairo_surface_t *
rc_picture_decode (GBytes *bytes, guint page, GError **error)
{
  g_return_val_if_fail (bytes != NULL, NULL);

  if (g_bytes_get_size (bytes) > RC_PICTURE_MAX_BYTES)
    return fail (error, RC_ERROR_RANGE, _ ("The picture has more than 32 MiB: save it smaller."));
  if (begins_with (bytes, "\x89PNG\r\n\x1a\n", 8))
    return decode_pixels (bytes, "png", error);
  if (begins_with (bytes, "\xff\xd8\xff", 3))
    return decode_pixels (bytes, "jpeg", error);
  if (begins_with (bytes, "%PDF-", 5))
    return decode_pdf (bytes, page, error);
  return fail (error, RC_ERROR_FORMAT, _ ("That is neither PNG, JPEG nor PDF."));
}

/* --- the child --- */

static cairo_status_t
write_out (void *closure, const unsigned char *data, unsigned int length)
{
  return fwrite (data, 1, length, closure) == length ? CAIRO_STATUS_SUCCESS : CAIRO_STATUS_WRITE_ERROR;
}

static GBytes *
read_all (void)
{
  GByteArray *all = g_byte_array_new ();
  guint8      part[65536];
  gsize       n;

  while (all->len <= RC_PICTURE_MAX_BYTES && (n = fread (part, 1, sizeof part, stdin)) > 0)
    g_byte_array_append (all, part, (guint)n);
  return g_byte_array_free_to_bytes (all);
}

int
rc_picture_decode_main (int argc, char **argv)
{
  const struct rlimit memory = { CHILD_MEMORY, CHILD_MEMORY }, seconds = { CHILD_SECONDS, CHILD_SECONDS };
  const struct rlimit files = { 0, 0 };
  g_autoptr (GError) error = NULL;
  FILE *output = fdopen (dup (STDOUT_FILENO), "wb");

  dup2 (STDERR_FILENO, STDOUT_FILENO); /* what a library prints is not the image */
  setrlimit (RLIMIT_AS, &memory);
  setrlimit (RLIMIT_CPU, &seconds);
  setrlimit (RLIMIT_FSIZE, &files); /* pipes are not counted: it writes no file */
  signal (SIGXFSZ, SIG_IGN);
  g_autoptr (GBytes) bytes = read_all ();
  guint            page = argc > 2 ? (guint)strtoul (argv[2], NULL, 10) : 1;
  cairo_surface_t *surface = output ? rc_picture_decode (bytes, page, &error) : NULL;
  if (surface == NULL)
    {
      fprintf (stderr, "%s\n", error ? error->message : g_strerror (errno));
      return 1;
    }
  cairo_status_t status = cairo_surface_write_to_png_stream (surface, write_out, output);
  cairo_surface_destroy (surface);
  return status == CAIRO_STATUS_SUCCESS && fclose (output) == 0 ? 0 : 1;
}

/* --- the desk's side --- */

typedef struct
{
  const unsigned char *data;
  gsize                left;
} Reader;

static cairo_status_t
read_in (void *closure, unsigned char *data, unsigned int length)
{
  Reader *reader = closure;

  if (reader->left < length)
    return CAIRO_STATUS_READ_ERROR;
  memcpy (data, reader->data, length);
  reader->data += length;
  reader->left -= length;
  return CAIRO_STATUS_SUCCESS;
}

static void
on_read (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GTask) task = data;
  g_autoptr (GBytes) out = NULL, said = NULL;
  GError *error = NULL;

  if (!g_subprocess_communicate_finish (G_SUBPROCESS (source), result, &out, &said, &error))
    {
      g_task_return_error (task, error);
      return;
    }
  Reader           reader = { g_bytes_get_data (out, NULL), g_bytes_get_size (out) };
  cairo_surface_t *surface = g_subprocess_get_successful (G_SUBPROCESS (source))
                                 ? cairo_image_surface_create_from_png_stream (read_in, &reader)
                                 : NULL;
  if (surface && cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS)
    {
      g_task_return_pointer (task, surface, (GDestroyNotify)cairo_surface_destroy);
      return;
    }
  g_clear_pointer (&surface, cairo_surface_destroy);
  g_autofree char *text = g_strndup (g_bytes_get_data (said, NULL), g_bytes_get_size (said));
  g_strchomp (text);
  g_task_return_new_error (task, RC_ERROR, RC_ERROR_FORMAT, "%s",
                           *text && g_utf8_validate (text, -1, NULL) ? text : _ ("The picture could not be read."));
}

void
rc_picture_read_async (GBytes *bytes, guint page, GAsyncReadyCallback callback, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, callback, data);
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *number = g_strdup_printf ("%u", page);
  GError          *error = NULL;

  g_autoptr (GSubprocess) child = g_subprocess_new (G_SUBPROCESS_FLAGS_STDIN_PIPE | G_SUBPROCESS_FLAGS_STDOUT_PIPE
                                                        | G_SUBPROCESS_FLAGS_STDERR_PIPE,
                                                    &error, self ? self : "rowcut", RC_PICTURE_OPTION, number, NULL);
  if (child == NULL)
    g_task_return_error (task, error);
  else
    g_subprocess_communicate_async (child, bytes, NULL, on_read, g_steal_pointer (&task));
}

cairo_surface_t *
rc_picture_read_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
