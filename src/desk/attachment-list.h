/* Papers and pictures of a job: the sketch, photos, letters. Kept in the store, seen by a click. */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define RC_TYPE_ATTACHMENT_LIST (rc_attachment_list_get_type ())
G_DECLARE_FINAL_TYPE (RcAttachmentList, rc_attachment_list, RC, ATTACHMENT_LIST, GtkBox)

/* Shows those of the document's job; it outlives the list. */
void rc_attachment_list_show (RcAttachmentList *self, RcDocument *document);

guint rc_attachment_list_get_n (RcAttachmentList *self);
/* Keeps the file's bytes in the store; a step that can be undone. Errors: the file's, RC_ERROR_RANGE above the largest.
 */
gboolean rc_attachment_list_add_file (RcAttachmentList *self, const char *path, GError **error);
