/* A file handed to the desktop's mail program as an attachment, for the person to look at and send.
 *
 * First by the freedesktop portal org.freedesktop.portal.Email (its ComposeEmail), where a desktop has one; else by the
 * command xdg-email. Neither sends anything by itself.
 */
#pragma once

#include <gio/gio.h>

typedef struct
{
  const char *address; /* nullable: the person writes it */
  const char *subject, *text;
  const char *path; /* of the file, which must stay where it is */
} RcMail;

typedef enum
{
  RC_MAIL_OPENED,
  RC_MAIL_CANCELLED, /* the person did not want to */
} RcMailEnd;

/* `mail` is copied. */
void rc_mail_compose_async (const RcMail *mail, GAsyncReadyCallback done, gpointer data);
/* FALSE and RC_ERROR_REFERENCE, naming the file and the address, when there is no mail program that takes it. */
gboolean rc_mail_compose_finish (GAsyncResult *result, RcMailEnd *end, GError **error);
