#include "opening-card.h"

#include <glib/gi18n-lib.h>

#include "pick.h"
#include "room-edit.h"

struct _RcOpeningCard
{
  RcPanel parent_instance;

  char          *room;
  char          *id;
  GtkLabel      *id_label;
  GtkDropDown   *kind_drop;
  GtkDropDown   *wall_drop;
  RcLengthEntry *offset_entry;
  RcLengthEntry *width_entry;
  RcLengthEntry *depth_entry;
  GtkDropDown   *swing_drop;
  GtkDropDown   *to_drop;
  GtkDropDown   *transition_drop;
};

G_DEFINE_FINAL_TYPE (RcOpeningCard, rc_opening_card, RC_TYPE_PANEL)

static gpointer
find_opening (RcPanel *panel, RcJob *job)
{
  RcOpeningCard *self = RC_OPENING_CARD (panel);
  RcMeasure     *measure = rc_document_get_measure_of (rc_panel_get_document (panel), job);
  RcRoom        *room = rc_measure_find_room (measure, self->room);

  return room ? rc_room_edit_find_opening (room, self->id) : NULL;
}

static void
show_walls (RcOpeningCard *self, guint n_walls)
{
  GListModel *model = gtk_drop_down_get_model (self->wall_drop);

  if (model && g_list_model_get_n_items (model) == n_walls)
    return;
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  for (guint i = 0; i < n_walls; i++)
    {
      g_autofree char *number = g_strdup_printf ("%u", i + 1);
      gtk_string_list_append (list, number);
    }
  gtk_drop_down_set_model (self->wall_drop, G_LIST_MODEL (list));
}

static void
rc_opening_card_show (RcPanel *panel, gpointer part)
{
  RcOpeningCard   *self = RC_OPENING_CARD (panel);
  RcDocument      *document = rc_panel_get_document (panel);
  const RcOpening *opening = part;
  const RcMeasure *measure = rc_document_get_measure (document);
  const RcRoom    *room = rc_measure_find_room (measure, self->room);

  show_walls (self, rc_room_get_n_walls (room));
  gtk_drop_down_set_selected (self->wall_drop, opening->wall);

  g_auto (RcPick) to = { 0 };
  rc_pick_init (&to);
  rc_pick_add (&to, NULL, _ ("outside"));
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *other = g_ptr_array_index (measure->rooms, i);
      if (other != room)
        rc_pick_add (&to, other->id, other->name);
    }
  rc_pick_show (&to, self->to_drop, opening->to_room);

  gboolean is_window = opening->kind == RC_OPENING_WINDOW;
  gtk_widget_set_sensitive (GTK_WIDGET (self->swing_drop), opening->kind == RC_OPENING_DOOR);
  gtk_widget_set_sensitive (GTK_WIDGET (self->to_drop), !is_window);
  gtk_widget_set_sensitive (GTK_WIDGET (self->transition_drop), !is_window);
}

static void
on_to_changed (RcOpeningCard *self)
{
  RcPanel    *panel = RC_PANEL (self);
  const char *to = rc_pick_get_selected (self->to_drop);

  if (rc_panel_is_showing (panel) || rc_panel_get_document (panel) == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (panel));
  RcOpening *opening = find_opening (panel, job);
  if (opening == NULL || g_strcmp0 (opening->to_room, to) == 0)
    return;
  g_free (opening->to_room);
  opening->to_room = g_strdup (to);
  g_clear_pointer (&opening->to_opening, g_free);
  rc_panel_commit (panel, g_steal_pointer (&job), _ ("Where an opening leads"), NULL);
}

static void
on_remove (RcOpeningCard *self)
{
  RcPanel *panel = RC_PANEL (self);
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (panel));
  RcRoom *room = rc_measure_find_room (rc_document_get_measure_of (rc_panel_get_document (panel), job), self->room);

  if (room && rc_room_edit_remove_opening (room, self->id))
    rc_panel_commit (panel, g_steal_pointer (&job), _ ("Take an opening out"), NULL);
}

static void
rc_opening_card_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_OPENING_CARD);
  G_OBJECT_CLASS (rc_opening_card_parent_class)->dispose (object);
}

static void
rc_opening_card_finalize (GObject *object)
{
  g_free (RC_OPENING_CARD (object)->room);
  g_free (RC_OPENING_CARD (object)->id);
  G_OBJECT_CLASS (rc_opening_card_parent_class)->finalize (object);
}

static void
rc_opening_card_class_init (RcOpeningCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_opening_card_dispose;
  G_OBJECT_CLASS (klass)->finalize = rc_opening_card_finalize;
  RC_PANEL_CLASS (klass)->find = find_opening;
  RC_PANEL_CLASS (klass)->show = rc_opening_card_show;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/opening-card.ui");
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, id_label);
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, kind_drop);
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, wall_drop);
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, offset_entry);
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, width_entry);
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, depth_entry);
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, swing_drop);
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, to_drop);
  gtk_widget_class_bind_template_child (widget_class, RcOpeningCard, transition_drop);
  gtk_widget_class_bind_template_callback (widget_class, on_to_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_remove);
}

static void
rc_opening_card_init (RcOpeningCard *self)
{
  RcPanel *panel = RC_PANEL (self);

  g_type_ensure (RC_TYPE_LENGTH_ENTRY);
  gtk_widget_init_template (GTK_WIDGET (self));
  rc_panel_bind_choice (panel, self->kind_drop, G_STRUCT_OFFSET (RcOpening, kind), _ ("Kind of opening"));
  rc_panel_bind_choice (panel, self->wall_drop, G_STRUCT_OFFSET (RcOpening, wall), _ ("Wall of an opening"));
  rc_panel_bind_length (panel, self->offset_entry, G_STRUCT_OFFSET (RcOpening, offset), _ ("Place of an opening"));
  rc_panel_bind_length (panel, self->width_entry, G_STRUCT_OFFSET (RcOpening, width), _ ("Width of an opening"));
  rc_panel_bind_length (panel, self->depth_entry, G_STRUCT_OFFSET (RcOpening, depth), _ ("Wall thickness"));
  rc_panel_bind_choice (panel, self->swing_drop, G_STRUCT_OFFSET (RcOpening, swing), _ ("Door leaf"));
  rc_panel_bind_goods (panel, self->transition_drop, G_STRUCT_OFFSET (RcOpening, transition), RC_GOODS_TRANSITION, TRUE,
                       _ ("Moulding of an opening"));
}

GtkWidget *
rc_opening_card_new (const char *room, const char *id)
{
  RcOpeningCard *self = g_object_new (RC_TYPE_OPENING_CARD, NULL);

  self->room = g_strdup (room);
  self->id = g_strdup (id);
  gtk_label_set_text (self->id_label, id);
  return GTK_WIDGET (self);
}

const char *
rc_opening_card_get_id (RcOpeningCard *self)
{
  return self->id;
}
