#include "desk-fixture.h"

#include <execinfo.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <unistd.h>

void
desk_fixture_wait (RcDocument *document)
{
  while (document && !rc_document_is_planned (document))
    g_main_context_iteration (NULL, TRUE);
}

/* The plans of all windows' jobs. */
static void
wait_for_windows (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      if (RC_IS_WINDOW (window))
        desk_fixture_wait (rc_window_get_document (RC_WINDOW (window)));
    }
}

void
desk_fixture_settle (void)
{
  while (g_main_context_pending (NULL))
    g_main_context_iteration (NULL, FALSE);
  if (!gtk_is_initialized ())
    return;
  wait_for_windows ();
  while (g_main_context_pending (NULL))
    g_main_context_iteration (NULL, FALSE);
}

static void
on_painted (GdkFrameClock *clock, gboolean *is_painted)
{
  *is_painted = TRUE;
}

void
desk_fixture_paint (GtkWidget *window)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  gboolean       is_painted = FALSE;

  g_assert_nonnull (clock);
  g_object_ref (clock);
  gulong handler = g_signal_connect (clock, "after-paint", G_CALLBACK (on_painted), &is_painted);
  gdk_frame_clock_request_phase (clock, GDK_FRAME_CLOCK_PHASE_PAINT);
  while (!is_painted && gtk_widget_get_mapped (window))
    g_main_context_iteration (NULL, TRUE);
  g_signal_handler_disconnect (clock, handler);
  g_object_unref (clock);
}

/* Tells where: a crash that comes once in a hundred runs is seldom seen by a debugger. */
static void
on_crash (int number)
{
  void *frames[64];

  signal (number, SIG_DFL);
  backtrace_symbols_fd (frames, backtrace (frames, G_N_ELEMENTS (frames)), STDERR_FILENO);
  raise (number);
}

/* Unless a sanitizer does. */
static void
watch_crashes (void)
{
  struct sigaction now;

  if (sigaction (SIGSEGV, NULL, &now) == 0 && now.sa_handler == SIG_DFL)
    signal (SIGSEGV, on_crash);
}

void
desk_fixture_open_store (DeskFixture *fixture)
{
  g_autoptr (GError) error = NULL;

  watch_crashes ();
  rc_desk_load_resources ();
  fixture->folder = g_dir_make_tmp ("rowcut-desk-XXXXXX", &error);
  g_assert_no_error (error);
  g_autofree char *path = g_build_filename (fixture->folder, "store.db", NULL);
  fixture->store = rc_desk_open_store (path, &error);
  g_assert_no_error (error);
}

/* One for all tests of a program: it lives until the end. */
static GtkApplication *
get_application (void)
{
  static GtkApplication *application = NULL;
  g_autoptr (GError) error = NULL;

  if (application == NULL)
    {
      application = g_object_new (RC_TYPE_DESK, "application-id", "org.rowcut.Rowcut.Test", "flags",
                                  G_APPLICATION_NON_UNIQUE, NULL);
      g_application_register (G_APPLICATION (application), NULL, &error);
      g_assert_no_error (error);
    }
  return application;
}

void
desk_fixture_open (DeskFixture *fixture, gboolean open_demo)
{
  g_autoptr (GError) error = NULL;

  desk_fixture_open_store (fixture);
  fixture->application = get_application ();
  fixture->window = rc_window_new (fixture->application, fixture->store);
  if (open_demo)
    {
      rc_window_open_demo (fixture->window, &error);
      g_assert_no_error (error);
      rc_document_set_improve_seconds (rc_window_get_document (fixture->window), 0);
    }
  gtk_window_present (GTK_WINDOW (fixture->window));
  desk_fixture_settle ();
}

void
desk_fixture_remove_folder (const char *path)
{
  GDir       *folder = g_dir_open (path, 0, NULL);
  const char *name;

  while (folder && (name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *file = g_build_filename (path, name, NULL);
      g_remove (file);
    }
  g_clear_pointer (&folder, g_dir_close);
  g_rmdir (path);
}

void
desk_fixture_close (DeskFixture *fixture)
{
  if (fixture->window)
    {
      RcDocument *document = rc_window_get_document (fixture->window);
      RcWindow   *window = g_object_ref (fixture->window);

      if (document)
        g_object_add_weak_pointer (G_OBJECT (document), (gpointer *)&document);
      gtk_window_destroy (GTK_WINDOW (fixture->window));
      desk_fixture_settle ();
      g_assert_finalize_object (window);
      while (document) /* until a search that was cancelled has let go of it; the test's own time limit watches */
        g_main_context_iteration (NULL, TRUE);
    }
  g_clear_pointer (&fixture->store, rc_store_close);
  desk_fixture_remove_folder (fixture->folder);
  g_clear_pointer (&fixture->folder, g_free);
}

static gboolean
has_label (GtkWidget *widget, const char *name)
{
  g_autofree char *other = NULL;

  if (!gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    return FALSE;
  other = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name);
  return other == NULL;
}

GtkWidget *
desk_fixture_find (GtkWidget *root, GType type, const char *name)
{
  if (g_type_is_a (G_OBJECT_TYPE (root), type)
      && (name == NULL || g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (root)), name) == 0
          || has_label (root, name)))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = desk_fixture_find (child, type, name);
      if (found)
        return found;
    }
  return NULL;
}

void
desk_fixture_type (GtkWindow *window, const char *text)
{
  GtkWidget *focus = gtk_window_get_focus (window);
  int        at = 0, from = 0, to = 0;

  g_assert_true (GTK_IS_EDITABLE (focus));
  GtkEditable *entry = GTK_EDITABLE (focus);
  if (gtk_editable_get_selection_bounds (entry, &from, &to))
    gtk_editable_delete_text (entry, from, to);
  at = gtk_editable_get_position (entry);
  for (const char *p = text; *p; p = g_utf8_next_char (p))
    {
      gtk_editable_insert_text (entry, p, (int)(g_utf8_next_char (p) - p), &at);
      gtk_editable_set_position (entry, at);
      desk_fixture_settle ();
    }
}

void
desk_fixture_press_return (GtkWindow *window)
{
  GtkWidget *focus = gtk_window_get_focus (window);

  g_assert_true (GTK_IS_TEXT (focus));
  g_signal_emit_by_name (focus, "activate");
  desk_fixture_settle ();
}
