#include "opening-card.h"

#include <glib/gi18n-lib.h>

#include "document-things.h"
#include "measure-edit.h"
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

/* "hall D2": ids have no blanks. */
static char *
join_ids (const char *room, const char *opening)
{
  return opening ? g_strdup_printf ("%s %s", room, opening) : g_strdup (room);
}

/* How likely two openings are one: 2 when they are as wide as each other, 1 when their walls face each other. */
static guint
compute_likeness (const RcRoom *room, const RcOpening *opening, const RcRoom *other, const RcOpening *back)
{
  RcPoint out = { 0 }, in = { 0 };

  rc_room_get_outward_step (room, opening->wall, RC_TICKS_PER_M, &out);
  rc_room_get_outward_step (other, back->wall, RC_TICKS_PER_M, &in);
  gboolean faces = ABS (out.x + in.x) + ABS (out.y + in.y) <= RC_TICKS_PER_MM;
  return (opening->width == back->width ? 2 : 0) + (faces ? 1 : 0);
}

/* The likeliest first, so that the room's first letter picks it. */
static void
add_leads (RcPick *to, const RcRoom *other, const RcRoom *room, const RcOpening *opening)
{
  for (int likeness = 3; likeness >= 0; likeness--)
    for (guint i = 0; i < other->openings->len; i++)
      {
        const RcOpening *back = g_ptr_array_index (other->openings, i);
        gboolean         is_free = back->to_room == NULL || g_strcmp0 (back->to_room, room->id) == 0;
        if (back->kind != opening->kind || !is_free || compute_likeness (room, opening, other, back) != (guint)likeness)
          continue;
        g_autofree char *id = join_ids (other->id, back->id);
        g_autofree char *label = g_strdup_printf (_ ("%s, by its %s"), rc_room_get_name (other), back->id);
        rc_pick_add (to, id, label);
      }
}

/* The openings that this one may be the other side of, then the rooms by themselves. */
static void
show_leads (RcOpeningCard *self, const RcMeasure *measure, const RcRoom *room, const RcOpening *opening)
{
  g_auto (RcPick) to = { 0 };
  g_autofree char *selected = join_ids (opening->to_room, opening->to_room ? opening->to_opening : NULL);

  rc_pick_init (&to);
  rc_pick_add (&to, NULL, _ ("outside"));
  for (guint i = 0; i < measure->rooms->len; i++)
    if (g_ptr_array_index (measure->rooms, i) != room)
      add_leads (&to, g_ptr_array_index (measure->rooms, i), room, opening);
  for (guint i = 0; i < measure->rooms->len; i++)
    {
      const RcRoom *other = g_ptr_array_index (measure->rooms, i);
      if (other != room)
        rc_pick_add (&to, other->id, rc_room_get_name (other));
    }
  rc_pick_show (&to, self->to_drop, selected);
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

  show_leads (self, measure, room, opening);
  gboolean is_window = opening->kind == RC_OPENING_WINDOW;
  gtk_widget_set_sensitive (GTK_WIDGET (self->swing_drop), opening->kind == RC_OPENING_DOOR);
  gtk_widget_set_sensitive (GTK_WIDGET (self->to_drop), !is_window);
  gtk_widget_set_sensitive (GTK_WIDGET (self->transition_drop), !is_window);
}

static RcJob *
rc_opening_card_settle (RcPanel *panel, RcJob *job)
{
  RcOpeningCard *self = RC_OPENING_CARD (panel);

  return rc_document_meet_opening (rc_panel_get_document (panel), job, self->room, self->id);
}

static void
on_to_changed (RcOpeningCard *self)
{
  RcPanel    *panel = RC_PANEL (self);
  const char *to = rc_pick_get_selected (self->to_drop);

  if (rc_panel_is_showing (panel) || rc_panel_get_document (panel) == NULL)
    return;
  g_auto (GStrv) ids = g_strsplit (to ? to : "", " ", 2);
  RcJob *job
      = rc_document_lead_opening (rc_panel_get_document (panel), self->room, self->id, ids[0], ids[0] ? ids[1] : NULL);
  if (job)
    rc_panel_commit (panel, job, _ ("Where an opening leads"), "leads to");
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
  RC_PANEL_CLASS (klass)->settle = rc_opening_card_settle;

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

void
rc_opening_card_focus_offset (RcOpeningCard *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->offset_entry));
}
