#include "offer-entry.h"

#include "length-entry.h"
#include "typing.h"

struct _RcOfferEntry
{
  GtkEntry parent_instance;

  RcDocument *document;
  RcOfferSpot spot;
  char       *item, *key;
  const char *step;
  gboolean    is_showing;
};

G_DEFINE_FINAL_TYPE (RcOfferEntry, rc_offer_entry, GTK_TYPE_ENTRY)

void
rc_offer_commit (GtkWidget *widget, RcDocument *document, RcJob *job, const char *step, const char *key)
{
  g_autoptr (GError) error = NULL;

  if (!rc_document_commit (document, job, step, key, &error))
    gtk_widget_activate_action (widget, "win.tell", "s", error->message);
}

static void
on_changed (RcOfferEntry *self)
{
  g_autoptr (RcJob) job = NULL;
  g_autoptr (GError) error = NULL;

  if (self->is_showing)
    return;
  job = rc_document_dup_job (self->document);
  if (rc_offer_edit_set_text (job->offer, &self->spot, gtk_editable_get_text (GTK_EDITABLE (self)), &job->currency,
                              &error))
    rc_offer_commit (GTK_WIDGET (self), self->document, g_steal_pointer (&job), self->step, self->key);
  rc_entry_show_fault (GTK_WIDGET (self), error != NULL ? error->message : NULL);
}

/* What is typed stays while it says the same, "7." as well as "7". */
static void
show (RcOfferEntry *self)
{
  const RcJob     *job = rc_document_get_job (self->document);
  const char      *shown = gtk_editable_get_text (GTK_EDITABLE (self));
  g_autofree char *text = rc_offer_edit_dup_text (job->offer, &self->spot, &job->currency), *typed = NULL;
  g_autoptr (RcOffer) offer = rc_offer_copy (job->offer);

  if (g_str_equal (text, shown))
    return;
  if (rc_offer_edit_set_text (offer, &self->spot, shown, &job->currency, NULL))
    typed = rc_offer_edit_dup_text (offer, &self->spot, &job->currency);
  if (g_strcmp0 (typed, text) == 0 || (typed == NULL && gtk_widget_has_css_class (GTK_WIDGET (self), "error")))
    return;
  self->is_showing = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self), text);
  rc_entry_show_fault (GTK_WIDGET (self), NULL);
  self->is_showing = FALSE;
}

/* What never read as anything goes when the field is left. */
static void
on_leave (RcOfferEntry *self)
{
  rc_document_end_step (self->document);
  rc_entry_show_fault (GTK_WIDGET (self), NULL);
  show (self);
}

void
rc_offer_entry_set_spot (RcOfferEntry *self, const RcOfferSpot *spot)
{
  g_autofree char *item = g_strdup (spot->item);

  g_free (self->item);
  g_free (self->key);
  self->item = g_steal_pointer (&item);
  self->spot = *spot;
  self->spot.item = self->item;
  self->key = g_strdup_printf ("offer %d %s %u", (int)spot->field, self->item ? self->item : "", spot->index);
  show (self);
}

GtkWidget *
rc_offer_entry_new (RcDocument *document, const RcOfferSpot *spot, const char *label, const char *step)
{
  RcOfferEntry       *self = g_object_new (RC_TYPE_OFFER_ENTRY, NULL);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->document = g_object_ref (document);
  self->step = step;
  rc_typing_prepare (GTK_EDITABLE (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  rc_offer_entry_set_spot (self, spot);
  g_signal_connect (self, "changed", G_CALLBACK (on_changed), NULL);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  g_signal_connect_object (document, "edited", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

static void
rc_offer_entry_finalize (GObject *object)
{
  RcOfferEntry *self = RC_OFFER_ENTRY (object);

  g_clear_object (&self->document);
  g_free (self->item);
  g_free (self->key);
  G_OBJECT_CLASS (rc_offer_entry_parent_class)->finalize (object);
}

static void
rc_offer_entry_class_init (RcOfferEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_offer_entry_finalize;
}

static void
rc_offer_entry_init (RcOfferEntry *self)
{
}
