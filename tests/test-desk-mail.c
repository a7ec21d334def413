/* Sheets by mail: to whom, in which words, and handed over to a stand-in for the desktop's portal, or for xdg-email, on
 * a bus of the test's own. What the portal is asked and answers: XDG Desktop Portal documentation,
 * org.freedesktop.portal.Email version 1 and org.freedesktop.portal.Request. */
#include <gio/gunixfdlist.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "desk.h"
#include "rowcut-error.h"
#include "sheet-fixture.h"
#include "sheet-mail.h"
#include "shipped.h"
#include "translation.h"

#define PORTAL_PATH "/org/freedesktop/portal/desktop"

static const char portal_xml[] = "<node><interface name='org.freedesktop.portal.Email'>"
                                 "<method name='ComposeEmail'><arg type='s' direction='in'/>"
                                 "<arg type='a{sv}' direction='in'/><arg type='o' direction='out'/></method>"
                                 "</interface></node>";

/* The stand-in: what it was asked, and how it is to answer. */
typedef struct
{
  GDBusConnection *bus;
  guint            object, name;
  gboolean         is_ready;
  guint32          response;
  gboolean         refuses, answers_first;
  char            *address, *subject, *text, *attached;
} Portal;

typedef struct
{
  char      *folder;
  RcJob     *job;
  RcOutcome *outcome;
  Portal     portal;
  gboolean   is_done, is_opened;
  RcMailEnd  end;
  GError    *error;
} Fixture;

static char *
read_attachment (GDBusMethodInvocation *invocation, GVariant *options)
{
  GUnixFDList *files = g_dbus_message_get_unix_fd_list (g_dbus_method_invocation_get_message (invocation));
  g_autoptr (GVariant) handles = g_variant_lookup_value (options, "attachment_fds", G_VARIANT_TYPE ("ah"));
  char   start[9] = "";
  gint32 handle;
  int    file;

  g_assert_nonnull (handles);
  g_assert_cmpuint (g_variant_n_children (handles), ==, 1);
  g_variant_get_child (handles, 0, "h", &handle);
  file = g_unix_fd_list_get (files, handle, NULL);
  g_assert_cmpint (read (file, start, 8), ==, 8);
  close (file);
  return g_strdup (start);
}

static void
on_compose (GDBusConnection *bus, const char *sender, const char *object, const char *interface, const char *method,
            GVariant *parameters, GDBusMethodInvocation *invocation, gpointer data)
{
  Portal *portal = data;
  g_autoptr (GVariant) options = g_variant_get_child_value (parameters, 1);
  g_autofree char *name = g_strdelimit (g_strdup (sender + 1), ".", '_'), *token = NULL, *request = NULL;

  if (portal->refuses)
    {
      g_dbus_method_invocation_return_dbus_error (invocation, "org.freedesktop.portal.Error.Failed", "no");
      return;
    }
  g_variant_lookup (options, "address", "s", &portal->address);
  g_variant_lookup (options, "subject", "s", &portal->subject);
  g_variant_lookup (options, "body", "s", &portal->text);
  g_assert_true (g_variant_lookup (options, "handle_token", "s", &token));
  portal->attached = read_attachment (invocation, options);
  request = g_strdup_printf (PORTAL_PATH "/request/%s/%s", name, token);
  if (!portal->answers_first)
    g_dbus_method_invocation_return_value (invocation, g_variant_new ("(o)", request));
  g_dbus_connection_emit_signal (bus, sender, request, "org.freedesktop.portal.Request", "Response",
                                 g_variant_new ("(ua{sv})", portal->response, NULL), NULL);
  if (portal->answers_first)
    g_dbus_method_invocation_return_value (invocation, g_variant_new ("(o)", request));
}

static void
on_name (GDBusConnection *bus, const char *name, gpointer data)
{
  ((Portal *)data)->is_ready = TRUE;
}

