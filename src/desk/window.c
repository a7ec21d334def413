#include "window.h"

#include <glib/gi18n-lib.h>

#include "action-list.h"
#include "clock.h"
#include "job-file.h"
#include "shipped.h"
#include "window-actions.h"

#define TELL_SECONDS 9
#define LOOK_SECONDS 2 /* between looks at what other programs did */

struct _RcWindow
{
  GtkApplicationWindow parent_instance;

  RcStore         *store;
  RcBookKeeper    *keeper;
  RcDocument      *document;
  GtkLabel        *title_label, *subtitle_label;
  GtkToggleButton *jobs_button;
  GtkMenuButton   *actions_button;
  RcActionList    *action_list;
  RcJobList       *job_list;
  GtkStack        *stack;
  GtkWidget       *welcome;
  GtkWidget       *demo_button;
  RcBench         *bench;
  GtkWidget       *tell_box;
  GtkLabel        *tell_label;
  guint            tell_source, look_source;
  gint64           version; /* of the store's data when it was last looked at */
  RcSheetWindow   *sheets;  /* weak */
};

G_DEFINE_FINAL_TYPE (RcWindow, rc_window, GTK_TYPE_APPLICATION_WINDOW)

static guint store_changed_signal;

/* Messages. */

static gboolean
stop_telling (gpointer data)
{
  RcWindow *self = data;

  self->tell_source = 0;
  gtk_widget_set_visible (self->tell_box, FALSE);
  return G_SOURCE_REMOVE;
}

void
rc_window_tell (RcWindow *self, const char *text)
{
  g_clear_handle_id (&self->tell_source, g_source_remove);
  gtk_label_set_text (self->tell_label, text);
  gtk_widget_set_visible (self->tell_box, TRUE);
  self->tell_source = g_timeout_add_seconds (TELL_SECONDS, stop_telling, self);
}

void
rc_window_tell_error (RcWindow *self, const GError *error)
{
  if (error)
    rc_window_tell (self, error->message);
}

const char *
rc_window_get_told (RcWindow *self)
{
  return gtk_label_get_text (self->tell_label);
}

static void
on_tell_closed (RcWindow *self)
{
  g_clear_handle_id (&self->tell_source, g_source_remove);
  gtk_widget_set_visible (self->tell_box, FALSE);
}

/* Changes by other programs on the same store, and by the windows of the office. */

void
rc_window_note_change (RcWindow *self)
{
  if (self->document != NULL)
    rc_document_follow_stock (self->document, NULL);
  rc_job_list_refresh (self->job_list);
  g_signal_emit (self, store_changed_signal, 0);
}

static gboolean
look (gpointer data)
{
  RcWindow *self = data;
  gint64    version = self->version;
  g_autoptr (GError) error = NULL;

  if (rc_store_get_data_version (self->store, &version, NULL) && version != self->version)
    {
      self->version = version;
      rc_window_note_change (self);
    }
  if (self->document == NULL)
    return G_SOURCE_CONTINUE;
  if (rc_document_refresh (self->document, &error))
    rc_window_tell (self, _ ("Another program has changed this job; it is shown as it is now."));
  else if (error)
    rc_window_tell (self, error->message);
  return G_SOURCE_CONTINUE;
}

static void
follow_prices (RcWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (self->document != NULL && !rc_document_follow_prices (self->document, &error))
    rc_window_tell (self, error->message);
}

static void
on_active (RcWindow *self)
{
  if (gtk_window_is_active (GTK_WINDOW (self)))
    look (self);
}

/* The open job. */

static void
show_title (RcWindow *self)
{
  const RcJob     *job = self->document ? rc_document_get_job (self->document) : NULL;
  const char      *title = job == NULL ? _ ("Rowcut") : *job->title ? job->title : _ ("Job without a title");
  const char      *customer = job && job->customer.name ? job->customer.name : "";
  g_autofree char *subtitle = NULL;

  if (job && job->measures->len > 1)
    subtitle = g_strdup_printf (_ ("%s%smeasure %s"), customer, *customer ? ", " : "",
                                rc_document_get_measure (self->document)->id);
  else
    subtitle = g_strdup (customer);
  gtk_label_set_text (self->title_label, title);
  gtk_label_set_text (self->subtitle_label, subtitle);
  gtk_widget_set_visible (GTK_WIDGET (self->subtitle_label), *subtitle != '\0');
  g_autofree char *window_title = job ? g_strdup_printf (_ ("%s – Rowcut"), title) : g_strdup (title);
  gtk_window_set_title (GTK_WINDOW (self), window_title);
}

