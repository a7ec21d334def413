#include "cutout-card.h"

#include <glib/gi18n-lib.h>

#include "cutout-edit.h"

struct _RcCutoutCard
{
  RcPanel parent_instance;

  char           *room;
  guint           index;
  guint           corner; /* that the place is told from */
  gboolean        has_corner;
  GtkDropDown    *kind_drop, *shape_drop, *corner_drop;
  GtkEntry       *name_entry;
  RcLengthEntry  *along_entry, *off_entry, *width_entry, *length_entry;
  GtkLabel       *width_label, *length_label;
  GtkCheckButton *strip_check, *counted_check;
};

G_DEFINE_FINAL_TYPE (RcCutoutCard, rc_cutout_card, RC_TYPE_PANEL)

static RcRoom *
find_room (RcCutoutCard *self, RcJob *job)
{
  return rc_measure_find_room (rc_document_get_measure_of (rc_panel_get_document (RC_PANEL (self)), job), self->room);
}

static gpointer
find_cutout (RcPanel *panel, RcJob *job)
{
  RcCutoutCard *self = RC_CUTOUT_CARD (panel);
  RcRoom       *room = find_room (self, job);

  return room && self->index < room->cutouts->len ? g_ptr_array_index (room->cutouts, self->index) : NULL;
}

/* "corner 2, of walls 1 and 2": the place is told from there, along the second of them. */
static void
show_corners (RcCutoutCard *self, guint n)
{
  GListModel *model = gtk_drop_down_get_model (self->corner_drop);

  if (model && g_list_model_get_n_items (model) == n)
    return;
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *label = g_strdup_printf (_ ("%u (walls %u, %u)"), i + 1, (i + n - 1) % n + 1, i + 1);
      gtk_string_list_append (list, label);
    }
  gtk_drop_down_set_model (self->corner_drop, G_LIST_MODEL (list));
}

static void
show_length (RcCutoutCard *self, RcLengthEntry *entry, RcLength value)
{
  const RcJob *job = rc_document_get_job (rc_panel_get_document (RC_PANEL (self)));

  rc_length_entry_set_units (entry, rc_job_get_bare_unit (job), rc_job_get_length_style (job));
  rc_length_entry_set_value (entry, value);
}

static void
rc_cutout_card_show (RcPanel *panel, gpointer part)
{
  RcCutoutCard   *self = RC_CUTOUT_CARD (panel);
  const RcCutout *cutout = part;
  const RcRoom   *room = find_room (self, (RcJob *)rc_document_get_job (rc_panel_get_document (panel)));
  gboolean        is_round = cutout->diameter > 0;
  RcCutoutPlace   place = { 0 };

  show_corners (self, rc_room_get_n_walls (room));
  if (!self->has_corner || self->corner >= rc_room_get_n_walls (room))
    self->corner = rc_cutout_edit_find_corner (room, cutout);
  self->has_corner = TRUE;
  gtk_drop_down_set_selected (self->corner_drop, self->corner);
  gtk_drop_down_set_selected (self->kind_drop, cutout->kind);
  gtk_drop_down_set_selected (self->shape_drop, is_round);
  rc_cutout_edit_get_place (room, cutout, self->corner, &place);
  show_length (self, self->along_entry, place.along);
  show_length (self, self->off_entry, place.off);
  show_length (self, self->width_entry, place.width);
  show_length (self, self->length_entry, place.length);
  gtk_label_set_text (self->width_label, is_round ? _ ("Diameter") : _ ("Size along the wall"));
  gtk_widget_set_visible (GTK_WIDGET (self->length_label), !is_round);
  gtk_widget_set_visible (GTK_WIDGET (self->length_entry), !is_round);
}

static gboolean
is_users (RcCutoutCard *self)
{
  return !rc_panel_is_showing (RC_PANEL (self)) && rc_panel_get_document (RC_PANEL (self)) != NULL;
}

static void
on_place_edited (RcCutoutCard *self)
{
  if (!is_users (self))
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (RC_PANEL (self)));
  RcCutout     *cutout = find_cutout (RC_PANEL (self), job);
  RcCutoutPlace place
      = { rc_length_entry_get_value (self->along_entry), rc_length_entry_get_value (self->off_entry),
          rc_length_entry_get_value (self->width_entry), rc_length_entry_get_value (self->length_entry) };
  if (cutout == NULL || !rc_cutout_edit_set_place (find_room (self, job), cutout, self->corner, &place))
    return;
  g_autofree char *key = g_strdup_printf ("cut-out %p", (void *)self);
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Place of a cut-out"), key);
}

