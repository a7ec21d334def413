#include "attachment.h"

RcAttachment *
rc_attachment_new (const char *id, const char *name)
{
  RcAttachment *attachment = g_new0 (RcAttachment, 1);

  attachment->id = g_strdup (id);
  attachment->name = g_strdup (name);
  return attachment;
}

RcAttachment *
rc_attachment_copy (const RcAttachment *attachment)
{
  RcAttachment *copy = rc_attachment_new (attachment->id, attachment->name);

  copy->place = g_strdup (attachment->place);
  copy->digest = g_strdup (attachment->digest);
  copy->notes = g_strdup (attachment->notes);
  copy->added = g_strdup (attachment->added);
  return copy;
}

void
rc_attachment_free (RcAttachment *attachment)
{
  if (attachment == NULL)
    return;
  g_free (attachment->id);
  g_free (attachment->name);
  g_free (attachment->place);
  g_free (attachment->digest);
  g_free (attachment->notes);
  g_free (attachment->added);
  g_free (attachment);
}
