#include "room-panel.h"

#include <glib/gi18n-lib.h>

#include "cutout-list.h"
#include "diagonal-list.h"
#include "measure-edit.h"
#include "opening-card.h"
#include "pick.h"
#include "room-edit.h"

struct _RcRoomPanel
{
  RcPanel parent_instance;

  GtkEntry       *name_entry;
  GtkSpinButton  *floor_spin;
  GtkDropDown    *area_drop;
  RcWallTable    *wall_table;
  GtkCheckButton *spread_check;
  GtkBox         *openings_box;
  RcCutoutList   *cutout_list;
  RcDiagonalList *diagonal_list;
  GtkTextView    *notes_view;

  const char *room_id; /* interned; whose openings are shown */
};

G_DEFINE_FINAL_TYPE (RcRoomPanel, rc_room_panel, RC_TYPE_PANEL)

static gboolean
shows_openings (RcRoomPanel *self, const RcRoom *room)
{
  GtkWidget *card = gtk_widget_get_first_child (GTK_WIDGET (self->openings_box));

  if (self->room_id != g_intern_string (room->id))
    return FALSE;
  for (guint i = 0; i < room->openings->len; i++, card = gtk_widget_get_next_sibling (card))
    {
      const RcOpening *opening = g_ptr_array_index (room->openings, i);
      if (card == NULL || g_strcmp0 (rc_opening_card_get_id (RC_OPENING_CARD (card)), opening->id) != 0)
        return FALSE;
    }
  return card == NULL;
}

static void
remove_cards (RcRoomPanel *self)
{
  GtkWidget *card;

  while ((card = gtk_widget_get_first_child (GTK_WIDGET (self->openings_box))) != NULL)
    {
      rc_panel_set_document (RC_PANEL (card), NULL);
      gtk_box_remove (self->openings_box, card);
    }
}

/* The card with the focus, from 1; 0: none. */
static guint
find_focused_card (RcRoomPanel *self)
{
  GtkRoot   *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root ? gtk_root_get_focus (root) : NULL;
  guint      n = 1;

  for (GtkWidget *card = gtk_widget_get_first_child (GTK_WIDGET (self->openings_box)); card && focus;
       card = gtk_widget_get_next_sibling (card), n++)
    if (gtk_widget_is_ancestor (focus, card))
      return n;
  return 0;
}

/* The card in the place of the one that had the focus, else the walls: it is never lost. */
static void
focus_card (RcRoomPanel *self, guint n)
{
  GtkWidget *card = gtk_widget_get_first_child (GTK_WIDGET (self->openings_box));

  for (guint i = 1; i < n && card && gtk_widget_get_next_sibling (card); i++)
    card = gtk_widget_get_next_sibling (card);
  if (card)
    rc_opening_card_focus_offset (RC_OPENING_CARD (card));
  else
    rc_wall_table_focus_wall (self->wall_table, rc_wall_table_get_focused_wall (self->wall_table));
}

static void
show_openings (RcRoomPanel *self, const RcRoom *room)
{
  if (shows_openings (self, room))
    return;
  guint focused = find_focused_card (self);
  remove_cards (self);
  self->room_id = g_intern_string (room->id);
  for (guint i = 0; i < room->openings->len; i++)
    {
      const RcOpening *opening = g_ptr_array_index (room->openings, i);
      GtkWidget       *card = rc_opening_card_new (room->id, opening->id);
      gtk_box_append (self->openings_box, card);
      rc_panel_set_document (RC_PANEL (card), rc_panel_get_document (RC_PANEL (self)));
    }
  if (focused)
    focus_card (self, focused);
}

static void
rc_room_panel_show (RcPanel *panel, gpointer part)
{
  RcRoomPanel       *self = RC_ROOM_PANEL (panel);
  RcDocument        *document = rc_panel_get_document (panel);
  const RcRoom      *room = part;
  const RcMeasure   *measure = rc_document_get_measure (document);
  const RcFloorArea *area = rc_choice_find_area_of_room (measure, room->id);
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  rc_pick_add (&pick, NULL, _ ("no carpet"));
  for (guint i = 0; i < measure->areas->len; i++)
    {
      const RcFloorArea *other = g_ptr_array_index (measure->areas, i);
      rc_pick_add (&pick, other->id, other->name);
    }
  rc_pick_show (&pick, self->area_drop, area ? area->id : NULL);
  show_openings (self, room);
}

static void
on_area_changed (RcRoomPanel *self)
{
  RcPanel    *panel = RC_PANEL (self);
  RcDocument *document = rc_panel_get_document (panel);

  if (rc_panel_is_showing (panel) || document == NULL)
    return;
  const char *id = rc_pick_get_selected (self->area_drop);
  RcChoice    choice = rc_document_get_choice (document);
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  if (rc_measure_edit_put_room_in_area (rc_document_get_measure_of (document, job), choice.id, id))
    rc_panel_commit (panel, g_steal_pointer (&job), _ ("Carpet area of a room"), NULL);
}

static void
on_name_activate (RcRoomPanel *self)
{
  rc_wall_table_focus_wall (self->wall_table, 0);
}

