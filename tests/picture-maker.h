/* Small pictures in each kind of file: 100 by 80 pixels (points), black from 20,10 to 60,40. */
#pragma once

#include <cairo.h>
#include <glib.h>

/* (transfer full) The PDF has two pages. */
GBytes *rc_picture_maker_make_png (void);
GBytes *rc_picture_maker_make_loose_png (void); /* its pixels not packed, some of them half clear; with a text */
GBytes *rc_picture_maker_make_jpeg (void);
GBytes *rc_picture_maker_make_pdf (void);

/* A cairo write function; `closure` is a GByteArray. */
cairo_status_t rc_picture_maker_append (void *closure, const unsigned char *data, unsigned int length);
