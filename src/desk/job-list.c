#include "job-list.h"

#include <glib/gi18n-lib.h>

#include "job-model.h"
#include "stop.h"

/* More than one looks through; typing goes on finding in all. */
#define MOST_SHOWN 200

struct _RcJobList
{
  GtkBox parent_instance;

  RcStore            *store;
  RcJobPictures      *pictures;
  GtkSearchEntry     *search;
  GtkDropDown        *state_drop; /* all, then each state */
  GtkListView        *view;
  GtkSingleSelection *selection;
  GtkLabel           *count_label;
};

G_DEFINE_FINAL_TYPE (RcJobList, rc_job_list, GTK_TYPE_BOX)

static guint open_signal;

static void
show_count (RcJobList *self, guint n)
{
  g_autofree char *text
      = n >= MOST_SHOWN ? g_strdup_printf (_ ("The latest %u; a word more finds the others"), n)
        : n > 0         ? g_strdup_printf (ngettext ("%u job", "%u jobs", n), n)
        : gtk_drop_down_get_selected (self->state_drop) > 0    ? g_strdup (_ ("No such job in this state."))
        : *gtk_editable_get_text (GTK_EDITABLE (self->search)) ? g_strdup (_ ("No job has all these words."))
                                                               : g_strdup (_ ("No jobs yet."));
  gtk_label_set_text (self->count_label, text);
}

void
rc_job_list_refresh (RcJobList *self)
{
  g_autoptr (GError) error = NULL;

  if (self->store == NULL)
    return;
  const char *words = gtk_editable_get_text (GTK_EDITABLE (self->search));
  guint       chosen = gtk_drop_down_get_selected (self->state_drop);
  GPtrArray  *found = chosen == 0 ? rc_store_find_latest_jobs (self->store, words, MOST_SHOWN, &error)
                                  : rc_store_find_jobs_in_state (self->store, words, chosen - 1, MOST_SHOWN, &error);
  if (found == NULL)
    {
      gtk_label_set_text (self->count_label, error->message);
      return;
    }
  g_autoptr (RcJobModel) model = rc_job_model_new (self->store, self->pictures, found);
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (model));
  show_count (self, found->len);
}

static void
open_at (RcJobList *self, guint position)
{
  RcJobModel *model = RC_JOB_MODEL (gtk_single_selection_get_model (self->selection));
  const char *id = model ? rc_job_model_get_id (model, position) : NULL;

  if (id)
    {
      g_autofree char *kept = g_strdup (id);
      g_signal_emit (self, open_signal, 0, kept);
    }
}

static void
on_activate (GtkListView *view, guint position, RcJobList *self)
{
  open_at (self, position);
}

static void
on_search_activate (RcJobList *self)
{
  open_at (self, 0);
}

static gboolean
on_search_key (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state, RcJobList *self)
{
  if (keyval != GDK_KEY_Down)
    return GDK_EVENT_PROPAGATE;
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
  return GDK_EVENT_STOP;
}

void
rc_job_list_set_store (RcJobList *self, RcStore *store)
{
  self->store = store;
  self->pictures = rc_job_pictures_new (store);
  rc_job_list_refresh (self);
}

RcJobPictures *
rc_job_list_get_pictures (RcJobList *self)
{
  return self->pictures;
}

void
rc_job_list_focus (RcJobList *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

void
rc_job_list_show_state (RcJobList *self, int state)
{
  gtk_drop_down_set_selected (self->state_drop, (guint)(state + 1));
}

guint
rc_job_list_get_n_jobs (RcJobList *self)
{
  GListModel *model = gtk_single_selection_get_model (self->selection);
  return model ? g_list_model_get_n_items (model) : 0;
}

static void
rc_job_list_dispose (GObject *object)
{
  RcJobList *self = RC_JOB_LIST (object);

  if (self->pictures != NULL)
    rc_job_pictures_stop (self->pictures);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_JOB_LIST);
  g_clear_object (&self->pictures);
  G_OBJECT_CLASS (rc_job_list_parent_class)->dispose (object);
}

static void
rc_job_list_class_init (RcJobListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_job_list_dispose;
  g_type_ensure (RC_TYPE_JOB_ROW);
  g_type_ensure (RC_TYPE_JOB_PICTURE);
  g_type_ensure (RC_TYPE_STOP);
  open_signal
      = g_signal_new ("open", RC_TYPE_JOB_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/job-list.ui");
  gtk_widget_class_bind_template_child (widget_class, RcJobList, search);
  gtk_widget_class_bind_template_child (widget_class, RcJobList, state_drop);
  gtk_widget_class_bind_template_child (widget_class, RcJobList, view);
  gtk_widget_class_bind_template_child (widget_class, RcJobList, selection);
  gtk_widget_class_bind_template_child (widget_class, RcJobList, count_label);
  gtk_widget_class_bind_template_callback (widget_class, rc_job_list_refresh);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
  gtk_widget_class_bind_template_callback (widget_class, on_search_activate);
  gtk_widget_class_bind_template_callback (widget_class, on_search_key);
}

static void
rc_job_list_init (RcJobList *self)
{
  g_autoptr (GtkStringList) states = gtk_string_list_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_string_list_append (states, _ ("In any state"));
  for (RcJobState state = 0; state < RC_N_JOB_STATES; state++)
    gtk_string_list_append (states, rc_job_state_get_label (state));
  gtk_drop_down_set_model (self->state_drop, G_LIST_MODEL (states));
  g_signal_connect_swapped (self->state_drop, "notify::selected", G_CALLBACK (rc_job_list_refresh), self);
}
