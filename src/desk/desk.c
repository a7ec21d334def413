#include "desk.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

#include "picture-decode.h"
#include "colour-scheme.h"
#include "daily-backup.h"
#include "rowcut-data.h"
#include "rowcut-ui.h"
#include "shipped.h"
#include "translation.h"
#include "window-actions.h"

#define APPLICATION_ID "org.rowcut.Rowcut"

struct _RcDesk
{
  GtkApplication parent_instance;

  char           *store_path;
  RcStore        *store;
  RcColourScheme *colour_scheme;
  guint           backup_timer;
};

G_DEFINE_FINAL_TYPE (RcDesk, rc_desk, GTK_TYPE_APPLICATION)

void
rc_desk_load_resources (void)
{
  static gsize is_loaded = 0;

  if (!g_once_init_enter (&is_loaded))
    return;
  rowcut_data_get_resource ();
  rowcut_ui_get_resource ();
  g_once_init_leave (&is_loaded, 1);
}

RcStore *
rc_desk_open_store (const char *path, GError **error)
{
  gboolean created = FALSE;

  if (!g_str_equal (path, ":memory:"))
    {
      g_autofree char *folder = g_path_get_dirname (path);
      g_mkdir_with_parents (folder, 0700); /* opening says what is wrong when this does not work */
    }
  g_autoptr (RcStore) store = rc_store_open (path, &created, error);
  if (store && created)
    {
      g_autoptr (RcPriceBook) book = rc_shipped_load_price_book (error);
      if (book == NULL || !rc_store_save_price_book (store, book, error))
        return NULL;
    }
  return g_steal_pointer (&store);
}

static void
load_style (void)
{
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (style, "/org/rowcut/Rowcut/ui/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

static void
rc_desk_startup (GApplication *application)
{
  RcDesk *self = RC_DESK (application);

  G_APPLICATION_CLASS (rc_desk_parent_class)->startup (application);
  load_style ();
  self->colour_scheme = rc_colour_scheme_new ();
  rc_window_actions_set_keys (GTK_APPLICATION (self));
}

static void
rc_desk_shutdown (GApplication *application)
{
  RcDesk *self = RC_DESK (application);
  GList  *windows;

  while ((windows = gtk_application_get_windows (GTK_APPLICATION (self))) != NULL)
    gtk_window_destroy (GTK_WINDOW (windows->data));
  g_clear_handle_id (&self->backup_timer, g_source_remove);
  g_clear_pointer (&self->store, rc_store_close);
  g_clear_object (&self->colour_scheme);
  G_APPLICATION_CLASS (rc_desk_parent_class)->shutdown (application);
}

static void
on_fault_closed (GtkDialog *dialog, int response, gpointer data)
{
  gtk_window_destroy (GTK_WINDOW (dialog));
}

/* A store that cannot be opened: said in a window, as there is nothing else to show. */
static void
show_store_fault (RcDesk *self, const char *message)
{
  GtkWidget *dialog = gtk_message_dialog_new (NULL, 0, GTK_MESSAGE_ERROR, GTK_BUTTONS_CLOSE, "%s",
                                              _ ("The store of jobs cannot be opened"));

  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", message);
  gtk_window_set_application (GTK_WINDOW (dialog), GTK_APPLICATION (self));
  g_signal_connect (dialog, "response", G_CALLBACK (on_fault_closed), NULL);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* The window, made when there is none; NULL when the store cannot be opened. */
static RcWindow *
get_window (RcDesk *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  g_autoptr (GError) error = NULL;

  if (RC_IS_WINDOW (active))
    return RC_WINDOW (active);
  if (self->store == NULL)
    {
      g_autofree char *path = self->store_path ? g_strdup (self->store_path) : rc_store_dup_default_path ();
      self->store = rc_desk_open_store (path, &error);
      if (self->store != NULL)
        self->backup_timer = rc_daily_backup_start (GTK_APPLICATION (self), path);
    }
  if (self->store == NULL)
    {
      show_store_fault (self, error->message);
      return NULL;
    }
  return rc_window_new (GTK_APPLICATION (self), self->store);
}

static void
rc_desk_activate (GApplication *application)
{
  RcWindow *window = get_window (RC_DESK (application));
  if (window)
    gtk_window_present (GTK_WINDOW (window));
}

static void
rc_desk_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  RcWindow *window = get_window (RC_DESK (application));

  for (int i = 0; window && i < n_files; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *path = g_file_get_path (files[i]);
      if (path && !rc_window_import (window, path, &error))
        rc_window_tell (window, error->message);
    }
  if (window)
    gtk_window_present (GTK_WINDOW (window));
}

static int
rc_desk_handle_local_options (GApplication *application, GVariantDict *options)
{
  RcDesk *self = RC_DESK (application);

  if (g_variant_dict_lookup (options, "store", "^ay", &self->store_path))
    g_application_set_flags (application, g_application_get_flags (application) | G_APPLICATION_NON_UNIQUE);
  return -1;
}

static void
rc_desk_finalize (GObject *object)
{
  g_free (RC_DESK (object)->store_path);
  G_OBJECT_CLASS (rc_desk_parent_class)->finalize (object);
}

static void
rc_desk_class_init (RcDeskClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = rc_desk_finalize;
  application_class->startup = rc_desk_startup;
  application_class->shutdown = rc_desk_shutdown;
  application_class->activate = rc_desk_activate;
  application_class->open = rc_desk_open;
  application_class->handle_local_options = rc_desk_handle_local_options;
}

static void
rc_desk_init (RcDesk *self)
{
  static const GOptionEntry OPTIONS[] = {
    { "store", 0, 0, G_OPTION_ARG_FILENAME, NULL, N_ ("The file that jobs are kept in"), N_ ("FILE") },
    { NULL },
  };

  g_application_add_main_option_entries (G_APPLICATION (self), OPTIONS);
  g_application_set_option_context_parameter_string (G_APPLICATION (self), _ ("[JOB.xml…]"));
}

int
rc_desk_main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  rc_translation_init ();
  if (argc > 1 && g_str_equal (argv[1], RC_PICTURE_OPTION))
    return rc_picture_decode_main (argc, argv);
  rc_desk_load_resources ();
  g_set_application_name (_ ("Rowcut"));
  gtk_window_set_default_icon_name (APPLICATION_ID);

  g_autoptr (RcDesk) desk
      = g_object_new (RC_TYPE_DESK, "application-id", APPLICATION_ID, "flags", G_APPLICATION_HANDLES_OPEN, NULL);
  return g_application_run (G_APPLICATION (desk), argc, argv);
}
