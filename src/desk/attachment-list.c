#include "attachment-list.h"

#include <glib/gi18n-lib.h>

#include "clock.h"
#include "file-dialog.h"
#include "paper-window.h"

struct _RcAttachmentList
{
  GtkBox parent_instance;

  RcDocument *document; /* borrowed */
  GtkBox     *rows;
};

G_DEFINE_FINAL_TYPE (RcAttachmentList, rc_attachment_list, GTK_TYPE_BOX)

#define ID_KEY "rowcut-attachment"

static void
tell (RcAttachmentList *self, const GError *error)
{
  if (error != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", error->message);
}

static RcAttachment *
find_attachment (const RcJob *job, const char *id)
{
  for (guint i = 0; i < job->attachments->len; i++)
    if (g_strcmp0 (((RcAttachment *)g_ptr_array_index (job->attachments, i))->id, id) == 0)
      return g_ptr_array_index (job->attachments, i);
  return NULL;
}

static GBytes *
load_bytes (RcAttachmentList *self, const RcAttachment *attachment, GError **error)
{
  char *contents;
  gsize length;

  if (attachment->digest != NULL)
    return rc_store_load_file (rc_document_get_store (self->document), attachment->digest, error);
  if (!g_file_get_contents (attachment->place != NULL ? attachment->place : "", &contents, &length, error))
    return NULL;
  return g_bytes_new_take (contents, length);
}

static void
on_see (GtkButton *button, RcAttachmentList *self)
{
  const RcAttachment *attachment
      = find_attachment (rc_document_get_job (self->document), g_object_get_data (G_OBJECT (button), ID_KEY));
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = attachment != NULL ? load_bytes (self, attachment, &error) : NULL;

  if (bytes != NULL)
    gtk_window_present (GTK_WINDOW (
        rc_paper_window_new (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), attachment->name, bytes)));
  tell (self, error);
}

static void
on_remove (GtkButton *button, RcAttachmentList *self)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self->document);
  RcAttachment *attachment = find_attachment (job, g_object_get_data (G_OBJECT (button), ID_KEY));
  g_autoptr (GError) error = NULL;

  if (attachment == NULL || !g_ptr_array_remove (job->attachments, attachment))
    return;
  rc_document_commit (self->document, g_steal_pointer (&job), _ ("Take a file away"), NULL, &error);
  tell (self, error);
}

static void
add_row (RcAttachmentList *self, const RcAttachment *attachment)
{
  GtkWidget       *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget       *see = gtk_button_new_with_label (attachment->name);
  GtkWidget       *remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  g_autofree char *label = g_strdup_printf (_ ("Take away: %s"), attachment->name);

  gtk_label_set_ellipsize (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (see))), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_set_hexpand (see, TRUE);
  gtk_widget_set_tooltip_text (see, attachment->added != NULL ? attachment->added : attachment->name);
  gtk_widget_set_tooltip_text (remove, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (remove), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_object_set_data_full (G_OBJECT (see), ID_KEY, g_strdup (attachment->id), g_free);
  g_object_set_data_full (G_OBJECT (remove), ID_KEY, g_strdup (attachment->id), g_free);
  g_signal_connect (see, "clicked", G_CALLBACK (on_see), self);
  g_signal_connect (remove, "clicked", G_CALLBACK (on_remove), self);
  gtk_box_append (GTK_BOX (row), see);
  gtk_box_append (GTK_BOX (row), remove);
  gtk_box_append (self->rows, row);
}

void
rc_attachment_list_show (RcAttachmentList *self, RcDocument *document)
{
  const RcJob *job = rc_document_get_job (document);
  GtkWidget   *child;

  self->document = document;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->rows))) != NULL)
    gtk_box_remove (self->rows, child);
  for (guint i = 0; i < job->attachments->len; i++)
    add_row (self, g_ptr_array_index (job->attachments, i));
}

guint
rc_attachment_list_get_n (RcAttachmentList *self)
{
  return self->document != NULL ? rc_document_get_job (self->document)->attachments->len : 0;
}

gboolean
rc_attachment_list_add_file (RcAttachmentList *self, const char *path, GError **error)
{
  g_autoptr (RcJob) job = rc_document_dup_job (self->document);
  g_autofree char *contents = NULL, *name = g_path_get_basename (path), *id = NULL, *digest = NULL;
  gsize            length;

  if (!g_file_get_contents (path, &contents, &length, error))
    return FALSE;
  g_autoptr (GBytes) bytes = g_bytes_new_take (g_steal_pointer (&contents), length);
  digest = rc_store_add_file (rc_document_get_store (self->document), bytes, error);
  if (digest == NULL)
    return FALSE;
  for (guint n = job->attachments->len + 1; id == NULL || find_attachment (job, id) != NULL; n++)
    {
      g_free (id);
      id = g_strdup_printf ("F%u", n);
    }
  RcAttachment *attachment = rc_attachment_new (id, name);
  attachment->digest = g_steal_pointer (&digest);
  attachment->added = rc_clock_dup_today ();
  g_ptr_array_add (job->attachments, attachment);
  return rc_document_commit (self->document, g_steal_pointer (&job), _ ("Add a file"), NULL, error);
}

static void
add_file (gpointer list, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autoptr (GError) error = NULL;

  if (path != NULL)
    rc_attachment_list_add_file (list, path, &error);
  tell (list, error);
}

static void
on_add (RcAttachmentList *self)
{
  const RcFileDialog dialog = { .title = _ ("Add a file") };

  if (self->document == NULL)
    return;
  rc_file_dialog_open (self, &dialog, add_file);
}

static void
rc_attachment_list_class_init (RcAttachmentListClass *klass)
{
}

static void
rc_attachment_list_init (RcAttachmentList *self)
{
  GtkWidget *add = gtk_button_new_with_mnemonic (_ ("Add a _file…"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 4);
  self->rows = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  gtk_widget_set_tooltip_text (add, _ ("The sketch, a photo, a letter: kept with the job"));
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (on_add), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->rows));
  gtk_box_append (GTK_BOX (self), add);
}
