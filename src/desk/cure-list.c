#include "cure-list.h"

#include <glib/gi18n-lib.h>

#define MOST_SHOWN 4

struct _RcCureList
{
  GtkBox parent_instance;

  RcDocument  *document; /* borrowed: GTK may hold the widget under the pointer for longer than its window */
  RcRemeasure *found;    /* nullable */
};

G_DEFINE_FINAL_TYPE (RcCureList, rc_cure_list, GTK_TYPE_BOX)

static void
add_label (GtkBox *box, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
}

static void
on_take (GtkButton *button, RcCureList *self)
{
  g_autoptr (GError) error = NULL;

  if (!rc_cure_list_take (self, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "rowcut-cure")), &error))
    add_label (GTK_BOX (self), error->message, "fault");
}

/* The widths of the bars tell the costs apart before the figures are read. */
static void
add_cure (RcCureList *self, guint index, const RcCure *cure, RcMoney dearest)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *text = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *bar = gtk_level_bar_new_for_interval (0, (double)MAX (dearest, 1));
  GtkWidget *take = gtk_button_new_with_label (_ ("Go on so"));
  g_autofree char *cost = rc_money_format (cure->cost, &cure->job->currency);
  g_autofree char *title = g_strdup_printf (
      index == 0 ? _ ("Cheapest cure: %s, %s from here on") : _ ("Or: %s, %s from here on"), cure->name, cost);
  g_autofree char *said = g_strdup_printf (_ ("Go on so: %s"), title);

  add_label (GTK_BOX (text), title, index == 0 ? "form-title" : NULL);
  for (guint i = 0; i < cure->extra->len; i++)
    add_label (GTK_BOX (text), g_ptr_array_index (cure->extra, i), "detail");
  if (cure->extra->len == 0)
    add_label (GTK_BOX (text), _ ("Nothing has to be cut besides."), "detail");
  gtk_level_bar_set_value (GTK_LEVEL_BAR (bar), (double)cure->cost);
  gtk_widget_set_size_request (bar, 140, -1);
  gtk_widget_set_valign (bar, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (bar, "steps");
  gtk_accessible_update_property (GTK_ACCESSIBLE (bar), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_widget_set_valign (take, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (take), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  g_object_set_data (G_OBJECT (take), "rowcut-cure", GUINT_TO_POINTER (index));
  g_signal_connect (take, "clicked", G_CALLBACK (on_take), self);
  gtk_box_append (GTK_BOX (row), text);
  gtk_box_append (GTK_BOX (row), bar);
  gtk_box_append (GTK_BOX (row), take);
  gtk_box_append (GTK_BOX (self), row);
}

static void
show_found (RcCureList *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_box_remove (GTK_BOX (self), child);
  gtk_widget_set_visible (GTK_WIDGET (self), self->found != NULL);
  if (self->found == NULL)
    return;
  for (guint i = 0; i < self->found->shortfalls->len; i++)
    add_label (GTK_BOX (self), g_ptr_array_index (self->found->shortfalls, i), "fault");
  if (self->found->shortfalls->len == 0)
    add_label (GTK_BOX (self), _ ("What is cut still covers the floor it was cut for."), NULL);
  RcMoney dearest = 0;
  for (guint i = 0; i < self->found->cures->len; i++)
    dearest = MAX (dearest, ((const RcCure *)g_ptr_array_index (self->found->cures, i))->cost);
  for (guint i = 0; i < MIN (self->found->cures->len, MOST_SHOWN); i++)
    add_cure (self, i, g_ptr_array_index (self->found->cures, i), dearest);
}

gboolean
rc_cure_list_show (RcCureList *self, RcDocument *document, const RcOutcome *before, const char *measure, GError **error)
{
  const RcJob  *job = rc_document_get_job (document);
  const RcHeld *held = rc_document_get_held (document);

  self->document = document;
  g_clear_pointer (&self->found, rc_remeasure_free);
  if (held->goods->len > 0)
    {
      g_autoptr (RcJob) whole = rc_held_dup_whole_job (held, job);

      self->found = rc_remeasure_new (whole, measure, before->plan, held->goods, before->book, before->date, 0, error);
    }
  show_found (self);
  return self->found != NULL || held->goods->len == 0;
}

const RcRemeasure *
rc_cure_list_get (RcCureList *self)
{
  return self->found;
}

gboolean
rc_cure_list_take (RcCureList *self, guint index, GError **error)
{
  const RcCure *cure = g_ptr_array_index (self->found->cures, index);

  return rc_document_commit (self->document, rc_job_copy (cure->job), _ ("Go on with what is cut"), NULL, error);
}

static void
rc_cure_list_dispose (GObject *object)
{
  RcCureList *self = RC_CURE_LIST (object);

  g_clear_pointer (&self->found, rc_remeasure_free);
  G_OBJECT_CLASS (rc_cure_list_parent_class)->dispose (object);
}

static void
rc_cure_list_class_init (RcCureListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rc_cure_list_dispose;
}

static void
rc_cure_list_init (RcCureList *self)
{
  gtk_widget_add_css_class (GTK_WIDGET (self), "form");
}

GtkWidget *
rc_cure_list_new (void)
{
  return g_object_new (RC_TYPE_CURE_LIST, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 6, "visible", FALSE,
                       NULL);
}