static void
start_portal (Portal *portal, guint32 response)
{
  static const GDBusInterfaceVTable table = { on_compose, NULL, NULL, { NULL } };
  g_autoptr (GDBusNodeInfo) info = g_dbus_node_info_new_for_xml (portal_xml, NULL);
  const char *address = g_getenv ("DBUS_SESSION_BUS_ADDRESS");

  portal->response = response;
  portal->bus = g_dbus_connection_new_for_address_sync (
      address, G_DBUS_CONNECTION_FLAGS_AUTHENTICATION_CLIENT | G_DBUS_CONNECTION_FLAGS_MESSAGE_BUS_CONNECTION, NULL,
      NULL, NULL);
  g_assert_nonnull (portal->bus);
  portal->object
      = g_dbus_connection_register_object (portal->bus, PORTAL_PATH, info->interfaces[0], &table, portal, NULL, NULL);
  portal->name
      = g_bus_own_name_on_connection (portal->bus, "org.freedesktop.portal.Desktop", 0, on_name, NULL, portal, NULL);
  while (!portal->is_ready)
    g_main_context_iteration (NULL, TRUE);
}

static void
stop_portal (Portal *portal)
{
  if (portal->bus == NULL)
    return;
  g_bus_unown_name (portal->name);
  g_dbus_connection_unregister_object (portal->bus, portal->object);
  g_dbus_connection_close_sync (portal->bus, NULL, NULL);
  g_clear_object (&portal->bus);
}

/* A stand-in for the command that writes down what it is called with and ends with `status`; NULL: there is none. */
static void
put_command (Fixture *fixture, const char *status)
{
  g_autofree char *path = g_build_filename (fixture->folder, "xdg-email", NULL);
  g_autofree char *script = g_strdup_printf (
      "#!/bin/sh\nfor a in \"$@\"; do echo \"$a\"; done > '%s/called'\nexit %s\n", fixture->folder, status);

  if (status == NULL)
    return;
  g_assert_true (g_file_set_contents (path, script, -1, NULL));
  g_assert_cmpint (g_chmod (path, 0700), ==, 0);
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (NULL);
  g_autoptr (GError) error = NULL;

  fixture->folder = g_dir_make_tmp ("rowcut-mail-XXXXXX", NULL);
  g_setenv ("PATH", fixture->folder, TRUE);
  fixture->job = rc_shipped_load_demo_job (&error);
  g_assert_no_error (error);
  rc_job_adopt_goods (fixture->job, book->goods);
  fixture->outcome = rc_outcome_new (fixture->job, NULL, NULL, book, "2026-03-04", 0, NULL, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_nonnull (fixture->outcome->quote);
}

static void
remove_file (const char *folder, const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);

  g_remove (path);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  stop_portal (&fixture->portal);
  g_free (fixture->portal.address);
  g_free (fixture->portal.subject);
  g_free (fixture->portal.text);
  g_free (fixture->portal.attached);
  g_clear_error (&fixture->error);
  rc_outcome_unref (fixture->outcome);
  rc_job_free (fixture->job);
  remove_file (fixture->folder, "xdg-email");
  remove_file (fixture->folder, "called");
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
}

static void
on_done (GObject *source, GAsyncResult *result, gpointer data)
{
  Fixture *fixture = data;

  fixture->is_opened = rc_mail_compose_finish (result, &fixture->end, &fixture->error);
  fixture->is_done = TRUE;
}

static void
mail (Fixture *fixture, RcSheetKind kind, const char *language, const char *number)
{
  g_autoptr (RcSheetSet) set = rc_sheet_set_new (fixture->outcome, NULL, language);
  g_autoptr (GError) error = NULL;

  g_assert_true (
      rc_sheet_mail_async (set, (guint)rc_sheet_set_find (set, kind), RC_PAPER_A4, number, on_done, fixture, &error));
  g_assert_no_error (error);
  while (!fixture->is_done)
    g_main_context_iteration (NULL, TRUE);
}

static void
test_portal (Fixture *fixture, gconstpointer data)
{
  put_command (fixture, "0");
  fixture->portal.answers_first = GPOINTER_TO_INT (data);
  start_portal (&fixture->portal, 0);
  mail (fixture, RC_SHEET_QUOTATION, NULL, "Q-12");
  g_assert_no_error (fixture->error);
  g_assert_true (fixture->is_opened);
  g_assert_cmpint (fixture->end, ==, RC_MAIL_OPENED);
  g_assert_cmpstr (fixture->portal.address, ==, "tamsin@gull-cottage.invalid");
  g_assert_cmpstr (fixture->portal.subject, ==, "Quotation Q-12, Gull Cottage, ground floor");
  g_assert_true (g_str_has_prefix (fixture->portal.text, "Dear Tamsin Oddlebury,\n\n"));
  g_assert_true (g_str_has_prefix (fixture->portal.attached, "%PDF-1."));
}

