#include "job-panel.h"

#include <glib/gi18n-lib.h>

#include "attachment-list.h"
#include "day.h"
#include "document-things.h"
#include "pick.h"
#include "rule-table.h"
#include "typing.h"

struct _RcJobPanel
{
  RcPanel parent_instance;

  GtkEntry      *title_entry, *number_entry, *date_entry;
  GtkDropDown   *units_drop, *state_drop;
  GtkEntry      *state_entry;
  GtkLabel      *states_label;
  GtkEntry      *customer_entry, *phone_entry, *email_entry;
  GtkTextView   *address_view;
  GtkDropDown   *language_drop, *measure_drop;
  GtkEntry      *taken_entry, *taker_entry;
  RcLengthEntry *trim_length_entry, *trim_width_entry, *fill_width_entry, *piece_length_entry, *door_entry,
      *stagger_entry;
  GtkSpinButton    *joins_spin;
  GtkTextView      *notes_view;
  RcAttachmentList *attachments;
};

G_DEFINE_FINAL_TYPE (RcJobPanel, rc_job_panel, RC_TYPE_PANEL)

static gpointer
find_job (RcPanel *panel, RcJob *job)
{
  return job;
}

static void
show_text (GtkEntry *entry, const char *text)
{
  const char *shown = text ? text : "";
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (entry)), shown))
    gtk_editable_set_text (GTK_EDITABLE (entry), shown);
}

/* "Measured 2026-03-01, Quoted 2026-03-04": the states before this one. */
static char *
dup_states_before (const RcJob *job)
{
  GString *text = g_string_new (NULL);

  for (RcJobState state = 0; state < rc_job_get_state (job); state++)
    if (job->reached[state] != NULL)
      g_string_append_printf (text, "%s%s %s", text->len > 0 ? ", " : "", rc_job_state_get_label (state),
                              job->reached[state]);
  return g_string_free (text, FALSE);
}

static void
show_state (RcJobPanel *self, const RcJob *job)
{
  RcJobState       state = rc_job_get_state (job);
  g_autofree char *before = dup_states_before (job);

  gtk_drop_down_set_selected (self->state_drop, state);
  show_text (self->state_entry, job->reached[state]);
  gtk_widget_remove_css_class (GTK_WIDGET (self->state_entry), "error");
  gtk_label_set_text (self->states_label, before);
  gtk_widget_set_visible (GTK_WIDGET (self->states_label), *before != '\0');
}

static void
rc_job_panel_show (RcPanel *panel, gpointer part)
{
  RcJobPanel      *self = RC_JOB_PANEL (panel);
  const RcJob     *job = part;
  const RcMeasure *measure = rc_document_get_measure (rc_panel_get_document (panel));
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  for (guint i = 0; i < job->measures->len; i++)
    {
      const RcMeasure *other = g_ptr_array_index (job->measures, i);
      g_autofree char *label = g_strdup_printf ("%s %s", other->id, other->date ? other->date : "");
      rc_pick_add (&pick, other->id, label);
    }
  rc_pick_show (&pick, self->measure_drop, measure->id);
  rc_pick_show_languages (self->language_drop, job->customer.language);
  show_text (self->taken_entry, measure->date);
  show_text (self->taker_entry, measure->taken_by);
  show_state (self, job);
  rc_attachment_list_show (self->attachments, rc_panel_get_document (panel));
}

static void
on_state_changed (RcJobPanel *self)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);
  g_autoptr (GError) error = NULL;

  if (rc_panel_is_showing (panel) || document == NULL)
    return;
  if (!rc_document_set_state (document, gtk_drop_down_get_selected (self->state_drop), &error))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", error->message);
}

/* A text that is no day (yet) is left as it stands, and changes nothing. */
static void
on_state_day_changed (RcJobPanel *self)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);
  const char *day = gtk_editable_get_text (GTK_EDITABLE (self->state_entry));

  if (rc_panel_is_showing (panel) || document == NULL)
    return;
  if (!rc_day_is_valid (day))
    {
      gtk_widget_add_css_class (GTK_WIDGET (self->state_entry), "error");
      return;
    }
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  rc_job_set_state (job, rc_job_get_state (job), day);
  rc_panel_commit (panel, g_steal_pointer (&job), _ ("State of the job"), "job state day");
}

static void
on_language_changed (RcJobPanel *self)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);

  if (rc_panel_is_showing (panel) || document == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  g_free (job->customer.language);
  job->customer.language = g_strdup (rc_pick_get_selected (self->language_drop));
  rc_panel_commit (panel, g_steal_pointer (&job), _ ("Language of the customer"), "customer language");
}

static void
on_measure_changed (RcJobPanel *self)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);

  if (!rc_panel_is_showing (panel) && document)
    rc_document_set_measure (document, rc_pick_get_selected (self->measure_drop));
}

static void
edit_measure_text (RcJobPanel *self, GtkEntry *entry, gsize offset, const char *step, const char *key)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);

  if (rc_panel_is_showing (panel) || document == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcMeasure *measure = rc_document_get_measure_of (document, job);
  char     **field = (char **)((char *)measure + offset);
  g_free (*field);
  *field = g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry)));
  rc_panel_commit (panel, g_steal_pointer (&job), step, key);
}

