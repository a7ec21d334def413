#include "offer-window.h"

#include "offer-plans.h"

#include <glib/gi18n-lib.h>

#include "offer-card.h"
#include "offer-entry.h"
#include "offer-panel.h"
#include "offer-swaps.h"
#include "pick.h"

struct _RcOfferWindow
{
  GtkWindow parent_instance;

  RcWindow     *window; /* the parent; borrowed */
  RcDocument   *document;
  RcOfferPlans *plans;  /* the document's */
  char         *chosen; /* id of the alternative looked at; NULL: the job as it stands */

  GtkBox            *cards_box, *swaps_box, *lines_box;
  GtkScrolledWindow *panel_scrolled;
  GtkWidget         *adder_box;
  GtkDropDown       *item_drop;
  GtkLabel          *note_label;
  RcQuoteView       *view;
};

G_DEFINE_FINAL_TYPE (RcOfferWindow, rc_offer_window, GTK_TYPE_WINDOW)

static void
tell (RcOfferWindow *self, const char *text)
{
  gtk_label_set_text (self->note_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note_label), text != NULL);
}

static void
on_tell (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tell (RC_OFFER_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
clear (GtkBox *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
}

/* --- side by side --- */

static const RcOfferPlan *
find_chosen (RcOfferWindow *self)
{
  const GPtrArray *plans = rc_offer_plans_get (self->plans);

  for (guint i = 0; i < plans->len; i++)
    {
      const RcOfferPlan *plan = g_ptr_array_index (plans, i);

      if (g_strcmp0 (plan->id, self->chosen) == 0)
        return plan;
    }
  return NULL;
}

static void
on_card (RcOfferCard *card, RcOfferWindow *self)
{
  rc_offer_window_choose (self, rc_offer_card_get_id (card));
}

/* Cards stay while there are as many ways as before, so that the focus does. */
static void
show_cards (RcOfferWindow *self)
{
  const GPtrArray *plans = rc_offer_plans_get (self->plans);
  GtkWidget       *card = gtk_widget_get_first_child (GTK_WIDGET (self->cards_box));

  for (guint i = 0; i < plans->len; i++)
    {
      const RcOfferPlan *plan = g_ptr_array_index (plans, i);

      if (card == NULL)
        {
          card = rc_offer_card_new ();
          g_signal_connect (card, "clicked", G_CALLBACK (on_card), self);
          gtk_box_append (self->cards_box, card);
        }
      rc_offer_card_show (RC_OFFER_CARD (card), plan, g_ptr_array_index (plans, 0),
                          g_strcmp0 (plan->id, self->chosen) == 0);
      card = gtk_widget_get_next_sibling (card);
    }
  while (card != NULL)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (card);

      gtk_box_remove (self->cards_box, card);
      card = next;
    }
}

/* --- the one looked at --- */

static void
show (RcOfferWindow *self)
{
  const RcOfferPlan *plan = find_chosen (self);

  if (plan == NULL && self->chosen != NULL)
    {
      /* It is being planned, or has been taken away. */
      if (rc_offer_edit_find_option (rc_document_get_job (self->document)->offer, self->chosen) == NULL)
        rc_offer_window_choose (self, NULL);
      return;
    }
  show_cards (self);
  tell (self, plan != NULL ? plan->fault : _ ("The job has no plan yet: there is nothing to price."));
  gtk_widget_set_visible (GTK_WIDGET (self->view), plan != NULL && plan->fault == NULL);
  if (plan != NULL && plan->fault == NULL)
    rc_quote_view_show (self->view, plan->outcome->quote, plan->outcome->plan, self->document);
}

void
rc_offer_window_choose (RcOfferWindow *self, const char *id)
{
  g_autofree char *copy = g_strdup (id);

  if (self->document == NULL)
    return;
  g_free (self->chosen);
  self->chosen = g_steal_pointer (&copy);
  clear (self->swaps_box);
  if (self->chosen != NULL)
    gtk_box_append (self->swaps_box, rc_offer_swaps_new (self->document, self->chosen));
  gtk_widget_set_visible (GTK_WIDGET (self->swaps_box), self->chosen != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "offer.remove-option", self->chosen != NULL);
  show (self);
}

/* --- doing --- */

static void
add_option (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcOfferWindow *self = RC_OFFER_WINDOW (widget);
  g_autoptr (RcJob) job = rc_document_dup_job (self->document);
  RcAlternative   *option = rc_offer_edit_add_option (job->offer, NULL);
  g_autofree char *id = option != NULL ? g_strdup (option->id) : NULL;

  if (id == NULL)
    return;
  option->name = g_strdup_printf (_ ("Option %s"), id);
  rc_offer_commit (widget, self->document, g_steal_pointer (&job), _ ("Another option of the quotation"), NULL);
  rc_offer_window_choose (self, id);
}

static void
remove_option (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcOfferWindow   *self = RC_OFFER_WINDOW (widget);
  g_autofree char *id = g_strdup (self->chosen);
  RcJob           *job = rc_document_dup_job (self->document);

  rc_offer_window_choose (self, NULL);
  rc_offer_edit_remove_option (job->offer, id);
  rc_offer_commit (widget, self->document, job, _ ("Take away an option"), NULL);
}

static RcUnit
find_unit (const RcPriceBook *book, const char *item)
{
  const RcPrice *price = item != NULL ? rc_price_book_find (book, item, NULL) : NULL;

  return price != NULL ? price->unit : RC_UNIT_EACH;
}

static void
add_line (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcOfferWindow *self = RC_OFFER_WINDOW (widget);
  const char    *item = rc_pick_get_selected (self->item_drop);
  RcJob         *job = rc_document_dup_job (self->document);

  rc_offer_edit_add_extra (job->offer, item, find_unit (rc_document_get_price_book (self->document), item));
  rc_offer_commit (widget, self->document, job, _ ("Add a line"), NULL);
}

static void
go_on (GtkWidget *widget, const char *name, GVariant *parameter)
{
  RcOfferWindow *self = RC_OFFER_WINDOW (widget);

  if (g_str_equal (name, "offer.sheet"))
    gtk_widget_activate_action (GTK_WIDGET (self->window), "win.sheet", "s", "quotation");
  else
    gtk_widget_activate_action (GTK_WIDGET (self->window), "win.quotes", NULL);
}

/* --- the job it is about --- */

static void
show_items (RcOfferWindow *self)
{
  const RcPriceBook *book = rc_document_get_price_book (self->document);
  g_auto (RcPick) pick = { 0 };

  rc_pick_init (&pick);
  rc_pick_add (&pick, NULL, _ ("a line of its own"));
  for (guint i = 0; i < book->prices->len; i++)
    {
      const RcPrice *price = g_ptr_array_index (book->prices, i);
      const RcGoods *goods = rc_price_book_find_goods (book, price->item);

      if (!g_ptr_array_find_with_equal_func (pick.ids, price->item, (GEqualFunc)g_strcmp0, NULL))
        rc_pick_add (&pick, price->item, goods != NULL ? goods->name : price->item);
    }
  rc_pick_show (&pick, self->item_drop, rc_pick_get_selected (self->item_drop));
}

static void
let_go (RcOfferWindow *self)
{
  if (self->plans != NULL)
    g_signal_handlers_disconnect_by_data (self->plans, self);
  self->plans = NULL;
  g_clear_object (&self->document);
  g_clear_pointer (&self->chosen, g_free);
}

/* Another job may be open now. */
static void
follow (RcOfferWindow *self)
{
  RcDocument *document = rc_window_get_document (self->window);

  if (document == self->document)
    return;
  let_go (self);
  clear (self->cards_box);
  clear (self->swaps_box);
  gtk_scrolled_window_set_child (self->panel_scrolled, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->view), FALSE);
  gtk_widget_set_sensitive (self->adder_box, document != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "offer.add-option", document != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "offer.remove-option", FALSE);
  if (document == NULL)
    {
      tell (self, _ ("Open a job first."));
      return;
    }
  self->document = g_object_ref (document);
  self->plans = rc_offer_plans_of (document);
  g_signal_connect_swapped (self->plans, "changed", G_CALLBACK (show), self);
  gtk_scrolled_window_set_child (self->panel_scrolled, rc_offer_panel_new (document));
  show_items (self);
  rc_offer_window_choose (self, NULL);
}