static void
on_edited (RcWindow *self)
{
  show_title (self);
  rc_job_list_refresh (self->job_list);
  rc_window_actions_update (self);
}

static void
set_document (RcWindow *self, RcDocument *document)
{
  if (self->document)
    {
      g_signal_handlers_disconnect_by_data (self->document, self);
      rc_document_set_improve_seconds (self->document, 0); /* a search under way holds the document */
    }
  if (self->sheets)
    gtk_window_destroy (GTK_WINDOW (self->sheets));
  rc_bench_set_document (self->bench, document);
  g_set_object (&self->document, document);
  gtk_stack_set_visible_child (self->stack, document ? GTK_WIDGET (self->bench) : self->welcome);
  if (document)
    {
      g_signal_connect_swapped (document, "edited", G_CALLBACK (on_edited), self);
      g_signal_connect_swapped (document, "chosen", G_CALLBACK (rc_window_actions_update), self);
    }
  show_title (self);
  rc_window_actions_update (self);
  g_signal_emit (self, store_changed_signal, 0);
}

gboolean
rc_window_open_job (RcWindow *self, const char *id, GError **error)
{
  g_autoptr (RcDocument) document = rc_document_new (self->store, id, error);

  if (document == NULL)
    return FALSE;
  set_document (self, document);
  gtk_toggle_button_set_active (self->jobs_button, FALSE);
  rc_bench_focus (self->bench, RC_BENCH_THINGS);
  return TRUE;
}

void
rc_window_close_job (RcWindow *self)
{
  set_document (self, NULL);
  gtk_toggle_button_set_active (self->jobs_button, TRUE);
  rc_job_list_refresh (self->job_list);
}

gboolean
rc_window_save_and_open (RcWindow *self, RcJob *job, const char *step, GError **error)
{
  g_autofree char *time = rc_clock_dup_now ();

  if (!rc_store_save_job (self->store, job, step, time, error))
    return FALSE;
  rc_job_list_refresh (self->job_list);
  return rc_window_open_job (self, job->id, error);
}

gboolean
rc_window_open_demo (RcWindow *self, GError **error)
{
  g_autoptr (RcJob) demo = rc_shipped_load_demo_job (error);

  if (demo == NULL)
    return FALSE;
  /* An id of its own: that of the file may be a job's of the shop by now. */
  g_free (demo->id);
  demo->id = g_strdup ("demo");
  g_autoptr (RcJob) kept = rc_store_load_job (self->store, demo->id, NULL);
  return kept ? rc_window_open_job (self, demo->id, error)
              : rc_window_save_and_open (self, demo, _ ("Demo job"), error);
}

gboolean
rc_window_import (RcWindow *self, const char *path, GError **error)
{
  g_autoptr (RcPriceBook) book = NULL;
  g_autoptr (RcJob) job = rc_job_file_read (path, &book, error);

  if (job == NULL)
    return FALSE;
  g_autoptr (RcJob) other = rc_store_load_job (self->store, job->id, NULL);
  if (other || job->id == NULL || *job->id == '\0')
    {
      g_autofree char *id = rc_store_dup_new_job_id (self->store, error);
      if (id == NULL)
        return FALSE;
      g_free (job->id);
      job->id = g_steal_pointer (&id);
    }
  return rc_window_save_and_open (self, job, _ ("Job file"), error);
}

RcSheetWindow *
rc_window_show_sheet (RcWindow *self, RcSheetKind kind)
{
  if (self->document == NULL)
    return NULL;
  if (self->sheets == NULL)
    {
      RcSheetWindow *sheets = rc_sheet_window_new (GTK_WINDOW (self), self->document, kind);
      g_set_weak_pointer (&self->sheets, sheets);
    }
  else
    rc_sheet_window_show_kind (self->sheets, kind);
  gtk_window_present (GTK_WINDOW (self->sheets));
  return self->sheets;
}

RcDocument *
rc_window_get_document (RcWindow *self)
{
  return self->document;
}

RcStore *
rc_window_get_store (RcWindow *self)
{
  return self->store;
}

