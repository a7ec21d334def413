#include "offer-card.h"

#include <glib/gi18n-lib.h>

#include "palette.h"
#include "small-picture.h"

#define PICTURE_WIDTH  84
#define PICTURE_HEIGHT 64

struct _RcOfferCard
{
  GtkButton parent_instance;

  char           *id;
  RcOutcome      *outcome; /* nullable */
  GtkDrawingArea *picture;
  GtkLabel       *name_label, *total_label, *detail_label;
};

G_DEFINE_FINAL_TYPE (RcOfferCard, rc_offer_card, GTK_TYPE_BUTTON)

static void
draw (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  RcOfferCard *self = data;

  if (self->outcome != NULL)
    rc_small_picture_draw_plan (self->outcome->plan, rc_palette_for_widget (GTK_WIDGET (area)), width, height, cr);
}

/* "+482.91 USD, carpet 62', seams 34' 8"". */
static char *
dup_detail (const RcOfferPlan *plan, const RcOfferPlan *first)
{
  const RcOutcome     *outcome = plan->outcome;
  const RcLengthStyle *style = rc_job_get_length_style (outcome->job);
  RcLength             seams = 0;

  for (guint i = 0; i < outcome->plan->seams->len; i++)
    seams += ((const RcSeam *)g_ptr_array_index (outcome->plan->seams, i))->length;
  g_autofree char *carpet = rc_length_format (outcome->plan->carpet_length, style);
  g_autofree char *seam = rc_length_format (seams, style);
  g_autofree char *both = g_strdup_printf (_ ("carpet %s\nseams %s"), carpet, seam);
  if (plan == first || first->outcome == NULL || first->outcome->quote == NULL)
    return g_steal_pointer (&both);
  RcMoney          more = outcome->quote->total - first->outcome->quote->total;
  g_autofree char *money = rc_money_format (ABS (more), &outcome->quote->currency);
  return g_strdup_printf ("%s%s\n%s", more > 0 ? "+" : more < 0 ? "−" : "±", money, both);
}

void
rc_offer_card_show (RcOfferCard *self, const RcOfferPlan *plan, const RcOfferPlan *first, gboolean is_chosen)
{
  const char      *name = plan->name != NULL ? plan->name : _ ("The job as it stands");
  g_autofree char *total = plan->fault == NULL
                               ? rc_money_format (plan->outcome->quote->total, &plan->outcome->quote->currency)
                               : g_strdup ("–");
  g_autofree char *detail = plan->fault == NULL ? dup_detail (plan, first) : g_strdup (_ ("cannot be priced"));
  g_autofree char *said = g_strdup_printf ("%s, %s, %s", name, total, detail);

  g_strdelimit (said, "\n", ',');
  g_free (self->id);
  self->id = g_strdup (plan->id);
  g_clear_pointer (&self->outcome, rc_outcome_unref);
  self->outcome = plan->outcome != NULL ? rc_outcome_ref (plan->outcome) : NULL;
  gtk_label_set_text (self->name_label, name);
  gtk_label_set_text (self->total_label, total);
  gtk_label_set_text (self->detail_label, detail);
  gtk_widget_queue_draw (GTK_WIDGET (self->picture));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), plan->fault);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_PRESSED,
                               is_chosen ? GTK_ACCESSIBLE_TRISTATE_TRUE : GTK_ACCESSIBLE_TRISTATE_FALSE, -1);
  if (is_chosen)
    gtk_widget_add_css_class (GTK_WIDGET (self), "taken");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "taken");
}

const char *
rc_offer_card_get_id (RcOfferCard *self)
{
  return self->id;
}

static GtkLabel *
add_label (GtkBox *box, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 26);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

static void
rc_offer_card_init (RcOfferCard *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *text = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->picture = GTK_DRAWING_AREA (gtk_drawing_area_new ());
  gtk_drawing_area_set_content_width (self->picture, PICTURE_WIDTH);
  gtk_drawing_area_set_content_height (self->picture, PICTURE_HEIGHT);
  gtk_drawing_area_set_draw_func (self->picture, draw, self, NULL);
  self->name_label = add_label (GTK_BOX (text), "option-name");
  self->total_label = add_label (GTK_BOX (text), "figure");
  self->detail_label = add_label (GTK_BOX (text), "option-text");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->picture));
  gtk_box_append (GTK_BOX (box), text);
  gtk_button_set_child (GTK_BUTTON (self), box);
  gtk_widget_add_css_class (GTK_WIDGET (self), "option");
}

static void
rc_offer_card_finalize (GObject *object)
{
  RcOfferCard *self = RC_OFFER_CARD (object);

  g_free (self->id);
  g_clear_pointer (&self->outcome, rc_outcome_unref);
  G_OBJECT_CLASS (rc_offer_card_parent_class)->finalize (object);
}

static void
rc_offer_card_class_init (RcOfferCardClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rc_offer_card_finalize;
}

GtkWidget *
rc_offer_card_new (void)
{
  return g_object_new (RC_TYPE_OFFER_CARD, NULL);
}
