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

/* Where a file of that name is put for mail programs, which read an attachment when it is sent: the next of that name
 * takes its place. The folder is made. G_FILE_ERROR. (transfer full) */
char *rc_mail_dup_path (const char *name, GError **error);

/* `mail` is copied. */
void rc_mail_compose_async (const RcMail *mail, GAsyncReadyCallback done, gpointer data);
/* What to tell when it is opened, translated. */
const char *rc_mail_get_opened_words (void);
/* FALSE and RC_ERROR_REFERENCE, naming the file and the address, when there is no mail program that takes it. */
gboolean rc_mail_compose_finish (GAsyncResult *result, RcMailEnd *end, GError **error);