static void
test_cancelled (Fixture *fixture, gconstpointer data)
{
  put_command (fixture, "0");
  start_portal (&fixture->portal, 1);
  mail (fixture, RC_SHEET_QUOTATION, NULL, NULL);
  g_assert_true (fixture->is_opened);
  g_assert_cmpint (fixture->end, ==, RC_MAIL_CANCELLED);
}

/* Where the portal is not there, does not want to or cannot, the command is called. */
static void
test_command (Fixture *fixture, gconstpointer data)
{
  const char      *how = data;
  g_autofree char *path = g_build_filename (fixture->folder, "called", NULL), *called = NULL;
  g_auto (GStrv) lines = NULL;
  guint n;

  put_command (fixture, "0");
  fixture->portal.refuses = g_str_equal (how, "refuses");
  if (!g_str_equal (how, "absent"))
    start_portal (&fixture->portal, 2);
  mail (fixture, RC_SHEET_QUOTATION, NULL, NULL);
  g_assert_no_error (fixture->error);
  g_assert_true (fixture->is_opened);
  g_assert_true (g_file_get_contents (path, &called, NULL, NULL));
  lines = g_strsplit (g_strstrip (called), "\n", -1);
  n = g_strv_length (lines);
  g_assert_cmpstr (lines[0], ==, "--utf8");
  g_assert_cmpstr (lines[1], ==, "--subject");
  g_assert_cmpstr (lines[n - 3], ==, "--attach");
  g_assert_true (g_file_test (lines[n - 2], G_FILE_TEST_IS_REGULAR));
  g_assert_cmpstr (lines[n - 1], ==, "tamsin@gull-cottage.invalid");
}

/* Without either the message says where the sheet is and whom it is for. */
static void
test_nothing_there (Fixture *fixture, gconstpointer data)
{
  put_command (fixture, data);
  mail (fixture, RC_SHEET_QUOTATION, NULL, NULL);
  g_assert_false (fixture->is_opened);
  g_assert_error (fixture->error, RC_ERROR, RC_ERROR_REFERENCE);
  g_assert_nonnull (strstr (fixture->error->message, "2026-014-quotation.pdf"));
  g_assert_nonnull (strstr (fixture->error->message, "tamsin@gull-cottage.invalid"));
}

/* Whom each sheet goes to, and in which language. */
static void
test_letters (Fixture *fixture, gconstpointer data)
{
  static const struct
  {
    RcSheetKind kind;
    const char *language, *address, *subject, *text;
  } rows[] = {
    { RC_SHEET_QUOTATION, "es", "tamsin@gull-cottage.invalid", "Presupuesto, trabajo 2026-014", "Hola, Tamsin" },
    { RC_SHEET_SEAM_PLAN, "fr", "tamsin@gull-cottage.invalid", "Plan de pose, chantier 2026-014", "Bonjour Tamsin" },
    { RC_SHEET_OPTIONS, "en", "tamsin@gull-cottage.invalid", "Options compared, job 2026-014", "Dear Tamsin" },
    { RC_SHEET_FITTERS, "es", NULL, "Hoja", "Hola:" },
    { RC_SHEET_JOB_SUMMARY, NULL, NULL, "Job summary, job 2026-014", "Hello," },
    { RC_SHEET_ORDER, NULL, "orders@mill.invalid", "Order, job 2026-014", "Our number with you is 4711." },
  };
  RcSupplier *supplier;

  if (g_getenv ("ROWCUT_LOCALE_DIR") == NULL)
    {
      g_test_skip ("ROWCUT_LOCALE_DIR does not name the translations");
      return;
    }
  g_autoptr (RcSheetSet) orders = rc_sheet_set_new (fixture->outcome, NULL, NULL);
  supplier = rc_supplier_new (((const RcOrder *)g_ptr_array_index (orders->orders, 0))->supplier);
  supplier->email = g_strdup ("orders@mill.invalid");
  supplier->account = g_strdup ("4711");
  g_ptr_array_add (fixture->outcome->book->suppliers, supplier);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (RcSheetSet) set = rc_sheet_set_new (fixture->outcome, NULL, rows[i].language);
      g_auto (RcSheetLetter) letter = { 0 };

      rc_sheet_letter_init_for_set (&letter, set, (guint)rc_sheet_set_find (set, rows[i].kind), NULL);
      g_assert_cmpstr (letter.address, ==, rows[i].address);
      g_test_message ("%s\n%s", letter.subject, letter.text);
      g_assert_true (g_str_has_prefix (letter.subject, rows[i].subject));
      g_assert_nonnull (strstr (letter.text, rows[i].text));
      g_assert_cmpstr (rc_sheet_kind_get_label (RC_SHEET_QUOTATION), ==, "Quotation");
    }
}