RcBookKeeper *
rc_window_get_book_keeper (RcWindow *self)
{
  return self->keeper;
}

RcBench *
rc_window_get_bench (RcWindow *self)
{
  return self->bench;
}

RcJobList *
rc_window_get_job_list (RcWindow *self)
{
  return self->job_list;
}

void
rc_window_show_jobs (RcWindow *self, gboolean shown)
{
  gtk_toggle_button_set_active (self->jobs_button, shown);
  if (shown)
    rc_job_list_focus (self->job_list);
  else if (self->document)
    rc_bench_focus (self->bench, RC_BENCH_THINGS);
}

gboolean
rc_window_are_jobs_shown (RcWindow *self)
{
  return gtk_toggle_button_get_active (self->jobs_button);
}

void
rc_window_show_action_list (RcWindow *self)
{
  gtk_menu_button_popup (self->actions_button);
}

static gboolean
is_action_enabled (const char *action, gpointer data)
{
  return rc_window_actions_is_enabled (data, action);
}

static void
fill_action_list (RcWindow *self, GtkBuilder *builder, GtkApplication *application)
{
  GtkWidget *targets[] = { GTK_WIDGET (rc_bench_get_wall_table (self->bench)),
                           GTK_WIDGET (rc_bench_get_floor_view (self->bench)), GTK_WIDGET (self) };

  rc_action_list_set_enabled_func (self->action_list, is_action_enabled, self);
  rc_action_list_set_targets (self->action_list, targets, G_N_ELEMENTS (targets));
  rc_action_list_fill (self->action_list, builder, application);
}

static void
on_job_open (RcWindow *self, const char *id)
{
  g_autoptr (GError) error = NULL;

  if (!rc_window_open_job (self, id, &error))
    rc_window_tell (self, error->message);
}

static void
rc_window_dispose (GObject *object)
{
  RcWindow *self = RC_WINDOW (object);

  g_clear_handle_id (&self->tell_source, g_source_remove);
  g_clear_handle_id (&self->look_source, g_source_remove);
  if (self->bench)
    set_document (self, NULL);
  g_clear_weak_pointer (&self->sheets);
  g_clear_object (&self->keeper);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_WINDOW);
  G_OBJECT_CLASS (rc_window_parent_class)->dispose (object);
}

static void
rc_window_class_init (RcWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_window_dispose;
  store_changed_signal
      = g_signal_new ("store-changed", RC_TYPE_WINDOW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (RC_TYPE_ACTION_LIST);
  g_type_ensure (RC_TYPE_JOB_LIST);
  g_type_ensure (RC_TYPE_BENCH);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcWindow, title_label);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, subtitle_label);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, jobs_button);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, actions_button);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, action_list);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, job_list);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, welcome);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, demo_button);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, bench);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, tell_box);
  gtk_widget_class_bind_template_child (widget_class, RcWindow, tell_label);
  gtk_widget_class_bind_template_callback (widget_class, on_job_open);
  gtk_widget_class_bind_template_callback (widget_class, on_tell_closed);
  rc_window_actions_install (widget_class);
}

static void
rc_window_init (RcWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

RcWindow *
rc_window_new (GtkApplication *application, RcStore *store)
{
  RcWindow *self = g_object_new (RC_TYPE_WINDOW, "application", application, NULL);
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_resource ("/org/rowcut/Rowcut/ui/shortcuts.ui");

  self->store = store;
  gtk_application_window_set_help_overlay (GTK_APPLICATION_WINDOW (self),
                                           GTK_SHORTCUTS_WINDOW (gtk_builder_get_object (builder, "shortcuts")));
  fill_action_list (self, builder, application);
  rc_job_list_set_store (self->job_list, store);
  self->keeper = rc_book_keeper_new (store);
  g_signal_connect_object (self->keeper, "changed", G_CALLBACK (follow_prices), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self, "store-changed", G_CALLBACK (rc_book_keeper_follow), self->keeper, G_CONNECT_SWAPPED);
  rc_store_get_data_version (store, &self->version, NULL);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (on_active), NULL);
  self->look_source = g_timeout_add_seconds (LOOK_SECONDS, look, self);
  set_document (self, NULL);
  rc_job_list_focus (self->job_list); /* what is typed at once finds a job, and presses no button */
  return self;
}
