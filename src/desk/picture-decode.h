/* Plan pictures from files of any origin: PNG, JPEG, or a page of a PDF, as an image of bounded size.
 *
 * Such a file may be made to do harm, so the desk has it read by a process of its own that may use only so much memory
 * and time, and takes from it an image that this program wrote.
 */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

#define RC_PICTURE_MAX_SIDE  2400       /* pixels */
#define RC_PICTURE_MAX_BYTES (32 << 20) /* of the file */
#define RC_PICTURE_OPTION    "--read-picture"

/* In this process: only where the bytes are trusted, or in the child. `page` from 1, of a PDF. Errors: RC_ERROR_FORMAT
 * for what is no picture, RC_ERROR_RANGE for one too large or a page that is not there. (transfer full) */
cairo_surface_t *rc_picture_decode (GBytes *bytes, guint page, GError **error);

/* The child: `rowcut --read-picture PAGE` reads a file on standard input and writes PNG on standard output. Its exit
 * status. */
int rc_picture_decode_main (int argc, char **argv);

/* Reads in a child and calls back. finish: as rc_picture_decode. */
void             rc_picture_read_async (GBytes *bytes, guint page, GAsyncReadyCallback callback, gpointer data);
cairo_surface_t *rc_picture_read_finish (GAsyncResult *result, GError **error);