/* In a language of its own a sheet is worded in it throughout, and the same figures stand on it. */
static void
test_language_of_lines (Fixture *fixture, gconstpointer data)
{
  g_autoptr (RcSheetSet) own = NULL;
  g_autoptr (RcSheetSet) french = NULL;
  RcSheetData ours, theirs;
  guint       n_other = 0;

  if (g_getenv ("ROWCUT_LOCALE_DIR") == NULL)
    {
      g_test_skip ("ROWCUT_LOCALE_DIR does not name the translations");
      return;
    }
  own = rc_sheet_set_new (fixture->outcome, NULL, NULL);
  french = rc_sheet_set_new (fixture->outcome, NULL, "fr");
  rc_sheet_set_get_data (own, 0, RC_PAPER_A4, NULL, &ours);
  rc_sheet_set_get_data (french, 0, RC_PAPER_A4, NULL, &theirs);
  g_assert_cmpint (ours.quote->total, ==, theirs.quote->total);
  g_assert_cmpuint (ours.quote->lines->len, ==, theirs.quote->lines->len);
  for (guint i = 0; i < ours.quote->lines->len; i++)
    {
      const RcQuoteLine *one = g_ptr_array_index (ours.quote->lines, i);
      const RcQuoteLine *other = g_ptr_array_index (theirs.quote->lines, i);

      g_assert_cmpstr (one->item, ==, other->item);
      g_assert_cmpint (one->amount, ==, other->amount);
      n_other += g_strcmp0 (one->because, other->because) != 0 ? 1 : 0;
    }
  g_assert_cmpuint (n_other, >, 0);
}

int
main (int argc, char **argv)
{
  g_autoptr (GTestDBus) bus = NULL;
  g_autofree char *daemon = g_find_program_in_path ("dbus-daemon"), *cache = NULL;
  int              status;

  g_test_init (&argc, &argv, NULL);
  rc_desk_load_resources ();
  rc_translation_init ();
  if (daemon == NULL)
    {
      g_test_message ("dbus-daemon is not here");
      return 77;
    }
  cache = g_dir_make_tmp ("rowcut-cache-XXXXXX", NULL);
  g_setenv ("XDG_CACHE_HOME", cache, TRUE);
  bus = g_test_dbus_new (G_TEST_DBUS_NONE);
  g_test_dbus_up (bus);
#define ADD(path, data, function) g_test_add (path, Fixture, data, set_up, function, tear_down)
  ADD ("/desk/mail/portal", GINT_TO_POINTER (FALSE), test_portal);
  ADD ("/desk/mail/portal-that-answers-first", GINT_TO_POINTER (TRUE), test_portal);
  ADD ("/desk/mail/cancelled", NULL, test_cancelled);
  ADD ("/desk/mail/command-without-a-portal", "absent", test_command);
  ADD ("/desk/mail/command-when-the-portal-refuses", "refuses", test_command);
  ADD ("/desk/mail/command-when-the-portal-fails", "fails", test_command);
  ADD ("/desk/mail/nothing-there", NULL, test_nothing_there);
  ADD ("/desk/mail/command-that-fails", "4", test_nothing_there);
  ADD ("/desk/mail/letters", NULL, test_letters);
  ADD ("/desk/mail/language-of-lines", NULL, test_language_of_lines);
  status = g_test_run ();
  g_test_dbus_down (bus);
  rc_sheet_fixture_forget_fonts ();
  return status;
}
