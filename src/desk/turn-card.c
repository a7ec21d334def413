#include "turn-card.h"

#include <glib/gi18n-lib.h>

#include "measure-edit.h"

struct _RcTurnCard
{
  RcPanel parent_instance;

  guint          index;
  GtkLabel      *number_label, *winders_label, *going_label, *width_label, *fault_label;
  GtkDropDown   *kind_drop, *bend_drop;
  GtkSpinButton *after_spin, *winders_spin;
  RcLengthEntry *going_entry, *width_entry;
};

G_DEFINE_FINAL_TYPE (RcTurnCard, rc_turn_card, RC_TYPE_PANEL)

/* The chosen stair, where it has this turn. */
static RcStair *
find_stair (RcPanel *panel, RcJob *job)
{
  RcDocument *document = rc_panel_get_document (panel);
  RcChoice    choice = rc_document_get_choice (document);
  RcStair    *stair = choice.thing == RC_THING_STAIR
                          ? rc_measure_find_stair (rc_document_get_measure_of (document, job), choice.id)
                          : NULL;

  return stair && RC_TURN_CARD (panel)->index < stair->turns->len ? stair : NULL;
}

static gpointer
find_turn (RcPanel *panel, RcJob *job)
{
  RcStair *stair = find_stair (panel, job);
  return stair ? rc_stair_get_turn (stair, RC_TURN_CARD (panel)->index) : NULL;
}

static void
rc_turn_card_show (RcPanel *panel, gpointer part)
{
  RcTurnCard        *self = RC_TURN_CARD (panel);
  const RcStairTurn *turn = part;
  gboolean           winds = turn->kind == RC_TURN_WINDERS;
  const char        *fault = rc_length_entry_get_fault (self->going_entry);

  gtk_widget_set_visible (GTK_WIDGET (self->winders_label), winds);
  gtk_widget_set_visible (GTK_WIDGET (self->winders_spin), winds);
  gtk_label_set_text (self->going_label, winds ? _ ("Widest going") : _ ("Length"));
  gtk_label_set_text (self->width_label, winds ? _ ("Longest width") : _ ("Width"));
  if (fault == NULL)
    fault = rc_length_entry_get_fault (self->width_entry);
  gtk_label_set_text (self->fault_label, fault ? fault : "");
  gtk_widget_set_visible (GTK_WIDGET (self->fault_label), fault != NULL);
}

static void
on_remove (RcTurnCard *self)
{
  g_autoptr (RcJob) job = rc_document_dup_job (rc_panel_get_document (RC_PANEL (self)));
  RcStair *stair = find_stair (RC_PANEL (self), job);

  if (stair == NULL)
    return;
  /* The card stays, with the turn above. */
  rc_length_entry_clear (self->going_entry);
  rc_length_entry_clear (self->width_entry);
  rc_measure_edit_remove_turn (stair, self->index);
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Take a turn away"), NULL);
}

static void
rc_turn_card_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_TURN_CARD);
  G_OBJECT_CLASS (rc_turn_card_parent_class)->dispose (object);
}

static void
rc_turn_card_class_init (RcTurnCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_turn_card_dispose;
  RC_PANEL_CLASS (klass)->find = find_turn;
  RC_PANEL_CLASS (klass)->show = rc_turn_card_show;

  g_type_ensure (RC_TYPE_LENGTH_ENTRY);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/turn-card.ui");
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, number_label);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, winders_label);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, going_label);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, width_label);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, fault_label);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, kind_drop);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, bend_drop);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, after_spin);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, winders_spin);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, going_entry);
  gtk_widget_class_bind_template_child (widget_class, RcTurnCard, width_entry);
  gtk_widget_class_bind_template_callback (widget_class, on_remove);
}

static void
rc_turn_card_init (RcTurnCard *self)
{
  RcPanel    *panel = RC_PANEL (self);
  const char *step = _ ("Turn of a stair");

  gtk_widget_init_template (GTK_WIDGET (self));
  rc_panel_bind_choice (panel, self->kind_drop, G_STRUCT_OFFSET (RcStairTurn, kind), step);
  rc_panel_bind_count (panel, self->after_spin, G_STRUCT_OFFSET (RcStairTurn, after), step);
  rc_panel_bind_choice (panel, self->bend_drop, G_STRUCT_OFFSET (RcStairTurn, bend), step);
  rc_panel_bind_count (panel, self->winders_spin, G_STRUCT_OFFSET (RcStairTurn, winders), step);
  rc_panel_bind_length (panel, self->going_entry, G_STRUCT_OFFSET (RcStairTurn, going), step);
  rc_panel_bind_length (panel, self->width_entry, G_STRUCT_OFFSET (RcStairTurn, width), step);
}

GtkWidget *
rc_turn_card_new (guint index)
{
  RcTurnCard      *self = g_object_new (RC_TYPE_TURN_CARD, NULL);
  g_autofree char *number = g_strdup_printf (_ ("Turn %u"), index + 1);

  self->index = index;
  gtk_label_set_text (self->number_label, number);
  return GTK_WIDGET (self);
}

void
rc_turn_card_focus_kind (RcTurnCard *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->kind_drop));
}
