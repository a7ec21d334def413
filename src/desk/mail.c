#include "mail.h"

#include <fcntl.h>
#include <gio/gunixfdlist.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <unistd.h>

#include "rowcut-error.h"

#define PORTAL_NAME "org.freedesktop.portal.Desktop"
#define PORTAL_PATH "/org/freedesktop/portal/desktop"
#define FALLBACK    "xdg-email"

/* What the portal answers. XDG Desktop Portal documentation, org.freedesktop.portal.Request, signal Response. */
enum
{
  RESPONSE_DONE,
  RESPONSE_CANCELLED,
};

typedef struct
{
  char            *address, *subject, *text, *path;
  GDBusConnection *bus;
  guint            subscription;
  RcMailEnd        end;
} Compose;

static void
compose_free (gpointer data)
{
  Compose *compose = data;

  if (compose->subscription != 0)
    g_dbus_connection_signal_unsubscribe (compose->bus, compose->subscription);
  g_clear_object (&compose->bus);
  g_free (compose->address);
  g_free (compose->subject);
  g_free (compose->text);
  g_free (compose->path);
  g_free (compose);
}

static void
end_with (GTask *task, RcMailEnd end)
{
  ((Compose *)g_task_get_task_data (task))->end = end;
  g_task_return_boolean (task, TRUE);
  g_object_unref (task);
}

/* --- the command --- */

static void
end_without (GTask *task)
{
  const Compose *compose = g_task_get_task_data (task);

  if (compose->address != NULL)
    g_task_return_new_error (task, RC_ERROR, RC_ERROR_REFERENCE,
                             _ ("No mail program answers. The sheet is in %s: attach it to a message to %s."),
                             compose->path, compose->address);
  else
    g_task_return_new_error (task, RC_ERROR, RC_ERROR_REFERENCE,
                             _ ("No mail program answers. The sheet is in %s: attach it to a message."), compose->path);
  g_object_unref (task);
}

static void
on_command_ended (GObject *source, GAsyncResult *result, gpointer data)
{
  GTask *task = data;

  if (g_subprocess_wait_check_finish (G_SUBPROCESS (source), result, NULL))
    end_with (task, RC_MAIL_OPENED);
  else
    end_without (task);
}

static void
try_command (GTask *task)
{
  const Compose   *compose = g_task_get_task_data (task);
  g_autofree char *program = g_find_program_in_path (FALLBACK);
  g_autoptr (GSubprocess) process = NULL;

  if (program != NULL)
    process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDOUT_SILENCE | G_SUBPROCESS_FLAGS_STDERR_SILENCE, NULL, program,
                                "--utf8", "--subject", compose->subject, "--body", compose->text, "--attach",
                                compose->path, compose->address, NULL);
  if (process != NULL)
    g_subprocess_wait_check_async (process, NULL, on_command_ended, task);
  else
    end_without (task);
}

/* --- the portal --- */

static void
on_response (GDBusConnection *bus, const char *sender, const char *path, const char *interface, const char *signal,
             GVariant *parameters, gpointer data)
{
  GTask   *task = data;
  Compose *compose = g_task_get_task_data (task);
  guint32  response;

  g_variant_get_child (parameters, 0, "u", &response);
  g_dbus_connection_signal_unsubscribe (bus, compose->subscription);
  compose->subscription = 0;
  if (response == RESPONSE_DONE || response == RESPONSE_CANCELLED)
    end_with (task, response == RESPONSE_DONE ? RC_MAIL_OPENED : RC_MAIL_CANCELLED);
  else
    try_command (task);
}

/* What a request will be known by: told before the call, so that its answer cannot come too early. (transfer full) */
static char *
dup_request_path (GDBusConnection *bus, const char *token)
{
  g_autofree char *sender = g_strdelimit (g_strdup (g_dbus_connection_get_unique_name (bus) + 1), ".", '_');

  return g_strdup_printf (PORTAL_PATH "/request/%s/%s", sender, token);
}

static void
on_called (GObject *source, GAsyncResult *result, gpointer data)
{
  GTask                 *task = data;
  Compose               *compose = g_task_get_task_data (task);
  g_autoptr (GTask) held G_GNUC_UNUSED = task;
  g_autoptr (GVariant) reply
      = g_dbus_connection_call_with_unix_fd_list_finish (G_DBUS_CONNECTION (source), NULL, result, NULL);

  /* Its answer comes as a signal, and may have come. */
  if (reply != NULL || compose->subscription == 0)
    return;
  g_dbus_connection_signal_unsubscribe (compose->bus, compose->subscription);
  compose->subscription = 0;
  try_command (task);
}

