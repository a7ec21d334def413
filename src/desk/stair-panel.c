#include "stair-panel.h"

#include <glib/gi18n-lib.h>

#include "measure-edit.h"

struct _RcStairPanel
{
  RcPanel parent_instance;

  GtkEntry      *name_entry;
  GtkSpinButton *steps_spin;
  RcLengthEntry *rise_entry, *going_entry, *width_entry;
  GtkDropDown   *style_drop, *carpet_drop, *cushion_drop;
  RcLengthEntry *nose_entry, *end_entry, *turn_entry;
  GtkLabel      *cut_label, *fault_label;
  GtkTextView   *notes_view;
};

G_DEFINE_FINAL_TYPE (RcStairPanel, rc_stair_panel, RC_TYPE_PANEL)

static gpointer
find_stair (RcPanel *panel, RcJob *job)
{
  RcDocument *document = rc_panel_get_document (panel);
  RcChoice    choice = rc_document_get_choice (document);

  return choice.thing == RC_THING_STAIR
             ? rc_measure_edit_find_stair (rc_document_get_measure_of (document, job), choice.id)
             : NULL;
}

static void
show_cut (RcStairPanel *self, const RcStair *stair, const RcJob *job)
{
  RcLength width = 0, length = 0;

  if (!rc_stair_compute_cut (stair, &width, &length))
    {
      gtk_label_set_text (self->cut_label, "");
      return;
    }
  const RcLengthStyle *style = rc_job_get_length_style (job);
  g_autofree char     *width_text = rc_length_format (width, style);
  g_autofree char     *length_text = rc_length_format (length, style);
  g_autofree char *text = g_strdup_printf (_ ("Cut %s wide, %s long, with its allowances"), width_text, length_text);
  gtk_label_set_text (self->cut_label, text);
}

static const char *
find_fault (RcStairPanel *self)
{
  RcLengthEntry *entries[]
      = { self->rise_entry, self->going_entry, self->width_entry, self->nose_entry, self->end_entry, self->turn_entry };

  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    if (rc_length_entry_get_fault (entries[i]))
      return rc_length_entry_get_fault (entries[i]);
  return NULL;
}

static void
rc_stair_panel_show (RcPanel *panel, gpointer part)
{
  RcStairPanel  *self = RC_STAIR_PANEL (panel);
  RcDocument    *document = rc_panel_get_document (panel);
  const RcStair *stair = part;
  const RcJob   *job = rc_document_get_job (document);
  show_cut (self, stair, job);

  const char *fault = find_fault (self);
  gtk_label_set_text (self->fault_label, fault ? fault : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fault_label), fault != NULL);
}

static void
rc_stair_panel_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_STAIR_PANEL);
  G_OBJECT_CLASS (rc_stair_panel_parent_class)->dispose (object);
}

static void
rc_stair_panel_class_init (RcStairPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_stair_panel_dispose;
  RC_PANEL_CLASS (klass)->find = find_stair;
  RC_PANEL_CLASS (klass)->show = rc_stair_panel_show;

  g_type_ensure (RC_TYPE_LENGTH_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/stair-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, name_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, steps_spin);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, rise_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, going_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, width_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, style_drop);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, carpet_drop);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, cushion_drop);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, nose_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, end_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, turn_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, cut_label);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, fault_label);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, notes_view);
}

static void
rc_stair_panel_init (RcStairPanel *self)
{
  RcPanel *panel = RC_PANEL (self);

  gtk_widget_init_template (GTK_WIDGET (self));
  rc_panel_bind_goods (panel, self->carpet_drop, G_STRUCT_OFFSET (RcStair, carpet), RC_GOODS_CARPET, FALSE,
                       _ ("Carpet of a stair"));
  rc_panel_bind_goods (panel, self->cushion_drop, G_STRUCT_OFFSET (RcStair, cushion), RC_GOODS_CUSHION, TRUE,
                       _ ("Cushion of a stair"));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->name_entry), G_STRUCT_OFFSET (RcStair, name), _ ("Name of a stair"));
  rc_panel_bind_count (panel, self->steps_spin, G_STRUCT_OFFSET (RcStair, steps), _ ("Risers of a stair"));
  rc_panel_bind_length (panel, self->rise_entry, G_STRUCT_OFFSET (RcStair, rise), _ ("Rise of a stair"));
  rc_panel_bind_length (panel, self->going_entry, G_STRUCT_OFFSET (RcStair, going), _ ("Going of a stair"));
  rc_panel_bind_length (panel, self->width_entry, G_STRUCT_OFFSET (RcStair, width), _ ("Width of a stair"));
  rc_panel_bind_choice (panel, self->style_drop, G_STRUCT_OFFSET (RcStair, style), _ ("Way a stair is laid"));
  rc_panel_bind_length (panel, self->nose_entry, G_STRUCT_OFFSET (RcStair, nose_extra), _ ("Allowance of a stair"));
  rc_panel_bind_length (panel, self->end_entry, G_STRUCT_OFFSET (RcStair, end_extra), _ ("Allowance of a stair"));
  rc_panel_bind_length (panel, self->turn_entry, G_STRUCT_OFFSET (RcStair, width_extra), _ ("Allowance of a stair"));
  rc_panel_bind_buffer (panel, self->notes_view, G_STRUCT_OFFSET (RcStair, notes), _ ("Notes on a stair"));
}

void
rc_stair_panel_focus_name (RcStairPanel *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->name_entry));
}
