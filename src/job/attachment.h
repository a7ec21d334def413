/* A paper or a picture that belongs to a job: the sketch, photos, a letter. */
#pragma once

#include <glib.h>

/* The bytes are either kept in the store under their digest, or lie in a file that is only named. */
typedef struct
{
  char *id;     /* unique in the job: "F1" */
  char *name;   /* "sketch.jpg": what to call it, without a folder */
  char *place;  /* linked: path or URI of the file; NULL when its bytes are in the store */
  char *digest; /* stored: SHA-256 of the bytes, lower-case hex; NULL when linked */
  char *notes;  /* nullable */
  char *added;  /* ISO 8601 date; nullable */
} RcAttachment;

RcAttachment *rc_attachment_new (const char *id, const char *name);
RcAttachment *rc_attachment_copy (const RcAttachment *attachment);
void          rc_attachment_free (RcAttachment *attachment);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (RcAttachment, rc_attachment_free)