/* NULL when the file cannot be opened. */
static GVariant *
make_options (const Compose *compose, const char *token, GUnixFDList *files)
{
  GVariantBuilder options, handles;
  int             file = open (compose->path, O_RDONLY | O_CLOEXEC), handle;

  if (file < 0)
    return NULL;
  handle = g_unix_fd_list_append (files, file, NULL);
  close (file);
  if (handle < 0)
    return NULL;
  g_variant_builder_init (&handles, G_VARIANT_TYPE ("ah"));
  g_variant_builder_add (&handles, "h", handle);
  g_variant_builder_init (&options, G_VARIANT_TYPE_VARDICT);
  g_variant_builder_add (&options, "{sv}", "handle_token", g_variant_new_string (token));
  if (compose->address != NULL)
    g_variant_builder_add (&options, "{sv}", "address", g_variant_new_string (compose->address));
  g_variant_builder_add (&options, "{sv}", "subject", g_variant_new_string (compose->subject));
  g_variant_builder_add (&options, "{sv}", "body", g_variant_new_string (compose->text));
  g_variant_builder_add (&options, "{sv}", "attachment_fds", g_variant_builder_end (&handles));
  return g_variant_builder_end (&options);
}

static void
call_portal (GTask *task)
{
  Compose         *compose = g_task_get_task_data (task);
  g_autofree char *token = g_strdup_printf ("rowcut%u", g_random_int ());
  g_autofree char *path = dup_request_path (compose->bus, token);
  g_autoptr (GUnixFDList) files = g_unix_fd_list_new ();
  GVariant *options = make_options (compose, token, files);

  if (options == NULL)
    {
      try_command (task);
      return;
    }
  compose->subscription
      = g_dbus_connection_signal_subscribe (compose->bus, PORTAL_NAME, "org.freedesktop.portal.Request", "Response",
                                            path, NULL, G_DBUS_SIGNAL_FLAGS_NONE, on_response, task, NULL);
  g_dbus_connection_call_with_unix_fd_list (compose->bus, PORTAL_NAME, PORTAL_PATH, "org.freedesktop.portal.Email",
                                            "ComposeEmail", g_variant_new ("(s@a{sv})", "", options),
                                            G_VARIANT_TYPE ("(o)"), G_DBUS_CALL_FLAGS_NONE, -1, files, NULL, on_called,
                                            g_object_ref (task));
}

static void
on_bus (GObject *source, GAsyncResult *result, gpointer data)
{
  GTask   *task = data;
  Compose *compose = g_task_get_task_data (task);

  compose->bus = g_bus_get_finish (result, NULL);
  if (compose->bus != NULL)
    call_portal (task);
  else
    try_command (task);
}

char *
rc_mail_dup_path (const char *name, GError **error)
{
  g_autofree char *folder = g_build_filename (g_get_user_cache_dir (), "rowcut", "mail", NULL);

  if (g_mkdir_with_parents (folder, 0700) == 0)
    return g_build_filename (folder, name, NULL);
  g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_FAILED, _ ("Cannot make the folder “%s”"), folder);
  return NULL;
}

void
rc_mail_compose_async (const RcMail *mail, GAsyncReadyCallback done, gpointer data)
{
  Compose *compose = g_new0 (Compose, 1);
  GTask   *task = g_task_new (NULL, NULL, done, data);

  compose->address = mail->address != NULL && *mail->address != '\0' ? g_strdup (mail->address) : NULL;
  compose->subject = g_strdup (mail->subject);
  compose->text = g_strdup (mail->text);
  compose->path = g_strdup (mail->path);
  g_task_set_task_data (task, compose, compose_free);
  g_bus_get (G_BUS_TYPE_SESSION, NULL, on_bus, task);
}

const char *
rc_mail_get_opened_words (void)
{
  return _ ("The mail program has the sheet; nothing is sent before you send it there.");
}

gboolean
rc_mail_compose_finish (GAsyncResult *result, RcMailEnd *end, GError **error)
{
  gboolean done = g_task_propagate_boolean (G_TASK (result), error);

  if (done)
    *end = ((const Compose *)g_task_get_task_data (G_TASK (result)))->end;
  return done;
}