static void
action_spread (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkCheckButton *check = RC_ROOM_PANEL (widget)->spread_check;
  gtk_check_button_set_active (check, !gtk_check_button_get_active (check));
}

static void
action_add_opening (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcRoomPanel *self = RC_ROOM_PANEL (widget);
  RcDocument  *document = rc_panel_get_document (RC_PANEL (self));

  if (document == NULL)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcRoom *room = rc_panel_find_chosen_room (RC_PANEL (self), job);
  if (room == NULL)
    return;
  guint      wall = rc_wall_table_get_focused_wall (self->wall_table);
  RcOpening *opening = rc_room_edit_add_opening (room, g_variant_get_int32 (parameter), wall, job->units);
  if (opening == NULL)
    return;
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Put an opening in"), NULL);
  GtkWidget *card = gtk_widget_get_last_child (GTK_WIDGET (self->openings_box));
  if (card)
    rc_opening_card_focus_offset (RC_OPENING_CARD (card));
}

static void
action_add_cutout (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcRoomPanel *self = RC_ROOM_PANEL (widget);

  rc_cutout_list_add (self->cutout_list, g_variant_get_int32 (parameter),
                      rc_wall_table_get_focused_wall (self->wall_table));
}

static void
action_add_diagonal (GtkWidget *widget, const char *name, GVariant *parameter)
{
  rc_diagonal_list_add (RC_ROOM_PANEL (widget)->diagonal_list);
}

static void
rc_room_panel_dispose (GObject *object)
{
  RcRoomPanel *self = RC_ROOM_PANEL (object);

  if (self->openings_box)
    remove_cards (self);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_ROOM_PANEL);
  G_OBJECT_CLASS (rc_room_panel_parent_class)->dispose (object);
}

static void
rc_room_panel_class_init (RcRoomPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_room_panel_dispose;
  RC_PANEL_CLASS (klass)->find = rc_panel_find_chosen_room;
  RC_PANEL_CLASS (klass)->show = rc_room_panel_show;

  g_type_ensure (RC_TYPE_WALL_TABLE);
  g_type_ensure (RC_TYPE_CUTOUT_LIST);
  g_type_ensure (RC_TYPE_DIAGONAL_LIST);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/room-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, name_entry);
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, floor_spin);
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, area_drop);
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, wall_table);
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, spread_check);
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, openings_box);
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, cutout_list);
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, diagonal_list);
  gtk_widget_class_bind_template_child (widget_class, RcRoomPanel, notes_view);
  gtk_widget_class_bind_template_callback (widget_class, on_area_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_name_activate);

  gtk_widget_class_install_action (widget_class, "room.add-opening", "i", action_add_opening);
  gtk_widget_class_install_action (widget_class, "room.spread", NULL, action_spread);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_ALT_MASK, "room.spread", NULL);
  static const guint KEYS[] = { GDK_KEY_d, GDK_KEY_a, GDK_KEY_w };
  for (int kind = 0; kind < (int)G_N_ELEMENTS (KEYS); kind++)
    gtk_widget_class_add_binding_action (widget_class, KEYS[kind], GDK_ALT_MASK, "room.add-opening", "i", kind);
  static const guint THINGS[RC_N_CUTOUT_KINDS]
      = { [RC_CUTOUT_OTHER] = GDK_KEY_e,  [RC_CUTOUT_HEARTH] = GDK_KEY_h,        [RC_CUTOUT_ISLAND] = GDK_KEY_i,
          [RC_CUTOUT_COLUMN] = GDK_KEY_c, [RC_CUTOUT_STAIR_OPENING] = GDK_KEY_o, [RC_CUTOUT_FIXTURE] = GDK_KEY_x };
  gtk_widget_class_install_action (widget_class, "room.add-cutout", "i", action_add_cutout);
  gtk_widget_class_install_action (widget_class, "room.add-diagonal", NULL, action_add_diagonal);
  for (int kind = 0; kind < RC_N_CUTOUT_KINDS; kind++)
    gtk_widget_class_add_binding_action (widget_class, THINGS[kind], GDK_ALT_MASK, "room.add-cutout", "i", kind);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_g, GDK_ALT_MASK, "room.add-diagonal", NULL);
}

static void
rc_room_panel_init (RcRoomPanel *self)
{
  RcPanel *panel = RC_PANEL (self);

  gtk_widget_init_template (GTK_WIDGET (self));
  rc_panel_bind_text (panel, GTK_EDITABLE (self->name_entry), G_STRUCT_OFFSET (RcRoom, name), _ ("Name of a room"));
  rc_panel_bind_count (panel, self->floor_spin, G_STRUCT_OFFSET (RcRoom, floor), _ ("Storey of a room"));
  rc_panel_bind_switch (panel, self->spread_check, G_STRUCT_OFFSET (RcRoom, spread), _ ("Spread what is missing"));
  rc_panel_bind_buffer (panel, self->notes_view, G_STRUCT_OFFSET (RcRoom, notes), _ ("Notes on a room"));
}

RcWallTable *
rc_room_panel_get_wall_table (RcRoomPanel *self)
{
  return self->wall_table;
}

void
rc_room_panel_focus_name (RcRoomPanel *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->name_entry));
}