RcQuoteView *
rc_offer_window_get_view (RcOfferWindow *self)
{
  return self->view;
}

GtkWidget *
rc_offer_window_new (RcWindow *parent)
{
  RcOfferWindow *self = g_object_new (RC_TYPE_OFFER_WINDOW, "transient-for", parent, NULL);

  self->window = parent;
  g_signal_connect_object (parent, "store-changed", G_CALLBACK (follow), self, G_CONNECT_SWAPPED);
  follow (self);
  return GTK_WIDGET (self);
}

static void
rc_offer_window_dispose (GObject *object)
{
  let_go (RC_OFFER_WINDOW (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_OFFER_WINDOW);
  G_OBJECT_CLASS (rc_offer_window_parent_class)->dispose (object);
}

static void
add_keys (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.tell", "s", on_tell);
  gtk_widget_class_install_action (klass, "offer.add-option", NULL, add_option);
  gtk_widget_class_install_action (klass, "offer.remove-option", NULL, remove_option);
  gtk_widget_class_install_action (klass, "offer.add-line", NULL, add_line);
  gtk_widget_class_install_action (klass, "offer.sheet", NULL, go_on);
  gtk_widget_class_install_action (klass, "offer.issue", NULL, go_on);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_n, GDK_CONTROL_MASK, "offer.add-option", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_l, GDK_CONTROL_MASK, "offer.add-line", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_p, GDK_CONTROL_MASK, "offer.sheet", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Return, GDK_CONTROL_MASK, "offer.issue", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
rc_offer_window_class_init (RcOfferWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_offer_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/offer-window.ui");
  gtk_widget_class_bind_template_child (widget_class, RcOfferWindow, cards_box);
  gtk_widget_class_bind_template_child (widget_class, RcOfferWindow, swaps_box);
  gtk_widget_class_bind_template_child (widget_class, RcOfferWindow, lines_box);
  gtk_widget_class_bind_template_child (widget_class, RcOfferWindow, panel_scrolled);
  gtk_widget_class_bind_template_child (widget_class, RcOfferWindow, adder_box);
  gtk_widget_class_bind_template_child (widget_class, RcOfferWindow, item_drop);
  gtk_widget_class_bind_template_child (widget_class, RcOfferWindow, note_label);
  add_keys (widget_class);
}

static void
rc_offer_window_init (RcOfferWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->view = RC_QUOTE_VIEW (rc_quote_view_new ());
  gtk_box_append (self->lines_box, GTK_WIDGET (self->view));
}