static void
on_taken_changed (RcJobPanel *self)
{
  edit_measure_text (self, self->taken_entry, G_STRUCT_OFFSET (RcMeasure, date), _ ("Date of a measure"),
                     "measure date");
}

static void
on_taker_changed (RcJobPanel *self)
{
  edit_measure_text (self, self->taker_entry, G_STRUCT_OFFSET (RcMeasure, taken_by), _ ("Who measured"),
                     "measure taker");
}

static void
rc_job_panel_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_JOB_PANEL);
  G_OBJECT_CLASS (rc_job_panel_parent_class)->dispose (object);
}

static void
rc_job_panel_class_init (RcJobPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_job_panel_dispose;
  RC_PANEL_CLASS (klass)->find = find_job;
  RC_PANEL_CLASS (klass)->show = rc_job_panel_show;

  g_type_ensure (RC_TYPE_LENGTH_ENTRY);
  g_type_ensure (RC_TYPE_ATTACHMENT_LIST);
  g_type_ensure (RC_TYPE_RULE_TABLE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/job-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, title_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, number_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, date_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, units_drop);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, state_drop);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, state_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, states_label);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, customer_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, phone_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, email_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, address_view);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, language_drop);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, measure_drop);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, taken_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, taker_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, trim_length_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, trim_width_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, fill_width_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, piece_length_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, joins_spin);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, door_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, stagger_entry);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, notes_view);
  gtk_widget_class_bind_template_child (widget_class, RcJobPanel, attachments);
  gtk_widget_class_bind_template_callback (widget_class, on_measure_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_language_changed);
}

static void
bind_job (RcJobPanel *self)
{
  RcPanel *panel = RC_PANEL (self);

  rc_panel_bind_text (panel, GTK_EDITABLE (self->title_entry), G_STRUCT_OFFSET (RcJob, title), _ ("Title of the job"));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->number_entry), G_STRUCT_OFFSET (RcJob, number), _ ("Job number"));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->date_entry), G_STRUCT_OFFSET (RcJob, date), _ ("Date of the job"));
  rc_panel_bind_choice (panel, self->units_drop, G_STRUCT_OFFSET (RcJob, units), _ ("Units"));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->customer_entry), G_STRUCT_OFFSET (RcJob, customer.name),
                      _ ("Customer"));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->phone_entry), G_STRUCT_OFFSET (RcJob, customer.phone),
                      _ ("Telephone"));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->email_entry), G_STRUCT_OFFSET (RcJob, customer.email), _ ("E-mail"));
  rc_panel_bind_buffer (panel, self->address_view, G_STRUCT_OFFSET (RcJob, customer.address), _ ("Address"));
  rc_panel_bind_buffer (panel, self->notes_view, G_STRUCT_OFFSET (RcJob, notes), _ ("Notes on the job"));
}

static void
bind_settings (RcJobPanel *self)
{
  const struct
  {
    RcLengthEntry *entry;
    gsize          offset;
  } LENGTHS[] = {
    { self->trim_length_entry, G_STRUCT_OFFSET (RcJob, settings.trim_length) },
    { self->trim_width_entry, G_STRUCT_OFFSET (RcJob, settings.trim_width) },
    { self->fill_width_entry, G_STRUCT_OFFSET (RcJob, settings.least_fill_width) },
    { self->piece_length_entry, G_STRUCT_OFFSET (RcJob, settings.least_piece_length) },
    { self->door_entry, G_STRUCT_OFFSET (RcJob, settings.door_distance) },
    { self->stagger_entry, G_STRUCT_OFFSET (RcJob, settings.stagger) },
  };

  for (guint i = 0; i < G_N_ELEMENTS (LENGTHS); i++)
    rc_panel_bind_length (RC_PANEL (self), LENGTHS[i].entry, LENGTHS[i].offset, _ ("Cutting and seam settings"));
  rc_panel_bind_count (RC_PANEL (self), self->joins_spin, G_STRUCT_OFFSET (RcJob, settings.most_joins),
                       _ ("Most joins in a fill"));
}

static void
rc_job_panel_init (RcJobPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_autoptr (GtkStringList) states = gtk_string_list_new (NULL);
  for (RcJobState state = 0; state < RC_N_JOB_STATES; state++)
    gtk_string_list_append (states, rc_job_state_get_label (state));
  gtk_drop_down_set_model (self->state_drop, G_LIST_MODEL (states));
  g_signal_connect_swapped (self->state_drop, "notify::selected", G_CALLBACK (on_state_changed), self);
  g_signal_connect_swapped (self->state_entry, "changed", G_CALLBACK (on_state_day_changed), self);
  rc_typing_prepare (GTK_EDITABLE (self->state_entry));
  bind_job (self);
  bind_settings (self);
  rc_typing_prepare (GTK_EDITABLE (self->taken_entry));
  rc_typing_prepare (GTK_EDITABLE (self->taker_entry));
  g_signal_connect_swapped (self->taken_entry, "changed", G_CALLBACK (on_taken_changed), self);
  g_signal_connect_swapped (self->taker_entry, "changed", G_CALLBACK (on_taker_changed), self);
}

void
rc_job_panel_focus_title (RcJobPanel *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->title_entry));
}
