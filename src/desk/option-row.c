#include "option-row.h"

#include <glib/gi18n-lib.h>

#include "small-picture.h"
#include "palette.h"

#define PICTURE_WIDTH  52
#define PICTURE_HEIGHT 56

struct _RcOptionRow
{
  GtkBox parent_instance;

  RcDocument *document;
  GtkLabel   *area_label;
  GtkBox     *options_box;
  gboolean    is_showing;
};

G_DEFINE_FINAL_TYPE (RcOptionRow, rc_option_row, GTK_TYPE_BOX)

static const RcAreaPlan *
find_area_plan (RcOptionRow *self)
{
  RcOutcome *outcome = rc_document_get_outcome (self->document);

  if (outcome == NULL)
    return NULL;
  const RcFloorArea *area = rc_choice_find_area (rc_document_get_choice (self->document), outcome->measure);
  return area ? rc_plan_find_area (outcome->plan, area->id) : NULL;
}

static void
draw_option (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  RcOptionRow      *self = data;
  guint             index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (area), "option"));
  const RcAreaPlan *area_plan = self->document ? find_area_plan (self) : NULL;

  if (area_plan && index < area_plan->options->len)
    rc_small_picture_draw_option (area_plan, g_ptr_array_index (area_plan->options, index),
                                  rc_palette_for_widget (GTK_WIDGET (area)), width, height, cr);
}

static void
on_clicked (GtkButton *button, RcOptionRow *self)
{
  rc_option_row_take (self, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "number")));
}

static GtkWidget *
new_card (RcOptionRow *self, guint number)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *picture = gtk_drawing_area_new ();
  GtkWidget *text = gtk_label_new ("");

  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (picture), PICTURE_WIDTH);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (picture), PICTURE_HEIGHT);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (picture), draw_option, self, NULL);
  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_widget_add_css_class (text, "option-text");
  gtk_box_append (GTK_BOX (box), picture);
  gtk_box_append (GTK_BOX (box), text);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "option");
  g_object_set_data (G_OBJECT (button), "number", GUINT_TO_POINTER (number));
  g_object_set_data (G_OBJECT (button), "picture", picture);
  g_object_set_data (G_OBJECT (button), "text", text);
  g_signal_connect (button, "clicked", G_CALLBACK (on_clicked), self);
  return button;
}

static void
show_card (RcOptionRow *self, GtkWidget *button, const RcAreaPlan *area_plan, guint index, guint number)
{
  const RcOption      *option = g_ptr_array_index (area_plan->options, index);
  const RcJob         *job = rc_document_get_job (self->document);
  const RcLengthStyle *style = rc_job_get_length_style (job);
  GtkWidget           *picture = g_object_get_data (G_OBJECT (button), "picture");
  g_autofree char     *names = rc_option_dup_label (option);
  g_autofree char     *cost = rc_money_format (option->cost, &job->currency);
  g_autofree char     *carpet = rc_length_format (option->carpet_length, style);
  g_autofree char     *seams = rc_length_format (option->side_seam + option->cross_seam, style);
  g_autofree char     *text = g_strdup_printf (_ ("%u  %s\ncarpet %s\nseams %s"), number, cost, carpet, seams);
  g_autofree char     *tip = g_strdup_printf (
          ngettext ("%s: cost %s to the shop, carpet %s, seams %s, %u join. Alt+%u takes it.",
                    "%s: cost %s to the shop, carpet %s, seams %s, %u joins. Alt+%u takes it.", option->joins),
          names, cost, carpet, seams, option->joins, number);
  gboolean is_chosen = index == area_plan->chosen;

  gtk_label_set_text (g_object_get_data (G_OBJECT (button), "text"), text);
  gtk_widget_set_tooltip_text (button, tip);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, tip, -1);
  gtk_accessible_update_state (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_STATE_PRESSED,
                               is_chosen ? GTK_ACCESSIBLE_TRISTATE_TRUE : GTK_ACCESSIBLE_TRISTATE_FALSE, -1);
  if (is_chosen)
    gtk_widget_add_css_class (button, "taken");
  else
    gtk_widget_remove_css_class (button, "taken");
  g_object_set_data (G_OBJECT (picture), "option", GUINT_TO_POINTER (index));
  gtk_widget_queue_draw (picture);
}

static void
show (RcOptionRow *self)
{
  const RcAreaPlan *area_plan = find_area_plan (self);
  guint             n = area_plan ? area_plan->options->len : 0;
  GtkWidget        *button = gtk_widget_get_first_child (GTK_WIDGET (self->options_box));

  for (guint i = 0; i < n; i++)
    {
      if (button == NULL)
        {
          button = new_card (self, i + 1);
          gtk_box_append (self->options_box, button);
        }
      show_card (self, button, area_plan, i, i + 1);
      button = gtk_widget_get_next_sibling (button);
    }
  while (button)
    {
      GtkWidget *next = gtk_widget_get_next_sibling (button);
      gtk_box_remove (self->options_box, button);
      button = next;
    }
  gtk_label_set_text (self->area_label, area_plan ? area_plan->area->name : "");
  gtk_widget_set_visible (GTK_WIDGET (self), n > 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self), !rc_document_is_stale (self->document));
}

void
rc_option_row_take (RcOptionRow *self, guint number)
{
  const RcAreaPlan *area_plan = self->document ? find_area_plan (self) : NULL;
  g_autoptr (GError) error = NULL;

  if (number < 1 || area_plan == NULL || number > area_plan->options->len || rc_document_is_stale (self->document))
    return;
  const RcOption *option = g_ptr_array_index (area_plan->options, number - 1);
  g_autoptr (RcJob) job = rc_document_dup_job (self->document);
  RcFloorArea *area = rc_measure_find_area (rc_document_get_measure_of (self->document, job), area_plan->area->id);
  if (area == NULL)
    return;
  g_free (area->option);
  area->option = g_strdup (option->name);
  if (!rc_document_commit (self->document, g_steal_pointer (&job), _ ("Take an option"), NULL, &error))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", error->message);
}

guint
rc_option_row_get_n_options (RcOptionRow *self)
{
  const RcAreaPlan *area_plan = self->document ? find_area_plan (self) : NULL;
  return area_plan ? area_plan->options->len : 0;
}

void
rc_option_row_set_document (RcOptionRow *self, RcDocument *document)
{
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "planned", G_CALLBACK (show), self);
  g_signal_connect_swapped (document, "chosen", G_CALLBACK (show), self);
  show (self);
}

static void
rc_option_row_dispose (GObject *object)
{
  rc_option_row_set_document (RC_OPTION_ROW (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), RC_TYPE_OPTION_ROW);
  G_OBJECT_CLASS (rc_option_row_parent_class)->dispose (object);
}

static void
rc_option_row_class_init (RcOptionRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rc_option_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/rowcut/Rowcut/ui/option-row.ui");
  gtk_widget_class_bind_template_child (widget_class, RcOptionRow, area_label);
  gtk_widget_class_bind_template_child (widget_class, RcOptionRow, options_box);
}

static void
rc_option_row_init (RcOptionRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