static void
on_corner_changed (RcCutoutCard *self)
{
  if (!is_users (self))
    return;
  self->corner = gtk_drop_down_get_selected (self->corner_drop);
  rc_panel_show (RC_PANEL (self));
}

static void
on_kind_changed (RcCutoutCard *self)
{
  RcCutoutKind kind = gtk_drop_down_get_selected (self->kind_drop);

  if (!is_users (self))
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (RC_PANEL (self)));
  RcCutout *cutout = find_cutout (RC_PANEL (self), job);
  if (cutout == NULL || cutout->kind == kind)
    return;
  g_autoptr (RcCutout) usual = rc_cutout_new (kind);
  cutout->kind = kind;
  cutout->strip = usual->strip;
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Kind of cut-out"), NULL);
}

static void
on_shape_changed (RcCutoutCard *self)
{
  if (!is_users (self))
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (RC_PANEL (self)));
  RcCutout *cutout = find_cutout (RC_PANEL (self), job);
  gboolean  is_round = gtk_drop_down_get_selected (self->shape_drop) == 1;
  if (cutout && rc_cutout_edit_set_round (find_room (self, job), cutout, self->corner, is_round))
    rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Shape of a cut-out"), NULL);
}

static void
on_remove (RcCutoutCard *self)
{
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (RC_PANEL (self)));

  if (find_cutout (RC_PANEL (self), job) == NULL)
    return;
  g_ptr_array_remove_index (find_room (self, job)->cutouts, self->index);
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Take a cut-out out"), NULL);
}

static void
on_leave (RcCutoutCard *self)
{
  if (rc_panel_get_document (RC_PANEL (self)))
    rc_document_end_step (rc_panel_get_document (RC_PANEL (self)));
}

static void
rc_cutout_card_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_CUTOUT_CARD);
  G_OBJECT_CLASS (rc_cutout_card_parent_class)->dispose (object);
}

static void
rc_cutout_card_finalize (GObject *object)
{
  g_free (RC_CUTOUT_CARD (object)->room);
  G_OBJECT_CLASS (rc_cutout_card_parent_class)->finalize (object);
}

static void
rc_cutout_card_class_init (RcCutoutCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_cutout_card_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_cutout_card_finalize;
  RC_PANEL_CLASS (klass)->find = find_cutout;
  RC_PANEL_CLASS (klass)->show = rc_cutout_card_show;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/cutout-card.ui");
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, kind_drop);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, shape_drop);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, corner_drop);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, name_entry);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, along_entry);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, off_entry);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, width_entry);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, length_entry);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, width_label);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, length_label);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, strip_check);
  gtk_widget_class_bind_template_child (widget_class, RcCutoutCard, counted_check);
  gtk_widget_class_bind_template_callback (widget_class, on_place_edited);
  gtk_widget_class_bind_template_callback (widget_class, on_corner_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_kind_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_shape_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_remove);
}

static void
rc_cutout_card_init (RcCutoutCard *self)
{
  RcPanel            *panel = RC_PANEL (self);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_type_ensure (RC_TYPE_LENGTH_ENTRY);
  gtk_widget_init_template (GTK_WIDGET (self));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->name_entry), G_STRUCT_OFFSET (RcCutout, name),
                      _ ("Name of a cut-out"));
  rc_panel_bind_switch (panel, self->strip_check, G_STRUCT_OFFSET (RcCutout, strip), _ ("Strip round a cut-out"));
  rc_panel_bind_switch (panel, self->counted_check, G_STRUCT_OFFSET (RcCutout, counted),
                        _ ("Charge for fitting round"));
  g_signal_connect_object (focus, "leave", G_CALLBACK (on_leave), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

GtkWidget *
rc_cutout_card_new (const char *room, guint index)
{
  RcCutoutCard *self = g_object_new (RC_TYPE_CUTOUT_CARD, NULL);

  self->room = g_strdup (room);
  self->index = index;
  return GTK_WIDGET (self);
}

void
rc_cutout_card_focus_place (RcCutoutCard *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->along_entry));
}
