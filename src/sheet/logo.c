#include "logo.h"

#include <string.h>

typedef struct
{
  const guchar *bytes;
  gsize         size, at;
} Stream;

static cairo_status_t
read_stream (void *closure, unsigned char *data, unsigned int length)
{
  Stream *stream = closure;

  if (length > stream->size - stream->at)
    return CAIRO_STATUS_READ_ERROR;
  memcpy (data, stream->bytes + stream->at, length);
  stream->at += length;

  return CAIRO_STATUS_SUCCESS;
}

static guint64
get_number (const guchar *bytes)
{
  return (guint64)bytes[0] << 24 | (guint64)bytes[1] << 16 | (guint64)bytes[2] << 8 | bytes[3];
}

/* What the file says before it is decoded. PNG specification (W3C, ISO/IEC 15948), 5.2 and 11.2.2: eight bytes of
 * signature, then the chunk IHDR with length, name, width and height. */
static gboolean
is_bounded (const guchar *bytes, gsize size)
{
  static const guchar signature[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n' };
  guint64             width, height;

  if (size < 24 || memcmp (bytes, signature, sizeof signature) != 0 || memcmp (bytes + 12, "IHDR", 4) != 0)
    return FALSE;
  width = get_number (bytes + 16);
  height = get_number (bytes + 20);

  return width > 0 && height > 0 && width <= RC_LOGO_MOST_PIXELS / height;
}

static cairo_surface_t *
load (GBytes *png)
{
  Stream           stream = { 0 };
  cairo_surface_t *surface;

  stream.bytes = g_bytes_get_data (png, &stream.size);
  if (!is_bounded (stream.bytes, stream.size))
    return NULL;
  surface = cairo_image_surface_create_from_png_stream (read_stream, &stream);
  if (cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS)
    return surface;
  cairo_surface_destroy (surface);

  return NULL;
}

gboolean
rc_logo_is_sound (GBytes *png)
{
  cairo_surface_t *surface = load (png);

  if (surface == NULL)
    return FALSE;
  cairo_surface_destroy (surface);
  return TRUE;
}

static void
draw (cairo_t *cr, double x, double y, double width, double height, gconstpointer data)
{
  cairo_surface_t *surface = (cairo_surface_t *)data;

  cairo_translate (cr, x, y);
  cairo_scale (cr, width / cairo_image_surface_get_width (surface), height / cairo_image_surface_get_height (surface));
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_BEST);
  /* So that its edges do not fade into nothing. */
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
  cairo_rectangle (cr, 0, 0, cairo_image_surface_get_width (surface), cairo_image_surface_get_height (surface));
  cairo_fill (cr);
}

static void
free_surface (gpointer surface)
{
  cairo_surface_destroy (surface);
}

gboolean
rc_logo_add (RcPage *page, double x, double y, double width, double height, GBytes *png, double *drawn_width,
             double *drawn_height)
{
  cairo_surface_t *surface = png != NULL ? load (png) : NULL;
  double           scale;

  if (surface == NULL)
    return FALSE;
  scale = MIN (width / cairo_image_surface_get_width (surface), height / cairo_image_surface_get_height (surface));
  *drawn_width = scale * cairo_image_surface_get_width (surface);
  *drawn_height = scale * cairo_image_surface_get_height (surface);
  rc_page_add_drawing (page, x, y, *drawn_width, *drawn_height, draw, surface, free_surface);

  return TRUE;
}
