#include "picture-maker.h"

#include <cairo-pdf.h>
#include <gdk-pixbuf/gdk-pixbuf.h>

cairo_status_t
rc_picture_maker_append (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
draw_square (cairo_surface_t *surface)
{
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_set_source_rgb (cr, 0, 0, 0);
  cairo_rectangle (cr, 20, 10, 40, 30);
  cairo_fill (cr);
  cairo_destroy (cr);
}

GBytes *
rc_picture_maker_make_png (void)
{
  GByteArray      *all = g_byte_array_new ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 100, 80);

  draw_square (surface);
  cairo_surface_write_to_png_stream (surface, rc_picture_maker_append, all);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (all);
}

static GdkPixbuf *
make_pixbuf (void)
{
  g_autoptr (GBytes) png = rc_picture_maker_make_png ();
  g_autoptr (GInputStream) stream = g_memory_input_stream_new_from_bytes (png);

  return gdk_pixbuf_new_from_stream (stream, NULL, NULL);
}

GBytes *
rc_picture_maker_make_loose_png (void)
{
  g_autoptr (GdkPixbuf) pixbuf = make_pixbuf ();
  g_autoptr (GdkPixbuf) clear = gdk_pixbuf_add_alpha (pixbuf, TRUE, 0, 0, 0);
  char *data = NULL;
  gsize size = 0;

  g_assert_true (
      gdk_pixbuf_save_to_buffer (clear, &data, &size, "png", NULL, "compression", "0", "tEXt::Title", "Plan", NULL));
  return g_bytes_new_take (data, size);
}

GBytes *
rc_picture_maker_make_jpeg (void)
{
  g_autoptr (GdkPixbuf) pixbuf = make_pixbuf ();
  char *data = NULL;
  gsize size = 0;

  g_assert_true (gdk_pixbuf_save_to_buffer (pixbuf, &data, &size, "jpeg", NULL, NULL));
  return g_bytes_new_take (data, size);
}

GBytes *
rc_picture_maker_make_pdf (void)
{
  GByteArray      *all = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (rc_picture_maker_append, all, 100, 80);

  draw_square (surface);
  cairo_surface_show_page (surface);
  draw_square (surface);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (all);
}
