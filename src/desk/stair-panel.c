#include "stair-panel.h"

#include <glib/gi18n-lib.h>

#include "measure-edit.h"
#include "turn-card.h"

struct _RcStairPanel
{
  RcPanel parent_instance;

  GtkEntry       *name_entry;
  GtkSpinButton  *steps_spin;
  RcLengthEntry  *rise_entry, *going_entry, *width_entry;
  GtkDropDown    *style_drop, *cutting_drop, *carpet_drop, *cushion_drop;
  RcLengthEntry  *runner_entry, *curved_entry;
  GtkBox         *turns_box;
  GtkButton      *add_turn_button;
  RcLengthEntry  *nose_entry, *end_entry, *piece_entry, *turn_entry;
  GtkLabel       *cut_label, *fault_label;
  GtkTextView    *notes_view;
  GtkCheckButton *placed_check;
  GtkSpinButton  *floor_spin, *bearing_spin;
};

G_DEFINE_FINAL_TYPE (RcStairPanel, rc_stair_panel, RC_TYPE_PANEL)

static gpointer
find_stair (RcPanel *panel, RcJob *job)
{
  RcDocument *document = rc_panel_get_document (panel);
  RcChoice    choice = rc_document_get_choice (document);

  return choice.thing == RC_THING_STAIR ? rc_measure_find_stair (rc_document_get_measure_of (document, job), choice.id)
                                        : NULL;
}

/* The pieces, those alike in a row on one line: "Winder, step 7 … Winder, step 9: cut 3' 10 1/2" by 3' 4"". */
static void
show_cut (RcStairPanel *self, const RcStair *stair, const RcJob *job)
{
  g_autoptr (GArray) pieces
      = rc_stair_count_steps (stair) <= RC_STAIR_MAX_STEPS ? rc_stair_compute_pieces (stair) : NULL;
  const RcLengthStyle *style = rc_job_get_length_style (job);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0, n; pieces && i < pieces->len; i += n)
    {
      const RcStairPiece *piece = &g_array_index (pieces, RcStairPiece, i);
      for (n = 1; i + n < pieces->len; n++)
        {
          const RcStairPiece *next = &g_array_index (pieces, RcStairPiece, i + n);
          if (next->kind != piece->kind || next->cut_length != piece->cut_length || next->cut_width != piece->cut_width)
            break;
        }
      g_autofree char *first = rc_stair_piece_dup_label (piece);
      g_autofree char *last = rc_stair_piece_dup_label (&g_array_index (pieces, RcStairPiece, i + n - 1));
      g_autofree char *width = rc_length_format (piece->cut_width, style);
      g_autofree char *length = rc_length_format (piece->cut_length, style);
      g_string_append_printf (text, "%s%s%s%s: ", i > 0 ? "\n" : "", first, n > 1 ? " … " : "", n > 1 ? last : "");
      g_string_append_printf (text, _ ("cut %s wide, %s long"), width, length);
    }
  gtk_label_set_text (self->cut_label, text->str);
}

static guint
count_turn_cards (RcStairPanel *self)
{
  guint n = 0;

  for (GtkWidget *card = gtk_widget_get_first_child (GTK_WIDGET (self->turns_box)); card;
       card = gtk_widget_get_next_sibling (card))
    n++;
  return n;
}

static void
remove_last_card (RcStairPanel *self)
{
  GtkWidget *card = gtk_widget_get_last_child (GTK_WIDGET (self->turns_box));

  /* The focus goes to what is left, never away. */
  if (gtk_widget_get_focus_child (GTK_WIDGET (self->turns_box)) == card)
    gtk_widget_grab_focus (GTK_WIDGET (self->add_turn_button));
  rc_panel_set_document (RC_PANEL (card), NULL);
  gtk_box_remove (self->turns_box, card);
}

/* A card shows the turn of its number, whichever stair is chosen: so only their number follows. */
static void
show_turns (RcStairPanel *self, guint n_turns)
{
  for (guint n = count_turn_cards (self); n > n_turns; n--)
    remove_last_card (self);
  for (guint n = count_turn_cards (self); n < n_turns; n++)
    {
      GtkWidget *card = rc_turn_card_new (n);
      gtk_box_append (self->turns_box, card);
      rc_panel_set_document (RC_PANEL (card), rc_panel_get_document (RC_PANEL (self)));
    }
  gtk_widget_set_sensitive (GTK_WIDGET (self->add_turn_button), n_turns < RC_STAIR_MAX_TURNS);
}

