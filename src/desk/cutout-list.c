#include "cutout-list.h"

#include <glib/gi18n-lib.h>

#include "cutout-card.h"
#include "cutout-edit.h"

struct _RcCutoutList
{
  RcPanel parent_instance;

  GtkBox     *cards_box;
  const char *room_id; /* interned; whose cards are shown */
  guint       n_cards;
};

G_DEFINE_FINAL_TYPE (RcCutoutList, rc_cutout_list, RC_TYPE_PANEL)

static void
remove_cards (RcCutoutList *self)
{
  GtkWidget *card;

  while ((card = gtk_widget_get_first_child (GTK_WIDGET (self->cards_box))) != NULL)
    {
      rc_panel_set_document (RC_PANEL (card), NULL);
      gtk_box_remove (self->cards_box, card);
    }
}

static void
rc_cutout_list_show (RcPanel *panel, gpointer part)
{
  RcCutoutList *self = RC_CUTOUT_LIST (panel);
  const RcRoom *room = part;

  if (self->room_id == g_intern_string (room->id) && self->n_cards == room->cutouts->len)
    return;
  gboolean has_focus = gtk_widget_get_focus_child (GTK_WIDGET (self->cards_box)) != NULL;
  remove_cards (self);
  self->room_id = g_intern_string (room->id);
  self->n_cards = room->cutouts->len;
  for (guint i = 0; i < room->cutouts->len; i++)
    {
      GtkWidget *card = rc_cutout_card_new (room->id, i);
      gtk_box_append (self->cards_box, card);
      rc_panel_set_document (RC_PANEL (card), rc_panel_get_document (panel));
    }
  /* The focus goes to what is left, never away. */
  GtkWidget *last = gtk_widget_get_last_child (GTK_WIDGET (self->cards_box));
  if (has_focus && last)
    rc_cutout_card_focus_place (RC_CUTOUT_CARD (last));
  else if (has_focus)
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

void
rc_cutout_list_add (RcCutoutList *self, RcCutoutKind kind, guint wall)
{
  RcDocument *document = rc_panel_get_document (RC_PANEL (self));

  if (document == NULL || (guint)kind >= RC_N_CUTOUT_KINDS)
    return;
  g_autoptr (RcJob) job = rc_document_dup_job (document);
  RcRoom *room = rc_panel_find_chosen_room (RC_PANEL (self), job);
  if (room == NULL || rc_cutout_edit_add (room, kind, wall, job->units) == NULL)
    return;
  rc_panel_commit (RC_PANEL (self), g_steal_pointer (&job), _ ("Put a cut-out in"), NULL);
  GtkWidget *card = gtk_widget_get_last_child (GTK_WIDGET (self->cards_box));
  if (card)
    rc_cutout_card_focus_place (RC_CUTOUT_CARD (card));
}

static void
rc_cutout_list_dispose (GObject *object)
{
  if (RC_CUTOUT_LIST (object)->cards_box)
    remove_cards (RC_CUTOUT_LIST (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_CUTOUT_LIST);
  G_OBJECT_CLASS (rc_cutout_list_parent_class)->dispose (object);
}

static void
rc_cutout_list_class_init (RcCutoutListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_cutout_list_dispose;
  RC_PANEL_CLASS (klass)->find = rc_panel_find_chosen_room;
  RC_PANEL_CLASS (klass)->show = rc_cutout_list_show;

  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/cutout-list.ui");
  gtk_widget_class_bind_template_child (widget_class, RcCutoutList, cards_box);
}

static void
rc_cutout_list_init (RcCutoutList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