static void
on_add_turn (RcStairPanel *self)
{
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (RC_PANEL (self)));
  RcStair *stair = find_stair (RC_PANEL (self), job);

  if (stair == NULL)
    return;
  rc_measure_edit_add_turn (stair);
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Add a turn to a stair"), NULL);
  GtkWidget *card = gtk_widget_get_last_child (GTK_WIDGET (self->turns_box));
  if (card)
    rc_turn_card_focus_kind (RC_TURN_CARD (card));
}

static const char *
find_fault (RcStairPanel *self)
{
  RcLengthEntry *entries[]
      = { self->rise_entry, self->going_entry, self->width_entry, self->runner_entry, self->curved_entry,
          self->nose_entry, self->end_entry,   self->piece_entry, self->turn_entry };

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
  show_turns (self, stair->turns->len);
  gtk_widget_set_sensitive (GTK_WIDGET (self->floor_spin), stair->placed);
  gtk_widget_set_sensitive (GTK_WIDGET (self->bearing_spin), stair->placed);

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
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, cutting_drop);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, runner_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, curved_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, turns_box);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, add_turn_button);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, piece_entry);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, cut_label);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, fault_label);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, notes_view);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, placed_check);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, floor_spin);
  gtk_widget_class_bind_template_child (widget_class, RcStairPanel, bearing_spin);
  gtk_widget_class_bind_template_callback (widget_class, on_add_turn);
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
  rc_panel_bind_count (panel, self->steps_spin, G_STRUCT_OFFSET (RcStair, steps), _ ("Steps of a stair"));
  rc_panel_bind_length (panel, self->rise_entry, G_STRUCT_OFFSET (RcStair, rise), _ ("Rise of a stair"));
  rc_panel_bind_length (panel, self->going_entry, G_STRUCT_OFFSET (RcStair, going), _ ("Going of a stair"));
  rc_panel_bind_length (panel, self->width_entry, G_STRUCT_OFFSET (RcStair, width), _ ("Width of a stair"));
  rc_panel_bind_choice (panel, self->style_drop, G_STRUCT_OFFSET (RcStair, style), _ ("Way a stair is laid"));
  rc_panel_bind_choice (panel, self->cutting_drop, G_STRUCT_OFFSET (RcStair, cutting), _ ("Way a stair is cut"));
  rc_panel_bind_length (panel, self->runner_entry, G_STRUCT_OFFSET (RcStair, runner_width), _ ("Runner of a stair"));
  rc_panel_bind_length (panel, self->curved_entry, G_STRUCT_OFFSET (RcStair, curved_width),
                        _ ("Bottom step of a stair"));
  rc_panel_bind_length (panel, self->piece_entry, G_STRUCT_OFFSET (RcStair, piece_extra), _ ("Allowance of a stair"));
  rc_panel_bind_length (panel, self->nose_entry, G_STRUCT_OFFSET (RcStair, nose_extra), _ ("Allowance of a stair"));
  rc_panel_bind_length (panel, self->end_entry, G_STRUCT_OFFSET (RcStair, end_extra), _ ("Allowance of a stair"));
  rc_panel_bind_length (panel, self->turn_entry, G_STRUCT_OFFSET (RcStair, width_extra), _ ("Allowance of a stair"));
  rc_panel_bind_switch (panel, self->placed_check, G_STRUCT_OFFSET (RcStair, placed), _ ("Stair on the drawing"));
  rc_panel_bind_count (panel, self->floor_spin, G_STRUCT_OFFSET (RcStair, floor), _ ("Storey of a stair"));
  rc_panel_bind_count (panel, self->bearing_spin, G_STRUCT_OFFSET (RcStair, bearing_degrees), _ ("Turn a stair"));
  rc_panel_bind_buffer (panel, self->notes_view, G_STRUCT_OFFSET (RcStair, notes), _ ("Notes on a stair"));
}

void
rc_stair_panel_focus_name (RcStairPanel *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->name_entry));
}
